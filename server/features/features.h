// What the engine offers an editor: free functions from an analysis to plain data in byte offsets.
// No protocol, no state between calls. This header is the page to read first.
#pragma once

#include "engine/analysis.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace say {

// --- hover -------------------------------------------------------------------------------------
struct HoverText {
    Span span;
    std::string markdown;
};
// A mark: meaning and cost. A word: respelling, IPA, syllables, seconds. A heading or header line:
// its time against its target, and what the key means. Anything else in a thought: its time.
std::optional<HoverText> hover(const Analysis& analysis, Offset at);

// --- while a word is typed ---------------------------------------------------------------------
// What is to become of a finding while the writer is in the middle of a word at `cursor`.
enum class Telling {
    now,
    later,        // it is of what is half typed: the word, a mark that is open, a header's line
    as_it_stands, // it counts with every key: what was last told of it will do until then
};
Telling telling_of(const Analysis& analysis, const Finding& finding, Offset cursor);

// --- inlay hints -------------------------------------------------------------------------------
struct InlayHint {
    Offset at;
    std::string label; // "4.1 s"
};
std::vector<InlayHint> inlay_hints(const Analysis& analysis, Span range);
// What the hint there has to add: the range and the clock. Empty where there is no hint.
std::string inlay_tooltip(const Analysis& analysis, Offset at);

// --- fixes -------------------------------------------------------------------------------------
// What may be done to a whole script at once. Its edits are made when they are asked for.
enum class Sweep {
    split, // one sentence a paragraph throughout
    mend,  // every fix that keeps every word, one a finding, those that do not overlap
    mark,  // the few marks that a reader would likely follow unasked
};
std::string_view name_of(Sweep sweep); // "split"
std::string_view title_of(Sweep sweep);
std::optional<Sweep> find_sweep(std::string_view name);
bool is_guess(Sweep sweep); // worth a look before it is taken

// A word for the project's own list: what an action teaches instead of changing the script.
struct Lesson {
    std::string words;          // as written: "Patella", "Krill Bay"
    std::vector<Phones> phones; // one list a word, or one for them all
};

struct FixAction {
    Fix fix;                          // without edits where it is a sweep or a lesson
    const Finding* finding = nullptr; // null for an action at the cursor
    enum class Kind { quickfix, rewrite, fix_all } kind = Kind::quickfix;
    std::optional<Sweep> sweep{};
    bool preview = false; // many edits by guess: worth a look before they are taken
    std::optional<Lesson> lesson{};
};
// Fixes of the findings that touch the range, then actions at the cursor or on the selection (split
// here, breathe here, what a reader would likely do, mark the selection, teach the project a
// sound), then those for the whole
// script.
std::vector<FixAction> fixes(const Analysis& analysis, Span range);
std::vector<TextEdit> edits_of(const Analysis& analysis, Sweep sweep);
// What a writer will likely change at once in the text that a fix puts in: the guessed sound of a
// pronouncer, the words said instead. In `edit.replacement`; empty where there is nothing to
// change.
Span first_guess(const TextEdit& edit);

// --- outline -----------------------------------------------------------------------------------
struct OutlineEntry {
    std::string name;
    std::string detail; // "0:42 of 0:45 max"
    Span span;
    Span name_span;
    enum class Kind { script, section, thought } kind = Kind::section;
    std::vector<OutlineEntry> children;
};
std::vector<OutlineEntry> outline(const Analysis& analysis);

// --- colours -----------------------------------------------------------------------------------
enum class TokenType { heading, key, value, speaker, note, direction, mark, words };
enum class TokenModifier : std::uint32_t {
    stress = 1,
    heavy = 2,
    soft = 4,
    quick = 8,
    slow = 16,
    aside = 32,
    quoted = 64,
    punch = 128,
    unspoken = 256,
};
struct Token {
    Span span; // on one line
    TokenType type = TokenType::mark;
    std::uint32_t modifiers = 0;
};
std::string_view name_of(TokenType type);
std::vector<std::string_view> token_type_names();
std::vector<std::string_view> token_modifier_names();
std::vector<Token> tokens(const Analysis& analysis, Span range); // in order, never overlapping

// --- completion --------------------------------------------------------------------------------
struct CompletionItem {
    std::string label;
    std::string detail; // short, beside the label
    std::string topic;  // of completion_documentation: "mark:breath"; empty if there is none
    std::string filter; // what the editor matches typed text against; empty for the label
    Span replace;       // what is replaced
    std::string insert; // plain text, or a snippet with $1 where `snippet`
    bool snippet = false;
    enum class Kind { mark, key, value, speaker, direction, pronouncer, rule } kind = Kind::mark;
};
// Looks at the text as it is now, which may be newer than the analysis (null before the first one).
std::vector<CompletionItem> completion(const Text& text, Offset at, const Analysis* analysis);
// Markdown about a mark, a header key or a rule; empty for a topic that nobody knows.
std::string completion_documentation(std::string_view topic);

// --- formatting --------------------------------------------------------------------------------
// Idempotent, keeps every spoken word: blanks at line ends, runs of blank lines, `***` to `**`, an
// arrow behind its stop, `->` of nothing else. Never wraps or joins lines.
std::vector<TextEdit> format(const Analysis& analysis);

// --- while typing ------------------------------------------------------------------------------
// A line was ended and the cursor is at `at` on the next: `]` or `}` for what was left open, a
// blank line behind a finished sentence where the setting asks for it. Looks at two lines of the
// text as it is now.
std::vector<TextEdit> after_enter(const Text& text, Offset at, const Options& options);

// The mark that a reader would likely put at the cursor, if there is one.
struct NextMark {
    Span replace; // on one line
    std::string insert;
};
std::optional<NextMark> next_mark(const Analysis& analysis, Offset at);

// --- lenses ------------------------------------------------------------------------------------
struct Lens {
    Span span;         // the line that it stands above
    std::string title; // "1:12, 12 s over 1:00"
};
// The script's time above its first line, each section's above its heading.
std::vector<Lens> lenses(const Analysis& analysis);

// --- folds -------------------------------------------------------------------------------------
struct Fold {
    Span span; // of more than one line, without the last line end
    enum class Kind { header, section, thought, note, direction } kind = Kind::section;
};
// In order, outer before inner, at most one that begins on a line. Where there are more than
// `most`, the header and the upper sections stay, then the first of the others.
std::vector<Fold> folds(const Analysis& analysis, std::size_t most);

// --- selections --------------------------------------------------------------------------------
// What a selection at the cursor grows through: word, marks around it, phrase, breath group,
// sentence, thought, sections, script; in the header name or value, line, header. Each holds the
// one before it and is larger; the last is the whole text.
std::vector<Span> selections(const Analysis& analysis, Offset at);

// --- names -------------------------------------------------------------------------------------
// What a script names: a speaker, a section, what a direction asks for.
struct Name {
    enum class Kind { speaker, section, direction } kind = Kind::speaker;
    Span at; // the one at the cursor
    std::string text;
    struct Use {
        Span span;
        bool declares = false; // a speaker in the header, a section's heading
    };
    std::vector<Use> uses; // by place; directions that ask for the same, whatever time they hold
};
std::optional<Name> name_at(const Analysis& analysis, Offset at);

// The name at the cursor as it may be changed; nothing for directions.
struct RenameSpot {
    Span span;
    std::string name;
};
std::optional<RenameSpot> rename_spot(const Analysis& analysis, Offset at);
struct Renaming {
    std::vector<TextEdit> edits;
    std::string refusal; // why the name cannot be had: a sentence; empty if it can
};
// Changes names and nothing else: a name with which any line would be read otherwise is refused.
Renaming rename(const Analysis& analysis, Offset at, std::string_view name);

// --- the two ends of a mark --------------------------------------------------------------------
struct Highlight {
    Span span;
    enum class Kind { text, use, declaration } kind = Kind::text;
};
// At a mark's end both ends; at a name all its uses.
std::vector<Highlight> highlights(const Analysis& analysis, Offset at);

// Both ends of the mark at the cursor, where they read the same, so that a change of one may change
// the other: `*word*` becomes `**word**`.
struct LinkedEnds {
    Span open;
    Span close;
    std::string_view pattern; // a regular expression: what may stand there
};
std::optional<LinkedEnds> linked_ends(const Analysis& analysis, Offset at);

// --- links -------------------------------------------------------------------------------------
// A reader named in the header, a file named in a direction.
struct Link {
    Span span;
    enum class Kind { reader, file } kind = Kind::file;
    std::string target; // a reader's name; a path as written
};
// `exists` says whether there is such a file: the engine knows none.
std::vector<Link> links(const Analysis& analysis, const std::function<bool(const Link&)>& exists);

// --- landmarks ---------------------------------------------------------------------------------
// What a script can be found by: its title, its speakers, its sections. From the text alone, so
// that a whole folder can be looked through while somebody waits.
struct Landmark {
    Span span;
    std::string name;
    enum class Kind { title, speaker, section } kind = Kind::section;
};
std::vector<Landmark> landmarks(std::string_view text);
// The letters of the query in this order, capital or not, blanks left out; all match an empty one.
bool answers(std::string_view name, std::string_view query);

// --- times -------------------------------------------------------------------------------------
// For the status bar and `sayline time`.
struct TimeRow {
    std::string name; // a section's, or the first words of a thought
    int level = 0;    // 0 the script, 1 to 3 sections, 4 a thought
    Timing timing;
    Seconds at{0};
    std::optional<Target> target;
    Seconds off{0}; // off_target
    Span span;
    int words = 0;
    int section = -1; // index into Script::sections; -1 for the script and for thoughts
};
std::vector<TimeRow> times(const Analysis& analysis, bool with_thoughts);
// When what stands at a place is said, from the script's top: a word's start, a thought's before
// its first word, the next thought's between two.
Seconds said_at(const Analysis& analysis, Offset at);

} // namespace say
