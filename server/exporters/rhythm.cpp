#include "exporters/rhythm.h"

#include "exporters/drawn.h"
#include "exporters/xml.h"
#include "rules/rule.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace say {
namespace {

using Node = pugi::xml_node;
using xml::set;

// --- measures, in user units --------------------------------------------------------------------

constexpr double width = 960;
constexpr double left = 64; // room for a row's clock
constexpr double right = 16;
constexpr double top = 104; // title and total above the rows
constexpr double row_height = 78;
constexpr double base = 62;              // of a row: where words stand
constexpr double foot = 64;              // the key below the rows
constexpr double units_a_syllable = 4.5; // of height, a syllable a second

// At most so many rows where that is possible, so that the picture stays one page.
Seconds row_length(Seconds total, int most_rows) {
    constexpr std::array<double, 12> lengths{10, 15, 20, 30, 45, 60, 90, 120, 180, 300, 450, 600};
    for (const double length : lengths) {
        if (total.count() <= most_rows * length) return Seconds{length};
    }
    return Seconds{std::ceil(total.count() / most_rows / 600) * 600};
}

struct Sheet {
    Seconds row{30};
    int rows = 1;

    int row_of(Seconds at) const { return static_cast<int>(at / row); }
    double x(Seconds at) const {
        return left + (width - left - right) * std::fmod(at.count(), row.count()) / row.count();
    }
    double length(Seconds seconds) const {
        return (width - left - right) * seconds.count() / row.count();
    }
    double y(int number) const { return top + row_height * number + base; }
    double height() const { return top + row_height * rows + foot; }
};

std::string number(double value) {
    return fmt::format("{:.1f}", value);
}

// --- shapes that gather, one path a kind: an hour of speech stays small --------------------------

struct Paths {
    std::string words;    // plain
    std::string stressed; // leaned on
    std::string heavy;    // landed on
    std::string pace;     // breath groups
    std::string quick;
    std::string slow;
    std::string pauses; // marked
    std::string held;   // directions that hold
};

// A box from `at` on, standing on the row's base; cut where it reaches the next row.
void add_box(std::string& path, const Sheet& sheet, Seconds at, Seconds seconds, double high,
             double above = 0) {
    while (seconds > Seconds{0}) {
        const int row = std::min(sheet.row_of(at), sheet.rows - 1);
        const Seconds until{sheet.row.count() * (row + 1)};
        const Seconds here = row + 1 < sheet.rows ? std::min(seconds, until - at) : seconds;
        path += fmt::format("M{:.2f} {:.1f}h{:.2f}v{:.1f}h{:.2f}z", sheet.x(at),
                            sheet.y(row) - above, sheet.length(here), -high, -sheet.length(here));
        if (here <= Seconds{0.0005}) return;
        at += here;
        seconds -= here;
    }
}

bool has(const DrawnWord& word, MarkKind kind) {
    return std::find(word.marks.begin(), word.marks.end(), kind) != word.marks.end();
}

void add_word(Paths& paths, const Sheet& sheet, Seconds start, const DrawnWord& word) {
    constexpr double gap = 0.25; // of a stroke, so that neighbours stay apart
    const Seconds at = start + word.at + word.seconds * (gap / 2);
    const Seconds seconds = word.seconds * (1 - gap);
    const bool heavy = has(word, MarkKind::heavy_stress) || has(word, MarkKind::punch);
    const bool stressed = has(word, MarkKind::stress);
    const double high = heavy ? 24 : stressed ? 17 : has(word, MarkKind::soft) ? 4 : 9;
    std::string& path = heavy ? paths.heavy : stressed ? paths.stressed : paths.words;
    add_box(path, sheet, at, seconds, high);
    constexpr double line = 2;
    if (has(word, MarkKind::quick)) add_box(paths.quick, sheet, at, seconds, line, -7);
    if (has(word, MarkKind::slow)) add_box(paths.slow, sheet, at, seconds, line, -4);
}

void add_breath(Paths& paths, const Sheet& sheet, Seconds start, const Thought& thought,
                const BreathGroup& breath) {
    int syllables = 0;
    for (int word = breath.first; word <= breath.last; ++word)
        syllables += thought.reading.said[static_cast<std::size_t>(word)].syllables;
    if (breath.seconds <= Seconds{0}) return;
    const double pace = syllables / breath.seconds.count();
    const Seconds at = thought.reading.said[static_cast<std::size_t>(breath.first)].at;
    add_box(paths.pace, sheet, start + at, breath.seconds,
            std::clamp(pace * units_a_syllable, 4.0, base - 18));
}

void add_thought(Paths& paths, const Sheet& sheet, const Placed& placed) {
    const Thought& thought = *placed.thought;
    for (const BreathGroup& breath : thought.reading.breaths)
        add_breath(paths, sheet, placed.at, thought, breath);
    constexpr double thin = 3;
    for (const DrawnPart& part : drawn(thought)) {
        if (const auto* word = std::get_if<DrawnWord>(&part)) {
            add_word(paths, sheet, placed.at, *word);
        } else if (const auto* pause = std::get_if<DrawnPause>(&part)) {
            add_box(paths.pauses, sheet, placed.at + pause->at, pause->seconds, thin, 5);
        } else if (const auto* direction = std::get_if<DrawnDirection>(&part)) {
            add_box(paths.held, sheet, placed.at + direction->at, direction->seconds, thin, 5);
        }
    }
}

// --- the picture --------------------------------------------------------------------------------

Node add(Node parent, const char* name, std::string_view style) {
    Node node = parent.append_child(name);
    if (!style.empty()) set(node, "class", style);
    return node;
}

void add_label(Node parent, double x, double y, std::string_view style, std::string_view text) {
    Node label = add(parent, "text", style);
    set(label, "x", number(x));
    set(label, "y", number(y));
    xml::add_text(label, text);
}

void add_path(Node parent, std::string_view style, const std::string& path) {
    if (!path.empty()) set(add(parent, "path", style), "d", path);
}

void add_line(Node parent, std::string_view style, double x1, double y1, double x2, double y2) {
    Node line = add(parent, "line", style);
    set(line, "x1", number(x1));
    set(line, "y1", number(y1));
    set(line, "x2", number(x2));
    set(line, "y2", number(y2));
}

std::string with_target(Seconds seconds, const std::optional<Target>& target) {
    const std::string clock = format_clock(seconds);
    return target ? fmt::format("{} of {}", clock, format_target(*target)) : clock;
}

constexpr double letter = 8.2; // the width of one, about

std::string fitted(std::string_view name, std::size_t letters) {
    std::string kept;
    std::size_t count = 0;
    for (const char c : name) {
        if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U && ++count > letters) {
            return kept + "…";
        }
        kept += c;
    }
    return kept;
}

// Name and time, the name shortened where it must be; the name alone; nothing where there is no
// room for either.
std::string label_of(const Section& section, double room) {
    const std::string clock = with_target(section.timing.expected, section.target);
    const double letters = room / letter;
    constexpr double fewest = 5;
    const double for_name = letters - static_cast<double>(clock.size()) - 3;
    if (for_name >= fewest)
        return fmt::format("{}  {}", fitted(section.name, static_cast<std::size_t>(for_name)),
                           clock);
    if (letters >= fewest + 1) return fitted(section.name, static_cast<std::size_t>(letters - 1));
    return {};
}

// The whole script as one bar, cut at its sections, against its target.
void add_total(Node picture, const Script& script) {
    constexpr double y = 58;
    constexpr double high = 14;
    const Seconds total = script.timing.expected;
    const double room = width - left - right;
    const Seconds target = script.header.target ? script.header.target->high : Seconds{0};
    const Seconds longest = std::max({total, script.timing.high, target, Seconds{1}});
    const auto x = [&](Seconds at) { return left + room * at.count() / longest.count(); };
    const auto box = [&](std::string_view style, Seconds from, Seconds to, double above,
                         double below) {
        Node node = add(picture, "rect", style);
        set(node, "x", number(x(from)));
        set(node, "y", number(y - above));
        set(node, "width", number(std::max(1.0, x(to) - x(from))));
        set(node, "height", number(above + below));
    };
    if (script.header.target) {
        box("target", std::min(script.header.target->low, longest), target, 6, high + 6);
    }
    box("total", Seconds{0}, total, 0, high);
    for (const Section& section : script.sections) {
        if (section.at > Seconds{0})
            add_line(picture, "cut", x(section.at), y, x(section.at), y + high);
    }
    const double middle = y + high + 5;
    add_line(picture, "range", x(script.timing.low), middle, x(script.timing.high), middle);
    add_label(picture, 0, y + 12, "clock", format_clock(total));
}

void add_rows(Node picture, const Sheet& sheet, Seconds total) {
    for (int row = 0; row < sheet.rows; ++row) {
        const double y = sheet.y(row);
        const Seconds begin{sheet.row.count() * row};
        const Seconds left_over = total - begin;
        const double end = left + sheet.length(std::min(sheet.row, left_over));
        add_line(picture, "base", left, y, end, y);
        add_label(picture, 0, y, "clock", format_clock(begin));
        for (int part = 1; part < 6; ++part) {
            const double x = left + (width - left - right) * part / 6;
            if (x < end) add_line(picture, "tick", x, y, x, y + 5);
        }
    }
}

void add_sections(Node picture, const Sheet& sheet, const Script& script) {
    for (std::size_t at = 0; at < script.sections.size(); ++at) {
        const Section& section = script.sections[at];
        const int row = std::min(sheet.row_of(section.at), sheet.rows - 1);
        const double x = sheet.x(section.at);
        const double y = sheet.y(row);
        const bool same_row =
            at + 1 < script.sections.size() && sheet.row_of(script.sections[at + 1].at) == row;
        const double end = same_row ? sheet.x(script.sections[at + 1].at) : width - right;
        add_line(picture, "section", x, y + 5, x, y - base + 16);
        const std::string label = label_of(section, end - x - 8);
        if (!label.empty()) add_label(picture, x + 4, y - base + 22, "name", label);
    }
}

// What the shapes mean, in a line below.
void add_key(Node picture, const Sheet& sheet) {
    struct Entry {
        std::string_view style;
        double high;
        std::string_view text;
    };
    constexpr std::array<Entry, 7> entries{{{"word", 9, "word"},
                                            {"stressed", 17, "stress"},
                                            {"heavy", 24, "heavy stress"},
                                            {"pace", 22, "breath: higher is quicker"},
                                            {"pause", 3, "marked pause"},
                                            {"held", 3, "direction"},
                                            {"target", 20, "target"}}};
    const double y = sheet.height() - 30;
    double x = left;
    for (const Entry& entry : entries) {
        Node node = add(picture, "rect", entry.style);
        set(node, "x", number(x));
        set(node, "y", number(y - entry.high));
        set(node, "width", "12");
        set(node, "height", number(entry.high));
        add_label(picture, x + 17, y, "key", entry.text);
        x += 34 + 6.6 * static_cast<double>(entry.text.size());
    }
    add_line(picture, "quick", x, y - 8, x + 12, y - 8);
    add_label(picture, x + 17, y, "key", "quick");
    x += 64;
    add_line(picture, "slow", x, y - 8, x + 12, y - 8);
    add_label(picture, x + 17, y, "key", "slow");
    add_line(picture, "range", left, y + 14, left + 12, y + 14);
    add_label(picture, left + 17, y + 18, "key",
              "under the bar of the whole script: where its time will likely end");
}

// Ink on paper, and the other way round where the reader's screen is dark. Shapes differ in height
// and place, so that nothing rests on a colour. No variables: not every viewer knows them.
constexpr std::string_view style = R"(
text{font:13px system-ui,sans-serif;fill:#1c1f24}
.title{font-size:19px;font-weight:600}.name{font-weight:600}.clock,.key{fill:#565d66}
.paper{fill:#fff}.word,.total{fill:#565d66}.stressed{fill:#1c1f24}.heavy,.pause{fill:#8a3b12}.pace{fill:#e4e8ec}
.held{fill:none;stroke:#8a3b12}.target{fill:none;stroke:#1c1f24;stroke-width:1.5;stroke-dasharray:4 3}
.cut{stroke:#fff;stroke-width:2}.range{stroke:#1c1f24;stroke-width:2}.base,.tick,.section{stroke:#565d66}
.quick,.slow{fill:#1c1f24;stroke:#1c1f24}.quick{stroke-dasharray:2 1.5}
@media (prefers-color-scheme:dark){
text,.stressed,.quick,.slow{fill:#f2f3f4}.clock,.key,.word,.total{fill:#a7afb8}.paper{fill:#15181c}.pace{fill:#30363d}
.heavy,.pause{fill:#f0a878}.held{stroke:#f0a878}.target,.range,.quick,.slow{stroke:#f2f3f4}.cut{stroke:#15181c}
.base,.tick,.section{stroke:#a7afb8}}
)";

std::string spoken_summary(const Script& script) {
    std::string text =
        fmt::format("{} thoughts, {} of speech and {} of silence.", script.thoughts.size(),
                    format_clock(script.timing.speech), format_clock(script.timing.pause));
    for (const Section& section : script.sections) {
        text += fmt::format(" {}: {}.", section.name,
                            with_target(section.timing.expected, section.target));
    }
    return text;
}

Node add_picture(pugi::xml_document& document, const Sheet& sheet) {
    Node picture = document.append_child("svg");
    set(picture, "xmlns", "http://www.w3.org/2000/svg");
    set(picture, "viewBox", fmt::format("0 0 {:.0f} {:.0f}", width, sheet.height()));
    set(picture, "width", number(width));
    set(picture, "height", number(sheet.height()));
    set(picture, "role", "img");
    return picture;
}

} // namespace

std::string write_rhythm(const Analysis& analysis, const ExportOptions& /*options*/) {
    constexpr int most_rows = 12;
    return rhythm_picture(analysis, most_rows);
}

std::string rhythm_picture(const Analysis& analysis, int most_rows) {
    const Script& script = analysis.script;
    const Seconds total = script.timing.expected;
    Sheet sheet{.row = row_length(total, most_rows)};
    sheet.rows = std::max(1, static_cast<int>(std::ceil(total / sheet.row)));
    pugi::xml_document document;
    Node picture = add_picture(document, sheet);
    const std::string title = script.header.title.empty() ? "Script" : script.header.title;
    const std::string heading =
        fmt::format("{}, {}", title, with_target(total, script.header.target));
    xml::add_text(picture.append_child("title"), heading);
    xml::add_text(picture.append_child("desc"), spoken_summary(script));
    xml::add_text(picture.append_child("style"), style);
    Paths paths;
    for (const Placed& placed : script.thoughts)
        add_thought(paths, sheet, placed);
    Node paper = add(picture, "rect", "paper");
    set(paper, "width", "100%");
    set(paper, "height", "100%");
    add_label(picture, 0, 24, "title", heading);
    add_total(picture, script);
    add_path(picture, "pace", paths.pace);
    add_rows(picture, sheet, total);
    add_path(picture, "word", paths.words);
    add_path(picture, "stressed", paths.stressed);
    add_path(picture, "heavy", paths.heavy);
    add_path(picture, "quick", paths.quick);
    add_path(picture, "slow", paths.slow);
    add_path(picture, "pause", paths.pauses);
    add_path(picture, "held", paths.held);
    add_sections(picture, sheet, script);
    add_key(picture, sheet);
    return xml::write(document);
}

} // namespace say
