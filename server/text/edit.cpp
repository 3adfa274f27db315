// Edits in document order, copied piece by piece: never in place, so nothing is lost half-way.
#include "text/edit.h"

#include <algorithm>

namespace say {
namespace {

// Those that can be done together, in the order of their places.
std::vector<TextEdit> in_order(std::string_view text, std::vector<TextEdit> edits) {
    std::stable_sort(edits.begin(), edits.end(), [](const TextEdit& a, const TextEdit& b) {
        return a.span.begin < b.span.begin;
    });
    std::uint32_t done = 0;
    std::erase_if(edits, [&](const TextEdit& edit) {
        const bool fits = edit.span.begin.value >= done && edit.span.end.value <= text.size() &&
                          edit.span.begin <= edit.span.end;
        if (fits) done = edit.span.end.value;
        return !fits;
    });
    return edits;
}

// What an edit has put into the text that came of it, and how far all behind it moved.
struct Put {
    Span span;
    std::int64_t moved = 0;
};

std::vector<Put> puts_of(const std::vector<TextEdit>& edits) {
    std::vector<Put> puts;
    puts.reserve(edits.size());
    std::int64_t moved = 0;
    for (const TextEdit& edit : edits) {
        const auto begin = static_cast<std::uint32_t>(edit.span.begin.value + moved);
        moved += std::ssize(edit.replacement) - static_cast<std::int64_t>(edit.span.size());
        puts.push_back({make_span(begin, begin + edit.replacement.size()), moved});
    }
    return puts;
}

} // namespace

std::string apply(std::string_view text, std::vector<TextEdit> edits) {
    edits = in_order(text, std::move(edits));
    std::string result;
    result.reserve(text.size() + 64);
    std::uint32_t done = 0;
    for (const TextEdit& edit : edits) {
        result += slice(text, Span{Offset{done}, edit.span.begin});
        result += edit.replacement;
        done = edit.span.end.value;
    }
    result += text.substr(done);
    return result;
}

// What touches is one edit; between such clusters the text only moves.
std::vector<TextEdit> composed(std::string_view text, std::vector<TextEdit> first,
                               std::vector<TextEdit> then) {
    first = in_order(text, std::move(first));
    const std::string between = apply(text, first);
    then = in_order(between, std::move(then));
    const std::vector<Put> puts = puts_of(first);
    std::vector<TextEdit> all;
    std::size_t put = 0;
    std::size_t next = 0;
    std::int64_t moved = 0;
    while (put < puts.size() || next < then.size()) {
        const bool old_first = next == then.size() ||
                               (put < puts.size() && puts[put].span.begin <= then[next].span.begin);
        Span cluster = old_first ? puts[put].span : then[next].span;
        const auto before = static_cast<std::uint32_t>(cluster.begin.value - moved);
        std::vector<TextEdit> inside;
        for (bool grows = true; grows;) {
            grows = false;
            if (put < puts.size() && puts[put].span.begin <= cluster.end) {
                cluster.end = std::max(cluster.end, puts[put].span.end);
                moved = puts[put++].moved;
                grows = true;
            }
            if (next < then.size() && then[next].span.begin <= cluster.end) {
                cluster.end = std::max(cluster.end, then[next].span.end);
                inside.push_back(std::move(then[next++]));
                inside.back().span = inside.back().span + (0U - cluster.begin.value);
                grows = true;
            }
        }
        all.push_back({make_span(before, static_cast<std::size_t>(cluster.end.value - moved)),
                       apply(slice(between, cluster), std::move(inside))});
    }
    return all;
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
