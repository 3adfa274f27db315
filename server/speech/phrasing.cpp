// Four logistic outputs over hashed features. A word's score is a sum of whole numbers, so every
// machine gives the same.
#include "speech/phrasing.h"

#include "speech/phrasing_table.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace say {
namespace {

float chance(int sum, float scale) {
    return 1.0F / (1.0F + std::exp(-static_cast<float>(sum) * scale));
}

// The expected label, bent so that it crosses 0.5 where "some" becomes likelier than "none",
// and 1.5 where "strong" becomes likelier than "some".
float stress_label(float any, float strong) {
    const float expected = any + strong;
    if (any < 0.5F) return std::min(0.499F, any);
    if (strong <= any / 2) return std::clamp(expected, 0.5F, 1.499F);
    return 1.5F + 0.4F * std::clamp(expected - 0.75F, 0.0F, 1.25F);
}

// Pauses where nothing is written are rare, so the likelier label is nearly always "none". The
// scale crosses 0.5 and 1.5 where precision and recall balance best on held-out readers
// (docs/phrasing.md).
constexpr float some_pause = 0.31F;
constexpr float long_pause = 0.47F;

float pause_label(float any, float strong) {
    const float value = pause_value(any, strong);
    if (value < some_pause) return 0.5F * value / some_pause;
    if (value < long_pause) return 0.5F + (value - some_pause) / (long_pause - some_pause);
    return 1.5F + 0.5F * (value - long_pause) / (1.3F - long_pause);
}

} // namespace

PhrasingChances phrasing_chances(const PhrasingTable& table, const PhrasingRows& rows) {
    std::array<int, phrasing_outputs> sums{};
    for (const std::uint32_t row : rows) {
        for (std::size_t i = 0; i < phrasing_outputs; ++i)
            sums[i] += table.rows[row][i];
    }
    const auto& scales = table.scales;
    PhrasingChances chances{chance(sums[0], scales[0]), chance(sums[1], scales[1]),
                            chance(sums[2], scales[2]), chance(sums[3], scales[3])};
    chances.strongly_stressed = std::min(chances.stressed, chances.strongly_stressed);
    chances.strongly_paused = std::min(chances.paused, chances.strongly_paused);
    return chances;
}

std::vector<Phrasing> phrase(std::span<const PhrasingWord> words) {
    const PhrasingFeatures features(words);
    std::vector<Phrasing> phrasing;
    phrasing.reserve(words.size());
    PhrasingRows rows;
    for (std::size_t i = 0; i < words.size(); ++i) {
        features.rows(i, rows);
        const PhrasingChances chances = phrasing_chances(say_phrasing_table, rows);
        phrasing.push_back({stress_label(chances.stressed, chances.strongly_stressed),
                            pause_label(chances.paused, chances.strongly_paused), chances});
    }
    return phrasing;
}

} // namespace say
