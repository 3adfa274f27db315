// The tokens of the grammar, the kinds of pair and their delimiters, and how far a look ahead may
// go.
#ifndef SAYLINE_TOKENS_H_
#define SAYLINE_TOKENS_H_

#include <stdint.h>

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
    PAIR_OPEN, // the first of seven openers and closers in turn
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
    [STAR_1] = STRESS,       [STAR_2] = HEAVY_STRESS, [STAR_3] = HEAVY_STRESS, [LINE_1] = STRESS,
    [LINE_2] = HEAVY_STRESS, [LINE_3] = HEAVY_STRESS, [WAVE] = SOFT,           [RING] = SOFT,
    [PAREN] = ASIDE,         [STRAIGHT] = QUOTED,     [CURLY] = QUOTED,        [LOW] = QUOTED,
    [ANGLE] = QUOTED,        [POINT_IN] = QUICK,      [POINT_OUT] = SLOW,
};

enum {
    REACH = 65536,   // code points that one look ahead may pass: a longer thought is not parsed for
                     // marks at all
    NESTING = 4,     // brackets in brackets, parentheses in parentheses
    NAME_REACH = 60, // a speaker's name
    END_OF_TEXT = -2, // the lexer itself says -1 for bytes that are no UTF-8
};

#endif
