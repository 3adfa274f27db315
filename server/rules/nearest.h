// The name a writer most likely meant.
#pragma once

#include <span>
#include <string_view>

namespace say::rules {

// The nearest of `names` by letters changed, added or dropped; empty if none is near enough to be a
// slip of the finger.
std::string_view nearest(std::string_view written, std::span<const std::string_view> names);

} // namespace say::rules
