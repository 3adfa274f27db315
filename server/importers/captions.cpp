// Captions and timed lines, line by line. A block that cannot be read is one that is left out.
#include "importers/captions.h"

#include "text/ascii.h"
#include "text/text.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <set>

namespace say {
namespace {

constexpr std::string_view arrow = "-->";

// The lines of a file, without a byte-order mark.
class Lines {
public:
    explicit Lines(std::string_view bytes)
        : text_(std::string(bytes.starts_with("\xEF\xBB\xBF") ? bytes.substr(3) : bytes)) {}

    std::uint32_t count() const { return text_.line_count(); }
    std::string_view operator[](std::uint32_t line) const {
        return slice(text_.bytes(), text_.line_span(line));
    }
    bool is_blank(std::uint32_t line) const { return ascii::trim((*this)[line]).empty(); }

private:
    Text text_;
};

// --- times -------------------------------------------------------------------------------------

std::optional<double> read_digits(std::string_view digits, std::size_t least, std::size_t most) {
    if (digits.size() < least || digits.size() > most) return std::nullopt;
    unsigned value = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) return std::nullopt;
    return value;
}

// "[h:]mm:ss.ttt"; a comma may stand for the dot, as SRT writes it, and digits of the fraction may
// be missing, as many programs do.
std::optional<Seconds> read_time(std::string_view written) {
    constexpr std::size_t most_hours = 4; // digits
    const std::size_t dot = written.find_first_of(".,");
    double fraction = 0;
    if (dot != std::string_view::npos) {
        const std::string_view digits = written.substr(dot + 1);
        const auto read = read_digits(digits, 1, 6);
        if (!read) return std::nullopt;
        fraction = *read;
        for (std::size_t i = 0; i < digits.size(); ++i)
            fraction /= 10;
        written = written.substr(0, dot);
    }
    std::array<double, 3> parts{}; // hours, minutes, seconds
    std::size_t filled = 0;
    for (std::size_t at = written.size(); filled < 3;) {
        const std::size_t colon = at == 0 ? std::string_view::npos : written.rfind(':', at - 1);
        const std::size_t begin = colon == std::string_view::npos ? 0 : colon + 1;
        const bool hours = filled == 2;
        const auto part = read_digits(written.substr(begin, at - begin), 1, hours ? most_hours : 2);
        if (!part || (!hours && *part > 59)) return std::nullopt;
        parts.at(2 - filled++) = *part;
        if (colon == std::string_view::npos) break;
        if (filled == 3) return std::nullopt;
        at = colon;
    }
    if (filled < 2) return std::nullopt;
    return Seconds{parts[0] * 3600 + parts[1] * 60 + parts[2] + fraction};
}

struct Times {
    Seconds begin{0};
    Seconds end{0};
};

// The line "begin --> end settings"; the settings say where a cue stands, not what it says.
std::optional<Times> read_times(std::string_view line) {
    const std::size_t at = line.find(arrow);
    if (at == std::string_view::npos) return std::nullopt;
    const std::string_view behind = ascii::trim(line.substr(at + arrow.size()));
    const auto begin = read_time(ascii::trim(line.substr(0, at)));
    const auto end = read_time(behind.substr(0, behind.find_first_of(" \t")));
    if (!begin || !end) return std::nullopt;
    return Times{*begin, *end};
}

// --- what a cue says ---------------------------------------------------------------------------

// "&amp;" and the like; one that is unknown stays as it is written.
void read_reference(std::string_view payload, std::size_t& at, std::string& text) {
    struct Reference {
        std::string_view written;
        std::string_view means;
    };
    constexpr std::array<Reference, 8> known = {{{"&amp;", "&"},
                                                 {"&lt;", "<"},
                                                 {"&gt;", ">"},
                                                 {"&quot;", "\""},
                                                 {"&apos;", "'"},
                                                 {"&nbsp;", " "},
                                                 {"&lrm;", ""},
                                                 {"&rlm;", ""}}};
    const std::string_view rest = payload.substr(at);
    for (const Reference& each : known) {
        if (!rest.starts_with(each.written)) continue;
        text += each.means;
        at += each.written.size();
        return;
    }
    const std::size_t end = rest.find(';');
    const bool hex = rest.starts_with("&#x");
    if (rest.starts_with("&#") && end != std::string_view::npos) {
        const std::string_view digits = rest.substr(hex ? 3 : 2, end - (hex ? 3 : 2));
        unsigned value = 0;
        const auto read =
            std::from_chars(digits.data(), digits.data() + digits.size(), value, hex ? 16 : 10);
        const bool is_character =
            value > 0 && value <= 0x10FFFF && (value < 0xD800 || value > 0xDFFF);
        if (read.ec == std::errc{} && read.ptr == digits.data() + digits.size() && is_character) {
            unicode::append(text, value);
            at += end + 1;
            return;
        }
    }
    text += payload[at++];
}

bool is_tag(std::string_view name) {
    // WebVTT's, those SRT files hold, and the times inside a cue.
    constexpr std::array<std::string_view, 10> names = {"c",  "i", "b",    "u",    "ruby",
                                                        "rt", "v", "lang", "font", "s"};
    if (name.starts_with('/')) name.remove_prefix(1);
    const std::string_view head = name.substr(0, name.find_first_of(" .\t"));
    return read_time(name).has_value() || name.empty() ||
           std::find(names.begin(), names.end(), head) != names.end();
}

// The payload without tags, cut where a voice tag names somebody.
struct Payload {
    struct Part {
        std::string voice; // empty before the first tag
        std::string text;
    };
    std::vector<Part> parts{{}};
    int voices = 0; // how many times another one begins
};

Payload read_payload(std::string_view payload) {
    Payload read;
    bool in_rt = false; // the small text above a ruby base says the same words again
    for (std::size_t at = 0; at < payload.size();) {
        const char c = payload[at];
        const std::size_t close = c == '<' ? payload.find('>', at) : std::string_view::npos;
        if (close != std::string_view::npos) {
            const std::string_view tag = payload.substr(at + 1, close - at - 1);
            if (is_tag(tag)) {
                at = close + 1;
                if (tag.starts_with("rt")) in_rt = true;
                if (tag == "/rt" || tag == "/ruby") in_rt = false;
                const std::size_t blank = tag.find_first_of(" \t");
                const bool is_voice = tag == "v" || tag.starts_with("v.") || tag.starts_with("v ");
                if (is_voice && blank != std::string_view::npos) {
                    const std::string_view name = ascii::trim(tag.substr(blank));
                    if (read.voices == 0 || read.parts.back().voice != name) {
                        ++read.voices;
                        read.parts.push_back({std::string(name), {}});
                    }
                }
                continue;
            }
        }
        // Places on the screen in SRT files: {\an8}.
        if (payload.substr(at).starts_with("{\\")) {
            const std::size_t end = payload.find('}', at);
            if (end != std::string_view::npos) {
                at = end + 1;
                continue;
            }
        }
        if (in_rt) {
            ++at;
        } else if (c == '&') {
            read_reference(payload, at, read.parts.back().text);
        } else {
            read.parts.back().text += c;
            ++at;
        }
    }
    return read;
}

// Sounds are written in brackets, music between notes; neither is speech.
std::string without_sounds(std::string_view text) {
    constexpr std::string_view note = "♪";
    constexpr std::string_view notes = "♫";
    if (text.find(note) != std::string_view::npos || text.find(notes) != std::string_view::npos) {
        return {};
    }
    std::string spoken;
    int depth = 0;
    for (const char c : text) {
        if (c == '[') ++depth;
        if (depth == 0) spoken += c;
        if (c == ']' && depth > 0) --depth;
    }
    const std::string_view whole = ascii::trim(spoken);
    const bool is_sound = whole.starts_with('(') && whole.find(')') == whole.size() - 1;
    return is_sound ? std::string{} : std::string(whole);
}

// "- Where?", ">> Where?", "MIRA: Where?": what is said begins behind it.
Turn read_turn(std::string_view line, const std::string& voice) {
    Turn turn{.text = {}, .sound = {}, .voice = voice};
    while (line.starts_with('-') || line.starts_with('>')) {
        line = ascii::trim(line.substr(1));
        turn.changes = true;
    }
    std::size_t at = 0;
    while (at < line.size() && (ascii::is_upper(line[at]) || ascii::is_blank(line[at]) ||
                                line[at] == '.' || line[at] == '\'' || line[at] == '-')) {
        ++at;
    }
    constexpr std::size_t shortest_name = 2;
    constexpr std::size_t longest_name = 40;
    if (at >= shortest_name && at <= longest_name && at < line.size() && line[at] == ':') {
        turn.voice = ascii::trim(line.substr(0, at));
        turn.changes = true;
        line = ascii::trim(line.substr(at + 1));
    }
    turn.text = without_sounds(line);
    (turn.text.empty() ? turn.sound : turn.written) = line;
    return turn;
}

bool has_letters(std::string_view line) {
    return std::any_of(line.begin(), line.end(),
                       [](char c) { return ascii::is_letter(c) || ascii::is_high(c); });
}

// What was meant for a line of times, though it is none: "00:00:04,000 -> 00:00:05,000".
bool looks_like_times(std::string_view line) {
    constexpr std::string_view times = "0123456789:.,;-> \t";
    const std::size_t words = line.find_first_not_of(times);
    // Settings stand behind: "align:start".
    const std::string_view settings =
        words == std::string_view::npos ? std::string_view{} : line.substr(words);
    return line.substr(0, words).find(':') != std::string_view::npos &&
           (settings.empty() || (line.substr(0, words).find("->") != std::string_view::npos &&
                                 settings.find(':') < settings.find(' ')));
}

// --- blocks ------------------------------------------------------------------------------------

class CaptionReader {
public:
    enum class Kind { webvtt, srt };

    CaptionReader(std::string_view bytes, Kind kind) : lines_(bytes), kind_(kind) {}

    Captions read(std::uint32_t from) {
        for (line_ = from; line_ < lines_.count();) {
            if (lines_.is_blank(line_)) {
                ++line_;
            } else {
                read_block();
            }
        }
        return std::move(captions_);
    }

    const Lines& lines() const { return lines_; }

private:
    // From a line that is not blank to the next that is, or to the next cue's times: a missing
    // blank line must not swallow a cue.
    void read_block() {
        const std::string_view first = lines_[line_];
        const bool has_times = first.find(arrow) != std::string_view::npos;
        if (!has_times && kind_ == Kind::webvtt && is_other_block(first)) return pass_block();
        // The identifier or number above the times; SRT has numbers only.
        if (!has_times) {
            const bool names_cue =
                has_arrow(line_ + 1) && (kind_ == Kind::webvtt || !has_letters(first));
            if (!names_cue) return read_untimed();
            ++line_;
        }
        const std::uint32_t at = line_ + 1;
        const std::string_view written = lines_[line_++];
        const auto times = read_times(written);
        std::vector<std::string_view> payload = read_payload_lines();
        if (times) return add(at, *times, payload);
        captions_.left_out.push_back({at, std::string(no_times)});
        if (!looks_like_times(written)) payload.insert(payload.begin(), written);
        add_untimed(at, payload);
    }

    bool has_arrow(std::uint32_t line) const {
        return line < lines_.count() && lines_[line].find(arrow) != std::string_view::npos;
    }

    std::vector<std::string_view> read_payload_lines() {
        std::vector<std::string_view> payload;
        while (line_ < lines_.count() && !lines_.is_blank(line_) && !begins_cue(line_))
            payload.push_back(lines_[line_++]);
        return payload;
    }

    // Text below a blank line within a cue, or below times without an arrow.
    void read_untimed() {
        const std::uint32_t at = line_ + 1;
        std::vector<std::string_view> payload{lines_[line_++]};
        for (const std::string_view line : read_payload_lines())
            payload.push_back(line);
        const auto times = std::find_if(payload.begin(), payload.end(), looks_like_times);
        if (times == payload.end()) {
            captions_.left_out.push_back({at, "no times above this text"});
        } else {
            const auto below = static_cast<std::uint32_t>(times - payload.begin());
            captions_.left_out.push_back({at + below, std::string(no_times)});
            payload.erase(times);
        }
        // The number of the cue.
        if (payload.size() > 1 && !has_letters(payload.front())) payload.erase(payload.begin());
        add_untimed(captions_.left_out.back().line, payload);
    }

    void add_untimed(std::uint32_t at, const std::vector<std::string_view>& payload) {
        Cue cue{.text = {}, .voice = {}, .line = at};
        cue.turns = turns_of(read_payload(joined(payload)));
        if (!cue.turns.empty()) captions_.untimed.push_back(std::move(cue));
    }

    static std::string joined(const std::vector<std::string_view>& lines) {
        std::string whole;
        for (const std::string_view line : lines) {
            if (!whole.empty()) whole += '\n';
            whole += line;
        }
        return whole;
    }

    static bool is_other_block(std::string_view line) {
        for (const std::string_view name : {"NOTE", "STYLE", "REGION"}) {
            if (!line.starts_with(name)) continue;
            if (line.size() == name.size() || ascii::is_blank(line[name.size()])) return true;
        }
        return false;
    }

    bool begins_cue(std::uint32_t line) const {
        if (lines_[line].find(arrow) != std::string_view::npos) return true;
        const bool times_below =
            line + 1 < lines_.count() && lines_[line + 1].find(arrow) != std::string_view::npos;
        const std::string_view text = ascii::trim(lines_[line]);
        return times_below && std::all_of(text.begin(), text.end(), ascii::is_digit);
    }

    void pass_block() {
        while (line_ < lines_.count() && !lines_.is_blank(line_))
            ++line_;
    }

    void add(std::uint32_t at, const Times& times, const std::vector<std::string_view>& payload) {
        Cue cue{.begin = times.begin, .end = times.end, .text = {}, .voice = {}, .line = at};
        const Payload said = read_payload(joined(payload));
        std::vector<Turn> turns = turns_of(said);
        std::vector<std::string> shown;
        for (const Turn& turn : turns) {
            if (!turn.text.empty()) shown.push_back(turn.text);
        }
        const std::vector<std::string> fresh = new_lines(shown, times);
        pass_shown(turns, shown.size() - fresh.size());
        const std::set<std::string> named = voices_of(turns);
        cue.turns = std::move(turns);
        cue.voice = said.voices > 0 ? said.parts.back().voice
                    : named.empty() ? std::string{}
                                    : *named.rbegin();
        if (said.voices > 1 || (said.voices == 0 && named.size() > 1)) {
            captions_.left_out.push_back({at, "two people speak in this cue"});
            cue.voice.clear();
            captions_.cues.push_back(std::move(cue));
            return;
        }
        for (const std::string& line : fresh) {
            if (!cue.text.empty()) cue.text += ' ';
            cue.text += line;
        }
        // A cue that repeats what still stands on the screen says nothing new.
        if (cue.text.empty() && !shown.empty()) {
            if (!captions_.cues.empty()) {
                Cue& last = captions_.cues.back();
                last.end = std::max(last.end, cue.end);
                last.turns.insert(last.turns.end(), cue.turns.begin(), cue.turns.end()); // sounds
            }
        } else {
            captions_.cues.push_back(std::move(cue));
        }
        shown_ = std::move(shown);
        shown_until_ = times.end;
    }

    static std::vector<Turn> turns_of(const Payload& said) {
        std::vector<Turn> turns;
        for (const Payload::Part& part : said.parts) {
            for (std::string_view rest = part.text; !rest.empty();) {
                const std::size_t end = line_end(rest);
                std::string line(ascii::trim(rest.substr(0, end)));
                std::replace(line.begin(), line.end(), '\n', ' ');
                if (!line.empty()) turns.push_back(read_turn(line, part.voice));
                rest.remove_prefix(std::min(rest.size(), end + 1));
            }
        }
        return turns;
    }

    // Brackets that close on the next line of the cue are one.
    static std::size_t line_end(std::string_view rest) {
        std::size_t end = std::min(rest.find('\n'), rest.size());
        const std::size_t open = rest.substr(0, end).rfind('[');
        if (open == std::string_view::npos) return end;
        const std::size_t close = rest.find_first_of("[]", open + 1);
        if (close == std::string_view::npos || close < end || rest[close] == '[') return end;
        return std::min(rest.find('\n', close), rest.size());
    }

    // Who says the turns by the names before them, which hold until somebody else speaks; "" is
    // somebody without a name. A cue of sounds has nobody.
    std::set<std::string> voices_of(const std::vector<Turn>& turns) {
        std::set<std::string> voices;
        for (const Turn& turn : turns) {
            if (turn.changes) named_ = turn.voice;
            if (!turn.text.empty()) voices.insert(named_);
        }
        return voices;
    }

    // Takes out the first lines that were shown before.
    static void pass_shown(std::vector<Turn>& turns, std::size_t count) {
        for (auto turn = turns.begin(); turn != turns.end() && count > 0;) {
            const bool said = !turn->text.empty();
            turn = said ? turns.erase(turn) : turn + 1;
            count -= said ? 1 : 0;
        }
    }

    // Captions that roll up show the line above once more: it is said once.
    std::vector<std::string> new_lines(const std::vector<std::string>& lines,
                                       const Times& times) const {
        constexpr Seconds at_once{0.1};
        if (shown_.empty() || lines.empty() || times.begin > shown_until_ + at_once) return lines;
        const auto again = std::find(shown_.begin(), shown_.end(), lines.front());
        if (again == shown_.end()) return lines;
        const auto count = shown_.end() - again;
        const bool rolls =
            count <= std::ssize(lines) && std::equal(again, shown_.end(), lines.begin());
        // The same single line again may well be said again: "No. No."
        if (!rolls || (lines.size() == 1 && shown_.size() == 1)) return lines;
        return {lines.begin() + count, lines.end()};
    }

    static constexpr std::string_view no_times =
        "the times cannot be read; they are written 00:01:02.500 --> 00:01:04.000";

    Lines lines_;
    Kind kind_;
    std::uint32_t line_ = 0;
    Captions captions_;
    std::string named_;              // who speaks, by the last name before words
    std::vector<std::string> shown_; // the lines of the cue above
    Seconds shown_until_{0};
};

Result<Captions> finished(Captions captions, const std::string& name) {
    const bool speaks = std::any_of(captions.cues.begin(), captions.cues.end(), [](const Cue& cue) {
        return std::any_of(cue.turns.begin(), cue.turns.end(),
                           [](const Turn& turn) { return !turn.text.empty(); });
    });
    if (speaks) return captions;
    return Error{
        fmt::format("{}: no captions with words in it; give one that holds what was said", name)};
}

} // namespace

Result<Captions> read_webvtt(std::string_view bytes, const std::string& name) {
    CaptionReader reader(bytes, CaptionReader::Kind::webvtt);
    const std::string_view top = reader.lines()[0];
    constexpr std::string_view magic = "WEBVTT";
    const bool begins = top.starts_with(magic) &&
                        (top.size() == magic.size() || ascii::is_blank(top[magic.size()]));
    if (!begins) {
        return Error{fmt::format("{}:1: not WebVTT: the first line should be WEBVTT", name)};
    }
    // The header runs to the first blank line.
    std::uint32_t line = 1;
    while (line < reader.lines().count() && !reader.lines().is_blank(line) &&
           reader.lines()[line].find(arrow) == std::string_view::npos) {
        ++line;
    }
    return finished(reader.read(line), name);
}

Result<Captions> read_srt(std::string_view bytes, const std::string& name) {
    return finished(CaptionReader(bytes, CaptionReader::Kind::srt).read(0), name);
}

Result<TimedLines> read_timed_lines(std::string_view bytes, const std::string& name) {
    const Lines lines(bytes);
    TimedLines read;
    for (std::uint32_t i = 0; i < lines.count(); ++i) {
        const std::string_view line = lines[i];
        if (lines.is_blank(i) || line.starts_with('#')) continue;
        const std::size_t tab = line.find('\t');
        const std::string_view written = ascii::trim(line.substr(0, tab));
        double seconds = 0;
        const auto number =
            std::from_chars(written.data(), written.data() + written.size(), seconds);
        const bool is_number = number.ec == std::errc{} &&
                               number.ptr == written.data() + written.size() && seconds > 0 &&
                               seconds < 24 * 3600;
        if (tab == std::string_view::npos || !is_number) {
            read.left_out.push_back(
                {i + 1, "not seconds, a tab and the text, as in 4.2<TAB>Hello"});
            continue;
        }
        read.lines.push_back(
            {Seconds{seconds}, std::string(ascii::trim(line.substr(tab + 1))), i + 1});
    }
    if (!read.lines.empty()) return read;
    return Error{fmt::format("{}: no timed lines; each holds seconds, a tab and the text", name)};
}

} // namespace say
