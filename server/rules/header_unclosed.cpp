// A header without its second fence: it ends at its last key, and what follows is spoken.
#include "rules/header_lines.h"
#include "rules/rule.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ScriptView& script) {
    const Header& header = script.header;
    if (header.closed || header.span.empty()) return {};
    const std::string fence = fmt::format("{}---", line_end(script.text));
    return {{.span = {header.span.begin, header.span.begin + 3},
             .message = "the header is not closed: it ends at its last key, and the rest is spoken",
             .fixes = {{.title = "Close the header",
                        .edits = {{{header.span.end, header.span.end}, fence}},
                        .preferred = true}}}};
}

} // namespace

extern const Rule header_unclosed = {
    .id = "header-unclosed",
    .severity = Severity::warning,
    .summary = "A header without its second line of dashes",
    .manual =
        "The header stands between two lines of three dashes at the very top. "
        "Without the second one, or with a blank line in between, it ends at the last line that is "
        "a key, and everything below is spoken. "
        "The fix puts the missing line there.",
    .check_script = check,
};

} // namespace say::rules
