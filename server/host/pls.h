// Lexicon files: the Pronunciation Lexicon Specification 1.0 (W3C Recommendation, 14 October 2008).
// A fault is one sentence with its place, and what is sound in the file still counts.
#pragma once

#include "speech/word_list.h"
#include "text/edit.h"
#include "text/span.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

struct PlsFault {
    Offset at;
    std::string message; // what is wrong and what may stand there
};

struct PlsLexeme {
    Offset at;                          // of its "<"
    std::vector<std::string> graphemes; // blanks made single, as written otherwise
    std::vector<OwnReading> readings;   // the one that is said first
    Span phoneme; // the text of that one's phoneme; empty for an alias or where it is in pieces
};

struct Pls {
    std::string language; // xml:lang as written
    std::vector<PlsLexeme> lexemes;
    std::vector<PlsFault> faults;
    std::string prefix;    // of its elements: "" or "pls:"
    bool has_root = false; // a lexicon that more may be written into
};

// `bytes` is UTF-8. A text of blanks alone is an empty lexicon without a fault: it is what an
// editor makes before it fills a new file.
Pls read_pls(std::string_view bytes);

// Adds what is in the lexicon to a list.
void add_to(WordList& list, const Pls& pls);

// What a new entry or another sound of an old one changes in the file, and nothing else of it.
// `phones` has one list a word of `grapheme`, or one. Empty if the entry is there with this sound
// already or the file is no lexicon. From blank bytes a whole file is made.
std::vector<TextEdit> pls_edits(std::string_view bytes, std::string_view grapheme,
                                const std::vector<Phones>& phones);

} // namespace say
