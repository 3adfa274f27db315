#include "exporters/print.h"

#include "base/markup.h"
#include "exporters/assets.h"
#include "exporters/drawn.h"
#include "exporters/rhythm.h"
#include "rules/rule.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace say {
namespace {

// --- shapes -------------------------------------------------------------------------------------

// Drawn in a box 100 units high, which is the size of the words; `name` is for who hears the page.
std::string shape(std::string_view classes, std::string_view name, int width,
                  std::string_view content) {
    return fmt::format(R"(<svg class="shape {}" role="img" aria-label="{}" viewBox="0 0 {} 100" )"
                       R"(style="width:{:.2f}em">{}</svg>)",
                       classes, name, width, width / 100.0, content);
}

std::string dots(int count) {
    std::string drawn;
    for (int i = 0; i < count; ++i)
        drawn += fmt::format(R"(<circle class="ink" cx="{}" cy="62" r="9"/>)", 20 + 35 * i);
    return drawn;
}

// One x a second, as it is written; empty for more than a line should hold.
std::string crosses(Seconds seconds) {
    constexpr long most = 5;
    const long count = std::lround(seconds.count());
    if (count > most) return {};
    std::string drawn;
    for (long i = 0; i < count; ++i) {
        drawn +=
            fmt::format(R"(<path d="M{0} 42L{1} 82M{1} 42L{0} 82"/>)", 12 + 60 * i, 52 + 60 * i);
    }
    return shape("pause", "beat", static_cast<int>(60 * count + 5), drawn);
}

std::string hold_shape(std::string_view name, Seconds seconds) {
    return fmt::format(R"(<span class="hold" role="img" aria-label="{}">{}</span>)", name,
                       format_seconds(seconds));
}

// A marked pause as it is drawn on paper: slashes, dots, crosses, or its seconds.
std::string pause_shape(const DrawnPause& pause) {
    const std::string_view name = row_of(pause.kind).name;
    switch (pause.kind) {
    case MarkKind::breath: return shape("pause", name, 50, R"(<path d="M10 98L40 12"/>)");
    case MarkKind::reset:
        return shape("pause", name, 76, R"(<path d="M10 98L40 12M36 98L66 12"/>)");
    case MarkKind::pause: return shape("pause", name, 110, dots(3));
    case MarkKind::micropause: return shape("pause", name, 40, dots(1));
    case MarkKind::beat: {
        const std::string drawn = crosses(pause.seconds);
        return drawn.empty() ? hold_shape(name, pause.seconds) : drawn;
    }
    default: return hold_shape(name, pause.seconds);
    }
}

std::string before_word(MarkKind mark) {
    const std::string_view name = row_of(mark).name;
    switch (mark) {
    case MarkKind::step_up:
        return shape("step", name, 46, R"(<path d="M22 92V14M6 34L22 12L38 34"/>)");
    case MarkKind::step_down:
        return shape("step", name, 46, R"(<path d="M22 12V90M6 70L22 92L38 70"/>)");
    default: return {};
    }
}

std::string behind_word(MarkKind mark) {
    const std::string_view name = row_of(mark).name;
    switch (mark) {
    case MarkKind::stretch:
        return shape("drawn-out", name, 90, R"(<path d="M6 66C26 54 56 78 84 62"/>)");
    case MarkKind::end_up:
        return shape("tune", name, 74, R"(<path d="M6 84C34 84 54 60 62 16M46 30L63 13L70 37"/>)");
    case MarkKind::end_down:
        return shape("tune", name, 74, R"(<path d="M6 16C34 16 54 44 62 86M44 72L63 90L71 66"/>)");
    case MarkKind::tie:
        return fmt::format(R"(<span class="tie">{}</span>)",
                           shape("", name, 100, R"(<path d="M6 30C30 92 70 92 94 30"/>)"));
    default: return {};
    }
}

// What a direction holds, as a rest is drawn: the longer, the wider.
std::string rest_shape(Seconds seconds) {
    constexpr double most = 8;
    return fmt::format(R"(<span class="rest" role="img" aria-label="hold" style="width:{:.2f}em">)"
                       "</span>",
                       std::min(0.6 * seconds.count(), most));
}

// --- one thought --------------------------------------------------------------------------------

// "heavy stress" becomes the class "heavy-stress".
std::string class_of(MarkKind mark) {
    std::string name(row_of(mark).name);
    std::replace(name.begin(), name.end(), ' ', '-');
    return name;
}

// Signs where the words of a mark begin and end.
std::string_view sign_of(MarkKind mark, bool opens) {
    switch (mark) {
    case MarkKind::aside: return opens ? "(" : ")";
    case MarkKind::quoted: return opens ? "“" : "”";
    default: return {};
    }
}

// Writes the parts of a thought. Pairs are spans; one that ends before what it holds takes that
// with it and opens it again, so that the page stays well-formed.
class Line {
public:
    std::string write(const std::vector<DrawnPart>& parts) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            next_ = i + 1 < parts.size() ? &parts[i + 1] : nullptr;
            then_ = i + 2 < parts.size() ? &parts[i + 2] : nullptr;
            std::visit([&](const auto& part) { add(part); }, parts[i]);
        }
        while (!open_.empty())
            leave();
        return std::move(html_);
    }

private:
    void add(const DrawnWord& word) {
        std::string before;
        std::string behind;
        bool punch = false;
        for (const MarkKind mark : word.marks) {
            before += before_word(mark);
            behind += behind_word(mark);
            punch = punch || mark == MarkKind::punch;
            tied_ = tied_ || mark == MarkKind::tie;
        }
        std::string text = markup_value(word.text);
        if (punch) text = fmt::format(R"(<b class="punch">{}</b>)", text);
        // A longer word, a web address say, must be able to break.
        constexpr std::size_t longest_kept = 18;
        keeps_ = word.text.size() <= longest_kept && pause_is_near();
        if (keeps_) html_ += R"(<span class="kept">)";
        const std::string_view above = word.sound.empty() ? word.instead : word.sound;
        if (above.empty()) {
            html_ += before + text + behind;
            return;
        }
        const std::string_view signs = signs_behind();
        taken_ = signs.size();
        html_ += fmt::format("{}<ruby>{}{}{}<rt>{}</rt></ruby>", before, text, behind,
                             markup_value(signs), markup_value(above));
    }

    // A pause right behind the word, or with nothing but signs and blanks before it.
    bool pause_is_near() const {
        const auto is_pause = [](const DrawnPart* part) {
            return part != nullptr && std::holds_alternative<DrawnPause>(*part);
        };
        const bool signs = next_ != nullptr && std::holds_alternative<DrawnText>(*next_);
        return is_pause(next_) || (signs && is_pause(then_));
    }

    // The signs right behind a word: they stay with it under what is written above.
    std::string_view signs_behind() const {
        const auto* text = next_ != nullptr ? std::get_if<DrawnText>(next_) : nullptr;
        return text != nullptr ? text->text.substr(0, text->text.find(' ')) : std::string_view{};
    }

    // A blank before a pause is left to the pause; one that a tie bridges never breaks the line.
    void add(const DrawnText& part) {
        std::string_view text = part.text.substr(taken_);
        taken_ = 0;
        const bool stays = next_ != nullptr && std::holds_alternative<DrawnPause>(*next_);
        if (stays && text.ends_with(' ')) text.remove_suffix(1);
        html_ += tied_ && text == " " ? "&nbsp;" : markup_value(text);
        tied_ = false;
    }

    // A pause stays on the line of the word before it.
    void add(const DrawnPause& pause) {
        if (!keeps_) html_ += R"(<span class="kept">)";
        html_ += fmt::format("&nbsp;{}</span>", pause_shape(pause));
        keeps_ = false;
    }

    void add(const DrawnDirection& direction) {
        html_ += fmt::format(R"(<span class="direction">{}</span>)", markup_value(direction.text));
        if (direction.seconds > Seconds{0}) html_ += rest_shape(direction.seconds);
    }

    void add(const DrawnEdge& edge) {
        if (edge.opens) return enter(edge.kind);
        if (std::find(open_.begin(), open_.end(), edge.kind) == open_.end()) return;
        std::vector<MarkKind> inner;
        while (open_.back() != edge.kind) {
            inner.push_back(open_.back());
            leave();
        }
        leave();
        for (auto mark = inner.rbegin(); mark != inner.rend(); ++mark)
            enter(*mark);
    }

    void enter(MarkKind mark) {
        open_.push_back(mark);
        html_ += fmt::format(R"(<span class="{}">{})", class_of(mark), sign_of(mark, true));
    }

    void leave() {
        html_ += sign_of(open_.back(), false);
        if (open_.back() == MarkKind::quick) html_ += R"(<span class="tip"></span>)";
        html_ += "</span>";
        open_.pop_back();
    }

    std::string html_;
    std::vector<MarkKind> open_;
    const DrawnPart* next_ = nullptr; // the part behind this one, and the one behind that
    const DrawnPart* then_ = nullptr;
    bool keeps_ = false; // this word's line holds the pause behind it
    bool tied_ = false;
    std::size_t taken_ = 0; // bytes of the next text that are written already
};

// --- notes --------------------------------------------------------------------------------------

// The lines of a stretch of notes without their signs.
std::string note_text(std::string_view lines) {
    std::string text;
    while (!lines.empty()) {
        const std::size_t end = std::min(lines.find('\n'), lines.size());
        std::string_view line = lines.substr(0, end);
        lines.remove_prefix(std::min(end + 1, lines.size()));
        if (line.ends_with('\r')) line.remove_suffix(1);
        const std::size_t from = line.find_first_not_of(" \t%");
        if (from == std::string_view::npos) continue;
        if (!text.empty()) text += '\n';
        text += line.substr(from);
    }
    return text;
}

// Notes that stand above a place and were not written yet, in the order of the script.
class Notes {
public:
    Notes(const Analysis& analysis, bool wanted)
        : text_(analysis.document.text->bytes()), blocks_(analysis.script.blocks), wanted_(wanted) {
    }

    std::string above(Offset place) {
        std::string notes;
        for (; next_ < blocks_.size() && blocks_[next_].span.begin <= place; ++next_) {
            const Block& block = blocks_[next_];
            const Span span = block.kind == BlockKind::note ? block.span : block.notes;
            if (!wanted_ || span.empty()) continue;
            const std::string text = note_text(slice(text_, span));
            if (!text.empty() && !notes.empty()) notes += '\n';
            notes += text;
        }
        if (notes.empty()) return {};
        return fmt::format(R"(<p class="note">{}</p>)", markup_value(notes));
    }

private:
    std::string_view text_;
    const std::vector<Block>& blocks_;
    std::size_t next_ = 0;
    bool wanted_;
};

// --- the page -----------------------------------------------------------------------------------

std::string row(std::string_view classes, std::string_view when, std::string_view words,
                std::string_view note) {
    return fmt::format(
        "<div class=\"row{}\">\n<p class=\"when\">{}</p>\n<p class=\"words\">{}</p>\n{}</div>\n",
        classes, when, words, note);
}

std::string section_row(const Section& section, std::string_view note) {
    std::string lasts = format_clock(section.timing.expected);
    if (section.target) lasts += " of " + format_target(*section.target);
    const int level = std::clamp(section.level, 1, 3) + 1;
    return fmt::format(
        "<div class=\"section\">\n<p class=\"when\"><b>{}</b></p>\n<h{} class=\"title\">"
        "<span class=\"name\">{}</span><span class=\"lasts\">{}</span></h{}>\n{}</div>\n",
        format_clock(section.at), level, markup_value(section.name), lasts, level, note);
}

class Copy {
public:
    Copy(const Analysis& analysis, const ExportOptions& options)
        : analysis_(analysis), script_(analysis.script), notes_(analysis, options.notes),
          voices_(script_.header.speakers.size() > 1) {}

    std::string write() {
        for (const Placed& placed : script_.thoughts)
            add(placed);
        add_sections(Offset{UINT32_MAX});
        const std::string last = notes_.above(Offset{UINT32_MAX});
        html_ += row(" end", fmt::format("<b>{}</b>", format_clock(script_.timing.expected)), "end",
                     last);
        return std::move(html_);
    }

private:
    void add_sections(Offset above) {
        const auto& sections = script_.sections;
        for (; section_ < sections.size() && sections[section_].heading.begin < above; ++section_)
            html_ +=
                section_row(sections[section_], notes_.above(sections[section_].heading.begin));
    }

    void add(const Placed& placed) {
        const std::size_t sections_above = section_;
        add_sections(placed.block.span.begin);
        const bool below_heading = section_ > sections_above;
        const Thought& thought = *placed.thought;
        std::string classes = " thought " + std::string(drawn_kind(placed));
        if (thought.written.spare) classes += " spare";
        const bool turn = voices_ && !placed.speaker.empty() && placed.speaker != speaker_;
        if (turn && !speaker_.empty() && !below_heading) classes += " turn";
        if (turn) speaker_ = placed.speaker;
        std::string words;
        if (turn)
            words += fmt::format(R"(<span class="who">{}</span>)", markup_value(placed.speaker));
        const std::string_view marker = list_marker(analysis_, placed);
        if (!marker.empty())
            words += fmt::format(R"(<span class="number">{}</span>)",
                                 marker.size() > 1 ? markup_value(marker) : "–");
        std::vector<DrawnPart> parts = drawn(thought);
        // The margin says that it may be dropped.
        if (thought.written.spare) {
            const auto first = std::find_if(parts.begin(), parts.end(), [](const DrawnPart& part) {
                return std::holds_alternative<DrawnDirection>(part);
            });
            if (first != parts.end()) parts.erase(first);
        }
        words += Line().write(parts);
        html_ += row(classes, when_of(placed), words, notes_.above(placed.block.span.begin));
    }

    // When it begins, how long it is, and who says it: the page may have been turned.
    std::string when_of(const Placed& placed) const {
        const Thought& thought = *placed.thought;
        std::string when = fmt::format("<b>{}</b>", format_clock(placed.at));
        if (thought.takes_time())
            when += fmt::format(" <i>{}</i>", format_seconds(thought.reading.timing.expected));
        if (voices_ && thought.has_words() && !placed.speaker.empty())
            when += fmt::format(" <span>{}</span>", markup_value(placed.speaker));
        if (thought.written.spare) when += R"( <span class="drop">spare</span>)";
        return when;
    }

    const Analysis& analysis_;
    const Script& script_;
    Notes notes_;
    bool voices_;
    std::size_t section_ = 0;
    std::string_view speaker_;
    std::string html_;
};

std::string title_of(const Script& script) {
    return script.header.title.empty() ? "Untitled script" : script.header.title;
}

// A colour of three or six digits as its weight of grey (the weights of WCAG's luminance).
std::string grey_of(std::string_view digits) {
    const std::size_t size = digits.size() / 3;
    std::array<double, 3> channels{};
    for (std::size_t i = 0; i < channels.size(); ++i) {
        const std::string_view channel = digits.substr(i * size, size);
        int value = 0;
        std::from_chars(channel.data(), channel.data() + size, value, 16);
        channels.at(i) = size == 1 ? 17 * value : value;
    }
    return fmt::format(
        "{0:02x}{0:02x}{0:02x}",
        std::lround(0.2126 * channels[0] + 0.7152 * channels[1] + 0.0722 * channels[2]));
}

// A picture's styles in black, white and grey; its words stay as they are.
std::string in_grey(const std::string& picture) {
    const std::size_t begin = picture.find("<style>");
    const std::size_t end = picture.find("</style>");
    if (begin == std::string::npos || end == std::string::npos) return picture;
    std::string result = picture.substr(0, begin);
    for (std::size_t at = begin; at < end;) {
        const std::size_t stop = picture[at] == '#' ? picture.find_first_of(";}", at) : at + 1;
        if (stop - at == 4 || stop - at == 7) {
            result += '#' + grey_of(std::string_view(picture).substr(at + 1, stop - at - 1));
        } else {
            result += picture.substr(at, stop - at);
        }
        at = stop;
    }
    return result + picture.substr(end);
}

// As an image of its own, so that its styles touch nothing else. All but a few signs are written by
// their numbers (RFC 3986, section 2.1).
std::string rhythm_image(const Analysis& analysis) {
    constexpr int most_rows = 4; // the head leaves room for the first thoughts
    std::string address = "data:image/svg+xml,";
    for (const char c : in_grey(rhythm_picture(analysis, most_rows))) {
        const bool plain =
            ascii::is_alnum(c) || std::string_view("-._~ =:/;,").find(c) != std::string_view::npos;
        if (plain) {
            address += c;
        } else {
            address += fmt::format("%{:02X}", static_cast<unsigned char>(c));
        }
    }
    return address;
}

std::string head(const Analysis& analysis) {
    const Script& script = analysis.script;
    std::string facts =
        fmt::format("<span>runs {} ({})</span>", format_clock(script.timing.expected),
                    format_range(script.timing));
    if (script.header.target)
        facts += fmt::format("<span>target {}</span>", format_target(*script.header.target));
    if (!script.header.speakers.empty()) {
        std::string names;
        for (const Speaker& speaker : script.header.speakers)
            names += (names.empty() ? "" : ", ") + markup_value(speaker.name);
        facts += fmt::format("<span>{}</span>", names);
    }
    return fmt::format(
        "<header class=\"head\">\n<h1>{}</h1>\n<p class=\"date\">{}</p>\n"
        "<p class=\"facts\">{}</p>\n"
        "<p class=\"rhythm\"><img alt=\"The rhythm of the script: strokes are words, "
        "gaps are silences\" src=\"{}\"></p>\n</header>\n",
        markup_value(title_of(script)), markup_value(script.header.date), facts,
        rhythm_image(analysis));
}

// A string of a style sheet: whatever is no letter or digit by its number, so that it ends nothing.
std::string style_string(std::string_view text) {
    std::string result = "\"";
    for (std::size_t at = 0; at < text.size();) {
        const unicode::CodePoint c = unicode::decode(text, at);
        const bool plain = c.size == 1 && (ascii::is_alnum(text[at]));
        result += plain ? std::string(1, text[at])
                        : fmt::format("\\{:X} ", static_cast<std::uint32_t>(c.value));
        at += c.size;
    }
    return result + '"';
}

// The sheet of paper and what stands in its margins.
std::string sheet(const Analysis& analysis, const ExportOptions& options) {
    const Script& script = analysis.script;
    return fmt::format(
        "@page {{ size: {}; margin: 20mm 16mm 18mm 12mm;\n"
        "@top-left {{ content: {}; }}\n@top-right {{ content: {}; }}\n"
        "@bottom-right {{ content: \"page \" counter(page) \" of \" counter(pages); }} }}\n"
        "@page :first {{ @top-left {{ content: \"\"; }} @top-right {{ content: \"\"; }} }}\n"
        ":root {{ --points: {}pt; --margin: {}; }}\n",
        options.letter ? "letter" : "A4", style_string(title_of(script)),
        style_string(script.header.date), options.points, options.notes ? "34mm" : "0px");
}

} // namespace

std::string write_print(const Analysis& analysis, const ExportOptions& options) {
    return fmt::format("<!doctype html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n"
                       "<meta name=\"generator\" content=\"Sayline\">\n"
                       "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                       "<title>{}</title>\n<style>\n{}{}</style>\n</head>\n<body>\n{}<main>\n{}"
                       "</main>\n</body>\n</html>\n",
                       markup_value(analysis.options.language),
                       markup_value(title_of(analysis.script)), bytes_of(Asset::print_css),
                       sheet(analysis, options), head(analysis), Copy(analysis, options).write());
}

} // namespace say
