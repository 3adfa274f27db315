// Which word a reader leans on and where a reader pauses, on a scale from 0 to 2 (0.5 some, 1.5
// strong). The values are expected labels: they are for ranking places, not for times.
#pragma once

#include "syntax/words.h"

#include <span>
#include <string_view>
#include <vector>

namespace say {

struct PhrasingWord {
    std::string_view text; // as written, without the punctuation around it
    Juncture after = Juncture::none;
};

struct Phrasing {
    float stress = 0;
    float boundary = 0; // of the place after the word
};

// One entry a word.
std::vector<Phrasing> phrase(std::span<const PhrasingWord> words);

} // namespace say
