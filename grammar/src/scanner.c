// The scanner of `.say` scripts: it cuts the whole text into the tokens of grammar.js.
//
// How it decides. A mark is a matter of what stands before it (kept in `Context`) and after it
// (read ahead). `shape_at` names the shape at one place and is used twice: to cut the tokens, and
// to look for the closer of a pair before its opener counts as one. So both always agree on what an
// escape, a direction or a code span hides. Once the closer is known, its distance is kept on a
// small stack, and it needs no second decision.
//
// How it stays fast. A look ahead never leaves the thought, nor goes further than `REACH`. A search
// that ran to the thought's end in vain is remembered by its family of delimiters until the thought
// (or the pair around) ends, so a thousand unclosed marks cost one search. Brackets and parentheses
// balance, which no such memory fits: there the depth is limited, and so each place is passed by a
// handful of failed searches at most.
//
// How it stays honest. Every token depends on nothing but the text it read and the state before it;
// all of the state is serialised, and it is empty (no bytes) at every blank line.

#include "characters.h"
#include "reader.h"
#include "shapes.h"
#include "tokens.h"
#include "tree_sitter/alloc.h"
#include "tree_sitter/parser.h"

#include <string.h>

// ---- closers

typedef struct {
    Shape opener;
    bool word_only; // the closer has to stand before the next blank
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

// `**a *b***`: a run of three closes the inner pair and then ours. Says by how much ours begins
// later.
static enum Found weigh_run(Search* search, Shape shape, uint32_t* offset) {
    const enum Family first = search->opener.family < LINE_1 ? STAR_1 : LINE_1;
    if (shape.family < first || shape.family > first + 2) return GO_ON;
    const uint32_t other = 3 - search->opener.length;
    if (search->opener.length < 3 && shape.closes == bit((enum Family)(first + 2)) &&
        search->other_run) {
        *offset = other;
        return CLOSED;
    }
    if (shape.length == other)
        search->other_run = shape.opens && !(search->other_run && shape.closes);
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
        *closer = search->weak_at; // the next quotation begins: what stood behind the digit was the
                                   // end of ours
        return CLOSED;
    }
    uint32_t offset = 0;
    const enum Found found = family <= LINE_3 ? weigh_run(search, shape, &offset) : GO_ON;
    *closer += offset;
    return found;
}

// Stars also mark part of a word, which the memory of failed searches does not cover.
static bool may_close_in_word(Context context, Shape opener) {
    return opener.family <= STAR_2 && !(context.word & bit(opener.family));
}

// Where the pair that opens at the token's begin closes, or 0. Remembers a search in vain.
static uint32_t find_closer(Reader* reader, State* state, Context context, Shape opener) {
    const bool failed = has_failed(state, opener.family);
    if ((failed || opener.in_word) && !may_close_in_word(context, opener)) return 0;
    Search search = {.opener = opener, .word_only = opener.in_word || failed};
    reader->held = true;
    context = after_shape(context, reader, 0, opener);
    uint32_t index = opener.length;
    while (index < reader->limit) {
        const int32_t c = at(reader, index);
        if (c == END_OF_TEXT) break;
        if (is_gap(c)) {
            if (search.word_only) break;
            search.blank_seen = true;
        }
        if (is_line_end(c)) {
            Line line = line_at(reader, past_line_end(reader, index));
            if (line.kind == LINE_ENDS_THOUGHT || line.kind == LINE_SPEAKS) break;
            index = line.content;
            context = at_line_begin(context);
            if (line.kind == LINE_IS_NOTE)
                while (!is_edge(at(reader, index)))
                    ++index;
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
    if (search.word_only)
        state->context.word |= (uint8_t)bit(opener.family);
    else if (opener.family != PAREN)
        remember_failure(state, opener.family);
    return 0;
}

// ---- tokens inside a thought

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

static enum Token opening(enum Mark mark) {
    return (enum Token)(PAIR_OPEN + 2 * mark);
}
static enum Token closing(enum Mark mark) {
    return (enum Token)(PAIR_OPEN + 2 * mark + 1);
}

static bool close_pair(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    const Level level = state->levels[--state->depth];
    reader->limit = REACH;
    may_end_at(reader, level.length);
    state->context = behind(state->context, CLOSER, LAST_CLOSED);
    return finish(scanner, reader, padding, closing((enum Mark)level.mark));
}

static bool open_pair(Scanner* scanner, Reader* reader, uint32_t padding, Shape shape,
                      uint32_t closer) {
    State* state = &scanner->state;
    const enum Mark mark = (enum Mark)mark_of[shape.family];
    state->context = after_delimiter(state->context, shape);
    state->spoken = true;
    finish(scanner, reader, padding, opening(mark));
    state->levels[state->depth++] = (Level){
        .mark = (uint8_t)mark, .length = (uint8_t)shape.length, .remaining = closer - shape.length};
    return true;
}

static bool is_quote(enum Family family) {
    return mark_of[family] == QUOTED;
}

// Whether the shape ends a run of words.
static bool interrupts(const State* state, Shape shape) {
    if (shape.kind != DELIMITER) return shape.kind != WORDS;
    if (!shape.opens || is_open(state, (enum Mark)mark_of[shape.family])) return false;
    return !has_failed(state, shape.family) || shape.family <= STAR_2; // see `may_close_in_word`
}

static bool finish_words(Scanner* scanner, Reader* reader, uint32_t padding, Context context) {
    scanner->state.context = context;
    scanner->state.spoken = true;
    return finish(scanner, reader, padding, TEXT);
}

// A run of words from the token's begin; what lies before `index` is known to be words, and marked
// as the end. The run ends before the next mark, and before the blanks at a line's end.
static bool scan_words(Scanner* scanner, Reader* reader, uint32_t padding, uint32_t index,
                       Context context) {
    const State* state = &scanner->state;
    Context at_end = context;  // as of the token's end
    bool end_is_marked = true; // the last word's end is the token's
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
            if (stops || (special && !can_end))
                return finish_words(scanner, reader, padding, at_end);
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
    state->spoken =
        state->spoken || shape.token == ESCAPE || shape.token == CODE || shape.token == ADDRESS;
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
    state->context = at_line_begin(state->context);
    return finish(scanner, reader, padding, SOFT_BREAK);
}

static bool scan_end_of_text(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    if (!state->depth) return finish_block(scanner, reader);
    const Level level = state->levels[--state->depth];
    return finish(scanner, reader, padding, closing((enum Mark)level.mark));
}

// A note or a speaker, which only the begin of a line may hold. Returns false if there is none,
// with one character marked as words.
static bool scan_line_begin(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    may_end_at(reader, 1);
    if (is_note(reader, 0)) return scan_note(scanner, reader, padding);
    const uint32_t end = speaker_end(reader, 0);
    if (!end) return false;
    may_end_at(reader, end);
    state->context = (Context){0}; // a thought begins behind it, should the name be declared
    state->spoken = false;
    return finish(scanner, reader, padding, SPEAKER);
}

static bool scan_inline(Scanner* scanner, Reader* reader, uint32_t padding) {
    State* state = &scanner->state;
    if (padding) state->context = after_character(state->context, ' ');
    if (state->depth) {
        const uint32_t remaining = state->levels[state->depth - 1].remaining;
        reader->limit = remaining > padding ? remaining - padding : 0;
        if (!reader->limit && here(reader) != END_OF_TEXT)
            return close_pair(scanner, reader, padding);
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

// ---- tokens of blocks

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
        while (is_blank(here(reader)))
            pass(reader);
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
        while (!is_edge(here(reader)))
            pass(reader);
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

static bool scan_item(Scanner* scanner, Reader* reader, bool numbered) {
    scanner->state = (State){.numbered = numbered};
    return accept(reader, ITEM_MARKER);
}

// A heading, or words that begin with number signs. In a section the heading first ends that, by a
// token without length; so nothing may be marked before the heading is known to be one.
static bool scan_number_signs(Scanner* scanner, Reader* reader, uint32_t padding,
                              const bool* valid) {
    reader->held = valid[SECTION_END];
    const bool heading = is_heading(reader, 0);
    reader->held = false;
    scanner->state = (State){0};
    if (heading) return accept(reader, valid[SECTION_END] ? SECTION_END : HEADING_MARKER);
    if (!valid[DIVIDER]) return false;
    if (!reader->end) mark_end(reader);
    return scan_words_behind(scanner, reader, padding,
                             (Shape){.kind = WORDS, .length = reader->end});
}

static bool scan_block_edge(Scanner* scanner, Reader* reader, uint32_t padding, const bool* valid) {
    const bool at_end = here(reader) == END_OF_TEXT;
    if (!at_end || padding) return valid[BLANK_LINES] && scan_blank_lines(scanner, reader);
    scanner->state = (State){0};
    return valid[SECTION_END] && accept(reader, SECTION_END);
}

// The first token of a line that stands in no thought yet.
static bool scan_block(Scanner* scanner, Reader* reader, uint32_t padding, const bool* valid) {
    State* state = &scanner->state;
    const bool numbered = state->numbered;
    const int32_t c = at(reader, 0);
    if (is_edge(c)) return scan_block_edge(scanner, reader, padding, valid);
    if (c == '#') return scan_number_signs(scanner, reader, padding, valid);
    if (!valid[DIVIDER]) return false;
    may_end_at(reader, 1);
    if (is_note(reader, 0)) return scan_block_note(scanner, reader, padding);

    *state = (State){0};
    if (is_dash_item(reader, 0)) return scan_item(scanner, reader, false);
    if (rule_line_end(reader, 0)) return accept(reader, DIVIDER);
    if (number_item_end(reader, 0, numbered)) return scan_item(scanner, reader, true);
    if (reader->end > 1) { // almost a marker
        return scan_words_behind(scanner, reader, padding,
                                 (Shape){.kind = WORDS, .length = reader->end});
    }
    return scan_inline(scanner, reader, padding);
}

// ---- headings

// The rest of `1:30` or `1:02:30`.
static uint32_t past_clock(Reader* reader, uint32_t index) {
    for (unsigned parts = 0; parts < 2 && at(reader, index) == ':'; ++parts) {
        if (!is_digit(at(reader, index + 1)) || !is_digit(at(reader, index + 2))) return 0;
        index += 3;
    }
    return index;
}

// Seconds or minutes, as a letter or a word; a blank may stand before it, but not before `m`, which
// alone is a length. Says where it ends, or 0.
static uint32_t past_unit(Reader* reader, uint32_t index, const char* const* words) {
    const uint32_t letter = past_letters(reader, index, words[0]);
    index = past_blanks(reader, index);
    for (unsigned i = 1; words[i]; ++i) {
        const uint32_t end = past_letters(reader, index, words[i]);
        if (end && !is_wordly(at(reader, end))) return end;
    }
    return letter;
}

// `1:30`, `:30`, `2m30s`, `2m`, `45s`, `45 secs`, `2 min 30 sec`; says where it ends, or 0.
static uint32_t past_time(Reader* reader, uint32_t index) {
    static const char* const seconds[] = {"s", "s", "sec", "secs", "second", "seconds", 0};
    static const char* const minutes[] = {"m", "min", "mins", "minute", "minutes", 0};
    const uint32_t begin = index;
    while (is_digit(at(reader, index)) && index - begin < 4)
        ++index;
    if (at(reader, index) == ':') return past_clock(reader, index);
    if (index == begin) return 0;
    const uint32_t whole = past_unit(reader, index, seconds);
    if (whole) return whole;
    index = past_unit(reader, index, minutes);
    if (!index) return 0;
    const uint32_t rest = past_blanks(reader, index);
    uint32_t end = rest;
    while (is_digit(at(reader, end)) && end - rest < 2)
        ++end;
    return end == rest ? index : past_unit(reader, end, seconds);
}

// A target in parentheses, which only the end of the line may hold. Says the index of the closing
// one, or 0.
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

// The name goes up to the line's end or to a target. A parenthesis that is no target has been read
// past: should a second one stand in the same few characters, it is part of the name.
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

// ---- the header

static bool is_key_character(int32_t c) {
    return is_ascii_letter(c) || is_digit(c) || c == '-' || c == '_' || c == ' ';
}

// `key: value`, from the line's first character on. A key of one word needs no blank behind its
// colon, unless it begins a web address.
static bool is_key_line(Reader* reader, uint32_t index) {
    if (!is_ascii_letter(at(reader, index))) return false;
    bool one_word = true;
    for (; is_key_character(at(reader, index)); ++index)
        one_word = one_word && at(reader, index) != ' ';
    if (at(reader, index) != ':') return false;
    const int32_t behind = at(reader, index + 1);
    return is_space(behind) || is_edge(behind) || (one_word && behind != '/');
}

// Whether a key or the closing line follows, perhaps behind notes, from the line at `index` on.
// Else the header has no more lines.
static bool header_goes_on(Reader* reader, uint32_t index) {
    const bool held = reader->held;
    reader->held = true;
    while (is_note(reader, index)) {
        while (!is_edge(at(reader, index)))
            ++index;
        index = past_line_end(reader, index);
    }
    const bool goes_on = is_key_line(reader, index) || rule_line_end(reader, index);
    reader->held = held;
    return goes_on;
}

// At the very top three hyphens begin a header, if there is anything in it; else they divide.
static bool scan_header_open(Reader* reader, uint32_t end) {
    const bool goes_on = header_goes_on(reader, past_line_end(reader, end));
    return accept(reader, goes_on ? HEADER_OPEN : DIVIDER);
}

// The line was seen to be a key, a note or the closing one before the last one ended.
static bool scan_header_line(Scanner* scanner, Reader* reader, uint32_t padding) {
    may_end_at(reader, 1);
    if (is_note(reader, 0)) return scan_note(scanner, reader, padding);
    if (rule_line_end(reader, 0)) return accept(reader, HEADER_CLOSE);
    move_window(reader);
    bool behind_blank = false;
    for (int32_t c = here(reader); c != ':' && !is_edge(c); c = here(reader)) {
        const bool blank = is_blank(c);
        if (blank && !behind_blank) mark_end(reader);
        behind_blank = blank;
        pass(reader);
    }
    if (!behind_blank) mark_end(reader);
    return accept(reader, HEADER_KEY);
}

static bool scan_header_part(Scanner* scanner, Reader* reader, const bool* valid) {
    if (valid[HEADER_COLON]) {
        pass(reader);
        mark_end(reader);
        return accept(reader, HEADER_COLON);
    }
    if (!is_edge(here(reader))) {
        if (!valid[HEADER_VALUE]) return false;
        scan_line(reader);
        return accept(reader, HEADER_VALUE);
    }
    const bool at_end = here(reader) == END_OF_TEXT;
    const uint32_t line = at_end ? 0 : past_line_end(reader, 0);
    may_end_at(reader, line);
    scanner->state = (State){0};
    return accept(reader, !at_end && header_goes_on(reader, line) ? BLOCK_END : HEADER_END);
}

// ---- choosing by what is valid

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
    if (valid[HEADER_OPEN] && !padding && at(&reader, 0) == '-') {
        may_end_at(&reader, 1);
        const uint32_t end = rule_line_end(&reader, 0);
        if (end) return scan_header_open(&reader, end);
    }
    if (valid[DIVIDER] || valid[SECTION_END] || valid[HEADING_MARKER])
        return scan_block(scanner, &reader, padding, valid);
    if (valid[SOFT_BREAK]) return scan_inline(scanner, &reader, padding);
    if (valid[HEADING_NAME] || valid[TARGET_OPEN] || valid[HEADING_TARGET] || valid[TARGET_CLOSE])
        return scan_heading_part(scanner, &reader, valid);
    if (valid[HEADER_KEY]) return scan_header_line(scanner, &reader, padding);
    if (valid[HEADER_COLON] || valid[HEADER_VALUE] || valid[HEADER_END])
        return scan_header_part(scanner, &reader, valid);
    return valid[BLOCK_END] && scan_block_end(scanner, &reader);
}

// ---- what tree-sitter calls

void* tree_sitter_sayline_external_scanner_create(void) {
    return ts_calloc(1, sizeof(Scanner));
}

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
    bytes[size++] = (uint8_t)(state->spoken | state->numbered << 1 | state->lone_notes << 2 |
                              context.face << 3 | context.word << 5);
    bytes[size++] = (uint8_t)(context.prev | context.last << 4);
    bytes[size++] = (uint8_t)(state->failed & 0xFF);
    bytes[size++] = (uint8_t)(state->failed >> 8);
    for (unsigned i = 0; i < state->depth; ++i) {
        const Level* level = &state->levels[i];
        bytes[size++] = level->mark;
        bytes[size++] = level->length;
        bytes[size++] = (uint8_t)(level->failed & 0xFF);
        bytes[size++] = (uint8_t)(level->failed >> 8);
        for (unsigned shift = 0; shift < 32; shift += 8)
            bytes[size++] = (uint8_t)(level->remaining >> shift);
    }
    if (size == 4 && !bytes[0] && !bytes[1] && !bytes[2] && !bytes[3]) return 0;
    memcpy(buffer, bytes, size);
    return size;
}

void tree_sitter_sayline_external_scanner_deserialize(void* payload, const char* buffer,
                                                      unsigned length) {
    State* state = &((Scanner*)payload)->state;
    *state = (State){0};
    if (length < 4) return;
    const uint8_t* bytes = (const uint8_t*)buffer;
    state->spoken = bytes[0] & 1;
    state->numbered = bytes[0] >> 1 & 1;
    state->lone_notes = bytes[0] >> 2 & 1;
    state->context = (Context){.prev = bytes[1] & 0xF,
                               .last = bytes[1] >> 4,
                               .face = bytes[0] >> 3 & 3,
                               .word = bytes[0] >> 5 & 3};
    state->failed = (uint16_t)(bytes[2] | bytes[3] << 8);
    for (unsigned i = 4; i + 8 <= length && state->depth < MARK_COUNT; i += 8) {
        Level* level = &state->levels[state->depth++];
        level->mark = bytes[i];
        level->length = bytes[i + 1];
        level->failed = (uint16_t)(bytes[i + 2] | bytes[i + 3] << 8);
        for (unsigned byte = 0; byte < 4; ++byte)
            level->remaining |= (uint32_t)bytes[i + 4 + byte] << (8 * byte);
    }
}

bool tree_sitter_sayline_external_scanner_scan(void* payload, TSLexer* lexer,
                                               const bool* valid_symbols) {
    if (valid_symbols[ERROR_SENTINEL]) return false;
    return scan(payload, lexer, valid_symbols);
}
