// Counted anew when somebody asks: nothing of it is needed for a keystroke.
#include "engine/ear.h"

#include <fmt/core.h>

#include <algorithm>
#include <span>

namespace say {
namespace {

struct Counts {
    int sentences = 0;
    int thoughts = 0;
    int words = 0;
    int syllables = 0;
    int beyond_one = 0; // syllables
    int stressed = 0;
    int marked_pauses = 0;
    int written_pauses = 0;
    Seconds in_thoughts{0};
    Seconds speech{0};
};

void count_sentences(const Reading& reading, Counts& counts) {
    for (const Sentence& sentence : reading.sentences) {
        int words = 0;
        int syllables = 0;
        for (int i = sentence.first; i < sentence.last; ++i) {
            const Said& said = reading.said[static_cast<std::size_t>(i)];
            words += count_words(said);
            syllables += said.syllables;
        }
        if (words == 0) continue;
        ++counts.sentences;
        counts.words += words;
        counts.syllables += syllables;
        counts.beyond_one += std::max(0, syllables - words);
    }
}

// Marks that stand at one place are one pause.
void count_pauses(const Reading& reading, Counts& counts) {
    constexpr int nowhere = -2;
    int last = nowhere;
    for (const PauseAt& pause : reading.pauses) {
        if (!is_marked(pause)) {
            ++counts.written_pauses;
            continue;
        }
        // What a heavy stress puts before its word stands on no mark of its own.
        if (pause.span.empty() || pause.after == last) continue;
        last = pause.after;
        ++counts.marked_pauses;
    }
}

void count_stresses(const Written& written, Counts& counts) {
    counts.stressed +=
        static_cast<int>(std::count_if(written.marks.begin(), written.marks.end(),
                                       [](const Mark& mark) { return is_stress(mark.kind); }));
}

EarFigures figures_of(std::span<const Placed> thoughts, Seconds whole) {
    Counts counts;
    for (const Placed& placed : thoughts) {
        const Thought& thought = *placed.thought;
        count_pauses(thought.reading, counts);
        if (!thought.has_words()) continue;
        ++counts.thoughts;
        counts.in_thoughts += thought.reading.timing.expected;
        counts.speech += thought.reading.timing.speech;
        count_sentences(thought.reading, counts);
        count_stresses(thought.written, counts);
        // The gap behind the last one is no listener's of this stretch.
        if (placed.gap > Seconds{0} && &placed != &thoughts.back()) ++counts.written_pauses;
    }
    const double minutes = whole.count() / 60;
    if (counts.words == 0 || counts.sentences == 0 || !(minutes > 0)) return {};
    EarFigures figures;
    figures.easy_listening = static_cast<double>(counts.beyond_one) / counts.sentences;
    figures.words_a_thought = static_cast<double>(counts.words) / counts.thoughts;
    figures.seconds_a_thought = counts.in_thoughts / counts.thoughts;
    figures.stressed_a_minute = counts.stressed / minutes;
    figures.marked_pauses_a_minute = counts.marked_pauses / minutes;
    figures.written_pauses_a_minute = counts.written_pauses / minutes;
    figures.words_a_minute = counts.words / minutes;
    figures.syllables_a_second = counts.syllables / counts.speech.count();
    return figures;
}

} // namespace

EarFigures ear_of(const Script& script) {
    return figures_of(script.thoughts, script.timing.expected);
}

EarFigures ear_of(const Script& script, const Section& section) {
    const auto first = std::partition_point(
        script.thoughts.begin(), script.thoughts.end(),
        [&](const Placed& placed) { return placed.block.span.begin < section.span.begin; });
    const auto last = std::partition_point(first, script.thoughts.end(), [&](const Placed& placed) {
        return placed.block.span.begin < section.span.end;
    });
    return figures_of({first, last}, section.timing.expected);
}

std::string describe(const EarFigures& figures) {
    if (figures.words_a_minute <= 0) return "";
    return fmt::format(
        "For the ear: Easy Listening {:.1f}{}; thoughts of {:.0f} words ({:.1f} s); {:.1f} "
        "stresses, "
        "{:.1f} marked and {:.1f} written pauses a minute; {:.0f} words a minute, {:.1f} syllables "
        "a "
        "second.",
        figures.easy_listening,
        figures.hard_to_follow()
            ? fmt::format(" (over {:.0f}: hard to follow by ear)", EarFigures::easy_listening_limit)
            : std::string{},
        figures.words_a_thought, figures.seconds_a_thought.count(), figures.stressed_a_minute,
        figures.marked_pauses_a_minute, figures.written_pauses_a_minute, figures.words_a_minute,
        figures.syllables_a_second);
}

} // namespace say
