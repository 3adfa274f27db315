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
    {"ing", "IH0 NG", Begins::vowel},
    {"able", "AH0 B AH0 L", Begins::vowel},
    {"est", "AH0 S T", Begins::vowel},
    {"er", "ER0", Begins::vowel},
    {"ish", "IH0 SH", Begins::vowel},
    {"ness", "N AH0 S", Begins::consonant},
    {"less", "L AH0 S", Begins::consonant},
    {"ful", "F AH0 L", Begins::consonant},
    {"ment", "M AH0 N T", Begins::consonant},
    {"like", "L AY2 K", Begins::consonant},
    {"ship", "SH IH2 P", Begins::consonant},
    {"hood", "HH UH2 D", Begins::consonant},
    {"wise", "W AY2 Z", Begins::consonant},
    {"wards", "W ER0 D Z", Begins::consonant},
    {"ward", "W ER0 D", Begins::consonant},
    {"ism", "IH2 Z AH0 M", Begins::vowel},
    {"ist", "IH0 S T", Begins::vowel},
    {"ize", "AY2 Z", Begins::vowel},
    {"y", "IY0", Begins::vowel},
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
        if (before_vowel && stem.ends_with('l')) close_up(*phones);
        append(*phones, ending.sounds);
        return phones;
    }
    return std::nullopt;
}

std::optional<Phones> by_s(std::string_view word, int depth) {
    if (!word.ends_with('s') || word.ends_with("ss")) return std::nullopt;
    const std::string_view stem = without_last(word);
    std::vector<std::string> bases = {std::string(stem)};
    if (word.ends_with("ies")) bases.push_back(std::string(without_last(word, 3)) + 'y');
    if (word.ends_with("es")) bases.emplace_back(without_last(word, 2));
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

std::optional<Phones> by_ly(std::string_view word, int depth) {
    if (!word.ends_with("ly")) return std::nullopt;
    const std::string before_y(without_last(word));
    // "simply" from simple, "fully" from full: the l is there already.
    if (auto phones = first_known({before_y + 'e', before_y}, depth);
        phones && !phones->empty() && phones->back().sound == Sound::L) {
        close_up(*phones);
        append(*phones, "IY0");
        return phones;
    }
    const std::string_view stem = without_last(word, 2);
    std::vector<std::string> bases = bases_before_consonant(stem);
    if (stem.ends_with("ical")) bases.emplace(bases.begin(), without_last(stem, 2));
    auto phones = first_known(bases, depth);
    if (phones) append(*phones, "L IY0");
    return phones;
}

// "limpet" where the dictionary has only "limpets".
std::optional<Phones> by_plural(std::string_view word) {
    const auto packed = table::find(std::string(word) + 's');
    if (packed.empty()) return std::nullopt;
    Phones phones = table::first_reading(packed);
    Phones base(phones.begin(), phones.end() - 1);
    if (base.empty()) return std::nullopt;
    Phones again = base;
    append_s(again);
    if (again != phones) return std::nullopt;
    return base;
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
    {"de", "D IY0"},
    {"co", "K OW0"},
    {"auto", "AO2 T OW0"},
    {"bio", "B AY2 OW0"},
    {"hyper", "HH AY2 P ER0"},
    {"mini", "M IH2 N IY0"},
    {"photo", "F OW2 T OW0"},
    {"tele", "T EH2 L AH0"},
    {"fore", "F AO2 R"},
};
constexpr std::size_t shortest_base_after_prefix = 4;

// ---- Compounds ----

// The first part keeps its stress, the second carries a weaker one, as in "bookshelf".
void weaken(Phones& phones) {
    for (Phone& phone : phones) {
        if (phone.stress == 1) phone.stress = 2;
    }
}

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

std::optional<Phones> as_compound(std::string_view word) {
    if (word.size() > longest_word) return std::nullopt;
    for (std::size_t cut = shortest_base; cut + shortest_base <= word.size(); cut++) {
        const auto first = known(word.substr(0, cut), 0);
        if (!first) continue;
        auto second = known(word.substr(cut), 1);
        if (!second) continue;
        weaken(*second);
        Phones phones = *first;
        phones.insert(phones.end(), second->begin(), second->end());
        return phones;
    }
    return std::nullopt;
}

std::optional<Phones> known_or_derived(std::string_view word) {
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (auto phones = with_ending(word)) return phones;
    return with_prefix(word);
}

} // namespace say
