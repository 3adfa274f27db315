// Markup of other formats: tags, bullets, reference marks. They stand on the page or vanish as
// directions.
#include "rules/problem.h"
#include "rules/rule.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

FindingDraft tag(const Problem& problem) {
    return {.span = problem.span,
            .message = fmt::format("{} is a tag of another format: it stays on the page",
                                   shape(problem.what)),
            .fixes = {remove_fix(problem.span, problem.what)}};
}

FindingDraft bullet(const Problem& problem) {
    FindingDraft draft{.span = problem.span,
                       .message = "this is no list item: one begins with `- `",
                       .fixes = {},
                       .severity = Severity::hint};
    draft.fixes.push_back(
        {.title = "Make it a list item", .edits = {{problem.span, "-"}}, .preferred = true});
    return draft;
}

// "[1]" and "[sic]" come from print; "[text](address)" is a link.
bool is_print_habit(const ThoughtView& view, const Mark& mark) {
    if (mark.kind != MarkKind::direction || mark.argument.empty()) return false;
    if (mark.argument == "sic") return true;
    if (std::all_of(mark.argument.begin(), mark.argument.end(), ascii::is_digit)) return true;
    return view.source.substr(mark.span.end.value).starts_with("(http");
}

FindingDraft print_habit(const ThoughtView& view, const Mark& mark) {
    const std::string_view written = slice(view.source, mark.span);
    return {.span = mark.span,
            .message = fmt::format("{} is a direction here, so it is not spoken", shape(written)),
            .fixes = {remove_standing_fix(view.source, mark.span, written)},
            .severity = Severity::hint};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind == ProblemKind::tag) found.push_back(tag(problem));
        if (problem.kind == ProblemKind::bullet) found.push_back(bullet(problem));
    }
    for (const Mark& mark : view.written.marks) {
        if (is_print_habit(view, mark)) found.push_back(print_habit(view, mark));
    }
    return found;
}

} // namespace

extern const Rule other_markup = {
    .id = "other-markup",
    .severity = Severity::warning,
    .summary = "Markup of another format",
    .manual =
        "Tags such as `<b>`, bullets such as `* `, reference marks such as `[1]` and links come "
        "along when text is pasted. "
        "Tags and bullets stay on the page as they are; square brackets are directions, so what is "
        "in them is not spoken. "
        "The fixes take the markup away, or make the bullet a list item.",
    .check = check,
};

} // namespace say::rules
