// A draft as any of the readers finds it: pieces in order, plain words with what leans on them.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// Words that the draft sets apart: bytes [begin, end) of a piece's text.
struct Lean {
    std::size_t begin = 0;
    std::size_t end = 0;
    bool heavy = false; // bold; else italic or underlined
};

struct Piece {
    enum class Kind { paragraph, item, heading, note, divider } kind = Kind::paragraph;
    std::string text; // UTF-8; '\n' where the draft breaks a line
    std::vector<Lean> leans = {};
    int level = 1;                // a heading's, from 1
    int number = 0;               // of a numbered item, from 1; 0 for a bullet
    std::string speaker = {};     // who says it from here on; empty: as before
    bool unsaid_brackets = false; // square brackets hold what was heard and not said
};

struct Draft {
    std::string title;
    std::vector<Piece> pieces;
    std::vector<std::string> told; // what the writer should know of the reading: sentences without
                                   // a full stop
};

// What became of tables, which no voice can show.
struct Tables {
    int count = 0;
    int cells = 0;
    void tell(Draft& draft) const;
};

// With its first heading for a title if it has none of its own.
Draft titled(Draft draft);

// Collects the text of one piece, run by run, and what is told in notes above it.
class PieceText {
public:
    // What leans on the words of a run.
    struct Style {
        bool bold = false;
        bool italic = false; // or underlined
        bool struck = false; // struck out: a note keeps the words
        bool operator==(const Style&) const = default;
    };

    void add(std::string_view text, Style style);
    void add_note(std::string note); // nothing for an empty one
    // What is linked is spoken, where it leads is not: `start` is where its words begin in text().
    void add_link(std::size_t start, std::string_view address);
    bool is_blank() const;
    const std::string& text() const { return text_; }
    // The notes, into the draft.
    void put_notes(Draft& draft);
    // The piece, and nothing is left here.
    Piece take(Piece::Kind kind);

private:
    std::string text_;
    std::vector<Lean> leans_;
    std::vector<std::string> notes_;
    bool striking_ = false; // the last run was struck out
};

// Splits a note or a text at its lines; LF, CRLF and CR end one.
std::vector<std::string_view> lines_of(std::string_view text);
std::string_view trimmed(std::string_view text); // of any Unicode blanks
// Runs of blanks, line ends too, become one blank.
std::string collapsed(std::string_view text);

} // namespace say
