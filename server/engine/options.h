// Every setting, once: key, type, default, range, sentence. The table makes the parser, the JSON
// schema, docs/options.md and the editors' settings; a bad value is reported where it stands and
// the rest applies.
#pragma once

#include "base/result.h"
#include "rules/rule.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace say {

enum class RuleLevel { off, hint, warning };

struct Options {
    Voice voice;
    std::string reader; // whose file of .sayline/readers holds the pace; the header's wins
    std::string language = "en-US";
    Stage stage = Stage::draft;
    RuleOptions rules;
    std::map<std::string, RuleLevel, std::less<>> rule_levels;
    bool hint_seconds = true; // inlay hints: seconds at the end of each thought
    bool hint_clock = false;  // inlay hints: the running clock
    bool findings = true;     // false: times, hover and the rest go on without them
    Severity findings_from_severity = Severity::hint;
    Stage findings_from_stage = Stage::draft;
    bool blank_line_after_sentence = false; // Enter behind a finished sentence begins a thought
    // Readers by name, already read from their files by the host.
    struct Reader {
        double speech = 1.0; // seconds factor of speech: 1.1 is slower
        double pauses = 1.0;
        std::optional<Seconds> rests_on{}; // how much timed speech; nothing for numbers set by hand
    };
    std::map<std::string, Reader, std::less<>> readers;
    // Files of pronunciations, as named in the settings; the host reads them into voice.words.
    std::vector<std::string> lexicons;
    // A flag on the command line is stronger than the header; these say which were given so.
    bool pace_is_flag = false;
    bool stage_is_flag = false;
    bool language_is_flag = false;
    bool reader_is_flag = false;
    // "165 wpm" was asked for: in place of the reader's own speed, not on top of it.
    bool pace_is_absolute = false;
};

// A value as it comes from JSON or from the command line, before it is checked.
using OptionValue = std::variant<bool, double, std::string, std::vector<std::string>>;

enum class OptionType { boolean, number, seconds, words, pace, choice, text, files };

struct OptionRow {
    std::string_view key; // "breath_limit"
    OptionType type = OptionType::number;
    std::string_view default_value; // as written in settings: "6", "draft", "true"
    double low = 0;                 // of a number, seconds or words; of a choice that takes a
    double high = 0;                // number too (low < high)
    std::vector<std::string_view> choices{}; // of a choice
    std::string_view help;                   // one sentence
    std::string_view source; // where the default comes from, or "no source: common practice"
    void (*set)(Options&, const OptionValue&) = nullptr;
};

std::span<const OptionRow> option_rows();
const OptionRow* find_option(std::string_view key);

// "1 to 30 seconds", "draft, mark or read": what may stand there, for messages and the manual.
std::string allowed_values(const OptionRow& row);
std::string_view name_of(RuleLevel level);

// Sets one option; the error names key, value and what may stand there.
Result<void> set_option(Options& options, std::string_view key, const OptionValue& value);
// `level` is off, hint or warning.
Result<void> set_rule_level(Options& options, std::string_view rule, std::string_view level);

} // namespace say
