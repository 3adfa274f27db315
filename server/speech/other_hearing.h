// Two words whose sounds can be cut in another place and heard as other words: "grey tape" and
// "great ape". docs/twisters.md has the sources.
#pragma once

#include "speech/twister.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>

namespace say {

// Common words that have the same sounds as words `at - 1` and `at`, in the same order, with the
// join in another place or none. `words` are those of a stretch without a pause; `at` is not 0.
// Only where both what is written and what is heard could stand together: adjective or noun before
// a noun, "I" before a verb.
std::optional<std::string> other_hearing(std::span<const TwisterWord> words, std::size_t at);

} // namespace say
