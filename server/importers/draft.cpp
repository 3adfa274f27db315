#include "importers/draft.h"

#include "text/unicode.h"

#include <fmt/core.h>

#include <utility>

namespace say {

void PieceText::add(std::string_view text, Style style) {
    if (style.struck) {
        if (!striking_) notes_.emplace_back("Struck out: ");
        notes_.back() += text;
        striking_ = true;
        return;
    }
    striking_ = false;
    const std::size_t begin = text_.size();
    text_ += text;
    if (text.empty() || (!style.bold && !style.italic)) return;
    if (!leans_.empty() && leans_.back().end == begin && leans_.back().heavy == style.bold) {
        leans_.back().end = text_.size();
    } else {
        leans_.push_back({begin, text_.size(), style.bold});
    }
}

void PieceText::add_note(std::string note) {
    if (!note.empty()) notes_.push_back(std::move(note));
    striking_ = false;
}

void PieceText::add_link(std::size_t start, std::string_view address) {
    const std::string_view shown = trimmed(std::string_view(text_).substr(start));
    const bool shows_it = address.ends_with(shown) && !shown.empty(); // <https://...>, <a@b.c>
    if (!shows_it && !address.empty()) add_note(fmt::format("Link: {}", address));
}

void PieceText::put_notes(Draft& draft) {
    for (std::string& note : notes_)
        draft.pieces.push_back({.kind = Piece::Kind::note, .text = std::move(note)});
    notes_.clear();
    striking_ = false;
}

bool PieceText::is_blank() const {
    return trimmed(text_).empty();
}

Piece PieceText::take(Piece::Kind kind) {
    Piece piece{.kind = kind, .text = std::move(text_), .leans = std::move(leans_)};
    text_.clear();
    leans_.clear();
    return piece;
}

void Tables::tell(Draft& draft) const {
    if (count == 0) return;
    draft.told.push_back(
        fmt::format("{} {} {} read one by one; say it in sentences",
                    count == 1 ? "1 table: its" : fmt::format("{} tables: their", count), cells,
                    cells == 1 ? "cell is" : "cells are"));
}

Draft titled(Draft draft) {
    for (const Piece& piece : draft.pieces) {
        if (!draft.title.empty()) break;
        if (piece.kind == Piece::Kind::heading) draft.title = collapsed(piece.text);
    }
    return draft;
}

std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> lines;
    while (true) {
        const std::size_t end = text.find_first_of("\r\n");
        lines.push_back(text.substr(0, end));
        if (end == std::string_view::npos) return lines;
        text.remove_prefix(end + (text.substr(end).starts_with("\r\n") ? 2 : 1));
    }
}

std::string_view trimmed(std::string_view text) {
    std::size_t begin = text.size();
    std::size_t end = 0;
    for (std::size_t at = 0; at < text.size();) {
        const unicode::CodePoint c = unicode::decode(text, at);
        if (!unicode::is_blank(c.value)) {
            if (begin == text.size()) begin = at;
            end = at + c.size;
        }
        at += c.size;
    }
    return begin < end ? text.substr(begin, end - begin) : std::string_view{};
}

std::string collapsed(std::string_view text) {
    std::string result;
    bool blank = false;
    for (std::size_t at = 0; at < text.size();) {
        const unicode::CodePoint c = unicode::decode(text, at);
        if (unicode::is_blank(c.value)) {
            blank = true;
        } else {
            if (blank && !result.empty()) result += ' ';
            blank = false;
            result += text.substr(at, c.size);
        }
        at += c.size;
    }
    return result;
}

} // namespace say
