// A caption breaks where a reader pauses, and holds what can be read while it stands. Each way to
// cut a stretch of talk has a cost; the cheapest is found over the whole stretch, so that one bad
// break does not push the next.
#include "exporters/captions.h"

#include "exporters/legible.h"
#include "speech/lexicon.h"
#include "text/unicode.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace say {
namespace {

constexpr Seconds between{1.0 / 12}; // two frames of film part captions, or the eye sees no change
constexpr Seconds linger{0.5};       // a caption may stand on so long when nothing follows
constexpr Seconds apart{1.5};        // talk parted by more silence than this is not one stretch

// Words up to the next blank: what a line may break behind.
struct Piece {
    std::string text;
    Seconds begin{0};
    Seconds end{0};
    std::size_t width = 0; // characters
    double break_cost = 0; // of a break behind it
    bool ends_thought = false;
    std::string_view speaker;
};

// --- pieces -------------------------------------------------------------------------------------

bool opens_phrase(const Said& said) {
    return said.spoken.size() == 1 && is_function_word(said.spoken.front().text);
}

bool has_marked_pause(const Thought& thought, int word) {
    const auto pauses = pauses_behind(thought.reading, word);
    return std::any_of(pauses.begin(), pauses.end(),
                       [](const PauseAt& pause) { return pause.from == PauseFrom::mark; });
}

bool is_tied(const Thought& thought, int word) {
    const auto& marks = thought.written.marks;
    return std::any_of(marks.begin(), marks.end(), [word](const Mark& mark) {
        return mark.kind == MarkKind::tie && mark.first == word;
    });
}

// What it costs to break behind a word that is not the last of its thought. Common practice, no
// source: at a sentence's end, then a clause's, then a phrase's.
double cost_behind(const Thought& thought, int word) {
    const std::vector<Said>& said = thought.reading.said;
    const auto index = static_cast<std::size_t>(word);
    if (is_tied(thought, word)) return 9;
    switch (said[index].after) {
    case Juncture::stop: return 0.2;
    case Juncture::strong: return 0.5;
    case Juncture::comma: return 0.8;
    case Juncture::none: break;
    }
    if (has_marked_pause(thought, word)) return 0.6;
    if (said[index].phrasing.boundary >= 1.5) return 1.0;
    if (said[index].phrasing.boundary >= 0.5) return 1.3;
    const bool phrase_begins = opens_phrase(said[index + 1]) && !opens_phrase(said[index]);
    return phrase_begins ? 2 : 4;
}

void add_pieces(const Placed& placed, std::vector<Piece>& pieces) {
    const Thought& thought = *placed.thought;
    const std::string_view text = thought.written.plain.text;
    const Legible legible(thought);
    const std::vector<Word>& words = thought.written.words;
    const std::vector<Said>& said = thought.reading.said;
    std::size_t word = 0;
    std::size_t last_begin = 0;           // of the last piece
    std::size_t held = std::string::npos; // where signs without a word begin: they go with the next
    const std::size_t first_piece = pieces.size();
    for (std::size_t at = 0; at < text.size();) {
        std::size_t begin = text.find_first_not_of(' ', at);
        if (begin == std::string_view::npos) break;
        const std::size_t end = std::min(text.find(' ', begin), text.size());
        at = end;
        const std::size_t first = word;
        while (word < words.size() && words[word].plain.begin.value < end)
            ++word;
        if (first == word && pieces.size() > first_piece) { // a dash by itself
            pieces.back().text = legible.slice(last_begin, end);
            pieces.back().width = unicode::count_code_points(pieces.back().text);
            continue;
        }
        if (first == word) {
            held = std::min(held, begin);
            continue;
        }
        begin = std::min(begin, held);
        held = std::string::npos;
        last_begin = begin;
        const std::string_view piece = legible.slice(begin, end);
        const Said& last = said[word - 1];
        pieces.push_back({.text = std::string(piece),
                          .begin = placed.at + said[first].at,
                          .end = placed.at + last.at + last.seconds,
                          .width = unicode::count_code_points(piece),
                          .break_cost = word < words.size()
                                            ? cost_behind(thought, static_cast<int>(word) - 1)
                                            : 0,
                          .speaker = placed.speaker});
    }
    if (pieces.size() == first_piece) return;
    pieces.back().break_cost = 0;
    pieces.back().ends_thought = true;
}

// "MIRA:" before what she says; it takes its room and no time.
Piece name_piece(const Placed& placed) {
    constexpr double never_alone = 9; // as a tie
    Piece piece{.text = std::string(placed.speaker) + ':',
                .begin = placed.at + placed.thought->reading.said.front().at,
                .break_cost = never_alone,
                .speaker = placed.speaker};
    piece.end = piece.begin;
    piece.width = unicode::count_code_points(piece.text);
    return piece;
}

// --- lines --------------------------------------------------------------------------------------

std::size_t width_of(const std::vector<Piece>& pieces, std::size_t first, std::size_t end) {
    std::size_t width = end - first - 1; // blanks
    for (std::size_t i = first; i < end; ++i)
        width += pieces[i].width;
    return width;
}

struct Lines {
    bool fits = false;
    std::size_t second = 0; // where the second line begins; the end if there is none
    double cost = 0;
};

// Two thoughts stand on two lines, or nothing would tell the items of a list apart.
Lines break_thoughts(const std::vector<Piece>& pieces, std::size_t first, std::size_t second,
                     std::size_t end, std::size_t columns) {
    for (std::size_t i = second; i + 1 < end; ++i) {
        if (pieces[i].ends_thought) return {}; // three
    }
    const auto fits = [&](std::size_t begin, std::size_t behind) {
        return behind - begin == 1 || width_of(pieces, begin, behind) <= columns;
    };
    // A thought that goes on in the next caption had better begin there.
    const bool cut_off = !pieces[end - 1].ends_thought;
    const bool orphan = cut_off && end - second == 1;
    return {fits(first, second) && fits(second, end), second,
            (cut_off ? 0.5 : 0.0) + (orphan ? 3 : 0)};
}

// One line if it fits, else the best two.
Lines break_lines(const std::vector<Piece>& pieces, std::size_t first, std::size_t end,
                  std::size_t columns) {
    for (std::size_t i = first; i + 1 < end; ++i) {
        if (pieces[i].ends_thought) return break_thoughts(pieces, first, i + 1, end, columns);
    }
    if (width_of(pieces, first, end) <= columns || end - first == 1) return {true, end, 0};
    Lines best{false, end, std::numeric_limits<double>::max()};
    for (std::size_t second = first + 1; second < end; ++second) {
        const std::size_t above = width_of(pieces, first, second);
        const std::size_t below = width_of(pieces, second, end);
        if (above > columns || below > columns) continue;
        const double uneven = std::abs(static_cast<double>(above) - static_cast<double>(below)) /
                              static_cast<double>(columns);
        const bool orphan = second - first == 1 || end - second == 1;
        const double cost = pieces[second - 1].break_cost / 4 + uneven / 2 + (orphan ? 1 : 0);
        if (cost < best.cost) best = {true, second, cost};
    }
    return best;
}

std::string text_of(const std::vector<Piece>& pieces, std::size_t first, std::size_t end) {
    std::string text;
    for (std::size_t i = first; i < end; ++i) {
        if (i > first) text += ' ';
        text += pieces[i].text;
    }
    return text;
}

// --- captions -----------------------------------------------------------------------------------

// When a caption of pieces [first, end) may stand at most: up to the next one.
Seconds latest_end(const std::vector<Piece>& pieces, std::size_t end) {
    const Seconds spoken = pieces[end - 1].end;
    if (end == pieces.size()) return spoken + apart;
    return std::max(spoken, pieces[end].begin - between);
}

Seconds end_of(const std::vector<Piece>& pieces, std::size_t first, std::size_t end,
               const CaptionLimits& limits) {
    const Seconds wanted =
        std::max(pieces[end - 1].end + linger, pieces[first].begin + limits.shortest);
    return std::max(pieces[end - 1].end, std::min(wanted, latest_end(pieces, end)));
}

double cost_of(const std::vector<Piece>& pieces, std::size_t first, std::size_t end,
               const CaptionLimits& limits) {
    const Lines lines = break_lines(pieces, first, end, static_cast<std::size_t>(limits.columns));
    const double never = std::numeric_limits<double>::max();
    if (!lines.fits) return never;
    const Seconds stands = end_of(pieces, first, end, limits) - pieces[first].begin;
    const Seconds spoken = pieces[end - 1].end - pieces[first].begin;
    if (spoken > limits.longest && end - first > 1) return never;
    double cost = 0.8 + pieces[end - 1].break_cost + lines.cost; // the fewer the calmer
    if (stands < limits.shortest) cost += 6 * (limits.shortest - stands).count();
    const double speed =
        static_cast<double>(width_of(pieces, first, end)) / std::max(0.1, stands.count());
    if (speed > limits.characters_a_second) cost += (speed - limits.characters_a_second) / 4;
    const bool whole =
        (first == 0 || pieces[first - 1].break_cost == 0) && pieces[end - 1].break_cost == 0;
    if (end - first == 1 && !whole) cost += 3; // an orphan
    return cost;
}

void cut(const std::vector<Piece>& pieces, const CaptionLimits& limits,
         std::vector<Caption>& result) {
    const std::size_t count = pieces.size();
    std::vector<double> cheapest(count + 1, std::numeric_limits<double>::max());
    std::vector<std::size_t> from(count + 1, 0);
    cheapest[0] = 0;
    for (std::size_t first = 0; first < count; ++first) {
        // One piece always fits, so every place is reached.
        for (std::size_t end = first + 1; end <= count; ++end) {
            const double cost = cost_of(pieces, first, end, limits);
            if (cost == std::numeric_limits<double>::max()) break;
            if (cheapest[first] + cost >= cheapest[end]) continue;
            cheapest[end] = cheapest[first] + cost;
            from[end] = first;
        }
    }
    std::vector<std::size_t> ends;
    for (std::size_t end = count; end > 0; end = from[end])
        ends.push_back(end);
    for (auto end = ends.rbegin(); end != ends.rend(); ++end) {
        const std::size_t first = from[*end];
        const Lines lines =
            break_lines(pieces, first, *end, static_cast<std::size_t>(limits.columns));
        Caption caption{.begin = pieces[first].begin,
                        .end = end_of(pieces, first, *end, limits),
                        .lines = {text_of(pieces, first, lines.second)},
                        .speaker = pieces[first].speaker};
        if (lines.second < *end) caption.lines.push_back(text_of(pieces, lines.second, *end));
        result.push_back(std::move(caption));
    }
}

} // namespace

std::vector<Caption> captions(const Analysis& analysis, const CaptionLimits& limits) {
    std::vector<Caption> result;
    std::vector<Piece> stretch;
    std::string_view named; // who says the last words
    int section = -1;       // where they stand: a heading parts captions
    const auto finish = [&] {
        if (!stretch.empty()) cut(stretch, limits, result);
        stretch.clear();
    };
    for (const Placed& placed : analysis.script.thoughts) {
        if (!placed.thought->has_words()) continue;
        const bool another = !stretch.empty() &&
                             (stretch.back().speaker != placed.speaker ||
                              section != placed.section || placed.at - stretch.back().end > apart);
        if (another) finish();
        section = placed.section;
        if (limits.names && placed.speaker != named && !placed.speaker.empty())
            stretch.push_back(name_piece(placed));
        named = placed.speaker;
        add_pieces(placed, stretch);
    }
    finish();
    // A stretch's last caption may reach into the next stretch.
    for (std::size_t i = 1; i < result.size(); ++i)
        result[i - 1].end = std::min(result[i - 1].end, result[i].begin - between);
    return result;
}

} // namespace say
