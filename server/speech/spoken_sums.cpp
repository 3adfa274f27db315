// Terms of algebra ("2πr²", "Δt", "mv²") and what is divided in a sum ("v = s/t", "6/2 = 3"). A
// slash beside a sign of a sum is "over": what stands there is neither a day nor a choice of two
// letters.
#include "base/lists.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

bool all_digits(std::string_view text) {
    return !text.empty() && std::all_of(text.begin(), text.end(), ascii::is_digit);
}

bool is_greek(char32_t c) {
    return (c >= 0x391 && c <= 0x3c9) || c == 0xb5 || c == 0x2206; // µ, ∆
}

struct Term {
    std::string words;
    std::size_t latin = 0;
    std::size_t greek = 0;
    bool raised = false;
};

// Reads a term from its left; what is left over is no term.
class TermReader {
public:
    TermReader(std::string_view raw, Language language) : rest_(raw), language_(language) {}

    std::optional<Term> read() {
        take_sign();
        take_number();
        while (!rest_.empty()) {
            if (!take_charge() && !take_letter() && !take_lowered() && !take_raised())
                return std::nullopt;
        }
        flush();
        if (term_.words.empty()) return std::nullopt;
        return std::move(term_);
    }

private:
    void take_sign() {
        for (const std::string_view minus : {"-", "−"}) {
            if (!rest_.starts_with(minus)) continue;
            term_.words = "minus";
            rest_.remove_prefix(minus.size());
            return;
        }
    }

    void take_number() {
        if (const FractionSign* sign = fraction_sign_at(rest_)) {
            append_words(term_.words, sign->alone);
            rest_.remove_prefix(sign->sign.size());
            return;
        }
        std::size_t size = 0;
        while (size < rest_.size() && (ascii::is_digit(rest_[size]) || rest_[size] == '.'))
            ++size;
        if (size == 0) return;
        const std::optional<Figure> figure = read_figure(rest_.substr(0, size));
        if (!figure || !figure->suffix.empty()) return;
        append_words(term_.words, number_words(*figure, language_));
        rest_.remove_prefix(size);
    }

    bool take_letter() {
        if (ascii::is_letter(rest_[0])) {
            letters_ += ascii::lower(rest_.substr(0, 1));
            rest_.remove_prefix(1);
            ++term_.latin;
            return true;
        }
        const unicode::CodePoint point = unicode::decode(rest_, 0);
        if (!is_greek(point.value)) return false;
        const std::string_view name = sign_words(rest_.substr(0, point.size));
        if (name.empty()) return false;
        flush();
        append_words(term_.words, name);
        rest_.remove_prefix(point.size);
        ++term_.greek;
        return true;
    }

    // "β⁻", "e⁻"
    bool take_charge() {
        const bool plus = rest_ == "⁺";
        if (!plus && rest_ != "⁻") return false;
        flush();
        append_words(term_.words, plus ? "plus" : "minus");
        term_.raised = true;
        rest_ = {};
        return true;
    }

    // "m₁"
    bool take_lowered() {
        std::string digits;
        while (!rest_.empty()) {
            const unicode::CodePoint point = unicode::decode(rest_, 0);
            if (point.value < 0x2080 || point.value > 0x2089) break;
            digits += static_cast<char>('0' + (point.value - 0x2080));
            rest_.remove_prefix(point.size);
        }
        if (digits.empty() || digits.size() > 2) return false;
        flush();
        append_words(term_.words, cardinal(digits, language_));
        return true;
    }

    bool take_raised() {
        std::string power;
        if (rest_.starts_with('^')) {
            rest_.remove_prefix(1);
            std::size_t size = rest_.starts_with('-') ? 1 : 0;
            while (size < rest_.size() && ascii::is_digit(rest_[size]))
                ++size;
            power = rest_.substr(0, size);
            rest_.remove_prefix(size);
        } else {
            while (!rest_.empty()) {
                const unicode::CodePoint point = unicode::decode(rest_, 0);
                const char sign = raised_sign(point.value);
                if (sign == '\0') break;
                power += sign;
                rest_.remove_prefix(point.size);
            }
        }
        const std::string words = power_words(power, language_);
        if (words.empty()) return false;
        flush();
        append_words(term_.words, words);
        term_.raised = true;
        return true;
    }

    void flush() {
        if (!letters_.empty()) append_words(term_.words, "." + letters_);
        letters_.clear();
    }

    std::string_view rest_;
    Language language_;
    std::string letters_; // said one by one
    Term term_;
};

bool is_sign_of_sum(std::string_view text) {
    static constexpr auto signs = std::to_array<std::string_view>(
        {"=", "≈", "≠", "≤", "≥", "<=", ">=", "<", ">", "+", "×", "÷", "·", "∝"});
    return is_one_of(text, signs);
}

// "= s/t", "6/2 = 3"; a word of "The mean is 12/4" says as much.
bool is_in_sum(const Passage& passage, std::size_t i) {
    return (passage.follows(i) && is_sign_of_sum(passage.text(i - 1))) ||
           (passage.joined(i) && is_sign_of_sum(passage.text(i + 1)));
}

bool is_said_to_be(const Passage& passage, std::size_t i) {
    static constexpr auto verbs =
        std::to_array<std::string_view>({"equals", "is", "makes", "means", "was"});
    return passage.follows(i) && is_one_of(passage.folded(i - 1), verbs);
}

// "The mean is 12/4."
bool is_named_result(const Passage& passage, std::size_t i) {
    static constexpr auto results = std::to_array<std::string_view>({
        "answer",
        "average",
        "chance",
        "fraction",
        "gradient",
        "mean",
        "median",
        "quotient",
        "rate",
        "ratio",
        "probability",
        "result",
        "slope",
        "speed",
        "sum",
        "value",
        "density",
        "proportion",
    });
    return is_said_to_be(passage, i) && passage.follows(i - 1) &&
           is_one_of(passage.folded(i - 2), results);
}

// "6/2 = 3", "12/25 = 0.48": a part where it is less than one, else the one over the other.
bool say_divided_numbers(Passage& passage, std::size_t i, std::string_view top,
                         std::string_view bottom) {
    const int upper = to_int(top).value_or(0);
    const int lower = to_int(bottom).value_or(0);
    if (upper == lower || (upper == 24 && lower == 7)) return false;
    if (passage.follows(i) && all_digits(passage.text(i - 1))) return false; // "2 1/2"
    const Language language = passage.language();
    const std::string over = cardinal(top, language) + " over " + cardinal(bottom, language);
    if (!is_in_sum(passage, i) && !is_named_result(passage, i)) return false;
    passage.say(i, upper < lower && lower < 1000 ? fraction(top, bottom, language) : over);
    return true;
}

// "4/3πr³" is four thirds of it; "b/2a" is over all of it.
std::optional<std::string> part_of_term(std::string_view top, std::string_view bottom,
                                        Language language) {
    const auto end = std::find_if_not(bottom.begin(), bottom.end(), ascii::is_digit);
    const auto size = static_cast<std::size_t>(end - bottom.begin());
    if (!all_digits(top) || size != 1 || size == bottom.size() || bottom[size] == '.')
        return std::nullopt;
    const std::optional<Term> term = TermReader(bottom.substr(size), language).read();
    if (!term) return std::nullopt;
    return fraction(top, bottom.substr(0, size), language) + ' ' + term->words;
}

// "Speed = distance/time"
bool say_quotient_of_words(Passage& passage, std::size_t i, std::string_view top,
                           std::string_view bottom) {
    const auto is_word = [](std::string_view part) {
        return part.size() > 2 && std::all_of(part.begin(), part.end(), ascii::is_letter);
    };
    if (!is_word(top) || !is_word(bottom) || !passage.follows(i) || passage.text(i - 1) != "=")
        return false;
    passage.say(i, ascii::lower(top) + " over " + ascii::lower(bottom));
    return true;
}

// "e⁻": an electron; ions have capitals and a form of their own.
bool say_charged_letter(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (!ascii::is_lower(raw[0]) || (!raw.ends_with("⁻") && !raw.ends_with("⁺"))) return false;
    const std::optional<Term> term = TermReader(raw, passage.language()).read();
    if (!term || term->latin != 1) return false;
    passage.say(i, term->words);
    return true;
}

// "s/t", "F/A", "b/2a", "312/6.25", "Gm₁m₂/r²", "Σx/n"
bool say_quotient(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const std::size_t slash = raw.find('/');
    if (slash == std::string_view::npos || slash == 0 || raw.size() > 32 ||
        raw.find('/', slash + 1) != std::string_view::npos)
        return false;
    const std::string_view top = raw.substr(0, slash);
    const std::string_view bottom = raw.substr(slash + 1);
    if (all_digits(top) && all_digits(bottom)) return say_divided_numbers(passage, i, top, bottom);
    const Language language = passage.language();
    if (say_quotient_of_words(passage, i, top, bottom)) return true;
    const std::optional<Term> upper = TermReader(top, language).read();
    const std::optional<Term> lower = TermReader(bottom, language).read();
    if (!upper || !lower || upper->latin > 4 || lower->latin > 4) return false;
    const bool single = upper->latin == 1 && lower->latin == 1 && raw.size() == 3;
    const bool powers = (upper->raised || lower->raised) && // "v²/r", but "m²/s" is a unit
                        unit_words(passage.text(i), Number::plural, language).empty();
    const bool sum = powers || is_in_sum(passage, i) || upper->greek + lower->greek > 0 ||
                     is_named_result(passage, i) ||
                     (single && is_said_to_be(passage, i) && ascii::is_upper(top[0]) && top != "A");
    if (!sum) return false;
    const std::optional<std::string> part = part_of_term(top, bottom, language);
    passage.say(i, part ? *part : upper->words + " over " + lower->words);
    return true;
}

// "2πr", "Δt", "πr²"; a word of Greek has more of its letters, and "µm" is a unit.
bool say_greek_term(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (raw.size() > 16) return false;
    const std::optional<Term> term = TermReader(raw, passage.language()).read();
    const std::size_t most = is_in_sum(passage, i) ? 4 : 2;
    if (!term || term->greek == 0 || term->greek > 2 || term->latin > most) return false;
    const bool alone = term->latin == 0 && !term->raised && !ascii::is_digit(raw[0]);
    if (alone || !unit_words(passage.text(i), Number::plural, passage.language()).empty())
        return false;
    const std::optional<Figure> figure = read_figure(passage.text(i)); // "5µm"
    if (figure && !figure->suffix.empty() &&
        !unit_words(figure->suffix, Number::plural, passage.language()).empty())
        return false;
    passage.say(i, term->words);
    return true;
}

// "α-particle", "γ-rays"
bool say_greek_compound(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const std::size_t hyphen = raw.find('-');
    if (hyphen == std::string_view::npos || hyphen > 2 || !ascii::is_high(raw[0])) return false;
    const std::string_view name = sign_words(raw.substr(0, hyphen));
    const std::string_view word = raw.substr(hyphen + 1);
    const bool letters = word.size() > 2 && std::all_of(word.begin(), word.end(), ascii::is_lower);
    if (name.empty() || !letters || !is_greek(unicode::decode(raw, 0).value)) return false;
    passage.say(i, std::string(name) + ' ' + std::string(word));
    return true;
}

// "E = h*f", where a sum is written as it is typed.
bool say_typed_product(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const std::size_t star = raw.find('*');
    if (star == std::string_view::npos || raw.size() > 16 || !is_in_sum(passage, i)) return false;
    const Language language = passage.language();
    const std::optional<Term> first = TermReader(raw.substr(0, star), language).read();
    const std::optional<Term> second = TermReader(raw.substr(star + 1), language).read();
    if (!first || !second || first->latin > 2 || second->latin > 2) return false;
    passage.say(i, first->words + " times " + second->words);
    return true;
}

// "x = -b": the minus of one letter.
bool say_negative_letter(Passage& passage, std::size_t i) {
    const std::string text = passage.text(i);
    if (!text.starts_with('-') || !is_in_sum(passage, i)) return false;
    const std::optional<Term> term = TermReader(passage.raw(i), passage.language()).read();
    if (!term || term->latin == 0 || term->latin > 2) return false;
    passage.say(i, term->words);
    return true;
}

// "b)²" of "(a + b)²"
bool say_power_of_sum(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    const std::size_t bracket = raw.find(')');
    if (bracket == std::string_view::npos || bracket == 0 || bracket + 1 == raw.size())
        return false;
    std::string_view last = raw.substr(0, bracket);
    if (last.starts_with('(')) last.remove_prefix(1);
    const Language language = passage.language();
    const std::optional<Term> term = TermReader(last, language).read();
    const std::optional<Term> power =
        TermReader(std::string("x") + std::string(raw.substr(bracket + 1)), language).read();
    if (!term || term->latin > 2 || !power || !power->raised || power->latin > 1) return false;
    passage.say(i, term->words + " all" + power->words.substr(power->words.find(' ')));
    return true;
}

} // namespace

std::string power_words(std::string_view power, Language language) {
    const bool minus = power.starts_with('-');
    const std::string_view digits = power.substr(minus ? 1 : 0);
    if (!all_digits(digits) || digits.size() > 3) return {};
    if (power == "2") return "squared";
    if (power == "3") return "cubed";
    return std::string("to the power of ") + (minus ? "minus " : "") + cardinal(digits, language);
}

bool say_term(Passage& passage, std::size_t i) {
    using Class = bool (*)(Passage&, std::size_t);
    static constexpr auto classes = std::to_array<Class>({
        say_quotient,
        say_power_of_sum,
        say_greek_term,
        say_greek_compound,
        say_typed_product,
        say_charged_letter,
        say_negative_letter,
    });
    return std::any_of(classes.begin(), classes.end(),
                       [&](Class say_class) { return say_class(passage, i); });
}

} // namespace say
