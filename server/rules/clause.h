// Where a sentence joins two ideas: by word lists, without a tagger. Both sides of the join must
// hold what looks like a subject with its verb.
#pragma once

#include "rules/rule.h"

#include <string_view>

namespace say::rules {

const Said& said_at(const ThoughtView& view, int index);
// Whether the word carries meaning: it is said, and is no small word.
bool is_content(const ThoughtView& view, int index);
// Whether punctuation stands behind the word.
bool is_parted_behind(const ThoughtView& view, int index);
// The word as it is said, folded; empty where it is a figure or is said as several words.
std::string_view heard(const ThoughtView& view, int index);

// Whether the word is a number from two on, in figures or in words.
bool is_number(const ThoughtView& view, int index);
// The sentence that holds word `index`, or null.
const Sentence* sentence_of(const ThoughtView& view, int index);
// Whether words [index, end) begin with a subject that has a verb: "we walk", "the tide is".
bool opens_clause(const ThoughtView& view, int index, int end);
// Whether word `index` begins a side clause: "if", "before we".
bool subordinates(const ThoughtView& view, int index, int end);
// Whether word `index` is "and", "but" or "so" and joins two clauses of the sentence [first, end).
bool joins_ideas(const ThoughtView& view, int first, int index, int end);

} // namespace say::rules
