// Seconds of sound: the rounded linear model of the timing study (docs/timing.md).
#pragma once

#include "base/units.h"
#include "speech/phones.h"

#include <span>

namespace say {

// How long the sounds of one spoken word take at speed 1, the constant a word included.
// Vowels and consonants of function words are shorter whatever they are.
Seconds duration_of(std::span<const Phone> phones, bool function_word);

// How long one sound of a word is beside the others, in the same seconds without the word's
// constant.
Seconds duration_of(const Phone& phone);

// What the end of a phrase adds to its last word: at punctuation and at the thought's last word.
inline constexpr Seconds phrase_end{0.10};

} // namespace say
