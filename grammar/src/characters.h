// What a character is to a mark beside it.
#ifndef SAYLINE_CHARACTERS_H_
#define SAYLINE_CHARACTERS_H_

#include "tokens.h"

#include <stdbool.h>
#include <stdint.h>
#include <string.h>

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
    STOP,    // . ! ? and the ellipsis
    BRACKET, // a direction: it is not spoken, so a mark may begin right behind it
    OTHER,
};

// The last thing that was no blank.
enum Last { LAST_NONE, LAST_STOP, LAST_DIGIT, LAST_BEAT, LAST_CLOSED, LAST_OTHER };

static bool is_line_end(int32_t c) {
    return c == '\n' || c == '\r';
}

static bool is_edge(int32_t c) {
    return c == END_OF_TEXT || is_line_end(c);
}

// Unicode White_Space but for the line ends of a script.
static bool is_blank(int32_t c) {
    if (c < 0x80) return c == ' ' || c == '\t' || c == 0x0B || c == 0x0C;
    return c == 0x85 || c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x2028 ||
           c == 0x2029 || c == 0x202F || c == 0x205F || c == 0x3000;
}

static bool is_gap(int32_t c) {
    return is_edge(c) || is_blank(c);
}

static bool is_digit(int32_t c) {
    return c >= '0' && c <= '9';
}

static bool is_ascii_letter(int32_t c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_ascii_punctuation(int32_t c) {
    return (c >= '!' && c <= '/') || (c >= ':' && c <= '@') || (c >= '[' && c <= '`') ||
           (c >= '{' && c <= '~');
}

// Capitals of the Latin, Greek and Cyrillic blocks that names are written in.
static bool is_upper(int32_t c) {
    if (c < 0x80) return c >= 'A' && c <= 'Z';
    if (c < 0x100) return c >= 0xC0 && c <= 0xDE && c != 0xD7;
    if (c <= 0x137 || (c >= 0x14A && c <= 0x177)) return c % 2 == 0;
    if (c <= 0x148 || (c >= 0x179 && c <= 0x17E)) return c % 2 == 1;
    return c == 0x178 || (c >= 0x386 && c <= 0x3AB && c != 0x387 && c != 0x390) ||
           (c >= 0x400 && c <= 0x42F);
}

// Ignored inside words: soft hyphen, joiners, direction marks, variation selectors.
static bool is_invisible(int32_t c) {
    return c == 0xAD || (c >= 0x200B && c <= 0x200F) || c == 0x2060 || c == 0xFEFF ||
           (c >= 0xFE00 && c <= 0xFE0F);
}

// Whether `c` is one of the ASCII characters, or one of the others (a list that ends with 0).
static bool is_one_of(int32_t c, const char* ascii, const int32_t* others) {
    if (c > 0 && c < 0x80) return strchr(ascii, c) != NULL;
    for (; *others; ++others)
        if (c == *others) return true;
    return false;
}

static enum Prev ascii_class(int32_t c) {
    static const int32_t none[] = {0};
    if (is_ascii_letter(c)) return LETTER;
    if (is_digit(c)) return DIGIT;
    if (is_blank(c)) return BLANK;
    if (is_one_of(c, "([{", none)) return OPENER;
    if (is_one_of(c, ")]}", none)) return CLOSER;
    if (is_one_of(c, ".!?", none)) return STOP;
    if (is_one_of(c, "\"'", none)) return QUOTE;
    if (c == '-') return DASH;
    return c == '/' ? SLASH : OTHER;
}

static enum Prev class_of(int32_t c) {
    static const int32_t openers[] = {0xAB, 0x201C, 0x201E, 0xA1, 0xBF, 0};      // « “ „ ¡ ¿
    static const int32_t closers[] = {0xBB, 0x201D, 0};                          // » ”
    static const int32_t quotes[] = {0x2018, 0x2019, 0x201A, 0x2039, 0x203A, 0}; // ‘ ’ ‚ ‹ ›
    static const int32_t letters[] = {0xAA, 0xB5, 0xBA, 0};                      // ª µ º
    static const int32_t signs[][2] = {
        {0x80, 0xBF},     {0xD7, 0xD7},       {0xF7, 0xF7},     // Latin-1
        {0x2000, 0x2BFF},                                       // punctuation, signs, arrows
        {0x3001, 0x303F}, {0xFE00, 0xFE6F},   {0xFF00, 0xFFEF}, // CJK, small and full-width forms
        {0xE000, 0xF8FF}, {0x1F000, 0x1FFFF},                   // private use, emoji
    };
    if (c < 0) return OTHER;
    if (c < 0x80) return ascii_class(c);
    if (is_blank(c)) return BLANK;
    if (c >= 0x2010 && c <= 0x2015) return DASH;
    if (c == 0x2026) return STOP;
    if (is_one_of(c, "", openers)) return OPENER;
    if (is_one_of(c, "", closers)) return CLOSER;
    if (is_one_of(c, "", quotes)) return QUOTE;
    if (is_one_of(c, "", letters)) return LETTER;
    for (unsigned i = 0; i < sizeof signs / sizeof *signs; ++i)
        if (c >= signs[i][0] && c <= signs[i][1]) return OTHER;
    return LETTER;
}

static bool is_wordly(int32_t c) {
    const enum Prev class = class_of(c);
    return class == LETTER || class == DIGIT;
}

// A pair may close before these: the mirror of `may_open_after`.
static bool may_close_before(int32_t c) {
    static const int32_t others[] = {0xB0,   0x203F, 0x2197,
                                     0x2198, 0x201C, 0}; // ° ‿ ↗ ↘, “ after a low quote
    if (is_gap(c) || is_one_of(c, "*_~<>{[\\,;:", others)) return true;
    const enum Prev class = class_of(c);
    return class == STOP || class == CLOSER || class == QUOTE || class == DASH || class == SLASH;
}

static bool may_open_after(enum Prev prev) {
    return prev == AT_START || prev == BLANK || prev == OPENER || prev == DASH || prev == SLASH ||
           prev == QUOTE || prev == BRACKET;
}

// No blank on the inner side of a closer.
static bool may_close_after(enum Prev prev) {
    return prev != AT_START && prev != BLANK && prev != OPENER;
}

#endif
