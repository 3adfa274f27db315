// From the grammar's nodes to a thought: what is text and what is a mark, the plain text, words and
// marks. No tree-sitter here: parser.cpp hands over plain values.
#pragma once

#include "syntax/script.h"

#include <span>

namespace say {

enum class NodeUse {
    none,
    pair,     // encloses words: its delimiters are hidden, its words stay
    opener,   // a quote that runs to the end of its thought: only its opening is hidden
    standing, // hidden, and it parts words: / ... [direction]
    attached, // hidden, and it joins: {pronouncer} :: ^
    escape,   // the backslash is hidden
    code,     // the backticks are hidden
    note,     // hidden, with its line
};

struct NodeKind {
    NodeUse use = NodeUse::none;
    MarkKind mark = MarkKind::pause; // of pair, standing and attached
};

struct NodeName {
    std::string_view name;
    NodeKind kind;
};
// Every node of the grammar that the builder knows.
std::span<const NodeName> node_names();

struct MarkNode {
    NodeKind kind;
    Span span;
    Span open; // a pair's delimiters; `close` is empty where nothing closes it
    Span close;
};

// `source` is the block, `content` what may be spoken of it; nodes by place, outer before inner.
Written build(std::string_view source, Span content, std::span<const MarkNode> nodes);
// A thought over the cap: plain words and one problem.
Written build_too_long(std::string_view source, Span content);

// Marks that were meant and not taken: found in what the grammar left as text
// (syntax/problems.cpp). `hidden[i]` is true where a byte of `source` is no text.
std::vector<Problem> find_problems(std::string_view source, Span content,
                                   std::span<const char> hidden, const Written& written);

} // namespace say
