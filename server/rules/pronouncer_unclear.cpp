// A pronouncer that reaches no word, covers the wrong number of words, or cannot be read.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "speech/lexicon.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

FindingDraft apart(const ThoughtView& view, const Problem& problem) {
    Offset begin = problem.span.begin;
    while (begin.value > 0 &&
           (view.source[begin.value - 1] == ' ' || view.source[begin.value - 1] == '\t')) {
        --begin.value;
    }
    return {.span = problem.span,
            .message = fmt::format("{} stands apart from its word, so it is spoken as text",
                                   shape(problem.what)),
            .fixes = {{.title = "Join it to its word",
                       .edits = {{{begin, problem.span.begin}, ""}},
                       .keeps_every_word = false,
                       .preferred = true}}};
}

const Mark* mark_at(const ThoughtView& view, Span span) {
    for (const Mark& mark : view.written.marks) {
        if (mark.span == span) return &mark;
    }
    return nullptr;
}

FindingDraft wrong_parts(const ThoughtView& view, const Problem& problem) {
    const Mark* mark = mark_at(view, problem.span);
    const std::string word = mark ? quoted(view.word(mark->last)) : "the word before it";
    return {.span = problem.span,
            .message =
                fmt::format("{} has more parts than words before it: all of it is said for {}",
                            shape(problem.what), word),
            .fixes = {remove_fix(problem.span, slice(view.source, problem.span))}};
}

FindingDraft unreadable(const ThoughtView& view, const Problem& problem) {
    FindingDraft draft{.span = problem.span,
                       .message = fmt::format("{} cannot be read as a sound, so the word is timed "
                                              "without it",
                                              shape(problem.what)),
                       .fixes = {}};
    const Mark* mark = mark_at(view, problem.span);
    if (mark != nullptr && mark->last >= 0) {
        const std::string_view word = view.word(mark->last);
        const std::string sound = to_respelling(pronounce(unicode::fold(word)).phones);
        if (!sound.empty()) {
            draft.fixes.push_back({.title = fmt::format("Write {}", sound),
                                   .edits = {{problem.span, fmt::format("{{{}}}", sound)}}});
        }
    }
    Fix remove = remove_fix(problem.span, slice(view.source, problem.span));
    draft.fixes.push_back(std::move(remove));
    // What the writer meant is not known: no bulk fix decides it.
    for (Fix& fix : draft.fixes)
        fix.keeps_every_word = false;
    return draft;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        switch (problem.kind) {
        case ProblemKind::braces_apart:
            if (!names_a_field(problem)) found.push_back(apart(view, problem));
            break;
        case ProblemKind::braces_parts: found.push_back(wrong_parts(view, problem)); break;
        case ProblemKind::unreadable_pronouncer: found.push_back(unreadable(view, problem)); break;
        default: break;
        }
    }
    return found;
}

} // namespace

extern const Rule pronouncer_unclear = {
    .id = "pronouncer-unclear",
    .severity = Severity::warning,
    .summary = "A pronouncer that reaches no word or cannot be read",
    .manual =
        "A pronouncer touches the word it is for, `Patella{puh-TEH-luh}`, and covers as many words "
        "before it as it has parts. "
        "With a blank before it, it is text and will be spoken; with too many parts, all of it is "
        "said for the last word. "
        "It is a respelling with the stressed syllable in capitals, or IPA between slashes; what "
        "is "
        "neither cannot be timed. "
        "The fixes join it to its word, write the sound the dictionary knows, or take it away.",
    .check = check,
};

} // namespace say::rules
