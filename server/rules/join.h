// What the tongue meets where one word runs into the next, and what a reader does about it.
#pragma once

#include "rules/rule.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace say::rules {

// The sounds on both sides of a join.
struct Join {
    std::span<const Phone> left;
    std::span<const Phone> right;
};

// The consonants that meet: those behind the last vowel and those before the next one.
struct Cluster {
    std::span<const Phone> left;
    std::span<const Phone> right;
    int count = 0; // the same consonant on both sides is held, not said twice: it counts once
};

using JoinTest = bool (*)(const Join&);

bool is_sibilant(Sound sound);
// The sibilants close to a join, in order.
std::vector<Sound> sibilants_near(const Join& join);
Cluster cluster_of(const Join& join);

bool piles_sibilants(const Join& join);
bool piles_consonants(const Join& join);

// The words (the index of the right one) whose join passes the test and at which nothing is done
// yet: no pause, no punctuation, no slow mark, no tongue-twister over both. Words whose sounds are
// guessed are passed over, and of two joins of one word only the first is given.
std::vector<int> open_joins(const ThoughtView& view, JoinTest test);
// Whether nothing is done yet at the join before word `index` of two content words.
bool is_open(const ThoughtView& view, int index);
Join join_before(const ThoughtView& view, int index);

// A moment or a breath before the word, both words slow, a plainer word that does not clash.
std::vector<Fix> join_fixes(const ThoughtView& view, int index, JoinTest test);

// Slow marks around words [first, last], if no other mark begins, ends or stands among them.
std::optional<Fix> slow_fix(const ThoughtView& view, int first, int last);

// "k-s-t-s", in the letters a writer would use.
std::string spelled(std::span<const Phone> phones);
Span words_span(const ThoughtView& view, int first, int last);

} // namespace say::rules
