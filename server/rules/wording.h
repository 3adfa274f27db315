// How messages are worded: quoted text and counts, the same in every rule.
#pragma once

#include <string>
#include <string_view>

namespace say::rules {

// “word”, on one line and cut off where it is too long to read.
std::string quoted(std::string_view text);
// "1 word", "3 words".
std::string counted(int count, std::string_view noun);

} // namespace say::rules
