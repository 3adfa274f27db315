// Captions of a script at the times that the engine gives: where they break, how long they stand.
// docs/exports.md names the limits and their sources.
#pragma once

#include "engine/analysis.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

struct CaptionLimits {
    int columns = 42; // characters a line
    Seconds shortest{2.0};
    Seconds longest{7.0};
    double characters_a_second = 20;
    bool names = false; // a speaker's name stands before the first words, as "MIRA:"
};

struct Caption {
    Seconds begin{0};
    Seconds end{0};
    std::vector<std::string> lines; // one or two; a word longer than a line stands alone
    std::string_view speaker;       // as the script names it; empty where nobody is named
};

// In order, never overlapping. What is not spoken has none.
std::vector<Caption> captions(const Analysis& analysis, const CaptionLimits& limits);

} // namespace say
