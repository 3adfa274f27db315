// Many consonants with no vowel between where two words meet: one of them is lost or the tongue
// sticks.
#include "rules/join.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const int index : open_joins(view, piles_consonants)) {
        const Cluster cluster = cluster_of(join_before(view, index));
        found.push_back({.span = words_span(view, index - 1, index),
                         .message = fmt::format(
                             "{} consonants meet with no vowel between: {} in {}, then {} "
                             "in {}",
                             cluster.count, spelled(cluster.left), quoted(view.word(index - 1)),
                             spelled(cluster.right), quoted(view.word(index))),
                         .fixes = join_fixes(view, index, piles_consonants)});
    }
    return found;
}

} // namespace

extern const Rule cluster_pile_up = {
    .id = "cluster-pile-up",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "Many consonants where two words meet",
    .manual =
        "Where a word ends in several consonants and the next begins with more, speakers drop one, "
        "most often a t or d between two others (Guy 1980, from memory): \"texts stretched\" has "
        "six. "
        "Reported are joins of content words with five consonants or more, or with four that are "
        "all stops, fricatives or affricates, three of them in one word and none a t or d that is "
        "dropped without harm (\"next came\"); the same consonant on "
        "both "
        "sides is held and counts once, and an r behind its vowel is not counted. "
        "The numbers are our choice, made on ordinary talk. "
        "The fixes are a moment or a breath between the two words, a slow mark over both, or a "
        "plainer word where the plain-words table has one that does not clash. "
        "A pause, a slow mark or a tongue-twister over the same words keeps it quiet.",
    .why = "Each of these consonants needs a movement of its own, and no vowel gives the tongue "
           "time for it.",
    .check = check,
};

} // namespace say::rules
