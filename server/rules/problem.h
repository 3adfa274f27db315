// What the rules about marks share: finding the problems of one kind and the usual two fixes.
#pragma once

#include "rules/rule.h"

#include <string>
#include <string_view>

namespace say::rules {

// Takes the bytes away: for a mark that is none.
Fix remove_fix(Span span, std::string_view what);
// The same for what stands between blanks: one of the two goes with it.
Fix remove_standing_fix(std::string_view source, Span span, std::string_view what);
// Takes away the delimiters of a pair and keeps the words.
Fix unpair_fix(const Mark& mark, std::string title);
// "{first name}" apart from any word: small letters that end in what a template asks for.
bool names_a_field(const Problem& problem);
// The bytes of a fix's mark, quoted for a message: `*`.
std::string shape(std::string_view what);

} // namespace say::rules
