// A section or the whole script that runs past its target, or falls short of it.
#include "rules/rule.h"
#include "rules/target_fix.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <cmath>

namespace say::rules {
namespace {

// "7 s" or "1:05": how far off, in whole seconds, at least one.
std::string how_far(Seconds off) {
    const double seconds = std::max(1.0, std::round(std::abs(off.count())));
    if (seconds < 60) return fmt::format("{:.0f} s", seconds);
    return format_clock(Seconds{seconds});
}

std::string range(const Timing& timing) {
    return fmt::format("between {} and {}", format_clock(timing.low), format_clock(timing.high));
}

// What a writer cuts or adds is words: so many at the script's own pace, fives above twenty.
std::string in_words(const Stretch& stretch, Seconds off) {
    const double speech = stretch.timing.expected.count() - stretch.held.count();
    // A few words say little of how many a minute has room for.
    if (std::abs(off.count()) > speech || stretch.words == 0) return {};
    int words = static_cast<int>(std::lround(std::abs(off.count()) * stretch.words / speech));
    if (words > 20) words = (words + 2) / 5 * 5;
    if (words < 1) return {};
    return off > Seconds{0} ? fmt::format(", about {} too many", counted(words, "word"))
                            : fmt::format(", room for about {}", counted(words, "word"));
}

bool lies_beyond(const Timing& timing, const Target& target) {
    return timing.low > target.high || timing.high < target.low;
}

void judge(const ScriptView& script, const Stretch& stretch, std::vector<FindingDraft>& found) {
    if (!stretch.target || !stretch.has_thoughts) return;
    const Seconds off =
        off_target(stretch.timing.expected, *stretch.target, script.options.target_slack);
    if (off == Seconds{0}) return;
    // A draft that is still being written is always short.
    const bool over = off > Seconds{0};
    if (!over && script.stage == Stage::draft) return;

    FindingDraft draft{.span = stretch.target_span.empty() ? stretch.span : stretch.target_span,
                       .message = fmt::format(
                           "runs {} ({}), {} {} its {}{}", format_clock(stretch.timing.expected),
                           range(stretch.timing), how_far(off), over ? "over" : "short of",
                           format_target(*stretch.target), in_words(stretch, off)),
                       .fixes = {set_target_fix(stretch, stretch.timing.expected)}};
    // Within the range of likely readings the target may yet be met.
    if (!lies_beyond(stretch.timing, *stretch.target)) draft.severity = Severity::hint;
    found.push_back(std::move(draft));
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    judge(script, script.whole, found);
    for (const Stretch& section : script.sections)
        judge(script, section, found);
    return found;
}

} // namespace

extern const Rule off_target = {
    .id = "off-target",
    .severity = Severity::warning,
    .summary = "A section or the script that misses its target",
    .manual =
        "The time is the likeliest one at the pace of the script's reader, with the range in which "
        "eight reads in ten would fall. "
        "If the target lies within that range, this is a hint; if not, a warning. "
        "A target that is one time is met within `target_slack` seconds or 5 %, whichever is more; "
        "a range or a maximum is taken as written. "
        "The words too many, or those there is room for, are counted at the pace of the stretch "
        "itself, with its pauses. "
        "The fix takes the time that it runs for its target. "
        "While drafting, nothing is said of a section that is still short.",
    .check_script = check,
};

} // namespace say::rules
