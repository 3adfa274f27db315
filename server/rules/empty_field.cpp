// A field of a template that nobody filled in: at the camera there is a hole in the sentence.
#include "rules/problem.h"
#include "rules/rule.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::string not_filled_in(const Problem& problem, bool spoken) {
    const std::string what = shape(problem.what);
    if (spoken) return fmt::format("{} is not filled in, and is spoken as it stands", what);
    return fmt::format("{} is not filled in, and {} is spoken in its place", what,
                       problem.what.front() == '$' ? "“dollar”" : "nothing");
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        const bool empty = problem.kind == ProblemKind::empty_braces;
        const bool spoken = names_a_field(problem); // no mark, so it is text
        if (!empty && !spoken && problem.kind != ProblemKind::field) continue;
        Fix fix = remove_standing_fix(view.source, problem.span, slice(view.source, problem.span));
        fix.preferred = empty;
        fix.keeps_every_word = empty; // a bulk fix must not hide the hole
        found.push_back({.span = problem.span,
                         .message = empty ? std::string("`{}` says nothing: the braces are empty")
                                          : not_filled_in(problem, spoken),
                         .fixes = {std::move(fix)},
                         .severity = empty ? Severity::warning : Severity::error});
    }
    return found;
}

} // namespace

extern const Rule empty_field = {
    .id = "empty-field",
    .severity = Severity::error,
    .summary = "Braces that were never filled in",
    .manual =
        "`{first_name}` is a template's field, as are `{{name}}`, `${name}` and `{name}` apart "
        "from any word, and `{}` an empty pronouncer: the sentence has a hole in it. "
        "Write the words that belong there, or take the braces away.",
    .check = check,
};

} // namespace say::rules
