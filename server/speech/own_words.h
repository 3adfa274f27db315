// A short list of our own beside the dictionary.
#pragma once

#include "speech/phones.h"

#include <optional>
#include <string_view>

namespace say {

std::optional<Phones> own_word(std::string_view word);

} // namespace say
