// A script as a reader sees it, for pages, pictures and other programs: each thought is a row of
// words, signs, pauses and directions with their times, and no mark is left in its written shape.
#pragma once

#include "engine/analysis.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace say {

// Times are seconds from the thought's start. Views point into the analysis, which must outlive
// what is drawn.
struct DrawnWord {
    std::string_view text; // without the punctuation around it
    Seconds at{0};
    Seconds seconds{0};
    std::vector<MarkKind> marks; // over it, outer first, then those that are its own
    std::string_view sound;      // a pronouncer's, on the last word that it covers
    std::string_view instead;    // what is said instead of it
    int syllables = 0;
};

struct DrawnText {
    std::string_view text; // signs and blanks between words
};

struct DrawnPause {
    MarkKind kind = MarkKind::pause;
    Seconds at{0};
    Seconds seconds{0}; // what the mark adds to the punctuation's pause there
};

struct DrawnDirection {
    std::string_view text;
    Seconds at{0};
    Seconds seconds{0}; // 0: nothing is held
};

// Where the words of a pair begin and end: brackets and quotation marks are drawn there.
struct DrawnEdge {
    MarkKind kind = MarkKind::aside;
    bool opens = true;
};

using DrawnPart = std::variant<DrawnWord, DrawnText, DrawnPause, DrawnDirection, DrawnEdge>;

// The marks of a word: those over it, outer first, then those that are its own.
std::vector<const Mark*> marks_of(const Thought& thought, int word);

// In the order of the script. Notes are not in it.
std::vector<DrawnPart> drawn(const Thought& thought);

// What stands before a list item: "-" or "3."; empty for anything else.
std::string_view list_marker(const Analysis& analysis, const Placed& placed);
// "paragraph", "item", or "silence" for what has no words.
std::string_view drawn_kind(const Placed& placed);

} // namespace say
