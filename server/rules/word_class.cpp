// Small closed lists: what is in none of them is called nothing.
#include "rules/word_class.h"

#include "text/ascii.h"

#include <array>

namespace say::rules {

// Pronouns that can only be a subject.
bool is_nominative(std::string_view word) {
    constexpr std::array<std::string_view, 5> list = {"i", "he", "she", "we", "they"};
    return is_one_of(word, list);
}

// "it's", "we'll", "that's": subject and verb in one.
bool is_subject_and_verb(std::string_view word) {
    const std::size_t apostrophe = word.find('\'');
    if (apostrophe == std::string_view::npos) return false;
    constexpr std::array<std::string_view, 12> subjects = {
        "i", "he", "she", "we", "they", "you", "it", "that", "there", "here", "who", "what"};
    constexpr std::array<std::string_view, 6> verbs = {"s", "m", "re", "ve", "ll", "d"};
    return is_one_of(word.substr(0, apostrophe), subjects) &&
           is_one_of(word.substr(apostrophe + 1), verbs);
}

bool is_finite(std::string_view word) {
    if (word.ends_with("n't")) return true;
    constexpr std::array<std::string_view, 21> list = {
        "is",  "are",  "was",   "were",  "am",     "has",   "have", "had", "does",  "did",   "do",
        "can", "will", "could", "would", "should", "might", "must", "may", "shall", "cannot"};
    return is_one_of(word, list);
}

bool is_determiner(std::string_view word) {
    constexpr std::array<std::string_view, 23> list = {
        "the",  "a",     "an",   "my",    "your",  "his",   "her",    "its",
        "our",  "their", "this", "that",  "these", "those", "some",   "many",
        "most", "all",   "each", "every", "no",    "one",   "another"};
    return is_one_of(word, list);
}

// Words that turn what follows into a part of what stands before.
bool is_relative(std::string_view word) {
    constexpr std::array<std::string_view, 11> list = {
        "who", "which", "that", "whose", "whom", "where", "when", "if", "to", "because", "than"};
    return is_one_of(word, list);
}

bool is_preposition(std::string_view word) {
    constexpr std::array<std::string_view, 33> list = {
        "inside",  "outside", "across", "above", "below",   "near",  "behind",  "around",  "among",
        "beyond",  "within",  "in",     "on",    "at",      "for",   "with",    "from",    "by",
        "after",   "before",  "into",   "about", "over",    "under", "through", "between", "during",
        "without", "until",   "to",     "as",    "against", "along"};
    return is_one_of(word, list);
}

bool is_conjunction(std::string_view word) {
    constexpr std::array<std::string_view, 18> list = {
        "and",   "but", "so",       "or",     "because", "which",  "who",   "when",    "where",
        "while", "if",  "although", "though", "since",   "unless", "until", "whether", "then"};
    return is_one_of(word, list);
}

bool is_figure(std::string_view word) {
    return std::any_of(word.begin(), word.end(), ascii::is_digit);
}

bool is_large_number(std::string_view word) {
    constexpr std::array<std::string_view, 11> list = {"ten",     "eleven", "twelve", "twenty",
                                                       "thirty",  "forty",  "fifty",  "sixty",
                                                       "seventy", "eighty", "ninety"};
    return word.ends_with("teen") || is_one_of(word, list);
}

bool is_multiple_of_number(std::string_view word) {
    return word == "hundred" || word == "thousand" || word == "million";
}

} // namespace say::rules
