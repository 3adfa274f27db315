// Reads the header line by line. A bad line is a problem with its place; the other lines still
// apply.
#include "syntax/header.h"

#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <functional>

namespace say {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
constexpr Seconds longest_target{24.0 * 3600};

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

// Takes digits (and one decimal point if allowed) off the front; nothing if there are none.
std::optional<double> take_number(std::string_view& text, bool decimals) {
    std::size_t size = 0;
    bool point = false;
    while (size < text.size() &&
           (is_digit(text[size]) || (decimals && !point && text[size] == '.'))) {
        point = point || text[size] == '.';
        ++size;
    }
    if (size == 0 || size > 9 || !is_digit(text.front()) || text[size - 1] == '.')
        return std::nullopt;
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + size, value);
    if (read.ec != std::errc{}) return std::nullopt;
    text.remove_prefix(size);
    return value;
}

// Takes a unit off the front with the blanks around it: 1 or 60 seconds; 0 if there is none. A
// length in metres is no time: `m` stands at its number.
double take_unit(std::string_view& text) {
    const std::string_view written = text;
    const bool apart = text.starts_with(' ');
    text = ascii::trim(text);
    std::size_t size = 0;
    while (size < text.size() && unicode::is_letter(static_cast<unsigned char>(text[size])))
        ++size;
    const std::string unit = unicode::to_lower(text.substr(0, size));
    text = ascii::trim(text.substr(size));
    for (const std::string_view second : {"s", "sec", "secs", "second", "seconds"})
        if (unit == second) return 1;
    for (const std::string_view minute : {"min", "mins", "minute", "minutes"})
        if (unit == minute) return 60;
    if (unit == "m" && !apart) return 60;
    text = written;
    return 0;
}

// "2:30" with minutes up to three digits, "1:02:30" with hours.
std::optional<Seconds> parse_clock(std::string_view text) {
    std::vector<double> parts;
    while (true) {
        const std::size_t before = text.size();
        const auto number = take_number(text, false);
        if (!number) return std::nullopt;
        const std::size_t digits = before - text.size();
        if (!parts.empty() && (digits != 2 || *number > 59)) return std::nullopt;
        parts.push_back(*number);
        if (text.empty()) break;
        if (text.front() != ':' || parts.size() == 3) return std::nullopt;
        text.remove_prefix(1);
    }
    if (parts.size() < 2) return std::nullopt;
    double total = 0;
    for (double part : parts)
        total = total * 60 + part;
    return Seconds{total};
}

std::optional<Seconds> parse_length(std::string_view text) {
    text = ascii::trim(text);
    if (const auto clock = parse_clock(text)) return clock;
    return parse_duration(text);
}

std::vector<std::string_view> split_list(std::string_view text) {
    std::vector<std::string_view> parts;
    while (!text.empty()) {
        const std::size_t comma = text.find(',');
        const std::string_view part = ascii::trim(text.substr(0, comma));
        if (!part.empty()) parts.push_back(part);
        if (comma == std::string_view::npos) break;
        text.remove_prefix(comma + 1);
    }
    return parts;
}

// BCP 47 in outline: a language of two or three letters and further subtags.
bool is_language_tag(std::string_view tag) {
    std::size_t part = 0;
    std::size_t length = 0;
    for (char c : tag) {
        if (c == '-') {
            if (length == 0) return false;
            ++part;
            length = 0;
            continue;
        }
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!letter && !(part > 0 && is_digit(c))) return false;
        ++length;
        if (length > (part == 0 ? 3U : 8U)) return false;
    }
    return length > 0 && (part > 0 || length >= 2) && tag.size() >= 2;
}

struct Line {
    Span span; // without its line end
    std::size_t next = 0;
};

Line line_at(std::string_view text, std::size_t begin) {
    std::size_t end = begin;
    while (end < text.size() && text[end] != '\n' && text[end] != '\r')
        ++end;
    std::size_t next = end;
    if (next < text.size() && text[next] == '\r') ++next;
    if (next < text.size() && text[next] == '\n' && (next == end || text[next - 1] == '\r')) ++next;
    return {make_span(begin, end), next};
}

bool is_fence(std::string_view line) {
    while (!line.empty() && (line.back() == ' ' || line.back() == '\t'))
        line.remove_suffix(1);
    return line == "---";
}

// The length of the key of "key: value", or nothing: letters, digits, blanks, - and _ before a
// colon. A key of one word needs no blank behind it, unless it begins a web address.
std::optional<std::size_t> key_length(std::string_view line) {
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos || colon == 0) return std::nullopt;
    const bool letter = unicode::is_letter(static_cast<unsigned char>(line.front()));
    if (!letter) return std::nullopt;
    for (char c : line.substr(0, colon)) {
        const bool part = unicode::is_letter(static_cast<unsigned char>(c)) || is_digit(c) ||
                          c == '-' || c == '_' || c == ' ';
        if (static_cast<unsigned char>(c) >= 0x80 || !part) return std::nullopt;
    }
    const bool one_word = line.substr(0, colon).find(' ') == std::string_view::npos;
    const std::string_view behind = line.substr(colon + 1);
    const bool apart = behind.empty() || behind.front() == ' ' || behind.front() == '\t';
    if (!apart && (!one_word || behind.front() == '/')) return std::nullopt;
    return colon;
}

bool is_note_line(std::string_view line) {
    return line == "%" || line.starts_with("% ");
}

bool is_key_name(std::string_view name) {
    const auto& keys = header_keys();
    return std::any_of(keys.begin(), keys.end(),
                       [&](const HeaderKey& key) { return key.name == name; });
}

// "target 3:00": a key that lacks its colon.
bool begins_with_key(std::string_view line) {
    return is_key_name(unicode::to_lower(line.substr(0, line.find_first_of(" \t"))));
}

// A slip of a few words: what is longer, or a sentence, is talk.
bool may_be_slip(std::string_view line) {
    constexpr int most_words = 3;
    const std::string_view written = ascii::trim(line);
    if (written.find_last_of(".?!") == written.size() - 1) return false;
    return std::count(written.begin(), written.end(), ' ') < most_words;
}

bool is_word(std::string_view line) {
    return std::all_of(line.begin(), line.end(),
                       [](char c) { return unicode::is_letter(static_cast<unsigned char>(c)); });
}

// True if the lines from `line` on are a header's down to its second fence. Behind a blank line
// only what we know is taken for a key: a name with a colon may be a speaker.
bool reaches_fence(std::string_view text, Line line) {
    constexpr int most_lines = 40;
    bool blank = false;
    bool known = false;
    for (int i = 0; i < most_lines && line.span.begin.value < text.size(); ++i) {
        const std::string_view written = slice(text, line.span);
        if (is_fence(written)) return known;
        const auto colon = key_length(written);
        const bool is_known =
            colon ? is_key_name(unicode::to_lower(ascii::trim(written.substr(0, *colon))))
                  : begins_with_key(written);
        known = known || is_known;
        if (ascii::trim(written).empty()) {
            blank = true;
        } else if (!is_known && !is_note_line(written)) {
            const bool fits = blank ? !colon && is_word(written) : colon || may_be_slip(written);
            if (!fits) return false;
        }
        line = line_at(text, line.next);
    }
    return false;
}

// The lines that are no keys from `line` on, if a closing line stands below them with no blank line
// between; else what follows is the script.
std::vector<Span> find_strays(std::string_view text, Line line) {
    constexpr int most_lines = 20; // of a header: a longer stretch is talk
    std::vector<Span> strays;
    for (int i = 0; i < most_lines && line.span.begin.value < text.size(); ++i) {
        const std::string_view written = slice(text, line.span);
        if (is_fence(written)) return strays;
        if (ascii::trim(written).empty()) break;
        if (!is_note_line(written) && !key_length(written)) strays.push_back(line.span);
        line = line_at(text, line.next);
    }
    return {};
}

using Problem = std::optional<std::string>; // what the value may be, if it is bad

Problem set_speakers(Header& header, std::string_view value, Span value_span) {
    const auto place_of = [&](std::string_view part) {
        const auto begin = static_cast<std::size_t>(part.data() - value.data());
        return make_span(begin, begin + part.size()) + value_span.begin.value;
    };
    for (std::string_view part : split_list(value)) {
        const std::size_t equals = part.find('=');
        const std::string_view name = ascii::trim(part.substr(0, equals));
        const std::string_view reader = equals == std::string_view::npos
                                            ? std::string_view{}
                                            : ascii::trim(part.substr(equals + 1));
        if (name.empty() || name.find(':') != std::string_view::npos) {
            return "names with commas between, each with =reader if you like: MIRA=mira, JO";
        }
        header.speakers.push_back({.name = std::string(name),
                                   .reader = std::string(reader),
                                   .name_span = place_of(name),
                                   .reader_span = reader.empty() ? Span{} : place_of(reader)});
    }
    if (header.speakers.empty()) return "at least one name: MIRA=mira, JO";
    return std::nullopt;
}

struct KeyRow {
    HeaderKey key;
    Problem (*set)(Header&, std::string_view value, Span value_span);
};

Problem set_title(Header& header, std::string_view value, Span /*span*/) {
    header.title = value;
    return std::nullopt;
}
Problem set_reader(Header& header, std::string_view value, Span /*span*/) {
    header.reader = value;
    return std::nullopt;
}
Problem set_pace(Header& header, std::string_view value, Span /*span*/) {
    header.pace = parse_pace(value);
    if (header.pace) return std::nullopt;
    return "a speed such as 1.1x, or words a minute such as 165 wpm";
}
Problem set_target(Header& header, std::string_view value, Span span) {
    header.target = parse_target(value);
    header.target_span = span;
    if (header.target) return std::nullopt;
    return "a time such as 2:30, 2m30s, 90s, 2:20-2:30 or 2:30 max";
}
Problem set_speaker_names(Header& header, std::string_view value, Span span) {
    return set_speakers(header, value, span);
}
Problem set_stage(Header& header, std::string_view value, Span /*span*/) {
    header.stage = parse_stage(value);
    if (header.stage) return std::nullopt;
    return "draft, mark or read";
}
Problem set_language(Header& header, std::string_view value, Span span) {
    if (!is_language_tag(value)) return "a language tag such as en-US or en-GB";
    const std::string tag = unicode::to_lower(value);
    if (tag != "en" && !tag.starts_with("en-")) {
        header.problems.push_back({span,
                                   fmt::format("“{}” cannot be said here: only English can", value),
                                   "en-US or en-GB"});
    }
    header.language = value;
    return std::nullopt;
}
Problem set_allow(Header& header, std::string_view value, Span /*span*/) {
    for (std::string_view id : split_list(value))
        header.allow.emplace_back(id);
    return std::nullopt;
}
Problem set_date(Header& header, std::string_view value, Span /*span*/) {
    header.date = value;
    return std::nullopt;
}

const std::vector<KeyRow>& key_rows() {
    static const std::vector<KeyRow> rows = {
        {{"title", "What the script is called.", "Counting limpets"}, set_title},
        {{"reader", "Whose pace the times are for: a name in .sayline/readers.", "mira"},
         set_reader},
        {{"pace", "A speed on top of the reader's own, or words a minute in its place.", "1.1x"},
         set_pace},
        {{"target", "How long the script may run.", "2:30 max"}, set_target},
        {{"speakers", "Who speaks, each with a reader if you like.", "MIRA=mira, JO"},
         set_speaker_names},
        {{"stage", "How far the script is: draft, mark or read.", "mark"}, set_stage},
        {{"language", "The language as a BCP 47 tag.", "en-GB"}, set_language},
        {{"allow", "Rules that stay silent in this script.", "long-sentence"}, set_allow},
        {{"date", "When it is read.", "2027-04-12"}, set_date},
    };
    return rows;
}

void read_entry(Header& header, std::string_view text, Span line, std::size_t colon,
                std::vector<std::string>& seen) {
    const Span key = make_span(line.begin.value, line.begin.value + colon);
    std::size_t begin = key.end.value + 1;
    std::size_t end = line.end.value;
    while (begin < end && (text[begin] == ' ' || text[begin] == '\t'))
        ++begin;
    while (end > begin && (text[end - 1] == ' ' || text[end - 1] == '\t'))
        --end;
    const Span value = make_span(begin, end);
    header.entries.push_back({key, value});

    const std::string name = unicode::to_lower(ascii::trim(slice(text, key)));
    if (std::find(seen.begin(), seen.end(), name) != seen.end()) {
        header.problems.push_back({key, fmt::format("{} stands twice; the first counts", name),
                                   "take one of the two away"});
        return;
    }
    seen.push_back(name);
    for (const KeyRow& row : key_rows()) {
        if (row.key.name != name) continue;
        const std::string_view written = slice(text, value);
        if (written.empty()) return; // half-typed: nothing to say yet
        if (const Problem remedy = row.set(header, written, value)) {
            header.problems.push_back(
                {value, fmt::format("“{}” is no {} and is left out", written, name), *remedy});
        }
        return;
    }
}

} // namespace

std::optional<Seconds> parse_duration(std::string_view written) {
    written = ascii::trim(written);
    if (written.starts_with(':') || written.starts_with("0:")) {
        const auto clock = parse_clock(fmt::format("0{}", written.substr(written.find(':'))));
        return clock && *clock > Seconds{0} ? clock : std::nullopt;
    }
    double total = 0;
    bool minutes_seen = false;
    while (!written.empty()) {
        const auto number = take_number(written, true);
        if (!number) return std::nullopt;
        const double unit = take_unit(written);
        if (unit == 60 && !minutes_seen) {
            minutes_seen = true;
        } else if (unit != 1 || !written.empty() || (minutes_seen && *number >= 60)) {
            return std::nullopt;
        }
        total += *number * unit;
    }
    if (total <= 0 || Seconds{total} > longest_target) return std::nullopt;
    return Seconds{total};
}

std::optional<EndingTime> ending_time(std::string_view direction) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto up_to = [&](std::size_t end) {
        const std::string_view head = direction.substr(0, end);
        return head.substr(0, head.find_last_not_of(blanks) + 1);
    };
    direction = up_to(direction.size());
    if (direction.ends_with("s.") || direction.ends_with("c.") || direction.ends_with("n."))
        direction.remove_suffix(1); // "22 secs."
    // From the longest ending on: "1 min 30 sec" is more than "30 sec".
    std::array<std::size_t, 4> begins{};
    std::size_t n_begins = 0;
    for (std::size_t end = direction.size(); n_begins < begins.size() && end > 0;) {
        const std::size_t blank = direction.find_last_of(" \t\r\n:", end - 1);
        begins[n_begins++] = blank == std::string_view::npos ? 0 : blank + 1;
        if (blank == std::string_view::npos) break;
        end = blank;
    }
    for (std::size_t i = n_begins; i-- > 0;) {
        std::size_t begin = begins[i];
        auto seconds = parse_duration(direction.substr(begin));
        // ":22", but not the end of 10:22.
        if (!seconds && begin > 0 && direction[begin - 1] == ':' &&
            (begin == 1 || !is_digit(direction[begin - 2]))) {
            seconds = parse_duration(direction.substr(--begin));
        }
        if (seconds) return EndingTime{up_to(begin), *seconds};
    }
    return std::nullopt;
}

std::optional<Target> parse_target(std::string_view written) {
    written = ascii::trim(written);
    if (written.ends_with(" max")) {
        const auto high = parse_length(written.substr(0, written.size() - 4));
        if (!high || *high > longest_target) return std::nullopt;
        return Target{Seconds{0}, *high};
    }
    // A range may be written with an en dash.
    for (std::string_view dash : {std::string_view{"-"}, std::string_view{"–"}}) {
        const std::size_t at = written.find(dash);
        if (at == std::string_view::npos) continue;
        const auto low = parse_length(written.substr(0, at));
        const auto high = parse_length(written.substr(at + dash.size()));
        if (!low || !high || *high < *low || *high > longest_target) return std::nullopt;
        return Target{*low, *high};
    }
    const auto exact = parse_length(written);
    if (!exact || *exact <= Seconds{0} || *exact > longest_target) return std::nullopt;
    return Target{*exact, *exact};
}

HeadingText split_heading(std::string_view heading) {
    const auto without_blanks = [](std::string_view text) {
        while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
            text.remove_suffix(1);
        return text;
    };
    heading = without_blanks(heading);
    if (!heading.ends_with(')')) return {heading, {}, {}};
    const std::size_t open = heading.rfind('(');
    if (open == std::string_view::npos) return {heading, {}, {}};
    const auto target = parse_target(heading.substr(open + 1, heading.size() - open - 2));
    if (!target) return {heading, {}, {}};
    return {without_blanks(heading.substr(0, open)), target,
            make_span(open + 1, heading.size() - 1)};
}

std::optional<double> parse_pace(std::string_view written) {
    written = ascii::trim(written);
    const auto number = take_number(written, true);
    if (!number) return std::nullopt;
    written = ascii::trim(written);
    double speed = *number;
    if (written == "wpm") {
        speed = *number / words_a_minute_at_speed_one;
    } else if (written != "x" && !written.empty()) {
        return std::nullopt;
    }
    if (speed < 0.25 || speed > 4.0) return std::nullopt;
    return speed;
}

std::optional<Stage> parse_stage(std::string_view written) {
    const std::string name = unicode::to_lower(ascii::trim(written));
    for (Stage stage : {Stage::draft, Stage::mark, Stage::read}) {
        if (name == name_of(stage)) return stage;
    }
    return std::nullopt;
}

std::string_view name_of(Stage stage) {
    switch (stage) {
    case Stage::draft: return "draft";
    case Stage::mark: return "mark";
    case Stage::read: return "read";
    }
    return "draft";
}

const std::vector<HeaderKey>& header_keys() {
    static const std::vector<HeaderKey> keys = [] {
        std::vector<HeaderKey> result;
        for (const KeyRow& row : key_rows())
            result.push_back(row.key);
        return result;
    }();
    return keys;
}

Header parse_header(std::string_view text) {
    Header header;
    const std::size_t begin = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    header.span = make_span(begin, begin);
    Line line = line_at(text, begin);
    if (!is_fence(slice(text, line.span))) return header;

    std::vector<std::string> seen;
    Span last = line.span;
    const bool whole = reaches_fence(text, line_at(text, line.next));
    for (line = line_at(text, line.next); line.span.begin.value < text.size();
         line = line_at(text, line.next)) {
        const std::string_view written = slice(text, line.span);
        if (is_fence(written)) {
            header.span.end = line.span.end;
            return header;
        }
        if (is_note_line(written)) continue;
        const auto colon = key_length(written);
        if (!colon && whole) {
            if (!ascii::trim(written).empty()) header.strays.push_back(line.span);
            continue;
        }
        if (!colon) break;
        read_entry(header, text, line.span, *colon, seen);
        last = line.span;
    }
    // Without entries the line is a divider; with some the header lacks its second fence.
    if (!header.entries.empty() || begins_with_key(slice(text, line.span)))
        header.strays = find_strays(text, line);
    if (header.entries.empty()) return header;
    header.span.end = last.end;
    header.closed = false;
    header.problems.push_back({make_span(begin, begin + 3),
                               "the header is not closed, so it ends at its last key",
                               "put --- on a line of its own below the last key"});
    return header;
}

} // namespace say
