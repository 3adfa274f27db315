// An emoji or a face in punctuation: the reader sees it, the listener hears nothing.
#include "base/lists.h"
#include "rules/problem.h"
#include "rules/rule.h"
#include "rules/wording.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

FindingDraft draft_for(const ThoughtView& view, Span span) {
    const std::string_view sign = slice(view.source, span);
    return {.span = span,
            .message = fmt::format("{} is not spoken", quoted(sign)),
            .fixes = {remove_standing_fix(view.source, span, sign)}};
}

bool is_emoticon(std::string_view token) {
    constexpr std::array<std::string_view, 8> list = {":)", ":-)", ";)", ";-)",
                                                      ":(", ":-(", ":/", ":-/"};
    return is_one_of(token, list);
}

// Faces drawn in punctuation, between blanks of the plain text.
void find_emoticons(const ThoughtView& view, std::vector<FindingDraft>& found) {
    const std::string_view text = view.written.plain.text;
    for (std::size_t at = text.find_first_of(":;"); at != std::string_view::npos;
         at = text.find_first_of(":;", at + 1)) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const bool stands = at == 0 || text[at - 1] == ' ';
        if (!stands || !is_emoticon(text.substr(at, end - at))) continue;
        found.push_back(draft_for(view, view.written.plain.to_source(make_span(at, end))));
    }
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind == ProblemKind::emoji) found.push_back(draft_for(view, problem.span));
    }
    find_emoticons(view, found);
    return found;
}

} // namespace

extern const Rule unspoken_sign = {
    .id = "unspoken-sign",
    .severity = Severity::hint,
    .summary = "An emoji or a face in punctuation, which nobody speaks",
    .manual = "An emoji, or a face such as `:)`, takes no time and makes no sound. "
              "If it stands for something to do, write a direction: `[smile]`. "
              "If it stands for a word, write the word.",
    .check = check,
};

} // namespace say::rules
