// Edits of whole header lines.
#include "rules/header_lines.h"

#include <fmt/core.h>

namespace say::rules {

Span whole_line(std::string_view text, Offset at) {
    Span span{at, at};
    while (span.begin.value > 0 && text[span.begin.value - 1] != '\n' &&
           text[span.begin.value - 1] != '\r') {
        --span.begin.value;
    }
    while (span.end.value < text.size() && text[span.end.value] != '\n' &&
           text[span.end.value] != '\r') {
        ++span.end.value;
    }
    const std::string_view rest = text.substr(span.end.value);
    if (rest.starts_with("\r\n")) {
        span.end.value += 2;
    } else if (!rest.empty()) {
        span.end.value += 1;
    }
    return span;
}

std::string_view line_end(std::string_view text) {
    return text.find("\r\n") == std::string_view::npos ? "\n" : "\r\n";
}

TextEdit add_header_line(const ScriptView& script, std::string_view line) {
    const std::string_view eol = line_end(script.text);
    const Header& header = script.header;
    if (header.span.empty()) {
        // Behind a byte-order mark, where there is one.
        const Offset top = header.span.begin;
        return {{top, top}, fmt::format("---{}{}{}---{}{}", eol, line, eol, eol, eol)};
    }
    const Span fence = whole_line(script.text, header.span.begin);
    return {{fence.end, fence.end}, fmt::format("{}{}", line, eol)};
}

} // namespace say::rules
