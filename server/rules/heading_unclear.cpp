// What was meant as a heading, or as its target, and is none: it is spoken, or no time is held.
#include "rules/header_lines.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>

namespace say::rules {
namespace {

// --- a target in another form than "(0:20)" -----------------------------------------------------

struct Meant {
    std::size_t begin = 0; // in the heading, with its brackets
    std::size_t end = 0;
    std::string target;
};

// "20": so many seconds. Below ten it counts parts, with four digits it is a year.
std::optional<Seconds> bare_seconds(std::string_view inside) {
    const bool digits = std::all_of(inside.begin(), inside.end(), ascii::is_digit);
    if (!digits || inside.size() < 2 || inside.size() > 3 || inside.front() == '0')
        return std::nullopt;
    return parse_duration(fmt::format("{}s", inside));
}

// The time that brackets at the heading's end hold: "[0:20]", "(about 20 secs)", "(20)".
std::optional<Meant> in_brackets(std::string_view heading) {
    const bool square = heading.ends_with(']');
    if (!square && !heading.ends_with(')')) return std::nullopt;
    const std::size_t open = heading.rfind(square ? '[' : '(');
    if (open == std::string_view::npos) return std::nullopt;
    const std::string_view inside = heading.substr(open + 1, heading.size() - open - 2);
    if (const auto target = parse_target(inside))
        return Meant{open, heading.size(), format_target(*target)};
    auto seconds = bare_seconds(inside);
    if (const auto ending = ending_time(inside); !seconds && ending) seconds = ending->seconds;
    if (!seconds) return std::nullopt;
    return Meant{open, heading.size(), format_clock(*seconds)};
}

// "Opening 0:20". Only below a minute: "Lunch 12:30" is a time of day.
std::optional<Meant> without_brackets(std::string_view heading) {
    const std::size_t blank = heading.find_last_of(" \t");
    if (blank == std::string_view::npos) return std::nullopt;
    const std::string_view last = heading.substr(blank + 1);
    const auto target = last.starts_with("0:") ? parse_target(last) : std::nullopt;
    if (!target) return std::nullopt;
    return Meant{blank + 1, heading.size(), format_target(*target)};
}

std::optional<FindingDraft> judge_target(const ScriptView& script, const Stretch& section) {
    if (section.target) return std::nullopt;
    const std::string_view heading = ascii::trim_right(slice(script.text, section.span));
    auto meant = in_brackets(heading);
    if (!meant) meant = without_brackets(heading);
    if (!meant) return std::nullopt;
    const Span span = make_span(meant->begin, meant->end) + section.span.begin.value;
    const std::string instead = fmt::format("({})", meant->target);
    return FindingDraft{
        .span = span,
        .message = fmt::format("{} is part of the heading's name and no target; one is written {}",
                               quoted(slice(script.text, span)), instead),
        .fixes = {{.title = fmt::format("Write {}", instead),
                   .edits = {{span, instead}},
                   .keeps_every_word = false, // nothing is spoken, but what is timed changes
                   .preferred = true}},
        .severity = Severity::hint};
}

// --- a heading that is spoken -------------------------------------------------------------------

std::size_t count_hashes(std::string_view text) {
    return std::min(text.find_first_not_of('#'), text.size());
}

std::string_view first_line(std::string_view text) {
    return text.substr(0, text.find_first_of("\r\n"));
}

// "#Opening (0:20)" and "#### Opening", but "#LimpetCount is our tag." speaks of a tag.
bool looks_like_heading(std::string_view line) {
    const std::size_t hashes = count_hashes(line);
    if (hashes == 0 || hashes == line.size() || hashes > 6) return false;
    line = ascii::trim_right(line);
    const std::string_view name = line.substr(std::min(hashes, line.size()));
    if (name.empty()) return false;
    if (ascii::is_blank(name.front())) return hashes > 3;
    if (!ascii::is_upper(name.front()) ||
        std::string_view(".!?,").find(name.back()) != std::string_view::npos)
        return false;
    const std::string_view word = name.substr(0, name.find(' '));
    const bool tag = hashes == 1 && std::any_of(word.begin() + 1, word.end(), [](char c) {
                         return ascii::is_upper(c) || ascii::is_digit(c);
                     });
    return !tag;
}

bool opens_with_hash(const ThoughtView& view) {
    return view.kind == BlockKind::paragraph &&
           looks_like_heading(first_line(slice(view.source, view.content)));
}

FindingDraft judge_heading(const ScriptView& script, const ThoughtSummary& thought) {
    const std::string_view line =
        first_line(slice(script.text, thought.content + thought.begin.value));
    const std::size_t hashes = count_hashes(line);
    const std::size_t name = std::min(line.find_first_not_of(" \t", hashes), line.size());
    const auto begin = thought.begin.value + thought.content.begin.value;
    const std::string instead =
        fmt::format("{} ", std::string(std::min<std::size_t>(hashes, 3), '#'));
    return {.span = make_span(begin, begin + ascii::trim_right(line).size()),
            .message = fmt::format("{} is spoken: a heading is one to three # and a blank",
                                   quoted(ascii::trim_right(line))),
            .fixes = {{.title = fmt::format(
                           "Write it {}",
                           quoted(instead + std::string(ascii::trim_right(line.substr(name))))),
                       .edits = {{make_span(begin, begin + name), instead}},
                       .keeps_every_word = false, // the heading is no longer spoken
                       .preferred = true}}};
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    for (const Stretch& section : script.sections) {
        if (auto draft = judge_target(script, section)) found.push_back(std::move(*draft));
    }
    for (const std::uint32_t index : script.concerned)
        found.push_back(judge_heading(script, script.thoughts[index]));
    return found;
}

} // namespace

extern const Rule heading_unclear = {
    .id = "heading-unclear",
    .severity = Severity::warning,
    .summary = "A heading, or its target, that does not count as one",
    .manual =
        "A heading is one to three `#`, a blank and a name: `#Opening` and `#### Opening` are "
        "spoken. "
        "Its target stands last and in round brackets, `# Opening (0:20)`: `[0:20]`, `(20)` and "
        "`(about 20 secs)` are part of the name, and no time is set aside. "
        "A tag such as `#LimpetCount` is left alone. "
        "The fix writes the heading or the target as it counts.",
    .check_script = check,
    .concerns = opens_with_hash,
};

} // namespace say::rules
