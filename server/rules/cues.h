// Words that say what to do, as people write them in brackets. Common practice, no source.
#pragma once

#include <string_view>

namespace say::rules {

// What square brackets hold within a sentence when it is no part of it: "pause", "slide: the map".
bool begins_cue(std::string_view inside);
// What is a cue in round brackets too, where an aside may stand: "pause", "long pause", "smiles".
bool is_bare_cue(std::string_view inside);

} // namespace say::rules
