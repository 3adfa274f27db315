// Looks phrases up in the plain-words table, word by word.
#include "rules/plain_words.h"

#include "base/lists.h"
#include "rules/clause.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "speech/lexicon.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <iterator>

namespace say::rules {
namespace {

enum Condition : unsigned {
    not_behind_article = 1, // there it is a noun: "an attempt"
    opener = 2,             // only where it opens a clause: "accordingly"
    noun_too = 4,           // nor one word behind it: "a vain attempt"
};

struct Row {
    std::string_view written; // words joined by one blank
    std::string_view swaps;   // parted by "|"; "did~done" parts past tense and participle
    Stage heard;
    unsigned conditions;
};

constexpr Row rows[] = {
#include "rules/data/plain_words.inc"
};

std::string_view first_word(std::string_view phrase) {
    return phrase.substr(0, phrase.find(' '));
}

// How many words of the thought the phrase covers from `index` on; 0 if it does not stand there.
int words_matched(const ThoughtView& view, int index, std::string_view phrase) {
    int count = 0;
    while (true) {
        const std::string_view word = first_word(phrase);
        const int at = index + count;
        if (heard(view, at) != word) return 0;
        ++count;
        if (word.size() == phrase.size()) return count;
        // A phrase does not reach over punctuation.
        if (view.reading.said[static_cast<std::size_t>(at)].after != Juncture::none) return 0;
        phrase.remove_prefix(word.size() + 1);
    }
}

bool is_article(std::string_view word) {
    constexpr std::array<std::string_view, 15> list = {"a",   "an",    "the",  "my",    "your",
                                                       "his", "its",   "our",  "their", "each",
                                                       "no",  "every", "some", "any",   "another"};
    return is_one_of(word, list);
}

bool opens(const ThoughtView& view, int index) {
    if (index == 0) return true;
    const Juncture before = view.reading.said[static_cast<std::size_t>(index - 1)].after;
    return before != Juncture::none;
}

bool fits(const ThoughtView& view, const Row& row, int index, int count, Stage stage) {
    if (row.heard > stage) return false;
    if ((row.conditions & not_behind_article) != 0 && is_article(heard(view, index - 1))) {
        return false;
    }
    if ((row.conditions & noun_too) != 0 && is_article(heard(view, index - 2))) return false;
    if ((row.conditions & opener) != 0) {
        if (!opens(view, index) || heard(view, index + count) == "to") return false;
    }
    return true;
}

// Is the form behind "have" or "be" a participle?
bool behind_auxiliary(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 17> list = {
        "have", "has",  "had", "having", "be",    "been", "being",   "is",    "are",
        "was",  "were", "get", "got",    "we've", "i've", "they've", "you've"};
    for (int i = index - 1; i >= std::max(0, index - 2); --i) {
        if (is_one_of(heard(view, i), list)) return true;
    }
    return false;
}

std::vector<std::string> split_swaps(std::string_view swaps, bool participle) {
    std::vector<std::string> result;
    while (true) {
        const std::size_t bar = swaps.find('|');
        const std::string_view swap = swaps.substr(0, bar);
        const std::size_t tilde = swap.find('~');
        if (tilde == std::string_view::npos) {
            result.emplace_back(swap);
        } else if (participle) {
            // The tail of a phrase ("gave up~given up") stands on both sides.
            result.emplace_back(swap.substr(tilde + 1));
        } else {
            result.emplace_back(swap.substr(0, tilde));
        }
        if (bar == std::string_view::npos) return result;
        swaps.remove_prefix(bar + 1);
    }
}

bool sounds_like_vowel(std::string_view phrase) {
    const Pronunciation said = pronounce(first_word(phrase));
    return !said.phones.empty() && is_vowel(said.phones.front().sound);
}

// "an endeavor" becomes "a try".
void mend_article(const ThoughtView& view, int index, std::string_view swap,
                  std::vector<TextEdit>& edits) {
    const std::string_view article = heard(view, index - 1);
    if (article != "a" && article != "an") return;
    const std::string_view wanted = sounds_like_vowel(swap) ? "an" : "a";
    if (article == wanted) return;
    const Span span = view.written.words[static_cast<std::size_t>(index - 1)].source;
    const bool capital = ascii::is_upper(slice(view.source, span).front());
    edits.push_back({span, capital ? unicode::to_upper_first(wanted) : std::string(wanted)});
}

// Leaves the words out with the blanks behind them; what follows takes over the capital.
std::vector<TextEdit> leave_out(const ThoughtView& view, const PlainMatch& match, bool capital) {
    const auto& words = view.written.words;
    if (match.last >= static_cast<int>(words.size())) return {};
    const Span first = words[static_cast<std::size_t>(match.first)].source;
    const Span next = words[static_cast<std::size_t>(match.last)].source;
    const auto blanks = word_blanks(view, match.last);
    if (!blanks || blanks->begin != words[static_cast<std::size_t>(match.last - 1)].source.end) {
        return {};
    }
    std::vector<TextEdit> edits{{{first.begin, blanks->end}, ""}};
    if (capital) edits.push_back({next, unicode::to_upper_first(slice(view.source, next))});
    return edits;
}

} // namespace

Span written_span(const ThoughtView& view, const PlainMatch& match) {
    const auto& words = view.written.words;
    const auto last = static_cast<std::size_t>(match.last) - 1;
    Span span{words[static_cast<std::size_t>(match.first)].source.begin, words[last].source.end};
    // "approx." goes with its full stop, unless that ends the sentence too.
    const Sentence* sentence = sentence_of(view, match.last - 1);
    const bool ends = sentence == nullptr || sentence->last == match.last;
    if (!ends && view.source.substr(span.end.value).starts_with(". ")) ++span.end.value;
    return span;
}

PlainMatch plain_match(const ThoughtView& view, int index, Stage stage) {
    PlainMatch match;
    const std::string_view word = heard(view, index);
    if (word.empty()) return match;
    const auto range = std::equal_range(
        std::begin(rows), std::end(rows), Row{word, {}, Stage::draft, 0},
        [](const Row& a, const Row& b) { return first_word(a.written) < first_word(b.written); });
    std::string_view best;
    for (auto row = range.first; row != range.second; ++row) {
        const int count = words_matched(view, index, row->written);
        if (count <= match.last - match.first) continue;
        // The longest phrase decides, even if it is not heard yet.
        match = {.first = index, .last = index + count, .heard = row->heard, .swaps = {}};
        best = fits(view, *row, index, count, stage) ? row->swaps : std::string_view{};
        if (best.data() != nullptr) {
            match.swaps = split_swaps(best, behind_auxiliary(view, index));
        }
    }
    if (match.swaps.empty()) match.last = 0;
    return match;
}

std::vector<TextEdit> swap_edits(const ThoughtView& view, const PlainMatch& match,
                                 std::string_view swap) {
    const auto& words = view.written.words;
    const auto first = static_cast<std::size_t>(match.first);
    const auto last = static_cast<std::size_t>(match.last) - 1;
    const Span words_alone{words[first].source.begin, words[last].source.end};
    const Span plain{words[first].plain.begin, words[last].plain.end};
    // A mark inside would be lost with the words.
    if (words_alone.size() != plain.size()) return {};
    const Span span = written_span(view, match);
    const std::string_view written = slice(view.source, span);
    const bool capital = ascii::is_upper(written.front());
    if (capital && written.size() > 1 && ascii::is_upper(written[1])) return {}; // all capitals
    if (swap.empty()) return leave_out(view, match, capital);

    std::vector<TextEdit> edits;
    mend_article(view, match.first, swap, edits);
    edits.push_back({span, capital ? unicode::to_upper_first(swap) : std::string(swap)});
    return edits;
}

std::optional<Fix>
swap_fix(const ThoughtView& view, int index,
         const std::function<bool(const PlainMatch& match, std::string_view swap)>& still_clashes) {
    const PlainMatch match = plain_match(view, index, Stage::read);
    for (const std::string& swap : match.swaps) {
        const bool one_word = !swap.empty() && swap.find(' ') == std::string::npos;
        if (!one_word || still_clashes(match, swap)) continue;
        std::vector<TextEdit> edits = swap_edits(view, match, swap);
        if (edits.empty()) continue;
        return Fix{.title = fmt::format("Say {} for {}", quoted(swap), quoted(view.word(index))),
                   .edits = std::move(edits),
                   .keeps_every_word = false};
    }
    return std::nullopt;
}

} // namespace say::rules
