// A rule's name in `allow` that no rule has: the writer thinks it is silent, and it is not.
#include "rules/nearest.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <vector>

namespace say::rules {
namespace {

std::vector<std::string_view> known_ids() {
    std::vector<std::string_view> ids;
    for (const Rule* rule : all_rules())
        ids.push_back(rule->id);
    return ids;
}

// The names of a list, each where it stands. The header parts them by commas, a note by blanks too.
void check_list(std::string_view text, Span list, std::string_view between,
                std::vector<FindingDraft>& found) {
    std::string_view rest = slice(text, list);
    while (!rest.empty()) {
        const std::size_t comma = std::min(rest.find_first_of(between), rest.size());
        const std::string_view id = ascii::trim(rest.substr(0, comma));
        const auto begin = static_cast<std::size_t>(id.data() - text.data());
        rest.remove_prefix(std::min(comma + 1, rest.size()));
        if (id.empty() || find_rule(id) != nullptr) continue;
        FindingDraft draft{
            .span = make_span(begin, begin + id.size()),
            .message = fmt::format("no rule is called {}, so nothing is left out", quoted(id)),
            .fixes = {}};
        if (const std::string_view near = nearest(id, known_ids()); !near.empty()) {
            draft.fixes.push_back({.title = fmt::format("Write {}", quoted(near)),
                                   .edits = {{draft.span, std::string(near)}},
                                   .preferred = true});
        }
        found.push_back(std::move(draft));
    }
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    for (const HeaderEntry& entry : script.header.entries) {
        if (unicode::to_lower(slice(script.text, entry.key)) == "allow")
            check_list(script.text, entry.value, ",", found);
    }
    constexpr std::string_view note = "% allow:";
    for (std::size_t at = script.text.find(note); at != std::string_view::npos;
         at = script.text.find(note, at + 1)) {
        std::size_t begin = at;
        while (begin > 0 && ascii::is_blank(script.text[begin - 1]))
            --begin;
        if (begin > 0 && script.text[begin - 1] != '\n' && script.text[begin - 1] != '\r') continue;
        const std::size_t end = std::min(script.text.find_first_of("\r\n", at), script.text.size());
        check_list(script.text, make_span(at + note.size(), end), ", ", found);
    }
    return found;
}

} // namespace

extern const Rule allow_unknown = {
    .id = "allow-unknown",
    .severity = Severity::warning,
    .summary = "A rule left out by a name that no rule has",
    .manual = "`allow` in the header and `% allow:` in a note leave rules out by their names. "
              "A name with a slip in it leaves nothing out, and says nothing of it. "
              "Where a rule's name is near, the fix writes it.",
    .check_script = check,
};

} // namespace say::rules
