// Two words that a listener may cut in another place: "grey tape" and "great ape".
#include "speech/other_hearing.h"

#include "rules/join.h"
#include "rules/wording.h"

#include <fmt/core.h>

namespace say::rules {
namespace {

// The spoken words from the last pause to word `index`; empty unless each is one spoken word.
std::vector<TwisterWord> words_to(const ThoughtView& view, int index) {
    std::vector<TwisterWord> words;
    for (int i = index; i >= 0 && i >= index - 2; --i) {
        const Said& said = view.reading.said[static_cast<std::size_t>(i)];
        if (i < index && said.after != Juncture::none) break;
        if (said.spoken.size() != 1 || said.spoken.front().letters || said.phones.empty()) break;
        words.insert(words.begin(), {said.spoken.front().text, said.phones.front()});
    }
    return words;
}

std::optional<std::string> heard_before(const ThoughtView& view, int index) {
    const std::vector<TwisterWord> words = words_to(view, index);
    if (words.size() < 2) return std::nullopt;
    return other_hearing(words, words.size() - 1);
}

std::vector<FindingDraft> check(const ThoughtView& view) {
    std::vector<FindingDraft> found;
    const int count = static_cast<int>(view.reading.said.size());
    for (int i = 1; i < count; ++i) {
        if (!is_open(view, i)) continue;
        const auto heard = heard_before(view, i);
        if (!heard) continue;
        const Span words = words_span(view, i - 1, i);
        found.push_back({.span = words,
                         .message = fmt::format("{} may be heard as {}",
                                                quoted(slice(view.source, words)), quoted(*heard)),
                         .fixes = join_fixes(view, i, [](const Join&) { return false; })});
    }
    return found;
}

} // namespace

extern const Rule other_hearing = {
    .id = "other-hearing",
    .severity = Severity::hint,
    .stage = Stage::mark,
    .summary = "Two words that sound like other words",
    .manual =
        "\"grey tape\" and \"great ape\" have the same sounds in the same order, and only the "
        "join stands elsewhere. "
        "Speakers mark the join by the length and breath of the sounds around it (Lehiste 1960, "
        "Nakatani and Dukes 1977, both from memory), less so at speed, and listeners who miss the "
        "mark cut where they expect a stressed syllable to begin a word (Cutler and Butterfield "
        "1992, from memory). "
        "Both sides must be common words that could stand together; the list is short on purpose. "
        "The fixes put a pause at the join, mark the words slow, or take a plainer word. "
        "A pause or a slow mark silences it.",
    .why =
        "Only the length and the breath of the sounds tell where one word ends: part them clearly.",
    .check = check,
};

} // namespace say::rules
