// Every rule, one line each. Of a family (Family::length) the first in this order is kept.
#include "rules/rule.h"

#include <algorithm>
#include <array>
#include <vector>

namespace say {

// The order of the manual, and of a family: splitting a thought changes what is left to breathe,
// and a place to breathe also marks a long sentence, so the stronger cure stands first.
#define SAYLINE_RULES(X)                                                                           \
    X(run_on)                                                                                      \
    X(no_breath)                                                                                   \
    X(long_sentence)                                                                               \
    X(tongue_twister)                                                                              \
    X(cluster_pile_up)                                                                             \
    X(sibilant_pile_up)                                                                            \
    X(other_hearing)                                                                               \
    X(two_readings)                                                                                \
    X(two_sounds)                                                                                  \
    X(unknown_word)                                                                                \
    X(written_wording)                                                                             \
    X(contraction)                                                                                 \
    X(doubled_word)                                                                                \
    X(mark_unclosed)                                                                               \
    X(mark_stray)                                                                                  \
    X(mark_contradiction)                                                                          \
    X(stress_long)                                                                                 \
    X(stress_crowded)                                                                              \
    X(stress_unlikely)                                                                             \
    X(one_note)                                                                                    \
    X(list_unslowed)                                                                               \
    X(pause_in_aside)                                                                              \
    X(pause_too_long)                                                                              \
    X(figure_unsaid)                                                                               \
    X(lone_beat)                                                                                   \
    X(direction_time)                                                                              \
    X(cue_spoken)                                                                                  \
    X(pronouncer_unclear)                                                                          \
    X(empty_field)                                                                                 \
    X(words_to_come)                                                                               \
    X(other_markup)                                                                                \
    X(unspoken_sign)                                                                               \
    X(all_capitals)                                                                                \
    X(thought_too_long)                                                                            \
    X(speaker_undeclared)                                                                          \
    X(off_target)                                                                                  \
    X(targets_disagree)                                                                            \
    X(heading_unclear)                                                                             \
    X(header_key)                                                                                  \
    X(header_value)                                                                                \
    X(header_unclosed)                                                                             \
    X(allow_unknown)

namespace rules {
#define SAYLINE_DECLARE(name) extern const Rule name;
SAYLINE_RULES(SAYLINE_DECLARE)
#undef SAYLINE_DECLARE
} // namespace rules

std::span<const Rule* const> all_rules() {
#define SAYLINE_POINTER(name) &rules::name,
    static constexpr std::array table = {SAYLINE_RULES(SAYLINE_POINTER)};
#undef SAYLINE_POINTER
    return table;
}

std::span<const Rule* const> script_rules() {
    static const std::vector<const Rule*> rules = [] {
        std::vector<const Rule*> found;
        for (const Rule* rule : all_rules())
            if (rule->check_script != nullptr) found.push_back(rule);
        return found;
    }();
    return rules;
}

const Rule* find_rule(std::string_view id) {
    const auto all = all_rules();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Rule* rule) { return rule->id == id; });
    return found == all.end() ? nullptr : *found;
}

} // namespace say
