// Two measured errors, added as squares. The tables they were fitted to are in docs/timing.md.
#include "speech/range.h"

#include <algorithm>
#include <cmath>

namespace say {

PaceError pace_error(Seconds rests_on) {
    // What is left however long one listens, and what one minute of listening leaves.
    constexpr double from_day_to_day = 0.04;
    constexpr double after_a_minute = 0.095;

    const double minutes = rests_on.count() / 60;
    if (!(minutes > 0)) return unknown_pace;
    const double heard =
        from_day_to_day * from_day_to_day + after_a_minute * after_a_minute / minutes;
    const double unheard = unknown_pace.share * unknown_pace.share;
    return {std::sqrt(1 / (1 / unheard + 1 / heard))};
}

Timing with_range(Seconds speech, Seconds pause, Seconds held, PaceError pace) {
    constexpr double text_at_one_minute = 0.078;
    constexpr double fall = 0.31; // about the third root of the length

    const Seconds expected = speech + pause;
    const double uncertain = std::max(0.0, (expected - held).count());
    if (uncertain <= 0) return {expected, expected, expected, speech, pause};
    const double text = text_at_one_minute * std::pow(60.0 / uncertain, fall);
    // Half is the most that a word may be off: below a second the power law says too much.
    const double share = std::min(0.5, std::hypot(pace.share, text));
    const Seconds half{share * uncertain};
    return {expected, expected - half, expected + half, speech, pause};
}

} // namespace say
