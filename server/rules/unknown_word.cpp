// A word that no dictionary knows and that has no pronouncer: its sound and its time are guesses.
// Once a script, where it first stands: that is where the reader stops to think.
#include "base/lists.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <unordered_set>

namespace say::rules {
namespace {

bool has_letters(std::string_view word) {
    std::size_t at = 0;
    int letters = 0;
    while (at < word.size()) {
        const unicode::CodePoint c = unicode::decode(word, at);
        if (unicode::is_digit(c.value)) return false;
        letters += unicode::is_letter(c.value) ? 1 : 0;
        at += c.size;
    }
    return letters > 1;
}

std::string_view word_at(const ThoughtSummary& thought, std::size_t index) {
    return slice(thought.written->plain.text, thought.written->words[index].plain);
}

bool is_silenced(const ThoughtSummary& thought) {
    const auto& allow = thought.written->allow;
    return is_one_of("unknown-word", allow);
}

// Words whose sound the writer gave somewhere in the script: met once, they are known.
std::unordered_set<std::string> taught_words(const ScriptView& script) {
    std::unordered_set<std::string> taught;
    for (const std::uint32_t concerned : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[concerned];
        for (std::size_t i = 0; i < thought.reading->said.size(); ++i) {
            if (thought.reading->said[i].known == Known::writer)
                taught.insert(unicode::fold(word_at(thought, i)));
        }
    }
    return taught;
}

FindingDraft draft_for(const ThoughtSummary& thought, std::size_t index) {
    const Said& said = thought.reading->said[index];
    const Span source = thought.written->words[index].source + thought.begin.value;
    const std::string sound = to_respelling(said.phones.front());
    FindingDraft draft{.span = source,
                       .message = fmt::format("{} is in no dictionary: it is timed as {}, a guess",
                                              quoted(word_at(thought, index)), sound),
                       .fixes = {}};
    if (sound.empty()) return draft;
    // A guess must not become law unread, so a bulk fix leaves it alone.
    draft.fixes.push_back({.title = fmt::format("Add the pronouncer {}", sound),
                           .edits = {{{source.end, source.end}, fmt::format("{{{}}}", sound)}},
                           .keeps_every_word = false,
                           .preferred = true});
    return draft;
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    std::unordered_set<std::string> seen;
    bool read_taught = false;
    for (const std::uint32_t concerned : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[concerned];
        for (std::size_t i = 0; i < thought.reading->said.size(); ++i) {
            const Said& said = thought.reading->said[i];
            if (said.known != Known::guess || said.phones.size() != 1) continue;
            if (said.spoken.front().letters || !has_letters(word_at(thought, i))) continue;
            if (!read_taught) {
                seen = taught_words(script);
                read_taught = true;
            }
            if (is_silenced(thought)) continue;
            if (!seen.insert(unicode::fold(word_at(thought, i))).second) continue;
            found.push_back(draft_for(thought, i));
        }
    }
    return found;
}

bool guesses_or_teaches(const ThoughtView& view) {
    return view.reading.has_guesses || view.reading.has_taught;
}

} // namespace

extern const Rule unknown_word = {
    .id = "unknown-word",
    .severity = Severity::hint,
    .summary = "A word that no dictionary knows and that has no pronouncer",
    .manual =
        "Names and foreign words are what stops a reader in front of a camera. "
        "The dictionary does not hold this one, so its sound is guessed from its letters, and its "
        "time with it. "
        "The fix writes the guess behind the word as a pronouncer, `Patella{puh-TEH-luh}`: read it "
        "aloud and correct it. "
        "Or teach it to the project: the guess is written into `.sayline/words.pls`, where all its "
        "scripts find it. "
        "A word is reported where it first stands, and not at all once it has a pronouncer "
        "anywhere in the script or an entry in the project's word list.",
    .check_script = check,
    .concerns = guesses_or_teaches,
};

} // namespace say::rules
