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

// Where two texts differ: [begin, old_end) of the one stands as [begin, new_end) in the other, and
// what is before and behind is the same.
struct Change {
    std::uint32_t begin = 0;
    std::uint32_t old_end = 0;
    std::uint32_t new_end = 0;

    std::uint32_t shift() const { return new_end - old_end; } // modulo 2^32: may be "negative"
    auto operator<=>(const Change&) const = default;
};
Change difference(std::string_view before, std::string_view after);
// One change and then another as one; `size` is that of the text after both.
Change joined(Change first, Change second, std::uint32_t size);

// One version of one open script.
struct Document {
    std::string uri;
    int version = 0;
    std::shared_ptr<const Text> text;
    // What it was made from and where it differs, if that is known; else null.
    std::shared_ptr<const Text> since{};
    Change change{};

    // Where it differs from another text, by what is known or by comparing.
    Change change_from(const std::shared_ptr<const Text>& other) const {
        return since && since == other ? change : difference(other->bytes(), text->bytes());
    }
};

} // namespace say
