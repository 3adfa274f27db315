// textDocument/codeAction: the fixes of findings in a range, then what may be done at the cursor or
// with the selection, then what may be done to the whole script.
#include "features/features.h"
#include "rules/split.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say {
namespace {

Fix moved(Fix fix, std::uint32_t by) {
    for (TextEdit& edit : fix.edits)
        edit.span = edit.span + by;
    return fix;
}

// Every sentence but the first begins a thought of its own.
std::vector<TextEdit> split_sentences(const Placed& placed, const Options& options) {
    std::vector<TextEdit> edits;
    const Thought& thought = *placed.thought;
    const ThoughtView view = view_of(thought, options);
    for (std::size_t i = 1; i < thought.reading.sentences.size(); ++i) {
        const int first = thought.reading.sentences[i].first;
        if (first >= thought.reading.sentences[i].last) continue;
        if (auto edit = rules::thought_before(view, first)) {
            edit->span = edit->span + placed.block.span.begin.value;
            edits.push_back(std::move(*edit));
        }
    }
    return edits;
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

void at_cursor(const Analysis& analysis, const Placed& placed, Offset at,
               std::vector<FixAction>& actions) {
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
        if (!has_pause(thought, word)) {
            offer(fmt::format("Breathe before “{}”", name), rules::pause_before(view, word, "/"));
        }
    }
    if (thought.reading.sentences.size() < 2) return;
    std::vector<TextEdit> edits = split_sentences(placed, analysis.options);
    if (edits.empty()) return;
    actions.push_back({{.title = "Give each sentence its own thought", .edits = std::move(edits)},
                       nullptr,
                       FixAction::Kind::rewrite});
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

// A pair may go around words only where it nests with the pairs that are there.
bool nests(const Written& written, Span span, MarkKind kind) {
    return std::none_of(written.marks.begin(), written.marks.end(), [&](const Mark& mark) {
        if (mark.open.empty() || !mark.span.overlaps(span)) return false;
        const Span inner{mark.open.end, mark.close.begin};
        const bool within = inner.covers(span);
        if (mark.kind == kind) return true;
        return !within && !span.covers(mark.span);
    });
}

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
        if (!nests(written, words, row.kind)) continue;
        Fix fix{.title = std::string(row.title), .edits = {}};
        fix.edits.push_back({{words.begin, words.begin}, std::string(row.open)});
        fix.edits.push_back({{words.end, words.end}, std::string(row.close)});
        actions.push_back({moved(std::move(fix), by), nullptr, FixAction::Kind::rewrite});
    }
}

bool leaves(const Fix& fix) {
    return fix.title.starts_with("Leave this");
}

bool overlaps(const std::vector<TextEdit>& taken, const std::vector<TextEdit>& edits) {
    return std::any_of(edits.begin(), edits.end(), [&](const TextEdit& edit) {
        return std::any_of(taken.begin(), taken.end(), [&](const TextEdit& other) {
            return edit.span.begin <= other.span.end && other.span.begin <= edit.span.end;
        });
    });
}

} // namespace

std::vector<FixAction> fixes(const Analysis& analysis, Span range) {
    std::vector<FixAction> actions;
    for (const Finding& finding : analysis.findings) {
        if (finding.span.begin > range.end) break;
        if (finding.span.end < range.begin) continue;
        for (const Fix& fix : finding.fixes)
            actions.push_back({fix, &finding, FixAction::Kind::quickfix});
    }
    const Placed* placed = analysis.script.thought_at(range.begin);
    if (placed != nullptr && placed->thought->has_words()) {
        if (range.empty()) {
            at_cursor(analysis, *placed, range.begin, actions);
        } else {
            on_selection(*placed, range, actions);
        }
    }
    if (std::vector<TextEdit> edits = split_all(analysis); !edits.empty()) {
        actions.push_back({{.title = "Give each sentence its own thought, in the whole script",
                            .edits = std::move(edits)},
                           nullptr,
                           FixAction::Kind::rewrite});
    }
    if (std::vector<TextEdit> edits = fix_all(analysis); !edits.empty()) {
        actions.push_back({{.title = "Mend all that keeps every word", .edits = std::move(edits)},
                           nullptr,
                           FixAction::Kind::fix_all});
    }
    if (uses_crlf(analysis.document.text->bytes())) {
        for (FixAction& action : actions)
            write_crlf(action.fix.edits);
    }
    return actions;
}

std::vector<TextEdit> fix_all(const Analysis& analysis) {
    std::vector<TextEdit> taken;
    for (const Finding& finding : analysis.findings) {
        for (const Fix& fix : finding.fixes) {
            if (!fix.keeps_every_word || !fix.preferred || leaves(fix)) continue;
            if (overlaps(taken, fix.edits)) continue;
            taken.insert(taken.end(), fix.edits.begin(), fix.edits.end());
            break;
        }
    }
    return taken;
}

std::vector<TextEdit> split_all(const Analysis& analysis) {
    std::vector<TextEdit> edits;
    for (const Placed& placed : analysis.script.thoughts) {
        if (placed.thought->reading.sentences.size() < 2) continue;
        std::vector<TextEdit> more = split_sentences(placed, analysis.options);
        edits.insert(edits.end(), more.begin(), more.end());
    }
    return edits;
}

} // namespace say
