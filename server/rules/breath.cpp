// Places to breathe, by word lists and by what readers do (docs/phrasing.md). The lists say where
// nobody breathes, the readers which of the other places is best.
#include "rules/breath.h"

#include "rules/clause.h"
#include "rules/split.h"
#include "rules/word_class.h"
#include "speech/lexicon.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace say::rules {
namespace {

int count_of(const ThoughtView& view) {
    return static_cast<int>(view.reading.said.size());
}

bool is_object(std::string_view word) {
    constexpr std::array<std::string_view, 13> list = {
        "me",     "him",     "her",     "it",     "us",       "them",      "you",
        "myself", "himself", "herself", "itself", "yourself", "themselves"};
    return is_one_of(word, list);
}

// Words that lean on the next one.
bool is_degree(std::string_view word) {
    constexpr std::array<std::string_view, 24> list = {
        "almost", "also",   "already", "always", "even",  "ever", "hardly", "just",
        "less",   "more",   "most",    "nearly", "never", "not",  "often",  "only",
        "quite",  "really", "so",      "still",  "too",   "very", "as",     "every"};
    return is_one_of(word, list);
}

// "moves in", "give up": the second half of a verb.
bool is_particle(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 8> always = {"up",   "out",  "off",   "down",
                                                        "away", "back", "apart", "together"};
    constexpr std::array<std::string_view, 6> mostly_not = {"in",      "on",     "over",
                                                            "through", "around", "along"};
    const std::string_view word = heard(view, index);
    if (is_one_of(word, always)) return true;
    if (!is_one_of(word, mostly_not)) return false;
    const bool ends = index + 1 == count_of(view) || is_parted_behind(view, index);
    const std::string_view next = heard(view, index + 1);
    return ends || is_preposition(next) || is_conjunction(next);
}

bool is_capital(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    return !word.empty() && ascii::is_upper(word.front());
}

// "11 to 8", "7am and 9:30", "2,300 books".
bool holds_numbers(const ThoughtView& view, int index) {
    if (is_number(view, index)) return true;
    if (!is_number(view, index - 1)) return false;
    if (is_number(view, index + 1)) return true;
    const std::string_view word = heard(view, index);
    return !is_conjunction(word) && (!is_preposition(word) || word == "to" || word == "per");
}

// A small word belongs to what follows, unless it ends its phrase: "count them / and", "moves in /
// from the west".
bool holds_small_word(std::string_view left, std::string_view right) {
    if (is_conjunction(left) || is_determiner(left)) return true;
    if (is_conjunction(right)) return false;
    constexpr std::array<std::string_view, 2> places = {"here", "there"};
    const bool ends = is_object(left) || is_preposition(left) || is_one_of(left, places);
    return !ends || !is_preposition(right);
}

// A clause by its first word: "because", "before we", "which".
bool begins_clause(const ThoughtView& view, int index) {
    const Sentence* sentence = sentence_of(view, index);
    if (sentence == nullptr) return false;
    const std::string_view word = heard(view, index);
    return word == "but" || word == "which" || subordinates(view, index, sentence->last) ||
           joins_ideas(view, sentence->first, index, sentence->last);
}

// Whether an "if" or a "when" stands before word `index` in the same stretch.
bool follows_side_clause(const ThoughtView& view, int first, int index, int end) {
    constexpr int reach = 12;
    for (int i = index - 2; i >= std::max(first, index - reach); --i) {
        if (is_parted_behind(view, i)) return false;
        if (subordinates(view, i, end)) return true;
    }
    return false;
}

// "The notice says the wing will open": what is said belongs to who says it.
bool is_said_by(std::string_view word) {
    constexpr std::array<std::string_view, 16> list = {
        "believe", "felt", "hope", "hopes", "know",  "knows", "mean",   "means",
        "said",    "say",  "says", "show",  "shows", "think", "thinks", "thought"};
    return is_one_of(word, list);
}

// "If you count them every spring / you start to see": the main clause. Without an "if" it is more
// likely a part of the noun: "the one I saw".
double worth_of_subject(const ThoughtView& view, int index) {
    const Sentence* sentence = sentence_of(view, index);
    if (sentence == nullptr || !opens_clause(view, index, sentence->last)) return 0;
    if (is_said_by(heard(view, index - 1))) return -0.6;
    if (is_determiner(heard(view, index))) return 0.3;
    return follows_side_clause(view, sentence->first, index, sentence->last) ? 0.5 : -0.6;
}

// "Two years in a row are", "the house in Pellow harbour will reopen": what stands between a
// subject and its verb.
bool parts_subject(const ThoughtView& view, int index) {
    constexpr int near = 4;
    for (int i = index + 1; i <= std::min(index + near, count_of(view) - 1); ++i) {
        if (is_parted_behind(view, i - 1)) return false;
        if (is_conjunction(heard(view, i)) || is_nominative(heard(view, i))) return false;
        if (is_finite(heard(view, i))) return true;
    }
    return false;
}

// "Leaves / from the north side": the place or the time belongs to the verb.
bool is_placed(std::string_view word) {
    constexpr std::array<std::string_view, 41> list = {
        "arrive",  "arrives", "arrived", "began",  "begin",   "begins", "came",
        "closes",  "come",    "comes",   "end",    "ends",    "go",     "goes",
        "went",    "leave",   "leaves",  "left",   "lie",     "lies",   "live",
        "lives",   "living",  "meet",    "meets",  "move",    "moves",  "open",
        "opens",   "run",     "runs",    "sits",   "stand",   "stands", "start",
        "started", "starts",  "stay",    "stayed", "staying", "stays"};
    return is_one_of(word, list);
}

double worth_of_preposition(const ThoughtView& view, int index) {
    if (is_placed(heard(view, index - 1))) return -0.3;
    if (parts_subject(view, index)) return -0.6;
    return is_determiner(heard(view, index - 2)) ? 0 : 0.3; // "a kick in the teeth"
}

double worth_of_small_word(const ThoughtView& view, int index) {
    const std::string_view word = heard(view, index);
    constexpr std::array<std::string_view, 5> of_a_noun = {"who", "whom", "whose", "that", "where"};
    if (is_one_of(word, of_a_noun)) return -0.3;
    if (begins_clause(view, index)) return 1.0;
    if (word == "since" || word == "until") return worth_of_preposition(view, index);
    if (is_conjunction(word)) return word == "or" ? 0.2 : 0.6;
    if (word == "to" || word == "as") return -0.3; // it completes the verb
    if (is_preposition(word)) return worth_of_preposition(view, index);
    return worth_of_subject(view, index);
}

// What stands on either side where no punctuation does.
double worth_between(const ThoughtView& view, int index) {
    const std::string_view left = heard(view, index - 1);
    const std::string_view right = heard(view, index);
    double worth = worth_of_small_word(view, index);
    if (!left.empty() && is_function_word(left)) worth -= 0.5;
    // Subject and verb, verb and object, the words of one noun.
    if (is_finite(right)) worth -= 1.5;
    constexpr std::array<std::string_view, 7> times = {"every", "each",  "last",   "next",
                                                       "this",  "today", "tonight"};
    const bool adds_time = is_one_of(right, times);
    if (is_determiner(right) && !adds_time && worth <= 0) worth -= 1.0;
    if (!is_function_word(right) && !is_conjunction(right) && !is_preposition(right) && !adds_time)
        worth -= is_capital(view, index - 1) ? 2.0 : 1.2;
    return worth;
}

constexpr double longer_when_leant_on = 0.15; // of a word's time; docs/timing.md: 1 / 0.9

// The length of words as it will be once some of them are stressed.
Seconds length_with(const ThoughtView& view, int first, int last,
                    const std::vector<int>& leant_on) {
    Seconds length = length_of(view, first, last);
    for (const int word : leant_on) {
        if (first <= word && word <= last)
            length += said_at(view, word).seconds * longer_when_leant_on;
    }
    return length;
}

class PlaceFinder {
public:
    PlaceFinder(const ThoughtView& view, const BreathGroup& group, const std::vector<int>& leant_on)
        : view_(view), group_(group), leant_on_(leant_on), spots_(view, group.first, group.last) {}

    std::vector<int> find() {
        search(group_.first, group_.last);
        drop_needless();
        return places_;
    }

private:
    bool fits(int first, int last) const {
        return !outlasts_breath(view_, length_with(view_, first, last, leant_on_));
    }

    void search(int first, int last) {
        if (fits(first, last)) return;
        const int place = spots_.best(first, last);
        if (place == 0) return;
        search(first, place - 1);
        places_.push_back(place);
        search(place, last);
    }

    // A word that takes a breath of its own (an address read out) draws places near it that are not
    // needed once it stands alone: the worst go first.
    void drop_needless() {
        if (places_.size() < 2) return;
        std::vector<int> worst_first = places_;
        std::stable_sort(worst_first.begin(), worst_first.end(),
                         [&](int a, int b) { return spots_.worth(a) < spots_.worth(b); });
        for (const int place : worst_first) {
            const auto at = std::lower_bound(places_.begin(), places_.end(), place);
            const int first = at == places_.begin() ? group_.first : *(at - 1);
            const int last = at + 1 == places_.end() ? group_.last : *(at + 1) - 1;
            if (fits(first, last)) places_.erase(at);
        }
    }

    const ThoughtView& view_;
    const BreathGroup& group_;
    const std::vector<int>& leant_on_;
    BreathSpots spots_;
    std::vector<int> places_;
};

constexpr double no_place = -1e9;

} // namespace

bool rests_before(const Reading& reading, int index) {
    const auto pauses = pauses_behind(reading, index - 1);
    return !pauses.empty() && pauses.front().seconds >= breath_group_pause;
}

bool holds_together(const ThoughtView& view, int index) {
    if (index <= 0 || index >= count_of(view)) return true;
    if (is_parted_behind(view, index - 1)) return false;
    const std::string_view left = heard(view, index - 1);
    const std::string_view right = heard(view, index);
    if (right == "of" || right == "than" || right == "not" || is_particle(view, index)) return true;
    if (holds_numbers(view, index)) return true;
    if (is_capital(view, index - 1) && is_capital(view, index)) return true;
    const Sentence* sentence = sentence_of(view, index);
    const int end = sentence == nullptr ? count_of(view) : sentence->last;
    if (is_object(right) && !opens_clause(view, index, end)) return true;
    if (is_degree(left)) return !is_conjunction(right) && !is_preposition(right);
    return !left.empty() && is_function_word(left) && holds_small_word(left, right);
}

bool is_edge(const ThoughtView& view, int index) {
    if (holds_together(view, index)) return false;
    if (is_parted_behind(view, index - 1)) return true;
    return worth_between(view, index) > 0;
}

bool is_strong_edge(const ThoughtView& view, int index) {
    constexpr double strong = 0.5; // above a preposition
    // "Before the tide comes in": what follows is mostly a clause, though its verb is in no list.
    constexpr std::array<std::string_view, 4> mostly_clauses = {"after", "before", "once", "until"};
    return is_edge(view, index) &&
           (is_parted_behind(view, index - 1) || worth_between(view, index) >= strong ||
            is_one_of(heard(view, index), mostly_clauses));
}

bool is_clause_edge(const ThoughtView& view, int index) {
    const Sentence* sentence = sentence_of(view, index);
    return is_parted_behind(view, index - 1) || begins_clause(view, index) ||
           (sentence != nullptr && opens_clause(view, index, sentence->last));
}

double breath_worth(const ThoughtView& view, int index) {
    const Said& before = said_at(view, index - 1);
    // What readers do counts most; the word lists keep the place at a phrase's edge.
    double worth = 4.0 * static_cast<double>(before.phrasing.chances.paused);
    if (before.after == Juncture::none) {
        worth += worth_between(view, index);
        return holds_together(view, index) ? worth - 2.0 : worth;
    }
    worth += before.after == Juncture::comma ? 1.0 : 1.2;
    // "Friday, 12 March": the comma of a date.
    if (is_figure(view.word(index)) && is_capital(view, index - 1)) worth -= 2.0;
    // "01632 960 001, ext. 12" is one number.
    const std::string word = ascii::lower(view.word(index));
    if (word.starts_with("ext") && is_figure(view.word(index - 1))) worth -= 2.0;
    if (is_conjunction(heard(view, index))) worth += 0.5;
    return worth;
}

bool outlasts_breath(const ThoughtView& view, Seconds length) {
    return length > view.options.breath_limit + Seconds{0.05};
}

Seconds length_of(const ThoughtView& view, int first, int last) {
    const Said& from = said_at(view, first);
    const Said& to = said_at(view, last);
    return to.at + to.seconds - from.at;
}

std::vector<int> breath_places(const ThoughtView& view, const BreathGroup& group,
                               const std::vector<int>& leant_on) {
    if (!outlasts_breath(view, length_with(view, group.first, group.last, leant_on))) return {};
    return PlaceFinder(view, group, leant_on).find();
}

BreathSpots::BreathSpots(const ThoughtView& view, int first, int last)
    : view_(view), first_(first),
      worth_(static_cast<std::size_t>(std::max(0, last - first + 1)), no_place) {
    const std::vector<bool> held = pauseless(view, first, last);
    for (int i = first + 1; i <= last; ++i) {
        const auto at = static_cast<std::size_t>(i - first);
        if (held[at] || holds_together(view, i) || rests_before(view.reading, i)) continue;
        if (word_blanks(view, i)) worth_[at] = breath_worth(view, i);
    }
}

double BreathSpots::worth(int index) const {
    return worth_[static_cast<std::size_t>(index - first_)];
}

int BreathSpots::best(int first, int last) const {
    const auto at = [&](int index) { return said_at(view_, index).at.count(); };
    const double begin = at(first);
    const double total = length_of(view_, first, last).count();
    constexpr int few_words = 3; // fewer are not worth a breath of their own
    int best = 0;
    double best_worth = no_place;
    for (int i = first + 1; i <= last; ++i) {
        if (worth(i) <= no_place) continue;
        // A place off the middle leaves one long half: at the very edge it costs as much as a comma
        // and a joining word are worth.
        const double off = total > 0 ? std::abs((at(i) - begin) / total - 0.5) * 2 : 0;
        const bool sliver = i - first < few_words || last + 1 - i < few_words;
        const double worth_here = worth(i) - 2.5 * off * off - (sliver ? 1.0 : 0.0);
        if (worth_here <= best_worth) continue;
        best = i;
        best_worth = worth_here;
    }
    return best;
}

} // namespace say::rules
