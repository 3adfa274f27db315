// A plain rule, the floor for anything learnt: content words are leant on, long ones more; a pause
// follows punctuation, and half a pause stands before a word that opens a clause.
#include "speech/phrasing.h"

#include "text/unicode.h"

#include <algorithm>
#include <cstddef>
#include <string>

namespace say {
namespace {

// Sorted, to be searched by halves.
constexpr std::string_view unstressed_words[] = {
    "a",       "about",  "after",  "against", "although", "am",      "among",   "an",     "and",
    "are",     "around", "as",     "at",      "be",       "because", "been",    "before", "being",
    "between", "but",    "by",     "can",     "could",    "did",     "do",      "does",   "during",
    "for",     "from",   "had",    "has",     "have",     "he",      "her",     "here",   "hers",
    "him",     "his",    "how",    "i",       "if",       "in",      "into",    "is",     "it",
    "its",     "just",   "may",    "me",      "might",    "mine",    "must",    "my",     "no",
    "nor",     "not",    "of",     "on",      "onto",     "or",      "our",     "ours",   "over",
    "shall",   "she",    "should", "since",   "so",       "than",    "that",    "the",    "their",
    "theirs",  "them",   "then",   "there",   "these",    "they",    "this",    "those",  "though",
    "through", "to",     "too",    "under",   "unless",   "until",   "upon",    "us",     "very",
    "was",     "we",     "were",   "what",    "when",     "where",   "whether", "which",  "while",
    "who",     "whom",   "whose",  "why",     "will",     "with",    "without", "would",  "yet",
    "you",     "your",   "yours",
};

constexpr std::string_view clause_openers[] = {
    "although", "and",   "because", "but",   "if",      "or",    "since", "that", "though",
    "unless",   "until", "when",    "where", "whether", "which", "while", "who",
};

constexpr float content_word = 1.0F;
constexpr float long_word = 1.5F;    // expected labels: 0.5 some, 1.5 strong
constexpr std::size_t long_from = 7; // characters

constexpr float full_pause = 2.0F;
constexpr float clause_pause = 0.4F; // below "some": it ranks places, it does not claim a pause

bool is_unstressed(std::string_view folded) {
    return std::binary_search(std::begin(unstressed_words), std::end(unstressed_words), folded);
}

bool opens_clause(std::string_view folded) {
    return std::binary_search(std::begin(clause_openers), std::end(clause_openers), folded);
}

float stress_of(const PhrasingWord& word, std::string_view folded) {
    if (folded.empty() || is_unstressed(folded)) return 0;
    return unicode::count_code_points(word.text) >= long_from ? long_word : content_word;
}

} // namespace

std::vector<Phrasing> phrase(std::span<const PhrasingWord> words) {
    std::vector<Phrasing> phrasing(words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string folded = unicode::fold(words[i].text);
        phrasing[i].stress = stress_of(words[i], folded);
        if (words[i].after != Juncture::none) phrasing[i].boundary = full_pause;
        if (i > 0 && words[i - 1].after == Juncture::none && opens_clause(folded)) {
            phrasing[i - 1].boundary = clause_pause;
        }
    }
    return phrasing;
}

} // namespace say
