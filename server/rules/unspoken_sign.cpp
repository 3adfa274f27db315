// An emoji: the reader sees it, the listener hears nothing.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind != ProblemKind::emoji) continue;
        found.push_back({.span = problem.span,
                         .message = fmt::format("{} is not spoken", quoted(problem.what)),
                         .fixes = {remove_standing_fix(view.source, problem.span, problem.what)}});
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
