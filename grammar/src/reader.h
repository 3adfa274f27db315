// The scanner's state, reading ahead of a token, and what a line does to the thought above it.
#ifndef SAYLINE_READER_H_
#define SAYLINE_READER_H_

#include "characters.h"
#include "tokens.h"
#include "tree_sitter/alloc.h"
#include "tree_sitter/parser.h"

// ---- state

typedef struct {
    uint8_t prev; // enum Prev
    uint8_t last; // enum Last
    uint8_t face; // 1 after the eyes of an emoticon, 2 after its nose
    uint8_t word; // bits of the two families of stars that have no closer before the next blank
} Context;

typedef struct {
    uint8_t mark;       // enum Mark
    uint8_t length;     // of the closer
    uint16_t failed;    // families with no closer before this pair's own
    uint32_t remaining; // code points up to the closer
} Level;

typedef struct {
    Context context;
    bool spoken;     // something has been said in this thought
    bool numbered;   // in a numbered item, or right behind one
    bool lone_notes; // in a block of notes and nothing else
    uint16_t failed; // families with no closer in the rest of the thought
    uint8_t depth;
    Level levels[MARK_COUNT];
} State;

typedef struct {
    State state;
    int32_t* ahead; // what the current token has read, kept to spare its growth
    uint32_t room;
} Scanner;

static bool is_open(const State* state, enum Mark mark) {
    for (unsigned i = 0; i < state->depth; ++i)
        if (state->levels[i].mark == mark) return true;
    return false;
}

static bool has_failed(const State* state, enum Family family) {
    uint16_t failed = state->failed;
    for (unsigned i = 0; i < state->depth; ++i)
        failed |= state->levels[i].failed;
    return (failed >> family) & 1;
}

static void remember_failure(State* state, enum Family family) {
    uint16_t* failed = state->depth ? &state->levels[state->depth - 1].failed : &state->failed;
    *failed = (uint16_t)(*failed | (1u << family));
}

// ---- reading ahead

// The lexer only goes forward, and only its present place can be made a token's end. So what was
// read is kept, and whoever may end a token says so (`may_end_at`) before reading on.
typedef struct {
    TSLexer* lexer;
    Scanner* scanner;
    uint32_t read;   // code points passed since the window's begin; the lexer stands on the next
    uint32_t before; // code points passed before the window
    uint32_t end;    // the token's end as last marked, from the token's begin
    uint32_t limit;  // the enclosing closer: nothing reaches beyond it
    bool held;       // only looking: ends are not marked
} Reader;

static Reader reader_for(Scanner* scanner, TSLexer* lexer) {
    return (Reader){.lexer = lexer, .scanner = scanner, .limit = REACH};
}

static bool make_room(Scanner* scanner) {
    const uint32_t room = scanner->room ? scanner->room * 2 : 1024;
    int32_t* ahead = ts_realloc(scanner->ahead, room * sizeof(int32_t));
    if (!ahead) return false;
    scanner->ahead = ahead;
    scanner->room = room;
    return true;
}

static int32_t at(Reader* reader, uint32_t index) {
    if (index < reader->read) return reader->scanner->ahead[index];
    TSLexer* lexer = reader->lexer;
    while (reader->read < index) {
        if (reader->read >= REACH || lexer->eof(lexer)) return END_OF_TEXT;
        if (reader->read >= reader->scanner->room && !make_room(reader->scanner))
            return END_OF_TEXT;
        reader->scanner->ahead[reader->read++] = lexer->lookahead;
        lexer->advance(lexer, false);
    }
    if (index >= REACH || lexer->eof(lexer)) return END_OF_TEXT;
    return lexer->lookahead;
}

static void mark_end(Reader* reader) {
    reader->lexer->mark_end(reader->lexer);
    reader->end = reader->before + reader->read;
}

static void may_end_at(Reader* reader, uint32_t index) {
    if (reader->held) return;
    at(reader, index);
    if (reader->read == index) mark_end(reader);
}

// Begins a new window at the lexer's place, for tokens that may be longer than `REACH`.
static void move_window(Reader* reader) {
    reader->before += reader->read;
    reader->read = 0;
}

// Passes one character without keeping it.
static void pass(Reader* reader) {
    reader->lexer->advance(reader->lexer, false);
    ++reader->before;
}

static int32_t here(Reader* reader) {
    return reader->lexer->eof(reader->lexer) ? END_OF_TEXT : reader->lexer->lookahead;
}

// Blanks before a token are no part of it. Says how many there were.
static uint32_t skip_blanks(TSLexer* lexer) {
    uint32_t count = 0;
    while (!lexer->eof(lexer) && is_blank(lexer->lookahead)) {
        lexer->advance(lexer, true);
        ++count;
    }
    return count;
}

static uint32_t past_blanks(Reader* reader, uint32_t index) {
    while (is_blank(at(reader, index)))
        ++index;
    return index;
}

static uint32_t past_run(Reader* reader, uint32_t index, int32_t c) {
    while (at(reader, index) == c)
        ++index;
    return index;
}

// ---- lines

// Behind a sign that begins a block only these count, not every blank of Unicode.
static bool is_space(int32_t c) {
    return c == ' ' || c == '\t';
}

static uint32_t past_spaces(Reader* reader, uint32_t index) {
    while (is_space(at(reader, index)))
        ++index;
    return index;
}

// Whether a space and then something follows: a marker alone on its line is words.
static bool is_marker_end(Reader* reader, uint32_t index) {
    return is_space(at(reader, index)) && !is_edge(at(reader, past_spaces(reader, index)));
}

static bool is_heading(Reader* reader, uint32_t index) {
    const uint32_t end = past_run(reader, index, '#');
    may_end_at(reader, end);
    return end > index && end - index <= 3 && is_marker_end(reader, end);
}

// A line of three hyphens and nothing else; says where the line ends, or 0.
static uint32_t rule_line_end(Reader* reader, uint32_t index) {
    for (unsigned i = 0; i < 3; ++i)
        if (at(reader, index + i) != '-') return 0;
    may_end_at(reader, index + 3);
    const uint32_t end = past_spaces(reader, index + 3);
    return is_edge(at(reader, end)) ? end : 0;
}

static bool is_dash_item(Reader* reader, uint32_t index) {
    return at(reader, index) == '-' && is_marker_end(reader, index + 1);
}

// A number of one or two digits, a full stop and a space; says the marker's end, or 0. Only 1
// begins a list, the others need a numbered item right above.
static uint32_t number_item_end(Reader* reader, uint32_t index, bool numbered) {
    uint32_t end = index;
    int32_t number = 0;
    for (; end < index + 2 && is_digit(at(reader, end)); ++end)
        number = number * 10 + at(reader, end) - '0';
    if (end == index || at(reader, end) != '.' || !is_space(at(reader, end + 1))) return 0;
    if (number != 1 && !numbered) return 0;
    may_end_at(reader, end + 1);
    return is_marker_end(reader, end + 1) ? end + 1 : 0;
}

static bool is_note(Reader* reader, uint32_t index) {
    if (at(reader, index) != '%') return false;
    const int32_t next = at(reader, index + 1);
    return is_space(next) || is_edge(next);
}

static bool is_name_character(int32_t c) {
    return is_upper(c) || is_digit(c) || c == '\'' || c == 0x2019 || c == '.' || c == '-' ||
           c == '+' || c == '&';
}

// Capitals and a colon, `MIRA AND JO:`. Says where it ends (behind the colon), or 0.
static uint32_t speaker_end(Reader* reader, uint32_t index) {
    if (!is_upper(at(reader, index))) return 0;
    bool after_blank = false;
    for (uint32_t i = index + 1; i - index <= NAME_REACH; ++i) {
        const int32_t c = at(reader, i);
        if (c == ':') return !after_blank && is_gap(at(reader, i + 1)) ? i + 1 : 0;
        const bool blank = is_blank(c);
        if (blank ? after_blank : !is_name_character(c)) return 0;
        after_blank = blank;
    }
    return 0;
}

enum LineKind { LINE_ENDS_THOUGHT, LINE_CONTINUES, LINE_IS_NOTE, LINE_SPEAKS };

typedef struct {
    enum LineKind kind;
    uint32_t content; // its first character that is no blank
} Line;

static uint32_t past_line_end(Reader* reader, uint32_t index) {
    const bool two = at(reader, index) == '\r' && at(reader, index + 1) == '\n';
    return index + (two ? 2 : 1);
}

static bool begins_block(Reader* reader, uint32_t index) {
    if (is_edge(at(reader, index))) return true;
    if (at(reader, index) == '#') return is_heading(reader, index);
    if (is_dash_item(reader, index) || rule_line_end(reader, index)) return true;
    return number_item_end(reader, index, reader->scanner->state.numbered) != 0;
}

// What the line that begins at `index` does to the thought above it. Where it continues that, it
// was read no further than to the character that told: a token may have to end there.
static Line line_at(Reader* reader, uint32_t index) {
    const bool held = reader->held;
    reader->held = true;
    Line line = {.kind = LINE_CONTINUES, .content = past_blanks(reader, index)};
    if (begins_block(reader, line.content))
        line.kind = LINE_ENDS_THOUGHT;
    else if (is_note(reader, line.content))
        line.kind = LINE_IS_NOTE;
    else if (speaker_end(reader, line.content))
        line.kind = LINE_SPEAKS;
    reader->held = held;
    return line;
}

// For what hides marks (a direction, a code span, braces): the next place in it, or 0 where it has
// to end.
static uint32_t next_inside(Reader* reader, uint32_t index) {
    const int32_t c = at(reader, index);
    if (c == END_OF_TEXT) return 0;
    if (!is_line_end(c)) return index + 1;
    const Line line = line_at(reader, past_line_end(reader, index));
    return line.kind == LINE_CONTINUES ? line.content : 0;
}

#endif
