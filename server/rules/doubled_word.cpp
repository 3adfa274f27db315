// "the the": a slip of the keys that the eye skips and the mouth does not.
#include "base/lists.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// Words that nobody says twice on purpose. "Had had", "that that" and "very very" may be meant, and
// so may "the rock we sat on on Monday".
bool is_never_doubled(std::string_view word) {
    constexpr std::array<std::string_view, 14> words = {"a",    "an",    "and", "but",  "its",
                                                        "my",   "or",    "our", "than", "the",
                                                        "they", "their", "we",  "your"};
    return is_one_of(word, words);
}

// Nothing but blanks between: no comma, no pause, no mark.
bool stand_side_by_side(const ThoughtView& view, Span one, Span other) {
    const std::string_view between = slice(view.source, {one.end, other.begin});
    return !between.empty() && between.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    const auto& words = view.written.words;
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string_view word = view.word(static_cast<int>(i)); // "A A" are letters
        if (!is_never_doubled(word)) continue;
        if (ascii::lower(view.word(static_cast<int>(i - 1))) != word) continue;
        const Span one = words[i - 1].source;
        const Span other = words[i].source;
        if (!stand_side_by_side(view, one, other)) continue;
        Fix fix{.title = fmt::format("Say {} once", quoted(word)),
                .edits = {{{one.end, other.end}, ""}},
                .keeps_every_word = false,
                .preferred = true};
        found.push_back({.span = {one.begin, other.end},
                         .message = fmt::format("{} stands here twice", quoted(word)),
                         .fixes = {std::move(fix)}});
    }
    return found;
}

} // namespace

extern const Rule doubled_word = {
    .id = "doubled-word",
    .severity = Severity::warning,
    .summary = "A small word that stands twice in a row",
    .manual =
        "The eye skips \"the the\" and the mouth says it. "
        "Only words that nobody says twice on purpose are looked at, with nothing between the "
        "two: \"had had\" and \"no, no\" stay as they are.",
    .check = check,
};

} // namespace say::rules
