// A timed pause beyond what the format takes for one: it would be read out as text.
#include "rules/problem.h"
#include "rules/rule.h"

#include <fmt/core.h>

#include <charconv>
#include <optional>
#include <string>

namespace say::rules {
namespace {

// "(90s)" or "(61.5)" at `at`: how many seconds, and the bytes it takes.
struct Hold {
    Span span;
    double seconds = 0;
};

std::optional<Hold> bracketed_seconds(std::string_view source, std::size_t at) {
    double seconds = 0;
    const char* begin = source.data() + at + 1;
    const char* const end = source.data() + source.size();
    const auto read = std::from_chars(begin, end, seconds, std::chars_format::fixed);
    if (read.ec != std::errc{} || read.ptr == end) return std::nullopt;
    const bool decimal = std::string_view(begin, read.ptr).find('.') != std::string_view::npos;
    const bool unit = *read.ptr == 's';
    const char* close = read.ptr + (unit ? 1 : 0);
    if ((!decimal && !unit) || close == end || *close != ')') return std::nullopt;
    return Hold{make_span(at, static_cast<std::size_t>(close + 1 - source.data())), seconds};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    constexpr double longest = 60;
    std::vector<FindingDraft> found;
    for (std::size_t at = view.source.find('(', view.content.begin.value);
         at != std::string_view::npos; at = view.source.find('(', at + 1)) {
        const auto pause = bracketed_seconds(view.source, at);
        if (!pause || pause->seconds <= longest) continue;
        const std::string written(slice(view.source, pause->span));
        // It is spoken now and will not be: not for a bulk fix.
        found.push_back(
            {.span = pause->span,
             .message = fmt::format(
                 "{} is more than a pause of 60 seconds, so it is spoken as text", shape(written)),
             .fixes = {{.title = "Hold it as a direction",
                        .edits = {{pause->span, fmt::format("[wait {:g}s]", pause->seconds)}},
                        .keeps_every_word = false},
                       {.title = "Hold 60 seconds",
                        .edits = {{pause->span, "(60s)"}},
                        .keeps_every_word = false}}});
    }
    return found;
}

} // namespace

extern const Rule pause_too_long = {
    .id = "pause-too-long",
    .severity = Severity::warning,
    .summary = "A timed pause of more than 60 seconds",
    .manual =
        "`(1.5)` and `(2s)` hold that many seconds, up to 60; beyond that the brackets are text "
        "and the number is spoken. "
        "A longer wait is something to do rather than to say: a direction such as `[wait 90s]` "
        "holds it.",
    .check = check,
};

} // namespace say::rules
