// Positions in a text: UTF-8 byte offsets. Lines and columns exist only in lsp/convert.cpp.
#pragma once

#include <compare>
#include <cstdint>
#include <string_view>

namespace say {

struct Offset {
    std::uint32_t value = 0;
    auto operator<=>(const Offset&) const = default;
};

constexpr Offset operator+(Offset offset, std::uint32_t bytes) {
    return Offset{offset.value + bytes};
}

// Half open, in bytes: [begin, end).
struct Span {
    Offset begin;
    Offset end;
    auto operator<=>(const Span&) const = default;

    constexpr std::uint32_t size() const { return end.value - begin.value; }
    constexpr bool empty() const { return begin == end; }
    constexpr bool contains(Offset at) const { return begin <= at && at < end; }
    // True for an offset at the end too: a cursor behind the last letter still means the word.
    constexpr bool touches(Offset at) const { return begin <= at && at <= end; }
    constexpr bool covers(Span other) const { return begin <= other.begin && other.end <= end; }
    constexpr bool overlaps(Span other) const { return begin < other.end && other.begin < end; }
};

constexpr Span make_span(std::size_t begin, std::size_t end) {
    return Span{Offset{static_cast<std::uint32_t>(begin)}, Offset{static_cast<std::uint32_t>(end)}};
}

constexpr Span operator+(Span span, std::uint32_t bytes) {
    return Span{span.begin + bytes, span.end + bytes};
}

// The bytes of `text` under `span`; what reaches beyond the text is cut off.
constexpr std::string_view slice(std::string_view text, Span span) {
    const auto size = static_cast<std::uint32_t>(text.size());
    const std::uint32_t begin = span.begin.value < size ? span.begin.value : size;
    const std::uint32_t end = span.end.value < size ? span.end.value : size;
    return begin < end ? text.substr(begin, end - begin) : std::string_view{};
}

} // namespace say
