// What money, measures and ranges share: a figure with its sign, currency and suffix, and the names
// of units and magnitudes.
#pragma once

#include "speech/passage.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace say {

// "-$1,234.50m" is sign "minus", currency "$", whole "1234", fraction "50", suffix "m".
struct Figure {
    std::string sign; // in words
    std::string currency;
    std::string whole; // digits alone
    std::string fraction;
    std::string suffix;
    bool grouped = false; // had commas

    bool is_one() const { return whole == "1" && fraction.empty(); }
    bool is_bare() const { return sign.empty() && currency.empty() && suffix.empty(); }
};

// Nothing if `token` does not begin with a number.
std::optional<Figure> read_figure(std::string_view token);

// The number with its sign, without currency and suffix.
std::string number_words(const Figure& figure, Language language);

// "5-8": two figures with a hyphen between; the last carries what belongs to both.
struct FigureRange {
    Figure from;
    Figure to;
};
std::optional<FigureRange> read_range(std::string_view token);

// "k" or "bn" behind a figure, "million" as a word; empty if it is none.
std::string_view magnitude_of_suffix(std::string_view suffix);
std::string_view magnitude_of_word(std::string_view word);

enum class Number { singular, plural };

// "kg" to "kilograms", "km/h" to "kilometers per hour", "m2" to "square meters"; empty if unknown.
std::string unit_words(std::string_view unit, Number number, Language language);

// The same for factors without a blank: "kg·m⁻³", "ms⁻²". Empty if it is no product.
std::string unit_product_words(std::string_view unit, Number number, Language language);

// Says word i + 1 as a unit if it is one and belongs to the figure at i.
bool say_unit_behind(Passage& passage, std::size_t i, Number number);

// "a $5 bill", "the 5 kg bag": between a determiner and a noun a unit stays singular.
bool is_attributive(const Passage& passage, std::size_t first, std::size_t last);

// The same without a determiner, for a glued unit that tells things apart: "35mm film".
bool tells_apart(const Passage& passage, std::size_t i, std::string_view unit);

// "volunteers" behind a figure is counted; "always" is not.
bool is_lower_plural(std::string_view word);
// "5m people" are millions.
bool is_counted_in_millions(std::string_view word);
// 1080 and its kin, the lines of a picture: "1080p".
bool is_line_count(std::string_view digits);

struct Currency {
    std::string_view sign;
    std::string_view one;
    std::string_view many;
    std::string_view minor_one; // empty: has none in speech
    std::string_view minor_many;
};
const Currency* currency_of(std::string_view sign);

// A vulgar fraction ("½") at the beginning of the text, as words behind a number ("a half") or
// alone.
struct FractionSign {
    std::string_view sign;
    std::string_view behind;
    std::string_view alone;
};
const FractionSign* fraction_sign_at(std::string_view text);

} // namespace say
