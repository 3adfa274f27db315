// Figures to words, in US and UK English: "123" to "one hundred twenty three". Digits come as text,
// so that no number is too large. Every answer is lower case, words parted by one blank.
#pragma once

#include "speech/spoken.h"

#include <optional>
#include <string>
#include <string_view>

namespace say {

// "1234" to "one thousand two hundred thirty four"; UK "one thousand two hundred and thirty four".
// Numbers with more than 33 digits are said digit by digit.
std::string cardinal(std::string_view digits, Language language);
std::string cardinal(int number, Language language);

// "25" to "twenty fifth".
std::string ordinal(std::string_view digits, Language language);
// The same for words: "twenty five" to "twenty fifth".
std::string to_ordinal(const std::string& words);

// "2012" to "twenty twelve", "1905" to "nineteen oh five", "2005" to "two thousand five".
std::string year(int number, Language language);

// "1980" to "nineteen eighties", "80" to "eighties", "1900" to "nineteen hundreds".
std::string decade(int number, Language language);

// "404" to "four zero four".
std::string digit_by_digit(std::string_view digits, std::string_view zero = "zero");
// The same as telephone numbers are said in the UK: "5552288" to "triple five double two double
// eight".
std::string digits_doubled(std::string_view digits);
// "1211" to "twelve eleven", "320" to "three twenty", "405" to "four oh five": houses and models.
std::string in_pairs(std::string_view digits, Language language);

// "3.14" as whole "3" and fraction "14": "three point one four". An empty whole is left out.
std::string decimal(std::string_view whole, std::string_view fraction, Language language);

// 3/4 to "three quarters"; zero or an empty side gives "three over zero".
std::string fraction(std::string_view top, std::string_view bottom, Language language);

// "six" to "sixes", "hundred" to "hundreds": of the last word.
std::string to_plural(const std::string& words);

// "XIV" to 14; only well-formed numbers of capitals below 4000.
std::optional<int> roman(std::string_view letters);

// The digits as a number if there are at most nine of them.
std::optional<int> to_int(std::string_view digits);

} // namespace say
