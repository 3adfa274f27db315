// What is news in a sentence: the figure it turns on and the last new thing, rather than the verb.
#pragma once

#include "rules/rule.h"

#include <string_view>

namespace say::rules {

// A figure that tells how much or how many: a price, a share, a count, a vote. Years, dates, times
// of day and numbers that only name a thing ("lesson two") are none.
bool is_quantity(const ThoughtView& view, int index);

// What may end a sentence without being its news: "again", "today".
bool trails(std::string_view word);

// What is added to the chance that a reader leans on the word; below zero for words that only carry
// the news.
double news_worth(const ThoughtView& view, const Sentence& sentence, int index);

} // namespace say::rules
