// links: say_speech
// Pronunciations against the CMU Pronouncing Dictionary (BSD-2), the source of every reading below
// that names none; the rules for endings are those of any English grammar ("common practice, no
// source").
#include "speech/lexicon.h"

#include "speech/derive.h"
#include "speech/letter_to_sound.h"
#include "speech/lexicon_table.h"
#include "support/catch.h"
#include "text/ascii.h"

#include <algorithm>
#include <cstdint>
#include <random>
#include <string>
#include <thread>
#include <utility>
#include <vector>

using namespace say;

namespace {

std::string sounds(std::string_view word) {
    return to_arpabet(pronounce(word).phones);
}

bool is_known(std::string_view word) {
    return pronounce(word).known == Known::lexicon;
}

bool has_sounds(const std::vector<Phones>& readings, const Phones& sounds) {
    const auto same = [](const Phone& a, const Phone& b) { return a.sound == b.sound; };
    return std::any_of(readings.begin(), readings.end(), [&](const Phones& reading) {
        return std::equal(reading.begin(), reading.end(), sounds.begin(), sounds.end(), same);
    });
}

struct Case {
    std::string_view word;
    std::string_view arpabet;
};

} // namespace

TEST_CASE("lexicon/the whole dictionary is packed") {
    // Counted in the dictionary's text: 135,166 lines, 126,052 words.
    CHECK(table::word_count() == 126052);
    CHECK(table::byte_count() < 2'000'000);
    std::size_t n_words = 0;
    std::size_t n_readings = 0;
    std::size_t n_lost = 0;
    std::string previous;
    table::each_word([&](std::string_view word, const std::vector<Phones>& readings) {
        n_words++;
        n_readings += readings.size();
        if (table::all_readings(table::find(word)) != readings) n_lost++;
        if (!previous.empty() && word <= previous) n_lost++;
        previous = word;
    });
    CHECK(n_words == 126052);
    CHECK(n_readings > 135000);
    CHECK(n_lost == 0);
}

TEST_CASE("lexicon/words of the dictionary have its readings") {
    const Case cases[] = {
        {"please", "P L IY1 Z"},
        {"the", "DH AH0"},
        {"a", "AH0"},
        {"of", "AH1 V"},
        {"and", "AH0 N D"},
        {"to", "T UW1"},
        {"you're", "Y UH1 R"},
        {"don't", "D OW1 N T"},
        {"o'clock", "AH0 K L AA1 K"},
        {"tide", "T AY1 D"},
        {"limpets", "L IH1 M P AH0 T S"},
        {"barnacle", "B AA1 R N AH0 K AH0 L"},
        {"shoreline", "SH AO1 R L AY2 N"},
        {"antidisestablishmentarianism", // the longest
         "AE2 N T AY0 D IH2 S AH0 S T AE2 B L IH0 SH M AH0 N T EH1 R IY0 AH0 N IH2 Z AH0 M"},
        {"zyuganov", "Z Y UW1 G AA0 N AA0 V"},
        {"'bout", "B AW1 T"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        CHECK(in_lexicon(c.word));
        CHECK(sounds(c.word) == c.arpabet);
        CHECK(is_known(c.word));
    }
    CHECK(pronounce("read").others == std::vector<Phones>{*from_arpabet("R IY1 D")});
    CHECK(to_arpabet(pronounce("read").phones) == "R EH1 D");
    CHECK(pronounce("tide").others.empty());
}

TEST_CASE("lexicon/what is not a word is not in it") {
    for (const std::string_view word :
         {"", " ", "limpe", "limpetss", "zzzzzzzz", "\xFF", "a\xCC\x81", "THE", "tide ", "~"}) {
        INFO(word);
        CHECK_FALSE(in_lexicon(word));
    }
    // Every word cut by a letter, or with one too many, is looked up without harm.
    std::size_t n_found = 0;
    table::each_word([&](std::string_view word, const std::vector<Phones>&) {
        n_found += in_lexicon(word.substr(0, word.size() - 1)) ? 1U : 0U;
        n_found += in_lexicon(std::string(word) + '\x7F') ? 1000000U : 0U;
    });
    CHECK(n_found < 1000000);
}

TEST_CASE("lexicon/endings sound as the sound before them asks") {
    const Case cases[] = {
        // -s: S after a voiceless sound, IH0 Z after a hiss, Z else
        {"nudists's", "N UW1 D IH0 S T S IH0 Z"},
        {"barnacle's", "B AA1 R N AH0 K AH0 L Z"},
        {"rockfish's", "R AA1 K F IH2 SH IH0 Z"},
        {"kelp's", "K EH1 L P S"},
        {"limpets'", "L IH1 M P AH0 T S"},
        // -ed: T after a voiceless sound, IH0 D after T and D, D else
        {"rewatched", "R IY0 W AA1 CH T"},
        {"reseeded", "R IY0 S IY1 D IH0 D"},
        {"unmoored", "AH0 N M UH1 R D"},
        {"slippered", "S L IH1 P ER0 D"},
        {"barnacled", "B AA1 R N AH0 K AH0 L D"},
        {"chromeless", "K R OW1 M L AH0 S"},
        {"draggable", "D R AE1 G AH0 B AH0 L"},
        {"resizing", "R IY0 S AY1 Z IH0 NG"},
        {"weedily", "W IY1 D AH0 L IY0"},
        {"limpet", "L IH1 M P AH0 T"}, // the dictionary has only its plural
        {"jumpin'", "JH AH1 M P IH0 N"},
        {"tide'll", "T AY1 D AH0 L"},
        {"jo've", "JH OW1 V"},
        {"tides're", "T AY1 D Z ER0"},
        {"chalky", "CH AA1 K IY0"},
        {"toasty", "T OW1 S T IY0"},
        {"escapist", "IH0 S K EY1 P AH0 S T"},
        {"oxygenation", "AA2 K S AH0 JH AH0 N EY1 SH AH0 N"},
        {"resonator", "R EH1 Z AH0 N EY2 T ER0"},
        {"usability", "Y UW2 Z AH0 B IH1 L AH0 T IY0"},
        {"positional", "P AH0 Z IH1 SH AH0 N AH0 L"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        CHECK_FALSE(in_lexicon(c.word));
        CHECK(sounds(c.word) == c.arpabet);
        CHECK(is_known(c.word));
    }
}

TEST_CASE("lexicon/British spellings sound as the American ones") {
    // The sounds are the dictionary's under its own spelling; which spelling is which is common
    // practice, no source.
    const std::pair<std::string_view, std::string_view> pairs[] = {
        {"flavour", "flavor"},         {"flavourings", "flavorings"},
        {"organised", "organized"},    {"analysed", "analyzed"},
        {"calibre", "caliber"},        {"meagre", "meager"},
        {"sombre", "somber"},          {"manoeuvring", "maneuvering"},
        {"enrol", "enroll"},           {"enrols", "enrolls"},
        {"enrolment", "enrollment"},   {"instalments", "installments"},
        {"jewellery", "jewelry"},      {"councillors", "councilors"},
        {"sceptical", "skeptical"},    {"artefacts", "artifacts"},
        {"pyjamas", "pajamas"},        {"gaol", "jail"},
        {"gaoler", "jailer"},          {"liquorice", "licorice"},
        {"yoghurt", "yogurt"},         {"omelette", "omelet"},
        {"mollusc", "mollusk"},        {"oesophagus", "esophagus"},
        {"sulphide", "sulfide"},       {"chequebook", "checkbook"},
        {"smouldering", "smoldering"}, {"fibreglass", "fiberglass"},
        {"kilogrammes", "kilograms"},  {"tranquilliser", "tranquilizer"},
        {"draughtsman", "draftsman"},  {"despatches", "dispatches"},
        {"chilli", "chili"},
    };
    for (const auto& [british, american] : pairs) {
        INFO(british);
        CHECK_FALSE(in_lexicon(british));
        CHECK(is_known(british));
        CHECK(sounds(british) == sounds(american));
    }
    CHECK(sounds("tilled") == "T IH1 L D"); // not "tiled"
}

TEST_CASE("lexicon/endings agree with the dictionary where it has the word itself") {
    // Leaving one out: the dictionary's own plurals, pasts and participles of verbs are the check
    // values.
    const std::pair<std::string_view, std::string_view> pairs[] = {
        {"tide", "tides"},    {"wash", "washes"},  {"carry", "carries"}, {"walk", "walks"},
        {"wade", "waded"},    {"walk", "walked"},  {"count", "counted"}, {"wash", "washed"},
        {"crab", "crabs"},    {"rock", "rocks"},   {"pool", "pools"},    {"seal", "sealed"},
        {"match", "matched"}, {"judge", "judged"}, {"beg", "begged"},    {"hop", "hopped"}};
    for (const auto& [base, form] : pairs) {
        INFO(form);
        REQUIRE(in_lexicon(form));
        // The contraction makes the rule add to the base what the spelling adds.
        const bool is_past = form.ends_with("ed");
        const Phones built = pronounce(std::string(base) + (is_past ? "'d" : "'s")).phones;
        Pronunciation listed = pronounce(form);
        listed.others.push_back(listed.phones);
        const bool is_listed =
            std::any_of(listed.others.begin(), listed.others.end(), [&](const Phones& reading) {
                // The dictionary writes the weak vowel of an ending as IH0 or AH0.
                return reading.size() == built.size() &&
                       std::equal(reading.begin(), reading.end(), built.begin(),
                                  [](const Phone& a, const Phone& b) {
                                      const auto weak = [](const Phone& p) {
                                          return p.stress == 0 &&
                                                 (p.sound == Sound::AH || p.sound == Sound::IH);
                                      };
                                      return a == b || (weak(a) && weak(b));
                                  });
            });
        CHECK(is_listed);
    }
}

TEST_CASE("lexicon/rules find the sounds the dictionary gives") {
    // Every word of the dictionary that a rule can build from others, held against its own entry:
    // the share with the same sounds (stress aside), and that of the letter rules, which were
    // trained on these very words. The bounds are what was measured, rounded down.
    struct Tally {
        int n = 0;
        int by_rule = 0;
        int by_letters = 0;
        void add(const Phones& rule, const Phones& letters, const std::vector<Phones>& readings) {
            n++;
            by_rule += has_sounds(readings, rule) ? 1 : 0;
            by_letters += has_sounds(readings, letters) ? 1 : 0;
        }
    };
    Tally endings;
    Tally prefixes;
    Tally compounds;
    table::each_word([&](std::string_view word, const std::vector<Phones>& readings) {
        if (word.size() < 5 || !std::all_of(word.begin(), word.end(), ascii::is_lower)) return;
        const Phones letters = guess_sounds(word);
        if (const auto ending = with_ending(word)) {
            endings.add(*ending, letters, readings);
        } else if (const auto prefix = with_prefix(word)) {
            prefixes.add(*prefix, letters, readings);
        } else if (const auto compound = as_compound(word)) {
            compounds.add(*compound, letters, readings);
        }
    });
    CHECK(endings.n > 39000);
    CHECK(endings.by_rule > 0.88 * endings.n);
    CHECK(endings.by_rule > endings.by_letters);
    CHECK(prefixes.n > 1900);
    CHECK(prefixes.by_rule > 0.74 * prefixes.n);
    CHECK(prefixes.by_rule > prefixes.by_letters);
    CHECK(compounds.n > 2500);
    CHECK(compounds.by_rule > 0.77 * compounds.n);
}

TEST_CASE("lexicon/compounds are said as their parts") {
    const Case cases[] = {
        {"tidepool", "T AY1 D P UW2 L"},
        {"rockpools", "R AA1 K P UW2 L Z"},
        {"tidewatcher", "T AY1 D W AA2 CH ER0"},
        {"livestreaming", "L AY1 V S T R IY2 M IH0 NG"},
        {"rock-pool", "R AA1 K P UW1 L"},
        {"low-tide", "L OW1 T AY1 D"},
        {"ebook", "IY1 B UH2 K"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        CHECK_FALSE(in_lexicon(c.word));
        CHECK(sounds(c.word) == c.arpabet);
        CHECK(is_known(c.word));
    }
}

TEST_CASE("lexicon/units are known with every prefix") {
    // Prefixes and special names of the SI Brochure (BIPM, 9th edition; tables 4 and 7).
    for (const std::string prefix :
         {"",      "quecto", "ronto", "yocto", "zepto", "atto",  "femto", "pico", "nano",
          "micro", "milli",  "centi", "deci",  "deca",  "hecto", "kilo",  "mega", "giga",
          "tera",  "peta",   "exa",   "zetta", "yotta", "ronna", "quetta"}) {
        for (const std::string unit :
             {"radians",  "steradians", "hertz",  "newtons",    "pascals", "joules",   "watts",
              "coulombs", "volts",      "farads", "ohms",       "siemens", "webers",   "teslas",
              "henries",  "lumens",     "lux",    "becquerels", "grays",   "sieverts", "katals"}) {
            INFO(prefix + unit);
            CHECK(is_known(prefix + unit));
        }
    }
    // The dictionary's own units of this form are said alike, stress and the weak vowel of "kilo"
    // aside.
    for (const std::string_view word : {"kilograms", "megahertz", "gigabyte", "millimeter",
                                        "centimeters", "milligram", "megawatts", "nanometer"}) {
        INFO(word);
        std::vector<Phones> readings = table::all_readings(table::find(word));
        CHECK(has_sounds(readings, as_unit(word).value_or(Phones())));
    }
    CHECK(sounds("kilojoules") == "K IH1 L AH0 JH UW2 L Z");
    CHECK(sounds("millivolts") == "M IH1 L AH0 V OW2 L T S");
    CHECK_FALSE(as_unit("kilo"));
    CHECK_FALSE(as_unit("kiloss"));
    CHECK_FALSE(as_unit(""));
}

TEST_CASE("lexicon/unknown words are guessed from their letters") {
    for (const std::string_view word : {"nudibranch", "blorpix", "mehevi", "quelvane"}) {
        INFO(word);
        const Pronunciation guess = pronounce(word);
        CHECK(guess.known == Known::guess);
        CHECK(guess.phones.size() > 3);
        const auto n_stressed = std::count_if(guess.phones.begin(), guess.phones.end(),
                                              [](const Phone& phone) { return phone.stress == 1; });
        CHECK(n_stressed == 1);
    }
    CHECK(pronounce("nudibranch's").known == Known::guess);
    CHECK(sounds("nudibranch's") == sounds("nudibranch") + " IH0 Z");
    // Letters that sound one way: the letter rules themselves, from memory of English spelling.
    CHECK(to_arpabet(guess_sounds("plim")) == "P L IH1 M");
    CHECK(guess_sounds("").empty());
    CHECK(guess_sounds("123 '-\xFF").empty());
}

TEST_CASE("lexicon/no guess is beyond an English mouth") {
    // What can begin a word: Roach, English Phonetics and Phonology, chapter 8, tables 2 and 3. The
    // words of the dictionary are what is guessed, and their own syllables the check values.
    int n = 0;
    int n_unsayable = 0;
    int n_syllables_right = 0;
    table::each_word([&](std::string_view word, const std::vector<Phones>& readings) {
        if (word.size() < 4 || !std::all_of(word.begin(), word.end(), ascii::is_lower)) return;
        const Phones guess = guess_sounds(word);
        const auto vowel = [](const Phone& phone) { return is_vowel(phone.sound); };
        const auto first = std::find_if(guess.begin(), guess.end(), vowel);
        const auto last = std::find_if(guess.rbegin(), guess.rend(), vowel).base();
        if (first == guess.end()) return;
        n++;
        n_unsayable +=
            can_begin_word({guess.begin(), first}) && can_end_word({last, guess.end()}) ? 0 : 1;
        n_syllables_right += std::any_of(readings.begin(), readings.end(), [&](const Phones& own) {
            return syllable_count(own) == syllable_count(guess);
        });
    });
    CHECK(n > 110000);
    CHECK(n_unsayable == 0);
    CHECK(n_syllables_right > 0.93 * n);
    // Names that no dictionary has, from memory.
    const Case cases[] = {
        {"treacle", "T R IY1 K AH0 L"},          {"ciabatta", "CH AH0 B AE1 T AH0"},
        {"patisserie", "P AH0 T IH1 S ER0 IY0"}, {"halloumi", "HH AE1 L UW2 M IY0"},
        {"calibre", "K AE1 L AH0 B ER0"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        Phones guess = guess_sounds(c.word);
        for (Phone& phone : guess)
            phone.stress = std::min<std::uint8_t>(phone.stress, 2);
        CHECK(to_arpabet(guess) == c.arpabet);
    }
    const auto onset = [](std::string_view arpabet) { return from_arpabet(arpabet).value(); };
    for (const std::string_view good : {"", "S", "T R", "S P L", "S K W", "F Y", "SH R", "TH W"})
        CHECK(can_begin_word(onset(good)));
    for (const std::string_view bad : {"NG", "P T", "CH B", "T R K", "T L", "D L", "S P W", "R T"})
        CHECK_FALSE(can_begin_word(onset(bad)));
    for (const std::string_view good : {"", "NG", "L F TH S", "R M", "K S T S", "L M"})
        CHECK(can_end_word(onset(good)));
    for (const std::string_view bad : {"B R", "K L", "S M", "N R", "W", "HH"})
        CHECK_FALSE(can_end_word(onset(bad)));
}

TEST_CASE("lexicon/accents and other letters are folded") {
    CHECK(sounds("café") == sounds("cafe"));
    CHECK(sounds("naïve") == sounds("naive"));
    CHECK(is_known("café"));
    CHECK_FALSE(sounds("Σωκράτης").empty());
}

TEST_CASE("lexicon/accents that tell the sound are heard") {
    // Readings of the dictionary's words without accents, where those are not the first ones.
    for (const auto& [accented, plain] : {std::pair{"résumé", "resume"}, {"cliché", "cliche"}}) {
        INFO(accented);
        CHECK(has_sounds(table::all_readings(table::find(plain)), pronounce(accented).phones));
        CHECK(pronounce(accented).known == Known::lexicon);
    }
    // From memory.
    const Case cases[] = {
        {"pâté", "P AA0 T EY1"},
        {"pâtés", "P AA0 T EY1 Z"},
        {"résumé", "R EH1 Z AH0 M EY2"},
        {"résumé's", "R EH1 Z AH0 M EY2 Z"},
        {"rosé", "R OW0 Z EY1"},
        {"exposés", "EH2 K S P OW0 Z EY1 Z"},
        {"flambéed", "F L AA0 M B EY1 D"},
        {"crème", "K R EH1 M"},
        {"crème-brûlée", "K R EH1 M B R UW0 L EY1"},
        {"papier-mâché", "P EY1 P Y ER0 M AA0 SH EY1"},
        {"vis-à-vis", "V IY2 Z AH0 V IY1"},
        {"doppelgänger", "D AA1 P AH0 L G AE2 NG ER0"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        CHECK(sounds(c.word) == c.arpabet);
        CHECK(is_known(c.word));
    }
    // An é that nobody listed is said, and the word is a guess; where it is said anyway it is none.
    CHECK(sounds("plopé") == "P L OW0 P EY1");
    CHECK(sounds("tidé") == "T AY0 D EY1");
    CHECK_FALSE(is_known("tidé"));
    CHECK(sounds("André") == sounds("andre"));
    CHECK(is_known("andré"));
    CHECK(sounds("naïve-looking") == sounds("naive-looking"));
}

TEST_CASE("lexicon/words without vowels and single letters have a sound") {
    // Common practice, no source, but for the names of the letters.
    CHECK(sounds("hmmm") == "HH M");
    CHECK(sounds("hmmmmmmm") == "HH M");
    CHECK(sounds("brrrr") == "B ER1");
    CHECK(sounds("tsk") == "T IH1 S K");
    CHECK(sounds("shhh") == "SH");
    CHECK(sounds("psst") == "P S T");
    CHECK(sounds("sooo") == "S OW1");
    CHECK(sounds("kdt") == "K EY1 D IY1 T IY1");
    for (char c = 'a'; c <= 'z'; c++) {
        INFO(c);
        CHECK_FALSE(pronounce(std::string(1, c)).phones.empty());
    }
}

TEST_CASE("lexicon/letters are spelt out") {
    CHECK(spell_out("FBI") == spell_out("fbi"));
    const auto spelt = spell_out("fbi");
    REQUIRE(spelt.size() == 3);
    CHECK(to_arpabet(spelt[0]) == "EH1 F");
    CHECK(to_arpabet(spelt[1]) == "B IY1");
    CHECK(to_arpabet(spelt[2]) == "AY1");
    CHECK(spell_out("1-.").empty());
    // The dictionary has the name of each letter among its readings of the letter as a word.
    for (char c = 'a'; c <= 'z'; c++) {
        const std::string letter(1, c);
        INFO(letter);
        const auto readings = table::all_readings(table::find(letter));
        CHECK(std::find(readings.begin(), readings.end(), spell_out(letter).front()) !=
              readings.end());
    }
}

TEST_CASE("lexicon/function words are those of the timing model") {
    for (const std::string_view word :
         {"the", "of", "can't", "'s", "n't", "what's", "any", "there"}) {
        CHECK(is_function_word(word));
    }
    for (const std::string_view word : {"tide", "limpet", "very", "", "The", "couldn't", "every"}) {
        CHECK_FALSE(is_function_word(word));
    }
}

TEST_CASE("lexicon/everyday words are known in all their forms") {
    // Readings from memory; the list itself is made from another dictionary (data/NOTICE).
    const Case cases[] = {
        {"treacle", "T R IY1 K AH0 L"},
        {"duvets", "D UW2 V EY1 Z"},
        {"courgettes", "K UH2 R ZH EH1 T S"},
        {"sourdough", "S AW1 ER0 D OW2"},
        {"pasty", "P AE1 S T IY0"},
        {"pasties", "P AE1 S T IY0 Z"},
        {"quayside", "K IY1 S AY2 D"},
        {"chorizo", "CH ER0 IY1 S OW0"},
        {"halloumi", "HH AH0 L UW1 M IY0"},
        {"ciabatta", "CH AH0 B AA1 T AH0"},
        {"batsmen", "B AE1 T S M AH0 N"},
        {"whelks", "W EH1 L K S"},
        {"curtseying", "K ER1 T S IY0 IH0 NG"},
    };
    for (const Case& c : cases) {
        INFO(c.word);
        CHECK_FALSE(in_lexicon(c.word));
        CHECK(is_known(c.word));
        CHECK(sounds(c.word) == c.arpabet);
    }
    for (const std::string_view word :
         {"patisserie", "enrol",       "instalment",     "pyjamas",   "gaol",      "carapace",
          "omelette",   "jewellery",   "sceptical",      "artefact",  "liquorice", "yoghurt",
          "calibre",    "manoeuvring", "mollusc",        "gastropod", "limpet",    "periwinkle",
          "waistcoat",  "nappy",       "aeroplane",      "muesli",    "plaice",    "crumpets",
          "marquee",    "serviette",   "physiotherapist"}) {
        INFO(word);
        CHECK(is_known(word));
    }
}

TEST_CASE("lexicon/our own readings stand before the dictionary's") {
    // The dictionary's first reading of the sea creature is not the usual one.
    CHECK(sounds("anemone") == "AH0 N EH1 M AH0 N IY0");
    CHECK(pronounce("anemone").others == std::vector<Phones>{*from_arpabet("AE1 N IH0 M OW2 N")});
    CHECK(sounds("vlog") == "V L AA1 G");
    CHECK_FALSE(in_lexicon("vlog"));
}

TEST_CASE("lexicon/any bytes are taken") {
    for (const std::string_view nothing :
         {"", "3", "...", "-", "'", "''''", "\xFF\xFE", "🐚", "'-'-'"}) {
        INFO(nothing);
        CHECK(pronounce(nothing).phones.empty());
        CHECK(pronounce(nothing).known == Known::guess);
    }
    // Long runs, which a rule that recurses would not survive.
    for (const std::string_view piece :
         {"'s", "a", "b", "un", "-", "n't", "ing", "a-", "'", "\xC3\xA9"}) {
        std::string text;
        while (text.size() < 65536)
            text += piece;
        CHECK(pronounce(text).phones.size() < 4 * text.size());
        CHECK(spell_out(text).size() <= text.size());
    }
    constexpr std::string_view pieces[] = {
        "un", "re", "tide", "pool", "'", "'s",  "n't", "-",  "ing", "ed",  "er", "ly",
        "q",  "zz", "ooo",  "\xFF", "é", "ies", "s",   "es", "bly", "our", "ß",  "7"};
    std::mt19937 random(1813);
    std::uniform_int_distribution<std::size_t> piece(0, std::size(pieces) - 1);
    std::uniform_int_distribution<int> byte(0, 255);
    for (int round = 0; round < 20000; round++) {
        std::string text;
        for (std::size_t i = piece(random) % 8; i > 0; i--) {
            if (round % 2 == 0) {
                text += pieces[piece(random)];
            } else {
                text += static_cast<char>(byte(random));
            }
        }
        const Pronunciation result = pronounce(text);
        const bool has_letter = std::any_of(text.begin(), text.end(), ascii::is_letter);
        if (has_letter) CHECK_FALSE(result.phones.empty());
    }
}

TEST_CASE("lexicon/guesses may be asked for on several threads") {
    const Phones expected = guess_sounds("nudibranch");
    std::vector<std::thread> threads;
    std::vector<int> wrong(4, 0);
    threads.reserve(wrong.size());
    for (int& count : wrong) {
        threads.emplace_back([&count, &expected] {
            for (int i = 0; i < 2000; i++)
                count += guess_sounds("nudibranch") == expected ? 0 : 1;
        });
    }
    for (std::thread& thread : threads)
        thread.join();
    CHECK(wrong == std::vector<int>(4, 0));
}
