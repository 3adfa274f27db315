// Cheap evidence: the words next to a homograph, what stands within a few words, and for pairs of
// verb and noun what their place in the sentence says. The table's evidence is a list of
//   -word  stands before it        +word  stands behind it        ~word  stands near it
// with a weight behind a colon where it is not the usual one, and these classes in place of a word:
//   DET  the, a, my, this        POSS  Anna's         NUM    two, 14        BE     is, were, I'm
//   HAVE has, had, I've          MODAL will, did      PAST   a past tense (near only)
// and some that stand alone: VERB (its place is a verb's), ASKED (behind "did you"), PERFECT
// (behind "have you"), OPENS (first in its sentence or clause), CAPITAL and LOWER (as it is
// written). The words are common practice, no source; docs/pronunciation.md says how they were
// tried.
#include "speech/homographs.h"

#include "text/ascii.h"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <optional>

namespace say {
namespace {

constexpr Homograph table[] = {
#include "speech/homographs_table.inc"
};

constexpr bool by_word(const Homograph& a, const Homograph& b) {
    return a.word < b.word;
}
static_assert(std::is_sorted(std::begin(table), std::end(table), by_word));

// --- classes of words ----------------------------------------------------------------------------

template <std::size_t Size>
bool is_in(const std::string_view (&sorted)[Size], std::string_view word) {
    return std::binary_search(std::begin(sorted), std::end(sorted), word);
}

// clang-format off
constexpr std::string_view determiners[] = {
    "a", "an", "another", "any", "each", "every", "her", "his", "its", "my", "no", "our", "some",
    "that", "the", "their", "these", "this", "those", "whose", "your",
};
constexpr std::string_view numbers[] = {
    "eight", "eighth", "fifth", "five", "four", "fourth", "hundred", "nine", "ninth", "one",
    "seven", "seventh", "six", "sixth", "ten", "tenth", "third", "three", "two",
};
constexpr std::string_view forms_of_be[] = {
    "am", "are", "aren't", "be", "been", "being", "is", "isn't", "was", "wasn't", "were",
    "weren't",
};
constexpr std::string_view forms_of_have[] = {
    "had", "hadn't", "has", "hasn't", "have", "haven't", "having",
};
constexpr std::string_view modals[] = {
    "can", "can't", "cannot", "could", "couldn't", "did", "didn't", "do", "does", "doesn't",
    "don't", "may", "might", "must", "mustn't", "shall", "should", "shouldn't", "will", "won't",
    "would", "wouldn't",
};
constexpr std::string_view subjects[] = {"i", "they", "we", "who", "you"};
constexpr std::string_view objects[] = {
    "all", "anything", "both", "each", "everyone", "everything", "her", "him", "it", "me",
    "nothing", "something", "them", "us", "you",
};
constexpr std::string_view question_words[] = {
    "how", "what", "when", "where", "which", "who", "why",
};
constexpr std::string_view joining[] = {"and", "but", "or", "so"};
constexpr std::string_view persons[] = {"he", "it", "she"};
constexpr std::string_view single_subjects[] = {
    "anybody", "anyone", "anything", "everybody", "everyone", "everything", "nobody", "nothing",
    "somebody", "someone", "something", "what", "who",
};
constexpr std::string_view singular[] = {"another", "each", "every", "that", "this"};
constexpr std::string_view prepositions[] = {
    "about", "after", "against", "as", "at", "before", "between", "by", "during", "for", "from",
    "in", "into", "of", "on", "over", "per", "under", "via", "with", "within", "without",
};
constexpr std::string_view adverbs[] = {
    "actually", "again", "also", "always", "even", "ever", "just", "never", "not", "now", "often",
    "once", "only", "really", "simply", "sometimes", "soon", "still", "then", "to-day", "usually",
};
constexpr std::string_view describing[] = {
    "bad", "best", "better", "big", "biggest", "common", "first", "free", "full", "good", "great",
    "high", "huge", "important", "large", "last", "little", "long", "low", "main", "major", "many",
    "modern", "more", "most", "much", "new", "next", "old", "own", "public", "quick", "real",
    "recent", "rough", "same", "sharp", "short", "single", "small", "social", "strong", "useful",
    "whole",
};
constexpr std::string_view causing[] = {
    "have", "help", "helped", "helps", "let", "lets", "made", "make", "makes", "making", "saw",
    "see", "watch",
};
constexpr std::string_view taking[] = {
    "caused", "causes", "found", "gave", "get", "give", "got", "made", "make", "makes", "making",
    "need", "needs", "saw", "set", "take", "takes", "took",
};
constexpr std::string_view past_forms[] = {
    "ago", "became", "began", "bought", "brought", "came", "did", "didn't", "drew", "fell", "felt",
    "found", "gave", "got", "grew", "had", "heard", "held", "kept", "knew", "left", "lost", "made",
    "met", "ran", "said", "sat", "saw", "sent", "spoke", "stood", "thought", "told", "took", "was",
    "wasn't", "went", "were", "woke", "wrote",
};
constexpr std::string_view before_a_thing[] = { // "due to", "according to": no verb follows
    "according", "addition", "close", "contrary", "due", "next", "owing", "regard", "respect",
    "similar", "thanks",
};
constexpr std::string_view other_plurals[] = {"children", "folk", "men", "people", "police",
                                              "women"};
constexpr std::string_view nonplural[] = {
    "always", "as", "has", "his", "is", "its", "perhaps", "this", "thus", "was", "yes",
};
// clang-format on

bool is_number(std::string_view word) {
    return !word.empty() && (ascii::is_digit(word.front()) || is_in(numbers, word) ||
                             word.ends_with("teenth") || word.ends_with("tieth"));
}

bool is_possessive(std::string_view word) {
    constexpr std::string_view verbs[] = {"he's",   "here's",  "how's",  "it's",
                                          "let's",  "she's",   "that's", "there's",
                                          "what's", "where's", "who's"};
    return (word.ends_with("'s") && !is_in(verbs, word)) || word.ends_with("s'");
}

bool is_being(std::string_view word) {
    return is_in(forms_of_be, word) || word == "i'm" || word.ends_with("'re") ||
           (word.ends_with("'s") && !is_possessive(word) && word != "let's");
}

bool is_having(std::string_view word) {
    return is_in(forms_of_have, word) || word.ends_with("'ve");
}

bool is_modal(std::string_view word) {
    return is_in(modals, word) || word.ends_with("'ll") || word.ends_with("'d");
}

bool is_adverb(std::string_view word) {
    return is_in(adverbs, word) || (word.size() > 4 && word.ends_with("ly"));
}

bool is_past(std::string_view word) {
    return is_in(past_forms, word) || (word.size() > 4 && word.ends_with("ed"));
}

bool is_plural(std::string_view word) {
    if (is_in(other_plurals, word)) return true;
    return word.size() > 3 && word.ends_with('s') && !word.ends_with("ss") &&
           !word.ends_with("us") && !word.ends_with("is") && !word.ends_with("'s") &&
           !is_in(nonplural, word) && !is_in(forms_of_have, word);
}

// --- where it stands -----------------------------------------------------------------------------

struct Place {
    std::span<const NearWord> words;
    std::size_t index = 0;

    // The word so far away in the same sentence; empty if there is none.
    std::string_view at(int away) const {
        const int step = away < 0 ? -1 : 1;
        std::size_t here = index;
        for (int left = away; left != 0; left -= step) {
            const bool edge = step < 0 ? words[here].opens || here == 0 : here + 1 >= words.size();
            if (edge) return {};
            here = step < 0 ? here - 1 : here + 1;
            if (step > 0 && words[here].opens) return {};
        }
        return words[here].folded;
    }

    // The same, and no punctuation lies between.
    std::string_view beside(int away) const {
        const bool before = away < 0;
        for (int i = before ? away : 0; i < (before ? 0 : away); ++i) {
            const std::size_t place = index + static_cast<std::size_t>(i);
            if (place < words.size() && words[place].stops) return {};
        }
        return at(away);
    }
};

// The word before it that adverbs do not part from it: "they will not really use".
std::string_view leading(const Place& place, int& away) {
    away = -1;
    while (away > -4 && is_adverb(place.beside(away)))
        --away;
    return place.beside(away);
}

// Above 0 where a verb stands, below where a noun or an adjective does.
double verb_score(const Place& place) {
    int away = -1;
    const std::string_view lead = leading(place, away);
    const std::string_view further = place.beside(away - 1);
    const std::string_view before = place.beside(-1);
    const std::string_view next = place.beside(1);
    const bool determined = is_in(determiners, before) && before != "that";
    double score = 0;

    if (lead == "to") score += next == "of" || is_in(before_a_thing, further) ? -1 : 3;
    if (is_modal(lead)) score += 3;
    if (lead == "let's") score += 3;
    if (lead == "please") score += 2.5;
    if (is_in(subjects, lead)) score += is_modal(further) ? 3 : 2.5;
    if (is_in(persons, lead) && is_modal(further)) score += 3;
    if (is_in(objects, lead) && is_in(causing, further)) score += 2.5;
    if (lead.empty() && !next.empty() && (is_in(determiners, next) || is_in(objects, next)))
        score += 1;
    if (is_plural(lead) && !is_possessive(lead)) score += 0.9;

    // "the best record you can get": what follows begins a clause of its own.
    const bool clause = is_in(objects, next) && is_modal(place.beside(2));
    const bool object =
        !clause && ((is_in(determiners, next) && next != "that") || is_in(objects, next));
    if (object) score += determined ? 0.5 : 2;

    if (determined || is_possessive(before)) score -= 3;
    if (is_number(before)) score -= 2;
    if (is_in(prepositions, before)) score -= 2;
    if (next == "of") score -= 2;
    if (next == "called") score -= 1.5;
    if (is_being(next) || is_having(next) || (is_modal(next) && lead != "to")) score -= 1.5;
    if (is_in(describing, before)) score -= 2;
    if (is_being(lead)) score -= 2;
    if (is_having(lead)) score -= 2;
    if (is_in(taking, before)) score -= 1.5;

    // "a birthday present": a determiner two or three words before, and nothing that parts them.
    const std::string_view second = place.beside(-2);
    const bool open = !before.empty() && !is_modal(before) && !is_being(before) &&
                      !is_in(subjects, before) && !is_in(objects, before) && before != "to" &&
                      !is_plural(before);
    if (open && !determined && (is_in(determiners, second) || is_possessive(second))) score -= 1.7;
    if (open && is_in(determiners, place.beside(-3)) && !is_modal(second) && !is_being(second) &&
        !is_plural(second) && !is_in(prepositions, second) && second != "to") {
        score -= 0.8;
    }
    return score;
}

// By its ending: "private", "social".
bool is_describing(std::string_view word) {
    constexpr std::string_view endings[] = {"able", "al",  "ate",  "ful", "ic",
                                            "ish",  "ive", "less", "ous"};
    return std::any_of(std::begin(endings), std::end(endings), [&](std::string_view ending) {
        return word.size() > 5 && word.ends_with(ending);
    });
}

// "the limpet", "our old baker": one thing, which may be who does it. Compounds ("the tide
// records") look alike, so this alone decides nothing.
bool ends_one_thing(const Place& place, int away) {
    const std::string_view word = place.beside(away);
    if (word.empty() || is_plural(word) || word.ends_with("ed") || word.ends_with("ing"))
        return false;
    for (int i = away - 1; i >= away - 2; --i) {
        const std::string_view before = place.beside(i);
        if (is_in(prepositions, before) || is_plural(before)) return false;
        if (is_in(determiners, before) || is_possessive(before)) return true;
    }
    const auto index = place.index + static_cast<std::size_t>(away);
    return index < place.words.size() && place.words[index].capital;
}

// For forms in -s: above 0 where "he records" stands, below where "two records" does.
double third_person_score(const Place& place) {
    int away = -1;
    const std::string_view lead = leading(place, away);
    const std::string_view further = place.beside(away - 1);
    const std::string_view before = place.beside(-1);
    const std::string_view next = place.beside(1);
    const bool one = is_in(singular, before); // no plural stands behind "this" and "each"
    double score = 0;

    if (is_in(persons, lead) || is_in(single_subjects, lead)) score += 3;
    if (lead == "that" || lead == "which" || one) score += 2;
    if (ends_one_thing(place, away)) score += is_adverb(next) ? 1.8 : 0.8;
    if ((is_in(determiners, next) && next != "that") || is_in(objects, next)) score += 2;
    if (is_number(next)) score += 1;

    if ((is_in(determiners, before) && !one) || is_possessive(before)) score -= 3;
    if (is_number(before) && before != "one") score -= 3;
    if (is_in(prepositions, before) || is_in(describing, before)) score -= 2;
    if (is_being(lead) || is_having(lead) || is_modal(lead)) score -= 2;
    if (is_in(taking, before) || is_past(before)) score -= 1.5;
    if (is_in(subjects, further) || is_modal(further) || further == "to") score -= 2;
    if (is_plural(before)) score -= 3; // "saves lives", "holds records"
    if (before.ends_with("ing") || is_describing(before)) score -= 1.5;
    if (before.empty()) score -= 1;
    if (next == "of") score -= 2;
    if (is_being(next) || is_having(next) || is_modal(next)) score -= 2.5;
    return score;
}

bool is_third_person(std::string_view word) {
    return word.ends_with('s') && !word.ends_with("ss");
}

// --- the table's evidence ------------------------------------------------------------------------

bool in_class(std::string_view name, std::string_view word) {
    if (word.empty()) return false;
    if (name == "DET") return is_in(determiners, word);
    if (name == "POSS") return is_possessive(word);
    if (name == "NUM") return is_number(word);
    if (name == "BE") return is_being(word);
    if (name == "HAVE") return is_having(word);
    if (name == "MODAL") return is_modal(word);
    if (name == "PAST") return is_past(word);
    return name == word;
}

constexpr int near = 8; // words on either side within the thought

bool stands_near(const Place& place, std::string_view name) {
    const auto index = static_cast<int>(place.index);
    const int last = std::min(index + near, static_cast<int>(place.words.size()) - 1);
    for (int i = std::max(0, index - near); i <= last; ++i) {
        if (i != index && in_class(name, place.words[static_cast<std::size_t>(i)].folded))
            return true;
    }
    return false;
}

// A capital tells nothing at a sentence's start.
double case_score(const Place& place, bool capital) {
    const NearWord& word = place.words[place.index];
    if (word.capital != capital) return 0;
    return capital && word.opens ? 0 : 3;
}

struct Cue {
    char where = ' '; // - + ~, or a blank for the classes that stand alone
    std::string_view name;
    std::optional<double> weight;
};

Cue parse_cue(std::string_view written) {
    Cue cue;
    if (const auto colon = written.find(':'); colon != std::string_view::npos) {
        double weight = 0;
        std::from_chars(written.data() + colon + 1, written.data() + written.size(), weight);
        cue.weight = weight;
        written = written.substr(0, colon);
    }
    if (written.front() == '-' || written.front() == '+' || written.front() == '~') {
        cue.where = written.front();
        written.remove_prefix(1);
    }
    cue.name = written;
    return cue;
}

// "Have you ever read", "Where did the children read": nothing but who does it stands between the
// helper and the verb, and the helper opens the clause or follows a question word. "Will the band
// play live" is another thing.
bool is_behind_question(const Place& place, bool (*is_helper)(std::string_view)) {
    int away = -1;
    leading(place, away);
    const std::string_view one_before = place.beside(away - 1);
    const bool determined = is_in(determiners, one_before) || is_possessive(one_before);
    const int helper = determined ? away - 2 : away - 1;
    if (!is_helper(place.beside(helper))) return false;
    const std::string_view before = place.beside(helper - 1);
    return before.empty() || is_in(question_words, before) || is_in(joining, before);
}

// "did you read", "let them use": the verb is no past.
bool is_asked(const Place& place) {
    int away = -1;
    const std::string_view lead = leading(place, away);
    const std::string_view further = place.beside(away - 1);
    return ((is_in(subjects, lead) || is_in(persons, lead)) && is_modal(further)) ||
           (is_in(objects, lead) && is_in(causing, further) &&
            !is_behind_question(place, is_having)) ||
           is_behind_question(place, is_modal);
}

double cue_score(const Cue& cue, const Place& place, std::string_view lead) {
    switch (cue.where) {
    case '-':
        return in_class(cue.name, place.beside(-1)) || in_class(cue.name, lead)
                   ? cue.weight.value_or(2.5)
                   : 0;
    case '+': return in_class(cue.name, place.beside(1)) ? cue.weight.value_or(2.5) : 0;
    case '~': return stands_near(place, cue.name) ? cue.weight.value_or(1.5) : 0;
    default:
        if (cue.name == "VERB")
            return std::clamp(verb_score(place), 0.0, 2.0) * cue.weight.value_or(1);
        if (cue.name == "ASKED") return is_asked(place) ? 3 : 0;
        if (cue.name == "PERFECT")
            return is_behind_question(place, is_having) ? cue.weight.value_or(3) : 0;
        if (cue.name == "OPENS") return place.beside(-1).empty() ? 1 : 0;
        if (cue.name != "CAPITAL" && cue.name != "LOWER") return 0;
        return case_score(place, cue.name == "CAPITAL") * cue.weight.value_or(1);
    }
}

double evidence_score(std::string_view evidence, const Place& place) {
    int away = -1;
    const std::string_view lead = leading(place, away);
    double score = 0;
    while (!evidence.empty()) {
        const std::size_t end = std::min(evidence.find(' '), evidence.size());
        if (end > 0) score += cue_score(parse_cue(evidence.substr(0, end)), place, lead);
        evidence.remove_prefix(std::min(end + 1, evidence.size()));
    }
    return score;
}

// Below it neither reading has enough for it.
constexpr double decisive = 1.0;

} // namespace

std::span<const Homograph> homographs() {
    return table;
}

const Homograph* find_homograph(std::string_view folded) {
    const auto found = std::lower_bound(
        std::begin(table), std::end(table), folded,
        [](const Homograph& row, std::string_view word) { return row.word < word; });
    return found != std::end(table) && found->word == folded ? found : nullptr;
}

HomographChoice choose(const Homograph& homograph, std::span<const NearWord> words,
                       std::size_t index) {
    const Place place{words, index};
    // Above 0 speaks for the second reading.
    double score = evidence_score(homograph.readings[1].evidence, place) -
                   evidence_score(homograph.readings[0].evidence, place);
    if (homograph.verb >= 0) {
        const double verb =
            is_third_person(homograph.word) ? third_person_score(place) : verb_score(place);
        score += homograph.verb == 1 ? verb : -verb;
    }
    if (score >= decisive) return {1, true};
    if (score <= -decisive) return {0, true};
    return {homograph.usual, false};
}

} // namespace say
