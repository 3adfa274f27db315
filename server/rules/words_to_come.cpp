// What a writer leaves in the place of words that are still to come: at the camera it is read out.
#include "base/lists.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "speech/lexicon.h"
#include "text/ascii.h"

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
    return crosses || is_one_of(word, signs);
}

// "Super Bowl XXX": a numeral behind a name.
bool is_numeral(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    if (word != "XXX" || index == 0) return false;
    const std::string_view before = view.word(index - 1);
    return before.size() > 1 && before[0] >= 'A' && before[0] <= 'Z' && before[1] >= 'a' &&
           before[1] <= 'z';
}

bool is_run_of(std::string_view text, char sign) {
    return text.size() > 1 && text.find_first_not_of(sign) == std::string_view::npos;
}

// A name in capitals or small letters, FIRST_NAME.
bool is_field_name(std::string_view name) {
    return name.size() > 1 &&
           std::all_of(name.begin(), name.end(),
                       [](char c) { return ascii::is_alnum(c) || c == '_'; }) &&
           !ascii::is_digit(name.front());
}

// "%FIRSTNAME%", and "$NAME"; but "$TSLA" is a share, which is no word.
bool is_field(std::string_view token) {
    if (token.size() > 3 && token.front() == '%' && token.back() == '%')
        return is_field_name(token.substr(1, token.size() - 2));
    if (token.empty() || token.front() != '$') return false;
    const std::string_view name = token.substr(1);
    const bool capitals = std::none_of(name.begin(), name.end(), ascii::is_lower);
    if (!capitals || !is_field_name(name) || ascii::is_digit(name.back())) return false;
    return name.find('_') != std::string_view::npos ||
           pronounce(ascii::lower(name)).known == Known::lexicon;
}

std::string_view without_stops(std::string_view token) {
    while (!token.empty() &&
           std::string_view(".,;:!?").find(token.back()) != std::string_view::npos)
        token.remove_suffix(1);
    return token;
}

// A gap to fill in: "Call ___ today"; "We counted ??? limpets", where the sentence goes on.
bool is_gap(std::string_view token, std::string_view behind) {
    if (is_run_of(without_stops(token), '_')) return true;
    return is_run_of(token, '?') && !behind.empty() && ascii::is_lower(behind.front());
}

FindingDraft draft_for(Span span, std::string_view written, std::string_view what) {
    return {.span = span,
            .message =
                fmt::format("{} stands for words still to come, and {}", quoted(written), what),
            .fixes = {}};
}

void find_signs(const ThoughtView& view, std::vector<FindingDraft>& found) {
    const std::string_view text = view.written.plain.text;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const std::string_view token = text.substr(at, end - at);
        const std::string_view sign = without_stops(token);
        if (is_field(sign)) {
            found.push_back(draft_for(view.written.plain.to_source(make_span(at, at + sign.size())),
                                      sign, "would be read out"));
        } else if (is_gap(token, text.substr(std::min(end + 1, text.size())))) {
            const std::size_t size = sign.empty() ? token.size() : sign.size();
            found.push_back(draft_for(view.written.plain.to_source(make_span(at, at + size)),
                                      token.substr(0, size), "nothing is said in its place"));
        }
        at = end + 1;
    }
}

// "We counted xxx limpets": a silence of three seconds where no phrase ends is a gap to fill in.
void find_crosses(const ThoughtView& view, std::vector<FindingDraft>& found) {
    for (const Mark& mark : view.written.marks) {
        const auto behind = static_cast<std::size_t>(mark.last) + 1;
        const bool between = mark.first >= 0 && behind < view.written.words.size();
        if (mark.kind != MarkKind::beat || mark.span.size() < 3 || !between) continue;
        const Said& before = view.reading.said[behind - 1];
        const std::string_view next = slice(view.source, view.written.words[behind].source);
        if (before.after != Juncture::none || !ascii::is_lower(next.front())) continue;
        found.push_back(draft_for(mark.span, slice(view.source, mark.span),
                                  fmt::format("is a silence of {}", format_seconds(mark.seconds))));
    }
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (int i = 0; i < static_cast<int>(view.written.words.size()); ++i) {
        const std::string_view word = view.word(i);
        if (!stands_for_words(word) || is_numeral(view, i)) continue;
        found.push_back(draft_for(view.written.words[static_cast<std::size_t>(i)].source, word,
                                  "would be read out"));
    }
    find_signs(view, found);
    find_crosses(view, found);
    return found;
}

} // namespace

extern const Rule words_to_come = {
    .id = "words-to-come",
    .severity = Severity::warning,
    .stage = Stage::mark,
    .summary = "A sign in the place of words that are still to come",
    .manual = "TK, TODO, XXX, ___, ??? and fields such as $NAME and %NAME% stand where a name or a "
              "figure is missing. "
              "So does `xxx` in the middle of a sentence, where it would be a silence of three "
              "seconds. "
              "While drafting they are no trouble; a script that is marked or read should have the "
              "words. "
              "What is only a reminder belongs in a note: a line that begins with `% `.",
    .check = check,
};

} // namespace say::rules
