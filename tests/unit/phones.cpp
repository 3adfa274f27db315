// links: say_speech
// The three spellings of sounds. Sources: the phone list of the CMU Pronouncing Dictionary
// (cmudict.phones); the IPA chart for the symbols (the mapping from memory); the Voice of America
// pronunciation guide (US government) for respellings.
#include "speech/phones.h"

#include "speech/lexicon_table.h"
#include "support/catch.h"

#include <random>
#include <string>
#include <utility>
#include <vector>

using namespace say;

namespace {

// The checks compare texts: "nothing" stands for what could not be read.
std::string arpabet(const std::optional<Phones>& read) {
    return read ? to_arpabet(*read) : "nothing";
}

std::string ipa_read(std::string_view ipa) {
    return arpabet(from_ipa(ipa));
}

std::string respelling_read(std::string_view respelling) {
    return arpabet(from_respelling(respelling));
}

Phones phones(std::string_view arpabet) {
    return from_arpabet(arpabet).value_or(Phones());
}

std::vector<int> stressed_syllables(const Phones& word) {
    std::vector<int> places;
    int syllable = 0;
    for (const Phone& phone : word) {
        if (!is_vowel(phone.sound)) continue;
        if (phone.stress == 1) places.push_back(syllable);
        syllable++;
    }
    return places;
}

// A word of one syllable is stressed whatever the dictionary says.
bool keeps_syllables_and_stress(const Phones& reading, std::string_view respelling) {
    const Phones back = from_respelling(respelling).value_or(Phones());
    return syllable_count(back) == syllable_count(reading) &&
           (syllable_count(reading) == 1 ||
            stressed_syllables(back) == stressed_syllables(reading));
}

// Whatever was read can be written, and both exact spellings give it back.
void check_written(const Phones& read) {
    if (read.empty()) return;
    const std::string written = to_arpabet(read);
    CHECK(arpabet(from_arpabet(written)) == written);
    CHECK(ipa_read(to_ipa(read)) == written);
    CHECK_FALSE(to_respelling(read).empty());
}

struct Row {
    std::string_view arpabet;
    std::string_view ipa;
    std::string_view respelling;
    std::string_view word;         // the dictionary's own example, from cmudict's documentation
    std::string_view word_arpabet; // as it gives it
};

// clang-format off
const Row rows[] = {
    {"AA1", "ɑ", "ah", "odd", "AA1 D"},          {"AE1", "æ", "aa", "at", "AE1 T"},
    {"AH0", "ə", "uh", "alone", "AH0 L OW1 N"},  {"AH1", "ʌ", "uh", "hut", "HH AH1 T"},
    {"AO1", "ɔ", "aw", "ought", "AO1 T"},        {"AW1", "aʊ", "ow", "cow", "K AW1"},
    {"AY1", "aɪ", "eye", "hide", "HH AY1 D"},    {"EH1", "ɛ", "eh", "ed", "EH1 D"},
    {"ER0", "ɚ", "er", "butter", "B AH1 T ER0"}, {"ER1", "ɝ", "ur", "hurt", "HH ER1 T"},
    {"EY1", "eɪ", "ay", "ate", "EY1 T"},         {"IH1", "ɪ", "ih", "it", "IH1 T"},
    {"IY1", "i", "ee", "eat", "IY1 T"},          {"OW1", "oʊ", "oh", "oat", "OW1 T"},
    {"OY1", "ɔɪ", "oy", "toy", "T OY1"},         {"UH1", "ʊ", "uu", "hood", "HH UH1 D"},
    {"UW1", "u", "oo", "two", "T UW1"},          {"B", "b", "b", "be", "B IY1"},
    {"CH", "tʃ", "ch", "cheese", "CH IY1 Z"},    {"D", "d", "d", "dee", "D IY1"},
    {"DH", "ð", "th", "thee", "DH IY1"},         {"F", "f", "f", "fee", "F IY1"},
    {"G", "ɡ", "g", "green", "G R IY1 N"},       {"HH", "h", "h", "he", "HH IY1"},
    {"JH", "dʒ", "j", "gee", "JH IY1"},          {"K", "k", "k", "key", "K IY1"},
    {"L", "l", "l", "lee", "L IY1"},             {"M", "m", "m", "me", "M IY1"},
    {"N", "n", "n", "knee", "N IY1"},            {"NG", "ŋ", "ng", "ping", "P IH1 NG"},
    {"P", "p", "p", "pee", "P IY1"},             {"R", "ɹ", "r", "read", "R EH1 D"},
    {"S", "s", "s", "sea", "S IY1"},             {"SH", "ʃ", "sh", "she", "SH IY1"},
    {"T", "t", "t", "tea", "T IY1"},             {"TH", "θ", "th", "theta", "TH EY1 T AH0"},
    {"V", "v", "v", "vee", "V IY1"},             {"W", "w", "w", "we", "W IY1"},
    {"Y", "j", "y", "yield", "Y IY1 L D"},       {"Z", "z", "z", "zee", "Z IY1"},
    {"ZH", "ʒ", "zh", "seizure", "S IY1 ZH ER0"},
};
// clang-format on

} // namespace

TEST_CASE("phones/all sounds have the names of the dictionary") {
    // cmudict.phones, in the order of its letters within vowels and consonants
    const std::string_view names[] = {"AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH",
                                      "IY", "OW", "OY", "UH", "UW", "B",  "CH", "D",  "DH", "F",
                                      "G",  "HH", "JH", "K",  "L",  "M",  "N",  "NG", "P",  "R",
                                      "S",  "SH", "T",  "TH", "V",  "W",  "Y",  "Z",  "ZH"};
    REQUIRE(std::size(names) == sound_count);
    for (int i = 0; i < sound_count; i++) {
        const auto sound = static_cast<Sound>(i);
        CHECK(name_of(sound) == names[i]);
        CHECK(is_vowel(sound) ==
              (std::string_view("AEIOU").find(names[i][0]) != std::string_view::npos));
    }
}

TEST_CASE("phones/ARPAbet is read and written") {
    CHECK(to_arpabet(phones("P L IY1 Z")) == "P L IY1 Z");
    CHECK(to_arpabet(phones("  AH  B AW1\tT ")) == "AH0 B AW1 T");
    CHECK(phones("").empty());
    for (const std::string_view wrong : {"QQ", "P1", "AA3", "aa1", "P,L", "1", "AA11"}) {
        CHECK(arpabet(from_arpabet(wrong)) == "nothing");
    }
}

TEST_CASE("phones/syllables are counted by their vowels") {
    CHECK(syllable_count(phones("P L IY1 Z")) == 1);
    CHECK(syllable_count(phones("AH0 N EH1 M AH0 N IY0")) == 4);
    CHECK(syllable_count(phones("SH")) == 1);
    CHECK(syllable_count({}) == 0);
}

TEST_CASE("phones/syllables begin with what can begin a word") {
    // Maximal onset as any handbook of phonology gives it; from memory.
    using Starts = std::vector<std::size_t>;
    CHECK(syllable_starts(phones("P AH0 T EH1 L AH0")) == Starts{0, 2, 4});
    CHECK(syllable_starts(phones("AE2 B S T R AE1 K T")) == Starts{0, 2}); // ab-stract
    CHECK(syllable_starts(phones("IH0 K S P L EY1 N")) == Starts{0, 2});   // ek-splain
    CHECK(syllable_starts(phones("S IH1 NG ER0")) == Starts{0, 3});  // no syllable begins with ng
    CHECK(syllable_starts(phones("AE1 T L AH0 S")) == Starts{0, 2}); // at-las
    CHECK(syllable_starts(phones("AH0 K Y UW1 Z")) == Starts{0, 1}); // a-kyooz
    CHECK(syllable_starts(phones("P F T")) == Starts{0});
    CHECK(syllable_starts({}).empty());
}

TEST_CASE("phones/each sound has its IPA symbol and its respelling") {
    for (const Row& row : rows) {
        INFO(row.arpabet);
        const Phones one = phones(row.arpabet);
        CHECK(to_ipa(one) == row.ipa);
        CHECK(ipa_read(row.ipa) == row.arpabet);
        CHECK(to_respelling(one) == row.respelling);
        const auto packed = table::find(row.word);
        CHECK(to_arpabet(table::first_reading(packed)) == row.word_arpabet);
    }
}

TEST_CASE("phones/IPA marks stress before its syllable") {
    CHECK(to_ipa(phones("P L IY1 Z")) == "pliz");
    CHECK(to_ipa(phones("P AH0 T EH1 L AH0")) == "pəˈtɛlə");
    CHECK(to_ipa(phones("AE2 B S T R AE1 K T")) == "ˌæbˈstɹækt");
    CHECK(to_ipa(phones("IH0 Z")) == "‿ɪz"); // unstressed, though its vowel is not a weak one
    CHECK(to_ipa(phones("DH AH0")) == "ðə");
    // A dot keeps apart what would be read as one sound.
    CHECK(to_ipa(phones("N AH1 T SH EH2 L")) == "ˈnʌtˌʃɛl");
    CHECK(to_ipa(phones("D R AO1 IH0 NG")) == "ˈdɹɔ.ɪŋ");
    CHECK(to_ipa(phones("T SH AA1 M B EY0")) == "ˈt.ʃɑmbeɪ");
    CHECK(to_ipa({}).empty());
}

TEST_CASE("phones/IPA is read as dictionaries write it") {
    CHECK(ipa_read("/neɪm/") == "N EY1 M");
    CHECK(ipa_read("[ˈbʌt.ɚ]") == "B AH1 T ER0");
    CHECK(ipa_read("ˈt͡ʃiːz") == "CH IY1 Z");
    CHECK(ipa_read("d͡ʒʌd͡ʒ") == "JH AH1 JH");
    CHECK(ipa_read("ɡəʊt") == "G OW1 T");
    CHECK(ipa_read("ɡoʊt") == ipa_read("goʊt"));
    CHECK(ipa_read("nɜːs") == "N ER1 S");
    CHECK(ipa_read("lɒt") == "L AA1 T");
    CHECK(ipa_read("rɛd") == "R EH1 D");
    CHECK(ipa_read("ˈbʌtn̩") == "B AH1 T AH0 N");
    CHECK(ipa_read("ˌɪntəˈnæʃənəl") == "IH2 N T AH0 N AE1 SH AH0 N AH0 L");
    CHECK(ipa_read("ðə") == "DH AH0");
    for (const std::string_view wrong : {"", "//", "ˈ", "Q", "bʌ7", "ʘ", "猫"}) {
        INFO(wrong);
        CHECK(ipa_read(wrong) == "nothing");
    }
}

TEST_CASE("phones/IPA keeps every reading of the dictionary") {
    int n_readings = 0;
    int n_changed = 0;
    table::each_word([&](std::string_view word, const std::vector<Phones>& readings) {
        for (const Phones& reading : readings) {
            n_readings++;
            if (ipa_read(to_ipa(reading)) == to_arpabet(reading)) continue;
            n_changed++;
            UNSCOPED_INFO(word << ": " << to_arpabet(reading) << " /" << to_ipa(reading) << "/");
        }
    });
    CHECK(n_readings > 135000);
    CHECK(n_changed == 0);
}

TEST_CASE("phones/respelling puts the stress in capitals") {
    CHECK(to_respelling(phones("P AH0 T EH1 L AH0")) == "puh-TEHL-uh");
    CHECK(to_respelling(phones("HH AY1 D")) == "hyd");
    CHECK(to_respelling(phones("AY1 D IY0 AH0")) == "EYE-dee-uh");
    CHECK(to_respelling(phones("G L AE1 S")) == "glass"); // ss for a hiss where z might be read
    CHECK(to_respelling(phones("Y AY1 K S")) == "yeyeks");
    CHECK(to_respelling(phones("HH M")) == "hm");
    CHECK(to_respelling({}).empty());
}

TEST_CASE("phones/respellings of broadcasters are read") {
    // Voice of America pronunciation guide: its respellings; the sounds follow from its key.
    CHECK(respelling_read("ah-mah-dih-nee-ZHAHD") == "AA0 M AA0 D IH0 N IY0 ZH AA1 D");
    CHECK(respelling_read("dahl-eye LAH-mah") == "D AA0 L AY0 L AA1 M AA0");
    CHECK(respelling_read("mah-MOOD ah-BAH-SS") == "M AA0 M UW1 D AA0 B AA1 S");
    // Common practice, no source.
    CHECK(respelling_read("NAYM") == "N EY1 M");
    CHECK(respelling_read("naym") == "N EY1 M");
    CHECK(respelling_read("puh-TEHL-uh") == "P AH0 T EH1 L AH0");
    CHECK(respelling_read("MY-ruh") == "M AY1 R AH0");
    CHECK(respelling_read("MEE-ruh") == "M IY1 R AH0");
    CHECK(respelling_read("KYOOR") == "K Y UW1 R");
    CHECK(respelling_read("TYDE") == "T AY1 D");
    CHECK(respelling_read("LAYY") == "L EY1 Y");
    CHECK(respelling_read("NATE") == "N EY1 T");
    CHECK(respelling_read("koh‑LEET") == "K OW0 L IY1 T"); // a hyphen that does not break
    CHECK(respelling_read("sh") == "SH");
    for (const std::string_view wrong : {"", "-", " ", "puh-T3L", "banana", "é", "a_b", "猫"}) {
        INFO(wrong);
        CHECK(respelling_read(wrong) == "nothing");
    }
}

TEST_CASE("phones/respelling keeps the syllables and the stress of the whole dictionary") {
    int n_changed = 0;
    table::each_word([&](std::string_view word, const std::vector<Phones>& readings) {
        for (const Phones& reading : readings) {
            const std::string text = to_respelling(reading);
            if (keeps_syllables_and_stress(reading, text)) continue;
            n_changed++;
            if (n_changed < 30) {
                UNSCOPED_INFO(word << ": " << to_arpabet(reading) << " " << text << " "
                                   << respelling_read(text));
            }
        }
    });
    CHECK(n_changed == 0);
}

TEST_CASE("phones/any bytes are taken") {
    constexpr std::string_view pieces[] = {"ˈ", "ˌ",   "t",    "ʃ",    "͡",   "̩",   "ː",  "/",
                                           "‿", "ə",   "ɝ",    "-",    " ",  "a",  "AH", "y",
                                           "e", "AA1", "\xFF", "\xCB", "\0", "ss", "Q",  "o"};
    std::mt19937 random(1813);
    std::uniform_int_distribution<std::size_t> piece(0, std::size(pieces) - 1);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int round = 0; round < 20000; round++) {
        std::string text;
        const auto length = static_cast<int>(piece(random));
        for (int i = 0; i < length; i++) {
            if (round % 2 == 0) {
                text += pieces[piece(random)];
            } else {
                text += static_cast<char>(byte(random));
            }
        }
        check_written(from_arpabet(text).value_or(Phones()));
        check_written(from_ipa(text).value_or(Phones()));
        check_written(from_respelling(text).value_or(Phones()));
    }
}
