// By word lists and the shapes of figures: common practice, no source.
#include "rules/news.h"

#include "rules/clause.h"
#include "rules/word_class.h"
#include "speech/lexicon.h"
#include "speech/passage.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>

namespace say::rules {
namespace {

constexpr double for_amount = 2.0;  // with a unit or a currency: nothing else can be the news
constexpr double for_count = 1.6;   // "2,300 books"
constexpr double for_number = 0.3;  // said in words
constexpr double for_second = -0.8; // "by 11 to 8"
constexpr double for_day = 0.5;     // "Nov. 30th"
constexpr double for_year = -0.8;
constexpr double for_last = 0.5;     // the last new thing
constexpr double for_most = 0.4;     // "record", "highest"
constexpr double for_carrier = -1.0; // "costs", "rate", "save", "thank"

bool is_year(std::string_view word) {
    return word.size() == 4 && std::all_of(word.begin(), word.end(), ascii::is_digit) &&
           (word.starts_with("1") || word.starts_with("20"));
}

bool has_amount(std::string_view word) {
    constexpr std::array<std::string_view, 4> signs = {"%", "$", "£", "€"};
    return is_figure(word) && std::any_of(signs.begin(), signs.end(), [&](std::string_view sign) {
               return word.find(sign) != word.npos;
           });
}

// "Lesson 2", "Friday 12", "at 9", "from ten until four": it names, it does not count.
bool names_a_thing(const ThoughtView& view, int index) {
    const std::string left = ascii::lower(view.word(index - 1));
    const std::string right = ascii::lower(view.word(index + 1));
    if (!month_words(left).empty() || !month_words(right).empty()) return true;
    constexpr std::array<std::string_view, 18> names = {
        "at",      "until", "till", "number", "lesson", "part", "step",     "chapter", "room",
        "version", "page",  "unit", "no",     "route",  "act",  "question", "mistake", "in"};
    constexpr std::array<std::string_view, 6> times = {"am", "pm", "a.m", "p.m", "until", "till"};
    if (is_one_of(left, names) || is_one_of(right, times)) return true;
    return left == "by" && is_parted_behind(view, index); // "by four"
}

bool is_ordinal(std::string_view word) {
    return word.ends_with("st") || word.ends_with("nd") || word.ends_with("rd") ||
           word.ends_with("th");
}

double worth_of_figure(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    if (is_year(word)) return for_year;
    if (is_figure(word) && is_ordinal(word)) return for_day;
    if (!is_quantity(view, index)) return 0;
    const bool multiplied = is_multiple_of_number(heard(view, index + 1));
    double worth = for_number;
    if (is_figure(word) || is_large_number(heard(view, index)) || multiplied) worth = for_count;
    if (has_amount(word)) worth = for_amount;
    const bool second = heard(view, index - 1) == "to" && is_number(view, index - 2);
    return second ? worth + for_second : worth;
}

bool tells_most(std::string_view word) {
    constexpr std::array<std::string_view, 6> list = {"record", "double", "twice",
                                                      "fewer",  "least",  "most"};
    return is_one_of(word, list) || (word.size() > 5 && word.ends_with("est"));
}

// What may end a sentence without being its news.
bool trails(std::string_view word) {
    constexpr std::array<std::string_view, 9> list = {"yet",   "again",   "today",  "now",   "here",
                                                      "there", "already", "anyway", "inside"};
    return is_one_of(word, list);
}

// Verbs and adjectives that say little without what follows them.
bool is_carrier(std::string_view word) {
    constexpr std::array<std::string_view, 75> list = {
        "asked",   "became", "become", "began",  "begin", "begins", "bring",  "call",   "called",
        "came",    "choose", "come",   "comes",  "cost",  "costs",  "e-mail", "end",    "ends",
        "every",   "find",   "found",  "get",    "gets",  "give",   "gives",  "go",     "goes",
        "gone",    "got",    "keep",   "kept",   "know",  "last",   "lasts",  "let",    "look",
        "looks",   "made",   "make",   "makes",  "mean",  "means",  "meet",   "more",   "move",
        "need",    "needs",  "next",   "please", "put",   "rate",   "rated",  "said",   "save",
        "saved",   "say",    "says",   "see",    "seen",  "show",   "shows",  "sounds", "start",
        "started", "starts", "stay",   "take",   "takes", "tell",   "thank",  "thanks", "think",
        "thought", "told",   "want"};
    return is_one_of(word, list);
}

// "Today", "tomorrow": when they open the sentence they set the scene.
bool sets_scene(std::string_view word) {
    constexpr std::array<std::string_view, 6> list = {"today",     "tomorrow", "tonight",
                                                      "yesterday", "nowadays", "meanwhile"};
    return is_one_of(word, list);
}

bool is_said_before(const ThoughtView& view, int index) {
    constexpr int reach = 200; // words: what is further back is no longer in the ear
    const std::string_view word = heard(view, index);
    for (int i = std::max(0, index - reach); i < index; ++i) {
        if (!word.empty() && heard(view, i) == word) return true;
    }
    return false;
}

bool is_last_new_thing(const ThoughtView& view, const Sentence& sentence, int index) {
    constexpr int near = 25; // words: behind so many something new was said
    if (sentence.last - index > near) return false;
    for (int i = index + 1; i < sentence.last; ++i) {
        if (!is_content(view, i)) continue;
        const std::string_view word = heard(view, i);
        if (!is_carrier(word) && !trails(word) && !is_said_before(view, i)) return false;
    }
    return true;
}

} // namespace

bool is_quantity(const ThoughtView& view, int index) {
    if (!is_number(view, index)) return false;
    const std::string_view word = view.word(index);
    if (has_amount(word)) return true;
    if (is_year(word) || word.find(':') != word.npos) return false;
    if (is_multiple_of_number(heard(view, index)) && is_number(view, index - 1)) return false;
    return !(is_figure(word) && is_ordinal(word)) && !names_a_thing(view, index);
}

double news_worth(const ThoughtView& view, const Sentence& sentence, int index) {
    if (is_number(view, index)) return worth_of_figure(view, index);
    const std::string word = ascii::lower(view.word(index));
    if (is_carrier(word) || (index == sentence.first && sets_scene(word))) return for_carrier;
    double worth = tells_most(word) ? for_most : 0;
    if (!trails(word) && is_last_new_thing(view, sentence, index)) worth += for_last;
    return worth;
}

} // namespace say::rules
