// A stretch between two pauses that outlasts one breath. The speaker will take the breath anyway,
// in the wrong place; the fix proposes a place that the sentence already offers.
#include "rules/clause.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

// What is shown as 6.0 s is not over a limit of 6.0 s.
bool is_over(const ThoughtView& view, Seconds length) {
    return length > view.options.breath_limit + Seconds{0.05};
}

Seconds length_of(const ThoughtView& view, int first, int last) {
    const Said& from = view.reading.said[static_cast<std::size_t>(first)];
    const Said& to = view.reading.said[static_cast<std::size_t>(last)];
    return to.at + to.seconds - from.at;
}

// Words before which a breath brings every part of [first, last] under the limit. False where the
// words offer no place.
bool find_places(const ThoughtView& view, int first, int last, std::vector<int>& places) {
    if (!is_over(view, length_of(view, first, last))) return true;
    const int place = view.breath_spot(first, last);
    if (place == 0) return false;
    places.push_back(place);
    return find_places(view, first, place - 1, places) && find_places(view, place, last, places);
}

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
    bool possible = true;
    int stretches = 0;
    for (const BreathGroup& group : view.reading.breaths) {
        if (!is_over(view, group.seconds)) continue;
        ++stretches;
        possible = possible && find_places(view, group.first, group.last, places);
    }
    std::vector<Fix> fixes;
    if (!possible) return fixes;
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
    if (longest == groups.end() || !is_over(view, longest->seconds)) return {};

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
