// What a writer leaves in the place of words that are still to come: at the camera it is read out.
#include "rules/rule.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// "TK", to come, is the press's; the rest are everybody's. Written in capitals, as they are meant
// to be seen. "TBA" and the like may be said.
bool stands_for_words(std::string_view word) {
    constexpr std::array<std::string_view, 4> signs = {"TK", "TKTK", "TODO", "FIXME"};
    const bool crosses = word.size() > 2 && word.find_first_not_of('X') == std::string_view::npos;
    return crosses || std::find(signs.begin(), signs.end(), word) != signs.end();
}

// "Super Bowl XXX": a numeral behind a name.
bool is_numeral(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    if (word != "XXX" || index == 0) return false;
    const std::string_view before = view.word(index - 1);
    return before.size() > 1 && before[0] >= 'A' && before[0] <= 'Z' && before[1] >= 'a' &&
           before[1] <= 'z';
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (int i = 0; i < static_cast<int>(view.written.words.size()); ++i) {
        const std::string_view word = view.word(i);
        if (!stands_for_words(word) || is_numeral(view, i)) continue;
        found.push_back({.span = view.written.words[static_cast<std::size_t>(i)].source,
                         .message = fmt::format("{} stands for words still to come, and would be "
                                                "read out",
                                                quoted(word)),
                         .fixes = {}});
    }
    return found;
}

} // namespace

extern const Rule words_to_come = {
    .id = "words-to-come",
    .severity = Severity::warning,
    .stage = Stage::mark,
    .summary = "A sign in the place of words that are still to come",
    .manual = "TK, TODO, XXX and the like stand where a name or a figure is missing. "
              "While drafting they are no trouble; a script that is marked or read should have the "
              "words. "
              "What is only a reminder belongs in a note: a line that begins with `% `.",
    .check = check,
};

} // namespace say::rules
