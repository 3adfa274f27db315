// Times of day and lengths of time: "9:30", "5pm", "1.59 p.m. est", "17:00", "1:01:01", "9-5pm".
// UK English says "half past five" where no a.m. or p.m. stands.
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

struct Clock {
    int hour = 0;
    int minute = 0;
    bool minutes_written = false;
    std::string half; // "am" or "pm" if written against the figure
};

std::string half_of(std::string_view text) {
    std::string folded = ascii::lower(text);
    std::erase(folded, '.');
    return folded == "am" || folded == "pm" ? folded : std::string{};
}

std::size_t digits_at(std::string_view text) {
    std::size_t digits = 0;
    while (digits < text.size() && ascii::is_digit(text[digits]))
        ++digits;
    return digits;
}

// "9:30", "9.30", "9", "930am"? no: hours, minutes by ':' (or '.'), then am or pm.
std::optional<Clock> read_clock(std::string_view token, std::string_view separators) {
    Clock clock;
    const std::size_t hours = digits_at(token);
    if (hours == 0 || hours > 2) return std::nullopt;
    clock.hour = to_int(token.substr(0, hours)).value_or(99);
    token.remove_prefix(hours);
    if (!token.empty() && separators.find(token[0]) != std::string_view::npos &&
        digits_at(token.substr(1)) == 2) {
        clock.minute = to_int(token.substr(1, 2)).value_or(99);
        clock.minutes_written = true;
        token.remove_prefix(3);
    }
    if (!token.empty()) {
        clock.half = half_of(token);
        if (clock.half.empty()) return std::nullopt;
    }
    if (clock.hour > 24 || clock.minute > 59) return std::nullopt;
    return clock;
}

std::string minutes_words(const Clock& clock, Language language) {
    std::string words = cardinal(clock.hour, language);
    if (clock.minute == 0) return words;
    if (clock.minute < 10) append_words(words, "oh");
    append_words(words, cardinal(clock.minute, language));
    return words;
}

int next_hour(int hour) {
    return hour == 12 ? 1 : hour + 1;
}

// "half past five": only the quarters, as the rest is read as it stands.
std::string quarter_words(const Clock& clock, Language language) {
    if (clock.hour < 1 || clock.hour > 12) return {};
    switch (clock.minute) {
    case 15: return "quarter past " + cardinal(clock.hour, language);
    case 30: return "half past " + cardinal(clock.hour, language);
    case 45: return "quarter to " + cardinal(next_hour(clock.hour), language);
    default: return {};
    }
}

bool is_named_hour(std::string_view word) {
    return word == "noon" || word == "midday" || word == "midnight";
}

// A full hour without a.m. or p.m.; from 13 on in the 24-hour way.
void say_full_hour(Passage& passage, std::size_t i, int hour) {
    const Language language = passage.language();
    if (hour == 0 || hour == 24) {
        passage.say(i, "midnight");
    } else if (hour == 12) {
        passage.say(i, "twelve o'clock", {"noon"});
    } else if (hour < 12) {
        passage.say(i, cardinal(hour, language) + " o'clock");
    } else if (passage.is_uk()) {
        passage.say(i, cardinal(hour, language) + " hundred");
    } else {
        passage.say(i, cardinal(hour - 12, language) + " .pm");
    }
}

// "9 a.m. - 5 p.m.": the dash before another time is said with the first.
std::string_view to_behind(const Passage& passage, std::size_t i) {
    if (!is_dash_gap(passage.between(i))) return {};
    const std::optional<Clock> next = read_clock(passage.text(i + 1), ":.");
    if (!next) return {};
    const bool half =
        !next->half.empty() || (passage.joined(i + 1) && !half_of(passage.raw(i + 2)).empty());
    return half || next->minutes_written ? " to" : std::string_view{};
}

std::string clock_words(const Clock& clock, Language language) {
    std::string words = minutes_words(clock, language);
    if (!clock.half.empty()) append_words(words, "." + clock.half);
    return words;
}

void say_clock(Passage& passage, std::size_t i, const Clock& clock) {
    const Language language = passage.language();
    if (!clock.half.empty() || !clock.minutes_written) {
        passage.say(i, clock_words(clock, language) + std::string(to_behind(passage, i)));
    } else if (clock.hour == 12 && clock.minute == 0 && passage.joined(i) &&
               is_named_hour(passage.folded(i + 1))) {
        passage.say(i, "twelve"); // "12:00 noon"
    } else if (clock.minute == 0) {
        say_full_hour(passage, i, clock.hour);
    } else {
        // "the 7:15 train" is no "quarter past seven train".
        const bool quarters = passage.is_uk() && !is_attributive(passage, i, i);
        const std::string quarter = quarters ? quarter_words(clock, language) : std::string{};
        passage.say(i, quarter.empty() ? minutes_words(clock, language) : quarter);
    }
}

// "EST" behind a time, in any case.
void say_zone_behind(Passage& passage, std::size_t i) {
    static constexpr auto zones = std::to_array<std::string_view>({
        "aest", "akst", "bst", "cdt", "cest", "cet", "cst", "edt", "eet", "est",
        "gmt",  "hst",  "ist", "jst", "mdt",  "mst", "msk", "pdt", "pst", "utc",
    });
    if (!passage.adjacent(i)) return;
    const std::string zone = passage.folded(i + 1);
    if (is_one_of(zone, zones)) passage.say(i + 1, "." + zone);
}

// "a.m." or "PM" as a word of its own.
std::string half_behind(const Passage& passage, std::size_t i) {
    if (!passage.joined(i)) return {};
    const std::string next = passage.text(i + 1);
    const std::size_t hyphen = next.find('-'); // "9 a.m.-5 p.m.", "9 a.m.-noon"
    if (hyphen != std::string::npos && !is_named_hour(next.substr(hyphen + 1)) &&
        !read_clock(next.substr(hyphen + 1), ":.")) {
        return {};
    }
    return half_of(std::string_view(next).substr(0, hyphen));
}

// "a.m.-5" and the "p.m." behind it.
bool say_glued_range(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string::npos) return false;
    if (is_named_hour(token.substr(hyphen + 1))) {
        passage.say(i, "." + half_of(token.substr(0, hyphen)) + " to " + token.substr(hyphen + 1));
        return true;
    }
    const std::optional<Clock> to = read_clock(token.substr(hyphen + 1), ":.");
    if (!to) return false;
    passage.say(i, "." + half_of(token.substr(0, hyphen)) + " to " +
                       clock_words(*to, passage.language()));
    const std::string half = passage.joined(i) ? half_of(passage.raw(i + 1)) : std::string{};
    if (!half.empty()) passage.say(i + 1, "." + half);
    say_zone_behind(passage, half.empty() ? i : i + 1);
    return true;
}

std::string counted(int number, std::string_view one, Language language) {
    std::string words = cardinal(number, language) + ' ' + std::string(one);
    return number == 1 ? words : words + 's';
}

// How long a thing of the air is, in the signs of the trade: 2'30", 40", 5'.
struct RunningTime {
    int minutes = 0;
    int seconds = 0;
    bool both = false;
    bool sure = false; // no such feet and inches
};

std::optional<RunningTime> read_running_time(std::string_view token) {
    RunningTime time;
    const std::size_t first = digits_at(token);
    if (first == 0 || first > 3 || first == token.size()) return std::nullopt;
    const int number = to_int(token.substr(0, first)).value_or(0);
    std::string_view rest = token.substr(first);
    if (rest == "\"" || rest == "'") {
        (rest == "'" ? time.minutes : time.seconds) = number;
        return time;
    }
    if (rest[0] != '\'') return std::nullopt;
    rest.remove_prefix(1);
    const std::size_t second = digits_at(rest);
    const std::string_view closing = rest.substr(second);
    if (second != 2 || (!closing.empty() && closing != "\"" && closing != "''"))
        return std::nullopt;
    time.minutes = number;
    time.seconds = to_int(rest.substr(0, 2)).value_or(60);
    if (time.seconds > 59) return std::nullopt;
    time.both = true;
    // Twelve inches are a foot, and nobody writes a nought before nine of them.
    time.sure = number == 0 || time.seconds > 11 || rest[0] == '0';
    return time;
}

bool is_of_the_air(std::string_view word) {
    static constexpr auto things = std::to_array<std::string_view>({
        "ad",    "ads",    "advert", "adverts", "bed",     "bulletin", "clip",   "clips",
        "break", "breaks", "ident",  "idents",  "insert",  "jingle",   "link",   "links",
        "music", "promo",  "promos", "package", "silence", "slot",     "slots",  "spot",
        "spots", "sting",  "stings", "trail",   "trails",  "trailer",  "voicer", "countdown",
    });
    return is_one_of(word, things);
}

// "runs 1'15\"", "out at 5'", "90\" to fill", "2'30\" left", "40\" of music"
bool is_told_running(const Passage& passage, std::size_t i) {
    static constexpr auto before = std::to_array<std::string_view>(
        {"duration", "last", "lasted", "lasts", "run", "running", "runs"});
    static constexpr auto behind = std::to_array<std::string_view>({"left", "remaining", "spare"});
    if (passage.follows(i)) {
        const std::string word = passage.folded(i - 1);
        if (is_one_of(word, before)) return !passage.joined(i); // "runs 30' along"
        if (word == "at" && passage.follows(i - 1) &&
            (passage.folded(i - 2) == "out" || passage.folded(i - 2) == "in"))
            return true;
    }
    if (!passage.joined(i)) return false;
    const std::string next = passage.folded(i + 1);
    const std::string second = passage.joined(i + 1) ? passage.folded(i + 2) : std::string{};
    if (next == "to") return second == "fill" || second == "go" || second == "air";
    if (next == "of") return is_of_the_air(second);
    return (is_one_of(next, behind) && second != "of") || is_of_the_air(next);
}

bool say_running_time(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<RunningTime> time = read_running_time(token);
    if (!time || (!time->sure && !is_told_running(passage, i))) return false;
    const Language language = passage.language();
    const bool named = is_attributive(passage, i, i) ||
                       (passage.joined(i) && is_of_the_air(passage.folded(i + 1)));
    const auto part = [&](int number, std::string_view unit) {
        return named ? cardinal(number, language) + ' ' + std::string(unit)
                     : counted(number, unit, language);
    };
    std::string words;
    if (time->minutes > 0) append_words(words, part(time->minutes, "minute"));
    if (time->seconds > 0 || words.empty()) append_words(words, part(time->seconds, "second"));
    passage.say(i, words);
    return true;
}

// "0:30": the place in a recording, as no clock shows it so.
bool say_place_in_recording(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() != 4 || !token.starts_with("0:")) return false;
    const std::optional<int> seconds = to_int(token.substr(2));
    if (!seconds || *seconds > 59) return false;
    const Language language = passage.language();
    if (*seconds == 0) {
        passage.say(i, "zero seconds");
    } else {
        passage.say(i, counted(*seconds, "second", language));
    }
    return true;
}

// Books of the Bible whose chapters and verses are cited.
constexpr auto books = std::to_array<std::string_view>({
    "acts",         "amos",         "chronicles",    "colossians", "corinthians", "daniel",
    "deuteronomy",  "ecclesiastes", "ephesians",     "esther",     "exodus",      "ezekiel",
    "ezra",         "galatians",    "genesis",       "habakkuk",   "haggai",      "hebrews",
    "hosea",        "isaiah",       "james",         "jeremiah",   "job",         "joel",
    "john",         "jonah",        "joshua",        "jude",       "judges",      "kings",
    "lamentations", "leviticus",    "luke",          "malachi",    "mark",        "matthew",
    "micah",        "nahum",        "nehemiah",      "numbers",    "peter",       "philemon",
    "philippians",  "proverbs",     "psalm",         "psalms",     "revelation",  "romans",
    "ruth",         "samuel",       "thessalonians", "timothy",    "titus",       "zechariah",
    "zephaniah",
});

// "Psalm 23:4", "John 3:16-18": chapter and verse.
bool say_verse(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t colon = token.find(':');
    if (colon == std::string_view::npos || !passage.follows(i)) return false;
    if (!ascii::is_upper(passage.raw(i - 1)[0]) || !is_one_of(passage.folded(i - 1), books))
        return false;
    const std::size_t hyphen = std::min(token.find('-', colon), token.size());
    const std::optional<int> chapter = to_int(token.substr(0, colon));
    const std::optional<int> verse = to_int(token.substr(colon + 1, hyphen - colon - 1));
    if (!chapter || !verse) return false;
    const Language language = passage.language();
    std::string words = cardinal(*chapter, language) + ' ' + cardinal(*verse, language);
    if (hyphen < token.size()) {
        const std::optional<int> last = to_int(token.substr(hyphen + 1));
        if (!last) return false;
        words += " to " + cardinal(*last, language);
    }
    passage.say(i, words);
    return true;
}

// "3:59.96": a time taken.
bool say_time_taken(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t colon = token.find(':');
    const std::size_t dot = token.find('.');
    if (colon == 0 || colon > 2 || dot == std::string_view::npos || dot != colon + 3) return false;
    const std::optional<int> minutes = to_int(token.substr(0, colon));
    const std::optional<int> seconds = to_int(token.substr(colon + 1, 2));
    const std::string_view fraction = token.substr(dot + 1);
    if (!minutes || !seconds || *seconds > 59 || fraction.empty() || fraction.size() > 3 ||
        digits_at(fraction) != fraction.size())
        return false;
    const Language language = passage.language();
    std::string words = cardinal(*minutes, language);
    if (*seconds < 10) append_words(words, "oh");
    append_words(words, cardinal(*seconds, language));
    passage.say(i, words + " point " + digit_by_digit(fraction));
    return true;
}

// "1:01:01" is a length of time.
bool say_duration(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t first = token.find(':');
    const std::size_t second = first == std::string_view::npos ? first : token.find(':', first + 1);
    if (second == std::string_view::npos) return false;
    const std::optional<int> hours = to_int(token.substr(0, first));
    const std::optional<int> minutes = to_int(token.substr(first + 1, second - first - 1));
    const std::optional<int> seconds = to_int(token.substr(second + 1));
    if (!hours || !minutes || !seconds || *minutes > 59 || *seconds > 59) return false;
    const Language language = passage.language();
    if (token.size() == 5) { // "4:2:2" colours, "1:2:3" parts
        const std::string_view link = token.starts_with("4:") ? " " : " to ";
        std::string words = cardinal(*hours, language);
        words.append(link).append(cardinal(*minutes, language));
        words.append(link).append(cardinal(*seconds, language));
        passage.say(i, words);
        return true;
    }
    const bool none = *hours == 0 && *minutes == 0 && *seconds == 0;
    std::string words;
    if (is_attributive(passage, i, i) && *hours > 0) { // "a 2:03:45 marathon"
        const auto part = [&](int number) {
            return (number < 10 ? " oh " : " ") + cardinal(number, language);
        };
        passage.say(i, cardinal(*hours, language) + part(*minutes) + part(*seconds));
        return true;
    }
    if (*hours != 0 || none) append_words(words, counted(*hours, "hour", language));
    if (*minutes != 0) append_words(words, counted(*minutes, "minute", language));
    if (*seconds != 0) {
        append_words(words, words.empty() ? "" : "and");
        append_words(words, counted(*seconds, "second", language));
    }
    passage.say(i, words);
    const std::string half = half_behind(passage, i);
    if (!half.empty()) passage.say(i + 1, "." + half);
    say_zone_behind(passage, half.empty() ? i : i + 1);
    return true;
}

// "3:1", "16:9", "1:50,000": no two digits behind the colon.
bool say_ratio(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t colon = token.find(':');
    if (colon == std::string_view::npos) return false;
    const std::optional<Figure> left = read_figure(token.substr(0, colon));
    const std::optional<Figure> right = read_figure(token.substr(colon + 1));
    if (!left || !right || !left->is_bare() || !right->is_bare() || !right->fraction.empty())
        return false;
    const Language language = passage.language();
    const bool halves = token == "50:50"; // "fifty fifty"
    passage.say(i, number_words(*left, language) + (halves ? " " : " to ") +
                       number_words(*right, language));
    return true;
}

// "Mix it 1:10", "mixed at 1:20 with water", "a 1:10 scale": parts and no hour. "2 : 3" has blanks.
bool is_told_ratio(const Passage& passage, std::size_t i) {
    static constexpr auto before = std::to_array<std::string_view>({
        "dilute",
        "diluted",
        "dilution",
        "mix",
        "mixed",
        "mixing",
        "parts",
        "proportion",
        "proportions",
        "ratio",
        "ratios",
        "scale",
    });
    static constexpr auto behind = std::to_array<std::string_view>(
        {"dilution", "gradient", "mix", "mixture", "model", "odds", "ratio", "scale", "slope"});
    if (passage.joined(i) && is_one_of(passage.folded(i + 1), behind)) return true;
    for (std::size_t back = 1; back <= 3 && back <= i && passage.follows(i - back + 1); ++back) {
        if (is_one_of(passage.folded(i - back), before)) return true;
    }
    return false;
}

bool say_spaced_ratio(Passage& passage, std::size_t i, std::string_view token) {
    if (passage.between(i) != " : " || digits_at(token) != token.size() || token.size() > 4)
        return false;
    const std::string other = passage.text(i + 1);
    if (other.empty() || digits_at(other) != other.size()) return false;
    passage.say(i, cardinal(token, passage.language()) + " to");
    return true;
}

// "0600", "1900 hours": the way of ships and soldiers.
bool say_watch(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() != 4 || digits_at(token) != 4) return false;
    const int hour = to_int(token.substr(0, 2)).value_or(99);
    const int minute = to_int(token.substr(2)).value_or(99);
    if (hour > 24 || minute > 59) return false;
    const bool hours =
        passage.joined(i) && (passage.folded(i + 1) == "hours" || passage.folded(i + 1) == "hrs");
    const bool at = token[0] == '0' && passage.follows(i) &&
                    (passage.folded(i - 1) == "at" || passage.folded(i - 1) == "by" ||
                     passage.folded(i - 1) == "until");
    if (!at && (!hours || (token[0] != '0' && minute % 5 != 0))) return false;
    const Language language = passage.language();
    std::string words = hour == 0 ? "zero" : hour < 10 ? "oh" : "";
    if (hour > 0) append_words(words, cardinal(hour, language));
    if (minute == 0) {
        append_words(words, "hundred");
    } else {
        if (minute < 10) append_words(words, "oh");
        append_words(words, cardinal(minute, language));
    }
    passage.say(i, words);
    if (hours) passage.say(i + 1, "hours");
    return true;
}

struct Elapsed {
    int hours = -1;
    int minutes = -1;
    int seconds = -1;
    bool minutes_named = false;
};

// "1h30m", "14h30", "2h", "5m30s": parts in order, each at most once.
std::optional<Elapsed> read_elapsed(std::string_view token) {
    Elapsed elapsed;
    while (!token.empty()) {
        const std::size_t digits = digits_at(token);
        if (digits == 0 || digits > 3) return std::nullopt;
        const int number = to_int(token.substr(0, digits)).value_or(0);
        token.remove_prefix(digits);
        const bool open = elapsed.minutes < 0 && elapsed.seconds < 0;
        if (token.empty()) {
            if (elapsed.hours < 0 || !open || digits != 2) return std::nullopt;
            elapsed.minutes = number;
        } else if (token[0] == 'h' && elapsed.hours < 0 && open) {
            elapsed.hours = number;
            token.remove_prefix(1);
        } else if (token[0] == 'm' && open) {
            elapsed.minutes = number;
            elapsed.minutes_named = true;
            token.remove_prefix(token.starts_with("min") ? 3 : 1);
        } else if (token[0] == 's' && elapsed.seconds < 0) {
            elapsed.seconds = number;
            token.remove_prefix(1);
        } else {
            return std::nullopt;
        }
    }
    return elapsed;
}

// "It takes 1h20": how long, not when.
bool is_length_cue(const Passage& passage, std::size_t i) {
    static constexpr auto cues = std::to_array<std::string_view>(
        {"for", "in", "last", "lasted", "lasts", "run", "runs", "take", "takes", "took"});
    return passage.follows(i) && is_one_of(passage.folded(i - 1), cues);
}

// "1h30m", "2h 30m", "5m 30s", "14h30"; one part alone is left to the measures.
bool say_elapsed(Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<Elapsed> elapsed = read_elapsed(token);
    if (!elapsed) return false;
    const Language language = passage.language();
    if (elapsed->hours >= 0 && elapsed->minutes >= 0 && !elapsed->minutes_named) {
        if (elapsed->hours > 24 || elapsed->minutes > 59) return false;
        if (elapsed->hours < 10 && is_length_cue(passage, i)) {
            passage.say(i, counted(elapsed->hours, "hour", language) + ' ' +
                               cardinal(elapsed->minutes, language));
            return true;
        }
        Clock clock{elapsed->hours, elapsed->minutes, true, {}};
        passage.say(i, minutes_words(clock, language));
        return true;
    }
    const int parts = (elapsed->hours >= 0) + (elapsed->minutes >= 0) + (elapsed->seconds >= 0);
    const std::optional<Elapsed> before =
        passage.follows(i) ? read_elapsed(passage.text(i - 1)) : std::nullopt;
    const std::optional<Elapsed> behind =
        passage.joined(i) ? read_elapsed(passage.text(i + 1)) : std::nullopt;
    const bool after_larger = before && ((before->hours >= 0 && elapsed->hours < 0) ||
                                         (before->minutes >= 0 && elapsed->seconds >= 0));
    const bool before_smaller = behind && behind->seconds >= 0 && elapsed->minutes >= 0;
    if (parts < 2 && !after_larger && !before_smaller) return false;
    std::string words;
    if (elapsed->hours >= 0) append_words(words, counted(elapsed->hours, "hour", language));
    if (elapsed->minutes >= 0) append_words(words, counted(elapsed->minutes, "minute", language));
    if (elapsed->seconds >= 0) append_words(words, counted(elapsed->seconds, "second", language));
    passage.say(i, words);
    return true;
}

// In the UK a stop parts hours and minutes behind a word that says so.
bool is_stopped_cue(const Passage& passage, std::size_t i) {
    static constexpr auto cues =
        std::to_array<std::string_view>({"after", "at", "before", "by", "from", "open", "opening",
                                         "opens", "runs", "till", "until"});
    return passage.is_uk() && passage.follows(i) && is_one_of(passage.folded(i - 1), cues);
}

// "7.30": a clock if anything near it says so, else a decimal.
std::optional<Clock> stopped_shape(std::string_view token) {
    const std::size_t dot = token.find('.');
    if (dot == std::string_view::npos || dot == 0 || token.size() != dot + 3) return std::nullopt;
    return read_clock(token, ".");
}

// "the 7.42 train"
bool runs_by_the_clock(std::string_view word) {
    static constexpr auto names = std::to_array<std::string_view>({
        "boat",
        "bus",
        "coach",
        "ferry",
        "flight",
        "matinee",
        "news",
        "performance",
        "sailing",
        "service",
        "show",
        "start",
        "tide",
        "train",
        "tram",
    });
    return is_one_of(word, names);
}

// Nothing that is counted or measured stands behind.
bool ends_as_time(const Passage& passage, std::size_t i) {
    static constexpr auto later = std::to_array<std::string_view>(
        {"daily", "each", "every", "sharp", "today", "tomorrow", "tonight"});
    if (!passage.joined(i)) return true;
    const std::string next = passage.folded(i + 1);
    return (is_function_word(next) && next != "per") || is_one_of(next, later) ||
           next.ends_with("day") || next.ends_with("days") || runs_by_the_clock(next);
}

// "Doors 7, show 7.30", "high water 06.42": what is held at an hour.
bool is_event(std::string_view word) {
    static constexpr auto events = std::to_array<std::string_view>({
        "arrive",   "arrives", "assembly", "begins",       "breakfast", "brunch",  "class",
        "close",    "closes",  "closing",  "curtain",      "depart",    "departs", "dinner",
        "doors",    "ends",    "finish",   "finishes",     "kick-off",  "kickoff", "leave",
        "leaves",   "lunch",   "matinee",  "meet",         "meeting",   "news",    "performance",
        "register", "service", "show",     "registration", "start",     "starts",  "sunrise",
        "sunset",   "supper",  "tea",      "tide",         "water",
    });
    return is_one_of(word, events);
}

bool is_behind_event(const Passage& passage, std::size_t i) {
    if (!passage.follows(i)) return false;
    std::string before = passage.folded(i - 1);
    if (before == "is" && passage.follows(i - 1)) before = passage.folded(i - 2);
    return is_event(before);
}

// "rose from 2.10 to 3.15", "the mean was between 1.10 and 1.30": numbers.
bool is_about_numbers(const Passage& passage, std::size_t i) {
    static constexpr auto words = std::to_array<std::string_view>({
        "average", "cost",   "costs", "down",   "drop",   "dropped",   "fall",  "falls",  "fell",
        "from",    "grew",   "index", "mean",   "ph",     "pounds",    "price", "prices", "range",
        "ranged",  "ranges", "rate",  "ratio",  "rise",   "rises",     "rose",  "score",  "scores",
        "varied",  "value",  "up",    "varies", "values", "increased",
    });
    for (std::size_t back = 1; back <= 4 && back <= i; ++back) {
        const std::string before = passage.folded(i - back);
        if (is_one_of(before, words) && !(before == "from" && back == 1)) return true;
    }
    return false;
}

int minutes_of_day(const Clock& clock) {
    return clock.hour * 60 + clock.minute;
}

// "7.30 for 8": come at the one, begin at the other; "2.50 for 3" is a price.
bool is_before_beginning(const Passage& passage, std::size_t i, const Clock& clock) {
    if (!passage.joined(i) || passage.folded(i + 1) != "for" || !passage.joined(i + 1))
        return false;
    const std::optional<Clock> next = read_clock(passage.text(i + 2), ".");
    if (!next || passage.joined(i + 2)) return false;
    const int apart = minutes_of_day(*next) - minutes_of_day(clock);
    return clock.minute % 15 == 0 && apart >= 15 && apart <= 60;
}

bool links_times(std::string_view word) {
    return word == "to" || word == "till" || word == "until" || word == "and" || word == "for";
}

// The other time of "from 7.30 to 4.15", if there is a figure where it would be.
bool has_odd_partner(const Passage& passage, std::size_t i) {
    if (!passage.joined(i) || !passage.joined(i + 1) || !links_times(passage.folded(i + 1)))
        return false;
    const std::string other = passage.text(i + 2);
    if (other.empty() || !ascii::is_digit(other[0])) return false;
    return !read_clock(other, ":.") || !ends_as_time(passage, i + 2);
}

// "06.42" is no decimal: no figure of one begins so.
bool has_leading_nought(std::string_view token, const Clock& clock) {
    return token.size() == 5 && token[0] == '0' && (clock.minute > 12 || clock.minute == 0);
}

bool is_among_day_clocks(const Passage& passage, std::size_t i) {
    constexpr std::size_t near = 40; // words: two sentences
    const std::size_t end = std::min(passage.size(), i + near);
    for (std::size_t at = i > near ? i - near : 0; at < end; ++at) {
        if (passage.raw(at).size() != 5 || passage.raw(at)[0] != '0') continue;
        const std::string token = passage.text(at);
        const std::optional<Clock> clock = stopped_shape(token);
        if (clock && has_leading_nought(token, *clock)) return true;
    }
    return false;
}

// "The train leaves at 6.42."
bool is_about_departures(const Passage& passage, std::size_t i) {
    for (std::size_t back = 2; back <= 6 && back <= i; ++back) {
        const std::string before = passage.folded(i - back);
        if (runs_by_the_clock(before) || is_event(before)) return true;
    }
    return false;
}

// "between 6.15 and 7.45": both are times or neither is.
bool opens_time_pair(const Passage& passage, std::size_t i, const Clock& clock) {
    if (!passage.follows(i) || passage.folded(i - 1) != "between" || clock.minute % 5 != 0)
        return false;
    const std::optional<Clock> other =
        passage.joined(i) && passage.joined(i + 1) && passage.folded(i + 1) == "and"
            ? stopped_shape(passage.text(i + 2))
            : std::nullopt;
    return other && other->minute % 5 == 0;
}

// "at 17.30", "from 7.30", "Doors 7, show 7.30"
bool is_told_clock(const Passage& passage, std::size_t i, std::string_view token) {
    if (!passage.is_uk()) return false;
    const std::optional<Clock> clock = stopped_shape(token);
    if (!clock || !ends_as_time(passage, i) || has_odd_partner(passage, i)) return false;
    if (has_leading_nought(token, *clock)) return true;
    if (is_before_beginning(passage, i, *clock)) return true;
    if (passage.follows(i) && passage.joined(i) && passage.folded(i - 1) == "the" &&
        runs_by_the_clock(passage.folded(i + 1)))
        return true;
    if (is_about_numbers(passage, i)) return false;
    const bool fives = clock->minute % 5 == 0;
    if (is_stopped_cue(passage, i))
        return fives || is_among_day_clocks(passage, i) || is_about_departures(passage, i);
    return (fives && is_behind_event(passage, i)) || opens_time_pair(passage, i, *clock);
}

// "to 4.15" behind "from 7.30".
bool closes_time_pair(const Passage& passage, std::size_t i) {
    if (i < 2 || !passage.follows(i) || !passage.follows(i - 1) ||
        !links_times(passage.folded(i - 1)))
        return false;
    const std::string first = passage.text(i - 2);
    return stopped_shape(first) && is_told_clock(passage, i - 2, first);
}

bool is_stopped_clock(const Passage& passage, std::size_t i, std::string_view token) {
    if (is_told_clock(passage, i, token)) return true;
    return passage.is_uk() && stopped_shape(token) && ends_as_time(passage, i) &&
           closes_time_pair(passage, i);
}

// "at 6.42", "between 6.15 and 7.45" with nothing else to say whether it is a time.
bool is_open_stop(const Passage& passage, std::size_t i, std::string_view token) {
    const std::optional<Clock> clock = stopped_shape(token);
    if (!clock || !passage.is_uk() || !passage.follows(i) || token[0] == '0' ||
        !ends_as_time(passage, i) || is_about_numbers(passage, i))
        return false;
    const std::string before = passage.folded(i - 1);
    if (before == "at" || before == "until") return clock->minute % 5 != 0;
    return opens_time_pair(passage, i, *clock);
}

// "Link at 19.59.30": to the second.
bool say_stopped_seconds(Passage& passage, std::size_t i, std::string_view token) {
    if (token.size() != 8 || token[2] != '.' || token[5] != '.' || !passage.follows(i))
        return false;
    const std::optional<Clock> clock = stopped_shape(token.substr(0, 5));
    const std::optional<int> seconds = to_int(token.substr(6));
    const std::string before = passage.folded(i - 1);
    if (!clock || !seconds || *seconds > 59 || (before != "at" && before != "out")) return false;
    const Language language = passage.language();
    std::string words = minutes_words(*clock, language);
    if (*seconds > 0) words += " and " + counted(*seconds, "second", language);
    passage.say(i, words);
    return true;
}

// One end of "9:00-17:00": the afternoon makes both ends name their half or their hundred.
std::string end_words(const Clock& clock, bool day_clock, const Passage& passage) {
    const Language language = passage.language();
    if (!day_clock) return clock_words(clock, language);
    if (passage.is_uk()) {
        if (clock.minute != 0) return minutes_words(clock, language);
        return cardinal(clock.hour, language) + " hundred";
    }
    Clock half = clock;
    half.half = clock.hour < 12 ? "am" : "pm";
    half.hour = clock.hour % 12 == 0 ? 12 : clock.hour % 12;
    return clock_words(half, language);
}

// "9:30-10:30", "9am-5pm", "9-5pm", "2-4 p.m."
bool say_clock_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos) return false;
    const std::optional<Clock> from = read_clock(token.substr(0, hyphen), ":.");
    const std::optional<Clock> to = read_clock(token.substr(hyphen + 1), ":.");
    if (!from || !to) return false;
    const std::string half = half_behind(passage, i);
    const bool colon = token.find(':') != std::string_view::npos ||
                       (from->minutes_written && is_stopped_cue(passage, i));
    const bool halves = !from->half.empty() || !to->half.empty() || !half.empty();
    if (!colon && (!halves || from->hour > 12 || to->hour > 12)) return false;
    const bool day_clock = colon && !halves && (from->hour > 12 || to->hour > 12);
    passage.say(i,
                end_words(*from, day_clock, passage) + " to " + end_words(*to, day_clock, passage));
    say_weekday_before(passage, i);
    if (!half.empty() && to->half.empty()) passage.say(i + 1, "." + half);
    say_zone_behind(passage, half.empty() ? i : i + 1);
    return true;
}

// "7/8pm", "7/8 p.m.": one or the other; "7/6c": the hour on the coast and in the middle of the US.
bool say_either_hour(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t slash = token.find('/');
    if (slash == std::string_view::npos) return false;
    const std::optional<int> first = to_int(token.substr(0, slash));
    const std::string_view behind = token.substr(slash + 1);
    const std::size_t digits = digits_at(behind);
    const std::optional<int> second = to_int(behind.substr(0, digits));
    const std::string glued = half_of(behind.substr(digits));
    const std::string half = digits == behind.size() ? half_behind(passage, i) : glued;
    const bool central = behind.substr(digits) == "c" && first && second && *first == *second + 1;
    if (!first || !second || *first < 1 || *first > 12 || *second < 1 || *second > 12 ||
        (half.empty() && !central))
        return false;
    const Language language = passage.language();
    std::string words = cardinal(*first, language);
    append_words(words, central ? "" : "or");
    append_words(words, cardinal(*second, language));
    if (central) append_words(words, "central");
    if (!glued.empty()) append_words(words, "." + glued);
    passage.say(i, words);
    if (glued.empty() && !half.empty()) passage.say(i + 1, "." + half);
    return true;
}

// "noon-3pm", "9am-noon", "noon-3 p.m."
bool say_named_hour_range(Passage& passage, std::size_t i) {
    const std::string token = passage.folded(i);
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string::npos) return false;
    const std::string_view from = std::string_view(token).substr(0, hyphen);
    const std::string_view to = std::string_view(token).substr(hyphen + 1);
    if (is_named_hour(from) == is_named_hour(to)) return false;
    const std::optional<Clock> clock = read_clock(is_named_hour(from) ? to : from, ":.");
    if (!clock || clock->hour > 12) return false;
    const std::string words = clock_words(*clock, passage.language());
    passage.say(i, is_named_hour(from) ? std::string(from) + " to " + words
                                       : words + " to " + std::string(to));
    const std::string half =
        clock->half.empty() && is_named_hour(from) ? half_behind(passage, i) : std::string{};
    if (!half.empty()) passage.say(i + 1, "." + half);
    return true;
}

} // namespace

bool say_time(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (say_named_hour_range(passage, i)) return true;
    if (token.empty() || !ascii::is_digit(token[0])) return false;
    if (say_either_hour(passage, i, token) || say_running_time(passage, i, token) ||
        say_verse(passage, i, token) || say_place_in_recording(passage, i, token) ||
        say_time_taken(passage, i, token) || say_stopped_seconds(passage, i, token) ||
        say_duration(passage, i, token) || say_clock_range(passage, i, token) ||
        say_watch(passage, i, token) || say_elapsed(passage, i, token)) {
        return true;
    }
    if (say_spaced_ratio(passage, i, token)) return true;
    const std::string half = half_behind(passage, i);
    const bool colon = token.find(':') != std::string::npos;
    if (colon && half.empty() && is_told_ratio(passage, i) && say_ratio(passage, i, token))
        return true;
    const bool glued = ascii::is_letter(token.back());
    const bool stopped = is_stopped_clock(passage, i, token);
    if (!stopped && half.empty() && is_open_stop(passage, i, token)) {
        const std::size_t dot = token.find('.');
        passage.say(i, decimal(token.substr(0, dot), token.substr(dot + 1), passage.language()),
                    {minutes_words(*stopped_shape(token), passage.language())});
        return true;
    }
    const std::string_view separators = !half.empty() || glued || stopped ? ":." : ":";
    const std::optional<Clock> clock = read_clock(token, separators);
    if (!clock || (!colon && !stopped && clock->half.empty() && half.empty()))
        return colon && say_ratio(passage, i, token);
    if (half.empty() || !clock->half.empty()) {
        if (!colon && !stopped && clock->hour > 12 && !clock->half.empty() && clock->hour > 24)
            return false;
        if (colon && !clock->minutes_written) return say_ratio(passage, i, token);
        say_clock(passage, i, *clock);
        say_zone_behind(passage, i);
        say_weekday_before(passage, i);
        return true;
    }
    passage.say(i, minutes_words(*clock, passage.language()));
    if (say_glued_range(passage, i + 1)) return true;
    passage.say(i + 1, "." + half + std::string(to_behind(passage, i + 1)));
    say_zone_behind(passage, i + 1);
    say_weekday_before(passage, i);
    return true;
}

} // namespace say
