// Where a reader may take a breath: one chooser for what is suggested and for what mends a finding.
#pragma once

#include "rules/rule.h"

#include <vector>

namespace say::rules {

// A semicolon, a dash or a mark already makes a pause there: a breath beside it adds nothing.
bool rests_before(const Reading& reading, int index);

// Whether words index-1 and index belong to one another so closely that nobody breathes between:
// "the / shore", "11 / to 8", "telling / you". By lists alone, so that marks change nothing.
bool holds_together(const ThoughtView& view, int index);
// Whether a clause, a comma or a joining word makes a place before word `index`: by lists alone.
bool is_edge(const ThoughtView& view, int index);
// The same without what a preposition makes: a short stretch is not parted before "at six".
bool is_strong_edge(const ThoughtView& view, int index);
// Whether a clause begins at word `index`, or punctuation stands before it.
bool is_clause_edge(const ThoughtView& view, int index);
// How well a reader may breathe before word `index`, apart from balance: the higher the better.
double breath_worth(const ThoughtView& view, int index);

// The places among words [first, last], weighed once for all the questions about them.
class BreathSpots {
public:
    BreathSpots(const ThoughtView& view, int first, int last);
    // The best place within a part of them, by worth and balance; 0 if there is none.
    int best(int first, int last) const;
    double worth(int index) const;

private:
    const ThoughtView& view_;
    int first_;
    std::vector<double> worth_;
};

// What is shown as 6.0 s is not over a limit of 6.0 s.
bool outlasts_breath(const ThoughtView& view, Seconds length);
Seconds length_of(const ThoughtView& view, int first, int last);

// Words before which a breath brings every part of what is said on one breath under the limit, or
// as near to it as the words allow. `leant_on` are words that are about to be stressed, which takes
// time.
std::vector<int> breath_places(const ThoughtView& view, const BreathGroup& group,
                               const std::vector<int>& leant_on = {});

} // namespace say::rules
