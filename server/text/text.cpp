// Line starts are found once for each version: a scan at memory speed.
#include "text/text.h"

#include <algorithm>
#include <cstring>

namespace say {
namespace {

std::vector<std::uint32_t> find_line_starts(std::string_view bytes) {
    std::vector<std::uint32_t> starts{0};
    starts.reserve(bytes.size() / 60 + 1);
    // A lone CR is so rare that the fast path looks for LF alone.
    const bool has_cr = bytes.find('\r') != std::string_view::npos;
    if (!has_cr) {
        const char* const first = bytes.data();
        const char* at = first;
        const char* const last = first + bytes.size();
        while (at < last) {
            const void* hit = std::memchr(at, '\n', static_cast<std::size_t>(last - at));
            if (hit == nullptr) break;
            at = static_cast<const char*>(hit) + 1;
            starts.push_back(static_cast<std::uint32_t>(at - first));
        }
        return starts;
    }
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        if (bytes[i] == '\r' && i + 1 < bytes.size() && bytes[i + 1] == '\n') ++i;
        if (bytes[i] == '\n' || bytes[i] == '\r') {
            starts.push_back(static_cast<std::uint32_t>(i + 1));
        }
    }
    return starts;
}

} // namespace

Text::Text(std::string bytes) : bytes_(std::move(bytes)), line_starts_(find_line_starts(bytes_)) {}

Offset Text::line_start(std::uint32_t line) const {
    return line < line_count() ? Offset{line_starts_[line]} : end();
}

std::uint32_t Text::line_of(Offset at) const {
    const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), at.value);
    return static_cast<std::uint32_t>(after - line_starts_.begin()) - 1;
}

Span Text::line_span(std::uint32_t line) const {
    const Offset begin = line_start(line);
    Offset finish = line_start(line + 1);
    while (finish > begin &&
           (bytes_[finish.value - 1] == '\n' || bytes_[finish.value - 1] == '\r')) {
        --finish.value;
    }
    return {begin, finish};
}

} // namespace say
