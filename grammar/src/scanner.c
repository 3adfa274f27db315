// The scanner of `.say` scripts: it cuts the whole text into the tokens of grammar.js.
//
// How it decides. A mark is a matter of what stands before it (kept in `Context`) and after it (read ahead).
// `shape_at` names the shape at one place and is used twice: to cut the tokens, and to look for the closer of
// a pair before its opener counts as one. So both always agree on what an escape, a direction or a code span
// hides. Once the closer is known, its distance is kept on a small stack, and it needs no second decision.
//
// How it stays fast. A look ahead never leaves the thought, nor goes further than `REACH`. A search that
// ran to the thought's end in vain is remembered by its family of delimiters until the thought (or the pair around)
// ends, so a thousand unclosed marks cost one search. Brackets and parentheses balance, which no such memory fits:
// there the depth is limited, and so each place is passed by a handful of failed searches at most.
//
// How it stays honest. Every token depends on nothing but the text it read and the state before it; all of the state
// is serialised, and it is empty (no bytes) at every blank line.

#include "tree_sitter/alloc.h"
#include "tree_sitter/parser.h"

#include <string.h>

// The order is that of `externals` in grammar.js.
enum Token {
    HEADER_OPEN,
    HEADER_KEY,
    HEADER_COLON,
    HEADER_VALUE,
    HEADER_CLOSE,
    HEADER_END,
    HEADING_MARKER,
    HEADING_NAME,
    TARGET_OPEN,
    HEADING_TARGET,
    TARGET_CLOSE,
    ITEM_MARKER,
    DIVIDER,
    LONE_NOTE,
    BLANK_LINES,
    BLOCK_END,
    SECTION_END,
    SOFT_BREAK,
    TEXT,
    NOTE,
    SPEAKER,
    DIRECTION,
    ESCAPE,
    CODE,
    ADDRESS,
    PAUSE,
    BEAT,
    BREATH,
    RESET,
    MICROPAUSE,
    TIMED_PAUSE,
    STEP_UP,
    STEP_DOWN,
    END_UP,
    END_DOWN,
    STRETCH,
    TIE,
    QUOTED_OPEN,
    PRONOUNCER_OPEN,
    SAY_AS_OPEN,
    ARGUMENT,
    BRACE_CLOSE,
    PAIR_OPEN,                     // the first of seven openers and closers in turn
    ERROR_SENTINEL = PAIR_OPEN + 14,
};

// The kinds of pair, in the order of grammar.js.
enum Mark { STRESS, HEAVY_STRESS, SOFT, ASIDE, QUOTED, QUICK, SLOW, MARK_COUNT };

// Delimiters that close each other. A kind of pair may have several.
enum Family {
    STAR_1,
    STAR_2,
    STAR_3,
    LINE_1,
    LINE_2,
    LINE_3,
    WAVE,
    RING,
    PAREN,
    STRAIGHT,
    CURLY,
    LOW,
    ANGLE,
    POINT_IN,  // >words<
    POINT_OUT, // <words>
    FAMILY_COUNT,
};

static const uint8_t mark_of[FAMILY_COUNT] = {
    [STAR_1] = STRESS, [STAR_2] = HEAVY_STRESS, [STAR_3] = HEAVY_STRESS, [LINE_1] = STRESS,  [LINE_2] = HEAVY_STRESS,
    [LINE_3] = HEAVY_STRESS, [WAVE] = SOFT,     [RING] = SOFT,           [PAREN] = ASIDE,    [STRAIGHT] = QUOTED,
    [CURLY] = QUOTED,  [LOW] = QUOTED,          [ANGLE] = QUOTED,        [POINT_IN] = QUICK, [POINT_OUT] = SLOW,
};

enum {
    REACH = 65536,    // code points that one look ahead may pass: a longer thought is not parsed for marks at all
    NESTING = 8,      // brackets in brackets, parentheses in parentheses
    NAME_REACH = 60,  // a speaker's name
    KEY_REACH = 40,   // a header's key
    END_OF_TEXT = -2, // the lexer itself says -1 for bytes that are no UTF-8
};

// ---------------------------------------------------------------------------------------------- characters

// What the character before a mark was.
enum Prev {
    AT_START, // of a line or a thought
    BLANK,
    LETTER,
    DIGIT,
    OPENER, // opening punctuation, or an opening mark
    CLOSER,
    DASH,
    SLASH,
    QUOTE,
    STOP, // . ! ? and the ellipsis
    BRACKET, // a direction: it is not spoken, so a mark may begin right behind it
    OTHER,
};

// The last thing that was no blank.
enum Last { LAST_NONE, LAST_STOP, LAST_DIGIT, LAST_BEAT, LAST_CLOSED, LAST_OTHER };

static bool is_line_end(int32_t c) { return c == '\n' || c == '\r'; }

static bool is_edge(int32_t c) { return c == END_OF_TEXT || is_line_end(c); }

// Unicode White_Space but for the line ends of a script.
static bool is_blank(int32_t c) {
    if (c < 0x80) return c == ' ' || c == '\t' || c == 0x0B || c == 0x0C;
    return c == 0x85 || c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x2028 || c == 0x2029 ||
           c == 0x202F || c == 0x205F || c == 0x3000;
}

static bool is_gap(int32_t c) { return is_edge(c) || is_blank(c); }

static bool is_digit(int32_t c) { return c >= '0' && c <= '9'; }

static bool is_ascii_letter(int32_t c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

static bool is_ascii_punctuation(int32_t c) {
    return (c >= '!' && c <= '/') || (c >= ':' && c <= '@') || (c >= '[' && c <= '`') || (c >= '{' && c <= '~');
}

// Capitals of the Latin, Greek and Cyrillic blocks that names are written in.
static bool is_upper(int32_t c) {
    if (c < 0x80) return c >= 'A' && c <= 'Z';
    if (c < 0x100) return c >= 0xC0 && c <= 0xDE && c != 0xD7;
    if (c <= 0x137 || (c >= 0x14A && c <= 0x177)) return c % 2 == 0;
    if (c <= 0x148 || (c >= 0x179 && c <= 0x17E)) return c % 2 == 1;
    return c == 0x178 || (c >= 0x386 && c <= 0x3AB && c != 0x387 && c != 0x390) || (c >= 0x400 && c <= 0x42F);
}

// Ignored inside words: soft hyphen, joiners, direction marks, variation selectors.
static bool is_invisible(int32_t c) {
    return c == 0xAD || (c >= 0x200B && c <= 0x200F) || c == 0x2060 || c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F);
}

static enum Prev ascii_class(int32_t c) {
    if (is_ascii_letter(c)) return LETTER;
    if (is_digit(c)) return DIGIT;
    switch (c) {
    case '(':
    case '[':
    case '{': return OPENER;
    case ')':
    case ']':
    case '}': return CLOSER;
    case '.':
    case '!':
    case '?': return STOP;
    case '"':
    case '\'': return QUOTE;
    case '-': return DASH;
    case '/': return SLASH;
    default: return is_blank(c) ? BLANK : OTHER;
    }
}

static enum Prev class_of(int32_t c) {
    if (c < 0x80) return ascii_class(c);
    if (is_blank(c)) return BLANK;
    switch (c) {
    case 0xAB:   // «
    case 0x201C: // “
    case 0x201E: // „
    case 0xA1:   // ¡
    case 0xBF:   // ¿
        return OPENER;
    case 0xBB:   // »
    case 0x201D: // ”
        return CLOSER;
    case 0x2018:
    case 0x2019:
    case 0x201A:
    case 0x2039:
    case 0x203A: return QUOTE;
    case 0x2010:
    case 0x2011:
    case 0x2012:
    case 0x2013:
    case 0x2014:
    case 0x2015: return DASH;
    case 0x2026: return STOP;
    case 0xAA:
    case 0xB5:
    case 0xBA: return LETTER;
    default: break;
    }
    if (c < 0xC0 || c == 0xD7 || c == 0xF7) return OTHER;
    if (c >= 0x2000 && c <= 0x2BFF) return OTHER;                             // punctuation, signs, arrows
    if ((c >= 0x3001 && c <= 0x303F) || (c >= 0xFE00 && c <= 0xFE6F)) return OTHER; // CJK punctuation
    if (c >= 0xFF00 && c <= 0xFFEF) return OTHER;                             // full-width forms
    if (c >= 0xE000 && c <= 0xF8FF) return OTHER;                             // private use
    return c >= 0x1F000 && c <= 0x1FFFF ? OTHER : LETTER;                     // emoji
}

static bool is_wordly(int32_t c) {
    if (c < 0) return false;
    const enum Prev class = class_of(c);
    return class == LETTER || class == DIGIT;
}

// A pair may close before these: the mirror of `may_open_after`.
static bool may_close_before(int32_t c) {
    if (is_gap(c)) return true;
    switch (c) {
    case '*':
    case '_':
    case '~':
    case '<':
    case '>':
    case '{':
    case '[':
    case '\\':
    case ',':
    case ';':
    case ':':
    case 0xB0:   // °
    case 0x203F: // ‿
    case 0x2197: // ↗
    case 0x2198: // ↘
    case 0x201C: // “ closes a low quote
        return true;
    default: break;
    }
    const enum Prev class = c < 0 ? OTHER : class_of(c);
    return class == STOP || class == CLOSER || class == QUOTE || class == DASH || class == SLASH;
}

static bool may_open_after(enum Prev prev) {
    switch (prev) {
    case AT_START:
    case BLANK:
    case OPENER:
    case DASH:
    case SLASH:
    case QUOTE:
    case BRACKET: return true;
    default: return false;
    }
}

// No blank on the inner side of a closer.
static bool may_close_after(enum Prev prev) { return prev != AT_START && prev != BLANK && prev != OPENER; }

// ---------------------------------------------------------------------------------------------- state

typedef struct {
    uint8_t prev; // enum Prev
    uint8_t last; // enum Last
    uint8_t face; // 1 after the eyes of an emoticon, 2 after its nose
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
    for (unsigned i = 0; i < state->depth; ++i) failed |= state->levels[i].failed;
    return (failed >> family) & 1;
}

static void remember_failure(State* state, enum Family family) {
    uint16_t* failed = state->depth ? &state->levels[state->depth - 1].failed : &state->failed;
    *failed = (uint16_t)(*failed | (1u << family));
}

// ---------------------------------------------------------------------------------------------- reading ahead

// The lexer only goes forward, and only its present place can be made a token's end. So what was read is kept,
// and whoever may end a token says so (`may_end_at`) before reading on.
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
        if (reader->read >= reader->scanner->room && !make_room(reader->scanner)) return END_OF_TEXT;
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
    while (is_blank(at(reader, index))) ++index;
    return index;
}

static uint32_t past_run(Reader* reader, uint32_t index, int32_t c) {
    while (at(reader, index) == c) ++index;
    return index;
}

// ---------------------------------------------------------------------------------------------- lines

static bool is_heading(Reader* reader, uint32_t index) {
    const uint32_t end = past_run(reader, index, '#');
    return end > index && end - index <= 3 && is_gap(at(reader, end));
}

// A line of three hyphens and nothing else; says where the line ends, or 0.
static uint32_t rule_line_end(Reader* reader, uint32_t index) {
    for (unsigned i = 0; i < 3; ++i)
        if (at(reader, index + i) != '-') return 0;
    const uint32_t end = past_blanks(reader, index + 3);
    return is_edge(at(reader, end)) ? end : 0;
}

static bool is_dash_item(Reader* reader, uint32_t index) {
    return at(reader, index) == '-' && is_blank(at(reader, index + 1));
}

// `1.` to `99.` and a blank; says the marker's end, or 0. Only `1.` begins a list.
static uint32_t number_item_end(Reader* reader, uint32_t index, bool numbered) {
    const int32_t first = at(reader, index);
    if (first < '1' || first > '9') return 0;
    uint32_t end = index + 1;
    if (is_digit(at(reader, end))) ++end;
    if (at(reader, end) != '.' || !is_blank(at(reader, end + 1))) return 0;
    const bool is_one = first == '1' && end == index + 1;
    return is_one || numbered ? end + 1 : 0;
}

static bool is_note(Reader* reader, uint32_t index) {
    return at(reader, index) == '%' && is_gap(at(reader, index + 1));
}

static bool is_name_character(int32_t c) {
    return is_upper(c) || is_digit(c) || c == '\'' || c == 0x2019 || c == '.' || c == '-' || c == '+' || c == '&';
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

// What the line that begins at `index` does to the thought above it. Reads no further than it must:
// a token may have to end on the character where it made up its mind.
static Line line_at(Reader* reader, uint32_t index) {
    const uint32_t content = past_blanks(reader, index);
    const int32_t c = at(reader, content);
    Line line = {.kind = LINE_CONTINUES, .content = content};
    if (is_edge(c)) {
        line.kind = LINE_ENDS_THOUGHT;
    } else if (c == '#') {
        if (is_heading(reader, content)) line.kind = LINE_ENDS_THOUGHT;
    } else if (c == '-') {
        if (is_dash_item(reader, content) || rule_line_end(reader, content)) line.kind = LINE_ENDS_THOUGHT;
    } else if (is_digit(c)) {
        if (number_item_end(reader, content, reader->scanner->state.numbered)) line.kind = LINE_ENDS_THOUGHT;
    } else if (c == '%') {
        if (is_note(reader, content)) line.kind = LINE_IS_NOTE;
    } else if (speaker_end(reader, content)) {
        line.kind = LINE_SPEAKS;
    }
    return line;
}

// For what hides marks (a direction, a code span, braces): the next place in it, or 0 where it has to end.
static uint32_t next_inside(Reader* reader, uint32_t index) {
    const int32_t c = at(reader, index);
    if (c == END_OF_TEXT) return 0;
    if (!is_line_end(c)) return index + 1;
    const Line line = line_at(reader, past_line_end(reader, index));
    return line.kind == LINE_CONTINUES ? line.content : 0;
}

// ---------------------------------------------------------------------------------------------- shapes

enum ShapeKind {
    WORDS,     // plain text
    WHOLE,     // a token by itself
    BRACES,    // a pronouncer or a say-as, cut into three tokens
    DELIMITER, // may open or close a pair
};

typedef struct {
    enum ShapeKind kind;
    uint32_t length;
    enum Token token;   // of WHOLE and BRACES
    enum Family family; // that a DELIMITER opens
    uint32_t closes;    // the families that it closes, as bits
    bool opens;
    bool in_word; // letters on both sides
    bool weak;    // a straight quote behind a digit: rather inches
} Shape;

static uint32_t bit(enum Family family) { return 1u << family; }

static Shape words(Reader* reader, uint32_t index, uint32_t length) {
    may_end_at(reader, index + length);
    return (Shape){.kind = WORDS, .length = length};
}

static Shape whole(Reader* reader, uint32_t index, uint32_t length, enum Token token) {
    may_end_at(reader, index + length);
    return (Shape){.kind = WHOLE, .length = length, .token = token};
}

// `\` and punctuation, a standing x, a word in capitals, a list number.
static Shape escape_at(Reader* reader, uint32_t index, Context context) {
    const int32_t c = at(reader, index + 1);
    if (is_ascii_punctuation(c)) return whole(reader, index, 2, ESCAPE);
    if (!may_open_after(context.prev)) return words(reader, index, 1);

    may_end_at(reader, index + 1);
    uint32_t end = index + 1;
    if (c == 'x') {
        end = past_run(reader, end, 'x');
        if (is_gap(at(reader, end))) return whole(reader, index, end - index, ESCAPE);
    } else if (is_upper(c)) {
        while (is_upper(at(reader, end)) || is_digit(at(reader, end))) ++end;
        if (!is_wordly(at(reader, end))) return whole(reader, index, end - index, ESCAPE);
    } else if (c >= '1' && c <= '9') {
        end += is_digit(at(reader, index + 2)) ? 2 : 1;
        if (at(reader, end) == '.' && is_gap(at(reader, end + 1))) return whole(reader, index, end + 1 - index, ESCAPE);
    }
    return (Shape){.kind = WORDS, .length = 1};
}

// As many backticks as opened it close it.
static Shape code_at(Reader* reader, uint32_t index) {
    const uint32_t begin = past_run(reader, index, '`');
    may_end_at(reader, begin);
    for (uint32_t i = begin; i;) {
        if (at(reader, i) != '`') {
            i = next_inside(reader, i);
            continue;
        }
        const uint32_t end = past_run(reader, i, '`');
        if (end - i == begin - index) return whole(reader, index, end - index, CODE);
        i = end;
    }
    return (Shape){.kind = WORDS, .length = begin - index};
}

// Brackets balance within the thought.
static Shape direction_at(Reader* reader, uint32_t index) {
    may_end_at(reader, index + 1);
    unsigned depth = 0;
    for (uint32_t i = index; i; i = next_inside(reader, i)) {
        const int32_t c = at(reader, i);
        if (c == '\\' && is_ascii_punctuation(at(reader, i + 1))) ++i;
        else if (c == '[' && ++depth > NESTING) break;
        else if (c == ']' && --depth == 0) return whole(reader, index, i + 1 - index, DIRECTION);
    }
    return (Shape){.kind = WORDS, .length = 1};
}

// Braces belong to the word before them. Standing ones are words, but for what a template has left behind: `{}`, `{first_name}`.
static Shape braces_at(Reader* reader, uint32_t index, Context context) {
    const bool standing = may_open_after(context.prev) && context.prev != QUOTE;
    const bool says = at(reader, index + 1) == '=';
    may_end_at(reader, index + (says ? 2 : 1));
    bool underscored = false, blanks = false;
    for (uint32_t i = index + 1; i; i = next_inside(reader, i)) {
        const int32_t c = at(reader, i);
        if (c == '{') break;
        if (c == '}') {
            const bool left_behind = i == index + 1 || (underscored && !blanks);
            if (standing && !left_behind) break;
            return (Shape){.kind = BRACES, .length = i + 1 - index, .token = says ? SAY_AS_OPEN : PRONOUNCER_OPEN};
        }
        underscored = underscored || c == '_';
        blanks = blanks || is_gap(c);
    }
    return (Shape){.kind = WORDS, .length = says ? 2 : 1};
}

static bool is_dot(int32_t c) { return c == '.' || c == 0x2026; }

// `. . .`: dots with one blank between them.
static uint32_t spaced_dots(Reader* reader, uint32_t index) {
    unsigned count = 1;
    uint32_t end = index + 1;
    while (is_blank(at(reader, end)) && at(reader, end + 1) == '.') {
        end += 2;
        ++count;
        if (count >= 3) may_end_at(reader, end);
    }
    return count >= 3 ? end - index : 0;
}

static Shape dots_at(Reader* reader, uint32_t index) {
    uint32_t end = index;
    unsigned count = 0;
    for (; is_dot(at(reader, end)); ++end) count += at(reader, end) == '.' ? 1 : 3;
    if (count >= 3) return whole(reader, index, end - index, PAUSE);
    may_end_at(reader, end);
    if (count > 1) return words(reader, index, end - index);
    const uint32_t length = spaced_dots(reader, index);
    if (length) return (Shape){.kind = WHOLE, .length = length, .token = PAUSE};
    return (Shape){.kind = WORDS, .length = 1};
}

static bool ends_something(enum Last last) { return last == LAST_STOP || last == LAST_CLOSED || last == LAST_BEAT; }

static Shape beat_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, 'x');
    const uint32_t length = end - index;
    const bool stands = (context.prev == AT_START || context.prev == BLANK) && is_gap(at(reader, end));
    if (stands && (length > 1 || ends_something(context.last))) return whole(reader, index, length, BEAT);
    return words(reader, index, length);
}

// A breath or a reset stands alone; between two figures a stroke is "per" or "or".
static Shape stroke_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, '/');
    const uint32_t length = end - index;
    const bool stands = (context.prev == AT_START || context.prev == BLANK) && is_gap(at(reader, end));
    if (!stands || length > 2) return words(reader, index, length);
    may_end_at(reader, end);
    const bool figures = context.last == LAST_DIGIT && is_digit(at(reader, past_blanks(reader, end)));
    if (length == 1 && figures) return (Shape){.kind = WORDS, .length = 1};
    return (Shape){.kind = WHOLE, .length = length, .token = length == 1 ? BREATH : RESET};
}

// `(1.5)`, `(2s)`: a decimal or an `s`, at most 60. Says the index of the closing parenthesis, or 0.
static uint32_t timed_pause_close(Reader* reader, uint32_t index) {
    uint32_t i = index + 1;
    unsigned tens = 0, decimals = 0;
    for (; is_digit(at(reader, i)) && i - index <= 2; ++i) tens = tens * 10 + (unsigned)(at(reader, i) - '0');
    bool above = false, seconds = false;
    if (at(reader, i) == '.') {
        for (++i; is_digit(at(reader, i)) && decimals < 3; ++i, ++decimals) above = above || at(reader, i) != '0';
        if (decimals == 0) return 0;
    } else if (i == index + 1) {
        return 0;
    }
    if (at(reader, i) == 's') {
        seconds = true;
        ++i;
    }
    if (at(reader, i) != ')' || (!seconds && decimals == 0)) return 0;
    return tens < 60 || (tens == 60 && !above) ? i : 0;
}

// What stands in parentheses and is no aside: a year or another figure, or an omission. Says the index of the closing one, or 0.
static uint32_t figures_close(Reader* reader, uint32_t index) {
    uint32_t i = index + 1;
    if (is_dot(at(reader, i))) {
        while (is_dot(at(reader, i))) ++i;
    } else if (is_digit(at(reader, i))) {
        for (int32_t c = at(reader, i); is_digit(c) || c == '.' || c == ',' || c == '-' || c == ':' || c == 's' ||
                                        c == '%' || c == 0x2013;
             c = at(reader, ++i))
            if (i - index > 24) return 0;
    }
    return i > index + 1 && at(reader, i) == ')' ? i : 0;
}

static Shape paren_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    const int32_t c = at(reader, index + 1);
    if (c == ')') return words(reader, index, 2);
    if (is_gap(c) || context.face) return (Shape){.kind = WORDS, .length = 1};

    const bool behind_word = context.prev == LETTER || context.prev == DIGIT;
    if (is_dot(c) || is_digit(c)) {
        const bool dot = c == '.' && at(reader, index + 2) == ')';
        const uint32_t timed = dot ? 0 : timed_pause_close(reader, index);
        const uint32_t close = dot ? index + 2 : timed ? timed : figures_close(reader, index);
        if (close) {
            may_end_at(reader, close + 1);
            const bool stands = !behind_word && !is_wordly(at(reader, close + 1));
            const bool held = (dot || timed) && stands;
            return (Shape){.kind = held ? WHOLE : WORDS,
                           .length = close + 1 - index,
                           .token = dot ? MICROPAUSE : TIMED_PAUSE};
        }
    }
    const bool opens = may_open_after(context.prev) && context.prev != SLASH && context.prev != BRACKET;
    return (Shape){.kind = DELIMITER, .length = 1, .family = PAREN, .opens = opens};
}

static Shape close_paren_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    if (context.face) return (Shape){.kind = WORDS, .length = 1}; // :)
    const bool closes = may_close_after(context.prev) && may_close_before(at(reader, index + 1));
    return (Shape){.kind = DELIMITER, .length = 1, .closes = closes ? bit(PAREN) : 0};
}

// Stars and low lines: one is stress, two or three are heavy stress. Stars also mark part of a word.
static Shape run_at(Reader* reader, uint32_t index, Context context, int32_t c, enum Family first) {
    uint32_t end = past_run(reader, index, c);
    if (end > reader->limit) end = reader->limit; // the rest is the enclosing closer
    const uint32_t length = end - index;
    may_end_at(reader, end);
    if (length > 3) return (Shape){.kind = WORDS, .length = length};

    const int32_t next = at(reader, end);
    const enum Family family = (enum Family)(first + length - 1);
    const bool in_word = c == '*' && context.prev == LETTER && next >= 0 && class_of(next) == LETTER && length < 3;
    const bool opens = in_word || (may_open_after(context.prev) && !is_gap(next));
    const bool closes = in_word || (may_close_after(context.prev) && may_close_before(next));
    return (Shape){.kind = DELIMITER,
                   .length = length,
                   .family = family,
                   .opens = opens,
                   .closes = closes ? bit(family) : 0,
                   .in_word = in_word};
}

static Shape single_at(Reader* reader, uint32_t index, Context context, enum Family family) {
    may_end_at(reader, index + 1);
    const int32_t next = at(reader, index + 1);
    const bool opens = may_open_after(context.prev) && !is_gap(next);
    const bool closes = may_close_after(context.prev) && may_close_before(next);
    return (Shape){.kind = DELIMITER, .length = 1, .family = family, .opens = opens, .closes = closes ? bit(family) : 0};
}

static Shape wave_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, '~');
    if (end - index > 1) return words(reader, index, end - index);
    Shape shape = single_at(reader, index, context, WAVE);
    if (is_digit(at(reader, index + 1))) shape.opens = false; // "about"
    return shape;
}

// Next to a digit the ring is degrees.
static Shape ring_at(Reader* reader, uint32_t index, Context context) {
    Shape shape = single_at(reader, index, context, RING);
    const bool behind_digit = context.last == LAST_DIGIT && (context.prev == DIGIT || context.prev == BLANK);
    if (!behind_digit && !is_digit(at(reader, index + 1))) return shape;
    return (Shape){.kind = WORDS, .length = 1};
}

static Shape straight_quote_at(Reader* reader, uint32_t index, Context context) {
    if (at(reader, index + 1) == '"') return words(reader, index, 2);
    Shape shape = single_at(reader, index, context, STRAIGHT);
    shape.weak = context.prev == DIGIT;
    return shape;
}

static Shape open_quote_at(Reader* reader, uint32_t index, Context context, enum Family family) {
    Shape shape = single_at(reader, index, context, family);
    // “ opens, and closes what a low quote has opened.
    shape.closes = family == CURLY && shape.closes ? bit(LOW) : 0;
    return shape;
}

static Shape close_quote_at(Reader* reader, uint32_t index, Context context, uint32_t closes) {
    Shape shape = single_at(reader, index, context, ANGLE);
    shape.closes = may_close_after(context.prev) ? closes : 0;
    shape.opens = false;
    return shape;
}

static bool is_inside_tag(int32_t c) { return !is_gap(c) && c != '<' && c != '>'; }

// Angle brackets of other notations are words: </b>, <b>x, <https://a>, <mira@example.org>. Says where it ends, or 0.
static uint32_t tag_end(Reader* reader, uint32_t index) {
    uint32_t i = index + 1;
    bool address = at(reader, i) == '/';
    for (; is_inside_tag(at(reader, i)); ++i) {
        if (i - index > 200) return 0;
        const int32_t c = at(reader, i);
        address = address || c == '@' || (c == '/' && at(reader, i + 1) == '>');
        address = address || (c == ':' && at(reader, i + 1) == '/' && at(reader, i + 2) == '/');
    }
    if (at(reader, i) != '>' || i == index + 1) return 0;
    return address || is_wordly(at(reader, i + 1)) ? i + 1 : 0;
}

static Shape less_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    const int32_t next = at(reader, index + 1);
    const bool behind = may_open_after(context.prev) && context.prev != DASH && context.prev != SLASH;
    const bool opens = behind && !is_gap(next) && next != '/' && next != '-' && next != '=' && next != '<';
    const bool closes = may_close_after(context.prev) && may_close_before(next);
    return (Shape){.kind = DELIMITER,
                   .length = 1,
                   .family = POINT_OUT,
                   .opens = opens,
                   .closes = closes ? bit(POINT_IN) : 0};
}

static Shape tag_or_less_at(Reader* reader, uint32_t index, Context context) {
    // Tags are looked for without marking, since the answer lies beyond their end.
    const bool held = reader->held;
    if (!held) may_end_at(reader, index + 1);
    const uint32_t end = tag_end(reader, index);
    if (end) {
        may_end_at(reader, end);
        return (Shape){.kind = WORDS, .length = end - index};
    }
    return less_at(reader, index, context);
}

static Shape greater_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    const int32_t next = at(reader, index + 1);
    const bool behind = may_open_after(context.prev) && context.prev != DASH && context.prev != SLASH;
    const bool opens = behind && !is_gap(next) && next != '=' && next != '>' && next != '<';
    const bool closes = may_close_after(context.prev) && context.prev != SLASH && may_close_before(next);
    return (Shape){.kind = DELIMITER,
                   .length = 1,
                   .family = POINT_IN,
                   .opens = opens,
                   .closes = closes ? bit(POINT_OUT) : 0};
}

// An arrow before a word, or before a mark that begins one.
static Shape step_at(Reader* reader, uint32_t index, Context context, enum Token token) {
    may_end_at(reader, index + 1);
    if (!may_open_after(context.prev)) return (Shape){.kind = WORDS, .length = 1};
    uint32_t i = index + 1;
    const int32_t c = at(reader, i);
    if (c == '*' || c == '_') i = past_run(reader, i, c);
    else if (c == '"' || c == 0x201C || c == '(' || c == '~' || c == '<' || c == '>') ++i;
    const bool word = i - index <= 4 && is_wordly(at(reader, i));
    return (Shape){.kind = word ? WHOLE : WORDS, .length = 1, .token = token};
}

// An arrow at the end of a phrase.
static Shape tune_at(Reader* reader, uint32_t index, Context context, enum Token token) {
    may_end_at(reader, index + 1);
    const bool ends = may_close_after(context.prev) && may_close_before(at(reader, index + 1));
    return (Shape){.kind = ends ? WHOLE : WORDS, .length = 1, .token = token};
}

static Shape colons_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, ':');
    const bool stretches = end - index > 1 && context.prev == LETTER && !is_digit(at(reader, end));
    if (stretches) return whole(reader, index, end - index, STRETCH);
    return words(reader, index, end - index);
}

// Between two words of a line.
static Shape tie_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    const bool ties = context.prev != AT_START && !is_edge(at(reader, past_blanks(reader, index + 1)));
    return (Shape){.kind = ties ? WHOLE : WORDS, .length = 1, .token = TIE};
}

static uint32_t past_letters(Reader* reader, uint32_t index, const char* letters) {
    for (; *letters; ++letters, ++index) {
        const int32_t c = at(reader, index);
        if ((c >= 'A' && c <= 'Z' ? c + 'a' - 'A' : c) != *letters) return 0;
    }
    return index;
}

static uint32_t past_address_head(Reader* reader, uint32_t index) {
    static const char* const heads[] = {"http://", "https://", "ftp://", "www."};
    for (unsigned i = 0; i < sizeof heads / sizeof *heads; ++i) {
        const uint32_t end = past_letters(reader, index, heads[i]);
        if (end) return is_wordly(at(reader, end)) ? end : 0;
    }
    return 0;
}

// A web address hides marks, up to the punctuation behind it.
static Shape address_at(Reader* reader, uint32_t index) {
    uint32_t end = past_address_head(reader, index);
    if (!end) return words(reader, index, 1);
    for (uint32_t i = end;; ++i) {
        const int32_t c = at(reader, i);
        const bool solid = is_wordly(c) || c == '/' || c == '#' || c == '=' || c == '&' || c == '+' || c == '%' || c == '@';
        if (solid) {
            end = i + 1;
            may_end_at(reader, end);
        } else if (is_gap(c) || !is_ascii_punctuation(c) || c == '<' || c == '>' || c == '"' || c == '{' || c == '`') {
            break;
        }
    }
    return (Shape){.kind = WHOLE, .length = end - index, .token = ADDRESS};
}

// Whether a character may begin a mark; where it does not, `shape_at` need not be asked.
static bool is_special(int32_t c, Context context) {
    if (c < 0) return false;
    const bool in_word = context.prev == LETTER || context.prev == DIGIT;
    switch (c) {
    case '\\':
    case '`':
    case '[':
    case '{':
    case '.':
    case '/':
    case '(':
    case ')':
    case '*':
    case '_':
    case '~':
    case '"':
    case '<':
    case '>':
    case '^':
    case ':':
    case 0xB0:
    case 0xAB:
    case 0xBB:
    case 0x201C:
    case 0x201D:
    case 0x201E:
    case 0x2026:
    case 0x203F:
    case 0x2191:
    case 0x2193:
    case 0x2197:
    case 0x2198: return true;
    case 'x':
    case 'f':
    case 'F':
    case 'h':
    case 'H':
    case 'w':
    case 'W': return !in_word;
    default: return false;
    }
}

static Shape shape_at(Reader* reader, uint32_t index, Context context) {
    const int32_t c = at(reader, index);
    if (!is_special(c, context)) return words(reader, index, 1);
    switch (c) {
    case '\\': return escape_at(reader, index, context);
    case '`': return code_at(reader, index);
    case '[': return direction_at(reader, index);
    case '{': return braces_at(reader, index, context);
    case '.':
    case 0x2026: return dots_at(reader, index);
    case 'x': return beat_at(reader, index, context);
    case '/': return stroke_at(reader, index, context);
    case '(': return paren_at(reader, index, context);
    case ')': return close_paren_at(reader, index, context);
    case '*': return run_at(reader, index, context, c, STAR_1);
    case '_': return run_at(reader, index, context, c, LINE_1);
    case '~': return wave_at(reader, index, context);
    case 0xB0: return ring_at(reader, index, context);
    case '"': return straight_quote_at(reader, index, context);
    case 0x201C: return open_quote_at(reader, index, context, CURLY);
    case 0x201E: return open_quote_at(reader, index, context, LOW);
    case 0xAB: return open_quote_at(reader, index, context, ANGLE);
    case 0x201D: return close_quote_at(reader, index, context, bit(CURLY) | bit(LOW));
    case 0xBB: return close_quote_at(reader, index, context, bit(ANGLE));
    case '<': return tag_or_less_at(reader, index, context);
    case '>': return greater_at(reader, index, context);
    case '^':
    case 0x2191: return step_at(reader, index, context, STEP_UP);
    case 0x2193: return step_at(reader, index, context, STEP_DOWN);
    case 0x2197: return tune_at(reader, index, context, END_UP);
    case 0x2198: return tune_at(reader, index, context, END_DOWN);
    case ':': return colons_at(reader, index, context);
    case 0x203F: return tie_at(reader, index, context);
    default: return address_at(reader, index);
    }
}

// ---------------------------------------------------------------------------------------------- what comes before

static enum Last last_after(enum Prev class, enum Last last) {
    switch (class) {
    case STOP: return LAST_STOP;
    case DIGIT: return LAST_DIGIT;
    case CLOSER:
    case QUOTE: return last == LAST_STOP ? LAST_STOP : LAST_OTHER; // a quote may stand behind the stop
    default: return LAST_OTHER;
    }
}

static uint8_t face_after(Context context, int32_t c) {
    const bool first = context.prev == AT_START || context.prev == BLANK;
    if (first && (c == ':' || c == ';' || c == '=')) return 1;
    return context.face == 1 && c == '-' ? 2 : 0;
}

static Context after_character(Context context, int32_t c) {
    if (c >= 0 && is_invisible(c)) return context;
    const enum Prev class = c < 0 ? OTHER : class_of(c);
    if (class == BLANK) {
        if (context.prev != AT_START) context.prev = BLANK;
        context.face = 0;
        return context;
    }
    context.face = face_after(context, c);
    context.last = (uint8_t)last_after(class, (enum Last)context.last);
    context.prev = (uint8_t)class;
    return context;
}

static Context after_characters(Context context, Reader* reader, uint32_t index, uint32_t end) {
    for (; index < end; ++index) context = after_character(context, at(reader, index));
    return context;
}

static Context after_token(Context context, enum Token token) {
    context.face = 0;
    switch (token) {
    case DIRECTION: context.prev = BRACKET; return context;
    case END_UP:
    case END_DOWN: context.prev = CLOSER; return context;
    case PAUSE: return (Context){.prev = STOP, .last = LAST_STOP};
    case BEAT: return (Context){.prev = OTHER, .last = LAST_BEAT};
    case STEP_UP:
    case STEP_DOWN:
    case TIE: return (Context){.prev = OPENER, .last = LAST_OTHER};
    case BREATH:
    case RESET:
    case STRETCH: return (Context){.prev = OTHER, .last = LAST_OTHER};
    default: return (Context){.prev = CLOSER, .last = LAST_OTHER};
    }
}

static Context after_delimiter(Context context, Shape shape) {
    const enum Last last = context.last == LAST_STOP && shape.closes ? LAST_STOP : LAST_OTHER;
    const enum Prev prev = shape.opens == (shape.closes != 0) ? OTHER : shape.opens ? OPENER : CLOSER;
    return (Context){.prev = (uint8_t)prev, .last = (uint8_t)last};
}

static bool is_delimiter(Shape shape) { return shape.kind == DELIMITER && (shape.opens || shape.closes); }

// The same whether the shape is being cut or only passed in a search: what counts is its shape, not what became of it.
static Context after_shape(Context context, Reader* reader, uint32_t index, Shape shape) {
    if (is_delimiter(shape)) return after_delimiter(context, shape);
    if (shape.kind == BRACES) return after_token(context, BRACE_CLOSE);
    if (shape.kind == WHOLE && shape.token != ESCAPE) return after_token(context, shape.token);
    return after_characters(context, reader, index, index + shape.length);
}

// ---------------------------------------------------------------------------------------------- closers

typedef struct {
    Shape opener;
    bool word_only;   // the closer has to stand before the next blank
    bool blank_seen;
    unsigned depth;   // parentheses inside an aside
    uint32_t weak_at; // a straight quote behind a digit, should no better one come
    bool other_run;   // inside: a run of stars that a run of three would close together with ours
} Search;

enum Found { GO_ON, CLOSED, GIVE_UP };

static enum Found weigh_paren(Search* search, int32_t c, Shape shape) {
    if (c == '(') return ++search->depth > NESTING ? GIVE_UP : GO_ON;
    if (c != ')') return GO_ON;
    if (search->depth > 0) {
        --search->depth;
        return GO_ON;
    }
    return shape.closes ? CLOSED : GIVE_UP; // (s)he
}

// `**a *b***`: a run of three closes the inner pair and then ours. Says by how much ours begins later.
static enum Found weigh_run(Search* search, Shape shape, uint32_t* offset) {
    const enum Family first = search->opener.family < LINE_1 ? STAR_1 : LINE_1;
    if (shape.family < first || shape.family > first + 2) return GO_ON;
    const uint32_t other = 3 - search->opener.length;
    if (search->opener.length < 3 && shape.closes == bit((enum Family)(first + 2)) && search->other_run) {
        *offset = other;
        return CLOSED;
    }
    if (shape.length == other) search->other_run = shape.opens && !(search->other_run && shape.closes);
    return GO_ON;
}

static enum Found weigh(Search* search, uint32_t index, int32_t c, Shape shape, uint32_t* closer) {
    const enum Family family = search->opener.family;
    *closer = index;
    if (family == PAREN) return weigh_paren(search, c, shape);
    if ((shape.closes & bit(family)) && !(shape.in_word && search->blank_seen)) {
        if (!shape.weak) return CLOSED;
        if (!search->weak_at) search->weak_at = index;
        return GO_ON;
    }
    if (family == STRAIGHT && search->weak_at && shape.opens && shape.family == STRAIGHT) {
        *closer = search->weak_at; // the next quotation begins: what stood behind the digit was the end of ours
        return CLOSED;
    }
    uint32_t offset = 0;
    const enum Found found = family <= LINE_3 ? weigh_run(search, shape, &offset) : GO_ON;
    *closer += offset;
    return found;
}

// Where the pair that opens at the token's begin closes, or 0. Remembers a search in vain.
static uint32_t find_closer(Reader* reader, State* state, Context context, Shape opener) {
    const bool failed = has_failed(state, opener.family);
    if (failed && opener.family > STAR_2) return 0;
    Search search = {.opener = opener, .word_only = opener.in_word || failed};
    reader->held = true;
    context = after_shape(context, reader, 0, opener);
    uint32_t index = opener.length;
    while (index < reader->limit) {
        const int32_t c = at(reader, index);
        if (c == END_OF_TEXT) break;
        if (is_gap(c)) {
            if (search.word_only) return 0;
            search.blank_seen = true;
        }
        if (is_line_end(c)) {
            Line line = line_at(reader, past_line_end(reader, index));
            if (line.kind == LINE_ENDS_THOUGHT || line.kind == LINE_SPEAKS) break;
            index = line.content;
            context.prev = AT_START;
            context.face = 0;
            if (line.kind == LINE_IS_NOTE)
                while (!is_edge(at(reader, index))) ++index;
            continue;
        }
        const Shape shape = shape_at(reader, index, context);
        if (is_delimiter(shape) || c == '(' || c == ')') {
            uint32_t closer;
            const enum Found found =
                shape.kind == DELIMITER ? weigh(&search, index, c, shape, &closer) : GO_ON;
            if (found == CLOSED) return closer;
            if (found == GIVE_UP) return 0;
        }
        context = after_shape(context, reader, index, shape);
        index += shape.length;
    }
    if (search.weak_at) return search.weak_at;
    if (opener.family != PAREN && !search.word_only) remember_failure(state, opener.family);
    return 0;
}

// ---------------------------------------------------------------------------------------------- tokens inside a thought

// Takes note of a finished token: what it passed brings the closers nearer.
static bool finish(Scanner* scanner, Reader* reader, uint32_t padding, enum Token token) {
    State* state = &scanner->state;
    const uint32_t passed = padding + reader->end;
    for (unsigned i = 0; i < state->depth; ++i) {
        Level* level = &state->levels[i];
        level->remaining = level->remaining > passed ? level->remaining - passed : 0;
    }
    reader->lexer->result_symbol = (TSSymbol)token;
    return true;
}

static bool finish_block(Scanner* scanner, Reader* reader) {
    State* state = &scanner->state;
    *state = (State){.numbered = state->numbered, .lone_notes = state->lone_notes};
    reader->lexer->result_symbol = BLOCK_END;
    return true;
}

static enum Token opening(enum Mark mark) { return (enum Token)(PAIR_OPEN + 2 * mark); }
static enum Token closing(enum Mark mark) { return (enum Token)(PAIR_OPEN + 2 * mark + 1); }

static bool close_pair(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    const Level level = state->levels[--state->depth];
    reader->limit = REACH;
    may_end_at(reader, level.length);
    state->context = (Context){.prev = CLOSER, .last = LAST_CLOSED};
    return finish(scanner, reader, padding, closing((enum Mark)level.mark));
}

static bool open_pair(Scanner* scanner, Reader* reader, uint32_t padding, Shape shape, uint32_t closer) {
    State* state = &scanner->state;
    const enum Mark mark = (enum Mark)mark_of[shape.family];
    state->context = after_delimiter(state->context, shape);
    state->spoken = true;
    finish(scanner, reader, padding, opening(mark));
    state->levels[state->depth++] = (Level){
        .mark = (uint8_t)mark, .length = (uint8_t)shape.length, .remaining = closer - shape.length};
    return true;
}

static bool is_quote(enum Family family) { return mark_of[family] == QUOTED; }

// Whether the shape ends a run of words.
static bool interrupts(const State* state, Shape shape) {
    if (shape.kind != DELIMITER) return shape.kind != WORDS;
    if (!shape.opens || is_open(state, (enum Mark)mark_of[shape.family])) return false;
    return !has_failed(state, shape.family) || shape.family <= STAR_2;
}

static bool finish_words(Scanner* scanner, Reader* reader, uint32_t padding, Context context) {
    scanner->state.context = context;
    scanner->state.spoken = true;
    return finish(scanner, reader, padding, TEXT);
}

// A run of words from the token's begin; what lies before `index` is known to be words, and marked as the end.
// The run ends before the next mark, and before the blanks at a line's end.
static bool scan_words(Scanner* scanner, Reader* reader, uint32_t padding, uint32_t index, Context context) {
    const State* state = &scanner->state;
    Context at_end = context;   // as of the token's end
    bool end_is_marked = true;  // the last word's end is the token's
    for (;;) {
        const int32_t c = at(reader, index);
        const bool can_end = reader->read == index;
        const bool stops = index >= reader->limit || is_edge(c);
        const bool special = !stops && is_special(c, context);
        if (stops || special || is_blank(c)) {
            if (can_end && !(end_is_marked && context.prev == BLANK)) {
                mark_end(reader);
                at_end = context;
                end_is_marked = true;
            }
            if (stops || (special && !can_end)) return finish_words(scanner, reader, padding, at_end);
        }
        uint32_t length = 1;
        if (special) {
            reader->held = true;
            const Shape shape = shape_at(reader, index, context);
            reader->held = false;
            if (interrupts(state, shape)) return finish_words(scanner, reader, padding, at_end);
            context = after_shape(context, reader, index, shape);
            length = shape.length;
        } else {
            context = after_character(context, c);
        }
        if (!is_blank(c)) end_is_marked = false;
        index += length;
    }
}

// Words that begin with what could have been a mark.
static bool scan_words_behind(Scanner* scanner, Reader* reader, uint32_t padding, Shape shape) {
    const Context context = after_shape(scanner->state.context, reader, 0, shape);
    reader->held = false;
    if (reader->read > shape.length) return finish_words(scanner, reader, padding, context);
    return scan_words(scanner, reader, padding, shape.length, context);
}

static bool scan_delimiter(Scanner* scanner, Reader* reader, uint32_t padding, Shape shape) {
    State* state = &scanner->state;
    if (!shape.opens || is_open(state, (enum Mark)mark_of[shape.family]))
        return scan_words_behind(scanner, reader, padding, shape);

    const uint32_t closer = find_closer(reader, state, state->context, shape);
    if (closer > shape.length) return open_pair(scanner, reader, padding, shape, closer);
    if (is_quote(shape.family) && !state->spoken && !state->depth) {
        state->context = after_delimiter(state->context, shape);
        state->spoken = true;
        return finish(scanner, reader, padding, QUOTED_OPEN);
    }
    return scan_words_behind(scanner, reader, padding, shape);
}

static bool scan_shape(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    may_end_at(reader, 1);
    const Shape shape = shape_at(reader, 0, state->context);
    switch (shape.kind) {
    case WORDS: return scan_words_behind(scanner, reader, padding, shape);
    case DELIMITER: return scan_delimiter(scanner, reader, padding, shape);
    case BRACES: return finish(scanner, reader, padding, shape.token);
    default: break;
    }
    state->spoken = state->spoken || shape.token == ESCAPE || shape.token == CODE || shape.token == ADDRESS;
    state->context = after_shape(state->context, reader, 0, shape);
    return finish(scanner, reader, padding, shape.token);
}

// The rest of the line without the blanks at its end.
static void scan_line(Reader* reader) {
    bool behind_blank = true;
    for (int32_t c = here(reader); !is_edge(c); c = here(reader)) {
        const bool blank = is_blank(c);
        if (blank && !behind_blank) mark_end(reader);
        behind_blank = blank;
        pass(reader);
    }
    if (!behind_blank) mark_end(reader);
}

static bool scan_note(Scanner* scanner, Reader* reader, uint32_t padding) {
    move_window(reader);
    scan_line(reader);
    return finish(scanner, reader, padding, NOTE);
}

static bool scan_line_end(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    const uint32_t end = past_line_end(reader, 0);
    may_end_at(reader, end);
    const Line line = line_at(reader, end);
    if (line.kind == LINE_ENDS_THOUGHT && !state->depth) return finish_block(scanner, reader);
    if (line.kind == LINE_SPEAKS) state->failed = 0;
    state->context.prev = AT_START;
    state->context.face = 0;
    return finish(scanner, reader, padding, SOFT_BREAK);
}

static bool scan_end_of_text(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    if (!state->depth) return finish_block(scanner, reader);
    const Level level = state->levels[--state->depth];
    return finish(scanner, reader, padding, closing((enum Mark)level.mark));
}

// A note or a speaker, which only the begin of a line may hold. Returns false if there is none, with one
// character marked as words.
static bool scan_line_begin(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    may_end_at(reader, 1);
    if (is_note(reader, 0)) return scan_note(scanner, reader, padding);
    const uint32_t end = speaker_end(reader, 0);
    if (!end) return false;
    may_end_at(reader, end);
    state->context = (Context){.prev = OTHER};
    state->spoken = false;
    return finish(scanner, reader, padding, SPEAKER);
}

static bool scan_inline(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    if (padding && state->context.prev != AT_START) state->context.prev = BLANK;
    if (padding) state->context.face = 0;
    if (state->depth) {
        const uint32_t remaining = state->levels[state->depth - 1].remaining;
        reader->limit = remaining > padding ? remaining - padding : 0;
        if (!reader->limit && here(reader) != END_OF_TEXT) return close_pair(scanner, reader, padding);
    }
    const int32_t c = at(reader, 0);
    if (c == END_OF_TEXT) return scan_end_of_text(scanner, reader, padding);
    if (is_line_end(c)) return scan_line_end(scanner, reader, padding);
    if (state->context.prev == AT_START && scan_line_begin(scanner, reader, padding)) return true;
    if (is_special(c, state->context)) return scan_shape(scanner, reader, padding);
    may_end_at(reader, 1);
    return scan_words(scanner, reader, padding, 1, after_character(state->context, c));
}

static bool scan_braces(Scanner* scanner, Reader* reader, uint32_t padding, const bool* valid) {
    if (here(reader) != '}' && valid[ARGUMENT]) {
        bool behind_blank = true;
        for (int32_t c = here(reader); c != '}' && c != END_OF_TEXT; c = here(reader)) {
            const bool blank = is_gap(c);
            if (blank && !behind_blank) mark_end(reader);
            behind_blank = blank;
            pass(reader);
        }
        if (!behind_blank) mark_end(reader);
        if (reader->end) return finish(scanner, reader, padding, ARGUMENT);
        return false;
    }
    if (here(reader) == '}') pass(reader);
    mark_end(reader);
    scanner->state.context = after_token(scanner->state.context, BRACE_CLOSE);
    return finish(scanner, reader, padding, BRACE_CLOSE);
}

// ---------------------------------------------------------------------------------------------- tokens of blocks

static bool accept(Reader* reader, enum Token token) {
    reader->lexer->result_symbol = (TSSymbol)token;
    return true;
}

// One line end, or the end of the text.
static void pass_line_end(Reader* reader) {
    if (here(reader) == '\r') {
        pass(reader);
        if (here(reader) == '\n') pass(reader);
    } else if (here(reader) == '\n') {
        pass(reader);
    }
}

static bool scan_blank_lines(Scanner* scanner, Reader* reader) {
    scanner->state = (State){0};
    while (is_line_end(here(reader))) {
        pass_line_end(reader);
        mark_end(reader);
        while (is_blank(here(reader))) pass(reader);
    }
    return accept(reader, BLANK_LINES);
}

// The line's end behind a token that took all of the line.
static bool scan_block_end(Scanner* scanner, Reader* reader) {
    pass_line_end(reader);
    mark_end(reader);
    return finish_block(scanner, reader);
}

// Whether nothing but notes stands in this block, from the line's end on which the lexer stands.
static bool only_notes_follow(Reader* reader) {
    for (;;) {
        move_window(reader);
        if (reader->before > REACH) return true;
        if (here(reader) == END_OF_TEXT) return true;
        const Line line = line_at(reader, past_line_end(reader, 0));
        if (line.kind != LINE_IS_NOTE) return line.kind == LINE_ENDS_THOUGHT;
        while (!is_edge(here(reader))) pass(reader);
    }
}

static bool scan_block_note(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    const bool known = state->lone_notes;
    move_window(reader);
    scan_line(reader);
    if (known || only_notes_follow(reader)) {
        *state = (State){.lone_notes = true};
        return accept(reader, LONE_NOTE);
    }
    *state = (State){0};
    return finish(scanner, reader, padding, NOTE);
}

static bool scan_heading(Scanner* scanner, Reader* reader, const bool* valid) {
    scanner->state = (State){0};
    if (valid[SECTION_END]) return accept(reader, SECTION_END); // its end is still the begin of the line
    may_end_at(reader, past_run(reader, 0, '#'));
    return accept(reader, HEADING_MARKER);
}

static bool scan_item(Scanner* scanner, Reader* reader, uint32_t length, bool numbered) {
    may_end_at(reader, length);
    scanner->state = (State){.numbered = numbered};
    return accept(reader, ITEM_MARKER);
}

// Signs before a line that is no heading after all.
static bool scan_number_signs(Scanner* scanner, Reader* reader, uint32_t padding) {
    const uint32_t end = past_run(reader, 0, '#');
    may_end_at(reader, end);
    return scan_words_behind(scanner, reader, padding, (Shape){.kind = WORDS, .length = end});
}

static bool is_divider(Reader* reader) {
    for (uint32_t i = 0; i < 3; ++i)
        if (at(reader, i) != '-') return false;
    may_end_at(reader, 3);
    return rule_line_end(reader, 0) != 0;
}

// Words at the very top that begin like a header's first line.
static bool scan_dashes(Scanner* scanner, Reader* reader, uint32_t padding) {
    mark_end(reader);
    return scan_words_behind(scanner, reader, padding, (Shape){.kind = WORDS, .length = reader->read});
}

// The first token of a line that stands in no thought yet.
static bool scan_block(Scanner* scanner, Reader* reader, uint32_t padding, const bool* valid) {
    State* state = &scanner->state;
    const bool numbered = state->numbered;
    const int32_t c = at(reader, 0);
    if (is_line_end(c)) return valid[BLANK_LINES] && scan_blank_lines(scanner, reader);
    if (c == END_OF_TEXT) {
        if (padding && valid[BLANK_LINES]) return scan_blank_lines(scanner, reader);
        *state = (State){0};
        return valid[SECTION_END] && accept(reader, SECTION_END);
    }
    if (c == '#' && is_heading(reader, 0)) return scan_heading(scanner, reader, valid);
    if (!valid[DIVIDER]) return false;
    if (c == '#') {
        *state = (State){0};
        return scan_number_signs(scanner, reader, padding);
    }
    may_end_at(reader, 1);
    if (is_note(reader, 0)) return scan_block_note(scanner, reader, padding);

    *state = (State){0};
    if (is_dash_item(reader, 0)) return scan_item(scanner, reader, 1, false);
    if (is_divider(reader)) return accept(reader, DIVIDER);
    const uint32_t item = number_item_end(reader, 0, numbered);
    if (item) return scan_item(scanner, reader, item, true);
    return scan_inline(scanner, reader, padding);
}

// ---------------------------------------------------------------------------------------------- headings

// `1:30`, `2m30s`, `2m`, `45s`; says where it ends, or 0.
static uint32_t past_time(Reader* reader, uint32_t index) {
    const uint32_t begin = index;
    while (is_digit(at(reader, index)) && index - begin < 4) ++index;
    if (index == begin) return 0;
    if (at(reader, index) == 's') return index + 1;
    if (at(reader, index) == ':')
        return is_digit(at(reader, index + 1)) && is_digit(at(reader, index + 2)) ? index + 3 : 0;
    if (at(reader, index) != 'm') return 0;
    const uint32_t minutes = ++index;
    while (is_digit(at(reader, index)) && index - minutes < 2) ++index;
    if (index == minutes) return index;
    return at(reader, index) == 's' ? index + 1 : 0;
}

// A target in parentheses, which only the end of the line may hold. Says the index of the closing one, or 0.
static uint32_t target_close(Reader* reader, uint32_t index) {
    if (at(reader, index) != '(') return 0;
    uint32_t i = past_time(reader, past_blanks(reader, index + 1));
    if (!i) return 0;
    i = past_blanks(reader, i);
    if (at(reader, i) == '-' || at(reader, i) == 0x2013) {
        i = past_time(reader, past_blanks(reader, i + 1));
        if (!i) return 0;
    } else if (at(reader, i) == 'm') {
        i = past_letters(reader, i, "max");
        if (!i) return 0;
    }
    i = past_blanks(reader, i);
    return at(reader, i) == ')' && is_edge(at(reader, past_blanks(reader, i + 1))) ? i : 0;
}

// The name goes up to the line's end or to a target. A parenthesis that is no target has been read past: should
// a second one stand in the same few characters, it is part of the name.
static bool scan_heading_name(Reader* reader) {
    bool behind_blank = false;
    for (int32_t c = here(reader); !is_edge(c); c = here(reader)) {
        if (behind_blank && c == '(') {
            if (target_close(reader, 0)) return accept(reader, HEADING_NAME);
            behind_blank = false;
            if (reader->read) {
                move_window(reader);
                continue;
            }
        }
        const bool blank = is_blank(c);
        if (blank && !behind_blank) mark_end(reader);
        behind_blank = blank;
        pass(reader);
    }
    if (!behind_blank) mark_end(reader);
    return accept(reader, HEADING_NAME);
}

static bool scan_heading_part(Scanner* scanner, Reader* reader, const bool* valid) {
    const int32_t c = here(reader);
    if (valid[TARGET_CLOSE] || valid[HEADING_TARGET]) {
        if (c == ')') {
            pass(reader);
            mark_end(reader);
            return accept(reader, TARGET_CLOSE);
        }
        bool behind_blank = false;
        for (int32_t inner = c; inner != ')' && !is_edge(inner); inner = here(reader)) {
            const bool blank = is_blank(inner);
            if (blank && !behind_blank) mark_end(reader);
            behind_blank = blank;
            pass(reader);
        }
        if (!behind_blank) mark_end(reader);
        return accept(reader, HEADING_TARGET);
    }
    if (is_edge(c)) return scan_block_end(scanner, reader);
    if (valid[TARGET_OPEN] && c == '(') {
        may_end_at(reader, 1);
        if (target_close(reader, 0)) return accept(reader, TARGET_OPEN);
        move_window(reader);
    }
    return valid[HEADING_NAME] && scan_heading_name(reader);
}

// ---------------------------------------------------------------------------------------------- the header

static bool is_key_character(int32_t c) {
    return is_ascii_letter(c) || is_digit(c) || c == '-' || c == '_' || (c >= 0xC0 && class_of(c) == LETTER);
}

// A line of the header: its end, a note, `key: value`. Any other line is the script's first.
static bool scan_header_line(Scanner* scanner, Reader* reader, uint32_t padding) {
    const uint32_t rule = rule_line_end(reader, 0);
    if (rule) {
        mark_end(reader);
        return accept(reader, HEADER_CLOSE);
    }
    if (reader->read) return accept(reader, HEADER_END);
    if (here(reader) == '%') {
        if (!is_note(reader, 0)) return accept(reader, HEADER_END);
        mark_end(reader);
        return scan_note(scanner, reader, padding);
    }
    uint32_t end = 0;
    if (!is_digit(at(reader, 0)))
        while (end < KEY_REACH && is_key_character(at(reader, end))) ++end;
    if (end == 0 || at(reader, end) != ':') return accept(reader, HEADER_END);
    mark_end(reader);
    return accept(reader, HEADER_KEY);
}

static bool scan_header_part(Scanner* scanner, Reader* reader, const bool* valid) {
    if (valid[HEADER_COLON]) {
        pass(reader);
        mark_end(reader);
        return accept(reader, HEADER_COLON);
    }
    if (is_edge(here(reader))) return scan_block_end(scanner, reader);
    if (!valid[HEADER_VALUE]) return false;
    scan_line(reader);
    return accept(reader, HEADER_VALUE);
}

// ---------------------------------------------------------------------------------------------- choosing by what is valid

static bool scan(Scanner* scanner, TSLexer* lexer, const bool* valid) {
    Reader reader = reader_for(scanner, lexer);
    uint32_t padding = skip_blanks(lexer);
    if (valid[BRACE_CLOSE]) {
        while (!lexer->eof(lexer) && is_gap(lexer->lookahead)) {
            lexer->advance(lexer, true);
            ++padding;
        }
    }
    mark_end(&reader);

    if (valid[BRACE_CLOSE]) return scan_braces(scanner, &reader, padding, valid);
    if (valid[HEADER_OPEN] && rule_line_end(&reader, 0)) {
        mark_end(&reader);
        return accept(&reader, HEADER_OPEN);
    }
    if (valid[DIVIDER] || valid[SECTION_END] || valid[HEADING_MARKER]) {
        if (reader.read < 2) return scan_block(scanner, &reader, padding, valid);
        return scan_dashes(scanner, &reader, padding);
    }
    if (valid[SOFT_BREAK]) return scan_inline(scanner, &reader, padding);
    if (valid[HEADING_NAME] || valid[TARGET_OPEN] || valid[HEADING_TARGET] || valid[TARGET_CLOSE])
        return scan_heading_part(scanner, &reader, valid);
    if (valid[HEADER_KEY]) return scan_header_line(scanner, &reader, padding);
    if (valid[HEADER_COLON] || valid[HEADER_VALUE]) return scan_header_part(scanner, &reader, valid);
    return valid[BLOCK_END] && scan_block_end(scanner, &reader);
}

// ---------------------------------------------------------------------------------------------- what tree-sitter calls

void* tree_sitter_sayline_external_scanner_create(void) { return ts_calloc(1, sizeof(Scanner)); }

void tree_sitter_sayline_external_scanner_destroy(void* payload) {
    Scanner* scanner = payload;
    ts_free(scanner->ahead);
    ts_free(scanner);
}

// No bytes for the empty state; else the fields one by one, so that equal states are equal bytes.
unsigned tree_sitter_sayline_external_scanner_serialize(void* payload, char* buffer) {
    const State* state = &((const Scanner*)payload)->state;
    const Context context = state->context;
    uint8_t bytes[6 + 8 * MARK_COUNT];
    unsigned size = 0;
    bytes[size++] = (uint8_t)(state->spoken | state->numbered << 1 | state->lone_notes << 2 | context.face << 3);
    bytes[size++] = (uint8_t)(context.prev | context.last << 4);
    bytes[size++] = (uint8_t)(state->failed & 0xFF);
    bytes[size++] = (uint8_t)(state->failed >> 8);
    for (unsigned i = 0; i < state->depth; ++i) {
        const Level* level = &state->levels[i];
        bytes[size++] = level->mark;
        bytes[size++] = level->length;
        bytes[size++] = (uint8_t)(level->failed & 0xFF);
        bytes[size++] = (uint8_t)(level->failed >> 8);
        for (unsigned shift = 0; shift < 32; shift += 8) bytes[size++] = (uint8_t)(level->remaining >> shift);
    }
    if (size == 4 && !bytes[0] && !bytes[1] && !bytes[2] && !bytes[3]) return 0;
    memcpy(buffer, bytes, size);
    return size;
}

void tree_sitter_sayline_external_scanner_deserialize(void* payload, const char* buffer, unsigned length) {
    State* state = &((Scanner*)payload)->state;
    *state = (State){0};
    if (length < 4) return;
    const uint8_t* bytes = (const uint8_t*)buffer;
    state->spoken = bytes[0] & 1;
    state->numbered = bytes[0] >> 1 & 1;
    state->lone_notes = bytes[0] >> 2 & 1;
    state->context = (Context){.prev = bytes[1] & 0xF, .last = bytes[1] >> 4, .face = bytes[0] >> 3};
    state->failed = (uint16_t)(bytes[2] | bytes[3] << 8);
    for (unsigned i = 4; i + 8 <= length && state->depth < MARK_COUNT; i += 8) {
        Level* level = &state->levels[state->depth++];
        level->mark = bytes[i];
        level->length = bytes[i + 1];
        level->failed = (uint16_t)(bytes[i + 2] | bytes[i + 3] << 8);
        for (unsigned byte = 0; byte < 4; ++byte) level->remaining |= (uint32_t)bytes[i + 4 + byte] << (8 * byte);
    }
}

bool tree_sitter_sayline_external_scanner_scan(void* payload, TSLexer* lexer, const bool* valid_symbols) {
    if (valid_symbols[ERROR_SENTINEL]) return false;
    return scan(payload, lexer, valid_symbols);
}
