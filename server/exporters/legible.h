// A thought for those who read it and do not hear it: captions, tables.
#pragma once

#include "engine/analysis.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// The plain text again, with what marks have in common with print: quotation marks and brackets
// around words, three dots where the voice hangs. Whose words they are must not be lost.
class Legible {
public:
    explicit Legible(const Thought& thought);

    std::string_view text() const { return text_; }
    // What stands for [begin, end) of the plain text, with the signs at both ends.
    std::string_view slice(std::size_t begin, std::size_t end) const;

private:
    std::string text_;
    std::vector<std::size_t> place_; // of each byte of the plain text, and of its end
};

} // namespace say
