// Constant tables and the look-ups over them.
#include "speech/twister_model.h"

#include <algorithm>
#include <cstdint>

namespace say::twister_model {
namespace {

// In the order of Sound: the vowels, which never begin a cluster and count as share 1, then
// B CH D DH F G HH JH K L M N NG P R S SH T TH V W Y Z ZH.
constexpr double none = 1.0;

struct Pair {
    Sound one;
    Sound other;
    double value;
};

constexpr Pair pairs[] = {
    {Sound::P, Sound::T, 0.45},  {Sound::B, Sound::P, 0.67},   {Sound::B, Sound::D, 0.45},
    {Sound::B, Sound::G, 0.4},   {Sound::B, Sound::M, 0.33},   {Sound::B, Sound::W, 0.33},
    {Sound::D, Sound::T, 0.67},  {Sound::D, Sound::G, 0.45},   {Sound::D, Sound::JH, 0.33},
    {Sound::D, Sound::Z, 0.33},  {Sound::D, Sound::N, 0.33},   {Sound::D, Sound::L, 0.33},
    {Sound::K, Sound::P, 0.4},   {Sound::K, Sound::T, 0.45},   {Sound::G, Sound::K, 0.67},
    {Sound::G, Sound::NG, 0.33}, {Sound::CH, Sound::T, 0.5},   {Sound::CH, Sound::JH, 0.67},
    {Sound::CH, Sound::S, 0.5},  {Sound::CH, Sound::SH, 0.75}, {Sound::CH, Sound::ZH, 0.33},
    {Sound::JH, Sound::Z, 0.33}, {Sound::JH, Sound::SH, 0.33}, {Sound::JH, Sound::ZH, 0.67},
    {Sound::JH, Sound::R, 0.33}, {Sound::F, Sound::V, 0.67},   {Sound::F, Sound::TH, 0.8},
    {Sound::F, Sound::S, 0.33},  {Sound::F, Sound::SH, 0.33},  {Sound::V, Sound::Z, 0.33},
    {Sound::V, Sound::ZH, 0.33}, {Sound::TH, Sound::V, 0.33},  {Sound::TH, Sound::Z, 0.33},
    {Sound::DH, Sound::F, 0.33}, {Sound::DH, Sound::V, 0.67},  {Sound::DH, Sound::TH, 0.67},
    {Sound::DH, Sound::S, 0.33}, {Sound::DH, Sound::Z, 0.67},  {Sound::DH, Sound::ZH, 0.33},
    {Sound::S, Sound::T, 0.33},  {Sound::S, Sound::TH, 0.8},   {Sound::S, Sound::Z, 0.67},
    {Sound::S, Sound::SH, 0.9},  {Sound::S, Sound::ZH, 0.33},  {Sound::Z, Sound::ZH, 0.67},
    {Sound::SH, Sound::TH, 0.5}, {Sound::SH, Sound::Z, 0.33},  {Sound::SH, Sound::ZH, 0.67},
    {Sound::M, Sound::N, 0.6},   {Sound::M, Sound::NG, 0.33},  {Sound::M, Sound::W, 0.33},
    {Sound::N, Sound::Z, 0.33},  {Sound::N, Sound::NG, 0.33},  {Sound::L, Sound::Z, 0.33},
    {Sound::L, Sound::N, 0.33},  {Sound::L, Sound::R, 0.8},    {Sound::L, Sound::W, 0.5},
    {Sound::L, Sound::Y, 0.4},   {Sound::R, Sound::ZH, 0.33},  {Sound::R, Sound::W, 0.7},
    {Sound::R, Sound::Y, 0.33},  {Sound::W, Sound::Y, 0.33},
};

constexpr std::array<std::array<double, sound_count>, sound_count> similarities = [] {
    std::array<std::array<double, sound_count>, sound_count> table{};
    for (std::size_t i = 0; i < table.size(); ++i)
        table[i][i] = 1.0;
    for (const Pair& pair : pairs) {
        table[static_cast<std::size_t>(pair.one)][static_cast<std::size_t>(pair.other)] =
            pair.value;
        table[static_cast<std::size_t>(pair.other)][static_cast<std::size_t>(pair.one)] =
            pair.value;
    }
    return table;
}();

constexpr std::string_view grammar_words[] = {
    "a",
    "about",
    "am",
    "an",
    "and",
    "are",
    "aren't",
    "as",
    "at",
    "be",
    "been",
    "being",
    "but",
    "by",
    "did",
    "didn't",
    "do",
    "does",
    "doesn't",
    "don't",
    "for",
    "from",
    "had",
    "has",
    "have",
    "he",
    "he's",
    "her",
    "him",
    "his",
    "i",
    "i'd",
    "i'll",
    "i'm",
    "i've",
    "if",
    "in",
    "into",
    "is",
    "isn't",
    "it",
    "it's",
    "its",
    "just",
    "me",
    "my",
    "no",
    "nor",
    "not",
    "of",
    "off",
    "oh",
    "on",
    "onto",
    "or",
    "our",
    "out",
    "over",
    "shall",
    "she",
    "she's",
    "so",
    "than",
    "that",
    "that's",
    "the",
    "their",
    "them",
    "then",
    "there",
    "there's",
    "these",
    "they",
    "they'll",
    "they're",
    "this",
    "those",
    "to",
    "up",
    "us",
    "was",
    "wasn't",
    "we",
    "we'll",
    "we're",
    "we've",
    "were",
    "weren't",
    "will",
    "with",
    "won't",
    "you",
    "you'll",
    "you're",
    "you've",
    "your",
    // Sounds of hesitation, in talk that was written down.
    "er",
    "erm",
    "hm",
    "hmm",
    "mm",
    "uh",
    "um",
};

constexpr std::string_view common_words[] = {
    "able",      "after",     "again",   "against",  "ago",      "all",        "already",
    "also",      "always",    "another", "any",      "anything", "around",     "ask",
    "away",      "back",      "because", "before",   "believe",  "best",       "better",
    "between",   "big",       "both",    "business", "call",     "called",     "came",
    "can",       "can't",     "cannot",  "care",     "chance",   "change",     "child",
    "children",  "come",      "could",   "couldn't", "course",   "cut",        "day",
    "days",      "different", "doing",   "done",     "down",     "during",     "each",
    "end",       "enough",    "even",    "ever",     "every",    "everything", "fact",
    "family",    "far",       "few",     "find",     "first",    "five",       "found",
    "four",      "free",      "friends", "full",     "get",      "getting",    "give",
    "go",        "going",     "good",    "got",      "great",    "half",       "hard",
    "heard",     "help",      "here",    "high",     "history",  "home",       "hope",
    "house",     "how",       "keep",    "kind",     "know",     "last",       "less",
    "let",       "let's",     "life",    "like",     "little",   "live",       "living",
    "long",      "look",      "lot",     "love",     "made",     "make",       "making",
    "man",       "many",      "matter",  "may",      "mean",     "means",      "men",
    "might",     "money",     "months",  "more",     "most",     "mother",     "much",
    "must",      "need",      "never",   "new",      "next",     "nothing",    "now",
    "okay",      "old",       "once",    "one",      "only",     "order",      "other",
    "own",       "part",      "pay",     "people",   "person",   "place",      "point",
    "problem",   "put",       "real",    "really",   "right",    "said",       "same",
    "saw",       "say",       "school",  "second",   "see",      "seems",      "seen",
    "should",    "shouldn't", "side",    "since",    "six",      "small",      "some",
    "something", "sometimes", "stand",   "started",  "still",    "such",       "sure",
    "system",    "take",      "tell",    "ten",      "thing",    "things",     "think",
    "third",     "three",     "through", "time",     "today",    "together",   "too",
    "took",      "true",      "two",     "under",    "until",    "upon",       "use",
    "used",      "very",      "want",    "water",    "way",      "well",       "went",
    "what",      "what's",    "when",    "where",    "which",    "while",      "who",
    "who's",     "whole",     "why",     "without",  "work",     "working",    "world",
    "would",     "wouldn't",  "yeah",    "year",     "years",    "yes",        "yet",
    "young",
};

constexpr std::size_t slots = 2048; // a power of two, some six times the words

constexpr std::size_t slot_of(std::string_view word) {
    std::uint32_t hash = 2166136261U;
    for (const char c : word)
        hash = (hash ^ static_cast<unsigned char>(c)) * 16777619U;
    return (hash ^ hash >> 15U) & (slots - 1);
}

struct Entry {
    std::string_view word;
    Weight weight = Weight::full;
};

constexpr std::array<Entry, slots> lookup = [] {
    std::array<Entry, slots> table{};
    const auto add = [&table](std::string_view word, Weight weight) {
        std::size_t slot = slot_of(word);
        while (!table[slot].word.empty())
            slot = (slot + 1) & (slots - 1);
        table[slot] = {word, weight};
    };
    for (const std::string_view word : grammar_words)
        add(word, Weight::none);
    for (const std::string_view word : common_words)
        add(word, Weight::common);
    return table;
}();

constexpr std::size_t longest_word =
    10; // "everything", "government": no longer one is in the lists

} // namespace

const std::array<double, sound_count> onset_share = {
    none,    none,     none,     none,    none,    none,    none,     none,     none,      none,
    none,    none,     none,     none,    none,    0.04224, 0.008846, 0.04032,  0.003113,  0.05011,
    0.04081, 0.03673,  0.008789, 0.07464, 0.04939, 0.06464, 0.04045,  0.001,    0.06737,   0.03717,
    0.1063,  0.009966, 0.05486,  0.01691, 0.01566, 0.063,   0.01598,  0.006606, 0.0002278,
};

const std::array<double, sound_count> consonant_share = {
    none,    none,    none,   none,    none,    none,    none,     none,    none,      none,
    none,    none,    none,   none,    none,    0.02811, 0.008233, 0.07294, 0.04952,   0.02849,
    0.01604, 0.025,   0.0091, 0.0494,  0.06485, 0.04772, 0.1186,   0.01737, 0.03365,   0.07547,
    0.07868, 0.01403, 0.1203, 0.00859, 0.0351,  0.03751, 0.01493,  0.04541, 0.0009117,
};

const std::array<double, sound_count> vowel_share = {
    0.06213, 0.07409, 0.126,    0.06135, 0.02162, 0.06052, 0.1472, 0.0376, 0.07511, 0.1458,
    0.06781, 0.0489,  0.005695, 0.02407, 0.04207, none,    none,   none,   none,    none,
    none,    none,    none,     none,    none,    none,    none,   none,   none,    none,
    none,    none,    none,     none,    none,    none,    none,   none,   none,
};

double similarity(Sound one, Sound other) {
    return similarities[static_cast<std::size_t>(one)][static_cast<std::size_t>(other)];
}

Weight weight_of(std::string_view word) {
    if (word.size() > longest_word) return Weight::full;
    for (std::size_t slot = slot_of(word); !lookup[slot].word.empty();
         slot = (slot + 1) & (slots - 1)) {
        if (lookup[slot].word == word) return lookup[slot].weight;
    }
    return Weight::full;
}

} // namespace say::twister_model
