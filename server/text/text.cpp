// Line starts are found once for each version: a scan at memory speed.
#include "text/text.h"

#include <algorithm>
#include <cstring>

namespace say {
namespace {

// Where lines begin behind line ends in [first, last); the byte behind tells a CR from a CRLF.
void add_line_starts(std::string_view bytes, std::size_t first, std::size_t last,
                     std::vector<std::uint32_t>& starts) {
    for (std::size_t i = first; i < last; ++i) {
        if (bytes[i] != '\n' && bytes[i] != '\r') continue;
        if (bytes[i] == '\r' && i + 1 < bytes.size() && bytes[i + 1] == '\n') continue;
        starts.push_back(static_cast<std::uint32_t>(i + 1));
    }
}

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
    add_line_starts(bytes, 0, bytes.size(), starts);
    return starts;
}

} // namespace

Text::Text(std::string bytes) : bytes_(std::move(bytes)), line_starts_(find_line_starts(bytes_)) {}

void Text::replace(Span span, std::string_view replacement) {
    const std::size_t begin = std::min<std::size_t>(span.begin.value, bytes_.size());
    const std::size_t end =
        std::min<std::size_t>(std::max(span.begin, span.end).value, bytes_.size());
    // Line ends next to the span may change too: a CR before it and an LF behind it make one.
    const std::size_t from = begin == 0 ? 0 : begin - 1;
    bytes_.replace(begin, end - begin, replacement);
    const std::size_t new_end = begin + replacement.size();
    std::vector<std::uint32_t> fresh;
    add_line_starts(bytes_, from, std::min(new_end + 1, bytes_.size()), fresh);

    // Starts behind [from, end] stay, moved; a start is one behind its line end.
    const auto first = std::upper_bound(line_starts_.begin() + 1, line_starts_.end(),
                                        static_cast<std::uint32_t>(from));
    const auto last =
        std::upper_bound(first, line_starts_.end(), static_cast<std::uint32_t>(end) + 1);
    const auto by = static_cast<std::uint32_t>(new_end - end); // modulo 2^32
    for (auto start = last; start != line_starts_.end(); ++start)
        *start += by;
    const auto kept = std::min(last - first, static_cast<std::ptrdiff_t>(fresh.size()));
    std::copy(fresh.begin(), fresh.begin() + kept, first);
    if (first + kept == last) {
        line_starts_.insert(last, fresh.begin() + kept, fresh.end());
    } else {
        line_starts_.erase(first + kept, last);
    }
}

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

Change joined(Change first, Change second, std::uint32_t size) {
    // What is behind both stays behind both, counted from the end.
    const std::uint32_t middle = size - second.shift();
    const std::uint32_t tail = std::min(middle - first.new_end, size - second.new_end);
    const std::uint32_t begin = std::min(first.begin, second.begin);
    return {begin, middle - first.shift() - tail, size - tail};
}

Change difference(std::string_view before, std::string_view after) {
    constexpr std::size_t stride = 1024; // compared at memory speed; then byte by byte
    const std::size_t most = std::min(before.size(), after.size());
    std::size_t head = 0;
    while (head + stride <= most &&
           std::memcmp(before.data() + head, after.data() + head, stride) == 0)
        head += stride;
    while (head < most && before[head] == after[head])
        ++head;
    const std::size_t rest = most - head;
    const auto alike = [&](std::size_t tail, std::size_t size) {
        return std::memcmp(before.data() + before.size() - tail - size,
                           after.data() + after.size() - tail - size, size) == 0;
    };
    std::size_t tail = 0;
    while (tail + stride <= rest && alike(tail, stride))
        tail += stride;
    while (tail < rest && alike(tail, 1))
        ++tail;
    return {static_cast<std::uint32_t>(head), static_cast<std::uint32_t>(before.size() - tail),
            static_cast<std::uint32_t>(after.size() - tail)};
}

} // namespace say
