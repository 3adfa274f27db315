// Targets that do not add up: the sections promise more time than what holds them has.
#include "rules/rule.h"
#include "rules/target_fix.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <cmath>

namespace say::rules {
namespace {

// The least that a target asks for; of a maximum, the maximum: it is what was set aside.
Seconds budget_of(const Target& target) {
    return target.low > Seconds{0} ? target.low : target.high;
}

struct Sum {
    Seconds seconds{0};
    int targets = 0;
};

// What the sections right below `parent` (-1: the script) ask for. A section without a target of
// its own counts as what it holds.
std::vector<Sum> sums_below(const ScriptView& script) {
    const auto count = script.sections.size();
    std::vector<Sum> sums(count + 1); // the last is the script's
    // Children stand behind their parent, so going backwards each is complete when it is added.
    for (std::size_t i = count; i-- > 0;) {
        const Stretch& section = script.sections[i];
        const auto parent = section.parent >= 0 ? static_cast<std::size_t>(section.parent) : count;
        if (section.target) {
            sums[parent].seconds += budget_of(*section.target);
            ++sums[parent].targets;
        } else {
            sums[parent].seconds += sums[i].seconds;
            sums[parent].targets += sums[i].targets;
        }
    }
    return sums;
}

void judge(const ScriptView& script, const Stretch& stretch, const Sum& sum,
           std::vector<FindingDraft>& found) {
    if (!stretch.target || sum.targets == 0) return;
    const Seconds over = sum.seconds - stretch.target->high;
    const bool exact = stretch.target->low == stretch.target->high;
    const Seconds slack = exact ? script.options.target_slack : Seconds{0};
    if (over <= slack + Seconds{0.001}) return;
    found.push_back({.span = stretch.target_span.empty() ? stretch.span : stretch.target_span,
                     .message = fmt::format("the targets below add up to {}, {:.0f} s more than {}",
                                            format_clock(sum.seconds), over.count(),
                                            format_target(*stretch.target)),
                     .fixes = {set_target_fix(stretch, sum.seconds)}});
}

std::vector<FindingDraft> check(const ScriptView& script) {
    const std::vector<Sum> sums = sums_below(script);
    std::vector<FindingDraft> found;
    judge(script, script.whole, sums.back(), found);
    for (std::size_t i = 0; i < script.sections.size(); ++i)
        judge(script, script.sections[i], sums[i], found);
    return found;
}

} // namespace

extern const Rule targets_disagree = {
    .id = "targets-disagree",
    .severity = Severity::warning,
    .summary = "Targets of sections that add up to more than what holds them",
    .manual =
        "A section's budget counts in that of the section or script that holds it. "
        "If the parts ask for more than the whole has, one of them will be cut at the camera. "
        "Of a range its lower end counts, of a maximum the maximum; a section without a target "
        "counts as what its own sections ask for. "
        "The fix takes the sum for the target of the whole.",
    .check_script = check,
};

} // namespace say::rules
