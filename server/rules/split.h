// Where a thought may be parted: the blanks between two words, and the edits that put a breath or
// the end of the thought there without breaking a mark.
#pragma once

#include "rules/rule.h"

#include <optional>
#include <string_view>
#include <vector>

namespace say::rules {

// The blanks before word `index` where a thought may end: behind the punctuation and the pauses
// that belong to the word before, in front of directions and notes, which belong to the next.
// Nothing where the two words stand together ("shore—and").
std::optional<Span> thought_blanks(const ThoughtView& view, int index);

// The blanks right in front of word `index` and of the marks that open on it.
std::optional<Span> word_blanks(const ThoughtView& view, int index);

// For each of the words [first, last] whether a pause mark before it would break something: inside
// an aside, a stress, a tie or the words of one pronouncer. All at once, so that the cost is that
// of the words and the marks, not of one times the other.
std::vector<bool> pauseless(const ThoughtView& view, int first, int last);

// Puts a standing mark ("/", "...") in front of word `index`.
std::optional<TextEdit> pause_before(const ThoughtView& view, int index, std::string_view mark);

// Lets word `index` begin a thought of its own: a paragraph, or an item within a list. Marks that
// span the place are closed and opened again. Nothing where what follows would be read as another
// kind of block, or where the item's number is in the way.
std::optional<TextEdit> thought_before(const ThoughtView& view, int index);

// The same where a clause begins with "and", "but" or "so": ", and we" becomes a full stop and "And
// we". Every word is kept. Empty where it cannot be done.
std::vector<TextEdit> sentence_before(const ThoughtView& view, int index);

// Whether a pair of this kind may go around source `span`: it must nest with the pairs that are
// there, and the same kind never nests in itself.
bool may_enclose(const Written& written, Span span, MarkKind kind);

// The mark of this kind that holds word `index`, or null.
const Mark* mark_over(const ThoughtView& view, int index, MarkKind kind);
bool is_stressed(const ThoughtView& view, int index); // stress, heavy stress or punch

} // namespace say::rules
