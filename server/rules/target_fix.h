// The fix of the rules about targets: another target in the same place.
#pragma once

#include "rules/rule.h"

namespace say::rules {

// Takes `seconds` for the target of a stretch that has one: as an exact time, as a maximum, or as
// the end of a range on that side. Whole seconds.
Fix set_target_fix(const Stretch& stretch, Seconds seconds);

} // namespace say::rules
