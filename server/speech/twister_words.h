// A content word as the twister score sees it: the sounds that begin its syllables, its stressed
// vowels, and how near it comes to the words before it.
#pragma once

#include "speech/phones.h"
#include "speech/twister.h"
#include "speech/twister_model.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace say::twister_model {

// Weights in whole numbers, so that logarithms of counts come from a table: a common word counts
// .4, a later stressed syllable .7 of its word.
inline constexpr int unit = 50; // 1.0
inline constexpr int common_unit = 20;
inline constexpr int later_percent = 70;

inline constexpr int most_slots = 12; // no word has more stressed syllables
inline constexpr std::size_t vowel_count = static_cast<std::size_t>(Sound::UW) + 1;
inline constexpr std::size_t no_vowel = vowel_count; // the place of a word without any ("shh")

constexpr std::size_t at(Sound sound) {
    return static_cast<std::size_t>(sound);
}

constexpr std::uint64_t bit(Sound sound) {
    return std::uint64_t{1} << at(sound);
}

template <typename... Sounds> constexpr std::uint64_t bits(Sounds... sounds) {
    return (bit(sounds) | ...);
}

struct Onset {
    Sound sound = Sound::B;
    int units = 0;
};

// A content word with all that windows ask of it.
struct Content {
    int index = 0; // in the input
    int units = 0;
    std::span<const Phone> phones;
    std::uint64_t stem = 0;
    int same_before = 0;    // so many content words ago the same stem was said; 0 for never
    bool has_onset = false; // whether the first syllable begins with a consonant: onsets[0]
    int onset_count = 0;    // different ones, of the syllables that count
    int vowel_slots = 0;    // syllables that count: the first and each stressed one
    std::array<Onset, most_slots> onsets;
    std::array<std::uint8_t, most_slots> vowels{};
    // With the words one, two and three before, distance weighed in.
    std::array<double, reach> near{};
    std::array<double, reach> confusable{};
};

bool begins_with(const Content& content, Sound sound); // one of its syllables that count
bool holds(const Content& content, Sound sound);

// The content words of a text, each compared with those before it. Their phones are views of the
// input.
std::vector<Content> measure(std::span<const TwisterWord> words);

} // namespace say::twister_model
