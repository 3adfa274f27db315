// How likely a stretch of words trips the tongue: a linear score over the best window of three to nine
// content words. Model, features and thresholds: docs/twisters.md.
#pragma once

#include "speech/phones.h"

#include <span>
#include <string>
#include <vector>

namespace say {

// One spoken word to be judged; the views must outlive the call only.
struct TwisterWord {
    std::string_view text; // folded: lower case, straight apostrophe
    std::span<const Phone> phones;
};

struct Twister {
    double score = -100.0; // finite also where there are fewer than three content words
    int first = 0;         // words [first, last) of the input that trip; empty if none
    int last = 0;
    // The sounds that clash, most telling first ("S", "SH"), and the words that hold them.
    std::vector<Sound> sounds;
    std::vector<int> words; // indexes into the input
};

Twister find_twister(std::span<const TwisterWord> words);

inline constexpr double twister_default_threshold = 1.88;
inline constexpr double twister_strict_threshold = -0.23;

} // namespace say
