// From blocks to thoughts in a row with their times; only analysis.cpp asks for it.
#pragma once

#include "engine/analysis.h"

#include <functional>
#include <optional>
#include <span>

namespace say {

// A voice as it reads this script, and what thoughts in it depend on beside their text.
struct VoiceInForce {
    Voice voice;
    std::uint64_t print = 0;
};

// What the script has in common with an older version of it, in the same voices.
struct Past {
    const Script* script = nullptr; // null: nothing
    std::size_t before = 0;         // so many of its first blocks
    std::size_t after = 0;          // and of its last
};

using MakeThought = std::function<std::shared_ptr<Thought>(const Block&, const Voice&)>;

std::uint64_t thought_key(std::string_view text, const Block& block, std::uint64_t print);

// So many thoughts at the beginning and at the end of the row that stood in the older version.
struct Again {
    std::size_t before = 0;
    std::size_t after = 0;
};

// Fills in the script, of which header, blocks and voices are known. `voices`: the reader's own,
// then one for each speaker of the header. Null only if `cancel` tripped: what is finished stays
// in the memo.
std::optional<Again> assemble(std::string_view text, const Options& options,
                              std::span<const VoiceInForce> voices, const Past& past,
                              Script& script, Memo& memo, const MakeThought& make,
                              const Cancel& cancel);

} // namespace say
