// Bare figures: cardinals, ordinals, decimals, versions, sums, fractions and ranges without a unit.
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace say {
namespace {

bool is_ordinal_suffix(std::string_view suffix) {
    const std::string folded = ascii::lower(suffix);
    return folded == "st" || folded == "nd" || folded == "rd" || folded == "th" || folded == "ˢᵗ" ||
           folded == "ⁿᵈ" || folded == "ʳᵈ" || folded == "ᵗʰ";
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
        {"+/-", "plus or minus", false},
        {"+", "plus", false},
        {"=", "equals", false},
        {"-", "minus", true},
        {"*", "times", true},
        {"/", "divided by", true},
        {"×", "times", false},
        {"÷", "divided by", false},
        {"^", "to the power of", false},
        {"±", "plus or minus", false},
        {"<=", "is less than or equal to", false},
        {">=", "is greater than or equal to", false},
        {"<", "is less than", false},
        {">", "is greater than", false},
        {"≤", "is less than or equal to", false},
        {"≥", "is greater than or equal to", false},
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
    const bool plural = suffix.size() == 3 && suffix.back() == 's'; // "20ths"
    if (plural) suffix.pop_back();
    if (!is_ordinal_suffix(suffix)) return false;
    std::string words = figure.sign;
    append_words(words, ordinal(figure.whole, passage.language()));
    if (plural) words = to_plural(words);
    passage.say(i, possessive ? words + "'s" : words);
    return true;
}

// "e3", "e-5", "E+6" behind a figure.
std::string power_of_ten(std::string_view suffix, Language language) {
    const bool small = suffix.starts_with('e');
    if (!small && !suffix.starts_with('E')) return {};
    suffix.remove_prefix(1);
    const bool minus = suffix.starts_with('-');
    const bool sign = minus || suffix.starts_with('+');
    if (sign) suffix.remove_prefix(1);
    if (!all_digits(suffix) || suffix.size() > 3 || (!small && !sign)) return {};
    return std::string("times ten to the power of ") + (minus ? "minus " : "") +
           cardinal(suffix, language);
}

// "50K people" are thousands; "10k runners" run ten kilometers and "4K screens" have so many dots.
bool is_counted_in_thousands(const Figure& figure, const std::string& noun) {
    static constexpr auto sizes = std::to_array<std::string_view>({"2", "4", "5", "6", "8", "10"});
    const bool size = figure.fraction.empty() && is_one_of(figure.whole, sizes);
    if (size && noun != "years" && noun != "steps" && noun != "words")
        return is_counted_in_millions(noun);
    static constexpr auto of_length_or_dots = std::to_array<std::string_view>({
        "cameras",
        "courses",
        "displays",
        "events",
        "images",
        "monitors",
        "projectors",
        "races",
        "runners",
        "runs",
        "screens",
        "streams",
        "times",
        "videos",
        "walks",
    });
    return is_counted_in_millions(noun) ||
           (is_lower_plural(noun) && !is_one_of(noun, of_length_or_dots));
}

// What may stand behind a bare figure: "50+", "747s", "2012's", "10k", "5M".
bool say_suffixed(Passage& passage, std::size_t i, const Figure& figure) {
    const Language language = passage.language();
    const std::string words = number_words(figure, language);
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    if (!figure.currency.empty()) return false;
    if (figure.suffix == "B" && !is_lower_plural(next) && next != "people")
        return false; // "Room 12B"
    if (figure.suffix == "+") {
        passage.say(i, words + " plus");
    } else if (const std::string power = power_of_ten(figure.suffix, language); !power.empty()) {
        passage.say(i, words + ' ' + power);
    } else if ((figure.suffix == "p" || figure.suffix == "i") && is_line_count(figure.whole)) {
        passage.say(i, in_pairs(figure.whole, language) + " ." + figure.suffix);
    } else if (figure.suffix == "s" && words.starts_with("one ") &&
               (next == "of" || figure.whole == "100" || figure.whole == "1000")) {
        passage.say(i, to_plural(words.substr(4)));
    } else if (figure.suffix == "er" || figure.suffix == "ers") {
        passage.say(i, words + figure.suffix.substr(words.ends_with('e') ? 1 : 0)); // "49ers"
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
        passage.say(i, words + (is_counted_in_thousands(figure, next) ? " thousand" : " .k"));
    } else if (figure.suffix == "k+" || figure.suffix == "K+") {
        passage.say(i, words +
                           (is_counted_in_thousands(figure, next) ? " thousand plus" : " .k plus"));
    } else if (figure.suffix == "M+" || figure.suffix == "bn+" || figure.suffix == "m+") {
        const std::string_view suffix =
            std::string_view(figure.suffix).substr(0, figure.suffix.size() - 1);
        passage.say(i, words + ' ' + std::string(magnitude_of_suffix(suffix)) + " plus");
    } else if (figure.suffix == "M" || figure.suffix == "bn" || figure.suffix == "B" ||
               figure.suffix == "mn") {
        passage.say(i, words + ' ' + std::string(magnitude_of_suffix(figure.suffix)));
    } else {
        return false;
    }
    return true;
}

// A side of something measured both ways: "8.5\"", "4m", "100".
std::string side_words(const Figure& side, Language language, Number number = Number::plural) {
    std::string words = number_words(side, language);
    if (side.suffix.empty()) return words;
    if (side.suffix == "s") return to_plural(words); // "2x4s"
    const bool one = number == Number::singular;
    std::string unit = unit_words(side.suffix, number, language);
    if (side.suffix == "\"") unit = one ? "inch" : "inches";
    if (side.suffix == "'") unit = one ? "foot" : "feet";
    return unit.empty() ? unit : words + ' ' + unit;
}

// "10×20×30 cm": three sides.
bool say_three_sides(Passage& passage, std::size_t i, std::string_view token) {
    std::string words;
    std::size_t sides = 0;
    const Language language = passage.language();
    std::optional<Figure> side;
    while (!token.empty()) {
        const std::size_t x = std::min(token.find_first_of("xX"), token.find("×"));
        side = read_figure(token.substr(0, x));
        if (!side || !side->currency.empty()) return false;
        const std::string one = side_words(*side, language);
        if (one.empty() || side->suffix == "s") return false;
        append_words(words, sides > 0 ? "by" : "");
        append_words(words, one);
        ++sides;
        if (x == std::string_view::npos) break;
        token.remove_prefix(x + (ascii::is_letter(token[x]) ? 1 : std::string_view("×").size()));
    }
    if (sides < 3) return false;
    if (side->suffix.empty()) say_unit_behind(passage, i, Number::plural);
    passage.say(i, words);
    return true;
}

// "454×454" are dots, unless a sum goes on: "120×120 is ...".
bool is_picture_size(const Passage& passage, std::size_t i, const Figure& wide,
                     const Figure& high) {
    static constexpr auto sums = std::to_array<std::string_view>({"equals", "is", "makes"});
    const auto has_dots = [](const Figure& side) {
        return side.is_bare() && side.fraction.empty() && side.whole.size() >= 3 &&
               side.whole.size() <= 4 && all_digits(side.whole);
    };
    return has_dots(wide) && has_dots(high) &&
           !(passage.joined(i) && is_one_of(passage.folded(i + 1), sums));
}

// "2x4", "4x100", "12\"×12\"": by; "×" between bare figures is "times".
bool say_by(Passage& passage, std::size_t i, std::string_view token) {
    if (say_three_sides(passage, i, token)) return true;
    std::size_t x = token.find_first_of("xX");
    std::size_t size = 1;
    if (x == std::string_view::npos) {
        x = token.find("×");
        size = std::string_view("×").size();
    }
    if (x == std::string_view::npos || x == 0) return false;
    const std::optional<Figure> left = read_figure(token.substr(0, x));
    const std::optional<Figure> right = read_figure(token.substr(x + size));
    if (!left || !right || !left->currency.empty() || !right->currency.empty()) return false;
    const Language language = passage.language();
    const std::string from = side_words(*left, language);
    const Number number = is_attributive(passage, i, i) ? Number::singular : Number::plural;
    const std::string to = side_words(*right, language, number);
    if (from.empty() || to.empty()) return false;
    // The dots of a picture: "nineteen twenty by ten eighty".
    const std::string sign(token.substr(x, size));
    const bool dots = size == 1 || is_picture_size(passage, i, *left, *right);
    if (dots && left->whole.size() == 4 && left->whole + sign + right->whole == token &&
        (right->whole.size() == 3 || right->whole.size() == 4)) {
        passage.say(i, in_pairs(left->whole, language) + " by " + in_pairs(right->whole, language));
        return true;
    }
    const bool measured = !right->suffix.empty() || say_unit_behind(passage, i, Number::plural);
    if (!dots && !measured) return false;
    passage.say(i, from + " by " + to);
    return true;
}

// "Rm. 214", "Hwy. 101": the stop belongs to the word.
bool is_numbered_word(const Passage& passage, std::size_t i) {
    static constexpr auto named = std::to_array<std::string_view>({
        "airbus",  "apartment", "apt",        "boeing", "bus",   "extension", "flight", "form",
        "highway", "hwy",       "interstate", "locker", "model", "porsche",   "psalm",  "rm",
        "room",    "route",     "rte",        "sonnet", "suite", "train",
    });
    static constexpr auto shortened =
        std::to_array<std::string_view>({"apt", "hwy", "rm", "rt", "rte", "ste"});
    const std::string before = passage.folded(i - 1);
    if (passage.joined_by_stop(i - 1)) return is_one_of(before, shortened);
    return is_one_of(before, named) || passage.raw(i - 1) == "Box";
}

bool is_followed_by_noun(const Passage& passage, std::size_t i) {
    return passage.joined(i) && !is_function_word(passage.folded(i + 1));
}

// "did a 180", "flew a 747"; "a 250 word text" counts.
bool is_named_by_article(const Passage& passage, std::size_t i, std::string_view token) {
    const std::string before = passage.folded(i - 1);
    if (before != "a" && before != "an") return false;
    static constexpr auto turns = std::to_array<std::string_view>(
        {"camera", "image", "photo", "spin", "tour", "turn", "video", "view"});
    if ((token == "180" || token == "360") && passage.joined(i) &&
        is_one_of(passage.folded(i + 1), turns))
        return true;
    return token.size() == 3 && token.substr(1) != "00" && !is_followed_by_noun(passage, i);
}

// "Tides 101": the first course in it.
bool is_first_course(const Passage& passage, std::size_t i, std::string_view token) {
    const std::string before = passage.folded(i - 1);
    const bool adverb = before.ends_with("ly") || before == "just" || before == "almost";
    return token == "101" && ascii::is_upper(passage.raw(i - 1)[0]) && !adverb &&
           !is_function_word(before) && !is_followed_by_noun(passage, i) &&
           passage.folded(i + 1) != "of";
}

// "BIO 204": courses are numbered.
constexpr auto subjects = std::to_array<std::string_view>({
    "art",
    "bio",
    "chem",
    "econ",
    "eng",
    "engl",
    "geo",
    "hist",
    "law",
    "math",
    "med",
    "phil",
    "phys",
    "poli",
    "psy",
    "sci",
    "soc",
    "stat",
});

bool is_course(const Passage& passage, std::size_t i, std::string_view token) {
    const std::string_view before = passage.raw(i - 1);
    return token.size() == 3 && passage.joined(i - 1) && before.size() > 2 &&
           std::all_of(before.begin(), before.end(), ascii::is_upper) &&
           is_one_of(passage.folded(i - 1), subjects);
}

// Figures that name rather than count: "Room 101", "Flight 370", "RFC 2119".
bool is_name_of_figure(const Passage& passage, std::size_t i, std::string_view token) {
    if (i == 0 || !passage.adjacent(i - 1) || token.size() < 3 || token.size() > 4 ||
        !all_digits(token))
        return false;
    if (is_course(passage, i, token)) return true;
    if (passage.joined(i) && is_lower_plural(passage.text(i + 1))) return false;
    if (is_numbered_word(passage, i)) return true;
    if (!passage.joined(i - 1)) return false;
    if (is_named_by_article(passage, i, token) || is_first_course(passage, i, token)) return true;
    const std::string_view before = passage.raw(i - 1);
    return before.size() >= 2 && before.size() <= 4 && !passage.shouts() &&
           std::all_of(before.begin(), before.end(), ascii::is_upper) &&
           capitals_kind(before) == Capitals::letters && token.substr(1) != "00";
}

// "Rooms 101-105": each end is a name.
bool is_range_of_names(const Passage& passage, std::size_t i, const FigureRange& range) {
    static constexpr auto named = std::to_array<std::string_view>(
        {"apartments", "flights", "lockers", "rooms", "routes", "suites"});
    const auto is_name = [](const Figure& figure) {
        return figure.fraction.empty() && (figure.whole.size() == 3 || figure.whole.size() == 4);
    };
    return passage.follows(i) && is_one_of(passage.folded(i - 1), named) && is_name(range.from) &&
           is_name(range.to);
}

// "1,500" is "fifteen hundred" to many US readers, "0" is "zero" to many in the UK.
std::vector<std::string> other_number(const Figure& figure, Language language) {
    if (!figure.sign.empty() || !figure.fraction.empty()) return {};
    if (language == Language::en_gb)
        return figure.whole == "0" ? std::vector<std::string>{"zero"} : std::vector<std::string>{};
    const int number = figure.whole.size() == 4 ? to_int(figure.whole).value_or(0) : 0;
    if (number < 1100 || number % 100 != 0 || number % 1000 == 0) return {};
    return {year(number, language)};
}

// A four-digit number of a name keeps "thousand" where pairs would leave an "oh" behind it.
std::string name_of_figure(std::string_view token, Language language) {
    return token.size() == 4 && token.substr(1, 2) == "00" ? cardinal(token, language)
                                                           : in_pairs(token, language);
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
    const bool plural = bottom.size() > 3 || (bottom.size() == 2 && top != "1");
    if (plural && bottom.ends_with('s')) bottom.remove_suffix(1); // "2/3rds", "3/4s"
    if (bottom.size() > 2 && is_ordinal_suffix(bottom.substr(bottom.size() - 2)))
        bottom.remove_suffix(2);
    if (!all_digits(top) || !all_digits(bottom)) return std::nullopt;
    return Slashed{std::string(top), std::string(bottom)};
}

// Said without "over" or parts: "24/7", "9/11", "50/50", "an 80/20 split", "3/4 time".
bool is_fixed_pair(const Passage& passage, std::size_t i, const Slashed& pair,
                   std::string_view token) {
    const int top = to_int(pair.top).value_or(0);
    const int bottom = to_int(pair.bottom).value_or(0);
    const bool shares = top + bottom == 100 && top % 5 == 0 && top > 0 && bottom > 0;
    const bool time = passage.joined(i) && passage.folded(i + 1) == "time";
    return pair.top == pair.bottom || shares || time || token == "24/7" || token == "9/11" ||
           token == "7/7";
}

// "a half" and "three quarters" behind a whole number, with their "and".
std::string behind_whole(const Slashed& pair, Language language) {
    const std::string words = fraction(pair.top, pair.bottom, language);
    if (pair.top != "1") return "and " + words;
    const std::string part = words.substr(words.find(' ') + 1);
    const bool vowel = part.starts_with("eigh") || part.starts_with("eleven");
    return (vowel ? "and an " : "and a ") + part;
}

// "120/80": what a blood pressure looks like.
bool is_pressure(const Slashed& pair) {
    const int top = to_int(pair.top).value_or(0);
    const int bottom = to_int(pair.bottom).value_or(0);
    return pair.top.size() <= 3 && top >= 80 && top <= 220 && bottom >= 40 && bottom < top &&
           bottom <= 130;
}

// "20/30", "6/10": nobody leaves a part so, but a count of many is; "6/8" is also a bar of music.
bool is_unreduced(const Slashed& pair) {
    const int top = to_int(pair.top).value_or(0);
    const int bottom = to_int(pair.bottom).value_or(0);
    return top > 1 && top < bottom && bottom > 4 && std::gcd(top, bottom) > 1;
}

// "9/10 doctors" are so many of them; "3/10 miles" is a part.
bool is_share_of_people(const Passage& passage, std::size_t i, const Slashed& pair) {
    static constexpr auto measures = std::to_array<std::string_view>({
        "centimeters", "centimetres", "cups",    "degrees", "hours",     "inches", "kilometers",
        "kilometres",  "liters",      "litres",  "meters",  "metres",    "miles",  "millimeters",
        "ounces",      "points",      "pounds",  "seconds", "teaspoons", "yards",  "bars",
        "beats",       "jigs",        "rhythms", "tunes",
    });
    const bool tenths = pair.bottom == "5" || pair.bottom == "10";
    if ((!tenths && !is_unreduced(pair)) || !passage.joined(i)) return false;
    const std::string next = passage.folded(i + 1);
    return (is_lower_plural(next) || next == "people") && !is_one_of(next, measures);
}

// "give it 9/10", "a solid 7/10", "10/10": so many out of ten.
bool is_mark_given(const Passage& passage, std::size_t i, const Slashed& pair) {
    static constexpr auto cues = std::to_array<std::string_view>({
        "gave",
        "get",
        "gets",
        "give",
        "giving",
        "got",
        "it",
        "rate",
        "rated",
        "rating",
        "score",
        "scored",
        "solid",
    });
    if (is_unreduced(pair) && is_share_of_people(passage, i, pair)) return true;
    if (pair.bottom != "5" && pair.bottom != "10" && pair.bottom != "20" && pair.bottom != "100")
        return false;
    if (pair.top == pair.bottom) return pair.top != "20"; // "20/20 vision"
    if (passage.joined(i) && passage.folded(i + 1) == "stars") return true;
    if (is_share_of_people(passage, i, pair)) return true;
    return passage.follows(i) && is_one_of(passage.folded(i - 1), cues) &&
           !(passage.joined(i) && passage.folded(i + 1) == "of");
}

// "1/2-inch", "3/4-mile-long": the part as it stands before a noun.
bool say_fraction_compound(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-', 1);
    if (hyphen == std::string_view::npos) return false;
    const std::optional<Slashed> pair = read_slashed(token.substr(0, hyphen));
    std::string rest = ascii::lower(token.substr(hyphen + 1));
    std::replace(rest.begin(), rest.end(), '-', ' ');
    if (!pair || rest.empty() || !std::all_of(rest.begin(), rest.end(), [](char c) {
            return ascii::is_letter(c) || c == ' ';
        }))
        return false;
    std::string words = fraction(pair->top, pair->bottom, passage.language());
    if (words.starts_with("one half") || words.starts_with("one quarter"))
        words.erase(0, std::string_view("one ").size());
    if (words.ends_with("quarters")) words.pop_back();
    passage.say(i, words + ' ' + rest);
    return true;
}

// "n/2", "1/x": letters of sums over one another.
bool say_over(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos) return false;
    const std::string_view top = token.substr(0, slash);
    const std::string_view bottom = token.substr(slash + 1);
    const auto letter = [](std::string_view part) {
        return part.size() == 1 && ascii::is_lower(part[0]);
    };
    if (!(letter(top) && all_digits(bottom)) && !(all_digits(top) && letter(bottom))) return false;
    const Language language = passage.language();
    const auto words = [&](std::string_view part) {
        return letter(part) ? '.' + std::string(part) : cardinal(part, language);
    };
    passage.say(i, words(top) + " over " + words(bottom));
    return true;
}

// "f/2.8", "f/8": how far a lens is open.
bool say_aperture(Passage& passage, std::size_t i, std::string_view token) {
    if (!token.starts_with("f/") && !token.starts_with("F/")) return false;
    const std::optional<Figure> stop = read_figure(token.substr(2));
    if (!stop || !stop->is_bare() || to_int(stop->whole).value_or(100) > 90) return false;
    passage.say(i, ".f " + number_words(*stop, passage.language()));
    return true;
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

// "won 3-2", "a 1-0 lead": in the UK the two figures stand alone, and none is "nil".
bool is_told_score(const Passage& passage, std::size_t i, const FigureRange& range) {
    static constexpr auto before = std::to_array<std::string_view>({
        "ahead", "beat", "beaten",  "draw", "drawn", "drew",    "finished",
        "it",    "lead", "leading", "led",  "lose",  "losing",  "lost",
        "score", "them", "us",      "was",  "win",   "winning", "won",
    });
    static constexpr auto behind = std::to_array<std::string_view>(
        {"defeat", "down", "draw", "lead", "loss", "thrashing", "up", "victory", "win"});
    if (range.from.whole.size() > 2 || range.to.whole.size() > 2) return false;
    const auto has = [](const auto& words, const std::string& word) {
        return is_one_of(word, words);
    };
    return (passage.follows(i) && has(before, passage.folded(i - 1))) ||
           (passage.joined(i) && has(behind, passage.folded(i + 1)));
}

// A score, or a further set of one: "won 6-4, 7-6".
bool is_score(const Passage& passage, std::size_t i, const FigureRange& range) {
    if (is_told_score(passage, i, range)) return true;
    constexpr std::size_t most_sets = 5;
    for (std::size_t back = 1; back < most_sets && back <= i; ++back) {
        if (!passage.joined_by_comma(i - back)) return false;
        const std::optional<FigureRange> set = read_range(passage.text(i - back));
        if (!set || !set->from.is_bare() || !set->to.is_bare()) return false;
        if (is_told_score(passage, i - back, *set)) return true;
    }
    return false;
}

// "Boeing 747-400": a name and two figures that make no range.
bool is_type_and_version(const Passage& passage, std::size_t i, const FigureRange& range) {
    // "the 737-800"
    const bool airliner = range.from.whole.size() == 3 && range.from.whole[0] == '7' &&
                          range.from.whole[2] == '7' && range.to.whole.size() == 3 &&
                          range.to.whole.ends_with("00");
    if (airliner) return true;
    return passage.follows(i) && ascii::is_upper(passage.raw(i - 1)[0]) &&
           range.from.whole.size() == 3 && range.to.whole.size() == 3 &&
           range.to.whole <= range.from.whole;
}

} // namespace

// "10 000", "1 500 000": groups of three parted by blanks. Each group is said with its own words.
// A group that begins with a nought or a third group tells them from two numbers side by side.
bool say_spaced_thousands(Passage& passage, std::size_t i) {
    std::string token = passage.text(i);
    const std::optional<Figure> figure = read_figure(token);
    if (!figure || !figure->suffix.empty() || !figure->fraction.empty() || figure->grouped ||
        figure->whole.empty() || figure->whole.size() > 3 || figure->whole[0] == '0' ||
        (passage.follows(i) && all_digits(passage.text(i - 1))))
        return false;
    std::size_t last = i;
    const auto is_group = [&](std::size_t at) {
        const std::string text = passage.text(at);
        return text.size() == 3 && all_digits(text);
    };
    while (last < i + 4 && passage.joined(last) && is_group(last + 1))
        ++last;
    const std::size_t groups = last - i;
    if (groups == 0 || (groups == 1 && passage.text(last)[0] != '0')) return false;
    if (passage.joined(last) && ascii::is_digit(passage.text(last + 1)[0])) return false;
    const Language language = passage.language();
    for (std::size_t at = i; at <= last; ++at) {
        const std::string digits = at == i ? figure->whole : passage.text(at);
        const bool none = digits == "000";
        std::string words = at == i ? figure->sign : "";
        if (!none && at == last && at > i && passage.is_uk() && digits[0] == '0') words = "and";
        if (!none)
            append_words(words, cardinal(digits + std::string(3 * (last - at), '0'), language));
        passage.say(at, words);
    }
    if (const Currency* currency = currency_of(figure->currency)) {
        const std::string digits = passage.text(last);
        std::string words = digits == "000" ? "" : cardinal(digits, language);
        append_words(words, currency->many);
        passage.say(last, words);
        return true;
    }
    say_unit_behind(passage, last, Number::plural);
    return true;
}

std::string part_before_noun(const Passage& passage, std::size_t i, std::string words) {
    static constexpr auto articles =
        std::to_array<std::string_view>({"a", "an", "her", "his", "its", "my", "off", "our",
                                         "price", "that", "the", "their", "this", "your"});
    const std::string_view one = "one ";
    const std::string next = passage.joined(i) ? passage.folded(i + 1) : std::string{};
    const bool before_article = words == "one half" && is_one_of(next, articles);
    const bool behind_article = (words == "one half" || words == "one quarter") &&
                                passage.follows(i) && passage.folded(i - 1) == "a";
    if (before_article || behind_article) words.erase(0, one.size());
    return words;
}

// "4.5/5", "9.5/10 from the judges"
bool say_marks_given(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos) return false;
    const std::optional<Figure> marks = read_figure(token.substr(0, slash));
    const std::string_view most = token.substr(slash + 1);
    if (!marks || !marks->is_bare() || marks->fraction.empty() ||
        (most != "5" && most != "10" && most != "100"))
        return false;
    const Language language = passage.language();
    passage.say(i, number_words(*marks, language) + " out of " + cardinal(most, language));
    return true;
}

// "Step 1/4", "slide 3/10": the first of four.
bool say_one_of_many(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<Slashed> pair = read_slashed(token);
    if (!pair || !is_part_numbered(passage, i)) return false;
    const Language language = passage.language();
    passage.say(i, cardinal(pair->top, language) + " of " + cardinal(pair->bottom, language));
    return true;
}

// "The odds are 10/1": ten to one.
bool say_odds(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<Slashed> pair = read_slashed(token);
    if (!pair || !is_odds(passage, i)) return false;
    const Language language = passage.language();
    passage.say(i, cardinal(pair->top, language) + " to " + cardinal(pair->bottom, language));
    return true;
}

// "50/60 Hz", "110/220 V": the one or the other.
bool say_either_measure(Passage& passage, std::size_t i, std::string_view token) {
    static constexpr auto units = std::to_array<std::string_view>({"Hz", "V", "W", "fps"});
    const std::optional<Slashed> pair = read_slashed(token);
    if (!pair || pair->top.size() < 2 || !passage.joined(i) ||
        !is_one_of(passage.text(i + 1), units))
        return false;
    if (!say_unit_behind(passage, i, Number::plural)) return false;
    const Language language = passage.language();
    passage.say(i, cardinal(pair->top, language) + " or " + cardinal(pair->bottom, language));
    return true;
}

// "1/4-20": the thread of a screw.
bool say_thread(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos || hyphen < 3) return false;
    const std::optional<Slashed> pair = read_slashed(token.substr(0, hyphen));
    const std::string_view turns = token.substr(hyphen + 1);
    if (!pair || !all_digits(turns) || turns.size() > 2) return false;
    const Language language = passage.language();
    std::string words = fraction(pair->top, pair->bottom, language);
    if (words == "one half" || words == "one quarter")
        words.erase(0, std::string_view("one ").size());
    passage.say(i, words + ' ' + cardinal(turns, language));
    return true;
}

// "2-1/2-year": a whole, its half and what they measure.
bool say_mixed_compound(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t first = token.find('-');
    const std::size_t second = first == std::string_view::npos ? first : token.find('-', first + 1);
    if (second == std::string_view::npos || !all_digits(token.substr(0, first))) return false;
    const std::optional<Slashed> pair = read_slashed(token.substr(first + 1, second - first - 1));
    std::string rest(token.substr(second));
    std::replace(rest.begin(), rest.end(), '-', ' ');
    if (!pair || !std::all_of(rest.begin(), rest.end(),
                              [](char c) { return ascii::is_lower(c) || c == ' '; }))
        return false;
    const Language language = passage.language();
    passage.say(i, cardinal(token.substr(0, first), language) + ' ' +
                       behind_whole(*pair, language) + rest);
    return true;
}

bool say_fraction(Passage& passage, std::size_t i) {
    std::string token = passage.text(i);
    if (say_marks_given(passage, i, token) || say_either_measure(passage, i, token) ||
        say_thread(passage, i, token)) {
        return true;
    }
    if (say_odds(passage, i, token)) return true;
    if (say_one_of_many(passage, i, token) || say_mixed_compound(passage, i, token)) return true;
    if (say_aperture(passage, i, token)) return true;
    if (say_fraction_compound(passage, i, token) || say_over(passage, i, token)) return true;
    const bool inches = token.ends_with('"');
    if (inches) token.pop_back();
    const Language language = passage.language();
    // "3-1/2" is "3 1/2", "-1/2" has a sign.
    std::string before;
    if (const std::size_t hyphen = token.find('-'); hyphen != std::string::npos) {
        const std::string whole = token.substr(0, hyphen);
        if (!whole.empty() && !all_digits(whole)) return false;
        before = whole.empty() ? "minus" : cardinal(whole, language);
        token.erase(0, hyphen + 1);
    }
    const std::optional<Slashed> pair = read_slashed(token);
    if (!pair) return false;
    if (!before.empty() && before != "minus") {
        passage.say(i, before + ' ' + behind_whole(*pair, language) + (inches ? " inches" : ""));
        return true;
    }
    if (!before.empty()) {
        passage.say(i, before + ' ' + fraction(pair->top, pair->bottom, language));
        return true;
    }
    if (is_mixed_number(passage, i) && inches) {
        passage.say(i, behind_whole(*pair, language) +
                           (tells_apart(passage, i, "\"") ? " inch" : " inches"));
        return true;
    }
    if (is_mark_given(passage, i, *pair)) {
        passage.say(i,
                    cardinal(pair->top, language) + " out of " + cardinal(pair->bottom, language));
        return true;
    }
    if (is_pressure(*pair)) {
        passage.say(i, in_pairs(pair->top, Language::en_us) + " over " +
                           cardinal(pair->bottom, language));
        say_unit_behind(passage, i, Number::plural);
        return true;
    }
    if (inches) {
        std::string words = fraction(pair->top, pair->bottom, language);
        if (words.ends_with("quarters") && tells_apart(passage, i, "\""))
            words.pop_back(); // "three quarter inch pipe"
        passage.say(i, words + " inch");
        return true;
    }
    if (is_fixed_pair(passage, i, *pair, token)) {
        passage.say(i, cardinal(pair->top, language) + ' ' + cardinal(pair->bottom, language));
        return true;
    }
    const std::string words =
        part_before_noun(passage, i, fraction(pair->top, pair->bottom, language));
    if (is_mixed_number(passage, i)) {
        passage.say(i, behind_whole(*pair, language));
        say_unit_behind(passage, i, Number::plural);
        return true;
    }
    const bool unit = say_unit_behind(passage, i, Number::singular);
    // "1/250 s"
    if (unit && words.ends_with("th") && (passage.text(i + 1) == "s"))
        passage.say(i + 1, "of a second");
    const bool part = is_part_of_whole(passage, i);
    const bool of = passage.joined(i) && passage.folded(i + 1) == "of";
    const bool settled = unit || of || part || is_usual_fraction(*pair) || !could_be_date(*pair);
    if (settled) {
        passage.say(i, words);
    } else {
        passage.say(i, words,
                    {day_and_month_words(to_int(pair->top).value_or(0),
                                         to_int(pair->bottom).value_or(0), language)});
    }
    return true;
}

bool say_range(Passage& passage, std::size_t i) {
    const std::optional<FigureRange> range = read_range(passage.text(i));
    const Language language = passage.language();
    if (range && is_ordinal_suffix(range->from.suffix) && is_ordinal_suffix(range->to.suffix) &&
        range->from.sign.empty() && range->from.currency.empty()) { // "the 3rd-5th"
        passage.say(i, ordinal(range->from.whole, language) + " to " +
                           ordinal(range->to.whole, language));
        return true;
    }
    if (!range || !range->from.is_bare() || !range->to.currency.empty() || !range->to.sign.empty())
        return false;
    const std::string from = number_words(range->from, language);
    if (range->to.suffix.empty() && is_range_of_names(passage, i, *range)) {
        passage.say(i, in_pairs(range->from.whole, language) + " to " +
                           in_pairs(range->to.whole, language));
        return true;
    }
    if (is_ordinal_suffix(range->to.suffix) && range->to.fraction.empty()) {
        passage.say(i, ordinal(range->from.whole, language) + " to " +
                           ordinal(range->to.whole, language));
        return true;
    }
    if (!range->to.suffix.empty()) return false;
    if (passage.joined(i) && passage.text(i + 1) == "=") { // "6–2 = 4"
        passage.say(i, from + " minus " + number_words(range->to, language));
        return true;
    }
    const std::string to = number_words(range->to, language);
    const bool always = passage.text(i) == "24-7" && !is_score(passage, i, *range);
    if (passage.text(i) == "50-50" || always) {
        passage.say(i, from + ' ' + to);
    } else if (passage.is_uk() && is_score(passage, i, *range)) {
        passage.say(i, (from == "nought" ? "nil" : from) + ' ' + (to == "nought" ? "nil" : to));
    } else if (is_type_and_version(passage, i, *range)) {
        passage.say(i, in_pairs(range->from.whole, language) + ' ' +
                           in_pairs(range->to.whole, language));
    } else {
        const bool both = passage.follows(i) && passage.folded(i - 1) == "between";
        const bool record = passage.joined(i) && passage.folded(i + 1) == "record"; // won and lost
        passage.say(i, from + (both || record ? " and " : " to ") + to);
    }
    return true;
}

bool say_figure(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (token.starts_with('#') && token.size() > 1 && all_digits(token.substr(1))) {
        passage.say(i, "number " + cardinal(token.substr(1), passage.language()));
        return true;
    }
    if (const std::optional<FigureRange> range = read_range(token.substr(token.starts_with('#')));
        token.starts_with('#') && range && range->from.is_bare() && range->to.is_bare()) {
        passage.say(i, "numbers " + number_words(range->from, passage.language()) + " to " +
                           number_words(range->to, passage.language()));
        return true;
    }
    const std::optional<Figure> figure = read_figure(token);
    if (figure && (say_ordinal(passage, i, *figure) || say_suffixed(passage, i, *figure)))
        return true;
    if (is_name_of_figure(passage, i, token)) {
        passage.say(i, name_of_figure(token, passage.language()));
        return true;
    }
    if (figure && figure->currency.empty() && figure->suffix.empty()) {
        passage.say(i, number_words(*figure, passage.language()),
                    other_number(*figure, passage.language()));
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
