// "do not" where people say "don't". Left alone where the full form is heard on purpose: under a
// stress, at the end of a clause, in a contrast, in a prohibition.
#include "base/lists.h"
#include "rules/clause.h"
#include "rules/rule.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <string>

namespace say::rules {
namespace {

struct Place {
    int first = 0; // words first and first + 1
    std::string said;
};

std::string with_not(std::string_view verb) {
    if (verb == "will") return "won't";
    if (verb == "can") return "can't";
    constexpr std::array<std::string_view, 14> verbs = {"do",    "does",  "did",    "is",   "are",
                                                        "was",   "were",  "has",    "have", "had",
                                                        "would", "could", "should", "must"};
    return is_one_of(verb, verbs) ? std::string(verb) + "n't" : std::string{};
}

// "have" is short only as a helper: "we've seen", never "we've a boat".
bool helps(const ThoughtView& view, int index) {
    const std::string_view next = heard(view, index + 1);
    constexpr std::array<std::string_view, 12> participles = {"been", "seen",  "done",   "gone",
                                                              "had",  "made",  "got",    "found",
                                                              "come", "taken", "become", "never"};
    return is_one_of(next, participles) || (next.size() > 4 && next.ends_with("ed"));
}

std::string with_verb(const ThoughtView& view, int index) {
    const std::string_view subject = heard(view, index);
    const std::string_view verb = heard(view, index + 1);
    constexpr std::array<std::string_view, 7> third = {"it",  "that", "there", "he",
                                                       "she", "what", "here"};
    constexpr std::array<std::string_view, 3> plural = {"we", "you", "they"};
    const bool pronoun =
        subject == "i" || subject == "he" || subject == "she" || is_one_of(subject, plural);
    if (verb == "is" && is_one_of(subject, third)) return std::string(subject) + "'s";
    if (verb == "are" && is_one_of(subject, plural)) return std::string(subject) + "'re";
    if (verb == "am" && subject == "i") return "i'm";
    if (verb == "will" && (pronoun || subject == "it")) return std::string(subject) + "'ll";
    if (verb == "have" && (subject == "i" || is_one_of(subject, plural)) &&
        helps(view, index + 1)) {
        return std::string(subject) + "'ve";
    }
    return {};
}

// "what it is", "how good it is to": what stands in front has moved away from behind the verb.
bool question_in_front(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 12> list = {"how",  "what",     "where",   "who",
                                                       "than", "as",       "which",   "when",
                                                       "why",  "whatever", "however", "that"};
    for (int i = index - 1; i >= std::max(0, index - 4); --i) {
        if (view.reading.said[static_cast<std::size_t>(i)].after != Juncture::none) return false;
        if (is_one_of(heard(view, i), list)) return true;
    }
    return false;
}

// "Part of it is", "what you see here is": the word belongs to what stands before it.
bool belongs_before(const ThoughtView& view, int index) {
    if (index == 0 ||
        view.reading.said[static_cast<std::size_t>(index - 1)].after != Juncture::none) {
        return false;
    }
    const std::string_view word = heard(view, index);
    if (word == "here" || word == "there") return true;
    constexpr std::array<std::string_view, 12> prepositions = {
        "of", "in", "for", "with", "on", "to", "at", "from", "about", "by", "like", "see"};
    return is_one_of(heard(view, index - 1), prepositions);
}

bool contrast_follows(const ThoughtView& view, int index) {
    const int end = std::min(static_cast<int>(view.reading.said.size()), index + 10);
    for (int i = index; i < end; ++i) {
        const std::string_view word = heard(view, i);
        if (word == "but" || word == "only" || word == "just") return true;
        if (view.reading.said[static_cast<std::size_t>(i)].after == Juncture::stop) return false;
    }
    return false;
}

bool opens_sentence(const ThoughtView& view, int index) {
    return index == 0 ||
           view.reading.said[static_cast<std::size_t>(index - 1)].after == Juncture::stop;
}

// Plain words with one blank between them, in the middle of a clause, with no weight on them.
bool is_loose(const ThoughtView& view, int index) {
    const auto& words = view.written.words;
    const auto at = static_cast<std::size_t>(index);
    if (at + 2 >= words.size()) return false;
    const Span gap{words[at].source.end, words[at + 1].source.begin};
    if (slice(view.source, gap) != " ") return false;
    if (is_stressed(view, index) || is_stressed(view, index + 1)) return false;
    if (mark_over(view, index, MarkKind::quoted) != nullptr) return false; // as somebody said it
    return view.reading.said[at].after == Juncture::none &&
           view.reading.said[at + 1].after == Juncture::none;
}

std::string short_form(const ThoughtView& view, int index) {
    const std::string_view word = heard(view, index);
    if (word == "cannot" && !is_stressed(view, index) && !contrast_follows(view, index)) {
        return "can't";
    }
    if (!is_loose(view, index)) return {};
    const std::string_view next = heard(view, index + 1);
    if (next == "not") {
        // "Do not touch them" is meant to be heard in full.
        if (word == "do" && opens_sentence(view, index)) return {};
        // "it is not": the earlier pair is the one people shorten.
        if (!with_verb(view, index - 1).empty()) return {};
        const bool owns = word == "have" || word == "has" || word == "had";
        if (owns && !helps(view, index + 1)) return {};
        return contrast_follows(view, index) ? std::string{} : with_not(word);
    }
    if (question_in_front(view, index) || belongs_before(view, index)) return {};
    // "What is is": the first verb ends a clause of its own.
    if (heard(view, index + 2) == next) return {};
    const bool negated = heard(view, index + 2) == "not";
    if (negated && contrast_follows(view, index)) return {};
    return with_verb(view, index);
}

std::vector<Place> find_places(const ThoughtView& view) {
    std::vector<Place> places;
    const int count = static_cast<int>(view.reading.said.size());
    for (int i = 0; i < count; ++i) {
        std::string said = short_form(view, i);
        if (said.empty()) continue;
        places.push_back({i, std::move(said)});
        ++i;
    }
    return places;
}

Span span_of(const ThoughtView& view, const Place& place) {
    const auto first = static_cast<std::size_t>(place.first);
    const bool one = heard(view, place.first) == "cannot";
    return {view.written.words[first].source.begin,
            view.written.words[one ? first : first + 1].source.end};
}

TextEdit edit_of(const ThoughtView& view, const Place& place) {
    const Span span = span_of(view, place);
    const std::string_view written = slice(view.source, span);
    const bool capital = !written.empty() && ascii::is_upper(written.front());
    return {span, capital ? unicode::to_upper_first(place.said) : place.said};
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    const std::vector<Place> places = find_places(view);
    if (places.empty()) return {};

    // One finding a thought: the writer decides on a tone, not on each word.
    const TextEdit first = edit_of(view, places.front());
    Fix fix{.title = fmt::format("Say {}", quoted(first.replacement)),
            .edits = {},
            .keeps_every_word = false,
            .preferred = true};
    if (places.size() > 1) fix.title += fmt::format(" and {} more", places.size() - 1);
    for (const Place& place : places)
        fix.edits.push_back(edit_of(view, place));
    FindingDraft draft{.span = span_of(view, places.front()),
                       .message = fmt::format("{} sounds read out; most people say {}",
                                              quoted(slice(view.source, first.span)),
                                              quoted(first.replacement)),
                       .fixes = {}};
    draft.fixes.push_back(std::move(fix));
    return {std::move(draft)};
}

} // namespace

extern const Rule contraction = {
    .id = "contraction",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "A full form where people say the short one",
    .manual =
        "\"It is\" and \"do not\" in full make talk sound read out. "
        "Nothing is said where the full form is heard on purpose: under a stress, at the end of a "
        "clause, in a contrast (\"not the tide, but the wind\"), in a quotation, in a "
        "prohibition that opens its sentence (\"Do not touch them\"). "
        "At most one finding a thought; the fix shortens every such place in it.",
    .check = check,
};

} // namespace say::rules
