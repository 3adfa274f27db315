// Words whose sounds trade places when they are said at speed. Only the words that trip are
// underlined; a pause between them or a slow mark over them settles it.
#include "rules/breath.h"
#include "rules/clause.h"
#include "rules/join.h"
#include "rules/plain_words.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace say::rules {
namespace {

// The words that clash, in order; [first, last].
struct Clash {
    int first = 0;
    int last = 0;
    std::vector<int> words;
};

std::optional<Clash> find_clash(const ThoughtView& view) {
    const Twister& twister = view.reading.twister;
    if (!(twister.score > view.options.twister_threshold)) return std::nullopt;
    Clash clash{.words = twister.words};
    std::sort(clash.words.begin(), clash.words.end());
    clash.words.erase(std::unique(clash.words.begin(), clash.words.end()), clash.words.end());
    if (clash.words.size() < 2) {
        clash.words.clear();
        for (int i = twister.first; i < twister.last; ++i)
            clash.words.push_back(i);
    }
    if (clash.words.size() < 2) return std::nullopt;
    clash.first = clash.words.front();
    clash.last = clash.words.back();
    if (clash.first < 0 || clash.last >= static_cast<int>(view.written.words.size())) {
        return std::nullopt;
    }
    return clash;
}

// The writer has seen it: a pause between the words, or a slow mark over all of them.
bool is_marked(const ThoughtView& view, const Clash& clash) {
    return std::any_of(view.written.marks.begin(), view.written.marks.end(), [&](const Mark& mark) {
        if (mark.kind == MarkKind::slow) {
            return mark.first <= clash.first && clash.last <= mark.last;
        }
        return is_pause(mark.kind) && clash.first <= mark.first && mark.first < clash.last;
    });
}

// Where a reader may pause best, near the middle of the words that clash; nowhere in "since 1998".
std::optional<Fix> pause_fix(const ThoughtView& view, const Clash& clash) {
    const double half = (clash.last - clash.first + 1) / 2.0;
    std::optional<Fix> best;
    double best_worth = 0;
    for (int i = clash.first + 1; i <= clash.last; ++i) {
        if (holds_together(view, i)) continue;
        const double off = std::abs(i - clash.first - half) / half;
        const double worth = breath_worth(view, i) - off;
        if (best && worth <= best_worth) continue;
        auto edit = pause_before(view, i, "/");
        if (!edit) continue;
        best = Fix{.title = fmt::format("Breathe before {}", quoted(view.word(i))),
                   .edits = {std::move(*edit)},
                   .preferred = true};
        best_worth = worth;
    }
    return best;
}

// Would the words still trip with another word in that place?
bool still_trips(const ThoughtView& view, const PlainMatch& match, std::string_view swap) {
    const auto& said = view.reading.said;
    const Pronunciation swapped = pronounce(swap);
    std::vector<TwisterWord> words;
    for (int i = 0; i < static_cast<int>(said.size()); ++i) {
        if (i == match.first) words.push_back({swap, swapped.phones});
        if (i >= match.first && i < match.last) continue;
        const Said& word = said[static_cast<std::size_t>(i)];
        for (std::size_t j = 0; j < word.spoken.size() && j < word.phones.size(); ++j)
            words.push_back({word.spoken[j].text, word.phones[j]});
    }
    return find_twister(words).score > view.options.twister_threshold;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    const auto clash = find_clash(view);
    if (!clash || is_marked(view, *clash)) return {};

    const Span span = words_span(view, clash->first, clash->last);
    FindingDraft draft{.span = span, .message = view.reading.twister_message, .fixes = {}};
    if (draft.message.empty()) draft.message = "these sounds trade places when said at speed";
    if (auto fix = pause_fix(view, *clash)) draft.fixes.push_back(std::move(*fix));
    if (auto fix = slow_fix(view, clash->first, clash->last))
        draft.fixes.push_back(std::move(*fix));
    for (const int word : clash->words) {
        auto fix = swap_fix(view, word, [&](const PlainMatch& match, std::string_view swap) {
            return still_trips(view, match, swap);
        });
        if (fix) draft.fixes.push_back(std::move(*fix));
    }
    return {std::move(draft)};
}

} // namespace

extern const Rule tongue_twister = {
    .id = "tongue-twister",
    .severity = Severity::warning,
    .summary = "Words that are likely to trip the tongue",
    .manual =
        "Near sounds at the beginnings of near words trade places: \"she sells\" comes out as "
        "\"see shells\". "
        "A score over three to nine content words says how likely that is; its parts and its "
        "threshold, the option `twister`, are explained in docs/twisters.md. "
        "Just the words that trip are underlined, and the message names their sounds. "
        "The fixes are what a reader would do: a pause between the words, a slow mark over them, "
        "or a plainer word where the plain-words table has one that does not trip. "
        "Words that already hold a pause or stand inside a slow mark are not reported.",
    .why = "Sounds that are made in nearly the same place and begin words close together are "
           "chosen for each other, the more so the faster they are said.",
    .check = check,
};

} // namespace say::rules
