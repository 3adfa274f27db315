// "Not X but Y": which of the things that are set against each other is the one
// that is meant; and in a list of likes, which is the new one.
#pragma once

#include "rules/rule.h"

#include <vector>

namespace say::rules {

struct Contrast {
    int word = -1;       // the word that is meant, or -1
    bool yields = false; // what is denied here is answered in the next sentence
};

// One entry a sentence of the thought.
std::vector<Contrast> find_contrasts(const ThoughtView& view);

} // namespace say::rules
