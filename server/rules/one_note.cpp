// A long stretch of a script that is being marked without a single mark: read as it stands it
// sounds on one note.
#include "rules/rule.h"
#include "rules/suggest.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

// What a reader does with the voice. Quotes, asides and pronouncers are writing, not delivery.
bool is_delivery(const Mark& mark) {
    switch (mark.kind) {
    case MarkKind::quoted:
    case MarkKind::aside:
    case MarkKind::pronouncer:
    case MarkKind::say_as: return false;
    default: return true;
    }
}

// What ends a stretch: something marked, or nothing said.
bool breaks_stretch(const ThoughtView& view) {
    const auto& marks = view.written.marks;
    return view.reading.said.empty() || std::any_of(marks.begin(), marks.end(), is_delivery);
}

struct Run {
    std::size_t first = 0;
    std::size_t end = 0;
    Seconds seconds{0};
};

// Unmarked thoughts in a row: those between the ones that break a stretch. A heading or a silence
// between two of them is a change in itself.
std::vector<Run> unmarked_runs(const ScriptView& script) {
    std::vector<Run> runs;
    Run run;
    auto breaks = script.concerned.begin();
    for (std::size_t i = 0; i < script.thoughts.size(); ++i) {
        const ThoughtSummary& thought = script.thoughts[i];
        const bool fits = breaks == script.concerned.end() || *breaks != i;
        if (!fits) ++breaks;
        const bool follows = run.end == i && run.end > run.first &&
                             script.thoughts[i - 1].section == thought.section;
        if (!follows || !fits) {
            if (run.end > run.first) runs.push_back(run);
            run = {i, i, Seconds{0}};
        }
        if (!fits) continue;
        run.end = i + 1;
        run.seconds += thought.expected;
    }
    if (run.end > run.first) runs.push_back(run);
    return runs;
}

// A script that nobody has begun to mark is asked for as a whole; more edits than this are not a
// quick fix but a draft of the marking, which is an action of its own.
constexpr std::size_t most_thoughts = 30;

std::optional<Fix> mark_lightly(const ScriptView& script, const Run& run) {
    if (run.end - run.first > most_thoughts) return std::nullopt;
    Fix fix{.title = "Mark it lightly, as a reader likely would", .edits = {}};
    for (std::size_t i = run.first; i < run.end; ++i) {
        const ThoughtSummary& thought = script.thoughts[i];
        for (TextEdit& edit : light_marks(view_of(script, thought))) {
            edit.span = edit.span + thought.begin.value;
            fix.edits.push_back(std::move(edit));
        }
    }
    if (fix.edits.empty()) return std::nullopt;
    return fix;
}

Span first_words(const ThoughtSummary& thought) {
    const auto& words = thought.written->words;
    const std::size_t last = std::min<std::size_t>(words.size(), 3) - 1;
    return Span{words.front().source.begin, words[last].source.end} + thought.begin.value;
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    for (const Run& run : unmarked_runs(script)) {
        if (run.seconds <= script.options.one_note) continue;
        found.push_back(
            {.span = first_words(script.thoughts[run.first]),
             .message = fmt::format("from here on {} with nothing marked; it may sound on one note",
                                    format_seconds(run.seconds)),
             .fixes = {}});
    }
    return found;
}

std::vector<Fix> fixes(const ScriptView& script, const FindingDraft& draft) {
    for (const Run& run : unmarked_runs(script)) {
        if (first_words(script.thoughts[run.first]) != draft.span) continue;
        if (auto fix = mark_lightly(script, run)) return {std::move(*fix)};
    }
    return {};
}

} // namespace

extern const Rule one_note = {
    .id = "one-note",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "A long stretch with nothing marked",
    .manual =
        "Thoughts in a row without a pause, stress, pace or pitch mark that last longer than the "
        "option `one_note` are easily read in one tone. "
        "A heading ends the stretch, and so does a silence. "
        "The fix puts in the few marks that a reader would likely follow unasked "
        "(docs/phrasing.md); it is a beginning, to be changed by ear.",
    .check_script = check,
    .concerns = breaks_stretch,
    .fixes_later = fixes,
};

} // namespace say::rules
