// The table of settings. A number here is the default of the plain structs too; a test holds the
// two equal. Sources in full: docs/timing.md, docs/rules.md and docs/twisters.md.
#include "engine/options.h"

#include "base/letters.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>
#include <optional>

namespace say {
namespace {

template <Seconds PauseTable::*Field> void set_time(Options& options, const OptionValue& value) {
    options.voice.table.*Field = Seconds{std::get<double>(value)};
}

template <double PauseTable::*Field> void set_rate(Options& options, const OptionValue& value) {
    options.voice.table.*Field = std::get<double>(value);
}

template <int RuleOptions::*Field> void set_words(Options& options, const OptionValue& value) {
    options.rules.*Field = static_cast<int>(std::get<double>(value));
}

template <Seconds RuleOptions::*Field> void set_limit(Options& options, const OptionValue& value) {
    options.rules.*Field = Seconds{std::get<double>(value)};
}

template <bool Options::*Field> void set_switch(Options& options, const OptionValue& value) {
    options.*Field = std::get<bool>(value);
}

void set_pace(Options& options, const OptionValue& value) {
    const auto& written = std::get<std::string>(value);
    options.voice.speed = parse_pace(written).value_or(1.0);
    options.pace_is_absolute = unicode::to_lower(written).find("wpm") != std::string::npos;
}

void set_reader(Options& options, const OptionValue& value) {
    options.reader = std::get<std::string>(value);
}

void set_language(Options& options, const OptionValue& value) {
    options.language = std::get<std::string>(value);
    options.voice.language = options.language == "en-GB" ? Language::en_gb : Language::en_us;
}

void set_stage(Options& options, const OptionValue& value) {
    options.stage = parse_stage(std::get<std::string>(value)).value_or(Stage::draft);
}

void set_least_severity(Options& options, const OptionValue& value) {
    const auto& word = std::get<std::string>(value);
    for (const Severity severity : {Severity::hint, Severity::warning, Severity::error}) {
        if (word == name_of(severity)) options.findings_from_severity = severity;
    }
}

void set_first_stage(Options& options, const OptionValue& value) {
    options.findings_from_stage = parse_stage(std::get<std::string>(value)).value_or(Stage::draft);
}

void set_lexicons(Options& options, const OptionValue& value) {
    options.lexicons = std::get<std::vector<std::string>>(value);
}

void set_twister(Options& options, const OptionValue& value) {
    double& threshold = options.rules.twister_threshold;
    if (const auto* number = std::get_if<double>(&value)) {
        threshold = *number;
        return;
    }
    const auto& word = std::get<std::string>(value);
    threshold = word == "off"      ? std::numeric_limits<double>::infinity()
                : word == "strict" ? twister_strict_threshold
                                   : twister_default_threshold;
}

OptionRow time_row(std::string_view key, std::string_view default_value, std::string_view help,
                   std::string_view source, void (*set)(Options&, const OptionValue&)) {
    return {.key = key,
            .type = OptionType::seconds,
            .default_value = default_value,
            .low = 0,
            .high = 10,
            .help = help,
            .source = source,
            .set = set};
}

OptionRow rate_row(std::string_view key, std::string_view default_value, std::string_view help,
                   void (*set)(Options&, const OptionValue&)) {
    return {.key = key,
            .type = OptionType::number,
            .default_value = default_value,
            .low = 0.25,
            .high = 4,
            .help = help,
            .source = "no source: common practice",
            .set = set};
}

OptionRow count_row(std::string_view key, std::string_view default_value, double low, double high,
                    std::string_view help, std::string_view source,
                    void (*set)(Options&, const OptionValue&)) {
    return {.key = key,
            .type = OptionType::words,
            .default_value = default_value,
            .low = low,
            .high = high,
            .help = help,
            .source = source,
            .set = set};
}

std::vector<OptionRow> voice_rows() {
    return {
        {.key = "pace",
         .type = OptionType::pace,
         .default_value = "1x",
         .help = "How fast the script is read, on top of the reader's own speed: `1.1x` is faster, "
                 "`165 wpm` stands in place of the reader's.",
         .source = "1x is the pace 1 of the timing model, about 172 words a minute "
                   "(docs/timing.md)",
         .set = set_pace},
        {.key = "reader",
         .type = OptionType::text,
         .default_value = "",
         .help = "Whose pace counts: the name of a file in `.sayline/readers`, without `.json`.",
         .source = "empty: nobody's, so times show the wider range of an unknown reader",
         .set = set_reader},
        {.key = "language",
         .type = OptionType::choice,
         .default_value = "en-US",
         .choices = {"en-US", "en-GB"},
         .help = "How figures, dates and money are read aloud.",
         .source = "no source: the pronouncing dictionary is American",
         .set = set_language},
        {.key = "lexicons",
         .type = OptionType::files,
         .default_value = "",
         .help = "Files that say how words sound, in the W3C's Pronunciation Lexicon "
                 "Specification 1.0; the first that has a word counts. Their paths begin at the "
                 "folder `.sayline`. The project's own `.sayline/words.pls` is read without being "
                 "named and comes first.",
         .source = "empty: the project's own list and the dictionary",
         .set = set_lexicons},
        {.key = "stage",
         .type = OptionType::choice,
         .default_value = "draft",
         .choices = {"draft", "mark", "read"},
         .help = "How far the writer is: a draft hears little, `mark` is told where marks are "
                 "missing, `read` hears all.",
         .source = "no source: common practice, write first and mark later",
         .set = set_stage},
        {.key = "hint_seconds",
         .type = OptionType::boolean,
         .default_value = "true",
         .help = "Show the seconds at the end of each thought in the editor.",
         .source = "no source: our choice",
         .set = set_switch<&Options::hint_seconds>},
        {.key = "hint_clock",
         .type = OptionType::boolean,
         .default_value = "false",
         .help = "Show the running clock at the end of each thought in the editor.",
         .source = "no source: our choice",
         .set = set_switch<&Options::hint_clock>},
        {.key = "blank_line_after_sentence",
         .type = OptionType::boolean,
         .default_value = "false",
         .help = "Enter behind a finished sentence begins a new thought: the editor adds the blank "
                 "line, where it asks the server while you type.",
         .source = "no source: our choice; many writers end lines inside a thought",
         .set = set_switch<&Options::blank_line_after_sentence>},
        {.key = "findings",
         .type = OptionType::boolean,
         .default_value = "true",
         .help = "Show findings; without them the times, hover, completion and the outline go on.",
         .source = "no source: our choice",
         .set = set_switch<&Options::findings>},
        {.key = "findings_from_severity",
         .type = OptionType::choice,
         .default_value = "hint",
         .choices = {"hint", "warning", "error"},
         .help = "Findings that weigh less than this are not shown.",
         .source = "no source: our choice",
         .set = set_least_severity},
        {.key = "findings_from_stage",
         .type = OptionType::choice,
         .default_value = "draft",
         .choices = {"draft", "mark", "read"},
         .help = "Before the script has come to this stage no finding is shown.",
         .source = "no source: our choice",
         .set = set_first_stage},
    };
}

std::vector<OptionRow> rule_rows() {
    return {
        {.key = "breath_limit",
         .type = OptionType::seconds,
         .default_value = "6",
         .low = 1,
         .high = 30,
         .help = "The longest stretch on one breath before a finding asks for a place to breathe.",
         .source = "no source: our choice, about twice the mean breath group of reading aloud (3.1 "
                   "s, 18 readers, 2008)",
         .set = set_limit<&RuleOptions::breath_limit>},
        {.key = "one_note",
         .type = OptionType::seconds,
         .default_value = "25",
         .low = 5,
         .high = 600,
         .help = "The longest stretch without a mark before a finding, from stage `mark` on.",
         .source = "no source: our choice, some eight breath groups",
         .set = set_limit<&RuleOptions::one_note>},
        count_row("long_sentence_words", "25", 5, 200,
                  "A sentence of more words without any mark is a finding.",
                  "GOV.UK: break up sentences over 25 words",
                  set_words<&RuleOptions::long_sentence_words>),
        count_row("marked_sentence_words", "25", 5, 200,
                  "The same from stage `mark` on, when marks are being drawn.",
                  "GOV.UK: break up sentences over 25 words",
                  set_words<&RuleOptions::marked_sentence_words>),
        count_row("sentences_a_thought", "3", 2, 50,
                  "So many sentences in one paragraph are a thought that runs on.",
                  "no source: our choice, lenient while drafting",
                  set_words<&RuleOptions::sentences_a_thought>),
        count_row("marked_sentences_a_thought", "2", 2, 50, "The same from stage `mark` on.",
                  "no source: common practice, one sentence a thought",
                  set_words<&RuleOptions::marked_sentences_a_thought>),
        count_row(
            "joined_sentence_words", "30", 10, 200,
            "A sentence of more words that joins two ideas by \"and\", \"but\" or \"so\" is a "
            "thought that runs on.",
            "no source: our choice; GOV.UK calls 29 words and more very difficult",
            set_words<&RuleOptions::joined_sentence_words>),
        {.key = "twister",
         .type = OptionType::choice,
         .default_value = "default",
         .low = twister_strict_threshold, // below it nothing could be named
         .high = 20,
         .choices = {"default", "strict", "off"},
         .help = "How readily a phrase is called a tongue-twister; a number is the score above "
                 "which it is one.",
         .source = "measured: 1.88 by default (0.2 % of ordinary sentences), -0.23 for strict (1 "
                   "%), see docs/twisters.md",
         .set = set_twister},
        {.key = "target_slack",
         .type = OptionType::seconds,
         .default_value = "2",
         .low = 0,
         .high = 600,
         .help = "An exact target is met within so many seconds or 5 %, whichever is more.",
         .source = "no source: our choice",
         .set = set_limit<&RuleOptions::target_slack>},
        count_row("stress_words", "3", 1, 20, "A stress over more words than this is a finding.",
                  "no source: common practice, lean on one word",
                  set_words<&RuleOptions::stress_words>),
    };
}

std::vector<OptionRow> pause_rows() {
    constexpr std::string_view model = "the timing model (docs/timing.md)";
    return {
        time_row("time_comma", "0.15", "The pause at a comma or bracket inside a thought.", model,
                 set_time<&PauseTable::comma>),
        time_row("time_strong", "0.3", "The pause at a semicolon, colon or dash.", model,
                 set_time<&PauseTable::strong>),
        time_row("time_sentence", "0.6", "The pause at a sentence end inside a thought.",
                 "0.6 s sounded most natural to listeners (Liu et al., Front. Psychol. 2022, "
                 "778018)",
                 set_time<&PauseTable::sentence>),
        time_row("time_gap", "0.7", "The gap after a thought.",
                 "measured in narration: 0.70 s between sentences (docs/timing.md)",
                 set_time<&PauseTable::gap>),
        time_row("time_item_gap", "0.4", "The gap between two items of a list.",
                 "no source: common practice", set_time<&PauseTable::item_gap>),
        time_row("time_pause", "0.6", "What `...` holds.",
                 "as a sentence end (Liu et al., Front. Psychol. 2022, 778018)",
                 set_time<&PauseTable::pause>),
        time_row("time_beat", "1", "What each `x` of a beat holds.",
                 "no source: common practice, a beat is a second", set_time<&PauseTable::beat>),
        time_row("time_breath", "0.35", "What `/` holds.", "no source: our choice",
                 set_time<&PauseTable::breath>),
        time_row("time_reset", "0.7", "What `//` holds.",
                 "as the gap after a thought: measured in narration (docs/timing.md)",
                 set_time<&PauseTable::reset>),
        time_row("time_micropause", "0.2", "What `(.)` holds.",
                 "the Jefferson transcription system: below 0.2 s",
                 set_time<&PauseTable::micropause>),
        time_row("time_stretch", "0.15", "What each colon of a stretched word adds.",
                 "no source: our choice", set_time<&PauseTable::stretch>),
        time_row("time_before_heavy", "0.1", "The hold before a heavy stress.",
                 "no source: our choice", set_time<&PauseTable::before_heavy>),
        rate_row("rate_quick", "1.2", "The speed of `>words<`.", set_rate<&PauseTable::quick>),
        rate_row("rate_slow", "0.8", "The speed of `<words>`.", set_rate<&PauseTable::slow>),
        rate_row("rate_stress", "0.9", "The speed of `*words*`.", set_rate<&PauseTable::stress>),
        rate_row("rate_heavy", "0.8", "The speed of `**words**`.", set_rate<&PauseTable::heavy>),
    };
}

std::vector<OptionRow> all_rows() {
    std::vector<OptionRow> rows = voice_rows();
    for (auto* part : {&rule_rows, &pause_rows}) {
        for (OptionRow& row : part())
            rows.push_back(std::move(row));
    }
    return rows;
}

// --- checking ----------------------------------------------------------------------------------

std::string show(const OptionValue& value) {
    if (const auto* truth = std::get_if<bool>(&value)) return *truth ? "true" : "false";
    if (const auto* number = std::get_if<double>(&value)) return fmt::format("{:g}", *number);
    if (const auto* text = std::get_if<std::string>(&value)) return fmt::format("\"{}\"", *text);
    return "[...]";
}

// "6", "6 s", "6s": a setting on the command line or in a test is always text.
std::optional<double> read_number(const OptionValue& value, bool seconds) {
    if (const auto* number = std::get_if<double>(&value)) return *number;
    const auto* written = std::get_if<std::string>(&value);
    if (!written) return std::nullopt;
    std::string_view text = ascii::trim(*written);
    if (seconds && text.ends_with('s')) text = ascii::trim(text.substr(0, text.size() - 1));
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return number;
}

// Made in place: GCC 12 takes the move of a variant with a vector for a use of what is not there.
template <class Value> std::optional<OptionValue> make_value(Value value) {
    std::optional<OptionValue> made;
    made.emplace(std::in_place_type<Value>, std::move(value));
    return made;
}

std::optional<OptionValue> checked_number(const OptionRow& row, const OptionValue& value) {
    const auto number = read_number(value, row.type == OptionType::seconds);
    // Written so that a NaN fails it too.
    if (!number || !(*number >= row.low && *number <= row.high)) return std::nullopt;
    if (row.type == OptionType::words && std::floor(*number) != *number) return std::nullopt;
    return make_value(*number);
}

std::optional<OptionValue> checked_boolean(const OptionValue& value) {
    if (std::holds_alternative<bool>(value)) return value;
    const auto* written = std::get_if<std::string>(&value);
    if (!written) return std::nullopt;
    if (*written == "true") return make_value(true);
    if (*written == "false") return make_value(false);
    return std::nullopt;
}

std::optional<OptionValue> checked_choice(const OptionRow& row, const OptionValue& value) {
    if (const auto* written = std::get_if<std::string>(&value)) {
        const std::string lower = unicode::to_lower(ascii::trim(*written));
        for (const std::string_view choice : row.choices) {
            if (unicode::to_lower(choice) == lower) return make_value(std::string(choice));
        }
    }
    if (row.low < row.high) return checked_number(row, value);
    return std::nullopt;
}

std::optional<OptionValue> checked_pace(const OptionValue& value) {
    std::string written;
    if (const auto* number = std::get_if<double>(&value)) {
        written = fmt::format("{:g}", *number);
    } else if (const auto* text = std::get_if<std::string>(&value)) {
        written = ascii::trim(*text);
    }
    if (!parse_pace(written)) return std::nullopt;
    return make_value(std::move(written));
}

// One name or several; on the command line they are parted by commas.
std::optional<OptionValue> checked_files(const OptionValue& value) {
    std::vector<std::string> files;
    if (const auto* list = std::get_if<std::vector<std::string>>(&value)) {
        files = *list;
    } else if (const auto* written = std::get_if<std::string>(&value)) {
        for (std::size_t at = 0; at <= written->size();) {
            const std::size_t end = std::min(written->find(',', at), written->size());
            if (end > at) files.emplace_back(ascii::trim(written->substr(at, end - at)));
            at = end + 1;
        }
    } else {
        return std::nullopt;
    }
    const bool any_empty = std::any_of(files.begin(), files.end(),
                                       [](const std::string& file) { return file.empty(); });
    if (any_empty) return std::nullopt;
    return make_value(std::move(files));
}

// The value in the form the row's setter takes; nothing if it may not stand there.
std::optional<OptionValue> checked(const OptionRow& row, const OptionValue& value) {
    switch (row.type) {
    case OptionType::boolean: return checked_boolean(value);
    case OptionType::number:
    case OptionType::seconds:
    case OptionType::words: return checked_number(row, value);
    case OptionType::choice: return checked_choice(row, value);
    case OptionType::pace: return checked_pace(value);
    case OptionType::files: return checked_files(value);
    case OptionType::text:
        if (std::holds_alternative<std::string>(value)) return value;
        return std::nullopt;
    }
    return std::nullopt;
}

// "; did you mean "x"?", or nothing if none is near.
std::string suggestion(std::string_view written, const std::vector<std::string_view>& names) {
    constexpr std::size_t longest = 100; // Beyond it nobody mistyped a name.
    std::size_t best = 3;                // Fewer changes than this are a slip of the finger.
    std::string_view nearest;
    if (written.size() > longest) return {};
    for (const std::string_view name : names) {
        const std::size_t changes = letters_apart(written, name);
        if (changes < best) {
            best = changes;
            nearest = name;
        }
    }
    return nearest.empty() ? std::string{} : fmt::format("; did you mean \"{}\"?", nearest);
}

std::string list(const std::vector<std::string_view>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " or " : ", ";
        text += names[i];
    }
    return text;
}

constexpr std::array level_names = {std::string_view{"off"}, std::string_view{"hint"},
                                    std::string_view{"warning"}};

} // namespace

std::span<const OptionRow> option_rows() {
    static const std::vector<OptionRow> table = all_rows();
    return table;
}

const OptionRow* find_option(std::string_view key) {
    for (const OptionRow& row : option_rows()) {
        if (row.key == key) return &row;
    }
    return nullptr;
}

std::string allowed_values(const OptionRow& row) {
    switch (row.type) {
    case OptionType::boolean: return "true or false";
    case OptionType::number: return fmt::format("{:g} to {:g}", row.low, row.high);
    case OptionType::seconds: return fmt::format("{:g} to {:g} seconds", row.low, row.high);
    case OptionType::words:
        return fmt::format("a whole number from {:g} to {:g}", row.low, row.high);
    case OptionType::choice:
        if (row.low < row.high) {
            return fmt::format("{}, or a number from {:g} to {:g}", list(row.choices), row.low,
                               row.high);
        }
        return list(row.choices);
    case OptionType::pace: return "0.25x to 4x, or words a minute as in \"165 wpm\"";
    case OptionType::text: return "text";
    case OptionType::files: return "a list of files, as in [\"names.pls\"]";
    }
    return {};
}

std::string_view name_of(RuleLevel level) {
    return level_names.at(static_cast<std::size_t>(level));
}

Result<void> set_option(Options& options, std::string_view key, const OptionValue& value) {
    const OptionRow* row = find_option(key);
    if (!row) {
        std::vector<std::string_view> keys;
        for (const OptionRow& known : option_rows())
            keys.push_back(known.key);
        return Error{fmt::format("no setting is called \"{}\"{}", key, suggestion(key, keys))};
    }
    const auto fit = checked(*row, value);
    if (!fit) {
        return Error{
            fmt::format("{} cannot be {}; it may be {}", key, show(value), allowed_values(*row))};
    }
    row->set(options, *fit);
    return {};
}

Result<void> set_rule_level(Options& options, std::string_view rule, std::string_view level) {
    if (!find_rule(rule)) {
        std::vector<std::string_view> ids;
        for (const Rule* known : all_rules())
            ids.push_back(known->id);
        return Error{fmt::format("no rule is called \"{}\"{}", rule, suggestion(rule, ids))};
    }
    const auto found = std::find(level_names.begin(), level_names.end(), level);
    if (found == level_names.end()) {
        return Error{
            fmt::format("rule {} cannot be \"{}\"; it may be off, hint or warning", rule, level)};
    }
    options.rule_levels.insert_or_assign(std::string(rule),
                                         static_cast<RuleLevel>(found - level_names.begin()));
    return {};
}

} // namespace say
