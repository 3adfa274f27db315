// links: say_host say_exporters say_fixtures
// What pages, pictures and other programs are given of a script: no word, sign or mark is lost, and
// the times are those of the analysis.
#include "exporters/drawn.h"

#include "exporters/json.h"
#include "exporters/legible.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <nlohmann/json.hpp>

#include <fstream>
#include <map>
#include <sstream>

using namespace say;

namespace {

std::string demo() {
    std::ifstream in(SAYLINE_SOURCE_DIR "/docs/demo/limpets.say", std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    return text.str();
}

nlohmann::json as_json(const Analysis& analysis) {
    return nlohmann::json::parse(script_json(analysis));
}

// A thought's parts as one line: marks over words in brackets, the rest by name.
std::string line_of(const std::string& script) {
    const auto analysis = test::analyse_text(script, Options{});
    std::string line;
    const nlohmann::json order = as_json(*analysis);
    for (const auto& part : order["thoughts"].back()["parts"]) {
        if (part.contains("word")) line += part["word"].get<std::string>();
        for (const auto& mark : part.value("marks", nlohmann::json::array()))
            line += "[" + mark.get<std::string>() + "]";
        if (part.contains("text")) line += part["text"].get<std::string>();
        if (part.contains("sound")) line += "{" + part["sound"].get<std::string>() + "}";
        if (part.contains("instead")) line += "{=" + part["instead"].get<std::string>() + "}";
        for (const char* kind : {"pause", "direction", "open", "close"}) {
            if (part.contains(kind))
                line += std::string("<") + kind + " " + part[kind].get<std::string>() + ">";
        }
    }
    return line;
}

} // namespace

TEST_CASE("drawn/words, signs and marks stand in the order of the script") {
    CHECK(line_of("We *count* / the limpets.\n") ==
          "We <open stress>count[stress]<close stress> <pause breath>the limpets.");
    CHECK(line_of("(Nobody minds,) \"he said.\" x So.\n") ==
          "<open aside>Nobody[aside] minds[aside],<close aside> <open quoted>he[quoted] "
          "said[quoted].<close quoted> <pause beat>So.");
    CHECK(line_of("By the old\u203Flifeboat house.\n") == "By the old[tie] lifeboat house.");
    CHECK(line_of("Patella{puh-TEHL-uh} at 8:30{= half past eight}, so:: [smile] ↑late↘?\n") ==
          "Patella{puh-TEHL-uh} at 8:30{=half past eight}, so[stretch] <direction smile>"
          "late[step up][end down]?");
    CHECK(line_of("<Slowly> *now*\n") ==
          "<open slow>Slowly[slow]<close slow> <open stress>now[stress]<close stress>");
    CHECK(line_of("Our old‿lifeboat.\n") == "Our old[tie] lifeboat.");
    CHECK(line_of("im*por*tant\n") == "<open stress>important[stress]<close stress>");
}

TEST_CASE("drawn/every plain byte is drawn once, and times are the engine's") {
    const auto analysis = test::analyse_text(demo(), Options{});
    for (const Placed& placed : analysis->script.thoughts) {
        const Thought& thought = *placed.thought;
        std::string text;
        std::size_t word = 0;
        for (const DrawnPart& part : drawn(thought)) {
            if (const auto* signs = std::get_if<DrawnText>(&part)) text += signs->text;
            const auto* each = std::get_if<DrawnWord>(&part);
            if (each == nullptr) continue;
            text += each->text;
            CHECK(each->at == thought.reading.said[word].at);
            CHECK(each->seconds == thought.reading.said[word].seconds);
            ++word;
        }
        CHECK(text == thought.written.plain.text);
        CHECK(word == thought.reading.said.size());
    }
}

TEST_CASE("drawn/marks over words are drawn as often as the script has them") {
    const auto analysis = test::analyse_text(demo(), Options{});
    std::map<std::string, int> written;
    std::map<std::string, int> shown;
    for (const Placed& placed : analysis->script.thoughts) {
        for (const Mark& mark : placed.thought->written.marks) {
            if (is_pause(mark.kind)) ++written[std::string(row_of(mark.kind).name)];
        }
    }
    const nlohmann::json order = as_json(*analysis);
    for (const auto& thought : order["thoughts"]) {
        for (const auto& part : thought["parts"]) {
            if (part.contains("pause")) ++shown[part["pause"].get<std::string>()];
        }
    }
    CHECK(shown == written);
    CHECK(shown.size() >= 6);
}

TEST_CASE("drawn/the running order's times add up to the script's") {
    const auto analysis = test::analyse_text(demo(), Options{});
    const nlohmann::json order = as_json(*analysis);
    double at = 0;
    for (const auto& thought : order["thoughts"]) {
        CHECK(thought["at"].get<double>() == Approx(at).margin(0.03));
        at += thought["seconds"].get<double>() + thought["gap"].get<double>();
    }
    CHECK(order["seconds"].get<double>() == Approx(at).margin(0.03));
}

TEST_CASE("drawn/a list keeps its numbers, and bytes that are no UTF-8 do no harm") {
    const auto analysis =
        test::analyse_text("1. Bring string.\n2. Bring a pencil.\n- Or not.\n\nSo.\n", Options{});
    std::string markers;
    for (const Placed& placed : analysis->script.thoughts)
        markers += std::string(list_marker(*analysis, placed)) + "|";
    CHECK(markers == "1.|2.|-||");
    CHECK_NOTHROW(as_json(*test::analyse_text("We \xff\xfe count *\xc3 limpets.*\n", Options{})));
}

// BBC subtitle guidelines: quotation marks show whose words are spoken, dots a pause in a sentence
// (from memory).
TEST_CASE("legible/quotation marks, brackets and dots stand where they are read") {
    const auto legible = [](const std::string& line) {
        const auto analysis = test::analyse_text(line + "\n", Options{});
        return std::string(Legible(*analysis->script.thoughts.front().thought).text());
    };
    CHECK(legible(R"("Stop," he said. "Why?")") == R"("Stop," he said. "Why?")");
    CHECK(legible("People who... well ... people (like you).") ==
          "People who... well... people (like you).");
    CHECK(legible(R"(He said ("go *now*!") and left. ... So.)") ==
          R"(He said ("go now!") and left. So.)");
    CHECK(legible("\u201COh,\u201D she said ...") == "\u201COh,\u201D she said...");
    CHECK(legible(R"("The printer's custom leaves it open.)") ==
          R"("The printer's custom leaves it open.)");
    CHECK(legible("*No* (really ...) mark / is >left< (.) here [smile] now.") ==
          "No (really...) mark is left here now.");
}
