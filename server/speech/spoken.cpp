// Written words to spoken words. Most words are plain letters and take the short way; the rest are
// offered to each class of written form in turn, the most particular first.
#include "speech/spoken.h"

#include "speech/passage.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

using Class = bool (*)(Passage&, std::size_t);

// With a digit in it. The order is that of how much a class asks for.
constexpr auto figure_classes = std::to_array<Class>({
    say_unit_product,
    say_power,
    say_formula,
    say_electronic,
    say_term,
    say_telephone,
    say_spaced_thousands,
    say_date,
    say_time,
    say_address,
    say_money,
    say_measure,
    say_rate,
    say_year,
    say_range,
    say_fraction,
    say_figure,
});

// Without.
constexpr auto sign_classes = std::to_array<Class>({
    say_money,
    say_names_of_dates,
    say_formula,
    say_rate,
    say_power,
    say_term,
    say_direction,
    say_symbol,
    say_abbreviation,
    say_electronic,
    say_initials,
});

constexpr auto capital_classes = std::to_array<Class>({
    say_roman,
    say_state,
    say_direction,
    say_money,
    say_formula,
    say_rate,
    say_names_of_dates,
    say_abbreviation,
    say_symbol,
    say_initials,
});

enum class Shape { small, capitals, figure, signs };

struct Looks {
    Shape shape = Shape::small;
    bool ascii = true;
};

// One pass over the word: what does it hold?
Looks look_at(std::string_view word) {
    Looks looks;
    bool digit = false;
    bool sign = false;
    std::size_t capitals = 0;
    for (std::size_t at = 0; at < word.size(); ++at) {
        const char c = word[at];
        if (ascii::is_lower(c)) continue;
        if (ascii::is_upper(c)) {
            capitals += at > 0 || word.size() == 1;
        } else if (ascii::is_digit(c)) {
            digit = true;
        } else if (ascii::is_high(c)) {
            looks.ascii = false;
        } else {
            sign |= c != '\'' && c != '-';
        }
    }
    if (digit) {
        looks.shape = Shape::figure;
    } else if (sign) {
        looks.shape = Shape::signs;
    } else if (capitals > 0) {
        looks.shape = Shape::capitals;
    }
    return looks;
}

// Letters of any script, with apostrophes and hyphens: said as they stand.
bool is_word_of_letters(std::string_view word) {
    for (std::size_t at = 0; at < word.size();) {
        const unicode::CodePoint point = unicode::decode(word, at);
        at += point.size;
        if (point.value == '\'' || point.value == '-' || point.value == U'’' ||
            point.value == U'‑' || point.value == U'‐')
            continue;
        if (point.value < 0x80
                ? !ascii::is_letter(static_cast<char>(point.value))
                : !unicode::is_letter(point.value) && !unicode::is_ignorable(point.value)) {
            return false;
        }
    }
    return true;
}

template <std::size_t size>
bool try_classes(const std::array<Class, size>& classes, Passage& passage, std::size_t i) {
    return std::any_of(classes.begin(), classes.end(),
                       [&](Class say_class) { return say_class(passage, i); });
}

void say_folded(Passage& passage, std::size_t i, bool ascii) {
    passage.say_plain(i, ascii ? ascii::lower(passage.raw(i)) : unicode::fold(passage.raw(i)));
}

void say_small(Passage& passage, std::size_t i, bool ascii) {
    const std::string_view raw = passage.raw(i);
    // The longest abbreviation has six letters, so most words are never looked up.
    const bool single = raw.size() == 1 && raw != "a";
    if (single &&
        (say_symbol(passage, i) || say_abbreviation(passage, i) || say_initials(passage, i))) {
        return;
    }
    // A dash with blanks takes three bytes, so most words are never asked.
    if (passage.between(i).size() > 2 && say_span_of_names(passage, i)) return;
    if (ascii::is_upper(raw[0]) && say_short_weekday(passage, i)) return;
    if (raw == "Rs" && say_money(passage, i)) return;
    if (raw.size() == 2 || raw.size() == 3) {
        if (say_bare_unit(passage, i)) return;
    }
    if (ascii && raw.size() <= 6 && say_small_roman(passage, i)) return;
    if (ascii && raw.size() >= 3 && raw.size() <= 5 && say_small_initials(passage, i)) return;
    if (!ascii && raw.size() <= 3 && say_symbol(passage, i)) return; // Greek letters
    if (!single && ascii && raw.size() <= 6 && is_abbreviation(ascii::lower(raw)) &&
        say_abbreviation(passage, i))
        return;
    say_folded(passage, i, ascii);
}

void say_rest(Passage& passage, std::size_t i, bool ascii) {
    if (!ascii && is_word_of_letters(passage.raw(i))) {
        say_folded(passage, i, false);
    } else if (ascii && is_word_of_letters(passage.raw(i))) {
        say_folded(passage, i, true);
    } else {
        say_mixed(passage, i);
    }
}

// Full-width and raised digits count as digits once they are plain.
Shape shape_of_plain(const Passage& passage, std::size_t i) {
    return look_at(passage.text(i)).shape;
}

void say_word(Passage& passage, std::size_t i) {
    const Looks looks = look_at(passage.raw(i));
    const Shape shape = looks.ascii ? looks.shape : shape_of_plain(passage, i);
    if (!looks.ascii &&
        (say_nuclide(passage, i) || say_unit_product(passage, i) || say_term(passage, i)))
        return;
    switch (shape) {
    case Shape::small:
        if (looks.ascii || is_word_of_letters(passage.raw(i))) {
            say_small(passage, i, looks.ascii);
        } else if (!try_classes(sign_classes, passage, i)) {
            say_rest(passage, i, false);
        }
        break;
    case Shape::capitals:
        if (passage.raw(i) == "I") {
            if (!say_roman(passage, i)) say_folded(passage, i, true);
            break;
        }
        if (!try_classes(capital_classes, passage, i)) say_rest(passage, i, looks.ascii);
        break;
    case Shape::figure:
        if (!looks.ascii && say_symbol(passage, i)) break; // a keycap
        if (!try_classes(figure_classes, passage, i)) say_mixed(passage, i);
        break;
    case Shape::signs:
        if (!try_classes(sign_classes, passage, i)) say_rest(passage, i, looks.ascii);
        break;
    }
}

} // namespace

std::vector<Spoken> speak(std::string_view plain, std::span<const Span> words, Language language) {
    Passage passage(plain, words, language);
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!passage.is_said(i)) say_word(passage, i);
    }
    return passage.take();
}

std::string join(std::span<const SpokenWord> words) {
    std::string text;
    for (const SpokenWord& word : words)
        append_words(text, word.text);
    return text;
}

} // namespace say
