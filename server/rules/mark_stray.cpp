// Shapes of marks that act on nothing: a closer without an opener, a mark with no word beside it, a
// breath that touches a word.
#include "rules/problem.h"
#include "rules/rule.h"
#include "text/ascii.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

FindingDraft stray(const Problem& problem) {
    // A quote costs no time, and one may have opened in the thought before.
    const bool quote = problem.what == "\"" || problem.what == "”";
    // A star may point to a footnote: whether it goes is for the writer to say.
    const bool footnote = problem.what == "*" || problem.what == "**";
    Fix fix = remove_fix(problem.span, problem.what);
    fix.preferred = !quote && !footnote;
    return {.span = problem.span,
            .message = fmt::format("{} closes nothing: it stays on the page and does nothing",
                                   shape(problem.what)),
            .fixes = {std::move(fix)},
            .severity = quote ? Severity::hint : Severity::warning};
}

FindingDraft dangling(const ThoughtView& view, const Problem& problem) {
    // What stands in braces is no mark here and would be read out.
    const bool braces = problem.what.starts_with('{');
    Fix fix = remove_standing_fix(view.source, problem.span, problem.what);
    fix.keeps_every_word = !braces;
    return {.span = problem.span,
            .message = fmt::format("{} has no word to act on{}", shape(problem.what),
                                   braces ? ", so it is spoken as text" : ""),
            .fixes = {std::move(fix)}};
}

FindingDraft glued_breath(const ThoughtView& view, const Problem& problem) {
    const bool before = !ascii::is_blank(view.source[problem.span.begin.value - 1]);
    const Offset apart = before ? problem.span.begin : problem.span.end;
    return {.span = problem.span,
            .message = fmt::format("`/` touches the word {} it, so it is no breath",
                                   before ? "before" : "behind"),
            .fixes = {{.title = "Set it apart, to breathe here",
                       .edits = {{{apart, apart}, " "}},
                       .preferred = true}}};
}

FindingDraft early_reset(const ThoughtView& view, const Problem& problem) {
    return {.span = problem.span,
            .message = "`//` has nothing to end yet: the thought opens with silence",
            .fixes = {remove_standing_fix(view.source, problem.span, "//")},
            .severity = Severity::hint};
}

FindingDraft two_dots(const Problem& problem) {
    return {.span = problem.span,
            .message = "`..` is no pause: a pause is three dots",
            .fixes = {{.title = "Pause here", .edits = {{problem.span, "..."}}, .preferred = true},
                      {.title = "End the sentence here", .edits = {{problem.span, "."}}}},
            .severity = Severity::hint};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        switch (problem.kind) {
        case ProblemKind::stray: found.push_back(stray(problem)); break;
        case ProblemKind::dangling: found.push_back(dangling(view, problem)); break;
        case ProblemKind::slash_glued: found.push_back(glued_breath(view, problem)); break;
        case ProblemKind::reset_first: found.push_back(early_reset(view, problem)); break;
        case ProblemKind::two_dots: found.push_back(two_dots(problem)); break;
        default: break;
        }
    }
    return found;
}

} // namespace

extern const Rule mark_stray = {
    .id = "mark-stray",
    .severity = Severity::warning,
    .summary = "A mark that acts on nothing",
    .manual =
        "A closing sign without an opening one, a tie or an arrow with no word beside it, a breath "
        "that touches its word: the shape is that of a mark, but nothing will happen. "
        "So are two dots, which are neither a full stop nor a pause, and a reset before the first "
        "word. "
        "The fixes take the sign away or mend its shape; a star, which may point to a footnote, "
        "goes only if you say so.",
    .check = check,
};

} // namespace say::rules
