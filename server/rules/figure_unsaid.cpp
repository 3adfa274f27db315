// A figure in brackets that is a timed pause where nobody pauses: a value that is never said.
#include "rules/problem.h"
#include "rules/rule.h"
#include "text/ascii.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

// Pauses that talkers write down are short; "(14.3)" behind a noun is a mean.
constexpr Seconds longest_pause{2.0};

// In the middle of a phrase: a word right before it, and behind it a word that goes on, or the
// phrase's own comma or stop.
bool is_inside_phrase(std::string_view source, Span mark) {
    std::size_t before = mark.begin.value;
    while (before > 0 && ascii::is_blank(source[before - 1]))
        --before;
    if (before == 0 || !(ascii::is_alnum(source[before - 1]) || ascii::is_high(source[before - 1])))
        return false;
    std::size_t behind = mark.end.value;
    if (behind < source.size() &&
        std::string_view(".,;:!?").find(source[behind]) != std::string_view::npos)
        return true;
    while (behind < source.size() && ascii::is_blank(source[behind]))
        ++behind;
    return behind < source.size() && ascii::is_lower(source[behind]);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        const std::string_view written = slice(view.source, mark.span);
        // "(2s)" says that seconds are meant.
        if (mark.kind != MarkKind::timed_pause || mark.seconds <= longest_pause ||
            written.ends_with("s)"))
            continue;
        if (!is_inside_phrase(view.source, mark.span)) continue;
        const std::string what(written);
        const Offset close{mark.span.end.value - 1};
        found.push_back(
            {.span = mark.span,
             .message = fmt::format("{} is a silence of {} here, and the figure is not said",
                                    shape(what), format_seconds(mark.seconds)),
             .fixes = {{.title = "Say the figure",
                        .edits = {{{mark.span.begin, mark.span.begin}, "\\"}},
                        .keeps_every_word = false,
                        .preferred = true},
                       {.title = fmt::format("Hold {}", format_seconds(mark.seconds)),
                        .edits = {{{close, close}, "s"}}}}});
    }
    return found;
}

} // namespace

extern const Rule figure_unsaid = {
    .id = "figure-unsaid",
    .severity = Severity::warning,
    .summary = "A figure in brackets that is held as a pause and not said",
    .manual =
        "A decimal in brackets is a timed pause: `(1.5)` holds a second and a half. "
        "So the mean in “the mean (14.3) was higher” is a long silence, and the figure is lost. "
        "A backslash makes it a figure: `\\(14.3)`; better still, say it as talk does: “the mean, "
        "14.3, was higher”. "
        "If a pause is meant in the middle of the phrase, `(14.3s)` says so.",
    .check = check,
};

} // namespace say::rules
