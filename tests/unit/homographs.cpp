// links: say_speech
// Homographs in sentences of our own (tests/fixtures/homographs): common practice, no source.
#include "speech/homographs.h"

#include "speech/phones.h"
#include "speech/reading.h"
#include "support/catch.h"
#include "text/unicode.h"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <memory>
#include <set>
#include <sstream>

using namespace say;

namespace {

struct Case {
    std::string word;
    int reading = 0;
    std::string sentence;
    bool held_back = false; // not looked at while the rules were tuned
};

std::vector<Case> load_cases() {
    std::ifstream file(SAYLINE_SOURCE_DIR "/tests/fixtures/homographs/sentences.tsv");
    std::vector<Case> cases;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with('#')) continue;
        const auto first = line.find('\t');
        const auto second = line.find('\t', first + 1);
        cases.push_back({line.substr(0, first), line[first + 1] - '1', line.substr(second + 1),
                         cases.size() % 3 == 2});
    }
    return cases;
}

// How the first place of the word is said.
const Said* find_said(const Case& item, const Written& written, const Reading& reading) {
    for (std::size_t i = 0; i < reading.said.size(); ++i) {
        if (unicode::fold(slice(written.plain.text, written.words[i].plain)) == item.word)
            return &reading.said[i];
    }
    return nullptr;
}

struct Score {
    int all = 0;
    int right = 0; // with the usual reading where nothing decides
    int decided = 0;
    int right_where_decided = 0;
};

// SAYLINE_SHOW=tuned in the environment lists the wrong ones of the tuned part.
Score judge(bool held_back) {
    const char* show = std::getenv("SAYLINE_SHOW");
    Score score;
    for (const Case& item : load_cases()) {
        if (item.held_back != held_back) continue;
        const Written written = plain_thought(item.sentence);
        const Reading reading = read(written, item.sentence, Voice{});
        const Said* said = find_said(item, written, reading);
        REQUIRE(said != nullptr);
        const Homograph* homograph = find_homograph(item.word);
        REQUIRE(homograph != nullptr);
        const auto wanted = static_cast<std::size_t>(item.reading);
        const bool right = to_arpabet(said->phones.front()) == homograph->readings[wanted].arpabet;
        ++score.all;
        score.right += right;
        score.decided += !said->undecided;
        score.right_where_decided += right && !said->undecided;
        if (show != nullptr && !held_back && (!right || said->undecided)) {
            std::cout << (right             ? "unsure "
                          : said->undecided ? "UNSURE "
                                            : "WRONG  ")
                      << item.word << ' ' << item.reading + 1 << ": " << item.sentence << '\n';
        }
    }
    if (show != nullptr) {
        std::cout << (held_back ? "held back: " : "tuned: ") << score.all << ", right "
                  << score.right << ", decided " << score.decided << ", of these right "
                  << score.right_where_decided << '\n';
    }
    return score;
}

} // namespace

TEST_CASE("homographs/every word has two readings and is met in both") {
    std::set<std::pair<std::string, int>> met;
    for (const Case& item : load_cases())
        met.insert({item.word, item.reading});
    CHECK(homographs().size() == 153);
    for (const Homograph& homograph : homographs()) {
        INFO(homograph.word);
        for (int i = 0; i < 2; ++i) {
            const HomographReading& reading = homograph.readings[static_cast<std::size_t>(i)];
            CHECK(from_arpabet(reading.arpabet).has_value());
            CHECK_FALSE(reading.gloss.empty());
            CHECK(met.contains({std::string(homograph.word), i}));
        }
    }
}

TEST_CASE("homographs/the table's evidence is written as it is read") {
    const std::set<std::string> alone = {"VERB", "ASKED", "PERFECT", "OPENS", "CAPITAL", "LOWER"};
    const std::set<std::string> classes = {"DET", "POSS", "NUM", "BE", "HAVE", "MODAL", "PAST"};
    for (const Homograph& homograph : homographs()) {
        for (const HomographReading& reading : homograph.readings) {
            std::istringstream words{std::string(reading.evidence)};
            for (std::string cue; words >> cue;) {
                INFO(homograph.word << ": " << cue);
                const std::string name = cue.substr(0, cue.find(':'));
                const bool placed =
                    std::string_view("-+~").find(name.front()) != std::string_view::npos;
                const std::string word = placed ? name.substr(1) : name;
                CHECK((placed ? word == unicode::fold(word) || classes.contains(word)
                              : alone.contains(word)));
                CHECK_FALSE(word.empty());
            }
        }
    }
}

TEST_CASE("homographs/capitals tell a name inside a sentence, not at its start") {
    const auto said = [](std::string_view text, std::size_t word) {
        const std::string source(text);
        const Written written = plain_thought(source);
        return to_arpabet(read(written, source, Voice{}).said[word].phones.front());
    };
    CHECK(said("The train to Reading is late.", 3) == "R EH1 D IH0 NG");
    CHECK(said("Reading is a pleasure.", 0) == "R IY1 D IH0 NG");
    CHECK(said("They live in Nice.", 3) == "N IY1 S");
    CHECK(said("Nice people live here.", 0) == "N AY1 S");
    CHECK(said("WE MET NICE PEOPLE.", 2) == "N AY1 S");
    // What the writer says and the project's list come before any choice.
    const std::string marked = "Then came the bow.";
    const Written written = plain_thought(marked);
    CHECK(read(written, marked, Voice{}).said[3].undecided);
    auto list = std::make_shared<WordList>();
    list->add({.words = {"bow"}, .readings = {{.phones = {*from_arpabet("B OW1")}, .alias = {}}}});
    Voice voice;
    voice.words = list;
    const Reading listed = read(written, marked, voice);
    CHECK_FALSE(listed.said[3].undecided);
    CHECK(to_arpabet(listed.said[3].phones.front()) == "B OW1");
}

TEST_CASE("homographs/the neighbours choose the reading") {
    const Score tuned = judge(false);
    CHECK(tuned.all > 300);
    CHECK(tuned.right_where_decided >= 0.97 * tuned.decided);
    CHECK(tuned.decided >= 0.85 * tuned.all);
}

TEST_CASE("homographs/sentences that were held back are read as well") {
    const Score held_back = judge(true);
    CHECK(held_back.all > 150);
    CHECK(held_back.right_where_decided >= 0.95 * held_back.decided);
}
