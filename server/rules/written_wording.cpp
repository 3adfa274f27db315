// Wording that is written and seldom said. The table is public domain; what people do say
// ("however", "identify") is left alone.
#include "rules/plain_words.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::string message_for(const PlainMatch& match, std::string_view written) {
    const std::string& best = match.swaps.front();
    if (best.empty()) return fmt::format("{} is written, not said, and adds nothing", written);
    if (match.heard == Stage::draft) {
        return fmt::format("{} is written, not said; people say {}", written, quoted(best));
    }
    return fmt::format("{} is stiff when it is heard; {} is plainer", written, quoted(best));
}

FindingDraft draft_for(const ThoughtView& view, const PlainMatch& match) {
    const auto& words = view.written.words;
    const Span span = written_span(view, match);
    const Span plain{words[static_cast<std::size_t>(match.first)].plain.begin,
                     words[static_cast<std::size_t>(match.last) - 1].plain.end};
    const std::string written = quoted(slice(view.written.plain.text, plain));
    FindingDraft draft{.span = span, .message = message_for(match, written), .fixes = {}};
    for (const std::string& swap : match.swaps) {
        std::vector<TextEdit> edits = swap_edits(view, match, swap);
        if (edits.empty()) continue;
        draft.fixes.push_back({.title = swap.empty() ? fmt::format("Leave out {}", written)
                                                     : fmt::format("Say {}", quoted(swap)),
                               .edits = std::move(edits),
                               .keeps_every_word = false,
                               .preferred = draft.fixes.empty()});
    }
    return draft;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    const int count = static_cast<int>(view.reading.said.size());
    for (int i = 0; i < count;) {
        const PlainMatch match = plain_match(view, i, view.stage);
        if (match.last == 0) {
            ++i;
            continue;
        }
        // What somebody said or wrote stays as it was.
        if (mark_over(view, i, MarkKind::quoted) == nullptr)
            found.push_back(draft_for(view, match));
        i = match.last;
    }
    return found;
}

} // namespace

extern const Rule written_wording = {
    .id = "written-wording",
    .severity = Severity::hint,
    .summary = "Wording that is written and seldom said",
    .manual =
        "Some words belong to forms and letters: a listener hears a document being read out. "
        "The words and what to say instead come from the plain language guidelines of the US "
        "federal government, which are in the public domain. "
        "A draft hears only of the stiffest (\"utilize\", \"prior to\"); from stage `mark` on also "
        "of milder ones (\"purchase\", \"require\"). "
        "Words of that list which people do say, and those with two senses, are left alone, as is "
        "what stands in quotation marks. "
        "The fix swaps the word and keeps its capital and its ending; since it changes what is "
        "said, a bulk fix never takes it.",
    .check = check,
};

} // namespace say::rules
