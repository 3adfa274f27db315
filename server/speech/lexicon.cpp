// How a word is looked up, step by step; docs/pronunciation.md tells it in words.
#include "speech/lexicon.h"

#include "speech/derive.h"
#include "speech/letter_to_sound.h"
#include "speech/lexicon_table.h"
#include "speech/own_words.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <optional>
#include <span>
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

Pronunciation by_rule(const Phones& phones) {
    return {phones, Known::lexicon, {}};
}

// Our own list, then the dictionary. A word that our list puts first keeps the dictionary's
// readings behind it.
std::optional<Pronunciation> known_word(std::string_view word) {
    auto listed = from_table(word);
    const auto own = own_word(word);
    if (!own) return listed;
    Pronunciation result = by_rule(*own);
    if (!listed) return result;
    listed->others.push_back(listed->phones);
    std::erase(listed->others, *own);
    result.others = listed->others;
    return result;
}

// Each run of one letter cut to at most `longest`.
std::string with_runs_of(std::string_view word, std::size_t longest) {
    std::string result;
    std::size_t run = 0;
    for (const char c : word) {
        run = !result.empty() && result.back() == c ? run + 1 : 1;
        if (run <= longest) result += c;
    }
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

// "hmmmm" as "hm", "brrr" as "brr": a held sound is looked up with its letters once, then twice.
std::optional<Pronunciation> as_held_sound(std::string_view word) {
    if (word.size() < 2 || has_vowel_letter(word)) return std::nullopt;
    for (const std::string& written : {with_runs_of(word, 1), with_runs_of(word, 2)}) {
        if (auto result = known_word(written)) return result;
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
    return by_rule(*phones);
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

// "sooo", "gooood": a letter held for effect. At the end of a word it stood once ("so"), inside it
// may have been doubled ("good").
std::optional<Pronunciation> without_held_letters(std::string_view word) {
    const std::string twice = with_runs_of(word, 2);
    if (twice == word) return std::nullopt;
    const std::string once = with_runs_of(word, 1);
    const bool held_at_end = word.ends_with(std::string(3, word.back()));
    for (const std::string& written : {held_at_end ? once : twice, held_at_end ? twice : once}) {
        if (auto phones = known_or_derived(written)) return by_rule(*phones);
    }
    return std::nullopt;
}

Pronunciation as_letters(std::string_view word) {
    Pronunciation result;
    for (const Phones& letter : spell_out(word))
        append(result.phones, letter);
    return result;
}

// The rules guess letter by letter and may stress several syllables or none. One is right, and of
// several it is more often the first: 15,412 of 27,815 words of the dictionary, against 11,519 for
// the last.
void keep_one_stress(Phones& phones) {
    bool seen = false;
    for (Phone& phone : phones) {
        if (phone.stress == 1 && seen) phone.stress = 2;
        seen = seen || phone.stress == 1;
    }
    const auto vowel = std::find_if(phones.begin(), phones.end(),
                                    [](const Phone& phone) { return is_vowel(phone.sound); });
    if (!seen && vowel != phones.end()) vowel->stress = 1;
}

Pronunciation guess(std::string_view letters) {
    Pronunciation result{guess_sounds(letters), Known::guess, {}};
    keep_one_stress(result.phones);
    return result;
}

// Letters and apostrophes only, no hyphen.
Pronunciation pronounce_part(std::string_view word) {
    if (auto result = known_word(word)) return *result;
    if (word.size() > longest_word) return guess(word);
    if (auto result = without_apostrophes(word)) return *result;
    if (auto result = as_held_sound(word)) return *result;
    if (!has_vowel_letter(word)) return as_letters(word);
    if (auto result = without_held_letters(word)) return *result;
    using Rule = std::optional<Phones> (*)(std::string_view);
    constexpr Rule rules[] = {in_american_spelling, as_unit,     with_ending,
                              with_prefix,          as_compound, as_letter_and_word};
    for (const Rule rule : rules) {
        if (const auto phones = rule(word)) return by_rule(*phones);
    }
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

Pronunciation joined(std::span<const Pronunciation> pieces) {
    Pronunciation whole{{}, pieces.empty() ? Known::guess : Known::lexicon, {}};
    for (const Pronunciation& piece : pieces) {
        append(whole.phones, piece.phones);
        if (piece.known == Known::guess) whole.known = Known::guess;
    }
    return pieces.size() == 1 ? pieces.front() : whole;
}

// Its letters alone, without accents.
Pronunciation pronounce_plain(std::string_view word) {
    const std::string plain = plain_letters(word);
    std::vector<Pronunciation> pieces;
    for (const std::string_view part : parts_of(plain))
        pieces.push_back(pronounce_part(part));
    return joined(pieces);
}

// ---- Accents ----

// "résumés", "Rosé's", "flambéed" of words of our list.
std::optional<Pronunciation> listed_with_ending(std::string_view word) {
    constexpr std::string_view endings[] = {"'s", "s", "ed", "d"};
    for (const std::string_view ending : endings) {
        if (!word.ends_with(ending)) continue;
        auto phones = own_word(word.substr(0, word.size() - ending.size()));
        if (!phones) continue;
        ending.ends_with('s') ? append_s(*phones) : append_ed(*phones);
        return by_rule(*phones);
    }
    return std::nullopt;
}

bool ends_in_said_e(std::string_view word) {
    return word.ends_with("\u00E9") || word.ends_with("\u00E9e");
}

// An é at the end is said. Where the word without accents ends in a silent e, its sound is another
// word's ("rose"), and what is left is a guess.
Pronunciation with_said_e(std::string_view word) {
    Pronunciation result = pronounce_plain(word);
    const bool said = !result.phones.empty() && is_vowel(result.phones.back().sound) &&
                      result.phones.back().sound != Sound::ER;
    if (said) return result;
    for (Phone& phone : result.phones)
        phone.stress = 0;
    result.phones.push_back({Sound::EY, 1});
    return {std::move(result.phones), Known::guess, {}};
}

Pronunciation pronounce_accented(std::string_view word) {
    std::vector<Pronunciation> pieces;
    for (std::size_t at = 0; at <= word.size();) {
        const std::size_t end = std::min(word.find('-', at), word.size());
        const std::string_view part = word.substr(at, end - at);
        at = end + 1;
        if (auto listed = known_word(part)) {
            pieces.push_back(std::move(*listed));
        } else if (auto inflected = listed_with_ending(part)) {
            pieces.push_back(std::move(*inflected));
        } else {
            Pronunciation piece = ends_in_said_e(part) ? with_said_e(part) : pronounce_plain(part);
            if (!piece.phones.empty()) pieces.push_back(std::move(piece));
        }
    }
    return joined(pieces);
}

} // namespace

bool in_lexicon(std::string_view word) {
    return !table::find(word).empty();
}

Pronunciation pronounce(std::string_view word) {
    if (auto result = known_word(word)) return *result;
    if (std::any_of(word.begin(), word.end(), ascii::is_high)) return pronounce_accented(word);
    return pronounce_plain(word);
}

std::vector<Phones> spell_out(std::string_view letters) {
    std::vector<Phones> spelt;
    const bool possessive = letters.ends_with("'s"); // "fbi's": the ending is no letter
    if (possessive) letters.remove_suffix(2);
    for (const char c : plain_letters(letters)) {
        if (ascii::is_lower(c))
            spelt.push_back(sounds(letter_names[static_cast<std::size_t>(c - 'a')]));
    }
    if (possessive && !spelt.empty()) append_s(spelt.back());
    return spelt;
}

bool is_function_word(std::string_view word) {
    return std::binary_search(std::begin(function_words), std::end(function_words), word);
}

} // namespace say
