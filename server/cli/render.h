// How results look on a terminal: places, excerpts, bars, colours. Everything is readable without
// the colours.
#pragma once

#include "cli/command.h"
#include "engine/analysis.h"

#include <string>
#include <string_view>

namespace say::cli {

// Line and column for people: both from 1, columns count code points.
struct Place {
    std::uint32_t line = 1;
    std::uint32_t column = 1;
};
Place place_of(const Text& text, Offset at);

class Paint {
public:
    explicit Paint(bool on) : on_(on) {}
    std::string strong(std::string_view text) const { return wrap("1", text); }
    std::string faint(std::string_view text) const { return wrap("2", text); }
    std::string alarm(std::string_view text) const { return wrap("31", text); }
    std::string calm(std::string_view text) const { return wrap("32", text); }
    std::string severity(Severity severity, std::string_view text) const;

private:
    std::string wrap(std::string_view code, std::string_view text) const;
    bool on_;
};

// The line of a span and a line of ~ below its words, both indented; a long line is cut around
// them.
std::string excerpt(const Text& text, Span span, const Paint& paint);

// A time against what it may be: "#####...." and, beyond the target, "+".
std::string bar(Seconds expected, Seconds limit, int width);

// Control characters of a script must not drive the terminal.
std::string printable(std::string_view text);

// "1 word", "2 words".
std::string counted(std::size_t count, std::string_view thing);

} // namespace say::cli
