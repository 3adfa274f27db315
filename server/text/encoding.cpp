#include "text/encoding.h"

#include "text/unicode.h"

#include <unicode/ucnv.h>
#include <unicode/unistr.h>

#include <algorithm>

namespace say {
namespace {

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";
constexpr std::string_view little_mark = "\xFF\xFE";
constexpr std::string_view big_mark = "\xFE\xFF";

// Of every second byte, from `first` on, how many are zero.
double zero_share(std::string_view bytes, std::size_t first) {
    std::size_t zeros = 0;
    std::size_t all = 0;
    for (std::size_t at = first; at < bytes.size(); at += 2, ++all)
        zeros += bytes[at] == '\0' ? 1 : 0;
    return all == 0 ? 0 : static_cast<double>(zeros) / static_cast<double>(all);
}

std::string convert(std::string_view bytes, const char* converter) {
    const icu::UnicodeString text(bytes.data(), static_cast<std::int32_t>(bytes.size()), converter);
    std::string result;
    text.toUTF8String(result);
    return result;
}

} // namespace

std::string_view name_of(Encoding encoding) {
    switch (encoding) {
    case Encoding::utf8: return "UTF-8";
    case Encoding::utf16_le:
    case Encoding::utf16_be: return "UTF-16";
    case Encoding::windows_1252: return "Windows-1252";
    }
    return {};
}

Encoding guess_encoding(std::string_view bytes) {
    if (bytes.starts_with(utf8_mark)) return Encoding::utf8;
    if (bytes.starts_with(little_mark)) return Encoding::utf16_le;
    if (bytes.starts_with(big_mark)) return Encoding::utf16_be;
    const std::string_view head = bytes.substr(0, 4096);
    constexpr double most = 0.5; // of the high bytes of Latin text nearly all are zero
    const double even = zero_share(head, 0);
    const double odd = zero_share(head, 1);
    if (odd > most && even < most / 2) return Encoding::utf16_le;
    if (even > most && odd < most / 2) return Encoding::utf16_be;
    return unicode::is_valid_utf8(bytes) ? Encoding::utf8 : Encoding::windows_1252;
}

std::string to_utf8(std::string_view bytes, Encoding encoding) {
    switch (encoding) {
    case Encoding::utf8:
        if (bytes.starts_with(utf8_mark)) bytes.remove_prefix(utf8_mark.size());
        return std::string(bytes);
    case Encoding::utf16_le:
        if (bytes.starts_with(little_mark)) bytes.remove_prefix(little_mark.size());
        return convert(bytes, "UTF-16LE");
    case Encoding::utf16_be:
        if (bytes.starts_with(big_mark)) bytes.remove_prefix(big_mark.size());
        return convert(bytes, "UTF-16BE");
    case Encoding::windows_1252: return convert(bytes, "windows-1252");
    }
    return {};
}

} // namespace say
