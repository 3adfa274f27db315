// textDocument/inlayHint and its resolve: the seconds of each thought at its end, and the running
// clock if wanted.
#include "features/features.h"

#include <fmt/core.h>

#include <algorithm>

namespace say {
namespace {

// As wide as the times of nearly all thoughts are, so that what stands beside the text does not
// move when a figure comes or goes. A figure space is as wide as a figure.
std::string padded(const std::string& figures, std::size_t width) {
    std::string text;
    for (std::size_t size = figures.size(); size < width; ++size)
        text += "\u2007";
    return text + figures;
}

std::string label_of(const Placed& placed, const Options& options) {
    const Timing& timing = placed.thought->reading.timing;
    const std::string seconds = padded(fmt::format("{:.1f} s", timing.expected.count()), 6);
    const std::string clock = padded(format_clock(placed.at + timing.expected), 5);
    if (options.hint_seconds && options.hint_clock) return fmt::format("{} · {}", seconds, clock);
    return options.hint_clock ? clock : seconds;
}

// Calls `each` for the thoughts with a hint that end in the range.
template <class Each> void hinted(const Analysis& analysis, Span range, Each each) {
    if (!analysis.options.hint_seconds && !analysis.options.hint_clock) return;
    const std::vector<Placed>& thoughts = analysis.script.thoughts;
    auto placed =
        std::partition_point(thoughts.begin(), thoughts.end(), [&](const Placed& thought) {
            return thought.block.span.end < range.begin;
        });
    for (; placed != thoughts.end() && placed->block.span.end <= range.end; ++placed) {
        if (placed->thought->takes_time()) each(*placed);
    }
}

} // namespace

std::vector<InlayHint> inlay_hints(const Analysis& analysis, Span range) {
    std::vector<InlayHint> hints;
    hinted(analysis, range, [&](const Placed& placed) {
        hints.push_back({placed.block.span.end, label_of(placed, analysis.options)});
    });
    return hints;
}

std::string inlay_tooltip(const Analysis& analysis, Offset at) {
    std::string tooltip;
    hinted(analysis, {at, at}, [&](const Placed& placed) {
        const Timing& timing = placed.thought->reading.timing;
        tooltip = fmt::format("{}; from {} to {}", format_range(timing), format_clock(placed.at),
                              format_clock(placed.at + timing.expected));
    });
    return tooltip;
}

} // namespace say
