#include "rules/target_fix.h"

#include <fmt/core.h>

#include <cmath>

namespace say::rules {

Fix set_target_fix(const Stretch& stretch, Seconds seconds) {
    Target target = *stretch.target;
    const bool exact = target.low == target.high;
    if (seconds > target.high || exact) target.high = Seconds{std::ceil(seconds.count())};
    if (seconds < target.low) target.low = Seconds{std::floor(seconds.count())};
    if (exact) target.low = target.high;
    const std::string written = format_target(target);
    return {.title = fmt::format("Set the target to {}", written),
            .edits = {{stretch.target_span, written}}};
}

} // namespace say::rules
