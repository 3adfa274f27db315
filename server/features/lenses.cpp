// textDocument/codeLens: the script's time and each section's, against their targets.
#include "features/features.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace say {
namespace {

// Whole seconds where there are any, so that "1:12, 12 s over 1:00" adds up for its reader.
std::string distance(Seconds expected, Seconds end) {
    const double whole = std::abs(std::round(expected.count()) - end.count());
    if (whole >= 60) return format_clock(Seconds{whole});
    if (whole >= 1) return fmt::format("{:.0f} s", whole);
    return fmt::format("{:.1f} s", std::max(0.1, std::abs((expected - end).count())));
}

std::string title_of(const Timing& timing, const std::optional<Target>& target, Seconds slack) {
    const Seconds expected = timing.expected;
    std::string clock = format_clock(expected);
    if (!target) return clock;
    const std::string wanted = format_target(*target);
    const Seconds off = off_target(expected, *target, slack);
    if (off > Seconds{0}) {
        return fmt::format("{}, {} over {}", clock, distance(expected, target->high), wanted);
    }
    if (off < Seconds{0}) {
        return fmt::format("{}, {} short of {}", clock, distance(expected, target->low), wanted);
    }
    return fmt::format("{} of {}", clock, wanted);
}

} // namespace

std::vector<Lens> lenses(const Analysis& analysis) {
    const Script& script = analysis.script;
    const Text& text = *analysis.document.text;
    const Seconds slack = analysis.options.rules.target_slack;
    std::vector<Lens> result;
    if (script.timing.expected > Seconds{0}) {
        result.push_back(
            {text.line_span(0), "Script: " + title_of(script.timing, script.header.target, slack)});
    }
    for (const Section& section : script.sections) {
        // A section that is still to be written is no news to its writer.
        if (section.timing.expected == Seconds{0}) continue;
        result.push_back({section.heading, title_of(section.timing, section.target, slack)});
    }
    return result;
}

} // namespace say
