// Phones to the respelling broadcasters use ("puh-TEHL-uh") and back: docs/pronunciation.md has the
// table. The way back is a reading of what people write, so it need not give the same phones; it
// does keep the number of syllables and the stress.
#include "speech/phones.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {

namespace {

struct Spelling {
    std::string_view letters;
    Sound sound;
    Sound second = Sound::AH; // only where `two` says that there is one
    bool two = false;
};

// In the order of Sound.
constexpr std::array<std::string_view, sound_count> respellings = {
    "ah", "a",  "uh", "aw", "ow", "eye", "eh", "ur", "ay", "ih", "ee", "oh", "oy",
    "uu", "oo", "b",  "ch", "d",  "th",  "f",  "g",  "h",  "j",  "k",  "l",  "m",
    "n",  "ng", "p",  "r",  "s",  "sh",  "t",  "th", "v",  "w",  "y",  "z",  "zh",
};

// The longest match counts, so the order is free.
constexpr Spelling vowel_spellings[] = {
    {"a", Sound::AE},
    {"aa", Sound::AE},
    {"aah", Sound::AE},
    {"ah", Sound::AA},
    {"ai", Sound::EY},
    {"air", Sound::EH, Sound::R, true},
    {"ar", Sound::AA, Sound::R, true},
    {"au", Sound::AW},
    {"aw", Sound::AO},
    {"ay", Sound::EY},
    {"e", Sound::EH},
    {"ea", Sound::IY},
    {"ee", Sound::IY},
    {"eh", Sound::EH},
    {"er", Sound::ER},
    {"ew", Sound::UW},
    {"ey", Sound::EY},
    {"eye", Sound::AY},
    {"i", Sound::IH},
    {"igh", Sound::AY},
    {"ih", Sound::IH},
    {"ir", Sound::ER},
    {"o", Sound::AA},
    {"oa", Sound::OW},
    {"oe", Sound::OW},
    {"oh", Sound::OW},
    {"oi", Sound::OY},
    {"oo", Sound::UW},
    {"or", Sound::AO, Sound::R, true},
    {"ou", Sound::AW},
    {"ow", Sound::AW},
    {"oy", Sound::OY},
    {"u", Sound::UH},
    {"uh", Sound::AH},
    {"ur", Sound::ER},
    {"uu", Sound::UH},
};

constexpr Spelling consonant_spellings[] = {
    {"b", Sound::B},
    {"bb", Sound::B},
    {"c", Sound::K},
    {"ch", Sound::CH},
    {"ck", Sound::K},
    {"d", Sound::D},
    {"dd", Sound::D},
    {"dh", Sound::DH},
    {"dj", Sound::JH},
    {"f", Sound::F},
    {"ff", Sound::F},
    {"g", Sound::G},
    {"gg", Sound::G},
    {"h", Sound::HH},
    {"j", Sound::JH},
    {"k", Sound::K},
    {"kh", Sound::K},
    {"kk", Sound::K},
    {"l", Sound::L},
    {"ll", Sound::L},
    {"m", Sound::M},
    {"mm", Sound::M},
    {"n", Sound::N},
    {"ng", Sound::NG},
    {"nk", Sound::NG, Sound::K, true},
    {"nn", Sound::N},
    {"p", Sound::P},
    {"ph", Sound::F},
    {"pp", Sound::P},
    {"qu", Sound::K, Sound::W, true},
    {"r", Sound::R},
    {"rr", Sound::R},
    {"s", Sound::S},
    {"sh", Sound::SH},
    {"ss", Sound::S},
    {"t", Sound::T},
    {"tch", Sound::CH},
    {"th", Sound::TH},
    {"tt", Sound::T},
    {"v", Sound::V},
    {"vv", Sound::V},
    {"w", Sound::W},
    {"wh", Sound::W},
    {"x", Sound::K, Sound::S, true},
    {"y", Sound::Y},
    {"z", Sound::Z},
    {"zh", Sound::ZH},
    {"zz", Sound::Z},
};

Spelling longest(std::span<const Spelling> spellings, std::string_view text) {
    Spelling best{"", Sound::AH};
    for (const Spelling& spelling : spellings) {
        if (text.starts_with(spelling.letters) && best.letters.size() < spelling.letters.size()) {
            best = spelling;
        }
    }
    return best;
}

void raise(std::string& text, std::size_t from) {
    std::transform(text.begin() + static_cast<std::ptrdiff_t>(from), text.end(),
                   text.begin() + static_cast<std::ptrdiff_t>(from),
                   [](char c) { return ascii::upper(c); });
}

// ---- Writing ----

bool is_short(Sound vowel) {
    using enum Sound;
    return vowel == AE || vowel == AH || vowel == EH || vowel == IH || vowel == UH;
}

// Cut for the ear: a short stressed vowel closes its syllable ("TEHL-uh", not "TEH-luh"), as it
// does not end an English one.
std::vector<std::size_t> heard_starts(std::span<const Phone> phones) {
    std::vector<std::size_t> starts = syllable_starts(phones);
    for (std::size_t i = 1; i < starts.size(); i++) {
        const Phone& before = phones[starts[i] - 1];
        const bool has_onset = !is_vowel(phones[starts[i]].sound);
        if (has_onset && is_short(before.sound) && before.stress != 0) starts[i]++;
    }
    return starts;
}

bool has_consonant(std::span<const Phone> syllable, std::size_t at) {
    return at < syllable.size() && !is_vowel(syllable[at].sound);
}

bool is_at(std::span<const Phone> syllable, std::size_t at, Sound sound) {
    return at < syllable.size() && syllable[at].sound == sound;
}

std::string_view spell_vowel(std::span<const Phone> syllable, std::size_t at) {
    const Phone& vowel = syllable[at];
    if (vowel.sound == Sound::ER && vowel.stress == 0) return "er";
    if (vowel.sound == Sound::AE) {
        // A bare "a" at the end, or before r, would be read as another vowel.
        return has_consonant(syllable, at + 1) && !is_at(syllable, at + 1, Sound::R) ? "a" : "aa";
    }
    if (vowel.sound == Sound::AY) {
        return at > 0 && has_consonant(syllable, at - 1) && !is_at(syllable, at - 1, Sound::Y)
                   ? "y"
                   : "eye";
    }
    return respellings[static_cast<std::size_t>(vowel.sound)];
}

std::string spell_syllable(std::span<const Phone> syllable) {
    std::string text;
    for (std::size_t at = 0; at < syllable.size(); at++) {
        const Phone& phone = syllable[at];
        if (is_vowel(phone.sound)) {
            text += spell_vowel(syllable, at);
            continue;
        }
        const bool may_be_read_as_z = phone.sound == Sound::S && at + 1 == syllable.size() &&
                                      at > 0 && is_vowel(syllable[at - 1].sound);
        text += may_be_read_as_z ? "ss" : respellings[static_cast<std::size_t>(phone.sound)];
    }
    return text;
}

bool is_stressed(std::span<const Phone> syllable) {
    return std::any_of(syllable.begin(), syllable.end(), [](const Phone& phone) {
        return is_vowel(phone.sound) && phone.stress == 1;
    });
}

// ---- Reading ----

// One syllable under the reader's eyes.
struct Syllable {
    Phones phones;
    int n_vowels = 0;
    bool readable = true;

    void add(const Spelling& spelling) {
        phones.push_back({spelling.sound, 0});
        if (spelling.two) phones.push_back({spelling.second, 0});
        if (is_vowel(spelling.sound)) n_vowels++;
    }
};

bool is_single(std::string_view letters, std::string_view among) {
    return letters.size() == 1 && among.find(letters.front()) != std::string_view::npos;
}

// "nate", "tyde": a lone vowel, one consonant and a silent e at the end.
bool is_long_by_silent_e(std::string_view vowel, std::string_view rest) {
    if (!is_single(vowel, "aiouy")) return false;
    const Spelling consonant = longest(consonant_spellings, rest);
    return !consonant.letters.empty() && rest.substr(consonant.letters.size()) == "e";
}

Sound long_vowel(char letter) {
    switch (letter) {
    case 'a': return Sound::EY;
    case 'o': return Sound::OW;
    case 'u': return Sound::UW;
    default: return Sound::AY;
    }
}

// A lone vowel letter that ends its syllable is said as its name, or as in "la": "koh" may be
// written "ko".
Sound open_vowel(char letter) {
    switch (letter) {
    case 'a': return Sound::AA;
    case 'e':
    case 'i': return Sound::IY;
    case 'o': return Sound::OW;
    default: return Sound::UW;
    }
}

enum class LetterY { may_be_vowel, is_consonant };

// The vowel at the front of `text`; "y" is one where no vowel follows it ("hyd", not "yoo").
Spelling vowel_at(std::string_view text, LetterY y) {
    const Spelling vowel = longest(vowel_spellings, text);
    if (!vowel.letters.empty() || !text.starts_with('y') || y == LetterY::is_consonant)
        return vowel;
    const std::string_view after = text.substr(1);
    const bool vowel_follows =
        after.starts_with('y') || !longest(vowel_spellings, after).letters.empty();
    return vowel_follows ? vowel : Spelling{"y", Sound::AY};
}

// Takes one sound off the front of `text`; false if its letters mean nothing.
bool take_sound(Syllable& syllable, std::string_view& text, LetterY y) {
    Spelling next = vowel_at(text, y);
    const bool is_vowel_next = !next.letters.empty();
    if (!is_vowel_next) next = longest(consonant_spellings, text);
    if (next.letters.empty()) return false;
    text.remove_prefix(next.letters.size());
    if (is_vowel_next && is_long_by_silent_e(next.letters, text)) {
        next.sound = long_vowel(next.letters.front());
        text.remove_suffix(1);
    } else if (text.empty() && is_single(next.letters, "aeiou")) {
        next.sound = open_vowel(next.letters.front());
    }
    syllable.add(next);
    return true;
}

Syllable read_syllable(std::string_view text, LetterY y) {
    Syllable syllable;
    while (syllable.readable && !text.empty())
        syllable.readable = take_sound(syllable, text, y);
    syllable.readable = syllable.readable && syllable.n_vowels <= 1;
    return syllable;
}

// "y" beside another vowel is a consonant also where none follows: "LAY-y", "ywehn".
Syllable read_syllable(std::string_view text) {
    Syllable syllable = read_syllable(text, LetterY::may_be_vowel);
    return syllable.readable ? syllable : read_syllable(text, LetterY::is_consonant);
}

// Hyphens, also those that do not break, and blanks between words.
std::size_t separator_size(std::string_view text) {
    constexpr std::string_view unbroken = "‑";
    if (text.starts_with(unbroken)) return unbroken.size();
    return text.starts_with('-') || text.starts_with(' ') ? 1 : 0;
}

std::vector<std::string_view> split_syllables(std::string_view text) {
    std::vector<std::string_view> parts;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t separator = separator_size(text.substr(at));
        if (separator == 0 && at < text.size()) {
            at++;
            continue;
        }
        if (begin < at) parts.push_back(text.substr(begin, at - begin));
        at += std::max<std::size_t>(separator, 1);
        begin = at;
    }
    return parts;
}

void stress_vowels(Phones& phones, std::size_t from) {
    for (std::size_t at = from; at < phones.size(); at++) {
        if (is_vowel(phones[at].sound)) phones[at].stress = 1;
    }
}

} // namespace

std::string to_respelling(std::span<const Phone> phones) {
    const std::vector<std::size_t> starts = heard_starts(phones);
    std::string text;
    for (std::size_t i = 0; i < starts.size(); i++) {
        const std::size_t end = i + 1 < starts.size() ? starts[i + 1] : phones.size();
        const auto syllable = phones.subspan(starts[i], end - starts[i]);
        if (i > 0) text += '-';
        const std::size_t begin = text.size();
        text += spell_syllable(syllable);
        if (starts.size() > 1 && is_stressed(syllable)) raise(text, begin);
    }
    return text;
}

std::optional<Phones> from_respelling(std::string_view respelling) {
    const std::vector<std::string_view> parts = split_syllables(respelling);
    Phones phones;
    for (const std::string_view part : parts) {
        const Syllable syllable = read_syllable(ascii::lower(part));
        if (!syllable.readable) return std::nullopt;
        const std::size_t begin = phones.size();
        phones.insert(phones.end(), syllable.phones.begin(), syllable.phones.end());
        if (std::all_of(part.begin(), part.end(), ascii::is_upper)) stress_vowels(phones, begin);
    }
    if (phones.empty()) return std::nullopt;
    if (syllable_count(phones) == 1) stress_vowels(phones, 0);
    return phones;
}

} // namespace say
