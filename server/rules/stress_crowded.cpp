// So many stresses in one sentence that none stands out.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/suggest.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

// Three may be a list ("one ... two ... three"); with more than one in four words it is a habit.
constexpr int always_fine = 3;
constexpr int words_a_stress = 4;

std::vector<const Mark*> stresses_in(const ThoughtView& view, const Sentence& sentence) {
    std::vector<const Mark*> found;
    for (const Mark& mark : view.written.marks) {
        if (is_stress(mark.kind) && sentence.first <= mark.first && mark.last < sentence.last)
            found.push_back(&mark);
    }
    return found;
}

// The heaviest, and among its like the one whose word a reader would lean on by itself.
const Mark* to_keep(const ThoughtView& view, const std::vector<const Mark*>& stresses) {
    const auto worth = [&](const Mark* mark) {
        const float heard = view.reading.said[static_cast<std::size_t>(mark->last)].phrasing.stress;
        return static_cast<double>(heard) + (mark->kind == MarkKind::heavy_stress ? 10.0 : 0.0);
    };
    return *std::max_element(stresses.begin(), stresses.end(),
                             [&](const Mark* a, const Mark* b) { return worth(a) < worth(b); });
}

std::optional<Fix> keep_one(const ThoughtView& view, const std::vector<const Mark*>& stresses) {
    const Mark* kept = to_keep(view, stresses);
    Fix fix{.title = fmt::format("Keep the stress on {} alone", quoted(view.word(kept->last))),
            .edits = {}};
    for (const Mark* mark : stresses) {
        // A word in capitals is the writer's spelling: nobody can know how it is written else.
        if (mark == kept || mark->kind == MarkKind::punch) continue;
        for (TextEdit& edit : unpair_fix(*mark, "").edits)
            fix.edits.push_back(std::move(edit));
    }
    if (fix.edits.empty()) return std::nullopt;
    return fix;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    if (view.written.marks.size() <= always_fine) return found;
    for (const Sentence& sentence : view.reading.sentences) {
        const std::vector<const Mark*> stresses = stresses_in(view, sentence);
        const int count = static_cast<int>(stresses.size());
        const int words = sentence.last - sentence.first;
        if (count <= always_fine || count * words_a_stress <= words) continue;
        FindingDraft draft{.span = {stresses.front()->span.begin, stresses.back()->span.end},
                           .message =
                               fmt::format("{} stresses in {}: with so many, none stands out",
                                           count, counted(words, "word")),
                           .fixes = {}};
        if (auto fix = keep_one(view, stresses)) draft.fixes.push_back(std::move(*fix));
        found.push_back(std::move(draft));
    }
    return found;
}

} // namespace

extern const Rule stress_crowded = {
    .id = "stress-crowded",
    .severity = Severity::warning,
    .stage = Stage::mark,
    .summary = "So many stresses in a sentence that none stands out",
    .manual =
        "A stress is heard against words that have none. "
        "More than three in a sentence, and more than one in four words, sound like a reader who "
        "leans on everything (common practice, no source). "
        "The fix keeps the heaviest, or else the one on the word that a reader would lean on "
        "unasked.",
    .check = check,
};

} // namespace say::rules
