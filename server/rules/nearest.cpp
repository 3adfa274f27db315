// Edit distance over short names.
#include "rules/nearest.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace say::rules {
namespace {

std::size_t distance(std::string_view one, std::string_view other) {
    std::vector<std::size_t> row(other.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < one.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < other.size(); ++j) {
            const std::size_t change = diagonal + (one[i] == other[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({row[j] + 1, diagonal + 1, change});
        }
    }
    return row.back();
}

} // namespace

std::string_view nearest(std::string_view written, std::span<const std::string_view> names) {
    constexpr std::size_t longest = 40; // beyond it nobody mistyped a key
    if (written.size() > longest) return {};
    std::string_view best;
    std::size_t best_distance = 3; // two slips at most, and fewer in a short name
    for (std::string_view name : names) {
        const std::size_t far = distance(written, name);
        if (far < best_distance && far * 2 <= name.size()) {
            best = name;
            best_distance = far;
        }
    }
    return best;
}

} // namespace say::rules
