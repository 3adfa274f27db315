// A pause inside an aside: round brackets ask for one run, a pause mark breaks it.
#include "rules/problem.h"
#include "rules/rule.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

const Mark* aside_around(const ThoughtView& view, const Mark& pause) {
    for (const Mark& mark : view.written.marks) {
        if (mark.span.begin > pause.span.begin) break;
        if (mark.kind == MarkKind::aside && mark.span.covers(pause.span)) return &mark;
    }
    return nullptr;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        if (!is_pause(mark.kind)) continue;
        const Mark* aside = aside_around(view, mark);
        if (aside == nullptr) continue;
        const std::string_view written = slice(view.source, mark.span);
        found.push_back({.span = mark.span,
                         .message = fmt::format("{} breaks an aside that is to be said in one run",
                                                shape(written)),
                         .fixes = {remove_standing_fix(view.source, mark.span, written),
                                   unpair_fix(*aside, "Remove the brackets")}});
    }
    return found;
}

} // namespace

extern const Rule pause_in_aside = {
    .id = "pause-in-aside",
    .severity = Severity::warning,
    .summary = "A pause mark inside an aside",
    .manual =
        "Round brackets keep their words together in one run, apart from the rest. "
        "A pause mark inside them asks for the opposite, and the listener loses which words belong "
        "to the aside. "
        "The fixes take away the pause or the brackets.",
    .check = check,
};

} // namespace say::rules
