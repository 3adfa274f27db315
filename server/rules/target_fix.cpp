#include "rules/target_fix.h"

#include <fmt/core.h>

#include <cmath>

namespace say::rules {

Fix set_target_fix(const Stretch& stretch, Seconds seconds) {
    Target target = *stretch.target;
    if (target.low == target.high) {
        target.low = target.high = Seconds{std::round(seconds.count())}; // as the message has it
    } else if (seconds > target.high) {
        target.high = Seconds{std::ceil(seconds.count())};
    } else if (seconds < target.low) {
        target.low = Seconds{std::floor(seconds.count())};
    }
    const std::string written = format_target(target);
    return {.title = fmt::format("Set the target to {}", written),
            .edits = {{stretch.target_span, written}}};
}

} // namespace say::rules
