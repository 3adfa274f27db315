// textDocument/inlineCompletion: one mark at the cursor, for those who want to go through a script
// and take or leave what a reader would likely do.
#include "features/features.h"
#include "rules/suggest.h"

#include <optional>

namespace say {
namespace {

// What stands from the first edit to the last once they are made.
NextMark joined(std::string_view source, const std::vector<TextEdit>& edits) {
    NextMark mark{.replace = {edits.front().span.begin, edits.back().span.end}, .insert = {}};
    Offset at = mark.replace.begin;
    for (const TextEdit& edit : edits) {
        mark.insert += slice(source, {at, edit.span.begin});
        mark.insert += edit.replacement;
        at = edit.span.end;
    }
    return mark;
}

// "/ " before a word is " /" behind the blank before it: for a cursor at the last word's end.
std::optional<NextMark> before_blank(std::string_view source, const NextMark& mark) {
    const std::uint32_t at = mark.replace.begin.value;
    if (!mark.replace.empty() || at == 0 || source[at - 1] != ' ' || !mark.insert.ends_with(' '))
        return std::nullopt;
    return NextMark{.replace = make_span(at - 1, at - 1),
                    .insert = " " + mark.insert.substr(0, mark.insert.size() - 1)};
}

} // namespace

std::optional<NextMark> next_mark(const Analysis& analysis, Offset at) {
    const Placed* const placed = analysis.script.thought_at(at);
    if (placed == nullptr || !placed->thought->has_words()) return std::nullopt;
    const std::string_view source = placed->thought->source;
    const std::uint32_t by = placed->block.span.begin.value;
    const Offset inside{at.value - by};
    const ThoughtView view = view_of(*placed->thought, analysis.options);
    for (const rules::Suggestion& suggestion : rules::suggest(view)) {
        const std::vector<TextEdit> edits = rules::edits_of(view, suggestion);
        if (edits.empty()) continue;
        NextMark mark = joined(source, edits);
        if (slice(source, mark.replace).find_first_of("\r\n") != std::string_view::npos) continue;
        if (mark.replace.begin != inside) {
            const auto earlier = before_blank(source, mark);
            if (!earlier || earlier->replace.begin != inside) continue;
            mark = *earlier;
        }
        mark.replace = mark.replace + by;
        return mark;
    }
    return std::nullopt;
}

} // namespace say
