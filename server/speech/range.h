// How far off a time may be: the range that eight reads in ten end in (docs/timing.md).
#pragma once

#include "base/units.h"

namespace say {

// The share of the time that the pace of a reader is off by: eight readers in ten are nearer.
struct PaceError {
    double share = 0;
};
// A reader nobody has timed.
inline constexpr PaceError unknown_pace{0.205};
// A reader whose numbers were set by hand: nothing says what they rest on.
inline constexpr PaceError set_pace{0.10};
// A reader timed for so long: near `unknown_pace` after a few seconds, and never below what one
// day's reading differs from another's.
PaceError pace_error(Seconds rests_on);

// The pace error is shared by all that is read, the text's own error shrinks as the text grows, so
// a total's range is narrower than the sum of its parts'. `held` (directions and timed pauses) is
// certain.
Timing with_range(Seconds speech, Seconds pause, Seconds held, PaceError pace);

} // namespace say
