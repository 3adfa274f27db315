// links: say_speech
// The twister score against a printed book of twisters and against speech that nobody stumbles
// over.
#include "speech/twister.h"

#include "speech/lexicon.h"
#include "speech/twister_window.h"
#include "support/catch.h"
#include "text/unicode.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace say;

namespace {

// Words and their sounds; the views of `words` are into the other two.
struct Line {
    std::vector<std::string> texts;
    std::vector<Phones> phones;
    std::vector<TwisterWord> words;
};

Line line_of(std::string_view text) {
    Line line;
    std::string word;
    for (const char c : std::string(text) + ' ') {
        const bool letter =
            (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '\'' || c == '-';
        if (letter) {
            word += c;
        } else if (!word.empty()) {
            line.texts.push_back(unicode::fold(word));
            word.clear();
        }
    }
    for (const std::string& folded : line.texts)
        line.phones.push_back(pronounce(folded).phones);
    for (std::size_t i = 0; i < line.texts.size(); ++i) {
        line.words.push_back({line.texts[i], line.phones[i]});
    }
    return line;
}

std::vector<std::string> sentences_of(std::string_view text) {
    std::vector<std::string> sentences;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('.'), text.size() - 1) + 1;
        sentences.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(text.find_first_not_of(' ', end), text.size()));
    }
    return sentences;
}

Twister twister_of(std::string_view text) {
    const Line line = line_of(text);
    return find_twister(line.words);
}

std::string message_of(std::string_view text) {
    const Line line = line_of(text);
    return twister_message(find_twister(line.words), line.words);
}

// "Peter Piper's Practical Principles of Plain and Perfect Pronunciation" (London: J. Harris, 1813;
// public domain), the first sentence of each letter, from memory.
constexpr std::string_view printed_twisters[] = {
    "Andrew Airpump asked his aunt her ailment.",
    "Billy Button bought a buttered biscuit.",
    "Captain Crackskull cracked a catchpoll's cockscomb.",
    "Davy Dolldrum dreamed he drove a dragon.",
    "Enoch Elkrig ate an empty eggshell.",
    "Francis Fribble figured on a Frenchman's filly.",
    "Gaffer Gilpin got a goose and gander.",
    "Humphrey Hunchback had a hundred hedgehogs.",
    "Inigo Impey itched for an Indian image.",
    "Jumping Jackey jeered a jesting juggler.",
    "Kimbo Kemble kicked his kinsman's kettle.",
    "Lanky Lawrence lost his lass and lobster.",
    "Matthew Mendlegs missed a mangled monkey.",
    "Neddy Noodle nipped his neighbour's nutmegs.",
    "Oliver Oglethorpe ogled an owl and oyster.",
    "Peter Piper picked a peck of pickled pepper.",
    "Quixote Quicksight quizzed a queerish quidbox.",
    "Rory Rumpus rode a raw-boned racer.",
    "Sammy Smellie smelt a smell of small-coal.",
    "Tip-toe Tommy turned a Turk for twopence.",
    "Uncle's usher urged an ugly urchin.",
    "Villiam Veedon viped his vig and vaistcoat.",
    "Walter Waddle won a walking wager.",
};

// Abraham Lincoln, address at Gettysburg, 1863 (public domain), from memory.
constexpr std::string_view ordinary_text =
    "Four score and seven years ago our fathers brought forth on this continent a new nation, "
    "conceived in liberty, and dedicated to the proposition that all men are created equal. "
    "Now we are engaged in a great civil war, testing whether that nation, or any nation so "
    "conceived and so dedicated, can long endure. "
    "We are met on a great battlefield of that war. "
    "We have come to dedicate a portion of that field, as a final resting place for those who here "
    "gave their lives that that nation might live. "
    "It is altogether fitting and proper that we should do this. "
    "But, in a larger sense, we can not dedicate, we can not consecrate, we can not hallow this "
    "ground. "
    "The brave men, living and dead, who struggled here, have consecrated it, far above our poor "
    "power to add or detract. "
    "The world will little note, nor long remember what we say here, but it can never forget what "
    "they did here. "
    "It is for us the living, rather, to be dedicated here to the unfinished work which they who "
    "fought here have thus far so nobly advanced.";

} // namespace

TEST_CASE("twister/flags most twisters of the book of 1813") {
    int flagged = 0;
    for (const std::string_view text : printed_twisters) {
        const Twister twister = twister_of(text);
        UNSCOPED_INFO(twister.score << "  " << text);
        if (twister.score > twister_default_threshold) ++flagged;
    }
    CHECK(flagged >= 16); // of 23: those of the vowels A, E, I, O and U are hardly hard to say
}

TEST_CASE("twister/leaves the Gettysburg address alone") {
    const std::vector<std::string> sentences = sentences_of(ordinary_text);
    REQUIRE(sentences.size() == 9);
    for (const std::string& text : sentences) {
        INFO(text);
        CHECK(twister_of(text).score < twister_strict_threshold);
    }
}

TEST_CASE("twister/leaves plain instructions alone") {
    // US federal plain-language guidelines, plainlanguage.gov (public domain), from memory.
    for (const std::string_view text :
         {"Use the active voice.", "Write short sentences and short paragraphs.",
          "Address one person, not a group.", "Place the main idea before exceptions."}) {
        INFO(text);
        CHECK(twister_of(text).score < twister_default_threshold);
    }
}

TEST_CASE("twister/finds the twister in the middle of ordinary talk") {
    const Line line =
        line_of("We had a look around the harbour and then Peter Piper picked a peck of "
                "pickled pepper before the tide came back.");
    const Twister twister = find_twister(line.words);
    CHECK(twister.score > twister_default_threshold);
    CHECK(line.texts[static_cast<std::size_t>(twister.first)] == "peter");
    CHECK(line.texts[static_cast<std::size_t>(twister.last) - 1] == "pepper");
}

TEST_CASE("twister/names the sounds and quotes the words") {
    // Errors between s and sh: Shattuck-Hufnagel and Klatt, J. Verbal Learning 18 (1979).
    CHECK(message_of("She sells sea shells.") == "s and sh trade places: 'she sells sea shells'");
    CHECK(message_of("Peter Piper picked a peck of pickled pepper.") ==
          "p piles up: 'peter piper picked a peck of pickled pepper'");
    CHECK(message_of("We count limpets until the tide turns.").empty());
}

TEST_CASE("twister/underlines from the first to the last word that holds the sounds") {
    const Line line = line_of("Today a proper copper coffee pot can wait.");
    const Twister twister = find_twister(line.words);
    REQUIRE(twister.score > twister_strict_threshold);
    REQUIRE_FALSE(twister.words.empty());
    CHECK(line.texts[static_cast<std::size_t>(twister.first)] == "proper");
    CHECK(twister.first <= twister.words.front());
    CHECK(twister.last > twister.words.back());
    for (const int word : twister.words) {
        const Phones& phones = line.phones[static_cast<std::size_t>(word)];
        CHECK(std::any_of(phones.begin(), phones.end(), [&](const Phone& phone) {
            return std::count(twister.sounds.begin(), twister.sounds.end(), phone.sound) > 0;
        }));
    }
}

TEST_CASE("twister/takes words joined by hyphens apart") {
    const Line joined = line_of("There were orange-green tiles, gold-green tiles.");
    const Line apart = line_of("There were orange green tiles, gold green tiles.");
    REQUIRE(joined.words.size() == 6);
    REQUIRE(apart.words.size() == 8);
    CHECK(find_twister(joined.words).score == find_twister(apart.words).score);
    const Line sells = line_of("Now she-sells six sea-shells.");
    const Twister twister = find_twister(sells.words);
    REQUIRE(twister.score > twister_strict_threshold);
    CHECK(twister.last == 4);
    CHECK(std::adjacent_find(twister.words.begin(), twister.words.end()) == twister.words.end());
    // What the writer says of the whole word is not taken apart.
    const Phones own = {{Sound::S, 0}, {Sound::IY, 1}};
    const std::vector<TwisterWord> words(4, TwisterWord{"sea-shells", own});
    CHECK(std::isfinite(find_twister(words).score));
    CHECK(std::isfinite(find_twister(std::vector<TwisterWord>(4, {"-", own})).score));
}

TEST_CASE("twister/gives few content words a low score and no place") {
    for (const std::string_view text : {"", "and of the", "Hello there.", "She sees cheese."}) {
        INFO(text);
        const Twister twister = twister_of(text);
        CHECK(std::isfinite(twister.score));
        CHECK(twister.score < twister_strict_threshold);
        CHECK(twister.first == twister.last);
        CHECK(twister.sounds.empty());
    }
}

TEST_CASE("twister/more of the same raises the score") {
    // Reiteration and likeness raise errors: Wilshire, Cognitive Science 23 (1999).
    CHECK(twister_of("Six cats sat here.").score < twister_of("Six slick cats sat still.").score);
    CHECK(twister_of("Big bears run home.").score < twister_of("Big bears bring bread.").score);
    CHECK(twister_of("Round rocks fell down.").score <
          twister_of("Round rocks rolled right.").score);
}

TEST_CASE("twister/a word that comes back is one word") {
    const Line line = line_of("sit sits sitting sister's sister saw cited");
    const auto contents = twister_model::measure(line.words);
    REQUIRE(contents.size() == 7);
    CHECK(contents[0].stem == contents[1].stem);
    CHECK(contents[0].stem == contents[2].stem);
    CHECK(contents[3].stem == contents[4].stem);
    CHECK(contents[0].stem != contents[3].stem);
    CHECK(contents[2].same_before == 1);
    CHECK(contents[5].same_before == 0);
}

TEST_CASE("twister/cuts syllables so that each begins with all it may") {
    // Maximal onset, as in Kahn, "Syllable-based generalizations in English phonology" (1976).
    const Line line = line_of("extreme angry until");
    const auto contents = twister_model::measure(line.words);
    using twister_model::begins_with;
    REQUIRE(contents.size() == 3);
    CHECK(begins_with(contents[0], Sound::S)); // ek-streme
    CHECK_FALSE(begins_with(contents[0], Sound::T));
    CHECK(contents[1].onset_count == 0); // ang-gry: the second syllable has no stress
    CHECK_FALSE(contents[1].has_onset);
    CHECK(begins_with(contents[2], Sound::T)); // un-til: "nt" begins no English syllable
}

TEST_CASE("twister/the chance of a vowel that comes back is the binomial tail") {
    const twister_model::Tables& tables = twister_model::tables();
    const double share = twister_model::vowel_share[static_cast<std::size_t>(Sound::IY)];
    const auto vowel = static_cast<std::size_t>(Sound::IY);
    // P(X >= 2) of Binomial(2, p) is p squared; of Binomial(3, p) it is 3 p^2 (1 - p) + p^3.
    CHECK(tables.tail(vowel, 2, 2) == Approx(-std::log10(share * share)));
    CHECK(tables.tail(vowel, 2, 3) ==
          Approx(-std::log10(3 * share * share * (1 - share) + share * share * share)));
    // Beyond the table the same function goes on.
    CHECK(tables.tail(vowel, 3, 41) < tables.tail(vowel, 3, 40));
    CHECK(tables.tail(vowel, 13, 50) > tables.tail(vowel, 12, 50));
    CHECK(tables.log_of(5000) == Approx(5000 * std::log(5000.0)));
}

TEST_CASE("twister/the likeness of sounds is even and one only for the same") {
    using twister_model::similarity;
    for (int i = 0; i < sound_count; ++i) {
        for (int j = 0; j < sound_count; ++j) {
            const auto one = static_cast<Sound>(i);
            const auto other = static_cast<Sound>(j);
            CHECK(similarity(one, other) == similarity(other, one));
            CHECK((similarity(one, other) == 1) == (i == j));
        }
    }
    // Pairs that differ in one feature are confused most: Frisch, Pierrehumbert and Broe, Natural
    // Language and Linguistic Theory 22 (2004); s and sh: Shattuck-Hufnagel and Klatt (1979).
    CHECK(similarity(Sound::S, Sound::SH) > similarity(Sound::S, Sound::T));
    CHECK(similarity(Sound::L, Sound::R) > similarity(Sound::L, Sound::K));
}

TEST_CASE("twister/bears endless words and endless texts") {
    const Phones endless(60000, Phone{Sound::S, 0});
    const std::vector<TwisterWord> words(40, TwisterWord{"sss", endless});
    CHECK(std::isfinite(find_twister(words).score));
    std::vector<std::string> names;
    names.reserve(5000);
    for (int i = 0; i < 5000; ++i)
        names.push_back("s" + std::to_string(i));
    const Phones sells = {{Sound::S, 0}, {Sound::EH, 1}, {Sound::L, 0}, {Sound::Z, 0}};
    std::vector<TwisterWord> many;
    many.reserve(names.size());
    for (const std::string& name : names)
        many.push_back({name, sells});
    const Twister twister = find_twister(many);
    CHECK(twister.score > twister_default_threshold);
    CHECK(twister.last - twister.first <= 9);
    const Phones vowels(60, Phone{Sound::IY, 1});
    const std::vector<TwisterWord> screams(12, TwisterWord{"eee", vowels});
    CHECK(std::isfinite(find_twister(screams).score));
    const std::vector<TwisterWord> silent(5, TwisterWord{"-", {}});
    CHECK(find_twister(silent).score == Twister{}.score);
}
