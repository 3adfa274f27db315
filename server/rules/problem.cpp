// Fixes for marks that are none.
#include "rules/problem.h"

#include "base/lists.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {

std::string shape(std::string_view what) {
    return fmt::format("`{}`", what);
}

Fix remove_fix(Span span, std::string_view what) {
    return {.title = fmt::format("Remove {}", shape(what)), .edits = {{span, ""}}};
}

Fix remove_standing_fix(std::string_view source, Span span, std::string_view what) {
    constexpr std::string_view stops = " .,;:!?)";
    const std::uint32_t begin = span.begin.value;
    const bool opens = begin == 0 || source[begin - 1] == '\n';
    const bool ends = span.end.value >= source.size() ||
                      stops.find(source[span.end.value]) != std::string_view::npos;
    if (!opens && source[begin - 1] == ' ' && ends) {
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

bool names_a_field(const Problem& problem) {
    constexpr std::array<std::string_view, 24> asked = {
        "name",    "title", "company", "product", "place", "city",    "town",  "venue",
        "address", "email", "phone",   "number",  "date",  "time",    "day",   "month",
        "year",    "price", "amount",  "topic",   "event", "speaker", "guest", "link"};
    if (problem.kind != ProblemKind::braces_apart || problem.what.size() < 2) return false;
    const auto inner = std::string_view(problem.what).substr(1, problem.what.size() - 2);
    const bool small = std::all_of(inner.begin(), inner.end(),
                                   [](char c) { return ascii::is_lower(c) || c == ' '; });
    return small && is_one_of(inner.substr(inner.rfind(' ') + 1), asked);
}

} // namespace say::rules
