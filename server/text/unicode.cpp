// ICU behind plain functions over UTF-8. ASCII, nearly all of a script, never reaches the library.
#include "text/unicode.h"

#include <unicode/brkiter.h>
#include <unicode/normalizer2.h>
#include <unicode/translit.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <unicode/utext.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <memory>
#include <mutex>

namespace say::unicode {
namespace {

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

char lower_ascii(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

icu::UnicodeString to_icu(std::string_view text) {
    return icu::UnicodeString::fromUTF8(
        icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
}

std::string from_icu(const icu::UnicodeString& text) {
    std::string result;
    text.toUTF8String(result);
    return result;
}

// What typewriters and word processors put in place of an apostrophe.
bool is_apostrophe(char32_t c) {
    return c == U'\u2019' || c == U'\u2018' || c == U'\u02BC' || c == U'\uFF07';
}

} // namespace

CodePoint decode(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    if (first < 0x80) return {first, 1};
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
    auto next = static_cast<std::int64_t>(at);
    const auto size = static_cast<std::int64_t>(text.size());
    UChar32 value = 0;
    U8_NEXT(bytes, next, size, value);
    if (value < 0) return {U'\uFFFD', 1};
    return {static_cast<char32_t>(value),
            static_cast<std::uint32_t>(next - static_cast<std::int64_t>(at))};
}

void append(std::string& text, char32_t code_point) {
    const auto c = static_cast<std::uint32_t>(code_point);
    if (c < 0x80) {
        text += static_cast<char>(c);
    } else if (c < 0x800) {
        text += static_cast<char>(0xC0U | (c >> 6U));
        text += static_cast<char>(0x80U | (c & 0x3FU));
    } else if (c < 0x10000) {
        text += static_cast<char>(0xE0U | (c >> 12U));
        text += static_cast<char>(0x80U | ((c >> 6U) & 0x3FU));
        text += static_cast<char>(0x80U | (c & 0x3FU));
    } else {
        text += static_cast<char>(0xF0U | (c >> 18U));
        text += static_cast<char>(0x80U | ((c >> 12U) & 0x3FU));
        text += static_cast<char>(0x80U | ((c >> 6U) & 0x3FU));
        text += static_cast<char>(0x80U | (c & 0x3FU));
    }
}

std::size_t first_invalid_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (static_cast<unsigned char>(text[at]) < 0x80) {
            ++at;
            continue;
        }
        const CodePoint c = decode(text, at);
        if (c.value == U'\uFFFD' && c.size == 1) return at;
        at += c.size;
    }
    return std::string_view::npos;
}

bool is_valid_utf8(std::string_view text) {
    return first_invalid_utf8(text) == std::string_view::npos;
}

bool is_letter(char32_t c) {
    if (c < 0x80) return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    const auto point = static_cast<UChar32>(c);
    return u_isUAlphabetic(point) != 0 || (U_GET_GC_MASK(point) & U_GC_M_MASK) != 0 ||
           (u_isdigit(point) != 0);
}

bool is_digit(char32_t c) {
    return c >= '0' && c <= '9';
}

bool is_blank(char32_t c) {
    if (c < 0x80) return c == ' ' || (c >= '\t' && c <= '\r');
    return u_isUWhiteSpace(static_cast<UChar32>(c)) != 0;
}

bool is_ignorable(char32_t c) {
    if (c < 0x80) return false;
    return u_hasBinaryProperty(static_cast<UChar32>(c), UCHAR_DEFAULT_IGNORABLE_CODE_POINT) != 0;
}

bool is_emoji(char32_t c) {
    if (c < 0x203C) return false;
    const auto point = static_cast<UChar32>(c);
    return u_hasBinaryProperty(point, UCHAR_EXTENDED_PICTOGRAPHIC) != 0 ||
           u_hasBinaryProperty(point, UCHAR_EMOJI_PRESENTATION) != 0 || c == 0x20E3;
}

bool is_upper(char32_t c) {
    if (c < 0x80) return c >= 'A' && c <= 'Z';
    return u_isUUppercase(static_cast<UChar32>(c)) != 0;
}

std::string fold(std::string_view word) {
    std::string result;
    result.reserve(word.size());
    if (is_ascii(word)) {
        for (char c : word)
            result += lower_ascii(c);
        return result;
    }
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* nfc = icu::Normalizer2::getNFCInstance(status);
    icu::UnicodeString text = to_icu(word);
    if (U_SUCCESS(status)) text = nfc->normalize(text, status);
    text.toLower();
    for (std::int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
        const auto c = static_cast<char32_t>(text.char32At(i));
        if (is_ignorable(c)) continue;
        append(result, is_apostrophe(c) ? U'\'' : c);
    }
    return result;
}

std::string to_lower(std::string_view text) {
    if (!is_ascii(text)) return from_icu(to_icu(text).toLower());
    std::string result(text);
    std::transform(result.begin(), result.end(), result.begin(), lower_ascii);
    return result;
}

std::string to_upper_first(std::string_view text) {
    if (text.empty()) return {};
    const std::uint32_t size = decode(text, 0).size;
    return from_icu(to_icu(text.substr(0, size)).toUpper()) + std::string(text.substr(size));
}

std::string to_ascii(std::string_view text) {
    if (is_ascii(text)) return std::string(text);
    // A transliterator is costly to make and not shareable: one a thread.
    thread_local std::unique_ptr<icu::Transliterator> ascii;
    if (!ascii) {
        UErrorCode status = U_ZERO_ERROR;
        ascii.reset(
            icu::Transliterator::createInstance("Any-Latin; Latin-ASCII", UTRANS_FORWARD, status));
        if (U_FAILURE(status)) ascii.reset();
    }
    icu::UnicodeString converted = to_icu(text);
    if (ascii) ascii->transliterate(converted);
    std::string result;
    for (char c : from_icu(converted)) {
        if (static_cast<unsigned char>(c) < 0x80) result += c;
    }
    return result;
}

std::size_t count_utf16(std::string_view text) {
    std::size_t units = 0;
    for (std::size_t at = 0; at < text.size();) {
        const CodePoint c = decode(text, at);
        units += c.value > 0xFFFF ? 2 : 1;
        at += c.size;
    }
    return units;
}

std::size_t count_code_points(std::string_view text) {
    std::size_t points = 0;
    for (std::size_t at = 0; at < text.size(); at += decode(text, at).size)
        ++points;
    return points;
}

std::vector<std::size_t> sentence_ends(std::string_view text) {
    if (text.empty()) return {};
    // A break iterator is costly to make and not shareable: one a thread.
    thread_local std::unique_ptr<icu::BreakIterator> breaks;
    UErrorCode status = U_ZERO_ERROR;
    if (!breaks) {
        breaks.reset(icu::BreakIterator::createSentenceInstance(icu::Locale::getEnglish(), status));
    }
    if (U_FAILURE(status) || !breaks) return {text.size()};

    UText* utext =
        utext_openUTF8(nullptr, text.data(), static_cast<std::int64_t>(text.size()), &status);
    breaks->setText(utext, status);
    std::vector<std::size_t> ends;
    if (U_SUCCESS(status)) {
        breaks->first();
        for (std::int32_t end = breaks->next(); end != icu::BreakIterator::DONE;
             end = breaks->next()) {
            ends.push_back(static_cast<std::size_t>(end));
        }
    }
    utext_close(utext);
    if (ends.empty() || ends.back() != text.size()) ends.push_back(text.size());
    return ends;
}

} // namespace say::unicode
