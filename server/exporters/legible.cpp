#include "exporters/legible.h"

#include "syntax/marks.h"

#include <algorithm>
#include <tuple>

namespace say {
namespace {

struct Sign {
    std::size_t before = 0; // the byte of the plain text that it stands before
    Offset source;
    std::string_view text;
};

// The first byte of the plain text from a place in the source on.
std::size_t plain_at(const Plain& plain, Offset source) {
    const auto found = std::lower_bound(plain.source.begin(), plain.source.end(), source.value);
    return std::min(static_cast<std::size_t>(found - plain.source.begin()), plain.text.size());
}

// Behind the word, not before the next one.
std::size_t without_blank(const Plain& plain, std::size_t at) {
    while (at > 0 && plain.text[at - 1] == ' ')
        --at;
    return at;
}

std::vector<Sign> signs_of(const Thought& thought) {
    constexpr std::string_view dots = "...";
    const Plain& plain = thought.written.plain;
    std::vector<Sign> signs;
    for (const Mark& mark : thought.written.marks) {
        if (mark.kind == MarkKind::pause) {
            const std::size_t at = without_blank(plain, plain_at(plain, mark.span.begin));
            // Behind a full stop the pause shows as one.
            if (at > 0 && plain.text[at - 1] != '.') signs.push_back({at, mark.span.begin, dots});
        } else if (mark.kind == MarkKind::quoted || mark.kind == MarkKind::aside) {
            signs.push_back({plain_at(plain, mark.open.end), mark.open.begin,
                             slice(thought.source, mark.open)});
            if (mark.close.empty()) continue;
            signs.push_back({without_blank(plain, plain_at(plain, mark.close.begin)),
                             mark.close.begin, slice(thought.source, mark.close)});
        }
    }
    std::sort(signs.begin(), signs.end(), [](const Sign& a, const Sign& b) {
        return std::tie(a.before, a.source) < std::tie(b.before, b.source);
    });
    return signs;
}

} // namespace

Legible::Legible(const Thought& thought) {
    const std::string_view plain = thought.written.plain.text;
    const std::vector<Sign> signs = signs_of(thought);
    auto next = signs.begin();
    for (std::size_t i = 0; i <= plain.size(); ++i) {
        for (; next != signs.end() && next->before == i; ++next)
            text_ += next->text;
        place_.push_back(text_.size());
        if (i < plain.size()) text_ += plain[i];
    }
}

std::string_view Legible::slice(std::size_t begin, std::size_t end) const {
    const std::size_t from = begin == 0 ? 0 : place_[begin - 1] + 1;
    return std::string_view(text_).substr(from, place_[end] - from);
}

} // namespace say
