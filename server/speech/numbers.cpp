// Figures to words. Groups of three digits, as English says them.
#include "speech/numbers.h"

#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <string>

namespace say {
namespace {

constexpr std::array<std::string_view, 20> small_numbers = {
    "zero",     "one",     "two",     "three",     "four",     "five",    "six",
    "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",  "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"};

constexpr std::array<std::string_view, 10> tens = {"",      "",      "twenty",  "thirty", "forty",
                                                   "fifty", "sixty", "seventy", "eighty", "ninety"};

constexpr std::array<std::string_view, 11> magnitudes = {
    "",           "thousand",   "million",   "billion",  "trillion", "quadrillion", "quintillion",
    "sextillion", "septillion", "octillion", "nonillion"};

void add(std::string& words, std::string_view word) {
    if (word.empty()) return;
    if (!words.empty()) words += ' ';
    words += word;
}

std::string below_hundred(int number) {
    const auto n = static_cast<std::size_t>(number);
    if (n < 20) return std::string(small_numbers[n]);
    std::string words(tens[n / 10]);
    if (n % 10 != 0) add(words, small_numbers[n % 10]);
    return words;
}

std::string below_thousand(int number, Language language) {
    if (number < 100) return below_hundred(number);
    std::string words(small_numbers[static_cast<std::size_t>(number / 100)]);
    add(words, "hundred");
    if (number % 100 == 0) return words;
    if (language == Language::en_gb) add(words, "and");
    add(words, below_hundred(number % 100));
    return words;
}

int value_of(std::string_view digits) {
    int value = 0;
    for (const char c : digits)
        value = value * 10 + (c - '0');
    return value;
}

std::string_view without_leading_zeros(std::string_view digits) {
    const std::size_t first = digits.find_first_not_of('0');
    return first == std::string_view::npos ? digits.substr(0, 0) : digits.substr(first);
}

// Splits "twenty five" into what precedes the last word and the last word.
std::pair<std::string, std::string> split_last(const std::string& words) {
    const std::size_t blank = words.rfind(' ');
    if (blank == std::string::npos) return {"", words};
    return {words.substr(0, blank + 1), words.substr(blank + 1)};
}

} // namespace

std::string cardinal(std::string_view digits, Language language) {
    const std::string_view number = without_leading_zeros(digits);
    if (number.empty()) return "zero";
    if (number.size() > 3 * magnitudes.size()) return digit_by_digit(digits);
    std::string words;
    std::size_t at = 0;
    for (std::size_t group = (number.size() + 2) / 3; group-- > 0;) {
        const std::size_t end = number.size() - group * 3;
        const int value = value_of(number.substr(at, end - at));
        at = end;
        if (value == 0) continue;
        // "one thousand and five"
        if (group == 0 && value < 100 && !words.empty() && language == Language::en_gb)
            add(words, "and");
        add(words, below_thousand(value, language));
        add(words, magnitudes[group]);
    }
    return words;
}

std::string cardinal(int number, Language language) {
    return cardinal(std::to_string(number), language);
}

std::string to_ordinal(const std::string& words) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 7> irregular = {{
        {"one", "first"},
        {"two", "second"},
        {"three", "third"},
        {"five", "fifth"},
        {"eight", "eighth"},
        {"nine", "ninth"},
        {"twelve", "twelfth"},
    }};
    auto [before, last] = split_last(words);
    for (const auto& [from, to] : irregular) {
        if (last == from) return before + std::string(to);
    }
    if (last.ends_with('y')) {
        last.back() = 'i';
        return before + last + "eth";
    }
    return before + last + "th";
}

std::string ordinal(std::string_view digits, Language language) {
    return to_ordinal(cardinal(digits, language));
}

std::string to_plural(const std::string& words) {
    auto [before, last] = split_last(words);
    if (last.ends_with('y') && last.size() > 1 &&
        std::string_view("aeiou").find(last[last.size() - 2]) == std::string_view::npos) {
        last.pop_back();
        return before + last + "ies";
    }
    const bool hisses =
        last.ends_with('x') || last.ends_with('s') || last.ends_with("ch") || last.ends_with("sh");
    return before + last + (hisses ? "es" : "s");
}

std::string year(int number, Language language) {
    const int high = number / 100;
    const int low = number % 100;
    if (number < 1000 || number > 9999 || number % 1000 == 0) return cardinal(number, language);
    if (low == 0 && high % 10 != 0) return below_hundred(high) + " hundred";
    if (number % 1000 < 10) return cardinal(number, language);
    if (low < 10) return below_hundred(high) + " oh " + below_hundred(low);
    return below_hundred(high) + ' ' + below_hundred(low);
}

std::string decade(int number, Language language) {
    if (number < 100) return to_plural(below_hundred(number));
    return to_plural(year(number, language));
}

std::string digit_by_digit(std::string_view digits, std::string_view zero) {
    std::string words;
    for (const char c : digits) {
        if (!ascii::is_digit(c)) continue;
        add(words, c == '0' ? zero : small_numbers[static_cast<std::size_t>(c - '0')]);
    }
    return words;
}

std::string digits_doubled(std::string_view digits) {
    std::string words;
    for (std::size_t at = 0; at < digits.size();) {
        std::size_t run = 1;
        while (at + run < digits.size() && digits[at + run] == digits[at])
            ++run;
        run = run == 2 || run == 4 ? 2 : std::min<std::size_t>(run, 3); // four are two doubles
        if (run == 2) add(words, "double");
        if (run == 3) add(words, "triple");
        add(words, digit_by_digit(digits.substr(at, 1), "oh"));
        at += run;
    }
    return words;
}

std::string in_pairs(std::string_view digits, Language language) {
    if (digits.size() < 3 || digits.size() > 4) {
        return digits.size() < 3 && !digits.starts_with('0') ? cardinal(digits, language)
                                                             : digit_by_digit(digits);
    }
    if (digits[0] == '0') return digit_by_digit(digits);
    const int number = value_of(digits);
    if (number % 1000 == 0 || (digits.size() == 3 && number % 100 == 0))
        return cardinal(number, language);
    const int low = number % 100;
    std::string words = below_hundred(number / 100);
    if (low == 0) return words + " hundred";
    if (low < 10) add(words, "oh");
    add(words, below_hundred(low));
    return words;
}

std::string decimal(std::string_view whole, std::string_view fraction, Language language) {
    std::string words;
    const bool nought = language == Language::en_gb && without_leading_zeros(whole).empty();
    if (!whole.empty()) words = nought ? "nought" : cardinal(whole, language);
    if (fraction.empty()) return words;
    add(words, "point");
    add(words, digit_by_digit(fraction, language == Language::en_gb ? "nought" : "zero"));
    return words;
}

std::string fraction(std::string_view top, std::string_view bottom, Language language) {
    const std::string upper = cardinal(top, language);
    const std::string_view lower = without_leading_zeros(bottom);
    if (lower.empty() || lower == "1") return upper + " over " + cardinal(bottom, language);
    std::string part = ordinal(lower, language);
    if (lower == "2") part = "half";
    if (lower == "4") part = "quarter";
    // "one thousandth", not "one one thousandth".
    const bool round = lower[0] == '1' && lower.size() > 2 &&
                       lower.find_first_not_of('0', 1) == std::string_view::npos;
    if (round && part.starts_with("one ")) part.erase(0, std::string_view("one ").size());
    if (without_leading_zeros(top) == "1") return upper + ' ' + part;
    return upper + ' ' + (part == "half" ? "halves" : to_plural(part));
}

std::optional<int> roman(std::string_view letters) {
    constexpr std::array<std::pair<std::string_view, int>, 13> parts = {{
        {"M", 1000},
        {"CM", 900},
        {"D", 500},
        {"CD", 400},
        {"C", 100},
        {"XC", 90},
        {"L", 50},
        {"XL", 40},
        {"X", 10},
        {"IX", 9},
        {"V", 5},
        {"IV", 4},
        {"I", 1},
    }};
    int value = 0;
    std::string_view rest = letters;
    for (const auto& [sign, worth] : parts) {
        const int most = sign.size() == 2 || sign == "V" || sign == "L" || sign == "D" ? 1 : 3;
        for (int times = 0; times < most && rest.starts_with(sign); ++times) {
            value += worth;
            rest.remove_prefix(sign.size());
        }
    }
    if (value == 0 || !rest.empty()) return std::nullopt;
    return value;
}

std::optional<int> to_int(std::string_view digits) {
    if (digits.empty() || digits.size() > 9) return std::nullopt;
    if (!std::all_of(digits.begin(), digits.end(), ascii::is_digit)) return std::nullopt;
    return value_of(digits);
}

} // namespace say
