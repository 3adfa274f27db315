// links: say_engine
// The laws of docs/format.md's page on time, over random scripts with every mark.
#include "engine/analysis.h"
#include "support/catch.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

namespace {

using namespace say;

constexpr double hair = 1e-9; // seconds

std::shared_ptr<const Analysis> analysed(const std::string& text, const Options& options = {}) {
    Parser parser;
    Memo memo;
    const Document document{"test.say", 1, std::make_shared<const Text>(text)};
    return analyse(document, options, parser, memo, Cancel{});
}

std::shared_ptr<const Thought> read_line(const std::string& line, const Options& options = {}) {
    static Parser parser;
    return analyse_line(line, false, options, parser);
}

// A word with what is drawn on it, and what stands behind it: marks in pieces, then punctuation.
struct Piece {
    std::string before;
    std::string word;
    std::string after;       // on the word: its end of a pair, a stretch, an arrow, a pronouncer
    std::string punctuation; // , ; . ? or nothing
    std::vector<std::string> pauses;
};

const std::vector<std::string>& words() {
    static const std::vector<std::string> list = {
        "we",     "count", "limpets", "on",    "the",    "northern", "shore",   "before",
        "winter", "comes", "because", "every", "tide",   "takes",    "another", "measurement",
        "and",    "so",    "careful", "notes", "matter", "to",       "anyone",  "who"};
    return list;
}

// The pause marks, with the seconds of the default table that they hold by themselves.
struct PauseMark {
    std::string written;
    double seconds;
};
const std::vector<PauseMark>& pause_marks() {
    static const std::vector<PauseMark> list = {
        {"...", 0.6}, {"xx", 2.0},    {"xxx", 3.0},          {"/", 0.35},      {"//", 0.7},
        {"(.)", 0.2}, {"(1.5)", 1.5}, {"[look up 2s]", 2.0}, {"[smile]", 0.0}, {"(0.3)", 0.3}};
    return list;
}

struct Wrap {
    std::string before;
    std::string after;
};
const std::vector<Wrap>& wraps() {
    static const std::vector<Wrap> list = {{"*", "*"},
                                           {"**", "**"},
                                           {"_", "_"},
                                           {"__", "__"},
                                           {"~", "~"},
                                           {"°", "°"},
                                           {"(", ")"},
                                           {"\"", "\""},
                                           {">", "<"},
                                           {"<", ">"},
                                           {"", "::"},
                                           {"^", ""},
                                           {"", "↗"},
                                           {"", "↘"},
                                           {"↑", ""},
                                           {"", "{LIM-pits}"},
                                           {"", "{=two words}"},
                                           {"↓", ""},
                                           {"", ""},
                                           {"", ""},
                                           {"", ""},
                                           {"", ""}};
    return list;
}

class Writer {
public:
    explicit Writer(unsigned seed) : random_(seed) {}

    std::size_t below(std::size_t count) { return random_() % count; }

    std::vector<Piece> thought() {
        std::vector<Piece> pieces(4 + below(14));
        static const std::vector<std::string> punctuation = {"", "", "", "", ",", ";", ".", "?"};
        for (std::size_t i = 0; i < pieces.size(); ++i) {
            Piece& piece = pieces[i];
            piece.word = words()[below(words().size())];
            if (below(3) == 0) {
                const Wrap& wrap = wraps()[below(wraps().size())];
                piece.before = wrap.before;
                piece.after = wrap.after;
            }
            piece.punctuation =
                i + 1 == pieces.size() ? "." : punctuation[below(punctuation.size())];
            if (below(4) == 0) {
                for (std::size_t n = 1 + below(2); n > 0; --n)
                    piece.pauses.push_back(pause_marks()[below(pause_marks().size())].written);
            }
        }
        return pieces;
    }

private:
    std::mt19937 random_;
};

std::string text_of(const std::vector<Piece>& pieces) {
    std::string text;
    for (const Piece& piece : pieces) {
        if (!text.empty()) text += ' ';
        text += piece.before + piece.word + piece.after + piece.punctuation;
        for (const std::string& pause : piece.pauses)
            text += ' ' + pause;
    }
    return text;
}

double seconds_of(const Thought& thought) {
    return thought.reading.timing.expected.count();
}

void check_sums(const Reading& reading) {
    double speech = 0;
    double pause = 0;
    for (const Said& said : reading.said)
        speech += said.seconds.count();
    for (const PauseAt& each : reading.pauses)
        pause += each.seconds.count();
    const Timing& timing = reading.timing;
    CHECK(std::abs(timing.speech.count() - speech) < hair);
    CHECK(std::abs(timing.pause.count() - pause) < hair);
    CHECK(std::abs(timing.expected.count() - speech - pause) < hair);
    CHECK(timing.low <= timing.expected);
    CHECK(timing.expected <= timing.high);
    CHECK(reading.held.count() <= pause + hair);
}

double pause_behind(const Reading& reading, int word) {
    double seconds = 0;
    for (const PauseAt& pause : reading.pauses) {
        if (pause.after == word) seconds += pause.seconds.count();
    }
    return seconds;
}

// What is said for each written word.
std::vector<std::string> readings_of(const Thought& thought) {
    std::vector<std::string> readings;
    for (const Said& said : thought.reading.said) {
        std::string reading;
        for (const SpokenWord& word : said.spoken)
            reading += word.text + ' ';
        readings.push_back(std::move(reading));
    }
    return readings;
}

} // namespace

TEST_CASE("time/speech and pause are the whole, in each thought and in all") {
    std::set<std::string> seen;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        Writer writer(seed);
        std::string text;
        const std::size_t count = 1 + writer.below(6);
        for (std::size_t i = 0; i < count; ++i) {
            if (writer.below(3) == 0) text += fmt::format("## Part {}\n\n", i);
            if (writer.below(4) == 0) text += "- ";
            text += text_of(writer.thought()) + "\n\n";
            if (writer.below(5) == 0) text += "[clip: the tide 4s]\n\n";
            if (writer.below(6) == 0) text += "SHOUT it OUT\n\n";
            if (writer.below(6) == 0) text += "one‿two\n\n";
        }
        INFO("seed " << seed << "\n" << text);
        const auto analysis = analysed(text);
        double whole = 0;
        double at = 0;
        for (const Placed& placed : analysis->script.thoughts) {
            check_sums(placed.thought->reading);
            CHECK(std::abs(placed.at.count() - at) < 1e-6);
            at += seconds_of(*placed.thought) + placed.gap.count();
            whole += seconds_of(*placed.thought) + placed.gap.count();
            for (const Mark& mark : placed.thought->written.marks)
                seen.insert(std::string(row_of(mark.kind).name));
        }
        const Timing& timing = analysis->script.timing;
        CHECK(std::abs(timing.expected.count() - whole) < 1e-6);
        CHECK(std::abs((timing.speech + timing.pause - timing.expected).count()) < hair);
    }
    // None of the marks was left out.
    for (const MarkRow& row : mark_rows()) {
        INFO(row.name);
        CHECK(seen.contains(std::string(row.name)));
    }
}

TEST_CASE("time/a pause mark adds what exceeds the punctuation's pause, and marks add up") {
    int tried = 0;
    for (unsigned seed = 1; seed <= 1500; ++seed) {
        Writer writer(seed);
        std::vector<Piece> pieces = writer.thought();
        Piece& piece = pieces[writer.below(pieces.size())];
        piece.pauses.clear();
        const auto bare = read_line(text_of(pieces));
        const int word = static_cast<int>(&piece - pieces.data());

        double marked = 0;
        for (std::size_t n = 1 + writer.below(3); n > 0; --n) {
            const PauseMark& mark = pause_marks()[writer.below(pause_marks().size())];
            piece.pauses.push_back(mark.written);
            marked += mark.seconds;
        }
        const auto with = read_line(text_of(pieces));
        // Where a mark here makes something else of what stands around it, the law is silent.
        if (readings_of(*with) != readings_of(*bare)) continue;
        if (with->written.marks.size() != bare->written.marks.size() + piece.pauses.size())
            continue;
        ++tried;
        INFO("seed " << seed << "\n" << text_of(pieces));
        const double added = seconds_of(*with) - seconds_of(*bare);
        // The silence that a heavy stress puts before its word is the word's.
        double written = 0;
        for (const PauseAt& pause : bare->reading.pauses) {
            if (pause.after == word && pause.from != PauseFrom::mark)
                written += pause.seconds.count();
        }
        CHECK(std::abs(added - std::max(0.0, marked - written)) < 1e-9);
        CHECK(with->reading.timing.speech == bare->reading.timing.speech);
        CHECK(pause_behind(with->reading, word) + hair >= std::max(marked, written));
    }
    CHECK(tried > 900);
}

TEST_CASE("time/deleting a word whose neighbours keep their reading never adds time") {
    int tried = 0;
    for (unsigned seed = 1; seed <= 2500; ++seed) {
        Writer writer(seed);
        std::vector<Piece> pieces = writer.thought();
        const auto full = read_line(text_of(pieces));
        const std::size_t at = writer.below(pieces.size());
        if (full->reading.said.size() != pieces.size()) continue;
        // The word alone goes; punctuation and pauses behind it stay where they are.
        std::vector<Piece> fewer = pieces;
        const Piece gone = fewer[at];
        if (at == 0) {
            if (!gone.punctuation.empty()) continue; // nothing to hang it on
            fewer.erase(fewer.begin());
            std::string pauses;
            for (const std::string& pause : gone.pauses)
                pauses += pause + ' ';
            fewer.front().before = pauses + fewer.front().before;
        } else {
            Piece& before = fewer[at - 1];
            if (before.punctuation.empty()) before.punctuation = gone.punctuation;
            before.pauses.insert(before.pauses.end(), gone.pauses.begin(), gone.pauses.end());
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(at));
        }
        const auto less = read_line(text_of(fewer));
        std::vector<std::string> kept = readings_of(*full);
        kept.erase(kept.begin() + static_cast<std::ptrdiff_t>(at));
        if (readings_of(*less) != kept) continue;
        ++tried;
        INFO("seed " << seed << "\n" << text_of(pieces) << "\n=>\n" << text_of(fewer));
        CHECK(seconds_of(*less) <= seconds_of(*full) + hair);
    }
    CHECK(tried > 1500);
}

TEST_CASE("time/a reader's speed scales speech alone, the pause number punctuation and gaps") {
    for (unsigned seed = 1; seed <= 200; ++seed) {
        Writer writer(seed);
        const std::string text = text_of(writer.thought()) + "\n\n" + text_of(writer.thought());
        INFO("seed " << seed << "\n" << text);
        const auto plain = analysed(text);
        for (const double speed : {0.5, 0.8, 1.25, 2.0}) {
            Options options;
            options.voice.speed = speed;
            const auto other = analysed(text, options);
            CHECK(std::abs(other->script.timing.speech.count() * speed -
                           plain->script.timing.speech.count()) < 1e-6);
            CHECK(std::abs((other->script.timing.pause - plain->script.timing.pause).count()) <
                  hair);
        }
        Options options;
        options.readers["mira"] = {.speech = 1.1, .pauses = 0.0, .rests_on = Seconds{60}};
        options.reader = "mira";
        const auto without = analysed(text, options);
        CHECK(std::abs(without->script.timing.speech.count() -
                       1.1 * plain->script.timing.speech.count()) < 1e-6);
        // Without pauses of its own what is left is the marks', as written.
        double marked = 0;
        for (const Placed& placed : without->script.thoughts) {
            CHECK(placed.gap == Seconds{0});
            for (const PauseAt& pause : placed.thought->reading.pauses) {
                CHECK((pause.from == PauseFrom::mark || pause.from == PauseFrom::direction));
                marked += pause.seconds.count();
            }
        }
        CHECK(std::abs(without->script.timing.pause.count() - marked) < 1e-9);
        CHECK((without->script.timing.high - without->script.timing.low).count() /
                  without->script.timing.expected.count() <
              (plain->script.timing.high - plain->script.timing.low).count() /
                  plain->script.timing.expected.count());
    }
}

TEST_CASE("time/words a minute stand in place of the reader's own pace") {
    const std::string text = "We count limpets on the northern shore.";
    Options options;
    options.readers["mira"] = {.speech = 1.3, .pauses = 1.0, .rests_on = Seconds{60}};
    options.reader = "mira";
    const double nobody = analysed(text)->script.timing.speech.count();
    CHECK(analysed(text, options)->script.timing.speech.count() == Approx(1.3 * nobody));
    REQUIRE(set_option(options, "pace", std::string("172 wpm")).has_value());
    CHECK(analysed(text, options)->script.timing.speech.count() == Approx(nobody));
    // The header says "faster", on top of the reader's own.
    CHECK(analysed("---\npace: 2x\n---\n\n" + text, options)->script.timing.speech.count() ==
          Approx(1.3 * nobody / 2));
}

TEST_CASE("time/readers of several speakers share the range by their time") {
    Options options;
    options.readers["mira"] = {.speech = 1.0, .pauses = 1.0, .rests_on = Seconds{600}};
    const auto width = [&](const std::string& speakers) {
        const auto analysis =
            analysed(fmt::format("---\nspeakers: {}\n---\n\nMIRA: We count limpets "
                                 "on the northern shore.\n\nJO: We count limpets "
                                 "on the northern shore.\n",
                                 speakers),
                     options);
        const Timing& timing = analysis->script.timing;
        return (timing.high - timing.low) / timing.expected;
    };
    CHECK(width("MIRA=mira, JO=mira") < width("MIRA=mira, JO"));
    CHECK(width("MIRA=mira, JO") < width("MIRA, JO"));
}
