// The phrasing model's weights, compiled in (data/train_phrasing.cpp makes them, data/NOTICE names
// their source): four scales (float, little-endian), then four signed bytes a row.
#pragma once

#include "speech/phrasing.h"

#include <array>
#include <cstddef>
#include <cstdint>

namespace say {

inline constexpr std::size_t phrasing_outputs = 4;
using PhrasingWeights = std::array<std::int8_t, phrasing_outputs>;

struct PhrasingTable {
    std::array<float, phrasing_outputs> scales;
    std::array<PhrasingWeights, std::size_t{1} << phrasing_row_bits> rows;
};
static_assert(sizeof(PhrasingTable) == 16 + (std::size_t{4} << phrasing_row_bits));

// What the rows of a word add up to, as four chances; the trainer judges with the same.
PhrasingChances phrasing_chances(const PhrasingTable& table, const PhrasingRows& rows);

extern "C" const PhrasingTable say_phrasing_table;

} // namespace say
