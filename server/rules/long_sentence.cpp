// A long sentence in which no pause is marked: the reader decides on the spot where to rest.
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

int words_of(const Sentence& sentence) {
    return sentence.last - sentence.first;
}

bool has_pause(const ThoughtView& view, const Sentence& sentence) {
    return std::any_of(view.written.marks.begin(), view.written.marks.end(), [&](const Mark& mark) {
        return is_pause(mark.kind) && mark.first >= sentence.first &&
               mark.first + 1 < sentence.last;
    });
}

// One mark in every sentence that needs one, so that one fix mends the thought.
std::optional<Fix> pause_fix(const ThoughtView& view, const std::vector<const Sentence*>& sentences,
                             std::string_view mark, std::string_view title) {
    Fix fix{.title = std::string(title), .edits = {}};
    for (const Sentence* sentence : sentences) {
        const int spot = view.breath_spot(sentence->first, sentence->last - 1);
        auto edit = spot == 0 ? std::nullopt : pause_before(view, spot, mark);
        if (!edit) return std::nullopt;
        fix.edits.push_back(std::move(*edit));
    }
    if (sentences.size() > 1) fix.title += fmt::format(" in {} sentences", sentences.size());
    return fix;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    const bool marking = view.stage != Stage::draft;
    const int limit =
        marking ? view.options.marked_sentence_words : view.options.long_sentence_words;
    std::vector<const Sentence*> sentences;
    for (const Sentence& sentence : view.reading.sentences) {
        if (words_of(sentence) > limit && !has_pause(view, sentence)) {
            sentences.push_back(&sentence);
        }
    }
    if (sentences.empty()) return {};

    const Sentence& longest = **std::max_element(
        sentences.begin(), sentences.end(),
        [](const Sentence* a, const Sentence* b) { return words_of(*a) < words_of(*b); });
    FindingDraft draft{.span = longest.source,
                       .message = fmt::format("{} words in one sentence with no pause marked; past "
                                              "{} a listener starts to lose it",
                                              words_of(longest), limit),
                       .fixes = {}};
    if (auto fix = pause_fix(view, sentences, "/", "Breathe here")) {
        fix->preferred = true;
        draft.fixes.push_back(std::move(*fix));
    }
    if (auto fix = pause_fix(view, sentences, "...", "Pause here")) {
        draft.fixes.push_back(std::move(*fix));
    }
    return {std::move(draft)};
}

} // namespace

extern const Rule long_sentence = {
    .id = "long-sentence",
    .severity = Severity::warning,
    .family = Family::length,
    .summary = "A long sentence with no pause marked",
    .manual =
        "A reader can look back; a listener cannot. "
        "GOV.UK asks for sentences of at most 25 words (`long_sentence_words`); from stage `mark` "
        "on the limit is 15 (`marked_sentence_words`), the lower end of the average that the US "
        "federal plain language guidelines advise. "
        "Any pause mark inside the sentence is enough: the reader then knows where to rest. "
        "Where the same thought already runs on or leaves no place to breathe, only that is "
        "reported.",
    .check = check,
};

} // namespace say::rules
