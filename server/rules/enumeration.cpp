#include "rules/enumeration.h"

#include "rules/clause.h"
#include "rules/word_class.h"

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

constexpr int longest_item = 5; // words; the last may run on: "a crab that was already dead"
constexpr int longest_last_item = 12;

bool has_comma_behind(const ThoughtView& view, int index) {
    return said_at(view, index).after == Juncture::comma;
}

// Where the part between two commas begins that ends before word `end`.
int start_of_part(const ThoughtView& view, int first, int end) {
    int i = end - 1;
    while (i > first && !is_parted_behind(view, i - 1))
        --i;
    return i;
}

bool has_verb(const ThoughtView& view, int first, int end) {
    for (int i = first; i < end; ++i) {
        const std::string_view word = heard(view, i);
        if (is_finite(word) || is_nominative(word) || is_subject_and_verb(word)) return true;
    }
    return false;
}

bool joins(std::string_view word) {
    return word == "and" || word == "or" || word == "then";
}

// Words [first, end) between two commas, as one of several like things.
bool is_item(const ThoughtView& view, int first, int end) {
    if (end <= first || end - first > longest_item || has_verb(view, first, end)) return false;
    const std::string_view word = heard(view, first);
    return joins(word) || !is_conjunction(word);
}

// "Last night, rain and hail fell" is no list: what stands first sets the scene.
bool sets_scene(const ThoughtView& view, int first, int end) {
    constexpr std::array<std::string_view, 10> scenes = {
        "today", "tomorrow", "tonight", "yesterday", "last", "next", "every", "this", "well", "so"};
    const std::string_view word = heard(view, first);
    if (is_one_of(word, scenes) || subordinates(view, first, end)) return true;
    return is_preposition(word) && has_verb(view, first, end);
}

// "And then we all crossed over": another clause, and no item.
bool begins_clause(const ThoughtView& view, int first, int end) {
    constexpr int opening = 3; // words
    for (int i = first; i < std::min(end, first + opening); ++i) {
        const std::string_view word = heard(view, i);
        if (is_relative(word)) return false;
        if (is_nominative(word) || is_subject_and_verb(word)) return true;
    }
    return opens_clause(view, first, end);
}

// The list whose last item is [last, end) behind the joining word `join`.
std::optional<Enumeration> list_behind(const ThoughtView& view, const Sentence& sentence,
                                       int join) {
    const int first = sentence.first;
    Enumeration list{.last = join + 1};
    list.end = join + 1;
    while (list.end < sentence.last && !is_parted_behind(view, list.end - 1))
        ++list.end;
    if (list.end - list.last > longest_last_item || begins_clause(view, list.last, list.end))
        return std::nullopt;
    if (heard(view, list.last) == "not" || heard(view, list.last) == "so") return std::nullopt;

    // Back over the items between commas to the part that holds the first one.
    int begin = start_of_part(view, first, join);
    if (heard(view, join) == "then" && !is_parted_behind(view, join - 1)) return std::nullopt;
    if (begin <= first || !has_comma_behind(view, begin - 1) || !is_item(view, begin, join))
        return std::nullopt;
    // "We count them, in May and June": the second "in" is missing.
    const bool placed = is_preposition(heard(view, begin));
    if (placed && !is_preposition(heard(view, list.last))) return std::nullopt;
    list.items = begin;
    for (int end = begin; end > first; end = begin) {
        begin = start_of_part(view, first, end);
        if (begin <= first || !has_comma_behind(view, begin - 1) || !is_item(view, begin, end))
            break;
        list.items = begin;
    }
    if (sets_scene(view, start_of_part(view, first, list.items), sentence.last))
        return std::nullopt;
    list.head = list.items - 1;
    return list;
}

} // namespace

std::optional<Enumeration> find_enumeration(const ThoughtView& view, const Sentence& sentence) {
    constexpr int longest_sentence = 60; // words; what is longer is no sentence somebody says
    if (sentence.last - sentence.first > longest_sentence) return std::nullopt;
    for (int i = sentence.last - 2; i >= sentence.first + 2; --i) {
        if (!joins(heard(view, i))) continue;
        if (auto list = list_behind(view, sentence, i)) return list;
    }
    return std::nullopt;
}

} // namespace say::rules
