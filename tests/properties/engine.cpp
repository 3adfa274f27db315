// links: say_features say_fixtures
// What must hold of every script, whatever it says: properties with seeds over the fixtures, the
// demo and noise.
#include "engine/analysis.h"
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <random>
#include <set>
#include <sstream>

namespace {

using namespace say;

std::string demo() {
    std::ifstream file(SAYLINE_SOURCE_DIR "/docs/demo/limpets.say", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<std::string> samples() {
    std::vector<std::string> result{demo()};
    for (const test::Fixture& fixture : test::load_fixtures("rules")) {
        for (const test::Sample& sample : fixture.samples)
            result.push_back(sample.text);
    }
    return result;
}

Document document(std::string text) {
    return {"test.say", 1, std::make_shared<const Text>(std::move(text))};
}

std::shared_ptr<const Analysis> cold(const std::string& text, const Options& options = {}) {
    Parser parser;
    Memo memo;
    return analyse(document(text), options, parser, memo, Cancel{});
}

// All that an analysis says, as text.
std::string digest(const Analysis& analysis) {
    std::string result;
    for (const Placed& placed : analysis.script.thoughts) {
        const Timing& timing = placed.thought->reading.timing;
        result +=
            fmt::format("{} {}-{} at {:.4f} {:.4f} {:.4f} {:.4f} gap {:.4f} {}\n", placed.id(),
                        placed.block.span.begin.value, placed.block.span.end.value,
                        placed.at.count(), timing.expected.count(), timing.low.count(),
                        timing.pause.count(), placed.gap.count(), placed.speaker);
        for (const Mark& mark : placed.thought->written.marks) {
            result +=
                fmt::format("  {} {}-{} {} {}\n", row_of(mark.kind).name, mark.span.begin.value,
                            mark.span.end.value, mark.first, mark.last);
        }
    }
    for (const Section& section : analysis.script.sections) {
        result += fmt::format("{} {:.4f}\n", section.name, section.timing.expected.count());
    }
    for (const Finding& finding : analysis.findings) {
        result += fmt::format("{} {} {}-{} {}\n", finding.rule->id, name_of(finding.severity),
                              finding.span.begin.value, finding.span.end.value, finding.message());
        for (const Fix& fix : fixes_of(analysis, finding)) {
            result += fmt::format("  {}\n", fix.title);
            for (const TextEdit& edit : fix.edits)
                result += fmt::format("    {}-{} {}\n", edit.span.begin.value, edit.span.end.value,
                                      edit.replacement);
        }
    }
    return result + fmt::format("{:.4f}", analysis.script.timing.expected.count());
}

std::string spoken(const Analysis& analysis) {
    std::string result;
    for (const Placed& placed : analysis.script.thoughts) {
        for (const Said& said : placed.thought->reading.said)
            result += join(said.spoken) + " ";
    }
    return result;
}

const std::vector<std::string>& pieces() {
    static const std::vector<std::string> list = {
        "*",  "**",     "_",         "~",    "(",     ")",    ">",
        "<",  "\"",     "[wait 2s]", "{x}",  "/",     "//",   "...",
        "xx", "(1.5)",  "↑",         "::",   "‿",     "\\",   "% ",
        "- ", "# A ",   "---",       "\n",   "\n\n",  "\r\n", " ",
        "x",  "limpet", "9:30",      "$5",   ".",     "?",    "JO: ",
        "é",  "🐚",     "\xFF",      "\xC3", "MIRA:", "{",    "% allow: run-on\n"};
    return list;
}

} // namespace

TEST_CASE("engine/typing gives the analysis of opening") {
    for (unsigned seed = 1; seed <= 12; ++seed) {
        std::mt19937 random(seed);
        std::string text = demo();
        Parser parser;
        Memo memo;
        for (int step = 0; step < 20; ++step) {
            const std::size_t begin = random() % (text.size() + 1);
            const std::size_t size = std::min<std::size_t>(random() % 8, text.size() - begin);
            text.replace(begin, size,
                         random() % 3 == 0 ? "" : pieces()[random() % pieces().size()]);
            const auto warm = analyse(document(text), Options{}, parser, memo, Cancel{});
            INFO("seed " << seed << " step " << step);
            REQUIRE(digest(*warm) == digest(*cold(text)));
        }
    }
}

TEST_CASE("engine/edits of every size give the analysis of opening") {
    const std::vector<std::string> texts = samples();
    for (unsigned seed = 1; seed <= 10; ++seed) {
        std::mt19937 random(seed);
        std::string text = "---\nspeakers: MIRA, JO\n---\n";
        for (int i = 0; i < 12; ++i)
            text += texts[random() % texts.size()] + "\n\n";
        Parser parser;
        Memo memo;
        for (int step = 0; step < 25; ++step) {
            const std::size_t begin = random() % (text.size() + 1);
            const std::size_t size =
                std::min<std::size_t>(random() % (step % 5 == 0 ? 400 : 8), text.size() - begin);
            const std::string gone = text.substr(begin, size);
            text.erase(begin, size);
            // What goes comes back elsewhere, twice, or something else does.
            const std::size_t at = random() % 2 == 0 ? begin : random() % (text.size() + 1);
            const std::string& piece = pieces()[random() % pieces().size()];
            text.insert(at, random() % 3 == 0 ? gone + gone : piece + piece);
            const auto warm = analyse(document(text), Options{}, parser, memo, Cancel{});
            INFO("seed " << seed << " step " << step);
            REQUIRE(digest(*warm) == digest(*cold(text)));
        }
    }
}

TEST_CASE("engine/blocks cut around a change are those of the whole text") {
    const auto show = [](const std::vector<Block>& blocks) {
        std::string text;
        for (const Block& block : blocks) {
            text += fmt::format("{} {}\n", static_cast<int>(block.kind), block.level);
            for (const Span span : {block.span, block.notes, block.content, block.speaker})
                text += fmt::format(" {}-{}", span.begin.value, span.end.value);
        }
        return text;
    };
    for (unsigned seed = 1; seed <= 40; ++seed) {
        std::mt19937 random(seed);
        std::string text = seed % 2 == 0 ? "---\nspeakers: MIRA, JO\n---\n" : "";
        const std::size_t head = text.size();
        const Header header = parse_header(text);
        std::vector<Block> blocks = cut_blocks(text, header);
        for (int step = 0; step < 150; ++step) {
            const std::string before = text;
            const std::size_t begin = head + random() % (text.size() - head + 1);
            const std::size_t size = std::min<std::size_t>(random() % 12, text.size() - begin);
            std::string piece;
            for (unsigned i = random() % 4; i > 0; --i)
                piece += pieces()[random() % pieces().size()];
            text.replace(begin, size, piece);
            if (parse_header(text).span != header.span) {
                text = before; // another header is another matter
                continue;
            }
            const Recut recut = recut_blocks(text, header, blocks, difference(before, text));
            INFO("seed " << seed << " step " << step << "\n" << before << "\n=>\n" << text);
            REQUIRE(show(recut.blocks) == show(cut_blocks(text, header)));
            REQUIRE(recut.before + recut.after <= recut.blocks.size());
            blocks = recut.blocks;
        }
    }
}

TEST_CASE("engine/times beside the text keep one width") {
    Options options;
    const auto widths = [&] {
        const auto analysis = cold(demo(), options);
        std::set<std::size_t> found;
        const Span all{Offset{}, analysis->document.text->end()};
        for (const InlayHint& hint : inlay_hints(*analysis, all))
            found.insert(unicode::count_code_points(hint.label));
        return found;
    };
    CHECK(widths() == std::set<std::size_t>{6});
    options.hint_clock = true;
    CHECK(widths() == std::set<std::size_t>{14});
    options.hint_seconds = false;
    CHECK(widths() == std::set<std::size_t>{5});
}

TEST_CASE("engine/one key typed computes one thought") {
    std::string text = demo();
    Parser parser;
    Memo memo;
    analyse(document(text), Options{}, parser, memo, Cancel{});
    const std::size_t place = text.find("limpet looks");
    REQUIRE(place != std::string::npos);
    for (int key = 0; key < 5; ++key) {
        text.insert(place, "e");
        const std::size_t before = memo.misses();
        analyse(document(text), Options{}, parser, memo, Cancel{});
        CHECK(memo.misses() == before + 1);
    }
    // A line typed above moves the thoughts below without computing them.
    text.insert(text.find("# What"), "One more.\n\n");
    const std::size_t before = memo.misses();
    analyse(document(text), Options{}, parser, memo, Cancel{});
    CHECK(memo.misses() == before + 1);
}

TEST_CASE("engine/a warm memo answers as a cold one when one input changes") {
    const std::string text = demo();
    Parser parser;
    Memo memo;
    std::vector<std::pair<std::string, Options>> changed(1);
    const auto add = [&](std::string_view key, const OptionValue& value) {
        Options options;
        const auto done = set_option(options, key, value);
        INFO(key);
        REQUIRE(done.has_value());
        changed.emplace_back(key, options);
    };
    add("pace", std::string("1.3x"));
    add("language", std::string("en-GB"));
    add("stage", std::string("read"));
    add("breath_limit", 3.0);
    for (const OptionRow& row : option_rows()) {
        if (row.type != OptionType::number && row.type != OptionType::seconds &&
            row.type != OptionType::words)
            continue;
        const double middle = row.high == 0 ? row.low : (row.low + row.high) / 2;
        add(row.key, row.type == OptionType::words ? std::floor(middle) : middle);
    }
    {
        Options options;
        REQUIRE(set_rule_level(options, "run-on", "off").has_value());
        changed.emplace_back("rule off", options);
        Options reader;
        reader.reader = "slow";
        reader.readers["slow"] = {1.4, 1.2};
        changed.emplace_back("reader", reader);
    }
    for (const auto& [name, options] : changed) {
        INFO(name);
        CHECK(digest(*analyse(document(text), options, parser, memo, Cancel{})) ==
              digest(*cold(text, options)));
    }
    // The header's inputs: speakers, pace, allow.
    for (const std::string line : {"speakers: MIRA\n", "pace: 0.8x\n", "pace: 150 wpm\n",
                                   "allow: run-on\n", "stage: draft\n"}) {
        std::string other = text;
        const std::size_t end = other.find("\n---");
        other = fmt::format("---\n{}{}{}", line,
                            other.substr(other.find("target"), end - other.find("target")),
                            other.substr(end));
        INFO(line);
        CHECK(digest(*analyse(document(other), Options{}, parser, memo, Cancel{})) ==
              digest(*cold(other)));
    }
}

TEST_CASE("engine/speech and pause make the time") {
    for (const std::string& text : samples()) {
        const auto analysis = cold(text);
        for (const Placed& placed : analysis->script.thoughts) {
            const Reading& reading = placed.thought->reading;
            CHECK((reading.timing.speech + reading.timing.pause).count() ==
                  Approx(reading.timing.expected.count()));
            double words = 0;
            for (const Said& said : reading.said)
                words += said.seconds.count();
            double pauses = 0;
            for (const PauseAt& pause : reading.pauses)
                pauses += pause.seconds.count();
            CHECK(words == Approx(reading.timing.speech.count()).margin(1e-9));
            CHECK(pauses == Approx(reading.timing.pause.count()).margin(1e-9));
            CHECK(reading.timing.low <= reading.timing.expected);
            CHECK(reading.timing.expected <= reading.timing.high);
        }
    }
}

TEST_CASE("engine/the speed scales speech and nothing else") {
    Options fast;
    REQUIRE(set_option(fast, "pace", OptionValue{std::string("2x")}).has_value());
    const auto plain = cold(demo());
    const auto quick = cold(demo(), fast);
    CHECK(quick->script.timing.speech.count() == Approx(plain->script.timing.speech.count() / 2));
    CHECK(quick->script.timing.pause.count() == Approx(plain->script.timing.pause.count()));
}

TEST_CASE("engine/a pause mark adds what it exceeds the punctuation by") {
    struct Row {
        std::string without, with;
        double more;
    };
    // The times are those of docs/format.md: comma .15, dash .30, sentence .60; / .35, ... .60,
    // x 1.
    const std::vector<Row> rows = {
        {"We count and we write", "We count / and we write", 0.35},
        {"We count, and we write", "We count, / and we write", 0.20},
        {"We count, and we write", "We count, / / and we write", 0.55},
        {"We count. And we write", "We count. x And we write", 0.40},
        {"We count. And we write", "We count. / And we write", 0.0},
        {"We count and we write", "We count (1.5) and we write", 1.5},
        {"We count and we write", "We count [wait 2s] and we write", 2.0},
        {"We count", "... We count xx", 2.6},
    };
    for (const Row& row : rows) {
        INFO(row.with);
        const double before = cold(row.without)->script.timing.expected.count();
        CHECK(cold(row.with)->script.timing.expected.count() - before ==
              Approx(row.more).margin(1e-9));
    }
}

TEST_CASE("engine/gaps stand between thoughts") {
    const auto total = [](const std::string& text) {
        return cold(text)->script.timing.expected.count();
    };
    const double one = total("Thank you.");
    CHECK(total("Thank you.\n\nThank you.") == Approx(2 * one + 0.7));
    CHECK(total("- Thank you.\n- Thank you.") == Approx(2 * one + 0.4));
    CHECK(total("Thank you.\n\nxx\n\nThank you.") == Approx(2 * one + 0.7 + 2.0));
    CHECK(total("Thank you.\n\n[clip: sea 4s]\n\nThank you.") == Approx(2 * one + 0.7 + 4.0));
    CHECK(total("# A\n\nThank you.\n\n% a note\n\n[smile]\n\n# B\n\nThank you.") ==
          Approx(2 * one + 0.7));
}

TEST_CASE("engine/a total is surer than its parts") {
    const auto analysis = cold(demo());
    double parts = 0;
    for (const Placed& placed : analysis->script.thoughts) {
        parts += (placed.thought->reading.timing.high - placed.thought->reading.timing.low).count();
    }
    CHECK((analysis->script.timing.high - analysis->script.timing.low).count() < parts);
}

// The samples, and as many texts of thirty pieces in any order.
std::vector<std::string> samples_and_noise(unsigned count) {
    std::vector<std::string> texts = samples();
    for (unsigned seed = 1; seed <= count; ++seed) {
        std::mt19937 random(seed);
        std::string text;
        for (int i = 0; i < 30; ++i)
            text += pieces()[random() % pieces().size()];
        texts.push_back(text);
    }
    return texts;
}

TEST_CASE("engine/formatting twice is formatting once and keeps the words") {
    for (const std::string& text : samples_and_noise(400)) {
        INFO(text);
        const auto before = cold(text);
        const std::string once = say::apply(text, format(*before));
        const auto after = cold(once);
        CHECK(say::apply(once, format(*after)) == once);
        CHECK(spoken(*after) == spoken(*before));
    }
}

// What mends shapes: a mark that opens and never closes, or closes and never opened.
std::size_t count_torn(const Analysis& analysis) {
    std::size_t count = 0;
    for (const Placed& placed : analysis.script.thoughts) {
        const auto& problems = placed.thought->written.problems;
        count += static_cast<std::size_t>(
            std::count_if(problems.begin(), problems.end(), [](const Problem& problem) {
                return problem.kind == ProblemKind::unclosed || problem.kind == ProblemKind::stray;
            }));
    }
    return count;
}

// A script with every mark: sentences of words, pairs around any run of them that pairs may
// enclose, over the ends of sentences too, and what is written beside words.
std::string marked_script(unsigned seed) {
    static const std::vector<std::string> said = {
        "limpets", "we", "count",  "the",    "They",   "shore", "and",   "so",   "but",  "MIRA",
        "20 °C",   "w/", "max. 5", "an A*",  "Rm. 4",  "incl.", "9:30",  "e.g.", "no",   "Dr. Hill",
        "I",       "$5", "A",      "women*", "and/or", "(0!)",  "gonna", "2",    "tide", "because"};
    static const std::vector<std::string> standing = {"/",   "//", "...",     "xx", "(1.5)",
                                                      "(.)", "x",  "[smile]", "..", "[clip 2s]"};
    static const std::vector<std::string> ends = {".", ".", "?", "!", ",", ";", ":", " -"};
    static const std::vector<std::pair<std::string, std::string>> pairs = {
        {"*", "*"}, {"**", "**"}, {"_", "_"}, {"~", "~"},   {"°", "°"},
        {">", "<"}, {"<", ">"},   {"(", ")"}, {"\"", "\""}, {"“", "”"},
        {"*", ""},  {"", "*"},    {"(", ""},  {"", ">"},    {"[", ""}};
    std::mt19937 random(seed);
    const auto any = [&random](const auto& list) { return list[random() % list.size()]; };
    std::string script = "---\nspeakers: MIRA, JO\n---\n";
    for (int thought = 0; thought < 6; ++thought) {
        std::vector<std::string> words;
        for (auto i = 2 + random() % 24; i > 0; --i) {
            words.push_back(any(said));
            if (random() % 5 == 0) words.back() += any(ends);
            if (random() % 9 == 0) words.push_back(any(standing));
        }
        for (auto i = random() % 4; i > 0; --i) {
            const std::size_t first = random() % words.size();
            const std::size_t last = std::min(words.size() - 1, first + random() % 12);
            const auto pair = any(pairs);
            words[first].insert(0, pair.first);
            words[last] += pair.second;
        }
        const auto shape = random() % 6;
        script += shape < 2 ? "\n- " : shape == 2 ? "\n\nJO: " : "\n\n";
        for (const std::string& word : words)
            script += word + (random() % 20 == 0 ? "\n" : " ");
    }
    return script + "\n";
}

// The fixes that are taken without a question: one after the other, and all at once.
TEST_CASE("engine/fixes keep every word and tear no mark") {
    std::vector<std::string> texts = samples_and_noise(200);
    for (unsigned seed = 1; seed <= 500; ++seed)
        texts.push_back(marked_script(seed));
    for (const std::string& text : texts) {
        Options options;
        options.stage = Stage::mark;
        const auto before = cold(text, options);
        const std::string words = spoken(*before);
        const auto keeps = [&](const std::string& now, const Analysis& from, std::string_view how) {
            const auto after = cold(now, options);
            INFO(how << "\n" << from.document.text->bytes() << "\n=>\n" << now);
            CHECK(spoken(*after) == words);
            CHECK(count_torn(*after) <= count_torn(from));
            return after;
        };
        for (const Finding& finding : before->findings) {
            if (!has_sure_fix(finding)) continue;
            for (const Fix& fix : fixes_of(*before, finding)) {
                if (!fix.keeps_every_word || leaves_as_is(fix)) continue;
                keeps(say::apply(text, fix.edits), *before, fix.title);
            }
        }
        keeps(say::apply(text, edits_of(*before, Sweep::split)), *before, "split");
        // All that can be mended so is mended at once: a save that mends changes nothing twice.
        const std::vector<TextEdit> edits = edits_of(*before, Sweep::mend);
        const auto mended = keeps(say::apply(text, edits), *before, "mend");
        INFO(text);
        CHECK(edits_of(*mended, Sweep::mend).empty());
    }
}

// Light marks are marks: the words stay, nothing that was marked changes, and a second run adds
// nothing.
TEST_CASE("engine/light marks keep words and marks and are all there at once") {
    std::vector<std::string> texts = samples_and_noise(300);
    for (unsigned seed = 1; seed <= 300; ++seed)
        texts.push_back(marked_script(seed));
    for (const std::string& text : texts) {
        const auto before = cold(text);
        const std::vector<TextEdit> edits = edits_of(*before, Sweep::mark);
        const std::string once = say::apply(text, edits);
        INFO(text);
        INFO(once);
        const auto after = cold(once);
        CHECK(spoken(*after) == spoken(*before));
        CHECK(say::apply(once, edits_of(*after, Sweep::mark)) == once);
        for (const TextEdit& edit : edits)
            CHECK(edit.span.empty());
        REQUIRE(after->script.thoughts.size() == before->script.thoughts.size());
        std::size_t added = 0;
        for (std::size_t i = 0; i < after->script.thoughts.size(); ++i) {
            added += after->script.thoughts[i].thought->written.marks.size();
            added -= before->script.thoughts[i].thought->written.marks.size();
        }
        std::size_t insertions = 0; // two a stress
        for (const TextEdit& edit : edits)
            insertions += edit.replacement == "*" ? 1 : 2;
        CHECK(added * 2 == insertions);
    }
}

// Where the voice runs out of breath, light marks put the breath that the finding would offer.
TEST_CASE("engine/light marks leave no breath to be mended") {
    std::vector<std::string> texts = samples_and_noise(100);
    for (unsigned seed = 1; seed <= 300; ++seed)
        texts.push_back(marked_script(seed));
    Options options;
    options.stage = Stage::mark;
    for (const double limit : {6.0, 2.5}) {
        options.rules.breath_limit = Seconds{limit};
        for (const std::string& text : texts) {
            const auto before = cold(text, options);
            const std::string marked = say::apply(text, edits_of(*before, Sweep::mark));
            const auto after = cold(marked, options);
            INFO(marked);
            for (const Finding& finding : after->findings) {
                if (finding.rule->id != "no-breath") continue;
                for (const Fix& fix : fixes_of(*after, finding))
                    CHECK(leaves_as_is(fix));
            }
        }
    }
}

TEST_CASE("engine/noise never stops it") {
    for (unsigned seed = 1; seed <= 600; ++seed) {
        std::mt19937 random(seed);
        std::string text;
        if (seed % 2 == 0) {
            for (int i = 0; i < 60; ++i)
                text += pieces()[random() % pieces().size()];
        } else {
            for (int i = 0; i < 200; ++i)
                text += static_cast<char>(random() % 256);
        }
        Options options;
        options.stage = Stage::read;
        const auto analysis = cold(text, options);
        REQUIRE(analysis != nullptr);
        const Span whole = make_span(0, text.size());
        inlay_hints(*analysis, whole);
        outline(*analysis);
        const std::vector<Token> painted = tokens(*analysis, whole);
        for (std::size_t i = 1; i < painted.size(); ++i)
            CHECK(painted[i - 1].span.end <= painted[i].span.begin);
        for (const Finding& finding : analysis->findings)
            CHECK(finding.span.end.value <= text.size());
        for (std::uint32_t at = 0; at <= text.size(); at += 7) {
            hover(*analysis, Offset{at});
            completion(*analysis->document.text, Offset{at}, analysis.get());
            for (const FixAction& action : fixes(*analysis, {Offset{at}, Offset{at}})) {
                for (const TextEdit& edit : action.fix.edits)
                    CHECK(edit.span.end.value <= text.size());
            }
        }
    }
}
