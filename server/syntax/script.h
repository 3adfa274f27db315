// A script as its writer sees it: blocks, thoughts, written words and marks. Plain values: no
// tree-sitter type leaves this folder, so everything here may cross threads.
#pragma once

#include "base/units.h"
#include "syntax/header.h"
#include "syntax/marks.h"
#include "text/span.h"
#include "text/text.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace say {

enum class BlockKind { heading, paragraph, item, note, divider };

// A stretch of lines, found without the grammar: a scan at memory speed.
struct Block {
    BlockKind kind = BlockKind::paragraph;
    Span span;     // absolute, whole lines without the last line end
    Span notes;    // note lines right above that belong to it; empty without any
    Span content;  // what may be spoken: behind the list marker and the speaker; a heading's text
    Span speaker;  // "MIRA" or "MIRA AND JO" where a declared speaker opens it, else empty
    int level = 0; // a heading's
};

// The block where the text above it has grown by so many bytes (modulo 2^32: it may shrink).
Block moved(Block block, std::uint32_t by);

// Cuts everything behind the header. `speakers` are the declared names.
std::vector<Block> cut_blocks(std::string_view text, const Header& header);

// The blocks of the text after a change, cut anew only around it: the first `before` are those of
// the old text, the last `after` are its last ones, moved.
struct Recut {
    std::vector<Block> blocks;
    std::size_t before = 0;
    std::size_t after = 0;
};
// Both texts must have the same header; the change lies behind it.
Recut recut_blocks(std::string_view text, const Header& header, const std::vector<Block>& old,
                   Change change);

// The names in a block's `speaker`, absolute: two of "MIRA AND JO".
std::vector<Span> speaker_names(std::string_view text, const Block& block, const Header& header);

// The text of a thought with marks stripped, and where each byte of it stands in the source.
struct Plain {
    std::string text;                  // soft line ends and runs of blanks are one blank
    std::vector<std::uint32_t> source; // source[i]: offset in the thought of the byte text[i]

    // The source under a plain span: from its first byte to its last, inner marks included.
    Span to_source(Span plain) const;
};

struct Word {
    Span plain;           // in Plain::text, without the punctuation around it
    Span source;          // in the thought
    bool escaped = false; // a backslash stands before it: its capitals are just capitals
};

// Offsets are relative to the thought's start. `first` and `last` are word indexes; a mark without
// words has the word before it (-1 at the start).
struct Mark {
    MarkKind kind = MarkKind::pause;
    Span span;
    Span open;  // a pair's delimiters
    Span close; // empty where a quote runs to the end of its thought
    int first = -1;
    int last = -1;
    std::string argument; // a direction's, pronouncer's or say-as's inner text
    Seconds seconds{0};   // what a direction, timed pause or beat holds
};

enum class ProblemKind {
    unclosed,     // a mark opens and nothing in the thought closes it
    stray,        // a mark closes and nothing opened it
    dangling,     // a mark that needs a word beside it stands alone
    empty_braces, // {} or a template field: never spoken
    braces_apart, // a blank before {: fix joins
    braces_parts, // a pronouncer whose parts match no number of words
    unreadable_pronouncer,
    too_many_seconds, // a timed pause above the limit
    tag,              // <b>: markup of another format
    too_long,         // over the cap of a thought: plain words
    lone_beat,        // a standing x that is text, at a thought's end
    slash_glued,      // "word/ word"
    reset_first,      // a reset with nothing to end yet
    two_dots,         // ".."
    bullet,           // "* item"
    emoji,            // unspoken
    stress_too_long,  // a stress over more words than anyone can lean on
    pause_in_aside,
    field, // {first_name}
};

struct Problem {
    ProblemKind kind = ProblemKind::unclosed;
    Span span;        // in the thought
    std::string what; // the mark's shape or a detail, for the message
};

// One thought as written: offsets relative to the start of its block's span.
struct Written {
    Plain plain;
    std::vector<Word> words;
    std::vector<Mark> marks; // by begin, outer before inner
    std::vector<Problem> problems;
    std::vector<std::string> allow; // rule ids of `% allow:` lines
    bool spare = false;             // opens with [spare]: may be dropped
};

// A thought longer than this is plain words and one finding.
inline constexpr std::uint32_t thought_cap = 64 * 1024;

// Reads a block's marks with the grammar. Not thread-safe: one a worker.
class Parser {
public:
    Parser();
    ~Parser();
    Parser(Parser&&) noexcept;
    Parser& operator=(Parser&&) noexcept;

    // `text` holds the block; what is returned is relative to block.span.begin.
    Written parse(std::string_view text, const Block& block);

private:
    struct State;
    std::unique_ptr<State> state_;
};

// Adds the rule ids of a line `% allow: a, b`; any other line adds nothing.
void read_allow(std::string_view line, std::vector<std::string>& allow);

// A line of plain text as one thought: nothing in it is a mark (`explain --plain`).
Written plain_thought(std::string_view line);
// A line of text as one thought whose marks count, whatever block shape it may have (`explain
// --lines`).
Written marked_thought(Parser& parser, std::string_view line);

} // namespace say
