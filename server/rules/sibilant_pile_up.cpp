// Hissing sounds crowded around the join of two words: s is drawn into sh, and the listener hears
// one long hiss.
#include "rules/join.h"
#include "rules/wording.h"
#include "speech/sound_letters.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::string list_of(const std::vector<Sound>& sounds) {
    std::string text;
    for (const Sound sound : sounds) {
        if (!text.empty()) text += ", ";
        text += letters_of(sound);
    }
    return text;
}

// A cluster speaks of its join first.
bool is_pile(const Join& join) {
    return piles_sibilants(join) && !piles_consonants(join);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const int index : open_joins(view, is_pile)) {
        const auto near = sibilants_near(join_before(view, index));
        found.push_back({.span = words_span(view, index - 1, index),
                         .message = fmt::format(
                             "{} hissing sounds ({}) crowd where {} runs into {}", near.size(),
                             list_of(near), quoted(view.word(index - 1)), quoted(view.word(index))),
                         .fixes = join_fixes(view, index, piles_sibilants)});
    }
    return found;
}

} // namespace

extern const Rule sibilant_pile_up = {
    .id = "sibilant-pile-up",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "Hissing sounds crowded where two words meet",
    .manual =
        "An s or z before an sh is easily said as sh, more so in quick talk (Holst and Nolan 1995, "
        "from memory), and a run of hisses is harsh in a microphone (common practice, no source). "
        "Reported are content words that meet in a sibilant (s, z, sh, zh, ch, j) on both sides, "
        "with at most one consonant between, when three sibilants stand within four sounds of the "
        "join and s or z meets sh or zh among them (\"sixth sheikh's\"), or when there are four of "
        "any kind (\"six sisters\"). "
        "The numbers are our choice, made on ordinary talk. "
        "The fixes are a moment or a breath between the two words, a slow mark over both, or a "
        "plainer word where the plain-words table has one that does not hiss. "
        "A pause, a slow mark or a tongue-twister over the same words keeps it quiet.",
    .why = "One hiss is drawn into the next, and a microphone makes it harsher.",
    .check = check,
};

} // namespace say::rules
