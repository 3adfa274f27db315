// The numbers of the tongue-twister score: how often each sound is met in ordinary speech, which
// sounds are mistaken for each other, which words are too common to trip anybody, and the weights.
// What each means and where it comes from: docs/twisters.md.
#pragma once

#include "speech/phones.h"

#include <array>
#include <cstddef>
#include <string_view>

namespace say::twister_model {

// A window of the text is judged by these; the order is that of `weights`.
enum Feature : std::size_t {
    onset_evidence,     // one sound begins more syllables than chance gives
    consonant_evidence, // one consonant is met more often than chance gives
    near_words,         // neighbours that differ by a sound or two
    confusable_onsets,  // neighbours that begin with sounds easily swapped
    vowel_surprise,     // the same stressed vowel again and again
    consonant_skew,     // the consonants together are far from ordinary speech
    repetition,         // the same words come back
    density,            // few small words in between
    length,             // logarithm of the number of content words
    sibilants,          // share of hissing sounds
    th_mix,             // "th" among "s", "f", "sh", "t", "z"
    liquid_mix,         // "r", "l" and "w" mixed
    vowel_beginnings,   // more words than chance gives begin with a vowel
    feature_count,
};

inline constexpr int fewest_words = 3; // content words of a window
inline constexpr int most_words = 9;
inline constexpr int widest_span = 20; // words of a window, small ones included
inline constexpr int reach = 3;        // content words compared with the next three

inline constexpr double near_limit = 0.6;       // of the distance of two words
inline constexpr double confusable_limit = 0.4; // of the similarity of two sounds

inline constexpr double bias = -21.458;
inline constexpr std::array<double, feature_count> weights = {
    0.6432, 0.4542, 43.22, 6.52, 1.248, 0.864, 8.165, 5.648, 0.6221, 4.4, 6.74, 9.462, 0.6065};

// One or two content words are over before the tongue can trip: they never score higher than this.
inline constexpr double score_limit_of_few = -3.0;

inline constexpr double vowel_beginning_share = 0.13; // of content words in ordinary speech

// Shares in ordinary speech: of the syllables counted as onsets (the first of a word and each
// stressed one), of all consonants, of the vowels of those syllables.
extern const std::array<double, sound_count> onset_share;
extern const std::array<double, sound_count> consonant_share;
extern const std::array<double, sound_count> vowel_share;

// How easily one consonant is said for the other: 1 for the same, 0 for unlike ones and for vowels.
double similarity(Sound one, Sound other);

// Grammar words are no content at all; common words weigh less than rare ones.
enum class Weight { none, common, full };
Weight weight_of(std::string_view word);

} // namespace say::twister_model
