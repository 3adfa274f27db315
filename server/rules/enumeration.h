// "Stones, weed and a crab": which words of a sentence are items of a list. By word lists and
// commas; what they cannot see is called no list.
#pragma once

#include "rules/rule.h"

#include <optional>

namespace say::rules {

struct Enumeration {
    int head = 0;  // the word that the first item ends on
    int items = 0; // the items behind the first: words [items, last)
    int last = 0;  // the last item: words [last, end)
    int end = 0;
};

// The last list of three or more in the sentence.
std::optional<Enumeration> find_enumeration(const ThoughtView& view, const Sentence& sentence);

} // namespace say::rules
