// What rules share: names, the forms in which times are shown, and places in a thought.
#include "rules/rule.h"

#include "rules/breath.h"
#include "rules/split.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace say {
namespace {

// From one pause mark to the other end of the table a time is never below zero nor beyond a week.
double sane(Seconds seconds) {
    constexpr double week = 7.0 * 24 * 3600;
    return std::isfinite(seconds.count()) ? std::clamp(seconds.count(), 0.0, week) : 0.0;
}

std::string clock(double seconds) {
    const auto whole = static_cast<long>(std::lround(seconds));
    if (whole >= 3600) {
        return fmt::format("{}:{:02}:{:02}", whole / 3600, whole / 60 % 60, whole % 60);
    }
    return fmt::format("{}:{:02}", whole / 60, whole % 60);
}

bool below_a_minute(double seconds) {
    return seconds < 59.95; // what rounds to 60.0 s is shown as 1:00
}

} // namespace

std::string_view name_of(Severity severity) {
    switch (severity) {
    case Severity::hint: return "hint";
    case Severity::warning: return "warning";
    case Severity::error: return "error";
    }
    return "warning";
}

std::string_view ThoughtView::word(int index) const {
    if (index < 0 || index >= static_cast<int>(written.words.size())) return {};
    return slice(written.plain.text, written.words[static_cast<std::size_t>(index)].plain);
}

int ThoughtView::breath_spot(int first, int last) const {
    if (first < 0 || last >= static_cast<int>(reading.said.size())) return 0;
    return rules::BreathSpots(*this, first, last).best(first, last);
}

ThoughtView view_of(const ScriptView& script, const ThoughtSummary& thought) {
    return {.source = thought.source,
            .content = thought.content,
            .written = *thought.written,
            .reading = *thought.reading,
            .kind = thought.kind,
            .stage = script.stage,
            .language = script.language,
            .options = script.options};
}

TextEdit ThoughtView::before_word(int index, std::string_view replacement) const {
    const bool breaks = replacement.find('\n') != std::string_view::npos;
    const auto blanks =
        breaks ? rules::thought_blanks(*this, index) : rules::word_blanks(*this, index);
    if (!blanks) return {};
    if (breaks) return {.span = *blanks, .replacement = std::string(replacement)};
    // A line end among the blanks stays: what is inserted goes behind it.
    while (replacement.starts_with(' '))
        replacement.remove_prefix(1);
    return {.span = {blanks->end, blanks->end}, .replacement = std::string(replacement)};
}

std::string format_seconds(Seconds seconds) {
    const double value = sane(seconds);
    if (below_a_minute(value)) return fmt::format("{:.1f} s", value);
    return clock(value);
}

std::string format_clock(Seconds seconds) {
    return clock(sane(seconds));
}

std::string format_range(const Timing& timing) {
    if (below_a_minute(sane(timing.high))) {
        return fmt::format("between {} and {}", format_seconds(timing.low),
                           format_seconds(timing.high));
    }
    return fmt::format("between {} and {}", format_clock(timing.low), format_clock(timing.high));
}

std::string format_target(const Target& target) {
    if (target.low == target.high) return format_clock(target.high);
    if (target.low == Seconds{0}) return format_clock(target.high) + " max";
    return fmt::format("{}-{}", format_clock(target.low), format_clock(target.high));
}

Seconds off_target(Seconds expected, const Target& target, Seconds slack) {
    if (target.low == target.high) {
        const Seconds near = std::max(slack, target.high * 0.05);
        const Seconds off = expected - target.high;
        return std::chrono::abs(off) <= near ? Seconds{0} : off;
    }
    if (expected > target.high) return expected - target.high;
    if (expected < target.low) return expected - target.low;
    return Seconds{0};
}

} // namespace say
