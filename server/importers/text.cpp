// Plain text: paragraphs are parted by blank lines, or are the lines themselves where there is no
// blank line and a line is longer than any that was broken by hand.
#include "importers/importer.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>

namespace say {
namespace {

// Lines that were broken by hand or by a mail program end below this; what is longer is a
// paragraph.
constexpr std::size_t longest_broken_line = 100; // characters

// The text behind a list sign: "- a", "* a", "• a".
std::string_view behind_bullet(std::string_view line) {
    for (const std::string_view sign : {"-", "*", "•", "‣", "◦", "▪", "·"}) {
        if (!line.starts_with(sign)) continue;
        const std::string_view rest = line.substr(sign.size());
        if (rest.starts_with(' ') || rest.starts_with('\t')) return trimmed(rest);
    }
    return {};
}

struct Numbered {
    int number = 0; // 0: no such line
    std::string_view text;
};

// "1. a" or "1) a".
Numbered numbered(std::string_view line) {
    std::size_t digits = 0;
    int number = 0;
    while (digits < line.size() && digits < 2 && ascii::is_digit(line[digits]))
        number = number * 10 + (line[digits++] - '0');
    if (digits == 0 || digits + 1 >= line.size()) return {};
    if (line[digits] != '.' && line[digits] != ')') return {};
    if (line[digits + 1] != ' ' && line[digits + 1] != '\t') return {};
    return {number, trimmed(line.substr(digits + 1))};
}

class Reader {
public:
    explicit Reader(std::string_view text) : lines_(lines_of(text)) {}

    Draft read() {
        const bool by_lines = lines_are_paragraphs();
        for (std::size_t i = 0; i < lines_.size(); ++i) {
            const std::string_view line = trimmed(lines_[i]);
            if (line.empty()) {
                close();
                number_ = 0;
                continue;
            }
            if (add_item(line, i)) continue;
            if (by_lines) close();
            if (!open_.is_blank()) open_.add("\n", {});
            open_.add(line, {});
        }
        close();
        return std::move(draft_);
    }

private:
    bool lines_are_paragraphs() const {
        bool long_line = false;
        std::size_t last = lines_.size(); // blank lines at the end part nothing
        while (last > 0 && trimmed(lines_[last - 1]).empty())
            --last;
        bool begun = false;
        for (std::size_t i = 0; i < last; ++i) {
            const std::string_view line = trimmed(lines_[i]);
            if (line.empty() && begun) return false;
            begun |= !line.empty();
            long_line |= unicode::count_code_points(line) > longest_broken_line;
        }
        return long_line;
    }

    // "5. That's all" is a sentence unless a list has come to that number or goes on from it.
    bool add_item(std::string_view line, std::size_t at) {
        if (const std::string_view text = behind_bullet(line); !text.empty()) {
            add_piece(text, 0);
            return true;
        }
        const Numbered item = numbered(line);
        if (item.number == 0 || item.text.empty()) return false;
        const bool follows = item.number == number_ + 1;
        const bool goes_on = at + 1 < lines_.size() && item.number == 1 &&
                             numbered(trimmed(lines_[at + 1])).number == 2;
        const bool begun = follows && number_ > 0;
        if (!begun && !goes_on) return false;
        number_ = item.number;
        add_piece(item.text, item.number);
        return true;
    }

    void add_piece(std::string_view text, int number) {
        close();
        open_.add(text, {});
        kind_ = Piece::Kind::item;
        item_number_ = number;
    }

    void close() {
        if (!open_.is_blank()) {
            draft_.pieces.push_back(open_.take(kind_));
            draft_.pieces.back().number = item_number_;
        }
        kind_ = Piece::Kind::paragraph;
        item_number_ = 0;
    }

    std::vector<std::string_view> lines_;
    PieceText open_;
    Piece::Kind kind_ = Piece::Kind::paragraph;
    int item_number_ = 0;
    int number_ = 0; // of the last numbered line
    Draft draft_;
};

} // namespace

Result<Draft> read_text_draft(std::string_view text, const std::string& name) {
    Draft draft = Reader(text).read();
    if (draft.pieces.empty()) {
        return Error{fmt::format("{}: no words in it; give a draft that has some", name)};
    }
    return draft;
}

} // namespace say
