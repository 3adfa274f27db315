// A stress on a small word that readers never lean on: often the mark has slipped by a word.
#include "base/lists.h"
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/suggest.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// Words that are said in passing. "Not", "is", "I", "this" and their like are left out: people
// lean on those on purpose ("it *is* the same shore").
constexpr std::array<std::string_view, 12> passing = {"a",  "an", "and",  "as",  "at", "for",
                                                      "in", "of", "than", "the", "to", "with"};

constexpr float never = 0.04F; // the chance that a reader leans on it

bool is_passing(const ThoughtView& view, int index) {
    const Said& said = view.reading.said[static_cast<std::size_t>(index)];
    if (said.spoken.size() != 1 || said.phrasing.chances.stressed >= never) return false;
    return is_one_of(said.spoken.front().text, passing);
}

// "*to* the shore and *from* it": another stress in the sentence sets it against something.
bool is_set_against(const ThoughtView& view, const Mark& mark) {
    return std::any_of(view.written.marks.begin(), view.written.marks.end(),
                       [&](const Mark& other) {
                           return &other != &mark && other.kind == mark.kind &&
                                  other.first == other.last && view.word(other.first).size() <= 5;
                       });
}

// The content word that follows within the phrase.
std::optional<Fix> lean_on_next(const ThoughtView& view, const Mark& mark) {
    const int count = static_cast<int>(view.reading.said.size());
    for (int i = mark.last + 1; i < count && i <= mark.last + 3; ++i) {
        if (view.reading.said[static_cast<std::size_t>(i - 1)].after != Juncture::none) break;
        if (stress_worth(view, i) < 0) continue;
        const Span word = view.written.words[static_cast<std::size_t>(i)].source;
        Fix fix = unpair_fix(mark, fmt::format("Lean on {} instead", quoted(view.word(i))));
        fix.edits.push_back({{word.begin, word.begin}, std::string(slice(view.source, mark.open))});
        fix.edits.push_back({{word.end, word.end}, std::string(slice(view.source, mark.close))});
        return fix;
    }
    return std::nullopt;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        if (mark.kind != MarkKind::stress && mark.kind != MarkKind::heavy_stress) continue;
        if (mark.first != mark.last || mark.first < 0 || !is_passing(view, mark.first)) continue;
        if (is_set_against(view, mark)) continue;
        FindingDraft draft{.span = mark.span,
                           .message = fmt::format("readers hardly ever lean on {} here",
                                                  quoted(view.word(mark.first))),
                           .fixes = {}};
        if (auto fix = lean_on_next(view, mark)) draft.fixes.push_back(std::move(*fix));
        draft.fixes.push_back(unpair_fix(mark, "Remove the stress"));
        found.push_back(std::move(draft));
    }
    return found;
}

} // namespace

extern const Rule stress_unlikely = {
    .id = "stress-unlikely",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "A stress on a small word that readers never lean on",
    .manual =
        "Small words such as \"the\", \"of\" and \"to\" are said in passing; a stress there is "
        "often "
        "a mark that slipped by a word. "
        "Said of a word where fewer than 4 readers in 100 would lean on it (docs/phrasing.md), and "
        "not where another small word of the thought is stressed too, for then the two are set "
        "against each other. "
        "The fixes move the stress to the next word that carries one, or take it away.",
    .check = check,
};

} // namespace say::rules
