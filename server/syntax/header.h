// The header of a script and the small values that it, headings and directions share:
// targets, durations, paces. docs/format.md is the reference.
#pragma once

#include "base/units.h"
#include "text/span.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// How long something should run. "2:30" is exact (low == high), "2:20-2:30" a range,
// "2:30 max" has no lower end (low == 0).
struct Target {
    Seconds low{0};
    Seconds high{0};
    bool operator==(const Target&) const = default;
};

// "2:30", "2m30s", "90s", "1m", "2:20-2:30", "2:30 max". Nothing for anything else, nor above 24
// hours.
std::optional<Target> parse_target(std::string_view written);
// "3s", "1.5s", "1m30s", "2m", and as people write them: "22 secs", "1 min 30 sec", "0:22", ":22".
std::optional<Seconds> parse_duration(std::string_view written);

// The time that the words of a direction end with: "clip: the tide 4s", "VT: hall, 22 secs".
struct EndingTime {
    std::string_view words; // before it, without the blank; a prefix
    Seconds seconds{0};
};
std::optional<EndingTime> ending_time(std::string_view direction);
// "1.1x" or "1.1" is a speed; "165 wpm" becomes 165/172. From 0.25 to 4.
std::optional<double> parse_pace(std::string_view written);
// The words a minute that speed 1 stands for: the study's pace 1 (docs/timing.md).
inline constexpr double words_a_minute_at_speed_one = 172.0;

// A heading's text: "Opening (0:20)" is a name and a target.
struct HeadingText {
    std::string_view name; // a prefix of the text
    std::optional<Target> target;
    Span target_span; // in the text, without the brackets; empty without a target
};
HeadingText split_heading(std::string_view heading);

// How far the writer is with the script; a draft hears little.
enum class Stage { draft, mark, read };
std::optional<Stage> parse_stage(std::string_view written);
std::string_view name_of(Stage stage);

struct Speaker {
    std::string name;   // as written before the colon: "MIRA"
    std::string reader; // whose pace: a file of .sayline/readers, empty for the script's reader
    Span name_span;     // absolute
    Span reader_span;   // empty without one
};

struct HeaderEntry {
    Span key; // absolute
    Span value;
};

// What a header line says wrong, found while reading it.
struct HeaderProblem {
    Span span;
    std::string message; // a finding's sentence
    std::string remedy;  // what the line may hold
};

struct Header {
    Span span; // from the first --- to the end of the last line of the header; empty without one
    bool closed = true;
    std::vector<HeaderEntry> entries; // every key as written, unknown ones too
    std::vector<HeaderProblem> problems;
    // The lines, no keys, that stand in it or between its end and a closing line which they keep
    // from closing it; absolute, without their line ends.
    std::vector<Span> strays;

    std::string title;
    std::string reader;
    std::string language; // BCP 47 as written
    std::string date;
    std::optional<double> pace;
    std::optional<Target> target;
    Span target_span;
    std::vector<Speaker> speakers;
    std::optional<Stage> stage;
    std::vector<std::string> allow; // rule ids silenced for the whole script
};

struct HeaderKey {
    std::string_view name;
    std::string_view help;    // one sentence for completion and the manual
    std::string_view example; // a value as it may be written
};
// The keys that mean something; anything else is kept and is one hint.
const std::vector<HeaderKey>& header_keys();

// It reaches to its second fence if what stands between can be a header's: keys, notes, and a slip
// or two, such as a blank line or a key that is half typed. Else it ends at its last key.
Header parse_header(std::string_view text);

} // namespace say
