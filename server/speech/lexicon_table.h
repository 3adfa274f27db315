// The packed dictionary as it lies in the program's read-only pages; data/pack_cmudict.py tells its
// layout. Only speech/lexicon.cpp, speech/derive.cpp and tests look in here: ask `pronounce` for
// the sounds of a word.
#pragma once

#include "speech/phones.h"

#include <cstddef>
#include <functional>
#include <span>
#include <string_view>
#include <vector>

namespace say::table {

// The readings of a word as packed bytes; empty if the dictionary does not have it.
std::span<const unsigned char> find(std::string_view word);

// The first of them, and all of them.
Phones first_reading(std::span<const unsigned char> packed);
std::vector<Phones> all_readings(std::span<const unsigned char> packed);

using Visit = std::function<void(std::string_view word, const std::vector<Phones>& readings)>;
void each_word(const Visit& visit); // in the order of their bytes

std::size_t word_count();
std::size_t byte_count();

} // namespace say::table
