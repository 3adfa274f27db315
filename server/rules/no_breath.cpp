// A stretch between two pauses that outlasts one breath. The speaker will take the breath anyway,
// in the wrong place; the fix proposes a place that the sentence already offers.
#include "rules/breath.h"
#include "rules/clause.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

std::optional<Fix> pause_fix(const ThoughtView& view, const std::vector<int>& places,
                             std::string_view mark, std::string_view title) {
    Fix fix{.title = std::string(title), .edits = {}};
    for (int place : places) {
        auto edit = pause_before(view, place, mark);
        if (!edit) return std::nullopt;
        fix.edits.push_back(std::move(*edit));
    }
    if (places.size() > 1) fix.title += fmt::format(" at {} places", places.size());
    return fix;
}

// A new thought is offered only where two ideas are joined, and where it leaves two breaths that
// last.
std::optional<Fix> thought_fix(const ThoughtView& view, const BreathGroup& group) {
    const Sentence* sentence = sentence_of(view, group.first);
    if (sentence == nullptr) return std::nullopt;
    std::optional<Fix> best;
    Seconds best_longest = view.options.breath_limit;
    for (int i = group.first + 1; i < group.last; ++i) {
        if (!joins_ideas(view, sentence->first, i, sentence->last)) continue;
        const Seconds longest =
            std::max(length_of(view, group.first, i - 1), length_of(view, i, group.last));
        if (longest > best_longest) continue;
        auto edits = sentence_before(view, i);
        if (edits.empty()) continue;
        best = Fix{.title = fmt::format("Begin a new thought at {}", quoted(view.word(i))),
                   .edits = std::move(edits)};
        best_longest = longest;
    }
    return best;
}

// Every stretch that is too long, so that one fix mends the thought.
std::vector<Fix> fixes_for(const ThoughtView& view, const BreathGroup& longest) {
    std::vector<int> places;
    int stretches = 0;
    for (const BreathGroup& group : view.reading.breaths) {
        if (!outlasts_breath(view, group.seconds)) continue;
        ++stretches;
        const std::vector<int> more = breath_places(view, group);
        places.insert(places.end(), more.begin(), more.end());
    }
    std::vector<Fix> fixes;
    if (places.empty()) return fixes;
    if (auto fix = pause_fix(view, places, "/", "Breathe here")) {
        fix->preferred = true;
        fixes.push_back(std::move(*fix));
    }
    if (auto fix = pause_fix(view, places, "...", "Pause here")) fixes.push_back(std::move(*fix));
    if (stretches == 1) {
        if (auto fix = thought_fix(view, longest)) fixes.push_back(std::move(*fix));
    }
    return fixes;
}

// The word on which the breath gives out.
int last_breath(const ThoughtView& view, const BreathGroup& group) {
    int word = group.first;
    while (word < group.last && length_of(view, group.first, word) < view.options.breath_limit)
        ++word;
    return word;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    const auto& groups = view.reading.breaths;
    const auto longest =
        std::max_element(groups.begin(), groups.end(),
                         [](const auto& a, const auto& b) { return a.seconds < b.seconds; });
    if (longest == groups.end() || !outlasts_breath(view, longest->seconds)) return {};

    const int word = last_breath(view, *longest);
    return {{.span = longest->span,
             .message = fmt::format("{} on one breath; it gives out near {}, the limit is {}",
                                    format_seconds(longest->seconds), quoted(view.word(word)),
                                    format_seconds(view.options.breath_limit)),
             .fixes = fixes_for(view, *longest)}};
}

} // namespace

extern const Rule no_breath = {
    .id = "no-breath",
    .severity = Severity::warning,
    .family = Family::length,
    .summary = "More words between two pauses than one breath carries",
    .manual =
        "Breath runs out before the stretch does, so the voice drops on its last words or takes "
        "the breath in the wrong place. "
        "A stretch ends at a pause of 0.3 seconds or more: a mark, a dash, a sentence end; a comma "
        "alone is shorter. "
        "The limit is the option `breath_limit`, about twice the mean breath group of reading "
        "aloud; the time is that of your own pace. "
        "The fixes put a breath `/` or a pause `...` at the best place, or begin a new thought "
        "where a clause begins.",
    .check = check,
};

} // namespace say::rules
