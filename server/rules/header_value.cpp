// A header line whose value cannot be used, or a key that stands twice.
#include "rules/header_lines.h"
#include "rules/nearest.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

// The missing fence is a rule of its own.
bool is_open_fence(const Header& header, const HeaderProblem& problem) {
    return !header.closed && problem.span.begin == header.span.begin;
}

const HeaderEntry* entry_at(const Header& header, Span span) {
    for (const HeaderEntry& entry : header.entries) {
        if (entry.key == span || entry.value == span) return &entry;
    }
    return nullptr;
}

std::vector<Fix> fixes_for(const ScriptView& script, const HeaderProblem& problem) {
    std::vector<Fix> fixes;
    const HeaderEntry* entry = entry_at(script.header, problem.span);
    if (entry == nullptr) return fixes;
    if (unicode::to_lower(slice(script.text, entry->key)) == "stage" &&
        problem.span == entry->value) {
        constexpr std::array<std::string_view, 3> stages = {"draft", "mark", "read"};
        const std::string written = unicode::to_lower(slice(script.text, entry->value));
        const std::string_view near = nearest(written, stages);
        if (!near.empty()) {
            fixes.push_back({.title = fmt::format("Write {}", quoted(near)),
                             .edits = {{entry->value, std::string(near)}},
                             .keeps_every_word = false,
                             .preferred = true});
        }
    }
    // No word is lost, but what the writer meant is: a bulk fix leaves the line alone.
    fixes.push_back({.title = "Take this line out of the header",
                     .edits = {{whole_line(script.text, entry->key.begin), ""}},
                     .keeps_every_word = false});
    return fixes;
}

// A key that stands twice has nothing to write in its place.
std::string message_for(const Header& header, const HeaderProblem& problem) {
    const HeaderEntry* entry = entry_at(header, problem.span);
    if (entry != nullptr && entry->key == problem.span) return problem.message;
    return fmt::format("{}; write {}", problem.message, problem.remedy);
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    for (const HeaderProblem& problem : script.header.problems) {
        if (is_open_fence(script.header, problem)) continue;
        found.push_back({.span = problem.span,
                         .message = message_for(script.header, problem),
                         .fixes = fixes_for(script, problem)});
    }
    return found;
}

} // namespace

extern const Rule header_value = {
    .id = "header-value",
    .severity = Severity::warning,
    .summary = "A header value that cannot be used",
    .manual =
        "A target of \"two minutes\" or a pace of \"brisk\" is left out, and the script is timed "
        "as "
        "if the line were not there. "
        "The message says what may stand there; of a key that stands twice the first line counts. "
        "So is a reader who has no file in `.sayline/readers`, once anybody has one, and a "
        "language "
        "that is not English. "
        "The other lines of the header still apply.",
    .check_script = check,
};

} // namespace say::rules
