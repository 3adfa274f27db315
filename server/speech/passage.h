// The written words of one thought while they are turned into spoken ones. Each class of written
// form (spoken_*.cpp) is a function from a place in the passage to true if it has said the word
// there; it may say words behind it too. docs/spoken-forms.md lists the classes.
#pragma once

#include "speech/spoken.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

class Passage {
public:
    Passage(std::string_view plain, std::span<const Span> words, Language language);

    Language language() const { return language_; }
    bool is_uk() const { return language_ == Language::en_gb; }
    std::size_t size() const { return words_.size(); }

    // The written word with typographic signs made plain: straight apostrophe, hyphen for every
    // dash, ASCII digits for full-width, raised and lowered ones. Empty outside the passage.
    std::string text(std::size_t i) const;
    std::string_view raw(std::size_t i) const;
    // The same in lower case.
    std::string folded(std::size_t i) const;

    // What stands between a word and the next, and whether that is blanks alone, blanks and one
    // full stop ("Dr. Hill"), or blanks and one comma.
    std::string_view between(std::size_t i) const;
    bool joined(std::size_t i) const;
    bool joined_by_stop(std::size_t i) const;
    bool joined_by_comma(std::size_t i) const;
    // Joined, with or without a full stop.
    bool adjacent(std::size_t i) const { return joined(i) || joined_by_stop(i); }
    bool stop_behind(std::size_t i) const;
    // Does the word before i come right before it, with blanks alone between?
    bool follows(std::size_t i) const { return i > 0 && joined(i - 1); }

    bool is_said(std::size_t i) const { return i >= size() || said_[i]; }
    // `words` parted by blanks; one with a leading dot is said letter by letter: "five .pm".
    void say(std::size_t i, std::string_view words);
    void say(std::size_t i, std::string_view words, std::vector<std::string> readings);

    // More than half of the words in capitals: capitals then tell nothing.
    bool shouts() const;

    std::vector<Spoken> take() { return std::move(spoken_); }
    // For the plain words, which need no more than this.
    void say_plain(std::size_t i, std::string word);

private:
    std::string_view plain_;
    std::span<const Span> words_;
    Language language_;
    std::vector<Spoken> spoken_;
    std::vector<char> said_;
    mutable std::optional<bool> shouts_;
};

// Words for a template: "five" and "kilograms" to "five kilograms", blanks only where needed.
void append_words(std::string& words, std::string_view more);

// A dash with or without blanks and stops, and nothing else.
bool is_dash_gap(std::string_view gap);

// Classes of written form; true if word `i` (and perhaps some behind it) has been said.
bool say_electronic(Passage& passage, std::size_t i);
bool say_telephone(Passage& passage, std::size_t i);
bool say_date(Passage& passage, std::size_t i);
bool say_year(Passage& passage, std::size_t i);
bool say_time(Passage& passage, std::size_t i);
bool say_address(Passage& passage, std::size_t i);
bool say_state(Passage& passage, std::size_t i);
bool say_money(Passage& passage, std::size_t i);
bool say_measure(Passage& passage, std::size_t i);
bool say_rate(Passage& passage, std::size_t i);
bool say_bare_unit(Passage& passage, std::size_t i);
// "m s⁻²": also says the units before and behind the one at i.
bool say_unit_product(Passage& passage, std::size_t i);
bool say_range(Passage& passage, std::size_t i);
bool say_fraction(Passage& passage, std::size_t i);
bool say_figure(Passage& passage, std::size_t i);
bool say_roman(Passage& passage, std::size_t i);
bool say_abbreviation(Passage& passage, std::size_t i);
// "No.5", "pp.12-18": the abbreviation against its figure.
bool say_glued_abbreviation(Passage& passage, std::size_t i);
bool say_glued_number(Passage& passage, std::size_t i);
bool say_initials(Passage& passage, std::size_t i);
bool say_symbol(Passage& passage, std::size_t i);
void say_mixed(Passage& passage, std::size_t i);

bool say_names_of_dates(Passage& passage, std::size_t i);
bool say_span_of_names(Passage& passage, std::size_t i);
bool say_short_weekday(Passage& passage, std::size_t i);
bool say_direction(Passage& passage, std::size_t i);
bool say_power(Passage& passage, std::size_t i);
// "2πr²", "s/t" of a sum.
bool say_term(Passage& passage, std::size_t i);
bool say_spaced_thousands(Passage& passage, std::size_t i);
bool say_formula(Passage& passage, std::size_t i);
// "¹⁴C"
bool say_nuclide(Passage& passage, std::size_t i);
bool say_small_roman(Passage& passage, std::size_t i);
// "diy": initials in small letters that are no word.
bool say_small_initials(Passage& passage, std::size_t i);

// "one half" as it stands: "half a mile", "a half mile", "a quarter cup".
std::string part_before_noun(const Passage& passage, std::size_t i, std::string words);
// Behind "step", "slide" and the like "3/10" is one of many.
bool is_part_numbered(const Passage& passage, std::size_t i);
// "1/12 of its range", "by 3/12 each": a part of a whole and no day, and so the next of its kind.
bool is_part_of_whole(const Passage& passage, std::size_t i);
// "The odds are 10/1", "at odds of 9/2", "10/1 odds".
bool is_odds(const Passage& passage, std::size_t i);
// "Fri" before a date or time that begins at `first` becomes "friday".
void say_weekday_before(Passage& passage, std::size_t first);
// 11, 12 to "november twelfth", UK "the eleventh of december"; empty if they make no date.
std::string day_and_month_words(int first, int second, Language language);

// The figure that a raised sign stands for, '-' for a minus, 0 for anything else.
char raised_sign(char32_t c);
// "2" to "squared", "-3" to "to the power of minus three"; empty if it is no figure.
std::string power_words(std::string_view power, Language language);

// "sept" to "september"; empty if it is no month.
std::string_view month_words(std::string_view folded);
// "ave" to "avenue"; empty if it is no street word.
std::string_view street_words(std::string_view folded);
// "√" to "the square root of"; empty if it is no sign with a name.
std::string_view sign_words(std::string_view sign);
bool is_abbreviation(std::string_view folded);

} // namespace say
