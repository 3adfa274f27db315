// Character classes of ASCII without a locale: for scanning where most bytes are plain letters.
#pragma once

#include <string>
#include <string_view>

namespace say::ascii {

constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

constexpr bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}

constexpr bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}

constexpr bool is_letter(char c) {
    return is_lower(c) || is_upper(c);
}

constexpr bool is_alnum(char c) {
    return is_letter(c) || is_digit(c);
}

constexpr bool is_blank(char c) {
    return c == ' ' || (c >= '\t' && c <= '\r');
}

constexpr bool is_high(char c) {
    return static_cast<unsigned char>(c) >= 0x80;
}

constexpr char lower(char c) {
    return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

constexpr char upper(char c) {
    return is_lower(c) ? static_cast<char>(c - 'a' + 'A') : c;
}

inline std::string upper(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        c = upper(c);
    return result;
}

inline std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        c = lower(c);
    return result;
}

inline std::string_view trim_left(std::string_view text) {
    while (!text.empty() && is_blank(text.front()))
        text.remove_prefix(1);
    return text;
}

inline std::string_view trim_right(std::string_view text) {
    while (!text.empty() && is_blank(text.back()))
        text.remove_suffix(1);
    return text;
}

inline std::string_view trim(std::string_view text) {
    return trim_right(trim_left(text));
}

} // namespace say::ascii
