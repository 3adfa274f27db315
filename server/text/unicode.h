// The only door to ICU: code points, case, composition and sentence breaks.
#pragma once

#include "text/span.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace say::unicode {

// The code point at `at` and how many bytes it takes. An invalid byte is U+FFFD, one byte long.
struct CodePoint {
    char32_t value = 0;
    std::uint32_t size = 1;
};
CodePoint decode(std::string_view text, std::size_t at);
void append(std::string& text, char32_t code_point);

bool is_valid_utf8(std::string_view text);
std::size_t first_invalid_utf8(std::string_view text); // npos if there is none

bool is_letter(char32_t c);
bool is_digit(char32_t c);     // 0 to 9 only: other digits are letters to us
bool is_blank(char32_t c);     // any Unicode white space, no-break spaces too, and line ends
bool is_ignorable(char32_t c); // soft hyphen, zero-width space and joiners, variation selectors
bool is_emoji(char32_t c);
bool is_upper(char32_t c);

// Lower case, composed (NFC), typographic apostrophes made straight, ignorable characters dropped:
// the form in which words are looked up and compared.
std::string fold(std::string_view word);
std::string to_lower(std::string_view text);
std::string to_upper_first(std::string_view text);
// The closest ASCII spelling ("café" to "cafe"), for letter-to-sound rules that know no other
// letters.
std::string to_ascii(std::string_view text);

std::size_t count_utf16(std::string_view text);
std::size_t count_code_points(std::string_view text);

// Sentence breaks by Unicode's rules alone: where each sentence ends (byte offsets, the last is the
// size of the text). speech/sentences.h mends what they get wrong.
std::vector<std::size_t> sentence_ends(std::string_view text);

} // namespace say::unicode
