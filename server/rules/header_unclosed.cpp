// A header without its second fence: it ends at its last key, and what follows is spoken.
#include "rules/header_lines.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

namespace say::rules {
namespace {

// The known key that a line without its blanks begins with; empty without one.
std::string_view opening_key(std::string_view line) {
    const std::string_view word = line.substr(0, line.find_first_of(" \t:"));
    const auto& keys = header_keys();
    const bool known = std::any_of(keys.begin(), keys.end(), [&](const HeaderKey& key) {
        return key.name == unicode::to_lower(word);
    });
    return known ? word : std::string_view{};
}

// "target 3:00" and "  target: 3:00" are "target: 3:00"; nothing where the line begins with no key.
std::optional<Fix> write_key(std::string_view text, Span line) {
    const std::string_view written = ascii::trim(slice(text, line));
    const std::string_view key = opening_key(written);
    if (key.empty()) return std::nullopt;
    const auto end = static_cast<std::size_t>(key.data() - text.data()) + key.size();
    const bool colon = text.substr(end).starts_with(':');
    return Fix{
        .title = fmt::format("Write {}", quoted(fmt::format("{}:", key))),
        .edits = {{make_span(line.begin.value, colon ? end + 1 : end), fmt::format("{}:", key)}},
        .keeps_every_word = false, // the line is no longer spoken
        .preferred = true};
}

// A value that goes on in the next line is one line.
std::optional<Fix> join_lines(std::string_view text, Span line) {
    const std::string_view written = slice(text, line);
    const std::size_t above = text.find_last_not_of(" \t\r\n", line.begin.value);
    if (!ascii::is_blank(written.front()) || above == std::string_view::npos) return std::nullopt;
    const std::size_t words = written.find_first_not_of(" \t");
    return Fix{.title = "Join it to the line above",
               .edits = {{make_span(above + 1, line.begin.value + words), " "}},
               .keeps_every_word = false,
               .preferred = true};
}

FindingDraft judge_stray(const ScriptView& script, Span line) {
    const std::string_view text = script.text;
    const bool inside = script.header.closed && !script.header.span.empty();
    FindingDraft draft{.span = line,
                       .message = fmt::format("{} is no `key: value`, so {}",
                                              quoted(ascii::trim(slice(text, line))),
                                              inside ? "it changes nothing and is not spoken"
                                                     : "the header ends above it and the rest is "
                                                       "spoken"),
                       .fixes = {}};
    auto fix = write_key(text, line);
    if (!fix) fix = join_lines(text, line);
    if (fix) draft.fixes.push_back(std::move(*fix));
    draft.fixes.push_back({.title = "Make this line a note",
                           .edits = {{{line.begin, line.begin}, "% "}},
                           .keeps_every_word = false,
                           .preferred = draft.fixes.empty()});
    return draft;
}

// A header below blank lines is none: it has to stand at the very top.
std::optional<FindingDraft> judge_top(const ScriptView& script) {
    const std::size_t top = script.header.span.begin.value; // behind a byte-order mark
    const std::size_t first = script.text.find_first_not_of(" \t\r\n", top);
    if (!script.header.span.empty() || first == top || first == std::string_view::npos)
        return std::nullopt;
    const Header below = parse_header(script.text.substr(first));
    const bool known =
        std::any_of(below.entries.begin(), below.entries.end(), [&](const HeaderEntry& entry) {
            return !opening_key(slice(script.text.substr(first), entry.key)).empty();
        });
    if (!below.closed || !known) return std::nullopt;
    return FindingDraft{.span = make_span(first, first + 3),
                        .message = "this is no header below a blank line, and is spoken: it has to "
                                   "stand at the very top",
                        .fixes = {{.title = "Move it to the top",
                                   .edits = {{make_span(top, first), ""}},
                                   .keeps_every_word = false, // it is no longer spoken
                                   .preferred = true}}};
}

std::vector<FindingDraft> check(const ScriptView& script) {
    const Header& header = script.header;
    if (auto draft = judge_top(script)) return {std::move(*draft)};
    if (!header.strays.empty()) {
        std::vector<FindingDraft> found;
        found.reserve(header.strays.size());
        for (const Span line : header.strays)
            found.push_back(judge_stray(script, line));
        return found;
    }
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
        "Without the second one it ends at the last line that is a key, and everything below is "
        "spoken. "
        "The fix puts the missing line there. "
        "Where the second line is there, blank lines between the keys do no harm. "
        "A line before it that is no key is named: the fix gives it its colon, joins it to the "
        "value above, or makes it a note. "
        "A header below a blank line is moved to the top.",
    .check_script = check,
};

} // namespace say::rules
