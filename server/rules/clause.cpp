// Clauses by word lists. What the lists cannot see (a plain noun followed by a plain verb) is not
// called a clause: a missed join is better than a wrong cut.
#include "rules/clause.h"

#include "rules/word_class.h"

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// How many words back from a join anything is looked for: no real sentence needs more, and a
// paragraph of 64 KiB must not cost its square.
constexpr int reach = 60;

// A verb form within the next words, before any punctuation or a word that begins a side clause.
bool finds_verb(const ThoughtView& view, int begin, int end) {
    constexpr int near = 5;
    for (int i = begin; i < std::min(end, begin + near); ++i) {
        const std::string_view word = heard(view, i);
        if (is_finite(word)) return true;
        if (is_relative(word) || is_conjunction(word) || is_parted_behind(view, i)) return false;
    }
    return false;
}

// Pronouns that are subject or object alike count only with a verb right behind.
bool opens_with_plain_pronoun(const ThoughtView& view, int index, int end) {
    constexpr std::array<std::string_view, 9> list = {"you",      "it",        "there",
                                                      "everyone", "everybody", "somebody",
                                                      "someone",  "nobody",    "everything"};
    if (!is_one_of(heard(view, index), list) || index + 1 >= end || is_parted_behind(view, index))
        return false;
    const std::string_view next = heard(view, index + 1);
    return is_finite(next) || (!next.empty() && !is_function_word(next));
}

// "Last fall, the volunteers and I agreed": a short stretch without a verb is one half of a
// subject.
bool is_second_subject(const ThoughtView& view, int first, int index) {
    if (is_parted_behind(view, index - 1)) return false;
    constexpr int longest = 4;
    for (int i = index - 1; i >= std::max(first, index - longest); --i) {
        if (i + 1 < index && is_parted_behind(view, i)) return true;
        const std::string_view word = heard(view, i);
        if (is_finite(word) || is_subject_and_verb(word) || is_nominative(word)) return false;
    }
    return false;
}

bool says_not_only(const ThoughtView& view, int first, int index) {
    for (int i = std::max(first, index - reach); i < index; ++i) {
        const std::string_view word = heard(view, i);
        if (word != "only" && word != "just" && word != "merely") continue;
        if (i > first && (heard(view, i - 1) == "not" || heard(view, i - 1).ends_with("n't")))
            return true;
        if (i > first + 1 && heard(view, i - 2) == "not") return true;
    }
    return false;
}

// A sentence begins with a clause of its own. But words behind "when" or "if" are a part of what
// follows, until a clause begins behind a comma: "if the tide is out and we walk" joins nothing
// yet.
bool holds_clause(const ThoughtView& view, int first, int end) {
    for (int i = end - 1; i >= std::max(first, end - reach); --i) {
        if (i > first && is_parted_behind(view, i - 1) && opens_clause(view, i, end)) return true;
        if (subordinates(view, i, end)) return false;
    }
    return true;
}

} // namespace

const Said& said_at(const ThoughtView& view, int index) {
    return view.reading.said[static_cast<std::size_t>(index)];
}

bool is_content(const ThoughtView& view, int index) {
    const Said& said = said_at(view, index);
    return !said.spoken.empty() && !is_function_word(said.spoken.back().text);
}

bool is_parted_behind(const ThoughtView& view, int index) {
    return said_at(view, index).after != Juncture::none;
}

std::string_view heard(const ThoughtView& view, int index) {
    if (index < 0 || index >= static_cast<int>(view.reading.said.size())) return {};
    const Said& said = view.reading.said[static_cast<std::size_t>(index)];
    if (said.spoken.size() != 1 || said.spoken.front().letters) return {};
    return said.spoken.front().text;
}

bool is_number(const ThoughtView& view, int index) {
    if (is_figure(view.word(index))) return true;
    constexpr std::array<std::string_view, 8> small = {"two", "three", "four",  "five",
                                                       "six", "seven", "eight", "nine"};
    const std::string_view word = heard(view, index);
    return is_one_of(word, small) || is_large_number(word) || is_multiple_of_number(word);
}

const Sentence* sentence_of(const ThoughtView& view, int index) {
    const auto& sentences = view.reading.sentences; // in order: a pasted book has thousands
    const auto found =
        std::partition_point(sentences.begin(), sentences.end(),
                             [&](const Sentence& each) { return each.last <= index; });
    return found != sentences.end() && found->first <= index ? &*found : nullptr;
}

bool opens_clause(const ThoughtView& view, int index, int end) {
    if (index + 1 >= end) return false;
    const std::string_view word = heard(view, index);
    // "and what's there" is a second object, not a second idea.
    if (is_subject_and_verb(word)) return !word.starts_with("wh");
    if (is_nominative(word)) return !is_parted_behind(view, index);
    if (opens_with_plain_pronoun(view, index, end)) return true;
    if (is_determiner(word)) return finds_verb(view, index + 1, end);
    return false;
}

bool subordinates(const ThoughtView& view, int index, int end) {
    const std::string_view word = heard(view, index);
    // "before the low tide" opens nothing, "before we walk" does.
    constexpr std::array<std::string_view, 5> prepositions = {"since", "after", "before", "until",
                                                              "once"};
    if (is_one_of(word, prepositions)) return opens_clause(view, index + 1, end);
    constexpr std::array<std::string_view, 9> list = {
        "if", "when", "while", "because", "although", "though", "unless", "whether", "whenever"};
    return is_one_of(word, list);
}

bool joins_ideas(const ThoughtView& view, int first, int index, int end) {
    const std::string_view word = heard(view, index);
    if (word != "and" && word != "but" && word != "so") return false;
    const int subject = index + 1;
    // "so that it was", "it was so the": only a comma makes it a join.
    const bool comma = index > first && is_parted_behind(view, index - 1);
    if (word == "so" && (!comma || heard(view, subject) == "that")) return false;
    if (word == "but" && says_not_only(view, first, index)) return false;
    if (is_second_subject(view, first, index)) return false;
    return opens_clause(view, subject, end) && holds_clause(view, first, index);
}

} // namespace say::rules
