// A text with its line starts. What is shared between threads is a pointer to a const one.
#pragma once

#include "text/span.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace say {

class Text {
public:
    explicit Text(std::string bytes);

    // Puts `replacement` in the place of a span, at the cost of moving what is behind it.
    void replace(Span span, std::string_view replacement);

    std::string_view bytes() const { return bytes_; }
    Offset end() const { return Offset{static_cast<std::uint32_t>(bytes_.size())}; }

    // Lines end at LF, CRLF or a lone CR, as in the language server protocol; line 0 always exists.
    std::uint32_t line_count() const { return static_cast<std::uint32_t>(line_starts_.size()); }
    Offset line_start(std::uint32_t line) const; // clamped to the text's end
    std::uint32_t line_of(Offset at) const;      // counted from 0
    Span line_span(std::uint32_t line) const;    // without its line end

private:
    std::string bytes_;
    std::vector<std::uint32_t> line_starts_;
};

// One version of one open script.
struct Document {
    std::string uri;
    int version = 0;
    std::shared_ptr<const Text> text;
};

} // namespace say
