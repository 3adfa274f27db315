// "(pause)" in round brackets: an aside is spoken, so the reader says the word "pause".
#include "rules/cues.h"
#include "rules/rule.h"
#include "text/ascii.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

// What the marks have for it; a direction for all else.
std::string as_mark(std::string_view cue) {
    const std::string word = ascii::lower(cue);
    if (word.find("breath") != std::string::npos) return "/";
    const bool pause = word.ends_with("pause") || word.ends_with("beat");
    if (!pause) return fmt::format("[{}]", cue);
    if (word.starts_with("long") || word.starts_with("big")) return "(2.0)";
    return word.starts_with("short") || word.starts_with("brief") ? "(0.5)" : "(1.0)";
}

std::string title_of(const std::string& mark) {
    if (mark == "/") return "Breathe here";
    if (mark.front() == '(') return fmt::format("Hold a pause: {}", mark);
    return fmt::format("Make it a direction: {}", mark);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        if (mark.kind != MarkKind::aside) continue;
        const std::string_view inside = slice(view.source, {mark.open.end, mark.close.begin});
        const bool of_label = view.source.substr(mark.span.end.value).starts_with(':');
        if (of_label || !is_bare_cue(inside)) continue; // "MIRA (V.O.):"
        const std::string instead = as_mark(inside);
        found.push_back({.span = mark.span,
                         .message = fmt::format("words in round brackets are spoken: the reader "
                                                "would say “{}”",
                                                inside),
                         .fixes = {{.title = title_of(instead),
                                    .edits = {{mark.span, instead}},
                                    .keeps_every_word = false,
                                    .preferred = true}}});
    }
    return found;
}

} // namespace

extern const Rule cue_spoken = {
    .id = "cue-spoken",
    .severity = Severity::warning,
    .summary = "A cue in round brackets, which would be read out",
    .manual =
        "`(pause)` and `(smiles)` are how many scripts say what to do, but round brackets hold "
        "an aside here, and an aside is spoken. "
        "The fix writes the pause as a mark, or the cue as a direction: `(1.0)`, `[smiles]`.",
    .check = check,
};

} // namespace say::rules
