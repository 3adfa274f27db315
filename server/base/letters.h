#pragma once

#include <cstddef>
#include <string_view>

namespace say {

// Letters (bytes) to change, add or drop to come from one word to the other. Takes the product of
// their sizes: for names, not for texts.
std::size_t letters_apart(std::string_view one, std::string_view other);

} // namespace say
