// "the the": a slip of the keys that the eye skips and the mouth does not.
#include "base/lists.h"
#include "rules/clause.h"
#include "rules/rule.h"
#include "rules/word_class.h"
#include "rules/wording.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// Words that nobody says twice on purpose. "Had had", "that that" and "very very" may be meant.
bool is_never_doubled(std::string_view word) {
    constexpr std::array<std::string_view, 16> words = {
        "a",   "an",  "and",  "but", "if",   "its",   "my", "or",
        "our", "she", "than", "the", "they", "their", "we", "your"};
    return is_one_of(word, words);
}

// "What it is is a shell", "the man we spoke to to find out": behind such a word a clause may end
// on the first of the two.
bool may_end_a_clause(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 11> openers = {
        "what", "whatever", "where", "who", "whom", "which", "that", "how", "why", "all", "only"};
    constexpr int reach = 20; // words: no real clause needs more
    const Sentence* sentence = sentence_of(view, index);
    const int first = sentence == nullptr ? 0 : sentence->first;
    for (int i = index - 1; i >= std::max(first, index - reach); --i) {
        const std::string word = ascii::lower(view.word(i));
        if (is_one_of(std::string_view(word).substr(0, word.find('\'')), openers)) return true;
    }
    return false;
}

// "The question is is there a way", "the thing is is that it leaks": people talk so.
bool is_talked_so(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 11> before = {
        "alternative", "answer", "fact",  "idea",    "point", "problem",
        "question",    "reason", "thing", "trouble", "truth"};
    constexpr std::array<std::string_view, 3> behind = {"it", "that", "there"};
    return is_one_of(ascii::lower(view.word(index - 1)), before) ||
           is_one_of(ascii::lower(view.word(index + 2)), behind);
}

bool is_time(std::string_view word) {
    constexpr std::array<std::string_view, 17> times = {
        "afternoon", "autumn", "day",  "evening", "fall",    "month", "morning", "night", "season",
        "spring",    "summer", "time", "way",     "weekend", "week",  "winter",  "year"};
    return is_one_of(word, times);
}

// "The rock we sat on on Monday", "we moved in in May": the first may be half of a verb where a
// time follows, or behind a verb that takes such a half, or its object ("fills it in in the form").
bool may_be_half_of_verb(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 49> before = {
        "break",   "broke", "bring",  "brought", "call",  "called", "came",   "carry",  "check",
        "checked", "come",  "comes",  "coming",  "drop",  "fill",   "filled", "fit",    "get",
        "give",    "gave",  "go",     "goes",    "going", "got",    "hand",   "handed", "it",
        "joined",  "let",   "log",    "logged",  "me",    "move",   "moved",  "moving", "put",
        "settled", "sign",  "signed", "stay",    "take",  "takes",  "them",   "took",   "turn",
        "turned",  "us",    "went",   "you"};
    if (is_one_of(ascii::lower(view.word(index - 1)), before)) return true;
    for (int i = index + 2; i <= index + 3; ++i) {
        const std::string_view word = view.word(i);
        if (word.empty()) return false;
        if (ascii::is_upper(word.front()) || is_figure(word) || is_time(word)) return true;
        if (!is_determiner(word)) return false;
    }
    return false;
}

// Whether the word at `index` and the same one behind it are a slip of the keys.
bool is_slip(const ThoughtView& view, int index, std::string_view word) {
    constexpr std::array<std::string_view, 11> ending = {"are", "at", "by",  "for",  "from", "is",
                                                         "of",  "to", "was", "were", "with"};
    if (is_never_doubled(word)) return true;
    if (word == "is" && is_talked_so(view, index)) return false;
    if (is_one_of(word, ending)) return !may_end_a_clause(view, index);
    if (word == "in" || word == "on")
        return !may_end_a_clause(view, index) && !may_be_half_of_verb(view, index);
    return word == "this" && !is_time(view.word(index + 2)); // "we did this this morning"
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
        if (ascii::lower(view.word(static_cast<int>(i - 1))) != word) continue;
        if (!is_slip(view, static_cast<int>(i - 1), word)) continue;
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
        "Only small words that are hardly ever said twice on purpose are looked at, with nothing "
        "between the two: \"had had\" and \"no, no\" stay as they are, and so do \"what it is is "
        "a shell\" and \"we moved in in May\".",
    .check = check,
};

} // namespace say::rules
