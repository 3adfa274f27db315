// Marks that ask for two opposite things on the same words: nobody can do both, so one of them is
// lost.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <array>

namespace say::rules {
namespace {

struct Clash {
    MarkKind outer;
    MarkKind inner;
};

// A stressed word inside a soft stretch is no contradiction, nor is a slow word inside a quick one:
// there the words around it make the difference heard.
constexpr std::array<Clash, 6> clashes = {{
    {MarkKind::quick, MarkKind::slow},
    {MarkKind::slow, MarkKind::quick},
    {MarkKind::stress, MarkKind::soft},
    {MarkKind::heavy_stress, MarkKind::soft},
    {MarkKind::soft, MarkKind::stress},
    {MarkKind::soft, MarkKind::heavy_stress},
}};

bool same_words(const Mark& one, const Mark& other) {
    return one.first == other.first && one.last == other.last;
}

bool contradicts(const Mark& outer, const Mark& inner) {
    if (outer.open.empty() || inner.open.empty() || !outer.span.covers(inner.span)) return false;
    for (const Clash& clash : clashes) {
        if (clash.outer != outer.kind || clash.inner != inner.kind) continue;
        const bool always = inner.kind == MarkKind::soft || inner.kind == MarkKind::quick;
        return always || same_words(outer, inner);
    }
    return false;
}

FindingDraft pairs(const ThoughtView& view, const Mark& outer, const Mark& inner) {
    const std::string_view one = row_of(outer.kind).name;
    const std::string_view other = row_of(inner.kind).name;
    const std::string word = quoted(view.word(inner.first));
    FindingDraft draft{
        .span = outer.span.size() > inner.span.size() ? inner.span : outer.span,
        .message =
            fmt::format("{} is marked {} and {} at once; only one can be heard", word, one, other),
        .fixes = {}};
    draft.fixes.push_back(unpair_fix(inner, fmt::format("Keep it {}", one)));
    draft.fixes.push_back(unpair_fix(outer, fmt::format("Keep it {}", other)));
    return draft;
}

// Arrows that point both ways at one word.
bool opposes(const Mark& one, const Mark& other) {
    const auto are = [&](MarkKind a, MarkKind b) {
        return (one.kind == a && other.kind == b) || (one.kind == b && other.kind == a);
    };
    return (are(MarkKind::step_up, MarkKind::step_down) ||
            are(MarkKind::end_up, MarkKind::end_down)) &&
           one.last == other.last;
}

FindingDraft arrows(const ThoughtView& view, const Mark& one, const Mark& other) {
    const std::string first(slice(view.source, one.span));
    const std::string second(slice(view.source, other.span));
    return {.span = {one.span.begin, std::max(one.span.end, other.span.end)},
            .message = fmt::format("{} goes up and down at once; only one can be heard",
                                   quoted(view.word(one.last))),
            .fixes = {{.title = fmt::format("Keep {}", shape(first)), .edits = {{other.span, ""}}},
                      {.title = fmt::format("Keep {}", shape(second)), .edits = {{one.span, ""}}}}};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    const auto& marks = view.written.marks;
    // Marks that may clash stand close together: those beyond the outer one's end are not looked
    // at.
    for (std::size_t i = 0; i < marks.size(); ++i) {
        for (std::size_t j = i + 1; j < marks.size(); ++j) {
            const bool near = marks[j].first <= marks[i].last + 1;
            if (!near && marks[j].span.begin >= marks[i].span.end) break;
            if (contradicts(marks[i], marks[j])) found.push_back(pairs(view, marks[i], marks[j]));
            if (opposes(marks[i], marks[j])) found.push_back(arrows(view, marks[i], marks[j]));
        }
    }
    return found;
}

} // namespace

extern const Rule mark_contradiction = {
    .id = "mark-contradiction",
    .severity = Severity::warning,
    .summary = "Two marks that ask for opposite things on the same words",
    .manual =
        "Nobody can be quick and slow, or soft and stressed, on the same words, nor step up and "
        "down on one: a quick stretch inside a slow one, or a soft one inside a stress, is lost. "
        "A stressed word inside a soft stretch is fine, and so is a slow word inside a quick one: "
        "the words around it make the difference heard. "
        "Each fix keeps one of the two marks.",
    .check = check,
};

} // namespace say::rules
