// The shapes of the marks, decided from what stands before them and behind them: one function a
// shape. To add a mark, add its shape here, its token in tokens.h, its rule in grammar.js and a
// file in test/corpus.
#ifndef SAYLINE_SHAPES_H_
#define SAYLINE_SHAPES_H_

#include "characters.h"
#include "reader.h"
#include "tokens.h"

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

static uint32_t bit(enum Family family) {
    return 1u << family;
}

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
        while (is_upper(at(reader, end)) || is_digit(at(reader, end)))
            ++end;
        if (!is_wordly(at(reader, end))) return whole(reader, index, end - index, ESCAPE);
    } else if (c >= '1' && c <= '9') {
        end += is_digit(at(reader, index + 2)) ? 2 : 1;
        if (at(reader, end) == '.' && is_gap(at(reader, end + 1)))
            return whole(reader, index, end + 1 - index, ESCAPE);
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
    unsigned depth = 1;
    for (uint32_t i = index + 1; i; i = next_inside(reader, i)) {
        const int32_t c = at(reader, i);
        if (c == '\\' && is_ascii_punctuation(at(reader, i + 1)))
            ++i;
        else if (c == '[' && ++depth > NESTING)
            break;
        else if (c == ']' && --depth == 0)
            return whole(reader, index, i + 1 - index, DIRECTION);
    }
    return (Shape){.kind = WORDS, .length = 1};
}

// Braces belong to the word before them. Standing ones are words, but for what a template has left
// behind:
// `{}`, `{first_name}`.
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
            return (Shape){.kind = BRACES,
                           .length = i + 1 - index,
                           .token = says ? SAY_AS_OPEN : PRONOUNCER_OPEN};
        }
        underscored = underscored || c == '_';
        blanks = blanks || is_gap(c);
    }
    return (Shape){.kind = WORDS, .length = says ? 2 : 1};
}

static bool is_dot(int32_t c) {
    return c == '.' || c == 0x2026;
}

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
    for (; is_dot(at(reader, end)); ++end)
        count += at(reader, end) == '.' ? 1 : 3;
    if (count >= 3) return whole(reader, index, end - index, PAUSE);
    may_end_at(reader, end);
    if (count > 1) return words(reader, index, end - index);
    const uint32_t length = spaced_dots(reader, index);
    if (length) return (Shape){.kind = WHOLE, .length = length, .token = PAUSE};
    return (Shape){.kind = WORDS, .length = 1};
}

static bool ends_something(enum Last last) {
    return last == LAST_STOP || last == LAST_CLOSED || last == LAST_BEAT;
}

static Shape beat_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, 'x');
    const uint32_t length = end - index;
    const bool stands =
        (context.prev == AT_START || context.prev == BLANK) && is_gap(at(reader, end));
    if (stands && (length > 1 || ends_something(context.last)))
        return whole(reader, index, length, BEAT);
    return words(reader, index, length);
}

// A breath or a reset stands alone; between two figures a stroke is "per" or "or".
static Shape stroke_at(Reader* reader, uint32_t index, Context context) {
    const uint32_t end = past_run(reader, index, '/');
    const uint32_t length = end - index;
    const bool stands =
        (context.prev == AT_START || context.prev == BLANK) && is_gap(at(reader, end));
    if (!stands || length > 2) return words(reader, index, length);
    may_end_at(reader, end);
    const bool figures =
        context.last == LAST_DIGIT && is_digit(at(reader, past_blanks(reader, end)));
    if (length == 1 && figures) return (Shape){.kind = WORDS, .length = 1};
    return (Shape){.kind = WHOLE, .length = length, .token = length == 1 ? BREATH : RESET};
}

// `(1.5)`, `(2s)`: a decimal or an `s`, at most 60. Says the index of the closing parenthesis, or
// 0.
static uint32_t timed_pause_close(Reader* reader, uint32_t index) {
    uint32_t i = index + 1;
    unsigned tens = 0, decimals = 0;
    for (; is_digit(at(reader, i)) && i - index <= 2; ++i)
        tens = tens * 10 + (unsigned)(at(reader, i) - '0');
    bool above = false, seconds = false;
    if (at(reader, i) == '.') {
        for (++i; is_digit(at(reader, i)) && decimals < 3; ++i, ++decimals)
            above = above || at(reader, i) != '0';
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

// What stands in parentheses and is no aside: a year or another figure, or an omission. Says the
// index of the closing one, or 0.
static uint32_t figures_close(Reader* reader, uint32_t index) {
    static const int32_t en_dash[] = {0x2013, 0};
    uint32_t i = index + 1;
    if (is_dot(at(reader, i))) {
        while (is_dot(at(reader, i)))
            ++i;
    } else if (is_digit(at(reader, i))) {
        while (is_one_of(at(reader, i), "0123456789.,-:s%", en_dash))
            if (++i - index > 24) return 0;
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
    const bool opens =
        may_open_after(context.prev) && context.prev != SLASH && context.prev != BRACKET;
    return (Shape){.kind = DELIMITER, .length = 1, .family = PAREN, .opens = opens};
}

static Shape close_paren_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
    if (context.face) return (Shape){.kind = WORDS, .length = 1}; // :)
    const bool closes = may_close_after(context.prev) && may_close_before(at(reader, index + 1));
    return (Shape){.kind = DELIMITER, .length = 1, .closes = closes ? bit(PAREN) : 0};
}

// Stars and low lines: one is stress, two or three are heavy stress. Stars also mark part of a
// word.
static Shape run_at(Reader* reader, uint32_t index, Context context, int32_t c, enum Family first) {
    uint32_t end = past_run(reader, index, c);
    if (end > reader->limit) end = reader->limit; // the rest is the enclosing closer
    const uint32_t length = end - index;
    may_end_at(reader, end);
    if (length > 3) return (Shape){.kind = WORDS, .length = length};

    const int32_t next = at(reader, end);
    const enum Family family = (enum Family)(first + length - 1);
    const bool in_word =
        c == '*' && context.prev == LETTER && class_of(next) == LETTER && length < 3;
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
    return (Shape){.kind = DELIMITER,
                   .length = 1,
                   .family = family,
                   .opens = opens,
                   .closes = closes ? bit(family) : 0};
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
    const bool behind_digit =
        context.last == LAST_DIGIT && (context.prev == DIGIT || context.prev == BLANK);
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

static bool is_inside_tag(int32_t c) {
    return !is_gap(c) && c != '<' && c != '>';
}

// Angle brackets of other notations are words: </b>, <b>x, <https://a>, <mira@example.org>. Says
// where it ends, or 0.
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
    const bool behind =
        may_open_after(context.prev) && context.prev != DASH && context.prev != SLASH;
    const bool opens = behind && !is_gap(next) && next != '/' && next != '-' && next != '=' &&
                       next != '<' && next != '!';
    const bool closes = may_close_after(context.prev) && may_close_before(next);
    return (Shape){.kind = DELIMITER,
                   .length = 1,
                   .family = POINT_OUT,
                   .opens = opens,
                   .closes = closes ? bit(POINT_IN) : 0};
}

static Shape tag_or_less_at(Reader* reader, uint32_t index, Context context) {
    may_end_at(reader, index + 1);
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
    const bool behind =
        may_open_after(context.prev) && context.prev != DASH && context.prev != SLASH;
    const bool opens = behind && !is_gap(next) && next != '=' && next != '>' && next != '<';
    const bool closes =
        may_close_after(context.prev) && context.prev != SLASH && may_close_before(next);
    return (Shape){.kind = DELIMITER,
                   .length = 1,
                   .family = POINT_IN,
                   .opens = opens,
                   .closes = closes ? bit(POINT_OUT) : 0};
}

// An arrow before a word, or before a mark that begins one.
static Shape step_at(Reader* reader, uint32_t index, Context context, enum Token token) {
    static const int32_t curly[] = {0x201C, 0};
    may_end_at(reader, index + 1);
    if (!may_open_after(context.prev)) return (Shape){.kind = WORDS, .length = 1};
    uint32_t i = index + 1;
    const int32_t c = at(reader, i);
    if (c == '*' || c == '_')
        i = past_run(reader, i, c);
    else if (is_one_of(c, "\"(~<>", curly))
        ++i;
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
    const bool ties =
        context.prev != AT_START && !is_edge(at(reader, past_blanks(reader, index + 1)));
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
    static const int32_t none[] = {0};
    uint32_t end = past_address_head(reader, index);
    if (!end) return words(reader, index, 1);
    for (uint32_t i = end;; ++i) {
        const int32_t c = at(reader, i);
        if (is_wordly(c) || is_one_of(c, "/#=&+%@", none)) {
            end = i + 1;
            may_end_at(reader, end);
        } else if (!is_one_of(c, "!$'()*,-.:;?[\\]^_|}~", none)) {
            break;
        }
    }
    return (Shape){.kind = WHOLE, .length = end - index, .token = ADDRESS};
}

// Whether a character may begin a mark; where it does not, `shape_at` need not be asked.
static bool is_special(int32_t c, Context context) {
    static const int32_t others[] = {0xB0,   0xAB,   0xBB,   0x201C, 0x201D, 0x201E, 0x2026,
                                     0x203F, 0x2191, 0x2193, 0x2197, 0x2198, 0};
    if (is_ascii_letter(c)) {
        const bool in_word = context.prev == LETTER || context.prev == DIGIT;
        return !in_word && strchr("xfFhHwW", c);
    }
    return is_one_of(c, "\\`[{./()*_~\"<>^:", others);
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

// ---- what comes before

static enum Last last_after(enum Prev class, enum Last last) {
    switch (class) {
    case STOP: return LAST_STOP;
    case DIGIT: return LAST_DIGIT;
    case CLOSER:
    case QUOTE:
        return last == LAST_STOP ? LAST_STOP : LAST_OTHER; // a quote may stand behind the stop
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
    const enum Prev class = class_of(c);
    if (class == BLANK) {
        if (context.prev != AT_START) context.prev = BLANK;
        context.face = 0;
        context.word = 0;
        return context;
    }
    context.face = face_after(context, c);
    context.last = (uint8_t)last_after(class, (enum Last)context.last);
    context.prev = (uint8_t) class;
    return context;
}

static Context after_characters(Context context, Reader* reader, uint32_t index, uint32_t end) {
    for (; index < end; ++index)
        context = after_character(context, at(reader, index));
    return context;
}

static Context behind(Context context, enum Prev prev, enum Last last) {
    return (Context){.prev = (uint8_t)prev, .last = (uint8_t)last, .word = context.word};
}

static Context after_token(Context context, enum Token token) {
    const enum Last last = (enum Last)context.last;
    switch (token) {
    case DIRECTION: return behind(context, BRACKET, last);
    case END_UP:
    case END_DOWN: return behind(context, CLOSER, last);
    case PAUSE: return behind(context, STOP, LAST_STOP);
    case BEAT: return behind(context, OTHER, LAST_BEAT);
    case STEP_UP:
    case STEP_DOWN:
    case TIE: return behind(context, OPENER, LAST_OTHER);
    case BREATH:
    case RESET:
    case STRETCH: return behind(context, OTHER, LAST_OTHER);
    default: return behind(context, CLOSER, LAST_OTHER);
    }
}

static Context after_delimiter(Context context, Shape shape) {
    const enum Last last = context.last == LAST_STOP && shape.closes ? LAST_STOP : LAST_OTHER;
    if (shape.opens == (shape.closes != 0)) return behind(context, OTHER, last);
    return behind(context, shape.opens ? OPENER : CLOSER, last);
}

static Context at_line_begin(Context context) {
    return (Context){.prev = AT_START, .last = context.last};
}

static bool is_delimiter(Shape shape) {
    return shape.kind == DELIMITER && (shape.opens || shape.closes);
}

// The same whether the shape is being cut or only passed in a search: what counts is its shape, not
// what became of it.
static Context after_shape(Context context, Reader* reader, uint32_t index, Shape shape) {
    if (is_delimiter(shape)) return after_delimiter(context, shape);
    if (shape.kind == BRACES) return after_token(context, BRACE_CLOSE);
    if (shape.kind == WHOLE && shape.token != ESCAPE) return after_token(context, shape.token);
    return after_characters(context, reader, index, index + shape.length);
}

#endif
