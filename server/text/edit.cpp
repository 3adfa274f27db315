// Edits in document order, copied piece by piece: never in place, so nothing is lost half-way.
#include "text/edit.h"

#include <algorithm>

namespace say {

std::string apply(std::string_view text, std::vector<TextEdit> edits) {
    std::stable_sort(edits.begin(), edits.end(), [](const TextEdit& a, const TextEdit& b) {
        return a.span.begin < b.span.begin;
    });
    std::string result;
    result.reserve(text.size() + 64);
    std::uint32_t done = 0;
    for (const TextEdit& edit : edits) {
        if (edit.span.begin.value < done || edit.span.end.value > text.size()) continue;
        if (edit.span.end < edit.span.begin) continue;
        result += slice(text, Span{Offset{done}, edit.span.begin});
        result += edit.replacement;
        done = edit.span.end.value;
    }
    result += text.substr(done);
    return result;
}

bool uses_crlf(std::string_view text) {
    const std::size_t end = text.find('\n');
    return end != std::string_view::npos && end > 0 && text[end - 1] == '\r';
}

void write_crlf(std::vector<TextEdit>& edits) {
    for (TextEdit& edit : edits) {
        std::string text;
        for (const char c : edit.replacement) {
            if (c == '\n' && !text.ends_with('\r')) text += '\r';
            text += c;
        }
        edit.replacement = std::move(text);
    }
}

} // namespace say
