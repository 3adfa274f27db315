// A long sentence in which no pause is marked: the reader decides on the spot where to rest.
#include "rules/breath.h"
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

// Words [first, last) between two places where every reader rests.
struct Stretch {
    int first = 0;
    int last = 0;
};

// A semicolon, a colon or a dash is a rest already (`breath_group_pause`), so it parts the sentence
// as a mark does; a comma is not.
std::vector<Stretch> long_stretches(const ThoughtView& view, const Sentence& sentence, int limit) {
    std::vector<Stretch> found;
    Stretch stretch{sentence.first, sentence.first};
    for (int i = sentence.first; i < sentence.last; ++i) {
        stretch.last = i + 1;
        const bool ends = i + 1 == sentence.last || rests_before(view.reading, i + 1);
        if (!ends) continue;
        if (stretch.last - stretch.first > limit) found.push_back(stretch);
        stretch.first = i + 1;
    }
    return found;
}

// One mark in every stretch that needs one, so that one fix mends the thought.
std::optional<Fix> pause_fix(const ThoughtView& view, const std::vector<Stretch>& stretches,
                             int sentences, std::string_view mark, std::string_view title) {
    Fix fix{.title = std::string(title), .edits = {}};
    for (const Stretch& stretch : stretches) {
        const int spot = view.breath_spot(stretch.first, stretch.last - 1);
        auto edit = spot == 0 ? std::nullopt : pause_before(view, spot, mark);
        if (!edit) return std::nullopt;
        fix.edits.push_back(std::move(*edit));
    }
    if (sentences > 1) fix.title += fmt::format(" in {} sentences", sentences);
    return fix;
}

std::string message_for(const Sentence& sentence, const Stretch& longest, int limit) {
    const int words = longest.last - longest.first;
    const std::string_view where =
        words == words_of(sentence) ? "in one sentence" : "between two rests of a sentence";
    return fmt::format("{} words {} with no pause marked; past {} a listener starts to lose it",
                       words, where, limit);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    const bool marking = view.stage != Stage::draft;
    const int limit =
        marking ? view.options.marked_sentence_words : view.options.long_sentence_words;
    std::vector<Stretch> stretches;
    int sentences = 0;
    const Sentence* where = nullptr;
    Stretch longest;
    for (const Sentence& sentence : view.reading.sentences) {
        if (words_of(sentence) <= limit || has_pause(view, sentence)) continue;
        const std::vector<Stretch> more = long_stretches(view, sentence, limit);
        sentences += more.empty() ? 0 : 1;
        for (const Stretch& stretch : more) {
            stretches.push_back(stretch);
            if (stretch.last - stretch.first <= longest.last - longest.first) continue;
            longest = stretch;
            where = &sentence;
        }
    }
    if (where == nullptr) return {};

    FindingDraft draft{
        .span = where->source, .message = message_for(*where, longest, limit), .fixes = {}};
    if (auto fix = pause_fix(view, stretches, sentences, "/", "Breathe here")) {
        fix->preferred = true;
        draft.fixes.push_back(std::move(*fix));
    }
    if (auto fix = pause_fix(view, stretches, sentences, "...", "Pause here")) {
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
        "GOV.UK asks for sentences of at most 25 words (`long_sentence_words`; "
        "`marked_sentence_words` from stage `mark` on). "
        "Any pause mark inside the sentence is enough: the reader then knows where to rest. "
        "A semicolon, a colon or a dash is a rest as well: only the words between two of them "
        "are counted. "
        "Where the same thought already runs on or leaves no place to breathe, only that is "
        "reported.",
    .check = check,
};

} // namespace say::rules
