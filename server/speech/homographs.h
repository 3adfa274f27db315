// Words of one spelling and two sounds ("lead", "read", "record"): which is meant is chosen from
// the words around. docs/pronunciation.md says how, and how often that is right.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace say {

struct HomographReading {
    std::string_view gloss;    // "the metal"
    std::string_view arpabet;  // "L EH1 D"
    std::string_view evidence; // what speaks for it; the notation stands in homographs.cpp
};

struct Homograph {
    std::string_view word; // folded
    std::array<HomographReading, 2> readings;
    int verb = -1;     // which of the two is the verb, if the other is none
    int usual = 0;     // which is said where nothing decides
    bool asks = false; // both are common: where nothing decides, the writer is asked
};

std::span<const Homograph> homographs();                  // by word
const Homograph* find_homograph(std::string_view folded); // null for any other word

// A word of the thought as the choice sees it.
struct NearWord {
    std::string_view folded;
    bool capital = false; // its first letter alone
    bool opens = false;   // first of a sentence
    bool stops = false;   // punctuation stands behind it
};

struct HomographChoice {
    int reading = 0;
    bool decided = false; // false: nothing near speaks for either clearly enough
};

// `index` is the place of the homograph among the words of its thought.
HomographChoice choose(const Homograph& homograph, std::span<const NearWord> words,
                       std::size_t index);

} // namespace say
