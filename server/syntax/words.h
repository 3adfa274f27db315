// Cuts plain text into written words. Both the builder and `explain --plain` use it, so that a word
// is the same thing everywhere.
#pragma once

#include "text/span.h"

#include <string_view>
#include <vector>

namespace say {

// Written words in order, as spans of `plain`: runs of non-blank characters without the punctuation
// around them, cut at dashes (— – spaced, --) and at `...` or `…`.
// What belongs to a figure or a symbol stays: $5, 5%, #1, -0.1, +1-123, .5, '90s, 20°, AT&T, a@b.c.
// A final full stop never belongs ("Dr.", "U.S." give "Dr", "U.S"): look at the character behind.
// A run that is punctuation alone gives no word; one that is a lone symbol (&, +, =, %) does.
std::vector<Span> split_words(std::string_view plain);

// The strongest punctuation between two written words (or after the last).
enum class Juncture { none, comma, strong, stop };

// `between` is the plain text from the end of one word to the beginning of the next.
// comma: , ( ) and brackets or quotes next to a comma; strong: ; : dash, three dots; stop: . ! ?
// `ends_sentence` says whether the place is a sentence end (a stop of "Dr." is none).
Juncture juncture_of(std::string_view between, bool ends_sentence);

} // namespace say
