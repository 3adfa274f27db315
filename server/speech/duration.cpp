// One table a sound. The weights are a linear fit to read speech and talks, rounded; a finer form
// gains nothing.
#include "speech/duration.h"

#include <array>

namespace say {
namespace {

constexpr double each_word = 0.069;
constexpr double long_vowel = 0.095;
constexpr double short_vowel = 0.063;
constexpr double unstressed_vowel = 0.046;
constexpr double function_vowel = 0.049;
constexpr double function_consonant = 0.044;
constexpr double voiceless_stop = 0.043;
constexpr double voiced_stop = 0.052;
constexpr double voiceless_fricative = 0.082;
constexpr double voiced_fricative = 0.079;
constexpr double nasal = 0.047;
constexpr double glide = 0.045;

constexpr double stressed_vowel(Sound sound) {
    switch (sound) {
    case Sound::AH:
    case Sound::EH:
    case Sound::IH:
    case Sound::UH: return short_vowel;
    default: return long_vowel;
    }
}

constexpr double consonant(Sound sound) {
    switch (sound) {
    case Sound::P:
    case Sound::T:
    case Sound::K: return voiceless_stop;
    case Sound::B:
    case Sound::D:
    case Sound::G: return voiced_stop;
    case Sound::F:
    case Sound::TH:
    case Sound::S:
    case Sound::SH:
    case Sound::CH: return voiceless_fricative;
    case Sound::V:
    case Sound::DH:
    case Sound::Z:
    case Sound::ZH:
    case Sound::JH: return voiced_fricative;
    case Sound::M:
    case Sound::N:
    case Sound::NG: return nasal;
    default: return glide;
    }
}

} // namespace

Seconds duration_of(const Phone& phone) {
    if (!is_vowel(phone.sound)) return Seconds{consonant(phone.sound)};
    return Seconds{phone.stress == 0 ? unstressed_vowel : stressed_vowel(phone.sound)};
}

Seconds duration_of(std::span<const Phone> phones, bool function_word) {
    double total = each_word;
    for (const Phone& phone : phones) {
        const bool vowel = is_vowel(phone.sound);
        if (function_word) {
            total += vowel ? function_vowel : function_consonant;
        } else {
            total += duration_of(phone).count();
        }
    }
    return Seconds{total};
}

} // namespace say
