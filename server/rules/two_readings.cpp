// A figure, a date or initials that another reader would say in another way. The text cannot say
// which is meant, so the writer is asked, and the answer is kept in the script.
#include "base/lists.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "speech/passage.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <optional>
#include <string>
#include <unordered_set>

namespace say::rules {
namespace {

// How it is said now, as it would be written in `{= ... }`.
std::string assumed_reading(const Said& said) {
    std::string text;
    for (const SpokenWord& word : said.spoken) {
        if (!text.empty()) text += ' ';
        if (!word.letters) {
            text += word.text;
            continue;
        }
        text += ascii::upper(word.text); // initials stay capitals, so that they are spelled again
    }
    return text;
}

// In full, as readings have it.
bool is_month(std::string_view word) {
    return !word.empty() && month_words(word) == word;
}

// Words of a reading are folded; the names of months get their capital back.
std::string as_written(std::string_view reading) {
    std::string text;
    while (!reading.empty()) {
        const std::string_view word = reading.substr(0, reading.find(' '));
        if (!text.empty()) text += ' ';
        text += is_month(word) ? unicode::to_upper_first(word) : std::string(word);
        reading.remove_prefix(std::min(reading.size(), word.size() + 1));
    }
    return text;
}

bool holds_letters(const Said& said) {
    for (const SpokenWord& word : said.spoken) {
        if (word.letters) return true;
    }
    return false;
}

bool opens_sentence(const ThoughtView& view, int index) {
    for (const Sentence& sentence : view.reading.sentences) {
        if (sentence.first == index) return true;
    }
    return false;
}

// Does a full stop behind the word belong to it, and end no sentence? "St. Anne".
bool is_dotted(const ThoughtView& view, int index) {
    const Offset end = view.written.words[static_cast<std::size_t>(index)].source.end;
    return view.source.substr(end.value).starts_with(". ") &&
           index + 1 < static_cast<int>(view.reading.said.size()) &&
           !opens_sentence(view, index + 1);
}

// "Quay St" is "Quay Street".
bool has_capital(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    return word.size() > 1 && ascii::is_upper(word[0]) && ascii::is_lower(word[1]);
}

std::optional<Fix> say_as(const ThoughtView& view, int index, std::string_view reading) {
    const Offset end = view.written.words[static_cast<std::size_t>(index)].source.end;
    // The braces would cut the word and its full stop apart.
    if (is_dotted(view, index) || reading.find_first_of("{}\n") != std::string_view::npos)
        return std::nullopt;
    return Fix{.title = fmt::format("Say it as {}", quoted(reading)),
               .edits = {{{end, end}, fmt::format("{{= {}}}", reading)}},
               // Which reading is meant is for the writer to say: no bulk fix answers for them.
               .keeps_every_word = false};
}

Fix write_out(const ThoughtView& view, int index, std::string_view reading) {
    Span span = view.written.words[static_cast<std::size_t>(index)].source;
    if (is_dotted(view, index)) ++span.end.value;
    const bool capital = opens_sentence(view, index) || has_capital(view, index);
    std::string text = capital ? unicode::to_upper_first(reading) : std::string(reading);
    return {.title = fmt::format("Write out {}", quoted(reading)),
            .edits = {{span, std::move(text)}},
            .keeps_every_word = false};
}

bool has_mark_inside(const ThoughtView& view, int index) {
    const Word& word = view.written.words[static_cast<std::size_t>(index)];
    return word.source.size() != word.plain.size();
}

FindingDraft draft_for(const ThoughtView& view, int index) {
    const Said& said = view.reading.said[static_cast<std::size_t>(index)];
    const std::string assumed = as_written(assumed_reading(said));
    FindingDraft draft{.span = view.written.words[static_cast<std::size_t>(index)].source,
                       .message = fmt::format("{} is timed as {}; a reader may say {}",
                                              quoted(view.word(index)), quoted(assumed),
                                              quoted(as_written(said.readings.front()))),
                       .fixes = {},
                       .readings = {assumed}};
    if (auto fix = say_as(view, index, assumed)) {
        fix->preferred = true;
        draft.fixes.push_back(std::move(*fix));
    }
    for (const std::string& reading : said.readings) {
        draft.readings.push_back(as_written(reading));
        if (auto fix = say_as(view, index, draft.readings.back()))
            draft.fixes.push_back(std::move(*fix));
    }
    if (!has_mark_inside(view, index) && !holds_letters(said)) {
        draft.fixes.push_back(write_out(view, index, assumed));
    }
    return draft;
}

void move_by(FindingDraft& draft, std::uint32_t bytes) {
    draft.span = draft.span + bytes;
    for (Fix& fix : draft.fixes) {
        for (TextEdit& edit : fix.edits)
            edit.span = edit.span + bytes;
    }
}

bool is_silenced(const ThoughtSummary& thought) {
    const auto& allow = thought.written->allow;
    return is_one_of("two-readings", allow);
}

bool asks(const ThoughtView& view, int index) {
    const Said& said = view.reading.said[static_cast<std::size_t>(index)];
    return !said.readings.empty() && !said.spoken.empty() && !is_given(said.known) &&
           mark_over(view, index, MarkKind::say_as) == nullptr;
}

bool says_month(const Said& said) {
    return std::any_of(said.spoken.begin(), said.spoken.end(),
                       [](const SpokenWord& word) { return is_month(word.text); });
}

bool names_month(std::string_view reading) {
    while (!reading.empty()) {
        const std::string_view word = reading.substr(0, reading.find(' '));
        if (is_month(word)) return true;
        reading.remove_prefix(std::min(reading.size(), word.size() + 1));
    }
    return false;
}

// "5/3" as a day of May or of March, and not as a fraction.
bool is_order_of_date(const Said& said) {
    return says_month(said) && names_month(said.readings.front());
}

// Do the dates of the script that can be read in one order only have the order of its language?
bool dates_tell_order(const ScriptView& script) {
    const DateOrder own =
        script.language == Language::en_gb ? DateOrder::day_first : DateOrder::month_first;
    bool told = false;
    for (const ThoughtSummary& thought : script.thoughts) {
        if (thought.source.find('/') == std::string_view::npos) continue;
        const ThoughtView view = view_of(script, thought);
        for (std::size_t i = 0; i < view.reading.said.size(); ++i) {
            const std::optional<DateOrder> order = order_told_by(view.word(static_cast<int>(i)));
            if (!order || !says_month(view.reading.said[i])) continue;
            if (*order != own) return false;
            told = true;
        }
    }
    return told;
}

// A header that names its language names the order of its dates.
bool is_order_settled(const ScriptView& script) {
    return !script.header.language.empty() || dates_tell_order(script);
}

// A figure may be meant in another way each time it stands there; initials are read alike
// throughout, so they are asked about once.
std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<FindingDraft> found;
    std::unordered_set<std::string_view> asked;
    std::optional<bool> order_settled; // found out when the first date asks
    for (const std::uint32_t concerned : script.concerned) {
        const ThoughtSummary& thought = script.thoughts[concerned];
        const auto& said = thought.reading->said;
        for (std::size_t i = 0; i < said.size(); ++i) {
            if (said[i].readings.empty()) continue;
            const ThoughtView view = view_of(script, thought);
            const int index = static_cast<int>(i);
            if (!asks(view, index) || is_silenced(thought)) continue;
            if (is_order_of_date(said[i])) {
                if (!order_settled) order_settled = is_order_settled(script);
                if (*order_settled) continue;
            }
            if (holds_letters(said[i]) && !asked.insert(view.word(index)).second) continue;
            FindingDraft draft = draft_for(view, index);
            move_by(draft, thought.begin.value);
            found.push_back(std::move(draft));
        }
    }
    return found;
}

bool has_readings(const ThoughtView& view) {
    return view.reading.has_readings;
}

} // namespace

extern const Rule two_readings = {
    .id = "two-readings",
    .severity = Severity::hint,
    .summary = "A figure or initials that can be read in more than one way",
    .manual =
        "\"5/3\" is a fraction, a date in May or a date in March; initials are spelled or said as "
        "a word. "
        "The time shown assumes the likeliest reading; whoever stands at the camera may choose "
        "another. "
        "The fixes keep what is written on the page and add how to say it, `{= ... }`, one for "
        "each reading, or write the assumed reading out. "
        "A figure is asked about wherever it stands, initials once a script. "
        "Day or month first is not asked where the header names the language, or where a date "
        "such as 12/25 shows the order. "
        "A bulk fix leaves these alone: only the writer knows which reading is meant.",
    .check_script = check,
    .concerns = has_readings,
};

} // namespace say::rules
