// A thought over the cap: its marks are not read any more.
#include "rules/rule.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind != ProblemKind::too_long) continue;
        found.push_back(
            {.span = problem.span,
             .message = fmt::format("{} KiB without a blank line: above {} no mark is read",
                                    view.content.size() / 1024, thought_cap / 1024),
             .fixes = {}});
    }
    return found;
}

} // namespace

extern const Rule thought_too_long = {
    .id = "thought-too-long",
    .severity = Severity::warning,
    .summary = "A thought of more than 64 KiB, whose marks are not read",
    .manual = "A thought is a paragraph, and no paragraph that is spoken fills 64 KiB. "
              "Beyond that its marks are taken as plain words, so that no pasted file can slow the "
              "editor down. "
              "Put blank lines between its sentences.",
    .check = check,
};

} // namespace say::rules
