// How likely a stretch of words trips the tongue: a linear score over the best window of three to
// nine content words. Model, features and thresholds: docs/twisters.md.
#pragma once

#include "speech/phones.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// One spoken word to be judged; the views must outlive the call only.
struct TwisterWord {
    std::string_view text; // folded: lower case, straight apostrophe
    std::span<const Phone> phones;
};

// What the tongue has to do there.
enum class Clash {
    trade,      // two sounds that are easily said for each other
    pile,       // one consonant again and again
    alike,      // words that differ by a sound or two
    vowel,      // the same stressed vowel again and again
    beginnings, // words that begin with a vowel, with nothing to keep them apart
    repeat,     // the same words in another order
};

struct Twister {
    double score = -100.0; // finite also where there are fewer than three content words
    int first = 0;         // words [first, last) of the input that trip; empty if none
    int last = 0;
    // The rest is filled from the strict threshold on. The sounds that clash, most telling first
    // ("S", "SH"), and the words that hold them.
    Clash clash = Clash::pile;
    std::vector<Sound> sounds;
    std::vector<int> words; // indexes into the input
};

Twister find_twister(std::span<const TwisterWord> words);

// "s and sh trade places: 'she sells sea shells'"; empty below the strict threshold. `words` is
// what the twister was found in.
std::string twister_message(const Twister& twister, std::span<const TwisterWord> words);

inline constexpr double twister_default_threshold = 1.88;
inline constexpr double twister_strict_threshold = -0.23;

} // namespace say
