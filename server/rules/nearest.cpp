// Edit distance over short names.
#include "rules/nearest.h"

#include "base/letters.h"

namespace say::rules {
std::string_view nearest(std::string_view written, std::span<const std::string_view> names) {
    constexpr std::size_t longest = 40; // beyond it nobody mistyped a key
    if (written.size() > longest) return {};
    std::string_view best;
    std::size_t best_distance = 3; // two slips at most, and fewer in a short name
    for (std::string_view name : names) {
        const std::size_t far = letters_apart(written, name);
        if (far < best_distance && far * 2 <= name.size()) {
            best = name;
            best_distance = far;
        }
    }
    return best;
}

} // namespace say::rules
