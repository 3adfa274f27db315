// Dates: "July 25, 2012", "25 July", "Jan-15-2020", "01.10.2010", "2006-08-05", years, decades and
// spans of them. Month first in US English, day first in UK English.
#include "base/lists.h"
#include "speech/lexicon.h"
#include "speech/numbers.h"
#include "speech/passage.h"
#include "speech/quantity.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr std::array<std::string_view, 13> months = {
    "",     "january", "february",  "march",   "april",    "may",     "june",
    "july", "august",  "september", "october", "november", "december"};

// 1 to 12 for a name or its abbreviation, 0 for anything else.
int month_of(std::string_view folded) {
    if (folded == "sept") return 9;
    if (folded.size() < 3) return 0;
    for (std::size_t month = 1; month < months.size(); ++month) {
        if (folded == months[month] || folded == months[month].substr(0, 3))
            return static_cast<int>(month);
    }
    return 0;
}

std::string_view month_name(int month) {
    return months[static_cast<std::size_t>(month)];
}

// "may", "march" and "mar" in small letters are words first.
bool is_doubtful_month(std::string_view text) {
    return text == "may" || text == "march" || text == "mar" || text == "dec" || text == "sep";
}

struct Day {
    int number = 0;
    bool ordinal = false; // written "25th"
};

bool is_ordinal_suffix(std::string_view suffix) {
    const std::string folded = ascii::lower(suffix);
    return folded == "st" || folded == "nd" || folded == "rd" || folded == "th";
}

std::optional<Day> read_day(std::string_view token) {
    std::size_t digits = 0;
    while (digits < token.size() && ascii::is_digit(token[digits]))
        ++digits;
    if (digits == 0 || digits > 2) return std::nullopt;
    const int number = to_int(token.substr(0, digits)).value_or(0);
    const std::string_view suffix = token.substr(digits);
    if (number < 1 || number > 31) return std::nullopt;
    if (!suffix.empty() && !is_ordinal_suffix(suffix)) return std::nullopt;
    return Day{number, !suffix.empty()};
}

// "25-27" or "25th-27th" as days; the second is 0 for a single day.
struct Days {
    Day from;
    Day to;
};

std::optional<Days> read_days(std::string_view token) {
    const std::size_t hyphen = token.find('-');
    const std::optional<Day> from = read_day(token.substr(0, hyphen));
    if (!from) return std::nullopt;
    if (hyphen == std::string_view::npos) return Days{*from, {}};
    const std::optional<Day> to = read_day(token.substr(hyphen + 1));
    if (!to) return std::nullopt;
    return Days{*from, *to};
}

std::string day_words(int day) {
    return to_ordinal(cardinal(day, Language::en_us));
}

std::string days_words(const Days& days, std::string_view article) {
    std::string words(article);
    append_words(words, day_words(days.from.number));
    if (days.to.number == 0) return words;
    append_words(words, "to");
    append_words(words, article);
    append_words(words, day_words(days.to.number));
    return words;
}

// A year of four digits without a comma; "'98" and "24" only where a date surrounds them.
std::optional<int> read_year(std::string_view token) {
    if (token.size() != 4) return std::nullopt;
    const std::optional<int> number = to_int(token);
    return number && *number >= 1000 ? number : std::nullopt;
}

std::optional<int> read_short_year(std::string_view token) {
    if (token.starts_with('\'')) token.remove_prefix(1);
    if (token.size() != 2) return std::nullopt;
    const std::optional<int> number = to_int(token);
    if (!number) return std::nullopt;
    return *number < 50 ? 2000 + *number : 1900 + *number;
}

bool before_year(const Passage& passage, std::size_t i) {
    return passage.adjacent(i) || passage.joined_by_comma(i);
}

// "Mon., Jan. 5", "Fri 13 Oct": the short name of a day before the date or time at `first`.
constexpr auto weekdays = std::to_array<std::string_view>(
    {"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"});

std::string_view weekday_of(std::string_view folded) {
    if (folded == "thurs" || folded == "thur") return "thursday";
    if (folded == "tues") return "tuesday";
    if (folded == "weds") return "wednesday";
    for (const std::string_view day : weekdays) {
        if (folded == day || folded == day.substr(0, 3)) return day;
    }
    return {};
}

// The year behind a date ("July 25, 2012"), said if there is one.
void say_year_behind(Passage& passage, std::size_t i) {
    if (!before_year(passage, i)) return;
    const std::string token = passage.text(i + 1);
    std::optional<int> number = read_year(token);
    if (!number && token.starts_with('\'')) number = read_short_year(token);
    if (number) passage.say(i + 1, year(*number, passage.language()));
}

void say_later_day(Passage& passage, std::size_t i, int day);

// "May 3 - June 5", "3 May - 5 June": the dash behind a date and before another is said with it.
std::string_view to_behind(const Passage& passage, std::size_t i) {
    if (!is_dash_gap(passage.between(i)) || !passage.adjacent(i + 1)) return {};
    const int first = month_of(passage.folded(i + 1));
    const int second = month_of(passage.folded(i + 2));
    const bool date = (first != 0 && read_days(passage.text(i + 2)).has_value()) ||
                      (second != 0 && read_days(passage.text(i + 1)).has_value());
    return date ? "to" : std::string_view{};
}

// "July 25, 2012" with the month at i - 1, already said or about to be.
bool say_day_after_month(Passage& passage, std::size_t i) {
    if (i == 0 || !passage.adjacent(i - 1)) return false;
    const std::string month = passage.text(i - 1);
    if (month_of(ascii::lower(month)) == 0) return false;
    const std::string token = passage.text(i);
    const std::optional<Days> days = read_days(token);
    const bool year_behind = before_year(passage, i) && read_year(passage.text(i + 1)).has_value();
    const std::string_view full_month = month_name(month_of(ascii::lower(month)));
    if (!days) {
        const std::optional<int> number = read_year(token);
        if (!number || (is_doubtful_month(month) && *number < 1500)) return false;
        passage.say(i - 1, full_month);
        passage.say(i, year(*number, passage.language()));
        return true;
    }
    if (is_doubtful_month(month) && !year_behind && !days->from.ordinal && passage.joined(i))
        return false;
    // "in July 25 volunteers came"
    if (!year_behind && passage.joined(i) && is_lower_plural(passage.text(i + 1)) && i > 1 &&
        passage.folded(i - 2) == "in") {
        return false;
    }
    passage.say(i - 1, full_month);
    std::string words = days_words(*days, passage.is_uk() ? "the" : "");
    append_words(words, to_behind(passage, i));
    passage.say(i, words);
    say_year_behind(passage, i);
    say_later_day(passage, i, days->from.number);
    say_weekday_before(passage, i - 1);
    return true;
}

// "3rd of May", "the 3 of May": the article is said where it is not written.
bool say_day_of_month(Passage& passage, std::size_t i) {
    if (!passage.joined(i) || passage.folded(i + 1) != "of" || !passage.adjacent(i + 1))
        return false;
    const int month = month_of(passage.folded(i + 2));
    const std::optional<Days> days = read_days(passage.text(i));
    if (month == 0 || !days) return false;
    static constexpr auto articles =
        std::to_array<std::string_view>({"the", "a", "each", "every", "this", "that", "last"});
    const bool article = passage.follows(i) && is_one_of(passage.folded(i - 1), articles);
    if (!days->from.ordinal && !article) return false;
    passage.say(i, days_words(*days, article ? "" : "the"));
    passage.say(i + 2, month_name(month));
    say_year_behind(passage, i + 2);
    say_weekday_before(passage, i);
    return true;
}

// "Fri 11 to Sun 13 June": the day whose month comes later.
void say_earlier_day(Passage& passage, std::size_t i, int day) {
    static constexpr auto links =
        std::to_array<std::string_view>({"&", "and", "or", "through", "to", "until"});
    if (i < 4 || !passage.follows(i) || !passage.follows(i - 1) || !passage.follows(i - 2) ||
        !passage.follows(i - 3))
        return;
    if (weekday_of(passage.folded(i - 1)).empty() || weekday_of(passage.folded(i - 4)).empty() ||
        !is_one_of(passage.folded(i - 2), links))
        return;
    const std::optional<Days> earlier = read_days(passage.text(i - 3));
    if (!earlier || earlier->from.number >= day) return;
    passage.say(i - 3, days_words(*earlier, "the"));
    say_weekday_before(passage, i - 3);
}

// "25 July 2012": the figure takes "the" and "of".
bool say_day_before_month(Passage& passage, std::size_t i) {
    if (!passage.joined(i)) return false;
    const std::string month = passage.text(i + 1);
    const int number = month_of(ascii::lower(month));
    const std::optional<Days> days = read_days(passage.text(i));
    if (number == 0 || !days) return false;
    const bool year_behind =
        before_year(passage, i + 1) && read_year(passage.text(i + 2)).has_value();
    if (is_doubtful_month(month) && !year_behind) return false;
    // "on 5 March 12 of us" has a day on either side; the first belongs to the month.
    const bool article = passage.follows(i) && passage.folded(i - 1) == "the";
    std::string words = days_words(*days, article ? "" : "the");
    append_words(words, "of");
    passage.say(i, words);
    std::string name(month_name(number));
    append_words(name, to_behind(passage, i + 1));
    passage.say(i + 1, name);
    say_year_behind(passage, i + 1);
    say_weekday_before(passage, i);
    say_earlier_day(passage, i, days->from.number);
    return true;
}

// "from 3 to 5 May", "on 3 and 5 May": the day whose month comes later.
bool say_day_before_later_month(Passage& passage, std::size_t i) {
    static constexpr auto cues = std::to_array<std::string_view>({"between", "from", "on"});
    if (!passage.joined(i) || !passage.joined(i + 1) || !passage.joined(i + 2)) return false;
    const std::string between = passage.folded(i + 1);
    const bool cue = passage.follows(i) && is_one_of(passage.folded(i - 1), cues);
    if (between != "to" && !(cue && (between == "and" || between == "or"))) return false;
    const std::optional<Days> from = read_days(passage.text(i));
    const std::optional<Days> to = read_days(passage.text(i + 2));
    const std::string month = passage.text(i + 3);
    if (!from || !to || from->to.number != 0 || to->to.number != 0) return false;
    if (from->from.number >= to->from.number || month_of(ascii::lower(month)) == 0) return false;
    if (!ascii::is_upper(passage.raw(i + 3)[0])) return false;
    passage.say(i, days_words(*from, "the"));
    return true;
}

// "May 3 and 4", "from May 3 to 5": the day whose month came before.
void say_later_day(Passage& passage, std::size_t i, int day) {
    static constexpr auto links =
        std::to_array<std::string_view>({"-", "and", "or", "through", "to", "until"});
    if (!passage.joined(i) || !passage.joined(i + 1)) return;
    if (!is_one_of(passage.folded(i + 1), links)) return;
    const std::optional<Days> days = read_days(passage.text(i + 2));
    if (!days || days->from.number <= day) return;
    // "On May 3 and 4 people came"
    const std::string behind = passage.joined(i + 2) ? passage.folded(i + 3) : std::string{};
    const bool counts = !behind.empty() && !is_function_word(behind);
    if (counts || month_of(behind) != 0 || behind == "of") return;
    passage.say(i + 2, days_words(*days, passage.is_uk() ? "the" : ""));
    say_year_behind(passage, i + 2);
}

struct Date {
    int day = 0;
    int month = 0;
    int year = 0; // 0: not written
    bool valid() const { return day >= 1 && day <= 31 && month >= 1 && month <= 12; }
};

std::string date_words(const Date& date, DateOrder order, Language language) {
    std::string words;
    if (order == DateOrder::month_first) {
        words = std::string(month_name(date.month)) + ' ' + day_words(date.day);
    } else {
        words = "the " + day_words(date.day) + " of " + std::string(month_name(date.month));
    }
    if (date.year != 0) append_words(words, year(date.year, language));
    return words;
}

DateOrder order_of(Language language) {
    return language == Language::en_gb ? DateOrder::day_first : DateOrder::month_first;
}

std::vector<std::string_view> split(std::string_view token, char separator) {
    std::vector<std::string_view> parts;
    while (true) {
        const std::size_t at = token.find(separator);
        parts.push_back(token.substr(0, at));
        if (at == std::string_view::npos) return parts;
        token.remove_prefix(at + 1);
    }
}

constexpr auto date_cues = std::to_array<std::string_view>({
    "after",
    "before",
    "by",
    "due",
    "friday",
    "from",
    "monday",
    "on",
    "saturday",
    "since",
    "sunday",
    "thursday",
    "through",
    "tuesday",
    "until",
    "wednesday",
});

bool has_date_cue(const Passage& passage, std::size_t i) {
    return i > 0 && (passage.joined(i - 1) || passage.joined_by_comma(i - 1)) &&
           is_one_of(passage.folded(i - 1), date_cues);
}

// "from 5/3 to 25/3", "on 5/3 and 5/4"; "from 1/4 to 1/2" are parts.
bool is_second_date(const Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    const std::size_t slash = token.find('/');
    const int first = to_int(std::string_view(token).substr(0, slash)).value_or(0);
    const int second = slash == std::string::npos
                           ? 0
                           : to_int(std::string_view(token).substr(slash + 1)).value_or(99);
    if (first < second && (second <= 4 || second == 8)) return false;
    if (i < 3 || !passage.follows(i) || !passage.follows(i - 1)) return false;
    const std::string link = passage.folded(i - 1);
    return (link == "to" || link == "and" || link == "or") &&
           passage.raw(i - 2).find('/') != std::string_view::npos && has_date_cue(passage, i - 2);
}

// What another date of the passage says: one with its year, or behind a word that a date follows.
std::optional<DateOrder> order_told_near(const Passage& passage, std::size_t i) {
    constexpr std::size_t near = 200; // words: more than a thought that can be said
    const std::size_t end = std::min(passage.size(), i + near);
    for (std::size_t at = i > near ? i - near : 0; at < end; ++at) {
        if (at == i || passage.raw(at).find('/') == std::string_view::npos) continue;
        const std::string token = passage.text(at);
        const std::optional<DateOrder> order = order_told_by(token);
        const bool dated = std::count(token.begin(), token.end(), '/') == 2;
        const bool cue = has_date_cue(passage, at) || is_second_date(passage, at);
        if (order && (dated || cue)) return order;
    }
    return std::nullopt;
}

// "a/b/year" in the order of the language, or in the only order that makes a date.
void say_doubtful_date(Passage& passage, std::size_t i, int first, int second, int year_number) {
    const Language language = passage.language();
    const Date month_first{second, first, year_number};
    const Date day_first{first, second, year_number};
    const std::optional<DateOrder> told = order_told_near(passage, i);
    const bool prefer_day = told ? *told == DateOrder::day_first : language == Language::en_gb;
    if (!month_first.valid() || !day_first.valid() || first == second) {
        const bool use_day = first == second ? prefer_day : day_first.valid();
        passage.say(i, date_words(use_day ? day_first : month_first, order_of(language), language));
        return;
    }
    const Date& likely = prefer_day ? day_first : month_first;
    const Date& other = prefer_day ? month_first : day_first;
    if (told) {
        passage.say(i, date_words(likely, order_of(language), language));
        return;
    }
    std::vector<std::string> others{date_words(other, order_of(language), language)};
    // "Down by 1/12": a day or a part.
    const bool by = passage.follows(i) && passage.folded(i - 1) == "by";
    if (by && year_number == 0 && first < second)
        others.push_back(fraction(std::to_string(first), std::to_string(second), language));
    passage.say(i, date_words(likely, order_of(language), language), std::move(others));
}

bool say_numeric_date(Passage& passage, std::size_t i, std::string_view token, char separator) {
    const std::vector<std::string_view> parts = split(token, separator);
    if (parts.size() != 3) return false;
    // "2006-08-05"
    if (const std::optional<int> number = read_year(parts[0])) {
        const Date date{to_int(parts[2]).value_or(0), to_int(parts[1]).value_or(0), *number};
        if (!date.valid() || parts[1].size() > 2 || parts[2].size() > 2) return false;
        passage.say(i, date_words(date, order_of(passage.language()), passage.language()));
        return true;
    }
    std::optional<int> number = read_year(parts[2]);
    if (!number && separator != '.') number = read_short_year(parts[2]);
    const int first = parts[0].size() <= 2 ? to_int(parts[0]).value_or(0) : 0;
    const int second = parts[1].size() <= 2 ? to_int(parts[1]).value_or(0) : 0;
    if (!number) return false;
    if (!Date{first, second, 0}.valid() && !Date{second, first, 0}.valid()) return false;
    say_doubtful_date(passage, i, first, second, *number);
    return true;
}

// "2024-07" is July; "2004-07" are years, as the second could be one. "2023/24" is a season.
bool say_year_and_more(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() < 6 || (token[4] != '-' && token[4] != '/')) return false;
    const std::optional<int> first = read_year(token.substr(0, 4));
    const std::string_view rest = token.substr(5);
    const std::optional<int> second = to_int(rest);
    if (!first || !second || *first < 1900 || *first > 2100) return false;
    const Language language = passage.language();
    if (token[4] == '/') {
        const bool season = rest.size() == 1   ? *second == (*first + 1) % 10
                            : rest.size() == 2 ? *second == (*first + 1) % 100
                                               : rest.size() == 4 && *second == *first + 1;
        if (!season) return false;
        const std::string behind =
            rest.size() == 4
                ? year(*second, language)
                : (rest.size() == 2 && rest[0] == '0' ? "oh " : "") + cardinal(*second, language);
        passage.say(i, year(*first, language) + ' ' + behind);
        return true;
    }
    if (rest.size() != 2 || *second < 1 || *second > 12 || *second > *first % 100) return false;
    passage.say(i, std::string(month_name(*second)) + ' ' + year(*first, language));
    return true;
}

// "Jan-15-2020", "15-Jan-2020", "15-Jan", "Jan-15", "Jan-2020"
bool say_joined_date(Passage& passage, std::size_t i, std::string_view token) {
    const char separator = token.find('/') != std::string_view::npos ? '/' : '-';
    const std::vector<std::string_view> parts = split(token, separator);
    if (parts.size() < 2 || parts.size() > 3) return false;
    const int first_month = month_of(ascii::lower(parts[0]));
    const int second_month = month_of(ascii::lower(parts[1]));
    if ((first_month == 0) == (second_month == 0)) return false;
    const std::optional<Day> day = read_day(first_month != 0 ? parts[1] : parts[0]);
    const Language language = passage.language();
    if (!day) {
        const std::optional<int> number = read_year(parts[1]);
        if (!number || parts.size() != 2) return false;
        passage.say(i, std::string(month_name(first_month)) + ' ' + year(*number, language));
        return true;
    }
    Date date{day->number, first_month != 0 ? first_month : second_month, 0};
    if (parts.size() == 3) {
        std::optional<int> number = read_year(parts[2]);
        if (!number) number = read_short_year(parts[2]);
        if (!number) return false;
        date.year = *number;
    }
    passage.say(i, date_words(date, first_month != 0 ? order_of(language) : DateOrder::day_first,
                              language));
    if (date.year == 0) say_year_behind(passage, i);
    return true;
}

// "Wed., 3/4": a stop and a comma at most.
bool is_gap_of_name(std::string_view gap) {
    if (gap.starts_with('.')) gap.remove_prefix(1);
    if (gap.starts_with(',')) gap.remove_prefix(1);
    return gap.find_first_not_of(' ') == std::string_view::npos;
}

// "5/3": a date after "on Monday", else a fraction or a date, which is for the writer to say.
bool say_day_and_month(Passage& passage, std::size_t i, std::string_view token) {
    if (is_part_numbered(passage, i) || is_part_of_whole(passage, i) || is_odds(passage, i))
        return false;
    const std::vector<std::string_view> parts = split(token, '/');
    if (parts.size() != 2 || parts[0].size() > 2) return false;
    const int first = to_int(parts[0]).value_or(0);
    if (const std::optional<int> number = read_year(parts[1]);
        number && first >= 1 && first <= 12) {
        if (*number < 1900 || *number > 2100) return false;
        passage.say(i, std::string(month_name(first)) + ' ' + year(*number, passage.language()));
        return true;
    }
    if (parts[1].size() > 2) return false;
    const int second = to_int(parts[1]).value_or(0);
    if (first == 0 || second == 0) return false;
    const bool month_first = Date{second, first, 0}.valid();
    const bool day_first = Date{first, second, 0}.valid();
    if (!month_first && !day_first) return false;
    const bool weekday = i > 0 && is_gap_of_name(passage.between(i - 1)) &&
                         ascii::is_upper(passage.raw(i - 1)[0]) &&
                         !weekday_of(passage.folded(i - 1)).empty();
    const bool cue = weekday || has_date_cue(passage, i) || is_second_date(passage, i);
    // What happened, unless a year makes it a day.
    if (token == "9/11") {
        const std::string words = "nine eleven";
        if (passage.is_uk() && cue) {
            passage.say(
                i, words,
                {date_words(Date{first, second, 0}, DateOrder::day_first, passage.language())});
        } else {
            passage.say(i, words);
        }
        return true;
    }
    // "22/7" in the US, where the day comes second.
    if (!cue && !passage.is_uk() && !month_first && second <= 10) return false;
    if (!cue && (first == second || token == "24/7" || token == "9/11" || token == "7/7"))
        return false;
    // Without a cue it is a date where no fraction is usual: "5/3", "12/25", but "3/4" and "1/20".
    const bool one_order = month_first != day_first;
    const bool usual = first == 1 || second <= 10 || second == 16 || second == 20;
    if (!cue && first < second && (!one_order || usual)) return false;
    say_doubtful_date(passage, i, first, second, 0);
    if (weekday) say_weekday_before(passage, i);
    return true;
}

// "May 15-June 2" and "May 2019-June 2020", whose middle word belongs to both dates.
bool say_span_from_month(Passage& passage, std::size_t i, std::string_view token) {
    if (i == 0 || !passage.adjacent(i - 1) || !passage.adjacent(i)) return false;
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos) return false;
    const int from_month = month_of(passage.folded(i - 1));
    const int to_month = month_of(ascii::lower(token.substr(hyphen + 1)));
    if (from_month == 0 || to_month == 0) return false;
    const std::string behind = passage.text(i + 1);
    const std::optional<Day> from = read_day(token.substr(0, hyphen));
    const std::optional<Day> to = read_day(behind);
    const std::optional<int> from_year = read_year(token.substr(0, hyphen));
    const std::optional<int> to_year = read_year(behind);
    const Language language = passage.language();
    const std::string article = passage.is_uk() ? "the " : "";
    const std::string between = " to " + std::string(month_name(to_month));
    if (from && to) {
        passage.say(i, article + day_words(from->number) + between);
        passage.say(i + 1, article + day_words(to->number));
        say_year_behind(passage, i + 1);
    } else if (from_year && to_year) {
        passage.say(i, year(*from_year, language) + between);
        passage.say(i + 1, year(*to_year, language));
    } else {
        return false;
    }
    passage.say(i - 1, month_name(from_month));
    return true;
}

// "15 May-2 June"
bool say_span_from_day(Passage& passage, std::size_t i) {
    if (!passage.joined(i) || !passage.adjacent(i + 1)) return false;
    const std::string token = passage.text(i + 1);
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string::npos) return false;
    const std::optional<Day> from = read_day(passage.text(i));
    const std::optional<Day> to = read_day(token.substr(hyphen + 1));
    const int from_month = month_of(ascii::lower(token.substr(0, hyphen)));
    const int to_month = month_of(passage.folded(i + 2));
    if (!from || !to || from_month == 0 || to_month == 0) return false;
    passage.say(i, "the " + day_words(from->number) + " of");
    passage.say(i + 1,
                std::string(month_name(from_month)) + " to the " + day_words(to->number) + " of");
    passage.say(i + 2, month_name(to_month));
    say_year_behind(passage, i + 2);
    return true;
}

// "9 March-Friday 13 March"
bool say_span_over_weekday(Passage& passage, std::size_t i) {
    if (!passage.joined(i) || !passage.joined(i + 1) || !passage.joined(i + 2)) return false;
    const std::string token = passage.folded(i + 1);
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string::npos) return false;
    const int from_month = month_of(std::string_view(token).substr(0, hyphen));
    const std::string_view weekday = weekday_of(std::string_view(token).substr(hyphen + 1));
    const std::optional<Day> from = read_day(passage.text(i));
    const std::optional<Day> to = read_day(passage.text(i + 2));
    const int to_month = month_of(passage.folded(i + 3));
    if (from_month == 0 || weekday.empty() || !from || !to || to_month == 0) return false;
    passage.say(i, "the " + day_words(from->number) + " of");
    passage.say(i + 1, std::string(month_name(from_month)) + " to " + std::string(weekday));
    passage.say(i + 2, "the " + day_words(to->number) + " of");
    passage.say(i + 3, month_name(to_month));
    say_year_behind(passage, i + 3);
    say_weekday_before(passage, i);
    return true;
}

// "the weekend of 3/4 May", "3rd/4th May": two days, one behind the other.
bool say_neighbouring_days(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos || !passage.joined(i)) return false;
    const std::optional<Day> first = read_day(token.substr(0, slash));
    const std::optional<Day> second = read_day(token.substr(slash + 1));
    const int month = month_of(passage.folded(i + 1));
    if (!first || !second || second->number != first->number + 1 || month == 0 ||
        !ascii::is_upper(passage.raw(i + 1)[0]))
        return false;
    const bool article = passage.follows(i) && passage.folded(i - 1) == "the";
    passage.say(i, (article ? "" : "the ") + day_words(first->number) + " and " +
                       day_words(second->number) + " of");
    passage.say(i + 1, month_name(month));
    say_year_behind(passage, i + 1);
    return true;
}

struct DayAndMonth {
    int first = 0;
    int second = 0;
    Date dated(DateOrder order) const {
        return order == DateOrder::day_first ? Date{first, second, 0} : Date{second, first, 0};
    }
};

std::optional<DayAndMonth> read_day_and_month(std::string_view token) {
    const std::vector<std::string_view> parts = split(token, '/');
    if (parts.size() != 2 || parts[0].size() > 2 || parts[1].size() > 2) return std::nullopt;
    return DayAndMonth{to_int(parts[0]).value_or(0), to_int(parts[1]).value_or(0)};
}

// "9/3-13/3": the end that can be read one way only tells the other.
bool say_slashed_span(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos) return false;
    const std::optional<DayAndMonth> from = read_day_and_month(token.substr(0, hyphen));
    const std::optional<DayAndMonth> to = read_day_and_month(token.substr(hyphen + 1));
    if (!from || !to) return false;
    const Language language = passage.language();
    const auto words = [&](DateOrder order) {
        const Date first = from->dated(order);
        const Date last = to->dated(order);
        if (!first.valid() || !last.valid()) return std::string{};
        return date_words(first, order_of(language), language) + " to " +
               date_words(last, order_of(language), language);
    };
    const DateOrder own = order_of(language);
    const bool day_first = own == DateOrder::day_first;
    const std::string likely = words(own);
    const std::string other = words(day_first ? DateOrder::month_first : DateOrder::day_first);
    if (likely.empty() && other.empty()) return false;
    if (likely.empty() || other.empty()) {
        passage.say(i, likely.empty() ? other : likely);
    } else {
        passage.say(i, likely, {other});
    }
    return true;
}

// "1960s", "'80s", "80s", "1960's"
std::optional<int> read_decade(std::string_view token) {
    if (token.starts_with('\'')) token.remove_prefix(1);
    if (!token.ends_with('s')) return std::nullopt;
    token.remove_suffix(1);
    if (token.ends_with('\'')) token.remove_suffix(1);
    if (token.size() != 2 && token.size() != 4) return std::nullopt;
    const std::optional<int> number = to_int(token);
    if (!number || *number % 10 != 0 || *number == 0) return std::nullopt;
    return number;
}

std::string decade_words(int number, Language language) {
    return decade(number, language);
}

// "a 30s clip" lasts thirty seconds; "the 30s" are ten years.
bool is_length_of_time(const Passage& passage, std::size_t i, std::string_view token) {
    static constexpr auto cues = std::to_array<std::string_view>({
        "a",
        "about",
        "after",
        "every",
        "for",
        "nearly",
        "only",
        "over",
        "under",
        "within",
    });
    static constexpr auto periods = std::to_array<std::string_view>({
        "band",
        "classic",
        "film",
        "hit",
        "movie",
        "music",
        "song",
        "songs",
        "style",
        "tune",
    });
    static constexpr auto intervals =
        std::to_array<std::string_view>({"each", "off", "on", "rest"});
    if (token.size() != 3) return false;
    const auto is_next = [&](const auto& words) {
        return passage.joined(i) && is_one_of(passage.folded(i + 1), words);
    };
    if (!passage.follows(i)) return is_next(intervals); // "30s on, 10s off"
    return !is_next(periods) && is_one_of(passage.folded(i - 1), cues);
}

// "the '00s", "the early 00s": they have no word of their own but in the UK.
bool say_first_decade(Passage& passage, std::size_t i, std::string_view token) {
    static constexpr auto cues = std::to_array<std::string_view>({"early", "late", "the"});
    const bool cue = passage.follows(i) && is_one_of(passage.folded(i - 1), cues);
    if (token != "'00s" && !(token == "00s" && cue)) return false;
    passage.say(i, passage.is_uk() ? "noughties" : "two thousands");
    return true;
}

bool say_decade(Passage& passage, std::size_t i, std::string_view token) {
    if (say_first_decade(passage, i, token)) return true;
    if (is_length_of_time(passage, i, token)) return false;
    const std::size_t hyphen = token.find('-');
    const Language language = passage.language();
    if (hyphen == std::string_view::npos) {
        const std::optional<int> number = read_decade(token);
        if (!number) return false;
        // "tens of 1000s"
        passage.say(i, *number == 1000 ? "thousands" : decade_words(*number, language));
        return true;
    }
    const std::optional<int> to = read_decade(token.substr(hyphen + 1));
    if (!to) return false;
    std::optional<int> from = read_decade(token.substr(0, hyphen));
    if (from) {
        passage.say(i, decade_words(*from, language) + " to " + decade_words(*to, language));
        return true;
    }
    from = read_year(token.substr(0, hyphen)); // "1960-80s"
    if (!from) return false;
    passage.say(i, year(*from, language) + " to " + decade_words(*to, language));
    return true;
}

// "1970-2010", "1980-86": years where both are in reach and the second is later.
bool say_year_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::vector<std::string_view> parts = split(token, '-');
    if (parts.size() != 2) return false;
    const std::optional<int> from = read_year(parts[0]);
    if (!from || *from > 2199) return false;
    const Language language = passage.language();
    if (const std::optional<int> to = read_year(parts[1])) {
        if (*to <= *from || *to > 2199) return false;
        passage.say(i, year(*from, language) + " to " + year(*to, language));
        return true;
    }
    const std::optional<int> to = to_int(parts[1]);
    if (parts[1].size() != 2 || !to || *to <= *from % 100 || *to < 10) return false;
    passage.say(i, year(*from, language) + " to " + cardinal(*to, language));
    return true;
}

constexpr auto year_cues = std::to_array<std::string_view>({
    "after", "autumn", "before", "by",    "circa",  "class", "during", "early",
    "fall",  "from",   "in",     "late",  "of",     "since", "spring", "summer",
    "the",   "till",   "to",     "until", "winter", "year",
});

bool has_year_cue(const Passage& passage, std::size_t i) {
    return i > 0 && passage.joined(i - 1) && is_one_of(passage.folded(i - 1), year_cues);
}

bool is_era(std::string_view text) {
    return text == "AD" || text == "BC" || text == "CE" || text == "BCE" || text == "A.D" ||
           text == "B.C" || text == "C.E" || text == "B.C.E";
}

// "2027 of them": some of many.
bool is_part_of(const Passage& passage, std::size_t i) {
    static constexpr auto many =
        std::to_array<std::string_view>({"our", "the", "them", "these", "those", "us", "your"});
    return passage.folded(i + 1) == "of" && passage.joined(i + 1) &&
           is_one_of(passage.folded(i + 2), many);
}

// Four bare digits from 1100 to 2099: a year, unless a noun in the plural says that things are
// counted and nothing says that it is a year.
bool say_bare_year(Passage& passage, std::size_t i, std::string_view token) {
    const Language language = passage.language();
    const std::optional<int> number = read_year(token);
    const bool era = (passage.joined(i) && is_era(passage.text(i + 1))) ||
                     (passage.follows(i) && is_era(passage.text(i - 1)));
    if (number && era) {
        passage.say(i, year(*number, language));
        return true;
    }
    // "476 AD"
    if (era && token.size() == 3 && to_int(token) && token.substr(1) != "00") {
        passage.say(i, in_pairs(token, language));
        return true;
    }
    if (!number || (*number < 1100 && !has_year_cue(passage, i))) return false;
    // "in 2150", "the year 2525"
    if (*number > 2099) {
        const std::string cue = passage.follows(i) ? passage.folded(i - 1) : std::string{};
        const bool near = *number < 2200 && (cue == "in" || cue == "until");
        if ((!near && cue != "year") || (passage.joined(i) && is_lower_plural(passage.text(i + 1))))
            return false;
        passage.say(i, year(*number, language));
        return true;
    }
    const bool counted =
        passage.joined(i) && (is_lower_plural(passage.text(i + 1)) ||
                              (is_part_of(passage, i) && !has_year_cue(passage, i)));
    const std::string as_number = cardinal(*number, language);
    if (!counted) {
        passage.say(i, year(*number, language));
        return true;
    }
    if (!has_year_cue(passage, i)) {
        const bool hundreds =
            *number % 100 == 0 && *number % 1000 != 0 && language == Language::en_us;
        passage.say(i, hundreds ? year(*number, language) : as_number);
        return true;
    }
    const std::string as_year = year(*number, language);
    if (as_year == as_number || *number % 100 == 0) {
        passage.say(i, as_year);
    } else {
        passage.say(i, as_year, {as_number});
    }
    return true;
}

std::string clipped_words(std::string_view token, Language language) {
    if (token.starts_with('\'')) token.remove_prefix(1);
    const std::optional<int> number = token.size() == 2 ? to_int(token) : std::nullopt;
    if (!number) return {};
    if (*number == 0) return "oh oh";
    return (*number < 10 ? "oh " : "") + cardinal(*number, language);
}

// "'98": a year that has lost its century.
bool say_clipped_year(Passage& passage, std::size_t i, std::string_view token) {
    if (!token.starts_with('\'')) return false;
    const std::size_t hyphen = std::min(token.find('-'), token.size()); // "'98-'99"
    const std::string from = clipped_words(token.substr(0, hyphen), passage.language());
    if (from.empty()) return false;
    if (hyphen == token.size()) {
        passage.say(i, from);
        return true;
    }
    const std::string to = clipped_words(token.substr(hyphen + 1), passage.language());
    if (to.empty()) return false;
    passage.say(i, from + " to " + to);
    return true;
}

// "mid-1980s", "pre-1900", "post-2010"
bool say_prefixed(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos || hyphen == 0) return false;
    const std::string prefix = ascii::lower(token.substr(0, hyphen));
    if (!std::all_of(prefix.begin(), prefix.end(), ascii::is_lower)) return false;
    const std::string_view rest = token.substr(hyphen + 1);
    const Language language = passage.language();
    if (const std::optional<int> number = read_decade(rest)) {
        passage.say(i, prefix + ' ' + decade(*number, language));
        return true;
    }
    const bool time_prefix = prefix == "mid" || prefix == "pre" || prefix == "post" ||
                             prefix == "early" || prefix == "late" || prefix == "circa";
    const std::optional<int> number = read_year(rest);
    if (!number || !time_prefix) return false;
    passage.say(i, prefix + ' ' + year(*number, language));
    return true;
}

} // namespace

std::optional<DateOrder> order_told_by(std::string_view written) {
    const std::vector<std::string_view> parts = split(written, '/');
    if (parts.size() != 2 && parts.size() != 3) return std::nullopt;
    if (parts.size() == 3 && !read_year(parts[2]) && !read_short_year(parts[2]))
        return std::nullopt;
    const int first = parts[0].size() <= 2 ? to_int(parts[0]).value_or(0) : 0;
    const int second = parts[1].size() <= 2 ? to_int(parts[1]).value_or(0) : 0;
    const bool month_first = Date{second, first, 0}.valid();
    const bool day_first = Date{first, second, 0}.valid();
    if (month_first == day_first) return std::nullopt;
    return month_first ? DateOrder::month_first : DateOrder::day_first;
}

bool say_date(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (say_span_from_month(passage, i, token) || say_span_from_day(passage, i)) return true;
    if (say_span_over_weekday(passage, i) || say_slashed_span(passage, i, token) ||
        say_neighbouring_days(passage, i, token)) {
        return true;
    }
    if (say_day_after_month(passage, i) || say_day_before_month(passage, i) ||
        say_day_before_later_month(passage, i) || say_day_of_month(passage, i)) {
        return true;
    }
    if (say_numeric_date(passage, i, token, '/') || say_numeric_date(passage, i, token, '-') ||
        say_numeric_date(passage, i, token, '.')) {
        return true;
    }
    if (say_year_and_more(passage, i, token) || say_joined_date(passage, i, token) ||
        say_day_and_month(passage, i, token))
        return true;
    if (say_decade(passage, i, token) || say_prefixed(passage, i, token)) return true;
    return say_clipped_year(passage, i, token);
}

bool is_odds(const Passage& passage, std::size_t i) {
    if (passage.joined(i) && passage.folded(i + 1) == "odds") return true;
    if (!passage.follows(i)) return false;
    static constexpr auto links = std::to_array<std::string_view>({"are", "at", "of", "were"});
    const bool link = is_one_of(passage.folded(i - 1), links);
    return passage.folded(i - 1) == "odds" ||
           (link && i > 1 && passage.follows(i - 1) && passage.folded(i - 2) == "odds");
}

namespace {

bool is_open_part(const Passage& passage, std::size_t i) {
    const std::vector<std::string_view> parts = split(passage.raw(i), '/');
    if (parts.size() != 2) return false;
    const std::optional<int> top = to_int(parts[0]);
    const std::optional<int> whole = to_int(parts[1]);
    if (!top || !whole || *top < 1 || *top >= *whole) return false;
    // "On 1/12 of each year" is a day.
    return !has_date_cue(passage, i) || passage.folded(i - 1) == "by";
}

bool is_told_part(const Passage& passage, std::size_t i) {
    static constexpr auto behind = std::to_array<std::string_view>({"apiece", "each", "of"});
    if (!is_open_part(passage, i) || !passage.joined(i) ||
        !is_one_of(passage.folded(i + 1), behind))
        return false;
    // "By 11/30 of next year" is a day.
    const bool of_year =
        passage.joined(i + 1) && (read_year(passage.text(i + 2)).has_value() ||
                                  (passage.joined(i + 2) && passage.folded(i + 3) == "year"));
    return passage.folded(i + 1) != "of" || !of_year;
}

} // namespace

bool is_part_of_whole(const Passage& passage, std::size_t i) {
    if (!is_open_part(passage, i)) return false;
    if (is_told_part(passage, i)) return true;
    const std::string_view whole = passage.raw(i).substr(passage.raw(i).find('/'));
    constexpr std::size_t near = 40; // words: about two sentences on either side
    const std::size_t end = std::min(passage.size(), i + near);
    for (std::size_t at = i > near ? i - near : 0; at < end; ++at) {
        if (passage.raw(at).ends_with(whole) && is_told_part(passage, at)) return true;
    }
    return false;
}

bool is_part_numbered(const Passage& passage, std::size_t i) {
    static constexpr auto parts = std::to_array<std::string_view>(
        {"episode", "lesson", "module", "page", "part", "question", "slide", "step"});
    return passage.follows(i) && is_one_of(passage.folded(i - 1), parts);
}

bool say_year(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    return say_year_range(passage, i, token) || say_bare_year(passage, i, token);
}

void say_weekday_before(Passage& passage, std::size_t first) {
    if (first == 0) return;
    const std::string_view day = weekday_of(passage.folded(first - 1));
    if (day.empty() || !is_gap_of_name(passage.between(first - 1))) return;
    if (ascii::is_upper(passage.raw(first - 1)[0])) passage.say(first - 1, day);
}

namespace {

// "on Mon and Tues", "bank holiday Mon", "every Weds", "Mon to Fri": a day and no word of its own
// ("He sat", "the sun").
bool is_told_weekday(const Passage& passage, std::size_t i) {
    static constexpr auto sure = std::to_array<std::string_view>({"Thur", "Thurs", "Tues", "Weds"});
    static constexpr auto before =
        std::to_array<std::string_view>({"by", "each", "early", "every", "holiday", "last", "late",
                                         "next", "on", "this", "till", "until"});
    static constexpr auto behind =
        std::to_array<std::string_view>({"afternoon", "afternoons", "evening", "evenings",
                                         "lunchtime", "morning", "mornings", "night", "nights"});
    static constexpr auto links =
        std::to_array<std::string_view>({"&", "and", "or", "through", "to", "until"});
    if (is_one_of(passage.raw(i), sure)) return true;
    const auto is_day = [&](std::size_t at) {
        return ascii::is_upper((passage.text(at) + "x")[0]) &&
               !weekday_of(passage.folded(at)).empty();
    };
    // "on Sun Street"
    const bool named =
        passage.joined(i) && ascii::is_upper(passage.raw(i + 1)[0]) && !is_day(i + 1);
    if (passage.follows(i)) {
        const std::string word = passage.folded(i - 1);
        if (is_one_of(word, before)) return !named;
        if (i > 1 && is_one_of(word, links) && passage.follows(i - 1) && is_day(i - 2)) return true;
    }
    if (i > 0 && passage.joined_by_comma(i - 1) && is_day(i - 1)) return true;
    if (passage.joined_by_comma(i)) return is_day(i + 1);
    if (!passage.joined(i)) return false;
    const std::string next = passage.folded(i + 1);
    if (is_one_of(next, behind)) return true;
    return is_one_of(next, links) && passage.joined(i + 1) && is_day(i + 2);
}

// "Fri 1st", "Fri 1st-Sun 3rd": the day of the month behind the day; a month says it by itself.
bool say_ordinal_behind(Passage& passage, std::size_t i) {
    if (!passage.joined(i)) return false;
    const std::string token = passage.text(i + 1);
    const std::size_t hyphen = token.find('-');
    const std::optional<Day> day = read_day(std::string_view(token).substr(0, hyphen));
    if (!day || !day->ordinal) return false;
    if (hyphen == std::string::npos) {
        const bool month = passage.adjacent(i + 1) && month_of(passage.folded(i + 2)) != 0;
        if (!month) passage.say(i + 1, "the " + day_words(day->number));
        return true;
    }
    const std::string_view to =
        weekday_of(ascii::lower(std::string_view(token).substr(hyphen + 1)));
    if (to.empty()) return false;
    passage.say(i + 1, "the " + day_words(day->number) + " to " + std::string(to));
    if (!passage.joined(i + 1)) return true;
    const bool month = passage.adjacent(i + 2) && month_of(passage.folded(i + 3)) != 0;
    if (const std::optional<Day> last = read_day(passage.text(i + 2));
        last && last->ordinal && !month)
        passage.say(i + 2, "the " + day_words(last->number));
    return true;
}

} // namespace

// "on Mon", "Fri 1st": the short name of a day.
bool say_short_weekday(Passage& passage, std::size_t i) {
    const std::string_view raw = passage.raw(i);
    if (raw.size() < 3 || raw.size() > 5 || !ascii::is_upper(raw[0]) || !ascii::is_lower(raw[1]))
        return false;
    const std::string_view day = weekday_of(passage.folded(i));
    if (day.empty()) return false;
    if (!say_ordinal_behind(passage, i) && !is_told_weekday(passage, i)) return false;
    passage.say(i, day);
    return true;
}

// "Mon/Wed/Fri", "Jan/Feb": one after the other.
bool say_list_of_names(Passage& passage, std::size_t i, std::string_view folded) {
    if (folded.find('/') == std::string_view::npos || !ascii::is_upper(passage.raw(i)[0]))
        return false;
    std::string words;
    for (const std::string_view part : split(folded, '/')) {
        const std::string_view day = weekday_of(part);
        const std::string_view name = day.empty() ? month_words(part) : day;
        if (name.empty()) return false;
        append_words(words, name);
    }
    passage.say(i, words);
    return true;
}

// "Mon – Fri", "Monday – Friday", "Jan. – Mar.": the dash is said with the first.
bool say_span_of_names(Passage& passage, std::size_t i) {
    if (!is_dash_gap(passage.between(i)) || !ascii::is_upper(passage.raw(i)[0]) ||
        !ascii::is_upper(passage.raw(i + 1)[0]))
        return false;
    const auto name = [&](std::size_t at, bool day) {
        const std::string folded = passage.folded(at);
        return day ? weekday_of(folded) : month_words(folded);
    };
    const bool days = !name(i, true).empty();
    if (name(i, days).empty() || name(i + 1, days).empty()) return false;
    passage.say(i, std::string(name(i, days)) + " to");
    passage.say(i + 1, name(i + 1, days));
    return true;
}

// "Mon-Fri", "Jan.-Mar.": days or months with "to" between.
bool say_names_of_dates(Passage& passage, std::size_t i) {
    std::string token = passage.folded(i);
    if (token.size() < 7 || token.size() > 40) return false;
    if (say_list_of_names(passage, i, token)) return true;
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string::npos || !ascii::is_upper(passage.raw(i)[0])) return false;
    std::string from = token.substr(0, hyphen);
    std::string to = token.substr(hyphen + 1);
    std::erase(from, '.');
    std::erase(to, '.');
    const bool months_here = month_of(from) != 0 && month_of(to) != 0;
    const bool days_here = !weekday_of(from).empty() && !weekday_of(to).empty();
    if (!months_here && !days_here) return false;
    const auto full = [&](std::string_view name) {
        return std::string(months_here ? month_name(month_of(name)) : weekday_of(name));
    };
    passage.say(i, full(from) + " to " + full(to));
    return true;
}

std::string day_and_month_words(int first, int second, Language language) {
    const bool uk = language == Language::en_gb;
    const Date date{uk ? first : second, uk ? second : first, 0};
    const Date turned{date.month, date.day, 0};
    if (date.valid()) return date_words(date, order_of(language), language);
    return turned.valid() ? date_words(turned, order_of(language), language) : std::string{};
}

std::string_view month_words(std::string_view folded) {
    return month_name(month_of(folded));
}

} // namespace say
