// What a rule is: one file, one row of the table, one fixture, one paragraph of the manual.
// A rule sees one thought (or the whole script) and returns drafts; the engine stamps rule and
// severity, moves them into place, silences what the writer silenced and keeps one of a family.
#pragma once

#include "speech/reading.h"
#include "syntax/script.h"
#include "text/edit.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

enum class Severity { hint, warning, error };
std::string_view name_of(Severity severity);

struct Fix {
    std::string title; // an imperative: "Breathe here"
    std::vector<TextEdit> edits;
    // True if the words that are spoken stay the same: only these are taken by a bulk fix.
    bool keeps_every_word = true;
    // True for the one fix most writers would choose.
    bool preferred = false;
};

struct FindingDraft {
    Span span; // in the thought (thought scope) or absolute (script scope)
    std::string message;
    std::vector<Fix> fixes; // edits where the span is: in the thought, or absolute
    std::vector<std::string> readings{};
    std::optional<Severity> severity{}; // where it differs from the row's
};

// What rules may know of the settings; engine/options.cpp fills it. Defaults and sources:
// docs/options.md.
struct RuleOptions {
    Seconds breath_limit{6.0};
    int long_sentence_words = 25;
    int marked_sentence_words = 25;
    int sentences_a_thought = 3;        // so many in one paragraph are a run-on while drafting
    int marked_sentences_a_thought = 2; // and from stage mark on
    int joined_sentence_words = 30;     // a sentence of more words that joins two ideas
    double twister_threshold = twister_default_threshold;
    Seconds target_slack{2.0}; // an exact target is met within this or 5 %, whichever is more
    int stress_words = 3;
    Seconds one_note{25.0}; // so long without a mark sounds on one note
};

struct ThoughtView {
    std::string_view source; // the block's bytes: spans index into it
    Span content;            // in `source`: behind list marker and speaker
    const Written& written;
    const Reading& reading;
    BlockKind kind = BlockKind::paragraph;
    Stage stage = Stage::draft;
    Language language = Language::en_us;
    const RuleOptions& options;

    std::string_view word(int index) const; // as written, marks stripped
    // The best place to breathe among words [first, last]: before a word (its index), by clause and
    // balance. 0 means there is none.
    int breath_spot(int first, int last) const;
    // Replaces the blanks before a word: " / " breathes, "\n\n" begins a new thought.
    TextEdit before_word(int index, std::string_view replacement) const;
};

// A section or the whole script with its times, as script rules see it.
struct Stretch {
    std::string_view name; // empty for the whole script
    Span span;             // absolute: the heading, or the header's target line
    int parent = -1;       // index of the section that holds it
    int level = 0;
    std::optional<Target> target;
    Span target_span; // absolute; empty without a target
    Timing timing;
    bool has_thoughts = false;
    int words = 0;   // written
    Seconds held{0}; // of the time, what directions and timed pauses hold
};

// A thought as script rules see it: what its script adds up stands here, so that a rule need not
// visit the thoughts that do not concern it.
struct ThoughtSummary {
    Offset begin;
    std::string_view source;
    Span content; // in `source`
    BlockKind kind = BlockKind::paragraph;
    int section = -1; // index into ScriptView::sections
    const Written* written = nullptr;
    const Reading* reading = nullptr;
    Seconds speech{0};
    Seconds pause{0};
    Seconds held{0}; // of the pause, what no reader changes
    Seconds expected{0};
    int words = 0; // written
    int spoken_words = 0;
    bool has_words = false;     // false: a direction or a silence alone
    std::uint32_t concerns = 0; // bit i: concerns the i-th rule of script_rules()
};

struct ScriptView {
    std::string_view text;
    const Header& header;
    Stretch whole;
    std::span<const Stretch> sections;
    std::span<const ThoughtSummary> thoughts;
    // Indexes of the thoughts that concern the rule that is asked, in order.
    std::span<const std::uint32_t> concerned;
    Stage stage = Stage::draft;
    const RuleOptions& options;
    Language language = Language::en_us;
};
// A thought of a script as the rules of one thought see it.
ThoughtView view_of(const ScriptView& script, const ThoughtSummary& thought);

// Of the findings of one family in one thought only the first by table order is kept.
enum class Family { none, length };

struct Rule {
    std::string_view id; // frozen once released
    Severity severity = Severity::warning;
    Stage stage = Stage::draft; // not heard before this stage
    Family family = Family::none;
    std::string_view summary; // one line, no full stop
    std::string_view manual;  // a paragraph for docs/rules.md
    std::string_view why{};   // what the hover of a word that is underlined adds to the message
    std::vector<FindingDraft> (*check)(const ThoughtView&) = nullptr;
    std::vector<FindingDraft> (*check_script)(const ScriptView&) = nullptr;
    // For rules of the script that look at thoughts: whether they need to look at this one. Asked
    // once a thought, while check_script runs on every key.
    bool (*concerns)(const ThoughtView&) = nullptr;
    // Fixes of check_script's findings that are too dear to make on every key: made when somebody
    // asks for them, and added to the draft's own.
    std::vector<Fix> (*fixes_later)(const ScriptView&, const FindingDraft&) = nullptr;
};

// In the order in which findings of a family win.
std::span<const Rule* const> all_rules();
const Rule* find_rule(std::string_view id);
// Those that check the script, in the same order; at most 32.
std::span<const Rule* const> script_rules();

// "4.1 s", "2:05": one form of a time for people everywhere. Below a minute with one decimal.
std::string format_seconds(Seconds seconds);
// "1:52": a clock, rounded to the second.
std::string format_clock(Seconds seconds);
// "between 2:05 and 2:35", or "between 3.1 s and 4.0 s" below a minute.
std::string format_range(const Timing& timing);
// "2:30", "2:20-2:30", "2:30 max".
std::string format_target(const Target& target);
// Where a time stands against its target: below zero is short of it, above over it, zero within.
// An exact target is met within `slack` or 5 %, whichever is more.
Seconds off_target(Seconds expected, const Target& target, Seconds slack);

} // namespace say
