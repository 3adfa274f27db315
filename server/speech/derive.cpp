// Endings, prefixes and compounds. The spelling rules are those of any English grammar; the sounds
// of the endings follow what the dictionary itself gives for words that have them
// (tests/unit/lexicon.cpp).
#include "speech/derive.h"

#include "speech/lexicon_table.h"
#include "speech/own_words.h"

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
    {"ward", "W ER0 D", Begins::consonant},   {"some", "S AH0 M", Begins::consonant},
    {"ist", "AH0 S T", Begins::vowel},        {"ism", "IH2 Z AH0 M", Begins::vowel},

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

// "romanticism": a c before i is soft.
void soften_c(Phones& phones, std::string_view ending) {
    const bool is_soft = ending == "ism" || ending == "ist";
    if (is_soft && phones.back().sound == Sound::K) phones.back().sound = Sound::S;
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
        if (stem.ends_with('c')) soften_c(*phones, ending.letters);
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

// "chalky", "frosty": of a word that has a plural and a past or an -ing, since names end in -y too.
std::optional<Phones> by_y(std::string_view word, int depth) {
    if (!word.ends_with('y') || word.ends_with("ey") || depth <= 0) return std::nullopt;
    const auto is_in_table = [](const std::string& form) { return !table::find(form).empty(); };
    for (const std::string& base : bases_before_vowel(without_last(word))) {
        const std::string stem(base.ends_with('e') ? without_last(base) : std::string_view(base));
        if (base.size() < shortest_base || !is_in_table(base + 's')) continue;
        if (!is_in_table(stem + "ed") && !is_in_table(stem + "ing")) continue;
        const auto packed = table::find(base);
        if (packed.empty()) continue;
        Phones phones = table::first_reading(packed);
        append(phones, "IY0");
        return phones;
    }
    return std::nullopt;
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

// --- endings that draw the stress to themselves ---

struct Heavy {
    std::string_view letters;
    std::string_view base;   // what stands there in the word that is known
    std::string_view lost;   // the last sounds of that word
    std::string_view sounds; // that take their place
};

constexpr Heavy heavy_endings[] = {
    {"isation", "ise", "AY2 Z", "AH0 Z EY1 SH AH0 N"},
    {"ization", "ize", "AY2 Z", "AH0 Z EY1 SH AH0 N"},
    {"isation", "ize", "AY2 Z", "AH0 Z EY1 SH AH0 N"},
    {"ation", "ate", "EY2 T", "EY1 SH AH0 N"},
    {"ator", "ate", "EY2 T", "EY2 T ER0"},
    {"tional", "tion", "SH AH0 N", "SH AH0 N AH0 L"},
    {"sional", "sion", "AH0 N", "AH0 N AH0 L"},
    {"ability", "able", "AH0 B AH0 L", "AH0 B IH1 L AH0 T IY0"},
    {"ibility", "ible", "AH0 B AH0 L", "AH0 B IH1 L AH0 T IY0"},
};

bool same_sound(const Phone& a, const Phone& b) {
    return a.sound == b.sound;
}

std::optional<Phones> by_heavy(std::string_view word, int depth) {
    for (const Heavy& ending : heavy_endings) {
        if (!word.ends_with(ending.letters)) continue;
        const std::string_view stem = without_last(word, ending.letters.size());
        auto phones = known(std::string(stem).append(ending.base), depth);
        const Phones lost = from_arpabet(ending.lost).value_or(Phones());
        if (!phones || phones->size() <= lost.size()) continue;
        const auto tail = phones->end() - static_cast<std::ptrdiff_t>(lost.size());
        if (!std::equal(lost.begin(), lost.end(), tail, same_sound)) continue;
        phones->erase(tail, phones->end());
        if (ending.sounds.find('1') != std::string_view::npos) {
            for (Phone& phone : *phones)
                phone.stress = phone.stress == 1 ? 2 : phone.stress;
        }
        append(*phones, ending.sounds);
        return phones;
    }
    return std::nullopt;
}

// "batsmen" sounds as "batsman".
std::optional<Phones> by_men(std::string_view word, int depth) {
    if (!word.ends_with("men")) return std::nullopt;
    return known(std::string(without_last(word, 2)) + "an", depth);
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
    if (auto phones = own_word(word)) return phones;
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (depth <= 0 || word.size() > longest_word) return std::nullopt;
    using Rule = std::optional<Phones> (*)(std::string_view, int);
    const Rule rules[] = {by_s, by_ed, by_ly, by_heavy, by_table, by_y, by_men};
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
    const auto rules = {by_s, by_ed, by_ly, by_heavy, by_table, by_y, by_men};
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
// What differs is that of any style guide: -our, -ise, -re, -lled, -ence, ae and oe, and single
// words. Common practice, no source.
namespace {

struct Change {
    std::string_view british;
    std::string_view american;
};

// Anywhere but at the beginning: "our" and "tread" are spelt alike everywhere.
constexpr Change changes_within[] = {
    {"our", "or"},          {"ise", "ize"},      {"isi", "izi"},        {"isa", "iza"},
    {"yse", "yze"},         {"ysi", "yzi"},      {"tre", "ter"},        {"bre", "ber"},
    {"gre", "ger"},         {"chre", "cher"},    {"ogue", "og"},        {"oeuvre", "euver"},
    {"oeuvr", "euver"},     {"ilful", "illful"}, {"ae", "e"},           {"oe", "e"},
    {"ence", "ense"},       {"lled", "led"},     {"lling", "ling"},     {"ller", "ler"},
    {"llor", "lor"},        {"llist", "list"},   {"llous", "lous"},     {"llen", "len"},
    {"llis", "liz"},        {"lliz", "liz"},     {"lment", "llment"},   {"gramme", "gram"},
    {"sulph", "sulf"},      {"mould", "mold"},   {"dgement", "dgment"}, {"eable", "able"},
    {"geing", "ging"},      {"xion", "ction"},   {"ollusc", "ollusk"},  {"ettist", "etist"},
    {"sceptic", "skeptic"},
};

// Words, with whatever ends or follows them ("draughtsman", "gaolers").
constexpr Change changes_at_start[] = {
    {"aes", "es"},
    {"aet", "et"},
    {"aeon", "eon"},
    {"almanack", "almanac"},
    {"artefact", "artifact"},
    {"baulk", "balk"},
    {"behove", "behoove"},
    {"calliper", "caliper"},
    {"callis", "calis"},
    {"chequ", "check"},
    {"cheque", "check"},
    {"chequer", "checker"},
    {"chilli", "chili"},
    {"cosi", "cozi"},
    {"cosy", "cozy"},
    {"crenell", "crenel"},
    {"despatch", "dispatch"},
    {"draught", "draft"},
    {"fibre", "fiber"},
    {"gaol", "jail"},
    {"gips", "gyps"},
    {"groyne", "groin"},
    {"jewellery", "jewelry"},
    {"kerb", "curb"},
    {"liquorice", "licorice"},
    {"moult", "molt"},
    {"moustach", "mustach"},
    {"oed", "ed"},
    {"oes", "es"},
    {"omelette", "omelet"},
    {"phoney", "phony"},
    {"plough", "plow"},
    {"pyjama", "pajama"},
    {"sceptic", "skeptic"},
    {"smoulder", "smolder"},
    {"storey", "story"},
    {"sulph", "sulf"},
    {"tyre", "tire"},
    {"verandah", "veranda"},
    {"waggon", "wagon"},
    {"yoghourt", "yogurt"},
    {"yoghurt", "yogurt"},
};

std::optional<Phones> listed_or_with_ending(std::string_view word) {
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (auto phones = with_ending(word)) return phones;
    return as_compound(word);
}

// "enrol", "instils": the l is doubled only before a vowel.
std::optional<Phones> with_last_l_doubled(std::string_view word) {
    const std::string_view base = word.ends_with('s') ? without_last(word) : word;
    const char before = last_but(base, 1);
    if (!base.ends_with('l') || std::string_view("aio").find(before) == std::string_view::npos)
        return std::nullopt;
    const auto packed = table::find(std::string(base) + 'l');
    if (packed.empty()) return std::nullopt;
    Phones phones = table::first_reading(packed);
    // "appal" and "enrol", not "fatal": the last syllable has the stress.
    const bool stressed = phones.size() > 1 && phones[phones.size() - 2].stress == 1;
    if (!stressed || syllable_count(phones) < 2) return std::nullopt;
    if (base != word) append_s(phones);
    return phones;
}

// "marvelled" may be "marveled", "tilled" is not "tiled": one syllable keeps its two l's.
bool has_one_vowel(std::string_view letters) {
    bool inside = false;
    int runs = 0;
    for (const char c : letters) {
        const bool vowel = is_vowel_letter(c);
        runs += vowel && !inside ? 1 : 0;
        inside = vowel;
    }
    return runs < 2;
}

} // namespace

std::optional<Phones> in_american_spelling(std::string_view word) {
    if (word.size() > longest_word) return std::nullopt;
    for (const Change& change : changes_at_start) {
        if (!word.starts_with(change.british)) continue;
        const std::string american =
            std::string(change.american).append(word.substr(change.british.size()));
        if (auto phones = listed_or_with_ending(american)) return phones;
    }
    for (const Change& change : changes_within) {
        const std::size_t at = word.rfind(change.british);
        if (at == std::string_view::npos || at == 0) continue;
        if (change.british.starts_with("ll") && has_one_vowel(word.substr(0, at))) continue;
        std::string american(word);
        american.replace(at, change.british.size(), change.american);
        if (const auto packed = table::find(american); !packed.empty())
            return table::first_reading(packed);
        if (auto phones = with_ending(american)) return phones;
    }
    return with_last_l_doubled(word);
}

std::optional<Phones> known_or_derived(std::string_view word) {
    if (const auto packed = table::find(word); !packed.empty()) return table::first_reading(packed);
    if (auto phones = with_ending(word)) return phones;
    return with_prefix(word);
}

} // namespace say
