// A mark that opens and is never closed in its thought: it stays on the page as a plain sign and
// does nothing.
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

enum class Reach { word, clause, quote, direction, none };

struct Opener {
    std::string_view open;
    std::string_view close;
    std::string_view name;
    Reach reach; // how far the writer is likely to have meant it
};

constexpr std::array<Opener, 14> openers = {{
    {"*", "*", "a stress", Reach::word},
    {"_", "_", "a stress", Reach::word},
    {"**", "**", "a heavy stress", Reach::word},
    {"__", "__", "a heavy stress", Reach::word},
    {"~", "~", "a soft stretch", Reach::word},
    {"°", "°", "a soft stretch", Reach::word},
    {">", "<", "a quick stretch", Reach::clause},
    {"<", ">", "a slow stretch", Reach::clause},
    {"(", ")", "an aside", Reach::clause},
    {"\"", "\"", "a quote", Reach::quote},
    {"“", "”", "a quote", Reach::quote},
    {"„", "“", "a quote", Reach::quote},
    {"[", "]", "a direction", Reach::direction},
    {"{", "}", "a pronouncer", Reach::none},
}};

const Opener* find_opener(std::string_view what) {
    const auto found = std::find_if(openers.begin(), openers.end(),
                                    [&](const Opener& row) { return row.open == what; });
    return found == openers.end() ? nullptr : found;
}

// The first word behind the opener; -1 if there is none.
int word_behind(const ThoughtView& view, Offset at) {
    const auto& words = view.written.words;
    const auto found = std::partition_point(
        words.begin(), words.end(), [&](const Word& word) { return word.source.begin < at; });
    return found == words.end() ? -1 : static_cast<int>(found - words.begin());
}

// The last word of the clause that begins with `word`: up to its next punctuation.
int clause_end(const ThoughtView& view, int word) {
    const auto& said = view.reading.said;
    while (word + 1 < static_cast<int>(said.size()) &&
           said[static_cast<std::size_t>(word)].after == Juncture::none) {
        ++word;
    }
    return word;
}

struct Place {
    Offset at;
    int word = -1;
};

// "[clip: the tide 4s We count": behind the time that a direction ends in, in its own sentence.
std::optional<Place> behind_time(const ThoughtView& view, Span open, int first, int last) {
    for (int i = first; i <= last; ++i) {
        const Offset end = view.written.words[static_cast<std::size_t>(i)].source.end;
        if (ending_time(slice(view.source, {open.end, end}))) return Place{end, i};
    }
    return std::nullopt;
}

// The last word of an open direction: a few words of its clause, and none of a sentence that
// begins behind it ("[smile We walk on"); else its first word. "[clip: the tide" goes on.
int direction_end(const ThoughtView& view, int first, int last) {
    constexpr int most_words = 6;
    for (int i = first; i <= last && i - first < most_words; ++i) {
        if (i > first && ascii::is_upper(view.word(i).front())) return i - 1;
        const auto word = static_cast<std::size_t>(i);
        const std::size_t end = view.written.words[word].source.end.value;
        const bool colon = end < view.source.size() && view.source[end] == ':';
        if (i == last || (view.reading.said[word].after != Juncture::none && !colon)) return i;
    }
    return first;
}

int sentence_end(const ThoughtView& view, int word) {
    for (const Sentence& sentence : view.reading.sentences) {
        if (word < sentence.last) return sentence.last - 1;
    }
    return word;
}

std::optional<Place> close_place(const ThoughtView& view, const Problem& problem, Reach reach) {
    const int first = word_behind(view, problem.span.end);
    if (first < 0 || reach == Reach::none) return std::nullopt;
    int last = reach == Reach::word ? first : clause_end(view, first);
    if (reach == Reach::direction) {
        const int end = sentence_end(view, first);
        if (auto place = behind_time(view, problem.span, first, end)) return place;
        last = direction_end(view, first, end);
    }
    if (reach == Reach::quote) {
        for (const Sentence& sentence : view.reading.sentences) {
            if (first < sentence.first || first >= sentence.last) continue;
            // A closing quote stands behind the full stop.
            return Place{sentence.source.end, sentence.last - 1};
        }
    }
    return Place{view.written.words[static_cast<std::size_t>(last)].source.end, last};
}

// A closer is one only before a blank, punctuation or another closer.
bool may_close(std::string_view source, Offset at) {
    if (at.value >= source.size() || ascii::is_blank(source[at.value])) return true;
    return std::string_view{".,;:!?)]\"*_~<>"}.find(source[at.value]) != std::string_view::npos;
}

FindingDraft draft_for(const ThoughtView& view, const Problem& problem) {
    const Opener* row = find_opener(problem.what);
    const std::string_view name = row ? row->name : "a mark";
    const bool direction = row && row->reach == Reach::direction;
    FindingDraft draft{
        .span = problem.span,
        .message = fmt::format("{} opens {} that nothing closes{}", shape(problem.what), name,
                               direction ? ": its words will be spoken" : ", so it does nothing"),
        .fixes = {}};
    // A quote costs no time, and one may go on in the next thought.
    if (row && row->reach == Reach::quote) draft.severity = Severity::hint;
    const auto place = row ? close_place(view, problem, row->reach) : std::nullopt;
    const int last = place ? place->word : -1;
    if (place && may_close(view.source, place->at)) {
        draft.fixes.push_back(
            {.title = fmt::format("Close it after {}", quoted(view.word(place->word))),
             .edits = {{{place->at, place->at}, std::string(row->close)}},
             .keeps_every_word = !direction, // a direction is not spoken
             .preferred = true});
    }
    // One word is the other likely end of a direction: "[smile and go on".
    const int first = word_behind(view, problem.span.end);
    if (direction && first >= 0 && first < last) {
        const Offset end = view.written.words[static_cast<std::size_t>(first)].source.end;
        if (may_close(view.source, end))
            draft.fixes.push_back(
                {.title = fmt::format("Close it after {}", quoted(view.word(first))),
                 .edits = {{{end, end}, std::string(row->close)}},
                 .keeps_every_word = false});
    }
    draft.fixes.push_back(remove_fix(problem.span, problem.what));
    return draft;
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind == ProblemKind::unclosed) found.push_back(draft_for(view, problem));
    }
    return found;
}

} // namespace

extern const Rule mark_unclosed = {
    .id = "mark-unclosed",
    .severity = Severity::warning,
    .summary = "A mark that opens and is never closed in its thought",
    .manual =
        "No mark reaches beyond its own thought, so one that is still open at the blank line is "
        "plain text: it stands on the page and does nothing. "
        "An open `[` is worse: its words are spoken. "
        "The fixes close the mark where it was most likely meant to end, after the next word, "
        "behind a direction's time or at the end of the clause, or take it away. "
        "A backslash in front of the sign keeps it as text.",
    .check = check,
};

} // namespace say::rules
