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

// "It is not that we don't care. It is that we don't look": what is denied is a whole clause.
bool denies_clause(const ThoughtView& view, int first, int end) {
    for (int i = first; i + 1 < end; ++i) {
        const std::string_view next = heard(view, i + 1);
        if (denies(heard(view, i))) return next == "that" || next == "because";
    }
    return false;
}

bool answers_clause(const ThoughtView& view, int denial, int first, int end) {
    constexpr int opening = 4; // "it is just that"
    if (!denies_clause(view, denial, first) || !opens_answer(heard(view, first))) return false;
    for (int i = first + 1; i < std::min(end, first + opening); ++i) {
        const std::string_view word = heard(view, i);
        if (denies(word)) return false;
        if (word == "that" || word == "because") return true;
    }
    return false;
}

// One name for the forms of "be" and of "have".
std::string_view verb_of(std::string_view word) {
    if (word == "can't" || word == "cannot") return "can";
    if (word == "won't") return "will";
    if (word.ends_with("n't")) word.remove_suffix(3);
    constexpr std::array<std::string_view, 5> be = {"am", "are", "is", "was", "were"};
    constexpr std::array<std::string_view, 3> have = {"had", "has", "have"};
    if (is_one_of(word, be)) return "be";
    if (is_one_of(word, have)) return "have";
    return word;
}

// "We did not have money. We had a roof", "they are not fish. They are limpets": the same subject,
// and the same verb without its "not".
bool affirms(const ThoughtView& view, int denial, int first, int end) {
    if (first + 2 >= end || heard(view, denial) != heard(view, first)) return false;
    const std::string_view verb = verb_of(heard(view, first + 1));
    if (!is_finite(heard(view, first + 1)) || denies(view, first, end)) return false;
    for (int i = denial + 1; i < first; ++i) {
        const std::string_view word = heard(view, i);
        if (!denies(word)) continue;
        const std::string_view with = word == "not" ? heard(view, i - 1) : word;
        return verb == verb_of(with) || verb == verb_of(heard(view, i + 1));
    }
    return false;
}

bool answers(const ThoughtView& view, int denial, int first, int end) {
    if (first >= end) return false;
    if (answers_clause(view, denial, first, end)) return true;
    if (!denies(view, denial, first) || denies(view, first, end)) return false;
    return opens_answer(heard(view, first)) || repeats(view, denial, first, end);
}

// "And not yet", "but not only", "not the least": this measures what was said, or leads on.
bool is_measured(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 17> list = {
        "all",  "always", "as",    "before", "even", "every", "just", "merely", "much",
        "once", "only",   "quite", "really", "so",   "too",   "very", "yet"};
    const std::string_view word = heard(view, index);
    const std::string_view next = heard(view, index + 1);
    return is_one_of(word, list) || (word == "the" && (next == "less" || next.ends_with("st")));
}

bool has_verb(const ThoughtView& view, int first, int end) {
    for (int i = first; i < end; ++i) {
        if (is_finite(heard(view, i))) return true;
        if (is_parted_behind(view, i)) return false;
    }
    return false;
}

// "For ten minutes, not for two": where figures are set against each other, the figure.
int holds_true(const ThoughtView& view, int first, int end, int denial, int last) {
    constexpr int near = 4; // words
    bool of_numbers = false;
    for (int i = denial + 1; i < std::min(last, denial + near); ++i)
        of_numbers = of_numbers || is_number(view, i);
    for (int i = end - 1; of_numbers && i >= std::max(first, end - near); --i) {
        if (is_number(view, i) && !is_multiple_of_number(heard(view, i))) return i;
    }
    return last_new_word(view, first, first, end);
}

// "A, not B", "A and not B", "A, but not B": the end of A.
int before_denial(const ThoughtView& view, const Sentence& sentence) {
    for (int i = sentence.first + 1; i < sentence.last; ++i) {
        if (heard(view, i) != "not") continue;
        const std::string_view left = heard(view, i - 1);
        const bool joined = left == "and" || left == "but";
        if (!joined && !is_parted_behind(view, i - 1)) continue;
        if (is_finite(heard(view, i + 1)) || denies(view, sentence.first, i)) return -1;
        if (!joined) return holds_true(view, sentence.first, i, i, sentence.last);
        if (is_measured(view, i + 1) || has_verb(view, i + 1, sentence.last)) return -1;
        return holds_true(view, sentence.first, i - 1, i, sentence.last);
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

// The answer's news: "a roof that leaked" is the roof.
int news_of_answer(const ThoughtView& view, int denial, const Sentence& answer) {
    for (int i = answer.first + 2; i < answer.last; ++i) {
        const std::string_view word = heard(view, i);
        if (word != "that" && word != "who" && word != "which") continue;
        const bool noun = is_content(view, i - 1) &&
                          (is_determiner(heard(view, i - 2)) || is_determiner(heard(view, i - 3)));
        if (!noun || is_parted_behind(view, i - 1)) continue;
        const int head = last_new_word(view, denial, answer.first, i);
        if (head >= 0) return head;
    }
    return last_new_word(view, denial, answer.first, answer.last);
}

// "Less plastic, more time": what is asked for stands last. "I used to fear the sea; now I miss
// it": what holds today.
int after_change(const ThoughtView& view, const Sentence& sentence) {
    const int part = end_of_part(view, sentence.first, sentence.last);
    if (part >= sentence.last) return -1;
    const std::string_view from = heard(view, sentence.first);
    const std::string_view to = heard(view, part);
    const bool less = from == "less" || from == "fewer";
    if ((less && to == "more") || (from == "more" && (to == "less" || to == "fewer")))
        return last_new_word(view, sentence.first, part, sentence.last);
    if (to != "now" || !is_said_in(view, "used", sentence.first, part)) return -1;
    return last_new_word(view, sentence.first, part + 1, sentence.last);
}

int size_of(const Sentence& sentence) {
    return sentence.last - sentence.first;
}

// A denial that the next sentence answers, or denies further until one does.
void join_sentences(const ThoughtView& view, const Sentence& denial, const Sentence& next,
                    Contrast& of_denial, Contrast& of_next) {
    if (size_of(denial) > longest_denial || size_of(next) > longest_answer) return;
    if (of_denial.word >= 0) return;
    const std::string_view opener = heard(view, denial.first);
    const bool by_pronoun = opener == "nobody" || opener == "nothing";
    if (!by_pronoun && !denies(view, denial.first, denial.last)) return;
    if (of_next.yields) {
        of_denial.yields = repeats(view, denial.first, next.first, next.last);
        return;
    }
    if (heard(view, next.first) == "but") return;
    if (by_pronoun ? !repeats(view, denial.first, next.first, next.last)
                   : !affirms(view, denial.first, next.first, next.last) &&
                         !answers(view, denial.first, next.first, next.last))
        return;
    of_denial.yields = true;
    of_next.word = news_of_answer(view, denial.first, next);
}

int within(const ThoughtView& view, const Sentence& sentence) {
    if (size_of(sentence) > longest_sentence) return -1;
    for (const auto find : {before_denial, after_denial, last_of_likes, after_change}) {
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
