// Which word a reader leans on and where a reader pauses, on a scale from 0 to 2: an expected label
// (0 none, 1 some, 2 strong), so that 0.5 and more is some and 1.5 and more is strong. The values
// are for ranking words and places, not for times. docs/phrasing.md tells where they come from.
#pragma once

#include "speech/phrasing_features.h"

#include <span>
#include <vector>

namespace say {

// Four chances from 0 to 1, each at least as sure as the next of its kind.
struct PhrasingChances {
    float stressed = 0;
    float strongly_stressed = 0;
    float paused = 0; // after the word
    float strongly_paused = 0;
};

struct Phrasing {
    float stress = 0;
    float boundary = 0; // of the place after the word
    PhrasingChances chances;
};

// What orders places by how likely a pause is there: the chance of any, and a little of a long one.
constexpr float pause_value(float paused, float strongly_paused) {
    return paused + 0.3F * strongly_paused;
}

// One entry a word.
std::vector<Phrasing> phrase(std::span<const PhrasingWord> words);

} // namespace say
