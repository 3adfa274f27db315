// Times of day and lengths of time: "9:30", "5pm", "1.59 p.m. est", "17:00", "1:01:01", "9-5pm".
// UK English says "half past five" where no a.m. or p.m. stands.
#include "speech/numbers.h"
#include "speech/passage.h"
#include "text/ascii.h"

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

// A full hour without a.m. or p.m.; from 13 on in the 24-hour way.
void say_full_hour(Passage& passage, std::size_t i, int hour) {
    const Language language = passage.language();
    if (hour == 0 || hour == 24) {
        passage.say(i, "midnight");
    } else if (hour <= 12) {
        passage.say(i, cardinal(hour, language) + " o'clock");
    } else if (passage.is_uk()) {
        passage.say(i, cardinal(hour, language) + " hundred");
    } else {
        passage.say(i, cardinal(hour - 12, language) + " .pm");
    }
}

std::string clock_words(const Clock& clock, Language language) {
    std::string words = minutes_words(clock, language);
    if (!clock.half.empty()) append_words(words, "." + clock.half);
    return words;
}

void say_clock(Passage& passage, std::size_t i, const Clock& clock) {
    const Language language = passage.language();
    if (!clock.half.empty() || !clock.minutes_written) {
        passage.say(i, clock_words(clock, language));
    } else if (clock.minute == 0) {
        say_full_hour(passage, i, clock.hour);
    } else {
        const std::string quarter =
            passage.is_uk() ? quarter_words(clock, language) : std::string{};
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
    if (std::find(zones.begin(), zones.end(), zone) != zones.end()) passage.say(i + 1, "." + zone);
}

// "a.m." or "PM" as a word of its own.
std::string half_behind(const Passage& passage, std::size_t i) {
    if (!passage.joined(i)) return {};
    return half_of(passage.raw(i + 1));
}

std::string counted(int number, std::string_view one, Language language) {
    std::string words = cardinal(number, language) + ' ' + std::string(one);
    return number == 1 ? words : words + 's';
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
    passage.say(i, counted(*hours, "hour", language) + ' ' + counted(*minutes, "minute", language) +
                       " and " + counted(*seconds, "second", language));
    const std::string half = half_behind(passage, i);
    if (!half.empty()) passage.say(i + 1, "." + half);
    say_zone_behind(passage, half.empty() ? i : i + 1);
    return true;
}

// "3:1", "16:9": no two digits behind the colon.
bool say_ratio(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t colon = token.find(':');
    if (colon == std::string_view::npos) return false;
    const std::optional<int> left = to_int(token.substr(0, colon));
    const std::optional<int> right = to_int(token.substr(colon + 1));
    if (!left || !right) return false;
    const Language language = passage.language();
    passage.say(i, cardinal(*left, language) + " to " + cardinal(*right, language));
    return true;
}

// "9:30-10:30", "9am-5pm", "9-5pm", "2-4 p.m."
bool say_clock_range(Passage& passage, std::size_t i, std::string_view token) {
    const std::size_t hyphen = token.find('-');
    if (hyphen == std::string_view::npos) return false;
    const std::optional<Clock> from = read_clock(token.substr(0, hyphen), ":.");
    const std::optional<Clock> to = read_clock(token.substr(hyphen + 1), ":.");
    if (!from || !to) return false;
    const std::string half = half_behind(passage, i);
    const bool colon = token.find(':') != std::string_view::npos;
    const bool halves = !from->half.empty() || !to->half.empty() || !half.empty();
    if (!colon && (!halves || from->hour > 12 || to->hour > 12)) return false;
    const Language language = passage.language();
    passage.say(i, clock_words(*from, language) + " to " + clock_words(*to, language));
    if (!half.empty() && to->half.empty()) passage.say(i + 1, "." + half);
    say_zone_behind(passage, half.empty() ? i : i + 1);
    return true;
}

} // namespace

bool say_time(Passage& passage, std::size_t i) {
    const std::string token = passage.text(i);
    if (token.empty() || !ascii::is_digit(token[0])) return false;
    if (say_duration(passage, i, token) || say_clock_range(passage, i, token)) return true;
    const std::string half = half_behind(passage, i);
    const bool colon = token.find(':') != std::string::npos;
    const bool glued = ascii::is_letter(token.back());
    const std::string_view separators = !half.empty() || glued ? ":." : ":";
    const std::optional<Clock> clock = read_clock(token, separators);
    if (!clock || (!colon && clock->half.empty() && half.empty()))
        return colon && say_ratio(passage, i, token);
    if (half.empty() || !clock->half.empty()) {
        if (!colon && clock->hour > 12 && !clock->half.empty() && clock->hour > 24) return false;
        if (colon && !clock->minutes_written) return say_ratio(passage, i, token);
        say_clock(passage, i, *clock);
        say_zone_behind(passage, i);
        return true;
    }
    passage.say(i, minutes_words(*clock, passage.language()));
    passage.say(i + 1, "." + half);
    say_zone_behind(passage, i + 1);
    return true;
}

} // namespace say
