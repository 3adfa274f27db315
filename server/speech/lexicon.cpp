// How a word is looked up, step by step; docs/pronunciation.md tells it in words.
#include "speech/lexicon.h"

#include "speech/derive.h"
#include "speech/letter_to_sound.h"
#include "speech/lexicon_table.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <string>

namespace say {

namespace {

constexpr std::size_t longest_word =
    40; // letters; what is longer is no word and goes to the letter rules

Pronunciation pronounce_part(std::string_view word);

bool has_vowel_letter(std::string_view word) {
    return word.find_first_of("aeiouy") != std::string_view::npos;
}

void append(Phones& phones, const Phones& more) {
    phones.insert(phones.end(), more.begin(), more.end());
}

Phones sounds(std::string_view arpabet) {
    return from_arpabet(arpabet).value_or(Phones());
}

std::optional<Pronunciation> from_table(std::string_view word) {
    const auto packed = table::find(word);
    if (packed.empty()) return std::nullopt;
    std::vector<Phones> readings = table::all_readings(packed);
    Pronunciation result{std::move(readings.front()), Known::lexicon, {}};
    readings.erase(readings.begin());
    result.others = std::move(readings);
    return result;
}

// Lower-case ASCII letters and straight apostrophes; anything else becomes a hyphen, which parts
// words.
std::string plain_letters(std::string_view word) {
    std::string plain = ascii::lower(unicode::to_ascii(word));
    std::replace_if(
        plain.begin(), plain.end(), [](char c) { return !ascii::is_lower(c) && c != '\''; }, '-');
    return plain;
}

std::vector<std::string_view> parts_of(std::string_view plain) {
    std::vector<std::string_view> parts;
    for (std::size_t at = 0; at < plain.size();) {
        const std::size_t end = std::min(plain.find('-', at), plain.size());
        const std::string_view part = plain.substr(at, end - at);
        if (std::any_of(part.begin(), part.end(), ascii::is_lower)) parts.push_back(part);
        at = end + 1;
    }
    return parts;
}

// ---- Sounds people write without vowel letters ----

struct Interjection {
    std::string_view letters; // runs of a letter written once: "hm" for hmm and hmmmm
    std::string_view sounds;
};

// From memory: the sounds nearest to what is said; the clicks have no phone of their own.
constexpr Interjection interjections[] = {
    {"brr", "B ER1"},      {"br", "B ER1"},      {"grr", "G ER1"},
    {"gr", "G ER1"},       {"hm", "HH M"},       {"m", "M"},
    {"mhm", "M HH AH1 M"}, {"pf", "P F"},        {"pft", "P F T"},
    {"ps", "P S"},         {"pst", "P S T"},     {"sh", "SH"},
    {"tsk", "T IH1 S K"},  {"vrm", "V R UH1 M"}, {"z", "Z"},
    {"th", "TH"},          {"ths", "TH S"},
};

std::string without_runs(std::string_view word) {
    std::string result;
    std::unique_copy(word.begin(), word.end(), std::back_inserter(result));
    return result;
}

std::optional<Pronunciation> as_interjection(std::string_view word) {
    if (word.size() < 2 || has_vowel_letter(word)) return std::nullopt;
    const std::string once = without_runs(word);
    for (const Interjection& interjection : interjections) {
        if (interjection.letters == once) {
            return Pronunciation{sounds(interjection.sounds), Known::lexicon, {}};
        }
    }
    return std::nullopt;
}

// ---- Apostrophes ----

bool ends_in_vowel(const Phones& phones) {
    return !phones.empty() && is_vowel(phones.back().sound);
}

void append_contraction(Phones& phones, std::string_view ending) {
    const bool after_vowel = ends_in_vowel(phones);
    if (ending == "'s") {
        append_s(phones);
    } else if (ending == "'d") {
        append_ed(phones);
    } else if (ending == "'ll") {
        append(phones, sounds(after_vowel ? "L" : "AH0 L"));
    } else if (ending == "'ve") {
        append(phones, sounds(after_vowel ? "V" : "AH0 V"));
    } else if (ending == "'m") {
        append(phones, sounds(after_vowel ? "M" : "AH0 M"));
    } else if (ending == "'re") {
        append(phones, sounds("ER0"));
    } else if (ending == "n't") {
        append(phones, sounds("AH0 N T"));
    }
}

std::optional<Pronunciation> as_contraction(std::string_view word) {
    constexpr std::array<std::string_view, 7> contractions = {"'s",  "'d",  "'ll", "'ve",
                                                              "'re", "n't", "'m"};
    for (const std::string_view ending : contractions) {
        if (!word.ends_with(ending) || word.size() == ending.size()) continue;
        Pronunciation result = pronounce_part(word.substr(0, word.size() - ending.size()));
        append_contraction(result.phones, ending);
        result.others.clear();
        return result;
    }
    return std::nullopt;
}

// "runnin'" is "running" with another end.
std::optional<Pronunciation> as_clipped_ing(std::string_view word) {
    if (!word.ends_with("in'")) return std::nullopt;
    const std::string full = std::string(word.substr(0, word.size() - 1)) + 'g';
    auto phones = known_or_derived(full);
    if (!phones || phones->back().sound != Sound::NG) return std::nullopt;
    phones->back().sound = Sound::N;
    return Pronunciation{*phones, Known::lexicon, {}};
}

// Around the word ("dogs'", "'twas"), then within ("d'you").
std::optional<Pronunciation> without_apostrophes(std::string_view word) {
    if (word.find('\'') == std::string_view::npos) return std::nullopt;
    if (auto result = as_clipped_ing(word)) return result;
    std::string_view inner = word;
    while (inner.ends_with('\''))
        inner.remove_suffix(1);
    while (inner.starts_with('\''))
        inner.remove_prefix(1);
    if (inner != word) return pronounce_part(inner);
    if (auto result = as_contraction(word)) return result;
    std::string joined(word);
    std::erase(joined, '\'');
    return pronounce_part(joined);
}

// ---- Words nobody lists ----

// "sooo", "loooong": a letter held for effect. At the end of a word it stood once ("so"), inside it
// may have been doubled ("good").
std::optional<Pronunciation> without_held_letters(std::string_view word) {
    std::string once;
    std::string twice;
    for (std::size_t at = 0; at < word.size();) {
        std::size_t end = at;
        while (end < word.size() && word[end] == word[at])
            end++;
        const std::size_t run = end - at;
        once.append(run < 3 ? run : 1, word[at]);
        twice.append(std::min<std::size_t>(run, 2), word[at]);
        at = end;
    }
    if (once == word) return std::nullopt;
    const bool held_at_end = word.substr(word.size() - 2) == std::string(2, word.back());
    for (const std::string& written : {held_at_end ? once : twice, held_at_end ? twice : once}) {
        if (auto phones = known_or_derived(written))
            return Pronunciation{*phones, Known::lexicon, {}};
    }
    return std::nullopt;
}

Pronunciation as_letters(std::string_view word) {
    Pronunciation result;
    for (const Phones& letter : spell_out(word))
        append(result.phones, letter);
    return result;
}

// A guess has a stressed syllable where it has any.
Pronunciation guess(std::string_view letters) {
    Pronunciation result{guess_sounds(letters), Known::guess, {}};
    const auto stressed = [](const Phone& phone) { return phone.stress == 1; };
    const auto vowel = [](const Phone& phone) { return is_vowel(phone.sound); };
    Phones& phones = result.phones;
    if (std::none_of(phones.begin(), phones.end(), vowel)) return as_letters(letters);
    if (std::none_of(phones.begin(), phones.end(), stressed)) {
        std::find_if(phones.begin(), phones.end(), vowel)->stress = 1;
    }
    return result;
}

// Letters and apostrophes only, no hyphen.
Pronunciation pronounce_part(std::string_view word) {
    if (auto result = from_table(word)) return *result;
    if (word.size() > longest_word) return guess(word);
    if (auto result = without_apostrophes(word)) return *result;
    if (auto result = as_interjection(word)) return *result;
    if (!has_vowel_letter(word)) return as_letters(word);
    if (auto phones = with_ending(word)) return {*phones, Known::lexicon, {}};
    if (auto phones = with_prefix(word)) return {*phones, Known::lexicon, {}};
    if (auto result = without_held_letters(word)) return *result;
    if (auto phones = as_compound(word)) return {*phones, Known::lexicon, {}};
    return guess(word);
}

constexpr std::array<std::string_view, 26> letter_names = {
    "EY1",
    "B IY1",
    "S IY1",
    "D IY1",
    "IY1",
    "EH1 F",
    "JH IY1",
    "EY1 CH",
    "AY1",
    "JH EY1",
    "K EY1",
    "EH1 L",
    "EH1 M",
    "EH1 N",
    "OW1",
    "P IY1",
    "K Y UW1",
    "AA1 R",
    "EH1 S",
    "T IY1",
    "Y UW1",
    "V IY1",
    "D AH1 B AH0 L Y UW0",
    "EH1 K S",
    "W AY1",
    "Z IY1",
};

// The function words the timing model was fitted with: change them and its figures no longer hold
// (docs/timing.md). In the order of their bytes.
constexpr std::string_view function_words[] = {
    "'d",      "'ll",      "'m",      "'re",    "'s",      "'ve",     "a",       "about",  "after",
    "against", "although", "am",      "an",     "and",     "any",     "are",     "aren't", "as",
    "at",      "be",       "because", "been",   "before",  "being",   "between", "but",    "by",
    "can",     "can't",    "could",   "did",    "do",      "does",    "don't",   "during", "for",
    "from",    "had",      "has",     "have",   "having",  "he",      "he's",    "her",    "here",
    "him",     "his",      "i",       "i'd",    "i'll",    "i'm",     "i've",    "if",     "in",
    "into",    "is",       "isn't",   "it",     "it's",    "its",     "just",    "let's",  "may",
    "me",      "might",    "must",    "my",     "n't",     "no",      "nor",     "not",    "of",
    "on",      "onto",     "or",      "our",    "over",    "shall",   "she",     "she's",  "should",
    "since",   "so",       "some",    "than",   "that",    "that's",  "the",     "their",  "them",
    "there",   "there's",  "these",   "they",   "they're", "they've", "this",    "those",  "though",
    "through", "to",       "under",   "unless", "until",   "upon",    "us",      "was",    "wasn't",
    "we",      "we'll",    "we're",   "we've",  "were",    "what",    "what's",  "when",   "where",
    "whether", "which",    "while",   "who",    "whom",    "whose",   "will",    "with",   "within",
    "without", "won't",    "would",   "you",    "you'll",  "you're",  "you've",  "your",
};
static_assert(std::is_sorted(std::begin(function_words), std::end(function_words)));

} // namespace

bool in_lexicon(std::string_view word) {
    return !table::find(word).empty();
}

Pronunciation pronounce(std::string_view word) {
    if (auto result = from_table(word)) return *result;
    const std::string plain = plain_letters(word);
    const std::vector<std::string_view> parts = parts_of(plain);
    if (parts.size() == 1) return pronounce_part(parts.front());
    Pronunciation whole{{}, parts.empty() ? Known::guess : Known::lexicon, {}};
    for (const std::string_view part : parts) {
        const Pronunciation piece = pronounce_part(part);
        append(whole.phones, piece.phones);
        if (piece.known == Known::guess) whole.known = Known::guess;
    }
    return whole;
}

std::vector<Phones> spell_out(std::string_view letters) {
    std::vector<Phones> spelt;
    for (const char c : plain_letters(letters)) {
        if (ascii::is_lower(c))
            spelt.push_back(sounds(letter_names[static_cast<std::size_t>(c - 'a')]));
    }
    return spelt;
}

bool is_function_word(std::string_view word) {
    return std::binary_search(std::begin(function_words), std::end(function_words), word);
}

} // namespace say
