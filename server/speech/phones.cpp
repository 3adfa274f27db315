// ARPAbet, and what all three spellings need: names, counts and where syllables begin.
// IPA is in ipa.cpp, the broadcasters' respelling in respelling.cpp.
#include "speech/phones.h"

#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {

namespace {

constexpr std::array<std::string_view, sound_count> names = {
    "AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY",
    "UH", "UW", "B",  "CH", "D",  "DH", "F",  "G",  "HH", "JH", "K",  "L",  "M",
    "N",  "NG", "P",  "R",  "S",  "SH", "T",  "TH", "V",  "W",  "Y",  "Z",  "ZH",
};

// "IY1", "AH", "K". A vowel without a digit is unstressed; a consonant takes none.
std::optional<Phone> read_symbol(std::string_view symbol) {
    Phone phone;
    const bool has_digit = !symbol.empty() && '0' <= symbol.back() && symbol.back() <= '2';
    if (has_digit) {
        phone.stress = static_cast<std::uint8_t>(symbol.back() - '0');
        symbol.remove_suffix(1);
    }
    const auto* name = std::find(names.begin(), names.end(), symbol);
    if (name == names.end()) return std::nullopt;
    phone.sound = static_cast<Sound>(name - names.begin());
    if (has_digit && !is_vowel(phone.sound)) return std::nullopt;
    return phone;
}

bool is_one_of(Sound sound, std::initializer_list<Sound> sounds) {
    return std::find(sounds.begin(), sounds.end(), sound) != sounds.end();
}

// Two consonants that can begin an English syllable together.
bool can_begin(Sound first, Sound second) {
    using enum Sound;
    switch (second) {
    case L: return is_one_of(first, {B, F, G, K, P, S});
    case R: return is_one_of(first, {B, D, F, G, K, P, SH, T, TH});
    case W: return is_one_of(first, {G, HH, K, S, T}); // "dwell" and "thwart" stand alone
    case Y: return is_one_of(first, {B, D, F, G, HH, K, L, M, N, P, S, T, TH, V});
    default: return first == S && is_one_of(second, {F, K, M, N, P, T});
    }
}

// S and a voiceless stop and a glide: "spl", "str", "skw", "sky".
bool can_begin(Sound first, Sound second, Sound third) {
    using enum Sound;
    return first == S && is_one_of(second, {K, P, T}) && can_begin(second, third);
}

bool is_borrowed_beginning(Sound first, Sound second) {
    using enum Sound;
    switch (first) {
    case SH: return is_one_of(second, {L, M, N, T, W, Y});
    case S: return is_one_of(second, {R, V});
    case V: return is_one_of(second, {L, R});
    case Z: return is_one_of(second, {L, W});
    case K: return is_one_of(second, {N, V});
    case M: return is_one_of(second, {L, R});
    case T: return second == S;
    default: return second == W && is_one_of(first, {B, D, F, P, TH, ZH});
    }
}

// How open the mouth is: stops and hisses least, glides most.
int openness(Sound sound) {
    using enum Sound;
    if (is_one_of(sound, {W, Y, HH})) return 4;
    if (sound == R) return 3;
    if (sound == L) return 2;
    if (is_one_of(sound, {M, N, NG})) return 1;
    return 0;
}

} // namespace

bool can_begin_word(std::span<const Phone> consonants) {
    const auto sound = [&](std::size_t at) { return consonants[at].sound; };
    switch (consonants.size()) {
    case 0: return true;
    case 1: return sound(0) != Sound::NG;
    case 2: return can_begin(sound(0), sound(1)) || is_borrowed_beginning(sound(0), sound(1));
    case 3: return can_begin(sound(0), sound(1), sound(2));
    default: return false;
    }
}

bool can_end_word(std::span<const Phone> consonants) {
    for (std::size_t i = 0; i < consonants.size(); ++i) {
        const int here = openness(consonants[i].sound);
        if (here == 4) return false;
        if (i > 0 && here > openness(consonants[i - 1].sound)) return false;
    }
    return true;
}

std::string_view name_of(Sound sound) {
    const auto index = static_cast<std::size_t>(sound);
    return index < names.size() ? names[index] : std::string_view();
}

std::string to_arpabet(std::span<const Phone> phones) {
    std::string text;
    for (const Phone& phone : phones) {
        if (!text.empty()) text += ' ';
        text += name_of(phone.sound);
        if (is_vowel(phone.sound)) text += static_cast<char>('0' + std::min<int>(phone.stress, 2));
    }
    return text;
}

std::optional<Phones> from_arpabet(std::string_view text) {
    Phones phones;
    for (std::size_t at = 0; at < text.size();) {
        if (ascii::is_blank(text[at])) {
            at++;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() && !ascii::is_blank(text[end]))
            end++;
        const auto phone = read_symbol(text.substr(at, end - at));
        if (!phone) return std::nullopt;
        phones.push_back(*phone);
        at = end;
    }
    return phones;
}

int syllable_count(std::span<const Phone> phones) {
    const auto vowels = std::count_if(phones.begin(), phones.end(),
                                      [](const Phone& phone) { return is_vowel(phone.sound); });
    return std::max(static_cast<int>(vowels), phones.empty() ? 0 : 1);
}

std::vector<std::size_t> syllable_starts(std::span<const Phone> phones) {
    std::vector<std::size_t> starts;
    std::size_t after_vowel = 0; // the consonants from here on stand between two vowels
    for (std::size_t at = 0; at < phones.size(); at++) {
        if (!is_vowel(phones[at].sound)) continue;
        const std::size_t n_between = at - after_vowel;
        const auto sound = [&](std::size_t back) { return phones[at - back].sound; };
        std::size_t onset = 0;
        if (starts.empty()) {
            onset = n_between; // whatever a word begins with, it begins its first syllable
        } else if (n_between >= 3 && can_begin(sound(3), sound(2), sound(1))) {
            onset = 3;
        } else if (n_between >= 2 && can_begin(sound(2), sound(1))) {
            onset = 2;
        } else if (n_between >= 1 && sound(1) != Sound::NG) {
            onset = 1;
        }
        starts.push_back(at - onset);
        after_vowel = at + 1;
    }
    if (starts.empty() && !phones.empty()) starts.push_back(0);
    return starts;
}

} // namespace say
