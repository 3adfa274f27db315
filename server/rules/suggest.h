// What a reader would likely do where nothing is marked yet: lean on a word, breathe, pause.
// docs/phrasing.md tells how places are chosen. Suggestions never touch what is marked, and none is
// left once they have been taken.
#pragma once

#include "rules/rule.h"

#include <string>
#include <string_view>
#include <vector>

namespace say::rules {

struct Suggestion {
    MarkKind kind = MarkKind::stress; // stress, breath or pause
    int word = 0; // the word to lean on; for the others the word they stand before
};

// By word, a pause before the stress on the same one. At most one stress a sentence; the breaths
// that the voice needs, and other pauses four words or more from any.
std::vector<Suggestion> suggest(const ThoughtView& view);
// How well a word would carry the stress of its sentence; below zero where it cannot be marked.
double stress_worth(const ThoughtView& view, int index);

// In the thought; empty only if the place cannot be marked after all.
std::vector<TextEdit> edits_of(const ThoughtView& view, const Suggestion& suggestion);
std::string title_of(const ThoughtView& view, const Suggestion& suggestion);
// Several at once, in the order of `suggest`; light_marks takes them all.
std::vector<TextEdit> edits_of(const ThoughtView& view, const std::vector<Suggestion>& suggestions);
std::vector<TextEdit> light_marks(const ThoughtView& view);

} // namespace say::rules
