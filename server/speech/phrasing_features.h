// What a word's surroundings tell about its stress and about the place behind it, as rows of the
// phrasing model's table. The trainer and the program share this file: what one learns the other
// sees. Changing anything here means training again (docs/phrasing.md).
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

namespace say {

// The punctuation between two words as the model knows it.
enum class Stop : std::uint8_t { none, comma, strong, dots, full, question, exclamation };

struct PhrasingWord {
    std::string_view text; // as spoken, folded: "nine", "o'clock"
    std::uint8_t syllables = 1;
    bool capital = false; // its first letter
    Stop after = Stop::none;
};

inline constexpr int phrasing_row_bits = 17;
inline constexpr int phrasing_feature_count = 64;
using PhrasingRows = std::array<std::uint32_t, phrasing_feature_count>;

class PhrasingFeatures {
public:
    explicit PhrasingFeatures(std::span<const PhrasingWord> words);
    // The rows of the table that speak for word `index`; all below 2^phrasing_row_bits.
    void rows(std::size_t index, PhrasingRows& out) const;

private:
    struct Facts {
        std::uint32_t word = 0; // hashes
        std::uint32_t suffix2 = 0;
        std::uint32_t suffix3 = 0;
        std::uint32_t suffix4 = 0;
        std::uint32_t prefix3 = 0;
        std::uint8_t syllables = 0;
        std::uint8_t length = 0;
        bool function = false;
        bool opener = false;
        bool capital = false;
        bool given = false; // said earlier in this thought
        Stop after = Stop::none;
        std::uint8_t from_stop = 0;       // words since the last punctuation
        std::uint8_t to_stop = 0;         // words to the next
        std::uint8_t from_start = 0;      // words since the sentence's beginning
        std::uint8_t to_end = 0;          // words to its end
        std::uint8_t content_since = 0;   // content words since the last punctuation
        std::uint8_t content_to = 0;      // content words to the next, without this one
        std::uint8_t function_since = 0;  // words since the last content word
        std::uint8_t syllables_since = 0; // since the last punctuation
        std::uint8_t syllables_to = 0;
    };
    const Facts& at(std::ptrdiff_t index) const;

    std::vector<Facts> facts_;
};

} // namespace say
