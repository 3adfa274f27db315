// A stress over more words than anyone can lean on: with weight on every word none has any.
#include "rules/clause.h"
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

// The last content word, where the weight of a phrase falls by default.
int last_content_word(const ThoughtView& view, const Mark& mark) {
    for (int i = mark.last; i > mark.first; --i) {
        if (is_content(view, i)) return i;
    }
    return mark.last;
}

std::optional<Fix> lean_on(const ThoughtView& view, const Mark& mark) {
    const int index = last_content_word(view, mark);
    const Span word = view.written.words[static_cast<std::size_t>(index)].source;
    // Other marks on that word have their own place beside it; they are not moved.
    for (const Mark& other : view.written.marks) {
        const bool inside = mark.span.covers(other.span) && other.span != mark.span;
        if (inside && other.first <= index && index <= other.last) return std::nullopt;
    }
    const std::string open(slice(view.source, mark.open));
    const std::string close(slice(view.source, mark.close));
    Fix fix{.title = fmt::format("Stress {} alone", quoted(view.word(index))),
            .edits = {{mark.open, ""}, {{word.begin, word.begin}, open}},
            .preferred = true};
    // The closer may already stand right behind the word.
    if (word.end != mark.close.begin) {
        fix.edits.push_back({{word.end, word.end}, close});
        fix.edits.push_back({mark.close, ""});
    }
    return fix;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        if (mark.kind != MarkKind::stress && mark.kind != MarkKind::heavy_stress) continue;
        const int words = mark.last - mark.first + 1;
        if (words <= view.options.stress_words || mark.first < 0) continue;
        const int index = last_content_word(view, mark);
        FindingDraft draft{.span = mark.span,
                           .message = fmt::format("a stress on {} is heard only on {}",
                                                  counted(words, "word"), quoted(view.word(index))),
                           .fixes = {}};
        if (auto fix = lean_on(view, mark)) draft.fixes.push_back(std::move(*fix));
        draft.fixes.push_back(unpair_fix(mark, "Remove the stress"));
        found.push_back(std::move(draft));
    }
    return found;
}

} // namespace

extern const Rule stress_long = {
    .id = "stress-long",
    .severity = Severity::warning,
    .summary = "A stress over more words than anyone can lean on",
    .manual =
        "A stress stands out against words that have none; with weight on every word, none has "
        "any. "
        "Over more words than the option `stress_words` the weight falls on the last content word, "
        "and that is what the time assumes. "
        "The fix puts the mark there, or takes it away.",
    .check = check,
};

} // namespace say::rules
