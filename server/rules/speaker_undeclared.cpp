// A name in capitals with a colon at the start of thoughts: it looks like a speaker and is spoken,
// because the header does not declare it.
#include "rules/header_lines.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

struct Candidate {
    std::string_view name;
    Span span; // absolute, without the colon
    int times = 1;
};

// Labels that are said: "NOTE: the tide turns at four."
bool is_label(std::string_view name) {
    constexpr std::array<std::string_view, 16> labels = {
        "NOTE", "FACT", "TIP",  "WARNING", "Q",       "A",      "PS",       "TODO",
        "STEP", "FAQ",  "RULE", "EXAMPLE", "CAUTION", "UPDATE", "QUESTION", "ANSWER"};
    return std::find(labels.begin(), labels.end(), name) != labels.end();
}

// Where the thought's words begin: behind notes, blanks and a list marker.
std::size_t content_begin(std::string_view source) {
    std::size_t at = 0;
    while (at < source.size()) {
        while (at < source.size() && ascii::is_blank(source[at]))
            ++at;
        const bool note = at < source.size() && source[at] == '%' &&
                          (at + 1 == source.size() || ascii::is_blank(source[at + 1]));
        if (!note) break;
        while (at < source.size() && source[at] != '\n' && source[at] != '\r')
            ++at;
    }
    if (source.substr(std::min(at, source.size())).starts_with("- ")) at += 2;
    return at;
}

// "JO", "DR REED" before a colon and a blank; empty if the thought opens otherwise.
std::string_view name_before_colon(std::string_view rest) {
    std::size_t size = 0;
    while (size < rest.size() && size < 40 &&
           (ascii::is_upper(rest[size]) || ascii::is_digit(rest[size]) || rest[size] == ' ' ||
            rest[size] == '.' || rest[size] == '-' || rest[size] == '\'')) {
        ++size;
    }
    if (size == 0 || size >= rest.size() || rest[size] != ':') return {};
    if (size + 1 < rest.size() && !ascii::is_blank(rest[size + 1])) return {};
    const std::string_view name = rest.substr(0, size);
    const bool letters = name.size() >= 2 && ascii::is_upper(name.front()) && name.back() != ' ';
    return letters ? name : std::string_view{};
}

// The name, not a label, that stands before a colon at the thought's start; empty without one.
std::string_view opening_name(std::string_view source) {
    const std::size_t begin = std::min(content_begin(source), source.size());
    const std::string_view name = name_before_colon(source.substr(begin));
    return is_label(name) ? std::string_view{} : name;
}

bool names_somebody(const ThoughtView& view) {
    return !opening_name(view.source).empty();
}

bool is_declared(const Header& header, std::string_view name) {
    return std::any_of(header.speakers.begin(), header.speakers.end(),
                       [&](const Speaker& speaker) { return speaker.name == name; });
}

std::vector<Candidate> find_candidates(const ScriptView& script) {
    std::vector<Candidate> candidates;
    for (const std::uint32_t index : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[index];
        const std::size_t begin = content_begin(thought.source);
        const std::string_view name = opening_name(thought.source);
        if (is_declared(script.header, name)) continue;
        const auto known = std::find_if(candidates.begin(), candidates.end(),
                                        [&](const Candidate& c) { return c.name == name; });
        if (known != candidates.end()) {
            ++known->times;
            continue;
        }
        const auto at = thought.begin.value + begin;
        candidates.push_back({name, make_span(at, at + name.size())});
    }
    return candidates;
}

// Adds the name to the header's line, or a line to the header, or a header to the script.
TextEdit declare(const ScriptView& script, std::string_view name) {
    for (const HeaderEntry& entry : script.header.entries) {
        if (unicode::to_lower(slice(script.text, entry.key)) != "speakers") continue;
        const std::string_view value = slice(script.text, entry.value);
        return {{entry.value.end, entry.value.end},
                value.empty() ? fmt::format(" {}", name) : fmt::format(", {}", name)};
    }
    return add_header_line(script, fmt::format("speakers: {}", name));
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    for (const Candidate& candidate : find_candidates(script)) {
        // Once may be a label; twice, or beside a declared speaker, it is somebody.
        if (candidate.times < 2 && script.header.speakers.empty()) continue;
        found.push_back(
            {.span = candidate.span,
             .message = fmt::format("{} is spoken as a word: the header names no such speaker",
                                    quoted(candidate.name)),
             .fixes = {{.title = fmt::format("Add {} as a speaker", quoted(candidate.name)),
                        .edits = {declare(script, candidate.name)},
                        .keeps_every_word = false, // the name is no longer spoken
                        .preferred = true}}});
    }
    return found;
}

} // namespace

extern const Rule speaker_undeclared = {
    .id = "speaker-undeclared",
    .severity = Severity::hint,
    .summary = "A name with a colon that the header does not declare",
    .manual =
        "`MIRA:` at the start of a thought says who speaks, if the header's `speakers` has the "
        "name; otherwise it is a word and will be spoken. "
        "A name that opens at least two thoughts, or stands beside a declared speaker, is taken "
        "for one; labels such as \"NOTE:\" are not. "
        "The fix adds the name to the header.",
    .check_script = check,
    .concerns = names_somebody,
};

} // namespace say::rules
