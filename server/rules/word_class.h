// What small words do in a sentence, by lists. Words are folded, as `heard` gives them.
#pragma once

#include "base/lists.h"

#include <string_view>

namespace say::rules {

bool is_nominative(std::string_view word);       // only ever a subject: "we"
bool is_subject_and_verb(std::string_view word); // both in one: "it's"
bool is_finite(std::string_view word);           // "is", "won't"
bool is_determiner(std::string_view word);       // "the", "our"
bool is_relative(std::string_view word);         // makes what follows a part of what precedes
bool is_preposition(std::string_view word);
bool is_figure(std::string_view word); // holds a digit; as written
bool is_conjunction(std::string_view word);
// From ten on: below, a number is often no more than a small word.
bool is_large_number(std::string_view word);
// "Three hundred": the reader leans on the three.
bool is_multiple_of_number(std::string_view word);

} // namespace say::rules
