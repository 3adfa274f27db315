// Parting a thought between two words.
#include "rules/split.h"

#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <string>

namespace say::rules {
namespace {

// What stands between two words: blanks, what belongs to the left word, what belongs to the right.
struct Piece {
    enum class Kind { blank, left, right } kind;
    Span span;
};

bool is_line_end(char c) {
    return c == '\n' || c == '\r';
}

// A note is a line of its own that begins with "% ".
std::size_t note_size(std::string_view source, std::size_t at) {
    if (source[at] != '%') return 0;
    if (at + 1 < source.size() && !ascii::is_blank(source[at + 1])) return 0;
    std::size_t line = at;
    while (line > 0 && !is_line_end(source[line - 1]) && ascii::is_blank(source[line - 1]))
        --line;
    if (line > 0 && !is_line_end(source[line - 1])) return 0;
    std::size_t end = at;
    while (end < source.size() && !is_line_end(source[end]))
        ++end;
    return end - at;
}

// The mark with inner text that begins at `at`: blanks inside it part nothing.
const Mark* closed_mark_at(const Written& written, std::size_t at) {
    constexpr std::array kinds = {MarkKind::direction, MarkKind::pronouncer, MarkKind::say_as,
                                  MarkKind::timed_pause};
    const auto first =
        std::partition_point(written.marks.begin(), written.marks.end(), [&](const Mark& mark) {
            return mark.span.begin.value < static_cast<std::uint32_t>(at);
        });
    for (auto mark = first; mark != written.marks.end() && mark->span.begin.value == at; ++mark) {
        if (std::find(kinds.begin(), kinds.end(), mark->kind) != kinds.end()) return &*mark;
    }
    return nullptr;
}

Piece piece_at(const ThoughtView& view, std::size_t at, std::size_t end) {
    const std::string_view source = view.source;
    if (const std::size_t size = note_size(source, at)) {
        return {Piece::Kind::right, make_span(at, std::min(at + size, end))};
    }
    if (const Mark* mark = closed_mark_at(view.written, at)) {
        const auto kind =
            mark->kind == MarkKind::direction ? Piece::Kind::right : Piece::Kind::left;
        return {kind, make_span(at, std::min<std::size_t>(mark->span.end.value, end))};
    }
    const bool blank = ascii::is_blank(source[at]);
    std::size_t last = at + 1;
    while (last < end && ascii::is_blank(source[last]) == blank &&
           (blank || !closed_mark_at(view.written, last))) {
        ++last;
    }
    return {blank ? Piece::Kind::blank : Piece::Kind::left, make_span(at, last)};
}

std::vector<Piece> pieces_before(const ThoughtView& view, int index) {
    std::vector<Piece> pieces;
    const auto& words = view.written.words;
    if (index <= 0 || index >= static_cast<int>(words.size())) return pieces;

    const auto word = static_cast<std::size_t>(index);
    const std::size_t end = words[word].source.begin.value;
    for (std::size_t at = words[word - 1].source.end.value; at < end;) {
        pieces.push_back(piece_at(view, at, end));
        at = pieces.back().span.end.value;
    }
    // What touches the word opens on it.
    while (!pieces.empty() && pieces.back().kind != Piece::Kind::blank)
        pieces.pop_back();
    return pieces;
}

// A pair that is open where the blanks stand.
bool spans(const Mark& mark, Span blanks) {
    if (mark.open.empty()) return false;
    const Offset inner_end = mark.close.empty() ? mark.span.end : mark.close.begin;
    return mark.open.end <= blanks.begin && blanks.end <= inner_end;
}

// Would the text read as the beginning of another kind of block?
bool looks_like_block(std::string_view text) {
    if (text.empty() || text.front() == '#' || text.front() == '%') return true;
    if (text.front() == '-') return text.size() < 2 || ascii::is_blank(text[1]) || text[1] == '-';
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    if (digits > 0 && digits < 3 && text.substr(digits).starts_with(".")) return true;
    // "MIRA:" would be taken for a speaker.
    const std::string_view first = text.substr(0, text.find_first_of(" \t\r\n"));
    return first.ends_with(':') && std::none_of(first.begin(), first.end(), ascii::is_lower);
}

bool is_numbered(const ThoughtView& view) {
    const auto first = std::find_if_not(view.source.begin(), view.source.end(), ascii::is_blank);
    return first == view.source.end() || *first != '-';
}

// The end of this thought and the beginning of the next, with what the writer said of the first.
std::string parting(const ThoughtView& view) {
    // Its first lines tell: this is asked for at every sentence of what may be a line of megabytes.
    constexpr std::size_t enough = 4096;
    const std::string_view lines = view.source.substr(0, enough);
    const std::string_view eol = lines.find("\r\n") == std::string_view::npos ? "\n" : "\r\n";
    const bool item = view.kind == BlockKind::item;
    std::string text(eol);
    if (!item) text += eol;
    if (!view.written.allow.empty()) {
        text += "% allow: ";
        for (std::size_t i = 0; i < view.written.allow.size(); ++i) {
            if (i > 0) text += ", ";
            text += view.written.allow[i];
        }
        text += eol;
    }
    if (item) text += "- ";
    if (view.written.spare) text += "[spare] ";
    return text;
}

// Both words within the mark: a break would take it apart.
bool holds_both(const Mark& mark, int index) {
    return mark.first < index && index <= mark.last;
}

// A pause among the words of such a mark would break what it is for.
bool keeps_together(MarkKind kind) {
    return kind == MarkKind::aside || kind == MarkKind::stress || kind == MarkKind::heavy_stress ||
           kind == MarkKind::pronouncer || kind == MarkKind::say_as;
}

} // namespace

std::optional<Span> thought_blanks(const ThoughtView& view, int index) {
    std::optional<Span> found;
    bool taken = false;
    for (const Piece& piece : pieces_before(view, index)) {
        if (piece.kind == Piece::Kind::left) taken = false;
        if (piece.kind != Piece::Kind::blank || taken) continue;
        found = piece.span;
        taken = true;
    }
    return found;
}

std::optional<Span> word_blanks(const ThoughtView& view, int index) {
    const std::vector<Piece> pieces = pieces_before(view, index);
    if (pieces.empty()) return std::nullopt;
    return pieces.back().span;
}

std::vector<bool> pauseless(const ThoughtView& view, int first, int last) {
    std::vector<bool> held(static_cast<std::size_t>(std::max(0, last - first + 1)));
    for (const Mark& mark : view.written.marks) {
        const bool tie = mark.kind == MarkKind::tie;
        if (!tie && !keeps_together(mark.kind)) continue;
        const int from = std::max(mark.first + 1, first);
        const int to = std::min(tie ? mark.first + 1 : mark.last, last);
        for (int i = from; i <= to; ++i)
            held[static_cast<std::size_t>(i - first)] = true;
    }
    return held;
}

std::optional<TextEdit> pause_before(const ThoughtView& view, int index, std::string_view mark) {
    if (pauseless(view, index, index).front()) return std::nullopt;
    const auto blanks = word_blanks(view, index);
    if (!blanks) return std::nullopt;
    return TextEdit{.span = {blanks->end, blanks->end}, .replacement = std::string(mark) + " "};
}

std::optional<TextEdit> thought_before(const ThoughtView& view, int index) {
    const auto blanks = thought_blanks(view, index);
    if (!blanks) return std::nullopt;
    if (view.kind == BlockKind::item && is_numbered(view)) return std::nullopt;
    const std::string_view rest = view.source.substr(blanks->end.value);
    if (looks_like_block(rest) && note_size(view.source, blanks->end.value) == 0) {
        return std::nullopt;
    }

    std::string closing;
    std::string opening;
    for (const Mark& mark : view.written.marks) { // outer before inner
        if (spans(mark, *blanks)) {
            closing.insert(0, slice(view.source, mark.close));
            opening += slice(view.source, mark.open);
            continue;
        }
        // A pronouncer over two words cannot be cut, nor can what a tie holds together.
        const bool over_both = mark.open.empty() && holds_both(mark, index);
        const bool tied = mark.kind == MarkKind::tie && mark.first == index - 1;
        if (over_both || tied) return std::nullopt;
    }
    return TextEdit{.span = *blanks, .replacement = closing + parting(view) + opening};
}

std::vector<TextEdit> sentence_before(const ThoughtView& view, int index) {
    auto edit = thought_before(view, index);
    if (!edit) return {};
    const auto at = static_cast<std::size_t>(index);
    const Span before = view.written.words[at - 1].source;
    const Span word = view.written.words[at].source;
    const Span gap{before.end, edit->span.begin};
    const std::string_view between = slice(view.source, gap);

    std::vector<TextEdit> edits;
    if (between.empty()) {
        edits.push_back({gap, "."});
    } else if (between.back() == ',' || between.back() == ';') { // also behind a bracket or a quote
        edits.push_back({make_span(gap.end.value - 1, gap.end.value), "."});
    }
    edits.push_back(std::move(*edit));
    const std::string_view written = slice(view.source, word);
    if (!written.empty() && ascii::is_lower(written.front())) {
        edits.push_back({make_span(word.begin.value, word.begin.value + 1),
                         std::string(1, static_cast<char>(written.front() - 'a' + 'A'))});
    }
    return edits;
}

bool may_enclose(const Written& written, Span span, MarkKind kind) {
    return std::none_of(written.marks.begin(), written.marks.end(), [&](const Mark& mark) {
        if (mark.open.empty() || !mark.span.overlaps(span)) return false;
        const Span inner{mark.open.end, mark.close.begin};
        const bool within = inner.covers(span);
        if (mark.kind == kind) return true;
        return !within && !span.covers(mark.span);
    });
}

const Mark* mark_over(const ThoughtView& view, int index, MarkKind kind) {
    for (const Mark& mark : view.written.marks) {
        if (mark.kind == kind && mark.first <= index && index <= mark.last) return &mark;
    }
    return nullptr;
}

bool is_stressed(const ThoughtView& view, int index) {
    return std::any_of(view.written.marks.begin(), view.written.marks.end(), [&](const Mark& mark) {
        return is_stress(mark.kind) && mark.first <= index && index <= mark.last;
    });
}

} // namespace say::rules
