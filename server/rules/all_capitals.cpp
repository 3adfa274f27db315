// A thought all in capitals: no word stands out, and initials cannot be told from words.
#include "rules/rule.h"
#include "rules/split.h"
#include "speech/spoken.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>

namespace say::rules {
namespace {

bool is_capitals(std::string_view word) {
    int upper = 0;
    for (char c : word) {
        if (ascii::is_lower(c) || ascii::is_high(c)) return false;
        upper += ascii::is_upper(c) ? 1 : 0;
    }
    return upper > 0;
}

// Initials and "I" keep their capitals.
bool is_ordinary(std::string_view word) {
    return word.size() > 1 ? capitals_kind(word) == Capitals::ordinary : word != "I";
}

bool is_shouted(const ThoughtView& view) {
    int ordinary = 0;
    for (int i = 0; i < static_cast<int>(view.written.words.size()); ++i) {
        const std::string_view word = view.word(i);
        const bool figure = std::none_of(word.begin(), word.end(), ascii::is_letter);
        if (figure) continue;
        if (!is_capitals(word)) return false;
        ordinary += word.size() > 1 && is_ordinary(word) ? 1 : 0;
    }
    return ordinary >= 3;
}

bool opens_sentence(const ThoughtView& view, int index) {
    return std::any_of(view.reading.sentences.begin(), view.reading.sentences.end(),
                       [&](const Sentence& sentence) { return sentence.first == index; });
}

Fix lower_case(const ThoughtView& view) {
    Fix fix{.title = "Write it in lower case", .edits = {}, .preferred = true};
    for (int i = 0; i < static_cast<int>(view.written.words.size()); ++i) {
        if (!is_ordinary(view.word(i))) continue;
        const Span span = view.written.words[static_cast<std::size_t>(i)].source;
        const std::string_view written = slice(view.source, span);
        std::string lower = ascii::lower(written);
        if (opens_sentence(view, i)) lower = unicode::to_upper_first(lower);
        if (lower != written) fix.edits.push_back({span, std::move(lower)});
    }
    return fix;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    if (!is_shouted(view)) return {};
    const auto& words = view.written.words;
    return {{.span = {words.front().source.begin, words.back().source.end},
             .message = "all in capitals: no word stands out, and initials are read as words",
             .fixes = {lower_case(view)}}};
}

} // namespace

extern const Rule all_capitals = {
    .id = "all-capitals",
    .severity = Severity::hint,
    .summary = "A thought all in capitals",
    .manual =
        "A word in capitals among others is hit hard; where every word is in capitals, none is. "
        "Capitals are also slower to read at a distance, and initials drown in them. "
        "The fix writes the thought in lower case, but for initials, \"I\" and the first letter of "
        "each sentence; names need their capital back by hand.",
    .check = check,
};

} // namespace say::rules
