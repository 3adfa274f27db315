// A standing x at the end of a thought that is the letter, not a beat: a beat of one x needs a
// sentence end or a closing mark before it.
#include "rules/rule.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind != ProblemKind::lone_beat) continue;
        FindingDraft draft{.span = problem.span,
                           .message =
                               "`x` is said as the letter here; a beat needs the sentence to "
                               "end before it, or `xx`",
                           .fixes = {}};
        const auto& words = view.written.words;
        if (words.size() > 1) {
            const Offset end = words[words.size() - 2].source.end;
            if (slice(view.source, {end, problem.span.begin}) == " ") {
                draft.fixes.push_back({.title = "End the sentence and hold a beat",
                                       .edits = {{{end, end}, "."}},
                                       .keeps_every_word = false});
            }
        }
        draft.fixes.push_back({.title = "Hold two beats",
                               .edits = {{problem.span, "xx"}},
                               .keeps_every_word = false});
        found.push_back(std::move(draft));
    }
    return found;
}

} // namespace

extern const Rule lone_beat = {
    .id = "lone-beat",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "An x that is spoken where a beat may be meant",
    .manual =
        "\"Solve for x\" says the letter, so a single `x` is a beat only right behind a sentence "
        "end "
        "or a closing mark. "
        "As the last word of a thought it may have been meant as one. "
        "The fixes end the sentence first, or write `xx`, which holds two beats anywhere; `\\x` "
        "keeps the letter.",
    .check = check,
};

} // namespace say::rules
