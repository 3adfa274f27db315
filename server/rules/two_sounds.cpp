// A word of one spelling and two sounds ("lead", "bow") where the words around do not say which is
// meant. Whoever reads it cold may say the wrong one.
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "speech/homographs.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <array>
#include <string>

namespace say::rules {
namespace {

// In capitals where it is of one syllable: that is how a respelling stands out of the line.
std::string respelled(const HomographReading& reading) {
    const Phones phones = from_arpabet(reading.arpabet).value_or(Phones());
    std::string text = to_respelling(phones);
    if (syllable_count(phones) > 1) return text;
    for (char& c : text) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    return text;
}

FindingDraft draft_for(const ThoughtView& view, int index, const Homograph& homograph) {
    const Span word = view.written.words[static_cast<std::size_t>(index)].source;
    const auto usual = static_cast<std::size_t>(homograph.usual);
    const HomographReading& timed = homograph.readings[usual];
    const HomographReading& other = homograph.readings[1 - usual];
    FindingDraft draft{.span = word,
                       .message = fmt::format("{} may be said {} ({}) or {} ({}); nothing near it "
                                              "says which",
                                              quoted(view.word(index)), respelled(timed),
                                              timed.gloss, respelled(other), other.gloss),
                       .fixes = {},
                       .readings = {respelled(timed), respelled(other)}};
    for (const HomographReading* reading : {&timed, &other}) {
        draft.fixes.push_back(
            {.title = fmt::format("Say {}: {}", respelled(*reading), reading->gloss),
             .edits = {{{word.end, word.end}, fmt::format("{{{}}}", respelled(*reading))}},
             // Which is meant is for the writer to say: no bulk fix answers for them.
             .keeps_every_word = false});
    }
    return draft;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (std::size_t i = 0; i < view.reading.said.size(); ++i) {
        const Said& said = view.reading.said[i];
        if (!said.undecided) continue;
        const int index = static_cast<int>(i);
        const Homograph* homograph = find_homograph(said.spoken.front().text);
        if (homograph == nullptr || !homograph->asks) continue;
        if (mark_over(view, index, MarkKind::say_as) != nullptr) continue;
        found.push_back(draft_for(view, index, *homograph));
    }
    return found;
}

} // namespace

extern const Rule two_sounds = {
    .id = "two-sounds",
    .severity = Severity::hint,
    .summary = "A word of two sounds that its neighbours do not tell apart",
    .manual =
        "\"Lead\" is a metal or goes first, and \"close\" is near or shuts: one spelling, two "
        "sounds. "
        "Mostly the words around say which is meant, and then nothing is reported; the hover shows "
        "the sound that was chosen. "
        "Where they do not, and both are common, a reader who sees the line cold may say the wrong "
        "one. "
        "The fixes write a pronouncer behind the word, `lead{LEED}`, one for each sound. "
        "A bulk fix leaves these alone: only the writer knows which is meant.",
    .check = check,
};

} // namespace say::rules
