// A name with a colon at the start of thoughts: it looks like a speaker and is spoken, because the
// header does not declare it, or because it is written otherwise than there.
#include "base/lists.h"
#include "rules/header_lines.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <unordered_map>

namespace say::rules {
namespace {

struct Candidate {
    std::string_view name;
    Span span; // absolute, without the colon
    bool capitals = false;
    int times = 1;
};

// Labels that are said: "NOTE: the tide turns at four", "Step one: walk down". Common practice, no
// source.
bool is_label_word(std::string_view word) {
    constexpr auto labels = std::to_array<std::string_view>(
        {"a",      "after",  "answer",   "before",   "bonus",    "caution",  "conclusion",
         "cons",   "day",    "example",  "fact",     "faq",      "finally",  "first",
         "lesson", "myth",   "note",     "option",   "part",     "problem",  "pros",
         "ps",     "q",      "question", "reason",   "remember", "reminder", "result",
         "rule",   "second", "so",       "solution", "step",     "summary",  "third",
         "tip",    "todo",   "today",    "tomorrow", "update",   "warning",  "week"});
    return is_one_of(ascii::lower(word), labels);
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

// --- declared, but written otherwise ------------------------------------------------------------

// A label as people write them: "**Dana:**", "Dana:", "DANA (V/O):", "DANA & JO:", "BOTH:".
struct Label {
    std::string_view names;
    std::string_view cue; // in round brackets
    std::size_t size = 0; // of the whole, with the colon and the blanks behind it; 0: there is none
};

bool is_of_name(char c) {
    constexpr std::string_view signs = " .-'&/,+";
    return ascii::is_alnum(c) || ascii::is_high(c) || signs.find(c) != std::string_view::npos;
}

// Takes up to two asterisks or underscores.
void skip_stress(std::string_view rest, std::size_t& at) {
    for (int i = 0; i < 2 && at < rest.size() && (rest[at] == '*' || rest[at] == '_'); ++i)
        ++at;
}

Label label_of(std::string_view rest) {
    constexpr std::size_t longest = 60;
    rest = rest.substr(0, longest);
    std::size_t at = 0;
    skip_stress(rest, at);
    const std::size_t begin = at;
    while (at < rest.size() && is_of_name(rest[at]))
        ++at;
    Label label{.names = ascii::trim_right(rest.substr(begin, at - begin)), .cue = {}};
    skip_stress(rest, at);
    if (at < rest.size() && rest[at] == '(') {
        const std::size_t close = rest.find(')', at);
        if (close == std::string_view::npos) return {};
        label.cue = rest.substr(at + 1, close - at - 1);
        at = close + 1;
    }
    skip_stress(rest, at);
    if (label.names.empty() || at >= rest.size() || rest[at] != ':') return {};
    ++at;
    skip_stress(rest, at);
    // "MIRA:Hello", but not "12:30" or an address.
    if (at >= rest.size() || !(ascii::is_blank(rest[at]) || ascii::is_upper(rest[at]))) return {};
    while (at < rest.size() && ascii::is_blank(rest[at]))
        ++at;
    label.size = at;
    return label;
}

// "Narrator", "Dr Reed", "Speaker 2": one or two words, the first with a capital.
bool may_be_name(std::string_view names) {
    if (names.find_first_of("&/,+") != std::string_view::npos) return false;
    int words = 0;
    for (std::size_t at = 0; at < names.size(); ++words) {
        const std::size_t end = std::min(names.find(' ', at), names.size());
        const std::string_view word = names.substr(at, end - at);
        const bool capital =
            !word.empty() && (ascii::is_upper(word.front()) || ascii::is_high(word.front()));
        const bool number = words > 0 && !word.empty() && ascii::is_digit(word.front());
        if ((!capital && !number) || is_label_word(word)) return false;
        at = end + 1;
    }
    return names.size() > 1 && words <= 2;
}

// A name that opens a line, with what is known of it.
struct Opening {
    std::string_view name;
    bool capitals = false; // "MIRA:", as declared speakers are mostly written
};

// The name, not a label that is said, before a colon at the front; empty without one.
Opening opening_of(std::string_view rest) {
    if (const std::string_view name = name_before_colon(rest); !name.empty())
        return {is_label_word(name) ? std::string_view{} : name, true};
    const Label label = label_of(rest);
    if (label.size == 0 || !may_be_name(label.names)) return {};
    if (!ascii::is_blank(rest[label.size - 1])) return {}; // "Re:Think" is a name
    return {label.names, false};
}

// Where a name may open the thought or a later line of it.
std::vector<std::size_t> line_begins(std::string_view source) {
    std::vector<std::size_t> begins{std::min(content_begin(source), source.size())};
    for (std::size_t at = begins.front(); at < source.size(); ++at) {
        if (source[at] != '\n' && source[at] != '\r') continue;
        while (at < source.size() && ascii::is_blank(source[at]))
            ++at;
        begins.push_back(at);
    }
    return begins;
}

const Speaker* find_speaker(const Header& header, std::string_view name) {
    const std::string wanted = unicode::to_lower(name);
    const auto found =
        std::find_if(header.speakers.begin(), header.speakers.end(), [&](const Speaker& speaker) {
            return unicode::to_lower(speaker.name) == wanted;
        });
    return found == header.speakers.end() ? nullptr : &*found;
}

std::string joined(const std::vector<std::string_view>& names) {
    std::string all;
    for (const std::string_view name : names)
        all += fmt::format("{}{}", all.empty() ? "" : " AND ", name);
    return all;
}

// "Dana and Jo" as the script writes them; empty if the header does not declare everyone.
std::string declared_names(const Header& header, std::string_view written) {
    const std::string lower = unicode::to_lower(written);
    const bool both = lower == "both" && header.speakers.size() == 2;
    const bool all = (lower == "all" || lower == "everyone") && header.speakers.size() > 1;
    std::vector<std::string_view> names;
    if (both || all) {
        for (const Speaker& speaker : header.speakers)
            names.push_back(speaker.name);
        return joined(names);
    }
    if (const Speaker* speaker = find_speaker(header, written)) return speaker->name;
    while (!written.empty()) {
        const std::size_t word = ascii::lower(written).find(" and ");
        const std::size_t sign = written.find_first_of("&/,+");
        const std::size_t cut = std::min(word, sign);
        const bool last = cut == std::string_view::npos;
        const Speaker* speaker = find_speaker(header, ascii::trim(written.substr(0, cut)));
        if (speaker == nullptr) return {};
        names.push_back(speaker->name);
        written = last ? std::string_view{} : written.substr(cut + (cut == word ? 5 : 1));
    }
    return joined(names);
}

std::optional<FindingDraft> written_otherwise(const ScriptView& script,
                                              const ThoughtSummary& thought, std::size_t begin) {
    if (thought.content.begin.value > begin) return std::nullopt; // it is read as the speaker
    const Label label = label_of(thought.source.substr(begin));
    if (label.size == 0) return std::nullopt;
    const std::string names = declared_names(script.header, label.names);
    if (names.empty()) return std::nullopt;
    std::string instead = fmt::format("{}: ", names);
    if (!label.cue.empty()) instead += fmt::format("[{}] ", label.cue);
    const auto at = thought.begin.value + begin;
    const std::string_view written = ascii::trim(thought.source.substr(begin, label.size));
    const bool glued = written == fmt::format("{}:", names); // "MIRA:Hello"
    return FindingDraft{
        .span = make_span(at, at + written.size()),
        .message = fmt::format("{} is spoken as words: {}", quoted(written),
                               glued ? "the speaker's colon has a blank behind it"
                                     : fmt::format("the speaker is written `{}:`", names)),
        .fixes = {
            {.title = glued ? "Write the blank" : fmt::format("Write it {}", ascii::trim(instead)),
             .edits = {{make_span(at, at + label.size), instead}},
             .keeps_every_word = false, // the name is no longer spoken
             .preferred = true}}};
}

bool names_somebody(const ThoughtView& view) {
    const auto begins = line_begins(view.source);
    return std::any_of(begins.begin(), begins.end(), [&](std::size_t begin) {
        const std::string_view rest = view.source.substr(begin);
        return !opening_of(rest).name.empty() || label_of(rest).size > 0;
    });
}

std::vector<Candidate> find_candidates(const ScriptView& script) {
    std::vector<Candidate> candidates;
    std::unordered_map<std::string, std::size_t> places; // of a name in small letters
    for (const std::uint32_t index : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[index];
        for (const std::size_t begin : line_begins(thought.source)) {
            const Opening opening = opening_of(thought.source.substr(begin));
            // Declared, as it stands or written otherwise: "BOTH".
            if (opening.name.empty() || !declared_names(script.header, opening.name).empty())
                continue;
            const auto inside =
                static_cast<std::size_t>(opening.name.data() - thought.source.data());
            const auto at = thought.begin.value + inside;
            const auto [place, is_new] =
                places.try_emplace(unicode::to_lower(opening.name), candidates.size());
            if (is_new) {
                candidates.push_back(
                    {opening.name, make_span(at, at + opening.name.size()), opening.capitals});
            } else {
                ++candidates[place->second].times;
            }
        }
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
        const bool beside = candidate.capitals && !script.header.speakers.empty();
        if (candidate.times < 2 && !beside) continue;
        found.push_back(
            {.span = candidate.span,
             .message = fmt::format("{} is spoken as a word: the header names no such speaker",
                                    quoted(candidate.name)),
             .fixes = {{.title = fmt::format("Add {} as a speaker", quoted(candidate.name)),
                        .edits = {declare(script, candidate.name)},
                        .keeps_every_word = false, // the name is no longer spoken
                        .preferred = true}}});
    }
    for (const std::uint32_t index : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[index];
        for (const std::size_t begin : line_begins(thought.source)) {
            if (auto draft = written_otherwise(script, thought, begin))
                found.push_back(std::move(*draft));
        }
    }
    return found;
}

} // namespace

extern const Rule speaker_undeclared = {
    .id = "speaker-undeclared",
    .severity = Severity::hint,
    .summary = "A name with a colon that is spoken, as the header does not have it so",
    .manual =
        "`MIRA:` at the start of a thought says who speaks, if the header's `speakers` has the "
        "name; otherwise it is a word and will be spoken. "
        "A name that opens at least two thoughts or lines is taken for one, in capitals, as "
        "`Narrator:` or in bold; in capitals once is enough beside a declared speaker. Labels such "
        "as \"NOTE:\" are none. "
        "So is a declared name that is written otherwise, `**Mira:**`, `Mira:` or `MIRA (V/O):`, "
        "and "
        "BOTH or ALL where several are declared. "
        "The fix adds the name to the header, or writes the speaker as the header has it.",
    .check_script = check,
    .concerns = names_somebody,
};

} // namespace say::rules
