// textDocument/codeAction: the fixes of findings in a range, then what may be done at the cursor or
// with the selection, then what may be done to the whole script.
#include "features/features.h"
#include "rules/split.h"
#include "rules/suggest.h"
#include "speech/settle.h"
#include "syntax/words.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace say {
namespace {

Fix moved(Fix fix, std::uint32_t by) {
    for (TextEdit& edit : fix.edits)
        edit.span = edit.span + by;
    return fix;
}

using EditGroup = std::vector<TextEdit>; // what one fix does: all of it or nothing

bool holds(const Analysis& analysis, const std::vector<TextEdit>& edits) {
    const Outcome outcome = outcome_of(analysis, edits);
    return outcome.keeps_words && outcome.torn <= 0;
}

// The thoughts in which edits lie, from the first to the last.
Span thoughts_around(const Analysis& analysis, const std::vector<TextEdit>& edits) {
    Span around = edits.front().span;
    for (const TextEdit& edit : edits) {
        around.begin = std::min(around.begin, edit.span.begin);
        around.end = std::max(around.end, edit.span.end);
    }
    if (const Placed* first = analysis.script.thought_at(around.begin))
        around.begin = first->block.span.begin;
    if (const Placed* last = analysis.script.thought_at(around.end))
        around.end = last->block.span.end;
    return around;
}

// Those groups that keep every word and tear no mark when all of them are done.
std::vector<TextEdit> all_that_hold(const Analysis& analysis,
                                    const std::vector<EditGroup>& groups) {
    std::vector<TextEdit> all;
    for (const EditGroup& group : groups)
        all.insert(all.end(), group.begin(), group.end());
    if (all.empty() || holds(analysis, all)) return all;
    std::vector<TextEdit> kept;
    for (const EditGroup& group : groups) {
        const Span around = thoughts_around(analysis, group);
        std::vector<TextEdit> near = group;
        std::copy_if(kept.begin(), kept.end(), std::back_inserter(near), [&](const TextEdit& edit) {
            return around.touches(edit.span.begin) || around.touches(edit.span.end);
        });
        if (holds(analysis, near)) kept.insert(kept.end(), group.begin(), group.end());
    }
    return kept;
}

// Every sentence but the first begins a thought of its own.
std::vector<TextEdit> split_sentences(const Analysis& analysis, const Placed& placed) {
    std::vector<EditGroup> groups;
    const Thought& thought = *placed.thought;
    const ThoughtView view = view_of(thought, analysis.options);
    for (std::size_t i = 1; i < thought.reading.sentences.size(); ++i) {
        const int first = thought.reading.sentences[i].first;
        if (first >= thought.reading.sentences[i].last) continue;
        if (auto edit = rules::thought_before(view, first)) {
            edit->span = edit->span + placed.block.span.begin.value;
            groups.push_back({std::move(*edit)});
        }
    }
    return all_that_hold(analysis, groups);
}

// The word that begins at or behind `inside`, 0 if there is none behind the first.
int word_behind(const Written& written, Offset inside) {
    const auto next =
        std::partition_point(written.words.begin(), written.words.end(),
                             [&](const Word& word) { return word.source.begin < inside; });
    if (next == written.words.end()) return 0;
    return static_cast<int>(next - written.words.begin());
}

bool has_pause(const Thought& thought, int word) {
    return std::any_of(
        thought.written.marks.begin(), thought.written.marks.end(),
        [&](const Mark& mark) { return is_pause(mark.kind) && mark.first == word - 1; });
}

using Suggestions = std::vector<rules::Suggestion>;

bool suggests_pause(const Suggestions& suggestions, int word) {
    return std::any_of(suggestions.begin(), suggestions.end(), [word](const auto& suggestion) {
        return suggestion.word == word && suggestion.kind != MarkKind::stress;
    });
}

void at_cursor(const Analysis& analysis, const Placed& placed, Offset at,
               const Suggestions& suggestions, std::vector<FixAction>& actions) {
    const Thought& thought = *placed.thought;
    const ThoughtView view = view_of(thought, analysis.options);
    const std::uint32_t by = placed.block.span.begin.value;
    const int word = word_behind(thought.written, Offset{at.value - by});
    const auto offer = [&](std::string title, std::optional<TextEdit> edit) {
        if (!edit) return;
        Fix fix{.title = std::move(title), .edits = {std::move(*edit)}};
        actions.push_back({moved(std::move(fix), by), nullptr, FixAction::Kind::rewrite});
    };
    if (word > 0) {
        const std::string_view name =
            slice(thought.written.plain.text,
                  thought.written.words[static_cast<std::size_t>(word)].plain);
        offer(fmt::format("Begin a new thought at “{}”", name), rules::thought_before(view, word));
        if (!has_pause(thought, word) && !suggests_pause(suggestions, word)) {
            offer(fmt::format("Breathe before “{}”", name), rules::pause_before(view, word, "/"));
        }
    }
    if (thought.reading.sentences.size() < 2) return;
    std::vector<TextEdit> edits = split_sentences(analysis, placed);
    if (edits.empty()) return;
    actions.push_back({{.title = "Give each sentence its own thought", .edits = std::move(edits)},
                       nullptr,
                       FixAction::Kind::rewrite});
}

const Sentence* sentence_at(const Thought& thought, Offset inside) {
    for (const Sentence& sentence : thought.reading.sentences) {
        if (sentence.source.touches(inside)) return &sentence;
    }
    return nullptr;
}

// What a reader would likely do in the sentence at the cursor, one by one, and in the whole
// thought.
void likely_at_cursor(const Analysis& analysis, const Placed& placed, Offset at,
                      const Suggestions& suggestions, std::vector<FixAction>& actions) {
    const Thought& thought = *placed.thought;
    const ThoughtView view = view_of(thought, analysis.options);
    const std::uint32_t by = placed.block.span.begin.value;
    if (const Sentence* sentence = sentence_at(thought, Offset{at.value - by})) {
        for (const rules::Suggestion& suggestion : suggestions) {
            if (suggestion.word < sentence->first || suggestion.word >= sentence->last) continue;
            Fix fix{.title = rules::title_of(view, suggestion),
                    .edits = rules::edits_of(view, suggestion)};
            if (fix.edits.empty()) continue;
            actions.push_back({moved(std::move(fix), by), nullptr, FixAction::Kind::rewrite});
        }
    }
    Fix all{.title = "Mark this thought lightly", .edits = rules::edits_of(view, suggestions)};
    if (suggestions.size() < 2 || all.edits.empty()) return;
    actions.push_back(
        {.fix = moved(std::move(all), by), .kind = FixAction::Kind::rewrite, .preview = true});
}

struct SelectionMark {
    MarkKind kind;
    std::string_view title;
    std::string_view open;
    std::string_view close;
};
constexpr std::array<SelectionMark, 6> selection_marks{{
    {MarkKind::stress, "Lean on this", "*", "*"},
    {MarkKind::heavy_stress, "Land on this", "**", "**"},
    {MarkKind::slow, "Slow this down", "<", ">"},
    {MarkKind::quick, "Speed this up", ">", "<"},
    {MarkKind::soft, "Play this down", "~", "~"},
    {MarkKind::aside, "Keep this in one run", "(", ")"},
}};

void on_selection(const Placed& placed, Span selection, std::vector<FixAction>& actions) {
    const Written& written = placed.thought->written;
    const std::uint32_t by = placed.block.span.begin.value;
    const Span inside{Offset{std::max(selection.begin, placed.block.span.begin).value - by},
                      Offset{std::min(selection.end, placed.block.span.end).value - by}};
    int first = -1;
    int last = -1;
    for (std::size_t i = 0; i < written.words.size(); ++i) {
        if (!written.words[i].source.overlaps(inside)) continue;
        if (first < 0) first = static_cast<int>(i);
        last = static_cast<int>(i);
    }
    if (first < 0) return;
    const Span words{written.words[static_cast<std::size_t>(first)].source.begin,
                     written.words[static_cast<std::size_t>(last)].source.end};
    for (const SelectionMark& row : selection_marks) {
        if (!rules::may_enclose(written, words, row.kind)) continue;
        Fix fix{.title = std::string(row.title), .edits = {}};
        fix.edits.push_back({{words.begin, words.begin}, std::string(row.open)});
        fix.edits.push_back({{words.end, words.end}, std::string(row.close)});
        actions.push_back({moved(std::move(fix), by), nullptr, FixAction::Kind::rewrite});
    }
}

// --- the project's word list -------------------------------------------------------------------

bool is_listed(const Analysis& analysis, const Lesson& lesson) {
    const auto& list = analysis.options.voice.words;
    if (!list) return false;
    std::vector<std::string> words;
    for (const Span word : split_words(lesson.words))
        words.push_back(unicode::fold(slice(lesson.words, word)));
    const OwnWord* own = list->find(words);
    return own != nullptr && own->words.size() == words.size() &&
           own->readings.front().phones == lesson.phones;
}

// The words that a pronouncer is for, without an ending behind it: Anna{AN-uh}'s.
std::string words_before(const Written& written, int first, const Mark& mark) {
    std::string text;
    for (int i = first; i <= mark.last; ++i) {
        const Span word = written.words[static_cast<std::size_t>(i)].plain;
        std::uint32_t end = word.begin.value;
        while (end < word.end.value && written.plain.source[end] < mark.span.end.value)
            ++end;
        if (!text.empty()) text += ' ';
        text += slice(written.plain.text, {word.begin, Offset{end}});
    }
    return text;
}

std::optional<Lesson> lesson_of(const Written& written, const Mark& mark) {
    if (mark.first < 0 || mark.last < mark.first) return std::nullopt;
    Lesson lesson{.words = {}, .phones = read_pronouncer(mark.argument)};
    if (lesson.phones.empty()) return std::nullopt;
    const int covered = mark.last - mark.first + 1;
    int parts = static_cast<int>(lesson.phones.size());
    if (parts > covered) { // all of it is the last word's sound
        Phones whole;
        for (const Phones& part : lesson.phones)
            whole.insert(whole.end(), part.begin(), part.end());
        lesson.phones = {std::move(whole)};
        parts = 1;
    }
    lesson.words = words_before(written, mark.last + 1 - parts, mark);
    return lesson;
}

// On a word with a pronouncer, or on the pronouncer itself.
void keep_pronouncer(const Analysis& analysis, const Placed& placed, Offset at,
                     std::vector<FixAction>& actions) {
    const Written& written = placed.thought->written;
    const Offset inside{at.value - placed.block.span.begin.value};
    for (const Mark& mark : written.marks) {
        if (mark.kind != MarkKind::pronouncer || mark.first < 0) continue;
        const Span whole{written.words[static_cast<std::size_t>(mark.first)].source.begin,
                         mark.span.end};
        if (!whole.touches(inside)) continue;
        std::optional<Lesson> lesson = lesson_of(written, mark);
        if (!lesson || is_listed(analysis, *lesson)) return;
        std::string title =
            fmt::format("Keep this pronunciation of “{}” for the project", lesson->words);
        actions.push_back({.fix = {.title = std::move(title), .edits = {}},
                           .finding = nullptr,
                           .kind = FixAction::Kind::rewrite,
                           .lesson = std::move(lesson)});
        return;
    }
}

// A word that no dictionary knows: the guess is a start that the writer mends in the list.
void teach_guess(const Analysis& analysis, const Finding& finding,
                 std::vector<FixAction>& actions) {
    if (finding.rule == nullptr || finding.rule->id != "unknown-word") return;
    const Placed* placed = analysis.script.thought_at(finding.span.begin);
    if (placed == nullptr) return;
    const Thought& thought = *placed->thought;
    for (std::size_t i = 0; i < thought.reading.said.size(); ++i) {
        const Word& word = thought.written.words[i];
        if (word.source + placed->block.span.begin.value != finding.span) continue;
        Lesson lesson{.words = std::string(slice(thought.written.plain.text, word.plain)),
                      .phones = thought.reading.said[i].phones};
        std::string title = fmt::format("Teach the project “{}” as {}", lesson.words,
                                        to_respelling(lesson.phones.front()));
        actions.push_back({.fix = {.title = std::move(title), .edits = {}},
                           .finding = &finding,
                           .kind = FixAction::Kind::quickfix,
                           .lesson = std::move(lesson)});
        return;
    }
}

// Taken without a question.
bool is_sure(const Fix& fix) {
    return fix.keeps_every_word && fix.preferred && !leaves_as_is(fix);
}

// All that a fix has looked at: from what was found to its last edit. Two fixes that reach over
// each other were each made for a text in which the other is not done.
Span reach_of(const Finding& finding, const Fix& fix) {
    Span reach = finding.span;
    for (const TextEdit& edit : fix.edits) {
        reach.begin = std::min(reach.begin, edit.span.begin);
        reach.end = std::max(reach.end, edit.span.end);
    }
    return reach;
}

// One round: what reaches over a fix that is taken is left for the next one.
std::vector<TextEdit> mend_once(const Analysis& analysis) {
    std::vector<EditGroup> taken;
    std::vector<Span> reaches;
    for (const Finding& finding : analysis.findings) {
        if (!has_sure_fix(finding)) continue;
        for (const Fix& fix : fixes_of(analysis, finding)) {
            if (!is_sure(fix)) continue;
            const Span reach = reach_of(finding, fix);
            const bool free = std::none_of(reaches.begin(), reaches.end(), [&](Span other) {
                return reach.touches(other.begin) || other.touches(reach.begin);
            });
            if (!free) continue;
            reaches.push_back(reach);
            taken.push_back(fix.edits);
            break;
        }
    }
    return all_that_hold(analysis, taken);
}

// A fix may lay another finding bare, so it goes on until nothing is left: else a file that is
// mended at every save would change at each.
std::vector<TextEdit> mend_all(const Analysis& analysis) {
    constexpr int most_rounds = 40; // for two rules that would undo each other for ever
    const std::string_view text = analysis.document.text->bytes();
    std::vector<TextEdit> edits = mend_once(analysis);
    Parser parser;
    Memo memo;
    for (int round = 1; round < most_rounds && !edits.empty(); ++round) {
        Document document = analysis.document;
        document.text = std::make_shared<const Text>(apply(text, edits));
        const auto mended = analyse(document, analysis.given, parser, memo, Cancel{});
        std::vector<TextEdit> more = mend_once(*mended);
        if (more.empty()) break;
        edits = composed(text, std::move(edits), std::move(more));
    }
    return edits;
}

std::vector<TextEdit> split_all(const Analysis& analysis) {
    std::vector<TextEdit> edits;
    for (const Placed& placed : analysis.script.thoughts) {
        if (placed.thought->reading.sentences.size() < 2) continue;
        std::vector<TextEdit> more = split_sentences(analysis, placed);
        edits.insert(edits.end(), more.begin(), more.end());
    }
    return edits;
}

std::vector<TextEdit> mark_all(const Analysis& analysis) {
    std::vector<TextEdit> edits;
    for (const Placed& placed : analysis.script.thoughts) {
        const ThoughtView view = view_of(*placed.thought, analysis.options);
        for (TextEdit& edit : rules::light_marks(view)) {
            edit.span = edit.span + placed.block.span.begin.value;
            edits.push_back(std::move(edit));
        }
    }
    return edits;
}

struct SweepRow {
    Sweep sweep;
    std::string_view name;
    std::string_view title;
    FixAction::Kind kind;
    bool preview;
    std::vector<TextEdit> (*edits)(const Analysis& analysis);
    bool (*is_needed)(const Analysis& analysis); // stops at the first place
};

bool needs_split(const Analysis& analysis) {
    const auto& thoughts = analysis.script.thoughts;
    return std::any_of(thoughts.begin(), thoughts.end(), [&](const Placed& placed) {
        return placed.thought->reading.sentences.size() > 1 &&
               !split_sentences(analysis, placed).empty();
    });
}

bool needs_mending(const Analysis& analysis) {
    return std::any_of(analysis.findings.begin(), analysis.findings.end(),
                       [&](const Finding& finding) {
                           if (!has_sure_fix(finding)) return false;
                           const std::vector<Fix> fixes = fixes_of(analysis, finding);
                           return std::any_of(fixes.begin(), fixes.end(), is_sure);
                       });
}

bool may_be_marked(const Thought& thought, const Options& options) {
    using Likely = Thought::Likely;
    Likely likely = thought.likely_marks.load(std::memory_order_relaxed);
    if (likely == Likely::unasked) {
        likely = rules::suggest(view_of(thought, options)).empty() ? Likely::no : Likely::yes;
        thought.likely_marks.store(likely, std::memory_order_relaxed);
    }
    return likely == Likely::yes;
}

bool needs_marks(const Analysis& analysis) {
    const auto& thoughts = analysis.script.thoughts;
    return std::any_of(thoughts.begin(), thoughts.end(), [&](const Placed& placed) {
        return may_be_marked(*placed.thought, analysis.options);
    });
}

constexpr std::array<SweepRow, 3> sweeps{{
    {Sweep::split, "split", "Give each sentence its own thought, in the whole script",
     FixAction::Kind::rewrite, false, split_all, needs_split},
    {Sweep::mark, "mark", "Mark the script lightly", FixAction::Kind::rewrite, true, mark_all,
     needs_marks},
    {Sweep::mend, "mend", "Mend all that keeps every word", FixAction::Kind::fix_all, false,
     mend_all, needs_mending},
}};

const SweepRow& row_of(Sweep sweep) {
    const auto* row = std::find_if(sweeps.begin(), sweeps.end(), [&](const SweepRow& candidate) {
        return candidate.sweep == sweep;
    });
    return *row; // every sweep has a row
}

void add_sweeps(const Analysis& analysis, std::vector<FixAction>& actions) {
    for (const SweepRow& row : sweeps) {
        if (!row.is_needed(analysis)) continue;
        actions.push_back({.fix = {.title = std::string(row.title), .edits = {}},
                           .kind = row.kind,
                           .sweep = row.sweep,
                           .preview = row.preview});
    }
}

} // namespace

std::string_view name_of(Sweep sweep) {
    return row_of(sweep).name;
}

std::string_view title_of(Sweep sweep) {
    return row_of(sweep).title;
}

bool is_guess(Sweep sweep) {
    return row_of(sweep).preview;
}

std::optional<Sweep> find_sweep(std::string_view name) {
    for (const SweepRow& row : sweeps) {
        if (row.name == name) return row.sweep;
    }
    return std::nullopt;
}

std::vector<FixAction> fixes(const Analysis& analysis, Span range) {
    std::vector<FixAction> actions;
    for (const Finding& finding : analysis.findings) {
        if (finding.span.begin > range.end) break;
        if (finding.span.end < range.begin) continue;
        for (Fix& fix : fixes_of(analysis, finding)) {
            if (leaves_as_is(fix)) teach_guess(analysis, finding, actions);
            actions.push_back({std::move(fix), &finding, FixAction::Kind::quickfix});
        }
    }
    const Placed* placed = analysis.script.thought_at(range.begin);
    if (placed != nullptr && placed->thought->has_words()) {
        if (range.empty()) {
            const Suggestions suggestions =
                rules::suggest(view_of(*placed->thought, analysis.options));
            at_cursor(analysis, *placed, range.begin, suggestions, actions);
            likely_at_cursor(analysis, *placed, range.begin, suggestions, actions);
        } else {
            on_selection(*placed, range, actions);
        }
        keep_pronouncer(analysis, *placed, range.begin, actions);
    }
    add_sweeps(analysis, actions);
    if (uses_crlf(analysis.document.text->bytes())) {
        for (FixAction& action : actions)
            write_crlf(action.fix.edits);
    }
    return actions;
}

std::vector<TextEdit> edits_of(const Analysis& analysis, Sweep sweep) {
    std::vector<TextEdit> edits = row_of(sweep).edits(analysis);
    if (uses_crlf(analysis.document.text->bytes())) write_crlf(edits);
    return edits;
}

Span first_guess(const TextEdit& edit) {
    const std::string_view text = edit.replacement;
    if (!edit.span.empty() || text.size() < 3 || text.front() != '{' || text.back() != '}')
        return {};
    std::size_t begin = text[1] == '=' ? 2 : 1;
    while (begin + 1 < text.size() && text[begin] == ' ')
        ++begin;
    return make_span(begin, text.size() - 1);
}

} // namespace say
