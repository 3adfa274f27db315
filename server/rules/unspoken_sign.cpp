// An emoji: the reader sees it, the listener hears nothing.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

// With the blank before it, or the one behind it at a line's start.
Span with_blank(std::string_view source, Span span) {
    if (span.begin.value > 0 && source[span.begin.value - 1] == ' ') {
        --span.begin.value;
    } else if (span.end.value < source.size() && source[span.end.value] == ' ') {
        ++span.end.value;
    }
    return span;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind != ProblemKind::emoji) continue;
        found.push_back({.span = problem.span,
                         .message = fmt::format("{} is not spoken", quoted(problem.what)),
                         .fixes = {{.title = fmt::format("Remove {}", quoted(problem.what)),
                                    .edits = {{with_blank(view.source, problem.span), ""}}}}});
    }
    return found;
}

} // namespace

extern const Rule unspoken_sign = {
    .id = "unspoken-sign",
    .severity = Severity::hint,
    .summary = "An emoji, which nobody speaks",
    .manual = "An emoji takes no time and makes no sound. "
              "If it stands for something to do, write a direction: `[smile]`. "
              "If it stands for a word, write the word.",
    .check = check,
};

} // namespace say::rules
