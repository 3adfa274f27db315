// Compounds of two words of the dictionary: "tidepool", "rockpools", "livestreaming".
#include "speech/derive.h"
#include "speech/lexicon_table.h"

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <string>

namespace say {

namespace {

constexpr std::size_t shortest_part = 3; // letters
constexpr std::size_t longest_word = 40;

// Three-letter words count only if they stand here, as the dictionary's plurals of them are often
// names. So do longer ones without a plural. Common practice, no source. In the order of their
// bytes.
constexpr std::string_view listed[] = {
    "air",   "app",  "arm",   "art",  "audio", "bag",  "bar",   "bay",   "bed",   "bee",   "big",
    "bin",   "bit",  "box",   "bus",  "can",   "car",  "cat",   "cow",   "cup",   "cut",   "data",
    "day",   "deep", "dog",   "dry",  "ear",   "egg",  "eye",   "fan",   "fish",  "fly",   "fog",
    "gap",   "gas",  "giga",  "god",  "gun",   "hat",  "hip",   "hit",   "hop",   "hot",   "ice",
    "info",  "ink",  "jam",   "job",  "key",   "kit",  "lap",   "leg",   "live",  "log",   "lot",
    "low",   "map",  "media", "meta", "mid",   "milk", "mud",   "music", "nano",  "net",   "news",
    "nut",   "off",  "oil",   "out",  "pad",   "pan",  "pea",   "pen",   "pet",   "photo", "pie",
    "pig",   "pin",  "pit",   "pod",  "pot",   "rag",  "rat",   "raw",   "red",   "rib",   "rice",
    "rod",   "row",  "run",   "salt", "sand",  "sap",  "sea",   "set",   "sheep", "sit",   "sky",
    "snow",  "sun",  "super", "tap",  "tax",   "tea",  "tie",   "tin",   "tip",   "toe",   "top",
    "tow",   "toy",  "tub",   "van",  "video", "war",  "water", "wax",   "way",   "web",   "wet",
    "wheat", "wig",  "wood",  "zip"};
static_assert(std::is_sorted(std::begin(listed), std::end(listed)));

bool is_listed(std::string_view word) {
    return std::binary_search(std::begin(listed), std::end(listed), word);
}

bool is_in_table(std::string_view word) {
    return !table::find(word).empty();
}

bool has(std::string_view stem, std::string_view ending) {
    return is_in_table(std::string(stem).append(ending));
}

bool has_any(std::string_view stem, std::initializer_list<std::string_view> forms) {
    return std::any_of(forms.begin(), forms.end(),
                       [&](std::string_view ending) { return has(stem, ending); });
}

// The dictionary is full of names, and names cut other words in odd places ("beer|bower"). A word
// that has a plural and another form beside it is an ordinary one: measured on the dictionary's own
// compounds, that makes the rule as good as letters are that were trained on them
// (docs/pronunciation.md).
bool is_ordinary(std::string_view word) {
    if (is_listed(word)) return true;
    if (word.size() <= shortest_part) return false;
    const std::string_view but_last = word.substr(0, word.size() - 1);
    const std::string_view stem = word.ends_with('e') ? but_last : word;
    const bool has_plural =
        has_any(word, {"s", "es"}) || (word.ends_with('y') && has(but_last, "ies"));
    if (!has_plural) return false;
    return has_any(stem, {"ing", "ed", "er", "est", "y"}) ||
           has_any(word, {"ly", "ness", "less"}) || has(std::string(word) + word.back(), "ing");
}

// The first part keeps its stress, the second carries a weaker one, as in "bookshelf".
void weaken(Phones& phones) {
    for (Phone& phone : phones) {
        if (phone.stress == 1) phone.stress = 2;
    }
}

// An ordinary word, or one with an ending ("watchers"). A word of the dictionary itself is not
// taken apart unless its form says that it has an ending.
std::optional<Phones> second_part(std::string_view word) {
    if (is_in_table(word) && is_ordinary(word)) return known_or_derived(word);
    for (const std::string_view ending : {"s", "ing", "ed", "er", "ers", "ings"}) {
        if (!word.ends_with(ending)) continue;
        const std::string_view stem = word.substr(0, word.size() - ending.size());
        for (const std::string_view lost : {"", "e"}) {
            const std::string base = std::string(stem).append(lost);
            if (is_in_table(base) && is_ordinary(base)) return known_or_derived(word);
        }
    }
    return std::nullopt;
}

Phones joined(const Phones& first, const Phones& second) {
    Phones phones = first;
    phones.insert(phones.end(), second.begin(), second.end());
    return phones;
}

} // namespace

std::optional<Phones> as_compound(std::string_view word) {
    if (word.size() > longest_word) return std::nullopt;
    // The longest first part that leaves a second one.
    for (std::size_t cut = word.size(); cut-- > shortest_part;) {
        if (word.size() - cut < shortest_part) continue;
        const std::string_view first = word.substr(0, cut);
        const auto packed = table::find(first);
        if (packed.empty() || !is_ordinary(first)) continue;
        auto second = second_part(word.substr(cut));
        if (!second) continue;
        weaken(*second);
        return joined(table::first_reading(packed), *second);
    }
    return std::nullopt;
}

std::optional<Phones> as_letter_and_word(std::string_view word) {
    if (word.size() > longest_word || word.size() < 2) return std::nullopt;
    constexpr std::string_view vowels = "aeiouy";
    const bool is_vowel_first = word[0] == 'e' || word[0] == 'i';
    const bool is_vowel_second = vowels.find(word[1]) != std::string_view::npos;
    // "ebook" and "iframe"; "gdata" and "jquery", as no English word begins so.
    constexpr std::string_view unlike_english[] = {"bd", "cd", "dm", "gd", "gm", "hd", "jb",
                                                   "jd", "jf", "jl", "jm", "jp", "jq", "js",
                                                   "jt", "xb", "xc", "xf", "xp"};
    const bool is_odd = std::find(std::begin(unlike_english), std::end(unlike_english),
                                  word.substr(0, 2)) != std::end(unlike_english);
    if (!is_odd && !(is_vowel_first && !is_vowel_second)) return std::nullopt;
    const std::string_view rest = word.substr(1);
    if (rest.size() <= shortest_part || !is_in_table(rest) || !is_ordinary(rest))
        return std::nullopt;
    Phones second = table::first_reading(table::find(rest));
    weaken(second);
    return joined(table::first_reading(table::find(word.substr(0, 1))), second);
}

} // namespace say
