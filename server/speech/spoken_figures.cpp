// Bare figures: cardinals, ordinals, decimals, versions, sums, fractions and ranges without a unit.
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

bool is_ordinal_suffix(std::string_view suffix) {
    const std::string folded = ascii::lower(suffix);
    return folded == "st" || folded == "nd" || folded == "rd" || folded == "th" || folded == "ᵗʰ";
}

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), ascii::is_digit);
}

// "2.0.1", and "10.4" behind "version": points between numbers.
bool say_version(Passage& passage, std::size_t i, std::string_view token) {
    std::string_view rest = token;
    std::string words;
    if (rest[0] == 'v' && rest.size() > 1 && ascii::is_digit(rest[1])) {
        words = "version";
        rest.remove_prefix(1);
    } else if (std::count(rest.begin(), rest.end(), '.') < 2) {
        return false;
    }
    while (true) {
        const std::size_t dot = rest.find('.');
        const std::string_view part = rest.substr(0, dot);
        if (!all_digits(part)) return false;
        const bool spelt = part.size() > 3 || (part.size() > 1 && part[0] == '0');
        append_words(words, spelt ? digit_by_digit(part) : cardinal(part, passage.language()));
        if (dot == std::string_view::npos) break;
        append_words(words, "point");
        rest.remove_prefix(dot + 1);
    }
    passage.say(i, words);
    return true;
}

std::string_view operator_words(std::string_view text, std::size_t at, bool sum,
                                std::size_t& size) {
    struct Operator {
        std::string_view sign;
        std::string_view words;
        bool only_in_sums;
    };
    static constexpr auto operators = std::to_array<Operator>({
        {"+", "plus", false},
        {"=", "equals", false},
        {"-", "minus", true},
        {"*", "times", true},
        {"/", "divided by", true},
        {"×", "times", false},
        {"÷", "divided by", false},
        {"^", "to the power of", false},
        {"±", "plus or minus", false},
        {"<=", "is at most", false},
        {">=", "is at least", false},
        {"<", "is less than", false},
        {">", "is greater than", false},
        {"≤", "is at most", false},
        {"≥", "is at least", false},
        {"≠", "is not equal to", false},
        {"≈", "is about", false},
    });
    for (const Operator& candidate : operators) {
        if (text.substr(at).starts_with(candidate.sign) && (sum || !candidate.only_in_sums)) {
            size = candidate.sign.size();
            return candidate.words;
        }
    }
    return {};
}

std::string term_words(std::string_view term, Language language) {
    if (term.size() == 1 && ascii::is_letter(term[0])) return '.' + ascii::lower(term);
    const std::optional<Figure> figure = read_figure(term);
    if (!figure || !figure->currency.empty()) return {};
    std::string words = number_words(*figure, language);
    if (figure->suffix.empty()) return words;
    if (figure->suffix.size() == 1 && ascii::is_letter(figure->suffix[0]))
        return words + " ." + ascii::lower(figure->suffix);
    const std::string unit = unit_words(figure->suffix, Number::plural, language);
    return unit.empty() ? unit : words + ' ' + unit;
}

// "1-2=5", "2+2", "x=5", "3×4": terms with operators between. A hyphen, slash or star is one only
// where another sign shows that this is a sum.
bool say_sum(Passage& passage, std::size_t i, std::string_view token) {
    bool sum = false;
    std::size_t size = 0;
    for (std::size_t at = 1; at < token.size(); ++at)
        sum |= !operator_words(token, at, false, size).empty();
    if (!sum) return false;
    std::string words;
    std::size_t begin = 0;
    for (std::size_t at = 1; at <= token.size(); ++at) {
        const std::string_view sign =
            at < token.size() ? operator_words(token, at, true, size) : std::string_view{};
        if (at < token.size() && (sign.empty() || at == begin)) continue;
        const std::string term = term_words(token.substr(begin, at - begin), passage.language());
        if (term.empty()) return false;
        append_words(words, term);
        append_words(words, sign);
        begin = at + size;
        at = begin;
        if (sign.empty()) break;
    }
    for (const auto& [power, name] : {std::pair{"two", "squared"}, std::pair{"three", "cubed"}}) {
        const std::string ending = std::string("to the power of ") + power;
        if (words.ends_with(ending))
            words.replace(words.size() - ending.size(), ending.size(), name);
    }
    passage.say(i, words);
    return true;
}

// "1st", "1,000th", "20ths"
bool say_ordinal(Passage& passage, std::size_t i, const Figure& figure) {
    if (!figure.fraction.empty() || !figure.currency.empty() || figure.whole.empty()) return false;
    std::string suffix = figure.suffix;
    const bool possessive = suffix.ends_with("'s");
    if (possessive) suffix.resize(suffix.size() - 2);
    if (!is_ordinal_suffix(suffix)) return false;
    std::string words = figure.sign;
    append_words(words, ordinal(figure.whole, passage.language()));
    passage.say(i, possessive ? words + "'s" : words);
    return true;
}

// What may stand behind a bare figure: "50+", "747s", "2012's", "10k", "5M".
bool say_suffixed(Passage& passage, std::size_t i, const Figure& figure) {
    const Language language = passage.language();
    const std::string words = number_words(figure, language);
    if (figure.suffix == "+") {
        passage.say(i, words + " plus");
    } else if (figure.suffix == "s") {
        passage.say(i, figure.whole.size() == 3 ? to_plural(in_pairs(figure.whole, language))
                                                : to_plural(words));
    } else if (figure.suffix == "'s") {
        const std::optional<int> number =
            figure.whole.size() == 4 ? to_int(figure.whole) : std::nullopt;
        passage.say(i,
                    (number && *number > 1099 && *number < 2100 ? year(*number, language) : words) +
                        "'s");
    } else if (figure.suffix == "k" || figure.suffix == "K") {
        passage.say(i, words + " .k");
    } else if (figure.suffix == "M" || figure.suffix == "bn" || figure.suffix == "B" ||
               figure.suffix == "mn") {
        passage.say(i, words + ' ' + std::string(magnitude_of_suffix(figure.suffix)));
    } else {
        return false;
    }
    return true;
}

// "2x4", "4x100": by.
bool say_by(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t x = token.find_first_of("xX");
    if (x == std::string_view::npos || x == 0) return false;
    const std::optional<Figure> left = read_figure(token.substr(0, x));
    const std::optional<Figure> right = read_figure(token.substr(x + 1));
    if (!left || !right || !left->is_bare() || !right->currency.empty()) return false;
    const Language language = passage.language();
    std::string words = number_words(*left, language) + " by ";
    if (right->suffix.empty()) {
        words += number_words(*right, language);
    } else {
        const std::string unit = unit_words(right->suffix, Number::plural, language);
        if (unit.empty()) return false;
        words += number_words(*right, language) + ' ' + unit;
    }
    passage.say(i, words);
    return true;
}

struct Slashed {
    std::string top;
    std::string bottom;
};

// "3/4", "1/4th", "12639/12640"
std::optional<Slashed> read_slashed(std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos || slash == 0) return std::nullopt;
    const std::string_view top = token.substr(0, slash);
    std::string_view bottom = token.substr(slash + 1);
    if (bottom.size() > 3 && bottom.ends_with('s')) bottom.remove_suffix(1); // "2/3rds"
    if (bottom.size() > 2 && is_ordinal_suffix(bottom.substr(bottom.size() - 2)))
        bottom.remove_suffix(2);
    if (!all_digits(top) || !all_digits(bottom)) return std::nullopt;
    return Slashed{std::string(top), std::string(bottom)};
}

// Said without "over" or parts: "24/7", "9/11", "50/50".
bool is_fixed_pair(const Slashed& pair, std::string_view token) {
    return pair.top == pair.bottom || token == "24/7" || token == "9/11" || token == "7/7";
}

// "2 1/2": the whole before it has been said, so an "and" is due.
bool is_mixed_number(const Passage& passage, std::size_t i) {
    return passage.follows(i) && all_digits(passage.text(i - 1));
}

bool is_usual_fraction(const Slashed& pair) {
    const int top = to_int(pair.top).value_or(1000);
    const int bottom = to_int(pair.bottom).value_or(1000);
    return top < bottom && (bottom <= 6 || bottom == 8 || bottom == 10 || bottom == 16 ||
                            bottom == 32 || bottom > 31);
}

// Could the writer mean a day and a month? Only then is the reading open.
bool could_be_date(const Slashed& pair) {
    const int top = to_int(pair.top).value_or(99);
    const int bottom = to_int(pair.bottom).value_or(99);
    if (top == 0 || bottom == 0) return false;
    return (top <= 12 && bottom <= 31) || (bottom <= 12 && top <= 31);
}

} // namespace

bool say_fraction(Passage& passage, std::size_t i) {
    std::string token = passage.text(i);
    const bool inches = token.ends_with('"');
    if (inches) token.pop_back();
    const std::optional<Slashed> pair = read_slashed(token);
    if (!pair) return false;
    const Language language = passage.language();
    if (inches) {
        passage.say(i, fraction(pair->top, pair->bottom, language) + " inch");
        return true;
    }
    if (is_fixed_pair(*pair, token)) {
        passage.say(i, cardinal(pair->top, language) + ' ' + cardinal(pair->bottom, language));
        return true;
    }
    const std::string words = fraction(pair->top, pair->bottom, language);
    if (is_mixed_number(passage, i)) {
        const bool one = pair->top == "1";
        const std::string part = one ? words.substr(words.find(' ') + 1) : words;
        const bool vowel = part.starts_with("eigh") || part.starts_with("eleven");
        passage.say(i, one ? (vowel ? "and an " : "and a ") + part : "and " + part);
        say_unit_behind(passage, i, Number::plural);
        return true;
    }
    const bool unit = say_unit_behind(passage, i, Number::singular);
    const bool of = passage.joined(i) && passage.folded(i + 1) == "of";
    const bool settled = unit || of || is_usual_fraction(*pair) || !could_be_date(*pair);
    if (settled) {
        passage.say(i, words);
    } else {
        passage.say(i, words,
                    {cardinal(pair->top, language) + ' ' + cardinal(pair->bottom, language)});
    }
    return true;
}

bool say_range(Passage& passage, std::size_t i) {
    const std::optional<FigureRange> range = read_range(passage.text(i));
    if (!range || !range->from.is_bare() || !range->to.currency.empty() || !range->to.sign.empty())
        return false;
    const Language language = passage.language();
    const std::string from = number_words(range->from, language);
    if (is_ordinal_suffix(range->to.suffix) && range->to.fraction.empty()) {
        passage.say(i, ordinal(range->from.whole, language) + " to " +
                           ordinal(range->to.whole, language));
        return true;
    }
    if (!range->to.suffix.empty()) return false;
    passage.say(i, from + " to " + number_words(range->to, language));
    return true;
}

bool say_figure(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (token.starts_with('#') && token.size() > 1 && all_digits(token.substr(1))) {
        passage.say(i, "number " + cardinal(token.substr(1), passage.language()));
        return true;
    }
    const std::optional<Figure> figure = read_figure(token);
    if (figure && (say_ordinal(passage, i, *figure) || say_suffixed(passage, i, *figure)))
        return true;
    if (figure && figure->currency.empty() && figure->suffix.empty()) {
        passage.say(i, number_words(*figure, passage.language()));
        return true;
    }
    if (figure && figure->currency.empty()) {
        const FractionSign* sign = fraction_sign_at(figure->suffix);
        if (sign && sign->sign == figure->suffix) {
            passage.say(i, number_words(*figure, passage.language()));
            return true;
        }
    }
    return say_version(passage, i, token) || say_by(passage, i, token) ||
           say_sum(passage, i, token);
}

} // namespace say
