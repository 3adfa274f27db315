// Endings, prefixes and compounds. The spelling rules are those of any English grammar; the sounds
// of the endings follow what the dictionary itself gives for words that have them
// (tests/unit/lexicon.cpp).
#include "speech/derive.h"

#include "speech/lexicon_table.h"

#include <algorithm>
#include <string>
#include <vector>

namespace say {

namespace {

constexpr int deepest = 3;               // "un" + "remark" + "able" + "ly"
constexpr std::size_t shortest_base = 3; // letters; the dictionary is full of odd shorter words
constexpr std::size_t longest_word = 40;

std::optional<Phones> known(std::string_view word, int depth);

bool is_sibilant(Sound sound) {
    using enum Sound;
    return sound == S || sound == Z || sound == SH || sound == ZH || sound == CH || sound == JH;
}

bool is_voiceless(Sound sound) {
    using enum Sound;
    return sound == P || sound == T || sound == K || sound == F || sound == TH || sound == S ||
           sound == SH || sound == CH;
}

void append(Phones& phones, std::string_view arpabet) {
    if (const auto more = from_arpabet(arpabet))
        phones.insert(phones.end(), more->begin(), more->end());
}

bool is_vowel_letter(char c) {
    return std::string_view("aeiouy").find(c) != std::string_view::npos;
}

char last_but(std::string_view text, std::size_t back) {
    return back < text.size() ? text[text.size() - 1 - back] : ' ';
}

std::string_view without_last(std::string_view text, std::size_t n = 1) {
    return text.substr(0, text.size() - std::min(n, text.size()));
}

// ---- Endings ----

enum class Begins { vowel, consonant };

struct Ending {
    std::string_view letters;
    std::string_view sounds;
    Begins begins;
};

// Longer ones first where one ends another. -s, -ed and -ly have rules of their own below.
constexpr Ending endings[] = {
    {"ing", "IH0 NG", Begins::vowel},         {"able", "AH0 B AH0 L", Begins::vowel},
    {"est", "AH0 S T", Begins::vowel},        {"er", "ER0", Begins::vowel},
    {"ish", "IH0 SH", Begins::vowel},         {"ness", "N AH0 S", Begins::consonant},
    {"less", "L AH0 S", Begins::consonant},   {"ful", "F AH0 L", Begins::consonant},
    {"ment", "M AH0 N T", Begins::consonant}, {"like", "L AY2 K", Begins::consonant},
    {"ship", "SH IH2 P", Begins::consonant},  {"hood", "HH UH2 D", Begins::consonant},
    {"wise", "W AY2 Z", Begins::consonant},   {"wards", "W ER0 D Z", Begins::consonant},
    {"ward", "W ER0 D", Begins::consonant},

};

// A silent e was likely dropped: after vowel and consonant ("hop-ing" from hope, as "hopp-ing" is
// from hop) and after letters that English words seldom end in.
bool has_likely_lost_e(std::string_view stem) {
    const char last = last_but(stem, 0);
    if (std::string_view("cgsuvz").find(last) != std::string_view::npos)
        return last_but(stem, 1) != last;
    return !is_vowel_letter(last) && is_vowel_letter(last_but(stem, 1)) &&
           !is_vowel_letter(last_but(stem, 2)) && last != 'w' && last != 'x' && last != 'r' &&
           last != 'n' && last != 'l';
}

// What the base may have been, likeliest first.
std::vector<std::string> bases_before_vowel(std::string_view stem) {
    const std::string plain(stem);
    std::vector<std::string> bases = {plain, plain + 'e'};
    if (has_likely_lost_e(stem)) std::swap(bases[0], bases[1]);
    const char last = last_but(stem, 0);
    if (last == last_but(stem, 1) && !is_vowel_letter(last)) bases.emplace_back(without_last(stem));
    if (stem.ends_with("ck")) bases.emplace_back(without_last(stem));
    if (last == 'i') bases.push_back(std::string(without_last(stem)) + 'y');
    if (last == 'y') bases.push_back(std::string(without_last(stem)) + "ie");
    return bases;
}

std::vector<std::string> bases_before_consonant(std::string_view stem) {
    std::vector<std::string> bases = {std::string(stem)};
    if (last_but(stem, 0) == 'i') bases.push_back(std::string(without_last(stem)) + 'y');
    return bases;
}

std::optional<Phones> first_known(const std::vector<std::string>& bases, int depth) {
    for (const std::string& base : bases) {
        if (base.size() < shortest_base) continue;
        if (auto phones = known(base, depth)) return phones;
    }
    return std::nullopt;
}

// "handl" of "handling", not "marshal" or "call".
bool ends_in_closed_l(std::string_view stem) {
    const char before = last_but(stem, 1);
    return stem.ends_with('l') && !is_vowel_letter(before) && before != 'l';
}

// "handle" loses its weak vowel in "handling".
void close_up(Phones& phones) {
    const std::size_t n = phones.size();
    if (n < 3 || phones[n - 1].sound != Sound::L || phones[n - 2] != Phone{Sound::AH, 0}) return;
    if (!is_vowel(phones[n - 3].sound)) phones.erase(phones.end() - 2);
}

std::optional<Phones> by_table(std::string_view word, int depth) {
    for (const Ending& ending : endings) {
        if (!word.ends_with(ending.letters)) continue;
        const std::string_view stem = without_last(word, ending.letters.size());
        const bool before_vowel = ending.begins == Begins::vowel;
        auto phones = first_known(
            before_vowel ? bases_before_vowel(stem) : bases_before_consonant(stem), depth);
        if (!phones) continue;
        if (before_vowel && ends_in_closed_l(stem)) close_up(*phones);
        append(*phones, ending.sounds);
        return phones;
    }
    return std::nullopt;
}

bool takes_es(std::string_view base) {
    constexpr std::string_view ends[] = {"s", "x", "z", "ch", "sh", "o"};
    return std::any_of(std::begin(ends), std::end(ends),
                       [&](std::string_view end) { return base.ends_with(end); });
}

std::optional<Phones> by_s(std::string_view word, int depth) {
    if (!word.ends_with('s') || word.ends_with("ss")) return std::nullopt;
    const std::string_view stem = without_last(word);
    std::vector<std::string> bases = {std::string(stem)};
    if (word.ends_with("ies")) bases.push_back(std::string(without_last(word, 3)) + 'y');
    if (takes_es(without_last(word, 2)) && word.ends_with("es"))
        bases.emplace_back(without_last(word, 2));
    auto phones = first_known(bases, depth);
    if (phones) append_s(*phones);
    return phones;
}

std::optional<Phones> by_ed(std::string_view word, int depth) {
    if (!word.ends_with("ed")) return std::nullopt;
    auto phones = first_known(bases_before_vowel(without_last(word, 2)), depth);
    if (phones) append_ed(*phones);
    return phones;
}

// "-ly" after l is one l: "fully", "normally"; "i" before it is weak: "happily"; "-ically" loses a
// syllable.
void append_ly(Phones& phones, std::string_view stem) {
    if (phones.empty()) return;
    if (stem.ends_with('i') && phones.back().sound == Sound::IY) phones.back().sound = Sound::AH;
    if (stem.ends_with("ical") && phones.size() > 2 && phones.back().sound == Sound::L) {
        phones.resize(phones.size() - 2);
    }
    append(phones, phones.back().sound == Sound::L ? "IY0" : "L IY0");
}

std::optional<Phones> by_ly(std::string_view word, int depth) {
    if (!word.ends_with("ly")) return std::nullopt;
    const std::string_view stem = without_last(word, 2);
    if (auto phones = first_known(bases_before_consonant(stem), depth)) {
        append_ly(*phones, stem);
        return phones;
    }
    // "simply" from simple, "fully" from full: the l is there already.
    const std::string before_y(without_last(word));
    auto phones = first_known({before_y + 'e', before_y}, depth);
    if (!phones || phones->empty() || phones->back().sound != Sound::L) return std::nullopt;
    close_up(*phones);
    append(*phones, "IY0");
    return phones;
}

// "limpet" where the dictionary has only "limpets".
std::optional<Phones> by_plural(std::string_view word) {
    const auto packed = table::find(std::string(word) + 's');
    if (packed.empty()) return std::nullopt;
    const Phones plural = table::first_reading(packed);
    for (const std::size_t n_ending : {2U, 1U}) {
        if (plural.size() <= n_ending) continue;
        const Phones base(plural.begin(), plural.end() - static_cast<std::ptrdiff_t>(n_ending));
        Phones again = base;
        append_s(again);
        if (again == plural) return base;
    }
    return std::nullopt;
}

// ---- Prefixes ----

struct Prefix {
    std::string_view letters;
    std::string_view sounds;
};

constexpr Prefix prefixes[] = {
    {"un", "AH0 N"},
    {"re", "R IY0"},
    {"non", "N AA2 N"},
    {"over", "OW2 V ER0"},
    {"under", "AH2 N D ER0"},
    {"out", "AW2 T"},
    {"pre", "P R IY0"},
    {"dis", "D IH0 S"},
    {"mis", "M IH0 S"},
    {"anti", "AE2 N T IY0"},
    {"semi", "S EH2 M IY0"},
    {"sub", "S AH0 B"},
    {"super", "S UW2 P ER0"},
    {"inter", "IH2 N T ER0"},
    {"counter", "K AW2 N T ER0"},
    {"mid", "M IH2 D"},
    {"multi", "M AH2 L T IY0"},
    {"post", "P OW2 S T"},
    {"mega", "M EH2 G AH0"},
    {"micro", "M AY2 K R OW0"},
    {"ultra", "AH2 L T R AH0"},
    {"bio", "B AY2 OW0"},
    {"hyper", "HH AY2 P ER0"},
    {"mini", "M IH2 N IY0"},
    {"photo", "F OW2 T OW0"},
    {"tele", "T EH2 L AH0"},
    {"fore", "F AO2 R"},
};
constexpr std::size_t shortest_base_after_prefix = 4;

std::optional<Phones> known(std::string_view word, int depth) {
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (depth <= 0 || word.size() > longest_word) return std::nullopt;
    using Rule = std::optional<Phones> (*)(std::string_view, int);
    const Rule rules[] = {by_s, by_ed, by_ly, by_table};
    for (const Rule rule : rules) {
        if (auto phones = rule(word, depth - 1)) return phones;
    }
    return std::nullopt;
}

} // namespace

void append_s(Phones& phones) {
    if (phones.empty()) return append(phones, "S");
    const Sound last = phones.back().sound;
    append(phones, is_sibilant(last) ? "IH0 Z" : is_voiceless(last) ? "S" : "Z");
}

void append_ed(Phones& phones) {
    if (phones.empty()) return append(phones, "D");
    const Sound last = phones.back().sound;
    const bool needs_vowel = last == Sound::T || last == Sound::D;
    append(phones, needs_vowel ? "IH0 D" : is_voiceless(last) ? "T" : "D");
}

std::optional<Phones> with_ending(std::string_view word) {
    if (word.size() > longest_word) return std::nullopt;
    const auto rules = {by_s, by_ed, by_ly, by_table};
    for (const auto rule : rules) {
        if (auto phones = rule(word, deepest - 1)) return phones;
    }
    return by_plural(word);
}

std::optional<Phones> with_prefix(std::string_view word) {
    if (word.size() > longest_word) return std::nullopt;
    for (const Prefix& prefix : prefixes) {
        if (!word.starts_with(prefix.letters)) continue;
        const std::string_view base = word.substr(prefix.letters.size());
        if (base.size() < shortest_base_after_prefix) continue;
        const auto rest = known(base, deepest - 1);
        if (!rest) continue;
        Phones phones;
        append(phones, prefix.sounds);
        phones.insert(phones.end(), rest->begin(), rest->end());
        return phones;
    }
    return std::nullopt;
}

// British spellings of words that the American dictionary has another way; the sounds are the same.
std::optional<Phones> in_american_spelling(std::string_view word) {
    struct Change {
        std::string_view british;
        std::string_view american;
    };
    constexpr Change changes[] = {
        {"our", "or"},  {"ise", "ize"}, {"isi", "izi"},  {"isa", "iza"},      {"yse", "yze"},
        {"ysi", "yzi"}, {"tre", "ter"}, {"ogue", "og"},  {"oeuvre", "euver"}, {"ilful", "illful"},
        {"ae", "e"},    {"oe", "e"},    {"ence", "ense"}};
    if (word.size() > longest_word) return std::nullopt;
    for (const Change& change : changes) {
        // Not at the beginning: "our" and "tread" are spelt alike everywhere.
        const std::size_t at = word.rfind(change.british);
        if (at == std::string_view::npos || at == 0) continue;
        std::string american(word);
        american.replace(at, change.british.size(), change.american);
        if (!table::find(american).empty()) return table::first_reading(table::find(american));
        if (auto phones = with_ending(american)) return phones;
    }
    return std::nullopt;
}

std::optional<Phones> known_or_derived(std::string_view word) {
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (auto phones = with_ending(word)) return phones;
    return with_prefix(word);
}

} // namespace say
