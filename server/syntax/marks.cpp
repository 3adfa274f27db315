// The table of marks. A new mark is a row here, a node in the grammar and a corpus file.
#include "syntax/marks.h"

namespace say {
namespace {

constexpr std::string_view hand = "hand practice";
constexpr std::string_view jefferson = "Jefferson transcription";

constexpr std::array<MarkRow, 23> rows{{
    {MarkKind::pause, "pause", "pause", MarkShape::standing, "...", hand,
     "pauses or slows, the thought still open", "0.6 s"},
    {MarkKind::beat, "beat", "beat", MarkShape::standing, "xx", hand, "holds one second an x",
     "1 s an x"},
    {MarkKind::breath, "breath", "breath", MarkShape::standing, "/",
     "hand practice, IPA minor group", "catches a breath", "0.35 s"},
    {MarkKind::reset, "reset", "reset", MarkShape::standing, "//", "hand practice, IPA major group",
     "comes to a full stop and starts anew", "0.7 s"},
    {MarkKind::micropause, "micropause", "micropause", MarkShape::standing, "(.)", jefferson,
     "barely stops", "0.2 s"},
    {MarkKind::timed_pause, "timed pause", "timed_pause", MarkShape::standing, "(1.5)", jefferson,
     "holds that many seconds", "as written"},
    {MarkKind::stress, "stress", "stress", MarkShape::pair, "* *", hand, "leans on it",
     "the word at 0.9 of its rate"},
    {MarkKind::heavy_stress, "heavy stress", "heavy_stress", MarkShape::pair, "** **", hand,
     "lands on it", "the word at 0.8 of its rate, 0.1 s before it"},
    {MarkKind::punch, "punch", "", MarkShape::word, "WORD",
     "hand practice, Jefferson transcription", "hits it", "no time of its own"},
    {MarkKind::soft, "soft", "soft", MarkShape::pair, "~ ~",
     "hand practice, Jefferson transcription", "plays it down", "no time of its own"},
    {MarkKind::aside, "aside", "aside", MarkShape::pair, "( )", hand,
     "keeps the words together in one run", "a comma's pause on each side"},
    {MarkKind::quoted, "quoted", "quoted", MarkShape::pair, "\" \"", hand, "changes the voice",
     "no time of its own"},
    {MarkKind::quick, "quick", "quick", MarkShape::pair, "> <", jefferson, "speeds up",
     "1.2 times the rate"},
    {MarkKind::slow, "slow", "slow", MarkShape::pair, "< >", jefferson, "slows down",
     "0.8 times the rate"},
    {MarkKind::step_up, "step up", "step_up", MarkShape::prefix, "↑",
     "X-SAMPA upstep, Jefferson transcription", "steps up in pitch", "no time of its own"},
    {MarkKind::step_down, "step down", "step_down", MarkShape::prefix, "↓", jefferson,
     "steps down in pitch", "no time of its own"},
    {MarkKind::end_up, "end up", "end_up", MarkShape::suffix, "↗", "IPA global rise",
     "lets the tune rise at the end", "no time of its own"},
    {MarkKind::end_down, "end down", "end_down", MarkShape::suffix, "↘", "IPA global fall",
     "lets the tune fall at the end", "no time of its own"},
    {MarkKind::stretch, "stretch", "stretch", MarkShape::suffix, "::", jefferson,
     "draws the sound out", "0.15 s a colon"},
    {MarkKind::tie, "tie", "tie", MarkShape::standing, "‿", "IPA linking mark, hand practice",
     "runs the words together", "no pause there"},
    {MarkKind::pronouncer, "pronouncer", "pronouncer", MarkShape::suffix, "{ }",
     "newsroom practice, IPA", "says the word before it so", "timed by it"},
    {MarkKind::say_as, "say as", "say_as", MarkShape::suffix, "{=  }", "our own",
     "says these words instead", "timed by it"},
    {MarkKind::direction, "direction", "direction", MarkShape::block, "[ ]", hand,
     "does this and does not say it", "the duration it ends with, if any"},
}};

} // namespace

std::span<const MarkRow> mark_rows() {
    return rows;
}

const MarkRow& row_of(MarkKind kind) {
    return rows[static_cast<std::size_t>(kind)];
}

} // namespace say
