// Markup of other formats: tags, bullets, reference marks. They stand on the page or vanish as
// directions.
#include "rules/problem.h"
#include "rules/rule.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

FindingDraft tag(const Problem& problem) {
    return {.span = problem.span,
            .message = fmt::format("{} is a tag of another format: it stays on the page",
                                   shape(problem.what)),
            .fixes = {remove_fix(problem.span, problem.what)}};
}

FindingDraft bullet(const Problem& problem) {
    FindingDraft draft{.span = problem.span,
                       .message = "this is no list item: one begins with `- `",
                       .fixes = {},
                       .severity = Severity::hint};
    draft.fixes.push_back(
        {.title = "Make it a list item", .edits = {{problem.span, "-"}}, .preferred = true});
    return draft;
}

// "[1]" and "[sic]" come from print; "[text](address)" is a link.
bool is_print_habit(const ThoughtView& view, const Mark& mark) {
    if (mark.kind != MarkKind::direction || mark.argument.empty()) return false;
    if (mark.argument == "sic") return true;
    if (std::all_of(mark.argument.begin(), mark.argument.end(), ascii::is_digit)) return true;
    return view.source.substr(mark.span.end.value).starts_with("(http");
}

FindingDraft print_habit(const ThoughtView& view, const Mark& mark) {
    const std::string_view written = slice(view.source, mark.span);
    return {.span = mark.span,
            .message = fmt::format("{} is a direction here, so it is not spoken", shape(written)),
            .fixes = {remove_standing_fix(view.source, mark.span, written)},
            .severity = Severity::hint};
}

struct Entity {
    std::string_view written;
    std::string_view meant;
};
// Those that word processors and content systems leave behind: HTML, named character references.
constexpr std::array<Entity, 13> entities = {{{"&amp;", "&"},
                                              {"&nbsp;", " "},
                                              {"&quot;", "\""},
                                              {"&apos;", "'"},
                                              {"&#39;", "'"},
                                              {"&#039;", "'"},
                                              {"&rsquo;", "’"},
                                              {"&lsquo;", "‘"},
                                              {"&ldquo;", "“"},
                                              {"&rdquo;", "”"},
                                              {"&hellip;", "…"},
                                              {"&mdash;", "—"},
                                              {"&ndash;", "–"}}};

// They would be read out, sign by sign.
void find_entities(const ThoughtView& view, std::vector<FindingDraft>& found) {
    const std::string_view text = view.written.plain.text;
    for (std::size_t at = text.find('&'); at != std::string_view::npos;
         at = text.find('&', at + 1)) {
        for (const Entity& entity : entities) {
            if (!text.substr(at).starts_with(entity.written)) continue;
            const Span span =
                view.written.plain.to_source(make_span(at, at + entity.written.size()));
            const std::string title = entity.meant == " "
                                          ? "Write it as a blank"
                                          : fmt::format("Write it as {}", entity.meant);
            found.push_back(
                {.span = span,
                 .message = fmt::format("{} is another format's way to write a sign: it "
                                        "would be read out",
                                        shape(entity.written)),
                 .fixes = {{.title = title,
                            .edits = {{span, std::string(entity.meant)}},
                            .keeps_every_word = false,
                            .preferred = true}}});
        }
    }
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    for (const Problem& problem : view.written.problems) {
        if (problem.kind == ProblemKind::tag) found.push_back(tag(problem));
        if (problem.kind == ProblemKind::bullet) found.push_back(bullet(problem));
    }
    find_entities(view, found);
    for (const Mark& mark : view.written.marks) {
        if (is_print_habit(view, mark)) found.push_back(print_habit(view, mark));
    }
    return found;
}

} // namespace

extern const Rule other_markup = {
    .id = "other-markup",
    .severity = Severity::warning,
    .summary = "Markup of another format",
    .manual =
        "Tags such as `<b>`, signs such as `&nbsp;`, bullets such as `* `, reference marks such as "
        "`[1]` and links come along when text is pasted. "
        "Tags, signs and bullets stay on the page as they are; square brackets are directions, so "
        "what is "
        "in them is not spoken. "
        "The fixes take the markup away, write the sign itself, or make the bullet a list item.",
    .check = check,
};

} // namespace say::rules
