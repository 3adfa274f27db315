// Signs that stand alone ("&", "5 + 3", "§ 4") or hang on a word ("C++", "C#", "he/she",
// "word(s)").
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

struct Named {
    std::string_view sign;
    std::string_view words;
};

constexpr auto signs = std::to_array<Named>({
    {"&", "and"},
    {"+", "plus"},
    {"=", "equals"},
    {"%", "percent"},
    {"@", "at"},
    {"/", "slash"},
    {"#", "number"},
    {"*", "times"},
    {"<", "is less than"},
    {">", "is greater than"},
    {"<=", "is less than or equal to"},
    {">=", "is greater than or equal to"},
    {"^", "to the power of"},
    {"×", "times"},
    {"÷", "divided by"},
    {"·", "times"},
    {"∝", "is proportional to"},
    {"±", "plus or minus"},
    {"≤", "is less than or equal to"},
    {"≥", "is greater than or equal to"},
    {"≠", "is not equal to"},
    {"≈", "is about"},
    {"√", "the square root of"},
    {"∑", "the sum of"},
    {"∞", "infinity"},
    {"∂", "partial"},
    {"∆", "delta"},
    {"§", "section"},
    {"§§", "sections"},
    {"¶", "paragraph"},
    {"→", "to"},
    {"->", "to"},
    {"⋅", "times"},
    {"+/-", "plus or minus"},
    {"©", "copyright"},
    {"°", "degrees"},
    {"№", "number"},
    {"Nº", "number"},
    {"N°", "number"},
    {"µ", "mu"},
    {"α", "alpha"},
    {"β", "beta"},
    {"γ", "gamma"},
    {"δ", "delta"},
    {"ε", "epsilon"},
    {"ζ", "zeta"},
    {"η", "eta"},
    {"θ", "theta"},
    {"ι", "iota"},
    {"κ", "kappa"},
    {"λ", "lambda"},
    {"μ", "mu"},
    {"ν", "nu"},
    {"ξ", "xi"},
    {"π", "pi"},
    {"ρ", "rho"},
    {"σ", "sigma"},
    {"τ", "tau"},
    {"υ", "upsilon"},
    {"φ", "phi"},
    {"χ", "chi"},
    {"ψ", "psi"},
    {"ω", "omega"},
    {"Γ", "gamma"},
    {"Δ", "delta"},
    {"Θ", "theta"},
    {"Λ", "lambda"},
    {"Ξ", "xi"},
    {"Π", "pi"},
    {"Σ", "sigma"},
    {"Φ", "phi"},
    {"Ψ", "psi"},
    {"Ω", "omega"},
    {"$", "dollar"},
    {"£", "pound"},
    {"€", "euro"},
    {"C++", ".c plus plus"},
    {"c++", ".c plus plus"},
    {"C#", ".c sharp"},
    {"F#", ".f sharp"},
    {"s/he", "he or she"},
    {"(s)he", "he or she"},
    {"he/she", "he or she"},
    {"she/he", "she or he"},
    {"him/her", "him or her"},
    {"his/her", "his or her"},
    {"his/hers", "his or hers"},
    {"her/his", "her or his"},
    {"and/or", "and or"},
    {"WWI", "world war one"},
    {"WWI's", "world war one's"},
    {"WWII", "world war two"},
    {"WWII's", "world war two's"},
    {"w/", "with"},
    {"w/in", "within"},
    {"w/o", "without"},
    {"w/out", "without"},
    {"n/a", "not applicable"},
    {"N/A", "not applicable"},
    {"h/t", "hat tip"},
    {"b/c", "because"},
    {"c/o", "care of"},
});

// A hyphen between figures is "to" in a range and "minus" in a sum; between letters it is a minus.
bool say_lone_hyphen(Passage& passage, std::size_t i) {
    if (i == 0 || i + 1 >= passage.size()) return false;
    const std::optional<Figure> left = read_figure(passage.text(i - 1));
    const std::optional<Figure> right = read_figure(passage.text(i + 1));
    const bool falls = left && right && left->is_bare() && right->is_bare() &&
                       to_int(left->whole).value_or(0) > to_int(right->whole).value_or(0);
    const bool sum = passage.text(i + 2) == "=" || (i > 1 && passage.text(i - 2) == "=");
    passage.say(i, sum || falls || !left || !right ? "minus" : "to");
    return true;
}

// "≥ 3" with nothing before it to compare: "at least three".
std::string_view words_before_figure(std::string_view sign) {
    static constexpr auto table = std::to_array<Named>({
        {"<", "less than"},
        {">", "more than"},
        {"<=", "at most"},
        {">=", "at least"},
        {"≤", "at most"},
        {"≥", "at least"},
        {"≈", "about"},
        {"~", "about"},
    });
    const auto* found = std::find_if(table.begin(), table.end(),
                                     [sign](const Named& named) { return named.sign == sign; });
    return found == table.end() ? std::string_view{} : found->words;
}

// "with pH < 7", "at a depth > 5 m", "only < 5%", "highs > 30": no verb fits in.
bool has_no_verb_to_compare(const Passage& passage, std::size_t i) {
    static constexpr auto verbs_and_adverbs = std::to_array<std::string_view>(
        {"cost", "costs", "found", "just", "lasted", "lasts", "now", "only", "saw", "scored",
         "still", "take", "takes", "then", "took", "weighed", "weighs"});
    static constexpr auto before_terms = std::to_array<std::string_view>(
        {"at", "for", "from", "in", "keep", "need", "needs", "of", "to", "under", "with"});
    static constexpr auto articles = std::to_array<std::string_view>({"a", "an", "the"});
    const std::string before = passage.folded(i - 1);
    if (is_one_of(before, verbs_and_adverbs) || is_lower_plural(before)) return true;
    if (before.size() > 1 && is_function_word(before)) return true;
    std::size_t at = i - 1;
    if (passage.follows(at) && is_one_of(passage.folded(at - 1), articles)) --at;
    return passage.follows(at) && is_one_of(passage.folded(at - 1), before_terms);
}

bool is_measured(const Passage& passage, std::size_t i) {
    const std::optional<Figure> figure = read_figure(passage.text(i));
    if (!figure) return false;
    if (!figure->suffix.empty()) return true;
    return passage.joined(i) &&
           !unit_words(passage.text(i + 1), Number::plural, passage.language()).empty();
}

// A figure with a unit of length: "3 cm", "12\"".
bool is_side(const Passage& passage, std::size_t i) {
    static constexpr auto lengths = std::to_array<std::string_view>({
        "\"",     "'",  "cm",    "feet", "ft", "in", "inch",  "inches", "km",  "m",  "meters",
        "metres", "mi", "miles", "mm",   "nm", "px", "yards", "yd",     "yds", "µm", "μm",
    });
    const std::optional<Figure> figure = read_figure(passage.text(i));
    if (!figure) return false;
    if (!figure->suffix.empty()) return is_one_of(figure->suffix, lengths);
    return passage.joined(i) && is_one_of(passage.text(i + 1), lengths);
}

// "10²³", "10^8"
bool is_power(std::string_view text) {
    const std::string_view ten = "10";
    return text.starts_with(ten) && text.size() > ten.size() &&
           (text[ten.size()] == '^' || ascii::is_high(text[ten.size()]));
}

// The figure that closes "× 8 × 3 cm", whose first cross is at i.
std::size_t last_side(const Passage& passage, std::size_t i) {
    constexpr int most = 3; // nothing has more sides
    for (int side = 1; side < most && passage.joined(i + 1) && passage.text(i + 2) == "×" &&
                       passage.joined(i + 2);
         ++side)
        i += 2;
    return i + 1;
}

// "x" and "×" between figures: by if they are lengths, else "×" is times.
bool say_lone_x(Passage& passage, std::size_t i) {
    if (i == 0 || !passage.follows(i) || !passage.joined(i)) return false;
    const std::string before = passage.text(i - 1);
    const std::string behind = passage.text(i + 1);
    const auto figure = [](const std::string& text) {
        return !text.empty() && ascii::is_digit(text[0]);
    };
    // "10 cm × 20 cm"
    if (!figure(before) && figure(behind) && i > 1 && passage.joined(i - 2) &&
        figure(passage.text(i - 2)) && is_measured(passage, i - 2)) {
        passage.say(i, is_side(passage, i - 2) && is_side(passage, i + 1) ? "by" : "times");
        return true;
    }
    if (!figure(before) || !figure(behind)) return false;
    const bool sum =
        (i + 2 < passage.size() && passage.text(i + 2) == "=") || is_power(passage.raw(i + 1));
    const bool cross = passage.text(i) == "×";
    const bool picture = before.size() > 2 && behind.size() > 2 && !sum; // "1080 × 1920"
    const bool sides = !is_power(passage.raw(i + 1)) &&                  // "3 × 10⁸ m"
                       (is_side(passage, i - 1) || is_side(passage, last_side(passage, i)));
    const bool by = cross ? picture || sides : !sum;
    passage.say(i, by ? "by" : "times");
    return true;
}

bool is_letters(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
        return ascii::is_letter(c) || ascii::is_high(c) || c == '\'' || c == '-';
    });
}

bool is_dotted_capitals(std::string_view part) {
    for (std::size_t at = 0; at < part.size(); ++at) {
        if (at % 2 == 0 ? !ascii::is_upper(part[at]) : part[at] != '.') return false;
    }
    return part.size() > 2;
}

// "input/output" has no "slash" when it is read; "word(s)" no brackets.
bool say_joined_words(Passage& passage, std::size_t i, std::string_view text) {
    std::string words;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        if (at < text.size() && text[at] != '/') continue;
        std::string part(text.substr(begin, at - begin));
        if (is_dotted_capitals(part)) std::erase(part, '.'); // "U.S./Canada"
        if (!is_letters(part)) return false;
        const bool capitals =
            part.size() < 6 && std::all_of(part.begin(), part.end(), ascii::is_upper);
        const bool letters =
            capitals && (part.size() == 1 || capitals_kind(part) == Capitals::letters);
        append_words(words, (letters ? "." : "") + unicode::fold(part));
        begin = at + 1;
    }
    passage.say(i, words);
    return true;
}

// "km/h" without a figure.
bool say_unit_pair(Passage& passage, std::size_t i, std::string_view text) {
    const std::size_t slash = text.find('/');
    if (slash == 0 || text.size() > 8) return false;
    const std::string_view upper = text.substr(0, slash);
    const std::string_view lower = text.substr(slash + 1);
    if (upper.size() + lower.size() < 3 && text != "m/s" && text != "g/l") return false;
    const Language language = passage.language();
    if (unit_words(upper, Number::plural, language).empty() ||
        unit_words(lower, Number::singular, language).empty())
        return false;
    passage.say(i, unit_words(text, Number::plural, language));
    return true;
}

// "x/y" is a fraction; "a/c" and "b/w" are two letters.
bool say_letters_over(Passage& passage, std::size_t i, std::string_view text) {
    if (text.size() != 3 || text[1] != '/' || !ascii::is_lower(text[0]) ||
        !ascii::is_lower(text[2]))
        return false;
    if (text[0] == text[2] && say_initials(passage, i)) return true; // "y/y"
    const bool over = text.find_first_of("knxz") != std::string_view::npos || text == "a/b" ||
                      text == "p/q" || text == "d/t";
    passage.say(i, "." + std::string(1, text[0]) + (over ? " over ." : " .") +
                       std::string(1, text[2]));
    return true;
}

// "an A−", "type O−": a true minus, which no word has for a hyphen.
bool say_marked_down(Passage& passage, std::size_t i) {
    constexpr std::string_view minus = "−";
    std::string_view raw = passage.raw(i);
    if (!raw.ends_with(minus)) return false;
    raw.remove_suffix(minus.size());
    if (raw.empty() || raw.size() > 2 || !std::all_of(raw.begin(), raw.end(), ascii::is_upper))
        return false;
    passage.say(i, "." + ascii::lower(raw) + " minus");
    return true;
}

// "an A*", "three A*s", "grades A*-C"
bool say_starred(Passage& passage, std::size_t i, std::string_view text) {
    if (text.size() < 2 || !ascii::is_upper(text[0]) || text[1] != '*') return false;
    std::string ending(text.substr(2));
    if (ending.size() == 2 && ending[0] == '-' && ascii::is_upper(ending[1])) {
        ending = std::string(" to .") + ascii::lower(ending[1]);
    } else if (!ending.empty() && ending != "s" && ending != "'s") {
        return false;
    }
    passage.say(i, std::string(".") + ascii::lower(text[0]) + " star" + ending);
    return true;
}

bool say_bracketed(Passage& passage, std::size_t i, std::string text) {
    if (text.find('(') == std::string::npos) return false;
    std::erase(text, '(');
    std::erase(text, ')');
    if (!is_letters(text)) return false;
    passage.say(i, unicode::fold(text));
    return true;
}

// Signs that nobody says: emoji, keycaps, shapes, trade marks. No letter or figure among them.
bool is_unspoken(std::string_view raw) {
    bool spoken = false;
    for (std::size_t at = 0; at < raw.size();) {
        const unicode::CodePoint point = unicode::decode(raw, at);
        at += point.size;
        if (point.value == 0x20e3) return true; // a keycap holds a figure
        const bool lifted = point.value == U'¹' || point.value == U'²' || point.value == U'³' ||
                            (point.value >= 0x2070 && point.value <= 0x2089); // "¹⁄₂"
        spoken |= lifted || (point.value < 0x80 ? ascii::is_alnum(static_cast<char>(point.value))
                                                : unicode::is_letter(point.value));
    }
    return !spoken;
}

// "The mean was 14.3 (SD 2.1)", "SD = 3"
bool say_standard_deviation(Passage& passage, std::size_t i) {
    if (passage.raw(i) != "SD" || !passage.joined(i)) return false;
    const std::optional<Figure> figure = read_figure(passage.text(i + 1));
    const bool decimal = figure && figure->is_bare() && !figure->fraction.empty();
    if (!decimal && passage.text(i + 1) != "=") return false;
    passage.say(i, "standard deviation");
    return true;
}

} // namespace

bool say_symbol(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const std::string text = passage.text(i);
    if (text == "-") return say_lone_hyphen(passage, i);
    if (say_standard_deviation(passage, i)) return true;
    if (text == "x" || text == "X") return say_lone_x(passage, i);
    if (text == "/" && i > 0 &&
        (passage.text(i + 2) == "=" || (i > 1 && passage.text(i - 2) == "="))) {
        passage.say(i, "divided by"); // "12 / 4 = 3", "v = d / t"
        return true;
    }
    if (text == "×" && say_lone_x(passage, i)) return true;
    if (text.size() <= 3 && passage.joined(i) &&
        (!passage.follows(i) || has_no_verb_to_compare(passage, i))) {
        const std::string_view words = words_before_figure(text);
        const std::string next = passage.text(i + 1);
        if (!words.empty() && read_figure(next)) {
            passage.say(i, words);
            return true;
        }
    }
    for (const std::string_view sign : {std::string_view(raw), std::string_view(text)}) {
        const std::string_view words = sign_words(sign);
        if (words.empty()) continue;
        passage.say(i, words);
        return true;
    }
    if (const FractionSign* sign = fraction_sign_at(raw); sign && sign->sign == raw) {
        const bool behind_number = passage.follows(i) && ascii::is_digit(passage.raw(i - 1).back());
        passage.say(i, behind_number ? "and " + std::string(sign->behind)
                                     : part_before_noun(passage, i, std::string(sign->alone)));
        say_unit_behind(passage, i, behind_number ? Number::plural : Number::singular);
        return true;
    }
    if (say_starred(passage, i, text) || say_marked_down(passage, i)) return true;
    if (is_unspoken(raw)) {
        passage.say(i, "");
        return true;
    }
    if (text.find('/') != std::string::npos) {
        if (say_unit_pair(passage, i, text) || say_letters_over(passage, i, text)) return true;
        return say_joined_words(passage, i, text);
    }
    return say_bracketed(passage, i, text);
}

std::string_view sign_words(std::string_view sign) {
    const auto* found = std::find_if(signs.begin(), signs.end(),
                                     [sign](const Named& named) { return named.sign == sign; });
    return found == signs.end() ? std::string_view{} : found->words;
}

} // namespace say
