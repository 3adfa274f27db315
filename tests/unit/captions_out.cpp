// links: say_host say_exporters say_fixtures
// Captions that are written. Limits: at most two lines of 42 characters (common practice), 32 by
// option and no caption under two seconds where the talk leaves room (DCMP Captioning Key), at most
// 20 characters a second (Szarkowska and Gerber-Moron, PLoS ONE 2018), never more than 1.5 s off
// the speech (BBC subtitle guidelines). Seven seconds at most: common practice, no source.
#include "exporters/captions.h"
#include "exporters/exporter.h"
#include "importers/captions.h"
#include "support/catch.h"
#include "support/error.h"
#include "support/fixture.h"
#include "text/unicode.h"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

using namespace say;

namespace {

std::string file_text(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

// The demo and the drafts of an explainer, a news read and a lesson.
std::vector<std::string> scripts() {
    std::vector<std::string> texts{file_text(SAYLINE_SOURCE_DIR "/docs/demo/limpets.say")};
    for (const auto& entry :
         std::filesystem::directory_iterator(SAYLINE_SOURCE_DIR "/tests/drafts"))
        if (entry.path().extension() == ".say") texts.push_back(file_text(entry.path()));
    return texts;
}

std::string all_text(const std::vector<Caption>& list) {
    std::string text;
    for (const Caption& caption : list) {
        for (const std::string& line : caption.lines)
            text += line + ' ';
    }
    return text;
}

std::string plain_text(const Analysis& analysis) {
    std::string text;
    for (const Placed& placed : analysis.script.thoughts) {
        if (!placed.thought->has_words()) continue;
        std::istringstream words{placed.thought->written.plain.text};
        for (std::string word; words >> word;)
            text += word + ' ';
    }
    return text;
}

// Without what captions keep of quotes, asides and pauses: tests/unit/drawn.cpp says where it
// stands.
std::string without_signs(std::string text) {
    for (std::size_t at = text.find("..."); at != std::string::npos; at = text.find("...", at))
        text.erase(at, 3);
    std::erase_if(text, [](char c) { return c == '"' || c == '(' || c == ')'; });
    return text;
}

std::size_t width(const std::string& line) {
    return unicode::count_code_points(line);
}

// One word with signs beside it: "-- >".
bool alone(const std::string& line) {
    std::istringstream words{line};
    int with_letters = 0;
    for (std::string word; words >> word;)
        with_letters += std::any_of(word.begin(), word.end(), [](unsigned char c) {
            return c >= 0x80 || std::isalnum(c) != 0;
        });
    return with_letters <= 1;
}

// What must hold of every caption.
void check_shape(const std::vector<Caption>& list, std::size_t columns) {
    for (std::size_t i = 0; i < list.size(); ++i) {
        const Caption& caption = list[i];
        INFO(caption.lines.front());
        CHECK(caption.begin < caption.end);
        if (i > 0) CHECK(list[i - 1].end <= caption.begin);
        REQUIRE((caption.lines.size() == 1 || caption.lines.size() == 2));
        for (const std::string& line : caption.lines) {
            CHECK_FALSE(line.empty());
            const bool one_word = line.find(' ') == std::string::npos || alone(line);
            CHECK((width(line) <= columns || one_word));
        }
    }
}

} // namespace

TEST_CASE("captions-out/stand within the published limits on ordinary scripts") {
    for (const std::string& text : scripts()) {
        for (const int columns : {42, 32}) {
            const auto analysis = test::analyse_text(text, Options{});
            const auto list = captions(*analysis, {.columns = columns});
            REQUIRE(list.size() > 10);
            check_shape(list, static_cast<std::size_t>(columns));
            CHECK(without_signs(all_text(list)) == without_signs(plain_text(*analysis)));
            int short_ones = 0;
            int fast_ones = 0;
            int orphans = 0;
            for (const Caption& caption : list) {
                const Seconds stands = caption.end - caption.begin;
                std::size_t characters = 0;
                for (const std::string& line : caption.lines)
                    characters += width(line);
                CHECK(stands <= Seconds{8.5}); // seven of speech, and what it may stand on after
                short_ones += stands < Seconds{1.99};
                fast_ones += static_cast<double>(characters) / stands.count() > 20;
                orphans += caption.lines.back().find(' ') == std::string::npos &&
                           caption.lines.size() == 2;
            }
            INFO(text.substr(0, 80));
            const auto most = static_cast<int>(list.size());
            CHECK(short_ones * 20 <= most); // where one speaker cuts the other short
            CHECK(fast_ones * 10 <= most);
            CHECK(orphans == 0);
        }
    }
}

TEST_CASE("captions-out/begin with their words") {
    const auto analysis = test::analyse_text(
        "We count every limpet on the rock.\n\n[wait 4s]\n\nThen we go home.\n", Options{});
    const auto list = captions(*analysis, {});
    REQUIRE(list.size() == 2);
    CHECK(list[0].begin == Seconds{0});
    CHECK(list[1].begin == analysis->script.thoughts.back().at);
    CHECK(list[0].end < list[1].begin);
    CHECK(list[0].end - list[0].begin >= Seconds{2});
}

TEST_CASE("captions-out/a name before the words counts for the line") {
    const auto analysis = test::analyse_text(
        "---\nspeakers: FESTIVAL STEWARD, TESS\n---\n\nFESTIVAL STEWARD: It starts at half past "
        "nine, and it's free.\n\nTESS: And I'm Tess. Tonight we count from the library roof.\n",
        Options{});
    const auto list = captions(*analysis, {.names = true});
    check_shape(list, 42);
    CHECK(all_text(list).starts_with("FESTIVAL STEWARD: It starts "));
    CHECK(all_text(list).find(" TESS: And I'm Tess.") != std::string::npos);
    const std::string file = wanted_exporter("srt").value()->write(*analysis, {});
    CHECK(file.find("\nFESTIVAL STEWARD: It starts") != std::string::npos);
    std::istringstream lines{file};
    for (std::string line; std::getline(lines, line);)
        CHECK(width(line) <= 42);
}

TEST_CASE("captions-out/a heading parts captions, thoughts part lines") {
    const auto analysis = test::analyse_text("Bring these:\n\n- boots\n- a pencil\n- a free day\n\n"
                                             "# The shore\n\nHere it is.\n",
                                             Options{});
    const auto list = captions(*analysis, {});
    check_shape(list, 42);
    std::vector<std::string> lines;
    for (const Caption& caption : list)
        lines.insert(lines.end(), caption.lines.begin(), caption.lines.end());
    CHECK(lines == std::vector<std::string>{"Bring these:", "boots", "a pencil", "a free day",
                                            "Here it is."});
    CHECK(list.back().lines.size() == 1);
}

TEST_CASE("captions-out/both files come back as they went out") {
    for (const std::string& text : scripts()) {
        const auto analysis = test::analyse_text(text, Options{});
        for (const char* target : {"vtt", "srt"}) {
            const auto list = captions(*analysis, {.names = std::string_view(target) == "srt"});
            const std::string file = wanted_exporter(target).value()->write(*analysis, {});
            const auto read = std::string_view(target) == "vtt" ? read_webvtt(file, "a.vtt")
                                                                : read_srt(file, "a.srt");
            REQUIRE(read.has_value());
            CHECK(read->left_out.empty());
            REQUIRE(read->cues.size() == list.size());
            for (std::size_t i = 0; i < list.size(); ++i) {
                CHECK(std::abs((read->cues[i].begin - list[i].begin).count()) < 0.0006);
                CHECK(std::abs((read->cues[i].end - list[i].end).count()) < 0.0006);
                if (std::string_view(target) == "vtt")
                    CHECK(read->cues[i].voice == std::string(list[i].speaker));
            }
        }
    }
}

TEST_CASE("captions-out/noise cannot break out of a cue") {
    const std::vector<std::string> pieces = {
        "-->",    "<v A>",
        "&amp;",  "&",
        "\n\n",   "00:01.000",
        "WEBVTT", "NOTE x",
        "limpet", " ",
        "*",      "é🐚",
        "# A\n",  "JO: ",
        "-- > ",  "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"};
    for (unsigned seed = 1; seed <= 150; ++seed) {
        std::mt19937 random(seed);
        std::string text = "---\nspeakers: JO, A>B\n---\n";
        for (int i = 0; i < 60; ++i)
            text += pieces[random() % pieces.size()];
        const auto analysis = test::analyse_text(text, Options{});
        const auto list = captions(*analysis, {});
        INFO("seed " << seed << "\n" << text);
        check_shape(list, 42);
        const auto read =
            read_webvtt(wanted_exporter("vtt").value()->write(*analysis, {}), "a.vtt");
        REQUIRE(read.has_value());
        // A cue of nothing but a dash is read as no talk. One in which a name stands behind other
        // words is there, but says nothing of one reader.
        const auto torn =
            std::count_if(read->left_out.begin(), read->left_out.end(), [&](const LeftOut& left) {
                return std::none_of(read->cues.begin(), read->cues.end(),
                                    [&](const Cue& cue) { return cue.line == left.line; });
            });
        CHECK(read->cues.size() + static_cast<std::size_t>(torn) == list.size());
    }
}
