// Fixes for marks that are none.
#include "rules/problem.h"

#include <fmt/core.h>

namespace say::rules {

std::string shape(std::string_view what) {
    return fmt::format("`{}`", what);
}

Fix remove_fix(Span span, std::string_view what) {
    return {.title = fmt::format("Remove {}", shape(what)), .edits = {{span, ""}}};
}

Fix remove_standing_fix(std::string_view source, Span span, std::string_view what) {
    const std::uint32_t begin = span.begin.value;
    const bool opens = begin == 0 || source[begin - 1] == '\n';
    if (!opens && source[begin - 1] == ' ') {
        --span.begin.value;
    } else if (opens && span.end.value < source.size() && source[span.end.value] == ' ') {
        ++span.end.value;
    }
    return remove_fix(span, what);
}

Fix unpair_fix(const Mark& mark, std::string title) {
    Fix fix{.title = std::move(title), .edits = {{mark.open, ""}}};
    if (!mark.close.empty()) fix.edits.push_back({mark.close, ""});
    return fix;
}

} // namespace say::rules
