// Settles marks by what the words are; everything else of a mark is decided by its shape.
#include "speech/settle.h"

#include "speech/lexicon.h"
#include "speech/spoken.h"
#include "text/unicode.h"

#include <algorithm>

namespace say {
namespace {

struct Case {
    int upper = 0;
    int lower = 0;
};

// Letters of a word by case; digits and the like make it no candidate.
Case case_of(std::string_view word) {
    Case result;
    for (char c : word) {
        if (c >= 'A' && c <= 'Z') {
            ++result.upper;
        } else if (c == '\'') {
            continue;
        } else {
            ++result.lower;
        }
    }
    return result;
}

std::string_view text_of(const Written& written, const Word& word) {
    return slice(written.plain.text, word.plain);
}

bool shouted(std::string_view word) {
    if (word.size() < 2 || word[0] < 'A' || word[0] > 'Z') return false;
    const Case letters = case_of(word);
    return letters.lower == 0 && letters.upper >= 2;
}

// A thought all in capitals is a habit of typing, not a punch on every word.
void add_punches(Written& written) {
    std::vector<int> candidates;
    bool has_plain_word = false;
    for (std::size_t i = 0; i < written.words.size(); ++i) {
        const Word& word = written.words[i];
        const std::string_view text = text_of(written, word);
        if (!shouted(text)) {
            has_plain_word = has_plain_word || case_of(text).lower >= 2;
        } else if (!word.escaped && capitals_kind(text) == Capitals::ordinary) {
            candidates.push_back(static_cast<int>(i));
        }
    }
    if (!has_plain_word) return;
    for (int index : candidates) {
        Mark mark;
        mark.kind = MarkKind::punch;
        mark.span = written.words[static_cast<std::size_t>(index)].source;
        mark.first = mark.last = index;
        const auto place = std::upper_bound(
            written.marks.begin(), written.marks.end(), mark.span.begin,
            [](Offset begin, const Mark& other) { return begin < other.span.begin; });
        written.marks.insert(place, std::move(mark));
    }
}

// A stretch is drawn in a word that people know; elsewhere (std::vector) the colons are text.
void drop_odd_stretches(Written& written) {
    std::erase_if(written.marks, [&](const Mark& mark) {
        if (mark.kind != MarkKind::stretch) return false;
        if (mark.first < 0) return true;
        const Word& word = written.words[static_cast<std::size_t>(mark.first)];
        return !in_lexicon(unicode::fold(text_of(written, word)));
    });
}

void check_pronouncers(Written& written) {
    for (const Mark& mark : written.marks) {
        if (mark.kind != MarkKind::pronouncer || mark.argument.empty()) continue;
        if (mark.argument.find('_') != std::string::npos)
            continue; // a template's field, reported as such
        if (!read_pronouncer(mark.argument).empty()) continue;
        written.problems.push_back({ProblemKind::unreadable_pronouncer, mark.span, mark.argument});
    }
}

} // namespace

std::vector<Phones> read_pronouncer(std::string_view argument) {
    std::vector<Phones> parts;
    const bool ipa = argument.starts_with('/');
    std::size_t at = 0;
    while (at < argument.size()) {
        const std::size_t begin = argument.find_first_not_of(" \t\r\n", at);
        if (begin == std::string_view::npos) break;
        at = std::min(argument.find_first_of(" \t\r\n", begin), argument.size());
        const std::string_view part = argument.substr(begin, at - begin);
        auto phones = ipa ? from_ipa(part) : from_respelling(part);
        if (!phones || phones->empty()) return {};
        parts.push_back(std::move(*phones));
    }
    return parts;
}

void settle(Written& written) {
    add_punches(written);
    if (written.marks.empty()) return;
    drop_odd_stretches(written);
    check_pronouncers(written);
}

} // namespace say
