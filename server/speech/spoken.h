// How written words are spoken: figures, dates, money, times, units, symbols, initials.
#pragma once

#include "text/span.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

enum class Language { en_us, en_gb };

// One word as it is said. `text` is folded lower case ("nine", "dna", "kilograms", "don't").
struct SpokenWord {
    std::string text;
    bool letters = false; // said letter by letter: "dna", "fbi"
    auto operator<=>(const SpokenWord&) const = default;
};

// What one written word becomes. "July 25" keeps its parts: "July" -> july, "25" -> twenty fifth.
// A written word may become nothing (an emoji, the "." of a list) and then takes no time.
struct Spoken {
    std::vector<SpokenWord> words;
    // Where the writing can be read in more than one way ("5/3", "1,500", "SQL"): the other ways,
    // each as it would be written in `{= ... }`; empty otherwise. `words` is the likeliest.
    std::vector<std::string> readings;
};

// One entry for each written word of `words` (spans of `plain`, made by split_words), in order.
// Looks at neighbours, so give it a whole thought. Never throws; any UTF-8 is taken.
std::vector<Spoken> speak(std::string_view plain, std::span<const Span> words, Language language);

// What a date in figures says of its order: "25/12/2027" has the day first, "12/25" the month;
// "5/3" says nothing, and what is no date neither.
enum class DateOrder { month_first, day_first };
std::optional<DateOrder> order_told_by(std::string_view written);

// "please call stella at nine thirty": the words joined by blanks.
std::string join(std::span<const SpokenWord> words);

// Capitals said letter by letter (FBI, UN, BBC) as against those said as a word (NASA, UNICEF)
// and against an ordinary word that is merely shouted (NEVER): case-sensitive, without full stops.
enum class Capitals { letters, word, ordinary };
Capitals capitals_kind(std::string_view word);

} // namespace say
