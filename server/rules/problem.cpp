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

Fix unpair_fix(const Mark& mark, std::string title) {
    Fix fix{.title = std::move(title), .edits = {{mark.open, ""}}};
    if (!mark.close.empty()) fix.edits.push_back({mark.close, ""});
    return fix;
}

Fix plain_text_fix(Span span, std::string_view what) {
    return {.title = fmt::format("Keep {} as text", shape(what)),
            .edits = {{{span.begin, span.begin}, "\\"}}};
}

} // namespace say::rules
