// Words and phrases of the page and what people say instead: the public-domain table behind the
// wording rule. data/plain_words.tsv names the source.
#pragma once

#include "rules/rule.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace say::rules {

struct PlainMatch {
    int first = 0; // words [first, last)
    int last = 0;
    Stage heard = Stage::draft;     // mild ones are heard from stage mark on
    std::vector<std::string> swaps; // lower case; an empty one leaves the words out
};

// The longest phrase of the table that begins with word `index` and is heard at this stage; `last`
// is 0 if there is none.
PlainMatch plain_match(const ThoughtView& view, int index, Stage stage);

// What the match covers in the thought's source: "approx." with its full stop.
Span written_span(const ThoughtView& view, const PlainMatch& match);

// The edits that put `swap` in the place of the match: its capital and an article before it follow.
// Empty where a mark stands inside the phrase.
std::vector<TextEdit> swap_edits(const ThoughtView& view, const PlainMatch& match,
                                 std::string_view swap);

// Says the first single word of the table for word `index` that no longer clashes with what stands
// around it; nothing where there is none. Any row will do here, however mild.
std::optional<Fix>
swap_fix(const ThoughtView& view, int index,
         const std::function<bool(const PlainMatch& match, std::string_view swap)>& still_clashes);

} // namespace say::rules
