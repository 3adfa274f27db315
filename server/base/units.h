// Units that all layers share. A bare number never stands for a time.
#pragma once

#include <chrono>

namespace say {

using Seconds = std::chrono::duration<double>;

constexpr Seconds operator""_s(long double value) {
    return Seconds{static_cast<double>(value)};
}

// A time to say something: always a range, since every reader differs.
// Invariant: speech + pause == expected, low <= expected <= high.
struct Timing {
    Seconds expected{0};
    Seconds low{0};
    Seconds high{0};
    Seconds speech{0};
    Seconds pause{0};
};

} // namespace say
