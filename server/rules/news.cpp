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

// "1860", "1860–65".
bool is_year(std::string_view word) {
    const std::size_t dash = word.find_first_not_of("0123456789");
    const std::string_view rest = dash == word.npos ? std::string_view{} : word.substr(dash);
    if (rest.starts_with("-") || rest.starts_with("–")) word = word.substr(0, dash);
    return word.size() == 4 && std::all_of(word.begin(), word.end(), ascii::is_digit) &&
           (word.starts_with("1") || word.starts_with("20"));
}

bool has_amount(std::string_view word) {
    constexpr std::array<std::string_view, 4> signs = {"%", "$", "£", "€"};
    return is_figure(word) && std::any_of(signs.begin(), signs.end(), [&](std::string_view sign) {
               return word.find(sign) != word.npos;
           });
}

constexpr double for_label = -0.8; // "Bus 12"
constexpr double for_result = 1.5; // "60 N over 6 is 10"
constexpr double for_times = 1.3;  // "five times", above a small number

// "From 8 to 10", and what the second may stand behind: "rose from 3 to 4 pounds".
bool is_from(const ThoughtView& view, int index) {
    return heard(view, index - 1) == "from" && heard(view, index + 1) == "to" &&
           is_number(view, index + 2);
}

bool is_to(const ThoughtView& view, int index) {
    return heard(view, index - 1) == "to" && is_number(view, index - 2);
}

// Hours, pages, ages: "open from 8 to 10". A count that moves says so: "rose from 3 to 4".
bool names_a_span(const ThoughtView& view, int index) {
    const int from = is_from(view, index) ? index : index - 2;
    if (from != index && !(is_to(view, index) && is_from(view, from))) return false;
    constexpr std::array<std::string_view, 32> moves = {
        "rose",    "risen",   "rise",    "rises",     "fell",      "fallen", "fall",  "falls",
        "grew",    "grown",   "grow",    "grows",     "went",      "gone",   "go",    "goes",
        "up",      "down",    "dropped", "drop",      "drops",     "cut",    "moved", "jumped",
        "climbed", "slipped", "doubled", "increased", "decreased", "raised", "put",   "reduced"};
    constexpr int near = 6;
    for (int i = from - 1; i >= std::max(0, from - near); --i) {
        if (is_one_of(heard(view, i), moves)) return false;
    }
    constexpr std::string_view most = "24"; // hours, and little else that is counted
    const auto small = [&](int i) {
        const std::string_view word = view.word(i);
        const bool digits = std::all_of(word.begin(), word.end(), ascii::is_digit);
        return !is_figure(word) ||
               (digits && (word.size() == 1 || (word.size() == 2 && word <= most)));
    };
    return small(from) && small(from + 2);
}

// "Twenty years ago, this was a quarry": where it opens the sentence it only says when.
bool tells_when(const ThoughtView& view, int index) {
    constexpr int opening = 3; // words
    const Sentence* sentence = sentence_of(view, index);
    if (sentence == nullptr || index - sentence->first >= opening) return false;
    constexpr std::array<std::string_view, 3> when = {"ago", "earlier", "later"};
    return is_one_of(heard(view, index + 2), when);
}

// "Lesson 2", "Bus 12", "steps 1-4": the number is a name, and so is the word before it.
bool is_labelled(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 61> labels = {
        "act",     "bay",      "bus",      "channel",  "chapter",   "class",  "day",   "door",
        "episode", "exercise", "exit",     "ext",      "extension", "fig",    "figs",  "figure",
        "figures", "flight",   "floor",    "gate",     "grade",     "group",  "item",  "junction",
        "lesson",  "lessons",  "level",    "line",     "mistake",   "module", "no",    "number",
        "numbers", "option",   "p",        "pp",       "page",      "pages",  "part",  "parts",
        "phase",   "pier",     "platform", "question", "room",      "rooms",  "route", "row",
        "rule",    "scene",    "season",   "section",  "slide",     "stage",  "step",  "steps",
        "table",   "team",     "track",    "unit",     "version"};
    if (index == 0 || !is_number(view, index) || is_parted_behind(view, index - 1)) return false;
    return is_one_of(ascii::lower(view.word(index - 1)), labels);
}

// "Lesson 2", "Friday 12", "at 9", "from ten until four": it names, it does not count.
bool names_a_thing(const ThoughtView& view, int index) {
    const std::string left = ascii::lower(view.word(index - 1));
    const std::string right = ascii::lower(view.word(index + 1));
    if (!month_words(left).empty() || !month_words(right).empty()) return true;
    constexpr std::array<std::string_view, 6> times = {"am", "pm", "a.m", "p.m", "until", "till"};
    constexpr std::array<std::string_view, 3> before = {"at", "till", "until"};
    if (is_labelled(view, index) || is_one_of(left, before) || is_one_of(right, times)) return true;
    // "In 2027", "in fifteen thirty one", but "in five minutes".
    if (left == "in" && (is_figure(view.word(index)) || is_number(view, index + 1))) return true;
    if (names_a_span(view, index) || tells_when(view, index)) return true;
    return left == "by" && is_parted_behind(view, index); // "by four"
}

// "01632 960 001": digits read out one by one, in groups that stand side by side.
bool is_dialled(const ThoughtView& view, int index) {
    const auto digits = [&](int i) {
        const std::string_view word = view.word(i);
        return word.size() > 1 && std::all_of(word.begin(), word.end(), ascii::is_digit);
    };
    if (!digits(index)) return false;
    const bool behind = digits(index - 1) && !is_parted_behind(view, index - 1);
    const bool before = digits(index + 1) && !is_parted_behind(view, index);
    return view.word(index).front() == '0' || behind || before;
}

bool is_ordinal(std::string_view word) {
    return word.ends_with("st") || word.ends_with("nd") || word.ends_with("rd") ||
           word.ends_with("th");
}

// "60 N over 6 cm² is 10": what comes out of a sum.
bool is_result(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 5> equals = {"is", "equals", "makes", "gives", "are"};
    constexpr int near = 8;
    if (view.word(index - 1) != "=" && !is_one_of(heard(view, index - 1), equals)) return false;
    for (int i = index - 2; i >= std::max(0, index - near); --i) {
        if (is_figure(view.word(i))) return true;
    }
    return false;
}

double worth_of_figure(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    if (is_year(word)) return for_year;
    if (is_figure(word) && is_ordinal(word)) return for_day;
    if (is_labelled(view, index) || is_dialled(view, index)) return for_label;
    if (tells_when(view, index)) return for_year;
    if (!is_quantity(view, index)) return 0;
    const bool multiplied = is_multiple_of_number(heard(view, index + 1));
    double worth = for_number;
    if (is_figure(word) || is_large_number(heard(view, index)) || multiplied) worth = for_count;
    if (has_amount(word)) worth = for_amount;
    const std::string_view left = heard(view, index - 1);
    if (heard(view, index + 1) == "times") worth = std::max(worth, for_number + for_times);
    if (is_result(view, index)) worth += for_result;
    // Of a vote the first is the news, of a move the second.
    const bool moves = is_from(view, index) || (is_to(view, index) && is_from(view, index - 2));
    const bool second = left == "to" && is_number(view, index - 2);
    if (moves) return second ? worth : worth + for_second;
    return second ? worth + for_second : worth;
}

bool tells_most(std::string_view word) {
    constexpr std::array<std::string_view, 6> list = {"record", "double", "twice",
                                                      "fewer",  "least",  "most"};
    return is_one_of(word, list) || (word.size() > 5 && word.ends_with("est"));
}

// Verbs and adjectives that say little without what follows them.
bool is_carrier(std::string_view word) {
    constexpr std::array<std::string_view, 79> list = {
        "ask",    "asked",   "became", "become", "began",  "begin", "begins", "bring",  "call",
        "called", "came",    "choose", "come",   "comes",  "cost",  "costs",  "e-mail", "end",
        "ends",   "every",   "find",   "found",  "get",    "gets",  "give",   "gives",  "go",
        "goes",   "gone",    "got",    "keep",   "kept",   "know",  "last",   "lasts",  "let",
        "look",   "looks",   "made",   "make",   "makes",  "mean",  "means",  "meet",   "more",
        "move",   "need",    "needs",  "next",   "please", "put",   "rate",   "rated",  "said",
        "save",   "saved",   "say",    "says",   "see",    "seen",  "show",   "shows",  "sounds",
        "start",  "started", "starts", "stay",   "take",   "takes", "tell",   "thank",  "thanks",
        "think",  "thought", "told",   "tried",  "try",    "used",  "want"};
    return is_one_of(word, list);
}

// "In order", "of course": nobody leans on these.
bool is_set_phrase(std::string_view left, std::string_view word) {
    constexpr std::array<std::string_view, 8> behind_in = {
        "addition", "case", "fact", "general", "order", "particular", "short", "terms"};
    constexpr std::array<std::string_view, 4> behind_at = {"all", "first", "last", "present"};
    if (left == "in") return is_one_of(word, behind_in);
    return (left == "of" && word == "course") || (left == "at" && is_one_of(word, behind_at));
}

// "A pair of boots": the boots.
bool is_measure(std::string_view word) {
    constexpr std::array<std::string_view, 22> list = {
        "bag",   "bit", "bottle", "bowl",  "box",  "bunch", "couple", "cup",
        "glass", "jar", "kind",   "list",  "lots", "lot",   "pair",   "piece",
        "pile",  "row", "sheet",  "slice", "sort", "type"};
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

bool trails(std::string_view word) {
    constexpr std::array<std::string_view, 9> list = {"yet",   "again",   "today",  "now",   "here",
                                                      "there", "already", "anyway", "inside"};
    return is_one_of(word, list);
}

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
    // "Ten times", "ten years ago": the number, or neither.
    if (word == "times" && is_number(view, index - 1)) return for_carrier;
    if (is_set_phrase(heard(view, index - 1), word)) return for_carrier;
    if (is_measure(word) && heard(view, index + 1) == "of") return for_carrier;
    if (word == "ago" || is_labelled(view, index + 1)) return for_label;
    if (is_carrier(word) || (index == sentence.first && sets_scene(word))) return for_carrier;
    double worth = tells_most(word) ? for_most : 0;
    if (!trails(word) && is_last_new_thing(view, sentence, index)) worth += for_last;
    return worth;
}

} // namespace say::rules
