// textDocument/onTypeFormatting: what Enter leaves behind. Pairs of marks are left to the editor,
// which closes them as they are typed; a pair may also go on over a line end.
#include "features/features.h"
#include "speech/sentences.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>

namespace say {
namespace {

std::string_view line_text(const Text& text, std::uint32_t line) {
    return slice(text.bytes(), text.line_span(line));
}

// A header has few lines: a fence above and none nor a blank line since.
bool in_header(const Text& text, std::uint32_t line) {
    constexpr std::uint32_t most_lines = 200;
    if (line > most_lines || ascii::trim_right(line_text(text, 0)) != "---") return false;
    for (std::uint32_t above = 1; above < line; ++above) {
        const std::string_view written = ascii::trim_right(line_text(text, above));
        if (written.empty() || written == "---") return false;
    }
    return true;
}

bool is_item(std::string_view line) {
    if (line.starts_with("- ")) return true;
    const std::size_t dot = line.find_first_not_of("0123456789");
    return dot != std::string_view::npos && dot > 0 && line.substr(dot).starts_with(". ");
}

// A line of words that are spoken.
bool is_spoken(const Text& text, std::uint32_t line) {
    const std::string_view written = ascii::trim_right(line_text(text, line));
    return !written.empty() && written != "---" && !written.starts_with('#') &&
           !written.starts_with("% ") && !in_header(text, line);
}

// Of a direction or a pronouncer that was begun and not ended, the closing sign.
std::string_view left_open(std::string_view line, std::string_view next_line) {
    const std::size_t at = line.find_last_of("[]{}");
    if (at == std::string_view::npos || at + 1 >= line.size()) return {};
    const bool direction = line[at] == '[';
    if (!direction && line[at] != '{') return {};
    const char before = at == 0 ? ' ' : line[at - 1];
    if (before == '\\' || std::count(line.begin(), line.end(), '`') % 2 != 0) return {};
    const bool opens =
        direction ? ascii::is_blank(before) : ascii::is_letter(before) || (before & 0x80) != 0;
    if (!opens || ascii::is_blank(line[at + 1])) return {};
    const std::string_view close = direction ? "]" : "}";
    const std::size_t later = next_line.find_first_of("[]{}");
    const bool closed_later = later != std::string_view::npos && next_line[later] == close[0];
    return closed_later ? std::string_view{} : close;
}

// Without what may stand behind the stop: closing signs, directions, and marks that hold.
std::string_view without_tail(std::string_view line) {
    for (;;) {
        const std::size_t before = line.size();
        line = ascii::trim_right(line);
        while (line.ends_with('/') || line.ends_with('x')) {
            const std::size_t blank = line.find_last_not_of("/x");
            if (blank == std::string_view::npos || !ascii::is_blank(line[blank])) break;
            line = ascii::trim_right(line.substr(0, blank));
        }
        if (line.ends_with(']') && line.rfind('[') != std::string_view::npos)
            line = line.substr(0, line.rfind('['));
        constexpr std::string_view arrows[] = {"↗", "↘", "”", "’"};
        for (const std::string_view closing : arrows) {
            if (line.ends_with(closing)) line.remove_suffix(closing.size());
        }
        while (!line.empty() && std::string_view("\"')*_~<>").find(line.back()) != line.npos)
            line.remove_suffix(1);
        if (line.size() == before) return line;
    }
}

// Three dots hold the thought open; a fourth one ends it.
bool ends_sentence(std::string_view line) {
    line = without_tail(line);
    if (line.empty() || std::string_view(".!?").find(line.back()) == line.npos) return false;
    const std::size_t last = line.find_last_not_of('.');
    const std::size_t dots = line.size() - (last == line.npos ? 0 : last + 1);
    if (dots == 2 || dots == 3 || last == line.npos) return false;
    // A name behind it shows whether the dot is the sentence's or an abbreviation's.
    constexpr std::size_t enough = 200; // bytes
    std::size_t begin = line.size() > enough ? line.find(' ', line.size() - enough) : 0;
    if (begin == line.npos) begin = 0;
    const std::string with_next = std::string(line.substr(begin)) + " Mira counts.";
    const std::vector<Span> sentences = split_sentences(with_next);
    return !sentences.empty() && sentences.back().begin.value == line.size() - begin + 1;
}

} // namespace

std::vector<TextEdit> after_enter(const Text& text, Offset at, const Options& options) {
    const std::uint32_t line = text.line_of(at);
    if (line == 0 || !is_spoken(text, line - 1)) return {};
    const Offset end = text.line_span(line - 1).end;
    const std::string_view above = ascii::trim_right(line_text(text, line - 1));
    const std::string_view close = left_open(above, line_text(text, line));
    if (!close.empty()) {
        const Offset behind = text.line_start(line - 1) + static_cast<std::uint32_t>(above.size());
        return {{{behind, behind}, std::string(close)}};
    }
    if (!options.blank_line_after_sentence || is_item(above) || !ends_sentence(above)) return {};
    const Span line_end{end, text.line_start(line)};
    return {{{end, end}, std::string(slice(text.bytes(), line_end))}};
}

} // namespace say
