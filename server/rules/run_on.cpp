// More than one idea in a thought: several sentences in a paragraph, or a long sentence that joins
// two. The gap after a thought is what lets it land; sentences in one paragraph have none.
#include "rules/breath.h"
#include "rules/clause.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <cmath>

namespace say::rules {
namespace {

// "Yes." and "Ready?" lean on a neighbour: one word is no idea of its own.
bool stands_alone(const Sentence& sentence) {
    return sentence.last - sentence.first > 1;
}

// Every sentence but the first opens a thought; one-word sentences stay with what follows.
std::optional<Fix> split_sentences(const ThoughtView& view) {
    Fix fix{.title = {}, .edits = {}, .preferred = true};
    const auto& sentences = view.reading.sentences;
    bool begun = false;
    for (std::size_t i = 0; i < sentences.size(); ++i) {
        const bool alone = stands_alone(sentences[i]);
        // The last one-word sentence stays with what stands before it.
        const bool trails = !alone && i + 1 == sentences.size();
        if (begun && !trails) {
            auto edit = thought_before(view, sentences[i].first);
            if (!edit) return std::nullopt;
            fix.edits.push_back(std::move(*edit));
            begun = false;
        }
        begun = begun || alone;
    }
    if (fix.edits.empty()) return std::nullopt;
    fix.title = fmt::format("Split into {} thoughts", fix.edits.size() + 1);
    return fix;
}

// A beat, a reset or a timed pause between two sentences is the gap that the second one needs.
bool lands_before(const ThoughtView& view, const Sentence& sentence) {
    constexpr Seconds gap{0.7}; // that after a thought
    Seconds held{0};
    for (const PauseAt& pause : pauses_behind(view.reading, sentence.first - 1)) {
        if (is_marked(pause)) held += pause.seconds;
    }
    return held >= gap - Seconds{1e-9};
}

// Sentences that follow on without a gap: [first, last) of the reading's.
struct Run {
    std::size_t first = 0;
    std::size_t last = 0;
    int count = 0; // those that stand alone
};

Run longest_run(const ThoughtView& view) {
    const auto& sentences = view.reading.sentences;
    Run longest;
    Run run;
    for (std::size_t i = 0; i < sentences.size(); ++i) {
        if (i > 0 && lands_before(view, sentences[i])) run = {i, i, 0};
        run.last = i + 1;
        run.count += stands_alone(sentences[i]) ? 1 : 0;
        if (run.count > longest.count) longest = run;
    }
    return longest;
}

std::vector<FindingDraft> find_sentences(const ThoughtView& view) {
    const Run run = longest_run(view);
    const bool marking = view.stage != Stage::draft;
    const int limit =
        marking ? view.options.marked_sentences_a_thought : view.options.sentences_a_thought;
    if (run.count < limit || run.count < 2) return {};

    const Sentence& first = view.reading.sentences[run.first];
    const Sentence& last = view.reading.sentences[run.last - 1];
    const Seconds together = length_of(view, first.first, last.last - 1);
    // "We don't count fish. We count limpets." is one idea in two halves, and "We came. We counted.
    // We went home." a figure of speech.
    constexpr int in_one_go = 3;
    if (run.count <= in_one_go && together <= view.options.breath_limit) return {};
    FindingDraft draft{
        .span = {first.source.begin, last.source.end},
        .message = fmt::format("{} sentences follow on for {} with no gap to let each one land",
                               run.count, format_seconds(together)),
        .fixes = {}};
    if (auto fix = split_sentences(view)) draft.fixes.push_back(std::move(*fix));
    // Two that nothing can part, as in brackets or in a quote and who said it, belong together.
    if (run.count == 2 && draft.fixes.empty()) return {};
    return {std::move(draft)};
}

// The join nearest to the middle, 0 if the sentence holds none.
int find_join(const ThoughtView& view, const Sentence& sentence) {
    constexpr int shortest_side = 6; // a side of fewer words is a tail, not an idea
    const double middle = (sentence.first + sentence.last) / 2.0;
    int best = 0;
    for (int i = sentence.first + shortest_side; i + shortest_side < sentence.last; ++i) {
        if (!joins_ideas(view, sentence.first, i, sentence.last)) continue;
        if (best == 0 || std::abs(i - middle) < std::abs(best - middle)) best = i;
    }
    return best;
}

std::vector<FindingDraft> find_joins(const ThoughtView& view) {
    for (const Sentence& sentence : view.reading.sentences) {
        const int words = sentence.last - sentence.first;
        if (words <= view.options.joined_sentence_words) continue;
        const int join = find_join(view, sentence);
        if (join == 0) continue;
        FindingDraft draft{.span = sentence.source,
                           .message = fmt::format("{} words join two ideas at {}: the second "
                                                  "comes before the first has landed",
                                                  words, quoted(view.word(join))),
                           .fixes = {}};
        if (auto edits = sentence_before(view, join); !edits.empty()) {
            draft.fixes.push_back(
                {.title = fmt::format("Begin a new thought at {}", quoted(view.word(join))),
                 .edits = std::move(edits),
                 .preferred = true});
        }
        return {std::move(draft)};
    }
    return {};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    auto found = find_sentences(view);
    return found.empty() ? find_joins(view) : found;
}

} // namespace

extern const Rule run_on = {
    .id = "run-on",
    .severity = Severity::warning,
    .family = Family::length,
    .summary = "A thought that runs on: several sentences, or two ideas in one long sentence",
    .manual =
        "A thought is what a listener takes in at one go, and the gap after it is where it lands. "
        "Sentences that share a paragraph get no such gap. "
        "While drafting, three sentences are too many (`sentences_a_thought`); from stage `mark` "
        "on, two are (`marked_sentences_a_thought`), as common practice is one sentence a thought. "
        "Two or three that take no longer than one breath (`breath_limit`) are left together: the "
        "second often answers the first (\"We don't count fish. We count limpets.\"), and three "
        "short ones are a figure of speech (\"We came. We counted. We went home.\"). "
        "A sentence of one word (\"Ready?\") counts with its neighbour, and a beat, a reset or a "
        "timed "
        "pause of 0.7 seconds or more between two sentences is the gap that the second one needs. "
        "A sentence of more than `joined_sentence_words` words that joins two clauses by \"and\", "
        "\"but\" or \"so\" is two ideas as well. "
        "The fix gives each sentence a paragraph of its own, or an item in a list, or ends the "
        "sentence at the join; no word is lost.",
    .check = check,
};

} // namespace say::rules
