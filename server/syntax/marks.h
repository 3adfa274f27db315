// The marks of the format: one row each, read by completion, hover, rules, time and the manual.
#pragma once

#include "base/units.h"

#include <array>
#include <optional>
#include <span>
#include <string_view>

namespace say {

// The order is that of docs/format.md; names are frozen once released.
enum class MarkKind {
    pause,
    beat,
    breath,
    reset,
    micropause,
    timed_pause,
    stress,
    heavy_stress,
    punch,
    soft,
    aside,
    quoted,
    quick,
    slow,
    step_up,
    step_down,
    end_up,
    end_down,
    stretch,
    tie,
    pronouncer,
    say_as,
    direction,
};

enum class MarkShape {
    standing, // stands between words: ... x / // (.) (1.5)
    pair,     // encloses words: *words*
    prefix,   // before a word: ^word
    suffix,   // after a word or inside it: so::, word{...}, an arrow
    word,     // the word itself: a punch
    block,    // [ ... ]
};

struct MarkRow {
    MarkKind kind;
    std::string_view name; // as in the table of docs/format.md: "heavy stress"
    std::string_view node; // the grammar's node: "heavy_stress"; empty if the builder decides
    MarkShape shape;
    std::string_view written; // what completion inserts; the words go in place of the blank
    std::string_view origin;  // where the mark comes from
    std::string_view does;    // what the reader does, as a sentence's predicate
    std::string_view cost;    // the time it takes, in words
};

std::span<const MarkRow> mark_rows();
const MarkRow& row_of(MarkKind kind);

// What makes a word stand out.
constexpr bool is_stress(MarkKind kind) {
    return kind == MarkKind::stress || kind == MarkKind::heavy_stress || kind == MarkKind::punch;
}

constexpr bool is_pause(MarkKind kind) {
    return kind == MarkKind::pause || kind == MarkKind::beat || kind == MarkKind::breath ||
           kind == MarkKind::reset || kind == MarkKind::micropause || kind == MarkKind::timed_pause;
}

} // namespace say
