// A direction that names a time which does not count: only the time at its end does.
#include "base/lists.h"
#include "rules/problem.h"
#include "rules/rule.h"
#include "syntax/header.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>

namespace say::rules {
namespace {

bool holds(std::string_view word) {
    constexpr std::array<std::string_view, 12> kinds = {"clip", "film",  "music",   "pause",
                                                        "play", "reel",  "silence", "sot",
                                                        "tape", "video", "vt",      "wait"};
    return is_one_of(ascii::lower(word), kinds);
}

// What the writer means, without the brackets. "2 sec pause", "10-second clip": the longest time
// that it begins with.
std::optional<std::string> time_first(std::string_view argument) {
    std::optional<std::string> meant;
    for (std::size_t end = argument.find(' '); end != std::string_view::npos;
         end = argument.find(' ', end + 1)) {
        std::string written(argument.substr(0, end));
        std::replace(written.begin(), written.end(), '-', ' ');
        if (!parse_duration(written)) continue;
        std::string_view rest = argument.substr(end + 1);
        if (rest.starts_with("of ")) rest.remove_prefix(3);
        meant = fmt::format("{} {}", rest, written);
    }
    return meant;
}

// "VT hall 1:10": minutes and seconds look like the time of day, unless it is a clip's.
std::optional<std::string> clock_last(std::string_view argument) {
    const std::size_t blank = argument.rfind(' ');
    if (blank == std::string_view::npos ||
        !holds(argument.substr(0, argument.find_first_of(" :,"))))
        return std::nullopt;
    const std::string_view clock = argument.substr(blank + 1);
    const std::size_t colon = clock.find(':');
    const bool digits = colon != std::string_view::npos && colon > 0 && clock.size() == colon + 3 &&
                        std::all_of(clock.begin(), clock.end(),
                                    [](char c) { return ascii::is_digit(c) || c == ':'; });
    const std::string_view before = argument.substr(0, blank);
    const bool a_place = before.ends_with(" at") || before.ends_with(" from") ||
                         before.ends_with(" to") || before.ends_with(" until");
    if (!digits || a_place) return std::nullopt;
    const std::string written =
        fmt::format("{}m{}s", clock.substr(0, colon), clock.substr(colon + 1));
    if (!parse_duration(written)) return std::nullopt;
    return fmt::format("{} {}", before, written);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Mark& mark : view.written.marks) {
        if (mark.kind != MarkKind::direction) continue;
        const std::string_view argument =
            slice(view.source, mark.span).substr(1, mark.span.size() - 2);
        if (ending_time(argument)) continue;
        auto meant = time_first(argument);
        if (!meant) meant = clock_last(argument);
        if (!meant) continue;
        const std::string instead = fmt::format("[{}]", *meant);
        found.push_back(
            {.span = mark.span,
             .message = fmt::format("as it stands this takes no time; {} would", shape(instead)),
             .fixes = {{.title = fmt::format("Hold it: {}", instead),
                        .edits = {{mark.span, instead}},
                        .preferred = true}}});
    }
    return found;
}

} // namespace

extern const Rule direction_time = {
    .id = "direction-time",
    .severity = Severity::hint,
    .summary = "A direction with a time that does not count",
    .manual =
        "A direction takes the time that it ends with: `[pause 2s]`, `[VT: hall 1m10s]`. "
        "A time at its beginning is only words, and `1:10` at its end may be the time of day, "
        "so the script would run shorter than it is played. "
        "The fix writes the time where it counts.",
    .check = check,
};

} // namespace say::rules
