// Replacements in a text. The server never edits; it offers edits that the writer chooses.
#pragma once

#include "text/span.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

struct TextEdit {
    Span span; // what is replaced; empty for an insertion
    std::string replacement;
    auto operator<=>(const TextEdit&) const = default;
};

// Applies edits that all refer to the text as it stands, in any order. Edits must not overlap;
// of two that do, the later in the text is left out. Insertions at one place keep their order.
std::string apply(std::string_view text, std::vector<TextEdit> edits);

// One set of edits that does what `first` does to the text and `then` to what comes of it.
std::vector<TextEdit> composed(std::string_view text, std::vector<TextEdit> first,
                               std::vector<TextEdit> then);

// True if the text's first line ends in CRLF: then new lines should too.
bool uses_crlf(std::string_view text);
// Turns each lone LF that the edits would put in into CRLF.
void write_crlf(std::vector<TextEdit>& edits);

} // namespace say
