// Where sentences end in plain text: Unicode's rules, mended where they fail on abbreviations,
// initials, decimals, quotes and numbered points.
#pragma once

#include "text/span.h"

#include <string_view>
#include <vector>

namespace say {

// Sentences as spans without the blanks around them, in order; together they hold every
// non-blank character. No sentence is empty. Blank text gives none.
std::vector<Span> split_sentences(std::string_view plain);

} // namespace say
