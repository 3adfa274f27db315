#include "rules/suggest.h"

#include "rules/breath.h"
#include "rules/clause.h"
#include "rules/contrast.h"
#include "rules/enumeration.h"
#include "rules/news.h"
#include "rules/split.h"
#include "rules/word_class.h"
#include "rules/wording.h"
#include "speech/lexicon.h"
#include "speech/passage.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <optional>

namespace say::rules {
namespace {

// --- stress --------------------------------------------------------------------------------------

constexpr int shortest_sentence = 4; // words; a shorter one needs no help

// What people lean on when they choose to, against what readers do by habit: common practice, no
// source.
constexpr double for_longest = 0.2;
constexpr double for_name = 0.3;
constexpr double for_singled_out = 0.5;
constexpr double for_given = -0.6;
constexpr double for_opener = -0.8;   // "Then we ...": it joins, it is not the news
constexpr double for_frame = -0.3;    // said again later in the sentence
constexpr double for_manner = -0.6;   // "Gently lay the string"
constexpr double for_command = -0.3;  // "Lay the string"
constexpr double for_particle = 0.6;  // "sold out"
constexpr double for_last_item = 1.0; // "stones, weed and a crab"
constexpr double least_stress = 0.5;  // "some": below it no reader leans on the word

// A mark may go around letters, digits and what stands between them; around an address it would be
// text.
bool takes_a_pair(std::string_view word) {
    constexpr std::array<std::string_view, 3> currencies = {"$", "£", "€"};
    const bool figure =
        is_figure(word) && (ascii::is_digit(word.front()) ||
                            std::any_of(currencies.begin(), currencies.end(),
                                        [&](auto sign) { return word.starts_with(sign); }));
    const auto plain = [figure](char c) {
        const bool of_figure = figure && (c == '.' || c == ',' || c == '%' || c == '$');
        return ascii::is_letter(c) || ascii::is_digit(c) || static_cast<unsigned char>(c) >= 0x80 ||
               c == '\'' || c == '-' || of_figure;
    };
    const bool quotes = word.find("“") != word.npos || word.find("”") != word.npos;
    return !word.empty() && !quotes && std::all_of(word.begin(), word.end(), plain);
}

// Only blanks, quotes and a sentence's punctuation around the word: then nothing else can be read
// into the pair, and the pair changes nothing else. (Three bytes are a typographic quote.)
bool stands_free(const ThoughtView& view, Span word) {
    const std::string_view before = view.source.substr(0, word.begin.value);
    const std::string_view behind =
        view.source.substr(0, view.content.end.value).substr(word.end.value);
    const std::size_t left = before.find_last_not_of("\"'\xE2\x80\x9C\x98");
    const std::size_t right = behind.find_first_not_of(",.;:!?\"'\xE2\x80\x9D\x99\xA6");
    const bool opens = left == std::string_view::npos || left + 1 <= view.content.begin.value ||
                       ascii::is_blank(before[left]);
    if (!opens || right == std::string_view::npos) return opens;
    // "20 ° ... °", "5 x 4": what these signs are hangs on the word they stand behind.
    const std::size_t next = behind.find_first_not_of(" \t\r\n", right);
    const std::string_view rest = behind.substr(std::min(next, behind.size()));
    const bool times = rest == "x" || (rest.starts_with('x') && ascii::is_blank(rest[1]));
    const bool pairs = rest.starts_with("°") && view.source.find("°") != view.source.rfind("°");
    return ascii::is_blank(behind[right]) && !times && !pairs;
}

// "$5 / 2" is text as long as both sides are bare: the slash is a word of its own.
bool is_beside_slash(const ThoughtView& view, int index) {
    return view.word(index - 1) == "/" || view.word(index + 1) == "/";
}

bool stands_alone(const ThoughtView& view, int index) {
    const Span word = view.written.words[static_cast<std::size_t>(index)].source;
    if (!stands_free(view, word) || is_beside_slash(view, index)) return false;
    return std::none_of(view.written.marks.begin(), view.written.marks.end(),
                        [&](const Mark& mark) {
                            if (mark.first > index || index > mark.last) return false;
                            return !is_pause(mark.kind) && mark.kind != MarkKind::direction &&
                                   mark.kind != MarkKind::quoted && mark.kind != MarkKind::quick &&
                                   mark.kind != MarkKind::slow;
                        });
}

// "only boots", "even the weed": the next content word is set against others.
bool is_singled_out(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 4> signals = {"only", "instead", "rather", "even"};
    for (int i = index - 1; i >= 0 && i >= index - 3; --i) {
        if (is_one_of(heard(view, i), signals)) return true;
        if (is_content(view, i) || is_parted_behind(view, i)) return false;
    }
    return false;
}

bool is_given(const ThoughtView& view, int index) {
    const std::string_view word = heard(view, index);
    if (word.empty()) return false;
    for (int i = 0; i < index; ++i) {
        if (heard(view, i) == word) return true;
    }
    return false;
}

bool is_opener(const ThoughtView& view, int index) {
    constexpr std::array<std::string_view, 11> openers = {
        "also", "finally", "first", "here", "next", "now", "so", "still", "then", "there", "well"};
    const std::string_view word = heard(view, index);
    return is_one_of(word, openers);
}

// "Count what you love, count what you fear": the frame is no news.
bool is_said_again(const ThoughtView& view, const Sentence& sentence, int index) {
    constexpr int reach = 40; // words
    const std::string_view word = heard(view, index);
    if (word.empty()) return false;
    constexpr int close = 3; // "closer and closer"
    for (int i = index + close; i < std::min(sentence.last, index + reach); ++i) {
        if (heard(view, i) == word) return true;
    }
    return false;
}

bool has_capital(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    return !word.empty() && ascii::is_upper(word.front());
}

// "Maison Grève", "Crumb and Gull", "Patella vulgata": of a double name people lean on the second
// part, but on the first of "Quay Street" and of "the Wood Pigeon".
int second_of_name(const ThoughtView& view, const Sentence& sentence, int index) {
    if (!has_capital(view, index) || is_parted_behind(view, index)) return -1;
    const std::string_view written = view.word(index);
    const bool all_capitals = std::none_of(written.begin(), written.end(), ascii::is_lower);
    if (all_capitals || is_determiner(heard(view, index - 1))) return -1;
    const bool joined = heard(view, index + 1) == "and" && !is_parted_behind(view, index + 1);
    const int second = index + (joined ? 2 : 1);
    if (second >= sentence.last || !is_content(view, second)) return -1;
    const std::string_view street = heard(view, second);
    if (has_capital(view, second)) return street == "street" || street == "day" ? -1 : second;
    const auto unknown = [&](int i) { return said_at(view, i).known == Known::guess; };
    return !joined && unknown(index) && unknown(second) ? second : -1;
}

// "Broke down", "sold out", "stand up": the second half takes the stress where it ends its part.
bool is_second_half(const ThoughtView& view, const Sentence& sentence, int index) {
    constexpr std::array<std::string_view, 6> halves = {"away", "back", "down", "off", "out", "up"};
    if (index <= sentence.first || !is_one_of(heard(view, index), halves)) return false;
    return (index + 1 == sentence.last || is_parted_behind(view, index)) &&
           is_content(view, index - 1) && !is_parted_behind(view, index - 1);
}

// "Gently lay the string", "finally broke down": what is done is the news. In "hardly moved" and
// "frightfully cold" it is the manner.
bool leads_on(const ThoughtView& view, const Sentence& sentence, int index) {
    const std::string_view word = heard(view, index);
    if (word == "finally") return true;
    return index == sentence.first && word.size() > 4 && word.ends_with("ly") &&
           index + 1 < sentence.last && !is_parted_behind(view, index) &&
           is_content(view, index + 1);
}

// "Lay the string", "Shake the bottle": no noun stands right before "the".
bool is_command(const ThoughtView& view, const Sentence& sentence, int index) {
    constexpr std::array<std::string_view, 6> the = {"the", "a", "an", "your", "my", "our"};
    return index == sentence.first && index + 1 < sentence.last &&
           is_one_of(heard(view, index + 1), the);
}

int longest_content_word(const ThoughtView& view, const Sentence& sentence) {
    int longest = -1;
    std::pair<int, std::size_t> most{0, 0};
    for (int i = sentence.first; i < sentence.last; ++i) {
        const std::pair<int, std::size_t> size{said_at(view, i).syllables, view.word(i).size()};
        if (!is_content(view, i) || size <= most) continue;
        most = size;
        longest = i;
    }
    return longest;
}

// A unit, a letter of a list, an abbreviation, the year behind a copyright sign: nobody leans on
// these.
bool is_never_leant_on(const ThoughtView& view, int index) {
    const std::string_view word = view.word(index);
    if (word.size() == 1 && ascii::is_letter(word.front())) return true;
    if (word.starts_with("°") || (index > 0 && view.word(index - 1) == "©")) return true;
    const Span place = view.written.words[static_cast<std::size_t>(index)].source;
    const bool stop = place.end.value < view.source.size() && view.source[place.end.value] == '.';
    return stop && is_abbreviation(ascii::lower(word));
}

bool can_be_marked(const ThoughtView& view, int index) {
    return is_content(view, index) && takes_a_pair(view.word(index)) &&
           !is_never_leant_on(view, index) && stands_alone(view, index);
}

// What is asked about every word of a sentence, found once.
struct Frame {
    Sentence sentence;
    int longest = -1; // the longest content word
    std::optional<Enumeration> list;
};

Frame frame_of(const ThoughtView& view, const Sentence& sentence) {
    return {sentence, longest_content_word(view, sentence), find_enumeration(view, sentence)};
}

// An item that is not the last: the list goes on, so nobody leans on it. A price is news all the
// same.
bool is_earlier_item(const ThoughtView& view, const Frame& frame, int index) {
    if (!frame.list || is_quantity(view, index)) return false;
    return frame.list->head <= index && index < frame.list->last;
}

bool is_last_item(const ThoughtView& view, const Frame& frame, int index) {
    if (trails(heard(view, index))) return false;
    return frame.list && frame.list->end == frame.sentence.last && frame.list->last <= index;
}

double worth_in(const ThoughtView& view, const Frame& frame, int index) {
    const Sentence& sentence = frame.sentence;
    const std::string_view word = view.word(index);
    const bool name = index > sentence.first && ascii::is_upper(word.front());
    double worth = static_cast<double>(said_at(view, index).phrasing.stress);
    if (index == frame.longest) worth += for_longest;
    worth += news_worth(view, sentence, index);
    if (name) worth += for_name;
    if (is_singled_out(view, index)) worth += for_singled_out;
    if (is_last_item(view, frame, index)) worth += for_last_item;
    if (is_given(view, index)) worth += for_given;
    if (is_said_again(view, sentence, index)) worth += for_frame;
    if (leads_on(view, sentence, index)) worth += for_manner;
    if (index + 1 == sentence.last && is_second_half(view, sentence, index)) worth += for_particle;
    if (is_command(view, sentence, index)) worth += for_command;
    if (index == sentence.first && is_opener(view, index)) worth += for_opener;
    return worth;
}

bool is_leant_on(const ThoughtView& view, int index) {
    const bool likely_to =
        static_cast<double>(said_at(view, index).phrasing.stress) >= least_stress;
    return (likely_to || is_number(view, index)) && can_be_marked(view, index);
}

bool has_stress(const ThoughtView& view, const Sentence& sentence) {
    return std::any_of(view.written.marks.begin(), view.written.marks.end(), [&](const Mark& mark) {
        return is_stress(mark.kind) && mark.first < sentence.last && sentence.first <= mark.last;
    });
}

// A star that is no mark ("an A*") could pair with one that is put in.
bool has_loose_star(const ThoughtView& view) {
    const std::string_view text = view.source.substr(view.content.begin.value, view.content.size());
    auto loose = std::count(text.begin(), text.end(), '*');
    for (const Mark& mark : view.written.marks) {
        if (is_stress(mark.kind) && !mark.open.empty() &&
            slice(view.source, mark.open).front() == '*')
            loose -= static_cast<std::ptrdiff_t>(mark.open.size() + mark.close.size());
    }
    return loose > 0;
}

// Where the stress of a word goes that another one completes: a name, "broke down".
int carried_on(const ThoughtView& view, const Sentence& sentence, int word) {
    constexpr int longest_name = 4; // words
    for (int i = 0; i < longest_name; ++i) {
        int next = second_of_name(view, sentence, word);
        if (next < 0 && is_second_half(view, sentence, word + 1)) next = word + 1;
        if (next < 0 || !can_be_marked(view, next) || is_number(view, next)) break;
        word = next;
    }
    return word;
}

// The word that a reader would lean on, or -1.
int best_word(const ThoughtView& view, const Sentence& sentence) {
    const Frame frame = frame_of(view, sentence);
    double best = 0;
    int word = -1;
    for (int i = sentence.first; i < sentence.last; ++i) {
        if (!is_leant_on(view, i) || is_earlier_item(view, frame, i)) continue;
        const double worth = worth_in(view, frame, i);
        if (word >= 0 && worth <= best) continue;
        best = worth;
        word = i;
    }
    return word < 0 ? word : carried_on(view, sentence, word);
}

void suggest_stress(const ThoughtView& view, std::vector<Suggestion>& found) {
    if (has_loose_star(view)) return;
    const std::vector<Contrast> contrasts = find_contrasts(view);
    for (std::size_t i = 0; i < contrasts.size(); ++i) {
        const Sentence& sentence = view.reading.sentences[i];
        if (contrasts[i].yields || has_stress(view, sentence)) continue;
        int word = contrasts[i].word;
        if (word >= 0 && !can_be_marked(view, word)) word = -1;
        if (word < 0 && sentence.last - sentence.first >= shortest_sentence)
            word = best_word(view, sentence);
        if (word >= 0) found.push_back({.kind = MarkKind::stress, .word = word});
    }
}

// --- pauses --------------------------------------------------------------------------------------

constexpr int apart = 4;             // words between one pause and the next
constexpr int long_stretch = 12;     // words: readers pause somewhere in so many
constexpr float conceivable = 0.25F; // and at the best place of a long stretch
constexpr float likely = 0.55F;      // a chance of a pause worth offering by itself

enum class Edge : char { none, punctuation, mark };

// What parts the thought before each word: what is written, and the breaths to come.
std::vector<Edge> edges_before(const ThoughtView& view, const std::vector<int>& breaths) {
    const std::size_t count = view.reading.said.size();
    std::vector<Edge> edges(count + 1, Edge::none);
    for (std::size_t i = 0; i < count; ++i) {
        if (view.reading.said[i].after != Juncture::none) edges[i + 1] = Edge::punctuation;
    }
    for (const Mark& mark : view.written.marks) {
        const bool parts = is_pause(mark.kind) || mark.kind == MarkKind::direction;
        if (parts && mark.first >= 0 && mark.first < static_cast<int>(count))
            edges[static_cast<std::size_t>(mark.first) + 1] = Edge::mark;
    }
    for (const int word : breaths)
        edges[static_cast<std::size_t>(word)] = Edge::mark;
    return edges;
}

class PauseFinder {
public:
    PauseFinder(const ThoughtView& view, std::vector<Suggestion>& found)
        : view_(view), found_(found),
          held_(pauseless(view, 0, static_cast<int>(view.reading.said.size()) - 1)) {}

    // The best place in the words [first, end).
    void search(int first, int end) {
        if (end - first < 2 * apart) return;
        const int best = best_in(first, end);
        if (best < 0) return;
        const float least = end - first >= long_stretch ? conceivable : likely;
        if (chance(best) >= least) found_.push_back({.kind = kind_at(best), .word = best});
    }

private:
    int best_in(int first, int end) const {
        int best = -1;
        double best_worth = 0;
        const bool is_long = end - first >= long_stretch;
        for (int i = first + apart; i <= end - apart; ++i) {
            if (held_[static_cast<std::size_t>(i)] || !word_blanks(view_, i)) continue;
            if (is_long ? !is_edge(view_, i) : !is_strong_edge(view_, i)) continue;
            const double worth = breath_worth(view_, i);
            if (best >= 0 && worth <= best_worth) continue;
            best = i;
            best_worth = worth;
        }
        return best;
    }

    float chance(int index) const { return said_at(view_, index - 1).phrasing.chances.paused; }

    MarkKind kind_at(int index) const {
        const bool held_open = said_at(view_, index - 1).phrasing.chances.strongly_paused >= 0.5F;
        // 0.6 s of silence inside a clause is more than anybody leaves there.
        return held_open && is_clause_edge(view_, index) ? MarkKind::pause : MarkKind::breath;
    }

    const ThoughtView& view_;
    std::vector<Suggestion>& found_;
    std::vector<bool> held_;
};

// First the breaths that the voice cannot do without, where `no-breath` would put them.
std::vector<int> breaths_needed(const ThoughtView& view, const std::vector<Suggestion>& stresses) {
    std::vector<int> leant_on;
    leant_on.reserve(stresses.size());
    for (const Suggestion& stress : stresses)
        leant_on.push_back(stress.word);
    std::vector<int> places;
    for (const BreathGroup& group : view.reading.breaths) {
        const std::vector<int> more = breath_places(view, group, leant_on);
        places.insert(places.end(), more.begin(), more.end());
    }
    return places;
}

void suggest_pauses(const ThoughtView& view, std::vector<Suggestion>& found) {
    const int count = static_cast<int>(view.reading.said.size());
    const std::vector<int> breaths = breaths_needed(view, found);
    for (const int word : breaths)
        found.push_back({.kind = MarkKind::breath, .word = word});
    // A stretch beside a mark gets no other: else each run would find a place the last one left.
    const std::vector<Edge> edges = edges_before(view, breaths);
    PauseFinder finder(view, found);
    int first = 0;
    for (int i = 1; i <= count; ++i) {
        const Edge edge = edges[static_cast<std::size_t>(i)];
        if (i < count && edge == Edge::none) continue;
        if (edges[static_cast<std::size_t>(first)] != Edge::mark && edge != Edge::mark)
            finder.search(first, i);
        first = i;
    }
}

std::string_view written_as(MarkKind kind) {
    return kind == MarkKind::pause ? "..." : "/";
}

} // namespace

double stress_worth(const ThoughtView& view, int index) {
    const Sentence* sentence = sentence_of(view, index);
    if (sentence == nullptr || !is_leant_on(view, index)) return -1;
    return std::max(0.0, worth_in(view, frame_of(view, *sentence), index));
}

std::vector<Suggestion> suggest(const ThoughtView& view) {
    std::vector<Suggestion> found;
    suggest_stress(view, found);
    suggest_pauses(view, found);
    // A pause in front of a word goes before the stress that opens on it.
    std::sort(found.begin(), found.end(), [](const Suggestion& a, const Suggestion& b) {
        return a.word != b.word ? a.word < b.word : a.kind < b.kind;
    });
    return found;
}

std::vector<TextEdit> edits_of(const ThoughtView& view, const Suggestion& suggestion) {
    if (suggestion.kind == MarkKind::stress) {
        const Span word = view.written.words[static_cast<std::size_t>(suggestion.word)].source;
        return {{{word.begin, word.begin}, "*"}, {{word.end, word.end}, "*"}};
    }
    auto edit = pause_before(view, suggestion.word, written_as(suggestion.kind));
    if (!edit) return {};
    return {std::move(*edit)};
}

std::string title_of(const ThoughtView& view, const Suggestion& suggestion) {
    const std::string word = quoted(view.word(suggestion.word));
    switch (suggestion.kind) {
    case MarkKind::stress: return fmt::format("Lean on {}: a reader likely would", word);
    case MarkKind::pause: return fmt::format("Pause before {}: a reader likely would", word);
    default: return fmt::format("Breathe before {}: a reader likely would", word);
    }
}

std::vector<TextEdit> edits_of(const ThoughtView& view,
                               const std::vector<Suggestion>& suggestions) {
    std::vector<TextEdit> edits;
    for (const Suggestion& suggestion : suggestions) {
        for (TextEdit& edit : edits_of(view, suggestion))
            edits.push_back(std::move(edit));
    }
    return edits;
}

std::vector<TextEdit> light_marks(const ThoughtView& view) {
    return edits_of(view, suggest(view));
}

} // namespace say::rules
