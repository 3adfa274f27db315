// Units that are multiplied and divided by raised figures: "9.81 m s⁻²", "J kg⁻¹ K⁻¹", "kg·m⁻³",
// and as they are typed, "mol dm-3". The signs and their order are those of the SI brochure (2.3.4,
// 5.2); the words "per", "square" and "cubic" those of NIST Special Publication 811 (9.7, 9.8).
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr std::string_view raised_minus = "⁻";

// Units that stand in products. "in" and "mo" do not, so that no small word is taken for one.
bool is_factor_sign(std::string_view sign) {
    static constexpr auto signs = std::to_array<std::string_view>({
        "°C", "Bq",  "GPa", "GW", "Hz",  "J",   "K",  "L",   "MJ", "MPa",  "MW",   "N",
        "Pa", "Sv",  "V",   "W",  "cm",  "d",   "dm", "eV",  "g",  "h",    "ha",   "hPa",
        "hr", "kJ",  "kN",  "kV", "kW",  "kWh", "kg", "km",  "l",  "lm",   "m",    "mA",
        "mL", "mV",  "mW",  "mg", "min", "ml",  "mm", "mol", "ms", "mmol", "year", "nm",
        "s",  "sec", "t",   "yr", "µg",  "µm",  "μg", "μm",  "Ω",  "A",    "C",    "T",
    });
    return is_one_of(sign, signs);
}

std::string factor_name(std::string_view sign, Number number, Language language) {
    struct Name {
        std::string_view sign;
        std::string_view one;
    };
    // Letters that are too often something else to be units behind any figure.
    static constexpr auto names = std::to_array<Name>({
        {"C", "coulomb"},
        {"T", "tesla"},
        {"d", "day"},
        {"mmol", "millimole"},
        {"t", "tonne"},
        {"year", "year"},
    });
    if (!is_factor_sign(sign)) return {};
    for (const Name& name : names) {
        if (name.sign != sign) continue;
        return std::string(name.one) + (number == Number::plural ? "s" : "");
    }
    return unit_words(sign, number, language);
}

struct Factor {
    std::string_view sign;
    int power = 1;
    bool typed = false; // "s-2": the minus is a hyphen
};

// Takes the figure off the end of "m²" and "s⁻²"; 1 if there is none, 0 if it is none to take.
int take_power(std::string_view& sign, bool& typed) {
    int digit = 0;
    for (const auto& [raised, value] : {std::pair{"¹", 1}, std::pair{"²", 2}, std::pair{"³", 3}}) {
        if (!sign.ends_with(raised)) continue;
        digit = value;
        sign.remove_suffix(std::string_view(raised).size());
    }
    if (digit == 0 && !sign.empty() && sign.back() >= '1' && sign.back() <= '6') {
        digit = sign.back() - '0';
        sign.remove_suffix(1);
    }
    if (digit == 0) return 1;
    if (sign.ends_with(raised_minus)) {
        sign.remove_suffix(raised_minus.size());
        digit = -digit;
    } else if (sign.ends_with('-')) {
        sign.remove_suffix(1);
        digit = -digit;
        typed = true;
    }
    if (sign.ends_with('^')) sign.remove_suffix(1);
    return digit;
}

// "ms⁻²" is written for "m s⁻²", and "kgm⁻³" for "kg m⁻³".
bool add_run_together(std::vector<Factor>& factors, std::string_view sign, int power, bool typed) {
    for (std::size_t cut = 1; cut < sign.size(); ++cut) {
        const std::string_view first = sign.substr(0, cut);
        const std::string_view second = sign.substr(cut);
        if (!is_factor_sign(first) || !is_factor_sign(second)) continue;
        factors.push_back({first, 1, false});
        factors.push_back({second, power, typed});
        return true;
    }
    return false;
}

// The factors of one written word; none if it holds anything else.
std::vector<Factor> read_factors(std::string_view word) {
    std::vector<Factor> factors;
    while (!word.empty()) {
        std::size_t dot = std::string_view::npos;
        std::size_t size = 0;
        for (const std::string_view sign : {"·", "⋅"}) {
            const std::size_t at = word.find(sign);
            if (at >= dot) continue;
            dot = at;
            size = sign.size();
        }
        std::string_view sign = word.substr(0, dot);
        word.remove_prefix(dot == std::string_view::npos ? word.size() : dot + size);
        bool typed = false;
        const int power = take_power(sign, typed);
        if (is_factor_sign(sign) && !(power < 0 && sign == "ms")) {
            factors.push_back({sign, power, typed});
        } else if (power > 0 || !add_run_together(factors, sign, power, typed)) {
            return {};
        }
    }
    return factors;
}

std::string raised_words(std::string_view name, int power, Language language) {
    if (power == 1) return std::string(name);
    const std::string words(name);
    const bool length = name.ends_with("meter") || name.ends_with("metre") ||
                        name.ends_with("meters") || name.ends_with("metres");
    if (power == 2) return length ? "square " + words : words + " squared";
    if (power == 3) return length ? "cubic " + words : words + " cubed";
    return words + " to the power of " + cardinal(power, language);
}

std::string factor_words(const Factor& factor, Number number, Language language) {
    if (factor.power > 0)
        return raised_words(factor_name(factor.sign, number, language), factor.power, language);
    return "per " + raised_words(factor_name(factor.sign, Number::singular, language),
                                 -factor.power, language);
}

bool is_divided(const std::vector<Factor>& factors) {
    return std::any_of(factors.begin(), factors.end(),
                       [](const Factor& factor) { return factor.power < 0; });
}

struct Product {
    std::size_t first = 0; // written words
    std::size_t last = 0;
    std::vector<std::vector<Factor>> words; // of each of them
};

// The run of units around the word `i`, which is divided by.
Product product_around(const Passage& passage, std::size_t i, std::vector<std::string>& texts) {
    constexpr std::size_t most = 8; // words: no unit is made of more
    std::size_t first = i;
    std::size_t last = i;
    while (first + most > i && passage.follows(first) &&
           !read_factors(passage.text(first - 1)).empty())
        --first;
    while (last < i + most && passage.joined(last) &&
           is_divided(read_factors(passage.text(last + 1))))
        ++last;
    for (std::size_t at = first; at <= last; ++at)
        texts.push_back(passage.text(at));
    Product product{first, last, {}};
    for (const std::string& text : texts)
        product.words.push_back(read_factors(text));
    return product;
}

bool has_figure(std::string_view word) {
    return std::any_of(word.begin(), word.end(), ascii::is_digit);
}

// A single letter may be a quantity of its own ("m⁻¹"), a hyphen one of a name ("s-1").
bool is_told(const Passage& passage, const Product& product) {
    std::size_t count = 0;
    bool letter = true;
    bool typed = false;
    for (const std::vector<Factor>& factors : product.words) {
        for (const Factor& factor : factors) {
            ++count;
            letter = letter && factor.sign.size() == 1;
            typed = typed || factor.typed;
        }
    }
    if (typed && count < 2) return false; // "2 km-2 miles"
    const std::size_t first = product.first;
    const bool behind = passage.follows(first);
    const std::string before = behind ? passage.folded(first - 1) : std::string{};
    const bool figure = behind && (has_figure(before) || !magnitude_of_word(before).empty());
    if (figure || before == "in" || before == "of" || before == "per") return true;
    if (is_lower_plural(before)) return true; // "40 limpets m⁻²"
    return !typed && (count > 1 || !letter);
}

Number number_of_product(const Passage& passage, const Product& product) {
    if (!passage.follows(product.first)) return Number::plural;
    if (passage.text(product.first - 1) == "1") return Number::singular;
    return is_attributive(passage, product.first - 1, product.last) ? Number::singular
                                                                    : Number::plural;
}

// What is multiplied stays singular but for the last: "newton metres per second".
std::vector<std::string> product_words(const std::vector<std::vector<Factor>>& product,
                                       Number number, Language language) {
    std::size_t multiplied = 0;
    for (const std::vector<Factor>& factors : product) {
        multiplied += static_cast<std::size_t>(std::count_if(
            factors.begin(), factors.end(), [](const Factor& factor) { return factor.power > 0; }));
    }
    std::vector<std::string> said;
    for (const std::vector<Factor>& factors : product) {
        std::string words;
        for (const Factor& factor : factors) {
            const bool last = factor.power > 0 && --multiplied == 0;
            append_words(words, factor_words(factor, last ? number : Number::singular, language));
        }
        said.push_back(std::move(words));
    }
    return said;
}

} // namespace

std::string unit_product_words(std::string_view unit, Number number, Language language) {
    const std::vector<Factor> factors = read_factors(unit);
    if (factors.empty()) return {};
    return product_words({factors}, number, language).front();
}

bool say_unit_product(Passage& passage, std::size_t i) {
    const std::string text = passage.text(i);
    if (text.size() < 3 || text.size() > 24 || !is_divided(read_factors(text))) return false;
    std::vector<std::string> texts; // what the factors look into
    const Product product = product_around(passage, i, texts);
    if (!is_told(passage, product)) return false;
    const std::vector<std::string> words =
        product_words(product.words, number_of_product(passage, product), passage.language());
    for (std::size_t at = 0; at < words.size(); ++at)
        passage.say(product.first + at, words[at]);
    // By the SI brochure (5.2) this is a reciprocal millisecond; schools write it for "m s⁻¹".
    if (texts.size() == 1 && text == "ms⁻¹") passage.say(i, words[0], {"per millisecond"});
    return true;
}

} // namespace say
