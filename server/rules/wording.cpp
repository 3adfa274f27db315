// Quoted text and counts for messages.
#include "rules/wording.h"

#include "text/ascii.h"

#include <fmt/core.h>

namespace say::rules {

std::string quoted(std::string_view text) {
    constexpr std::size_t longest = 60;
    std::string shown;
    for (char c : text)
        shown += ascii::is_blank(c) ? ' ' : c;
    if (shown.size() > longest) {
        std::size_t end = longest;
        // Never in the middle of a character.
        while (end > 0 && (static_cast<unsigned char>(shown[end]) & 0xC0U) == 0x80U)
            --end;
        shown.resize(end);
        shown += "…";
    }
    return fmt::format("“{}”", shown);
}

std::string counted(int count, std::string_view noun) {
    return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

} // namespace say::rules
