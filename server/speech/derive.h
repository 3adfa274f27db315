// The sounds of words the dictionary lacks but that are made of words it has: endings, prefixes,
// compounds. Each answers nothing where its rule does not apply. `word` is of the letters a to z
// only.
#pragma once

#include "speech/phones.h"

#include <optional>
#include <string_view>

namespace say {

// The first reading of the dictionary; else what endings and prefixes give ("limpeting",
// "unmoored").
std::optional<Phones> known_or_derived(std::string_view word);

std::optional<Phones> with_ending(std::string_view word); // "replanned" from "replan"
std::optional<Phones> with_prefix(std::string_view word); // "unlabelled" from "labelled"
std::optional<Phones> as_compound(std::string_view word); // "tidewatcher" from "tide" and "watcher"
std::optional<Phones> as_unit(std::string_view word);     // "kilopascals", "becquerel"
std::optional<Phones> as_letter_and_word(std::string_view word);   // "ebook"
std::optional<Phones> in_american_spelling(std::string_view word); // "organised" by "organized"

// The plural or possessive -s and the past -ed, as the sound before them asks.
void append_s(Phones& phones);
void append_ed(Phones& phones);

} // namespace say
