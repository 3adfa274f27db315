// Sounds as samples: flite's diphones (two halves of neighbouring sounds, cut from one speaker's
// recordings), drawn out to the times and bent to the pitch that they are given.
#pragma once

#include "base/units.h"
#include "speech/phones.h"

#include <cstdint>
#include <span>
#include <vector>

namespace say {

inline constexpr int samples_a_second = 16000;

struct TimedPhone {
    Phone phone;
    Seconds seconds{0};
};

struct PitchPoint {
    Seconds at{0}; // from the first sound's beginning
    double hertz = 100;
};

// What is said between two silences, one channel at samples_a_second. As many samples as the sounds
// last, rounded: silence if flite cannot say them. Between points the pitch changes evenly; they
// come in order. May be called from any thread.
std::vector<std::int16_t> machine_voice(std::span<const TimedPhone> phones,
                                        std::span<const PitchPoint> pitch);

} // namespace say
