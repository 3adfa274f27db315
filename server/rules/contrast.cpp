// A denial and what is said in its place, by word lists: "not twelve, but twenty", "it isn't the
// cold; it's the wind", "we don't count fish. We count limpets", "look down, not out". Readers lean
// on the side that holds true (common practice, no source).
#include "rules/contrast.h"

#include "rules/clause.h"
#include "rules/word_class.h"
#include "speech/lexicon.h"

#include <algorithm>

namespace say::rules {
namespace {

// What is set against each other is near each other; no real sentence of more words is one
// contrast.
constexpr int longest_sentence = 40;
// Two sentences belong together only while the first is still in the ear.
constexpr int longest_denial = 20;
constexpr int longest_answer = 12;

bool denies(std::string_view word) {
    return word == "not" || word == "never" || word.ends_with("n't");
}

bool denies(const ThoughtView& view, int first, int end) {
    for (int i = first; i < end; ++i) {
        if (denies(heard(view, i))) return true;
    }
    return false;
}

bool is_said_in(const ThoughtView& view, std::string_view word, int first, int end) {
    for (int i = first; i < end; ++i) {
        if (heard(view, i) == word) return true;
    }
    return false;
}

// The last word of [first, end) that carries meaning and was not said in [before, first): the new
// item.
int last_new_word(const ThoughtView& view, int before, int first, int end) {
    for (int i = end - 1; i >= first; --i) {
        const std::string_view word = heard(view, i);
        if (is_content(view, i) && (word.empty() || !is_said_in(view, word, before, first)))
            return i;
    }
    return -1;
}

// "It's", "but", "they are": what takes the place of what was denied.
bool opens_answer(std::string_view word) {
    constexpr std::array<std::string_view, 6> list = {"but",     "it's", "that's",
                                                      "they're", "it",   "just"};
    return is_one_of(word, list);
}

// The answer says a word of the denial again: "you don't need a boat, you need boots".
bool repeats(const ThoughtView& view, int denial, int first, int end) {
    for (int i = first; i < end; ++i) {
        const std::string_view word = heard(view, i);
        if (!word.empty() && is_content(view, i) && is_said_in(view, word, denial, first))
            return true;
    }
    return false;
}

bool answers(const ThoughtView& view, int denial, int first, int end) {
    if (first >= end || !denies(view, denial, first) || denies(view, first, end)) return false;
    return opens_answer(heard(view, first)) || repeats(view, denial, first, end);
}

// "A, not B": the end of A.
int before_denial(const ThoughtView& view, const Sentence& sentence) {
    for (int i = sentence.first + 1; i < sentence.last; ++i) {
        if (heard(view, i) != "not" || !is_parted_behind(view, i - 1)) continue;
        if (is_finite(heard(view, i + 1)) || denies(view, sentence.first, i)) return -1;
        return last_new_word(view, sentence.first, sentence.first, i);
    }
    return -1;
}

int end_of_part(const ThoughtView& view, int first, int end) {
    int i = first + 1;
    while (i < end && !is_parted_behind(view, i - 1))
        ++i;
    return i;
}

// "Not A, but B", "A isn't so; it's B": the end of B's first part.
int after_denial(const ThoughtView& view, const Sentence& sentence) {
    int part = end_of_part(view, sentence.first, sentence.last);
    while (part < sentence.last) {
        const int end = end_of_part(view, part, sentence.last);
        if (answers(view, sentence.first, part, end))
            return last_new_word(view, sentence.first, part, end);
        part = end;
    }
    return -1;
}

// "They came by bus, they came by bike, and one came by kayak": what the last of the likes adds.
int last_of_likes(const ThoughtView& view, const Sentence& sentence) {
    int likes = 0;
    int part = end_of_part(view, sentence.first, sentence.last);
    int last = part;
    while (part < sentence.last) {
        const int end = end_of_part(view, part, sentence.last);
        if (!repeats(view, sentence.first, part, end)) return -1;
        ++likes;
        last = part;
        part = end;
    }
    return likes < 2 ? -1 : last_new_word(view, sentence.first, last, sentence.last);
}

int size_of(const Sentence& sentence) {
    return sentence.last - sentence.first;
}

// A denial that the next sentence answers, or denies further until one does.
void join_sentences(const ThoughtView& view, const Sentence& denial, const Sentence& next,
                    Contrast& of_denial, Contrast& of_next) {
    if (size_of(denial) > longest_denial || size_of(next) > longest_answer) return;
    if (!denies(view, denial.first, denial.last) || of_denial.word >= 0) return;
    if (of_next.yields) {
        of_denial.yields = repeats(view, denial.first, next.first, next.last);
        return;
    }
    if (!answers(view, denial.first, next.first, next.last) || heard(view, next.first) == "but")
        return;
    of_denial.yields = true;
    of_next.word = last_new_word(view, denial.first, next.first, next.last);
}

int within(const ThoughtView& view, const Sentence& sentence) {
    if (size_of(sentence) > longest_sentence) return -1;
    for (const auto find : {before_denial, after_denial, last_of_likes}) {
        const int word = find(view, sentence);
        if (word >= 0) return word;
    }
    return -1;
}

} // namespace

std::vector<Contrast> find_contrasts(const ThoughtView& view) {
    const auto& sentences = view.reading.sentences;
    std::vector<Contrast> found(sentences.size());
    for (std::size_t i = sentences.size(); i-- > 0;) {
        found[i].word = within(view, sentences[i]);
        if (i + 1 < sentences.size())
            join_sentences(view, sentences[i], sentences[i + 1], found[i], found[i + 1]);
    }
    return found;
}

} // namespace say::rules
