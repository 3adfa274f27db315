// A list that is read at the pace of talk: listeners cannot look back at its items.
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

constexpr std::size_t shortest_list = 3;

bool has_pace(const ThoughtSummary& item) {
    const auto& marks = item.written->marks;
    return std::any_of(marks.begin(), marks.end(), [](const Mark& mark) {
        return mark.kind == MarkKind::slow || mark.kind == MarkKind::quick;
    });
}

// "They came by bus.": a sentence of its own, which is heard as one, and no thing to note down.
bool is_sentence(const ThoughtSummary& item) {
    constexpr std::size_t shortest = 4;
    const auto& words = item.written->words;
    if (words.size() < shortest) return false;
    const std::string_view first = slice(item.source, words.front().source);
    const std::string_view behind = item.source.substr(words.back().source.end.value);
    const bool ends = behind.find_first_of(".!?") != std::string_view::npos;
    return ends && ascii::is_upper(first.front());
}

// The words of an item with the marks and punctuation that touch them.
std::optional<Span> words_of(const ThoughtSummary& item) {
    const auto& words = item.written->words;
    if (words.empty()) return std::nullopt;
    std::uint32_t begin = words.front().source.begin.value;
    std::uint32_t end = words.back().source.end.value;
    while (begin > item.content.begin.value && !ascii::is_blank(item.source[begin - 1]))
        --begin;
    while (end < item.content.end.value && !ascii::is_blank(item.source[end]))
        ++end;
    return make_span(begin, end);
}

std::optional<Fix> slow_down(const ScriptView& script, std::size_t first, std::size_t end) {
    Fix fix{.title = "Slow its items down", .edits = {}, .preferred = true};
    for (std::size_t i = first; i < end; ++i) {
        const ThoughtSummary& item = script.thoughts[i];
        const auto words = words_of(item);
        if (!words || !may_enclose(*item.written, *words, MarkKind::slow)) continue;
        const Span span = *words + item.begin.value;
        fix.edits.push_back({{span.begin, span.begin}, "<"});
        fix.edits.push_back({{span.end, span.end}, ">"});
    }
    if (fix.edits.empty()) return std::nullopt;
    return fix;
}

void judge(const ScriptView& script, std::size_t first, std::size_t end,
           std::vector<FindingDraft>& found) {
    if (end - first < shortest_list) return;
    std::size_t sentences = 0;
    for (std::size_t i = first; i < end; ++i) {
        if (has_pace(script.thoughts[i])) return;
        sentences += is_sentence(script.thoughts[i]) ? 1 : 0;
    }
    if (2 * sentences >= end - first) return;
    const auto words = words_of(script.thoughts[first]);
    auto fix = slow_down(script, first, end);
    if (!words || !fix) return;
    found.push_back({.span = *words + script.thoughts[first].begin.value,
                     .message = fmt::format("a list of {} at the pace of talk; slow down for it",
                                            counted(static_cast<int>(end - first), "item")),
                     .fixes = {std::move(*fix)}});
}

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    const auto& items = script.concerned;
    for (std::size_t i = 0; i < items.size();) {
        const std::size_t first = items[i];
        std::size_t end = first;
        while (i < items.size() && items[i] == end) {
            ++i;
            ++end;
        }
        judge(script, first, end, found);
    }
    return found;
}

bool is_item(const ThoughtView& view) {
    return view.kind == BlockKind::item;
}

} // namespace

extern const Rule list_unslowed = {
    .id = "list-unslowed",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "A list that nothing slows down",
    .manual =
        "Readers slow down for a list, because a listener cannot look back at its items (common "
        "practice, no source). "
        "The time assumes it only where `< >` says so. "
        "Said once of a list of three items or more in which no item has a pace of its own, and "
        "not "
        "of a list of whole sentences; the fix slows each item.",
    .check_script = check,
    .concerns = is_item,
};

} // namespace say::rules
