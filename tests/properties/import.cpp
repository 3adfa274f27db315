// links: say_importers say_corpus
// Whatever a draft holds, its words are the words of the script that is made of it, but for what
// nobody reads out, which stays in its place: the script's own parser is asked, for the grammar's
// corpus, for noise of mark signs and for noise of bytes.
#include "importers/importer.h"
#include "importers/script_writer.h"
#include "support/catch.h"
#include "support/corpus.h"
#include "syntax/script.h"
#include "syntax/words.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <random>

namespace {

using say::Draft;
using say::Piece;

void add_words(const std::string& plain, std::vector<std::string>& words) {
    for (const say::Span span : say::split_words(plain))
        words.emplace_back(say::slice(plain, span));
}

// Backticks are the one sign that may be left out, where they would close a run in backticks: then
// the letters are compared, all in a row.
std::string letters_of(const std::vector<std::string>& words) {
    std::string letters;
    for (const std::string& word : words) {
        for (const char c : word) {
            if (say::ascii::is_alnum(c)) letters += c;
        }
    }
    return letters;
}

bool is_thought(const Piece& piece) {
    return piece.kind == Piece::Kind::paragraph || piece.kind == Piece::Kind::item;
}

// A reader makes no word of characters that do not print; neither does the writer keep them.
std::string printable(const std::string& text) {
    std::string result;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        result += byte < 0x20 || byte == 0x7F ? ' ' : c;
    }
    const std::string mark = "\uFEFF"; // a byte-order mark, wherever it stands
    for (std::size_t at = 0; (at = result.find(mark)) != std::string::npos;)
        result.erase(at, mark.size());
    return say::collapsed(result);
}

std::vector<std::string> words_of(const Draft& draft) {
    std::vector<std::string> words;
    for (const Piece& piece : draft.pieces) {
        if (is_thought(piece)) add_words(printable(piece.text), words);
    }
    return words;
}

struct Read {
    std::vector<std::string> words;
    std::string visible; // letters that are spoken, and those of what stays unspoken as it was
    bool unspoken = false;
    std::vector<say::MarkKind> marks;
};

// What a draft's own directions and fields hold is not spoken, but it is there.
std::vector<say::Span> unspoken_of(const say::Written& written) {
    std::vector<say::Span> spans;
    for (const say::Mark& mark : written.marks) {
        if (mark.kind == say::MarkKind::direction) spans.push_back(mark.span);
    }
    for (const say::Problem& problem : written.problems) {
        if (problem.kind == say::ProblemKind::field) spans.push_back(problem.span);
    }
    return spans;
}

std::string letters_in(std::string_view source, const say::Written& written,
                       const std::vector<say::Span>& unspoken) {
    std::vector<bool> seen(source.size(), false);
    for (std::size_t i = 0; i < written.plain.source.size(); ++i) {
        const std::uint32_t at = written.plain.source[i];
        if (at < source.size() && source[at] == written.plain.text[i]) seen[at] = true;
    }
    for (const say::Span span : unspoken)
        std::fill(seen.begin() + span.begin.value, seen.begin() + span.end.value, true);
    std::string letters;
    for (std::size_t at = 0; at < source.size(); ++at) {
        if (seen[at] && say::ascii::is_alnum(source[at])) letters += source[at];
    }
    return letters;
}

Read read_script(const std::string& script) {
    static say::Parser parser;
    const say::Header header = say::parse_header(script);
    Read read;
    for (const say::Block& block : say::cut_blocks(script, header)) {
        if (block.kind != say::BlockKind::paragraph && block.kind != say::BlockKind::item) continue;
        const say::Written written = parser.parse(script, block);
        add_words(written.plain.text, read.words);
        const std::vector<say::Span> unspoken = unspoken_of(written);
        read.visible += letters_in(say::slice(script, block.span), written, unspoken);
        read.unspoken |= !unspoken.empty();
        for (const say::Mark& mark : written.marks)
            read.marks.push_back(mark.kind);
    }
    return read;
}

// Nothing is a mark but what the draft set apart and what is ordinary writing.
bool is_wanted(say::MarkKind kind, bool leans) {
    using say::MarkKind;
    if (kind == MarkKind::stress || kind == MarkKind::heavy_stress) return leans;
    return kind == MarkKind::quoted || kind == MarkKind::aside || kind == MarkKind::pause ||
           kind == MarkKind::direction || kind == MarkKind::pronouncer; // a field stands in braces
}

void check(const Draft& draft) {
    bool leans = false;
    for (const Piece& piece : draft.pieces)
        leans |= !piece.leans.empty();
    const say::WrittenScript script = say::write_script(draft, {});
    const Read read = read_script(script.text);
    INFO(script.text);
    const std::vector<std::string> words = words_of(draft);
    const bool ticks =
        std::any_of(draft.pieces.begin(), draft.pieces.end(),
                    [](const Piece& piece) { return piece.text.find('`') != std::string::npos; });
    if (read.unspoken) {
        CHECK(read.visible == letters_of(words));
    } else if (ticks) {
        CHECK(letters_of(read.words) == letters_of(words));
    } else {
        CHECK(read.words == words);
    }
    for (const say::MarkKind kind : read.marks)
        CHECK(is_wanted(kind, leans));
}

// Signs of every mark, blanks that are none, words, line ends.
const std::vector<std::string>& signs() {
    static const std::vector<std::string> all = {
        "a",   "word",    "Ana", "WORD", "x",      "xx",     "12",
        "I",   " ",       " ",   " ",    "\n",     ".",      ",",
        "!",   "?",       "*",   "**",   "_",      "__",     "~",
        "°",   "(",       ")",   "(.)",  "(1.5)",  "(2s)",   ">",
        "<",   "\"",      "“",   "”",    "[",      "]",      "{",
        "}",   "{=",      "/",   "//",   "...",    "…",      "^",
        "↑",   "↓",       "↗",   "↘",    "::",     ":",      "‿",
        "\\",  "`",       "``",  "%",    "% ",     "# ",     "- ",
        "---", "1. ",     "2. ", "5. ",  "MIRA:",  "MIRA: ", "https://tide.example/a*b*",
        "--",  "—",       "'",   "’",    "\u00A0", "\u200B", "\u00AD",
        "é",   "e\u0301", "🙂",  "|",    "$5",     "5%",     "&"};
    return all;
}

std::string noise(std::mt19937& random, const std::vector<std::string>& from, int most) {
    std::uniform_int_distribution<int> count(0, most);
    std::uniform_int_distribution<std::size_t> pick(0, from.size() - 1);
    std::string text;
    for (int i = count(random); i > 0; --i)
        text += from[pick(random)];
    return text;
}

// Some words set apart, at characters' edges.
void lean_on(std::mt19937& random, Piece& piece) {
    std::vector<std::size_t> edges;
    for (std::size_t at = 0; at < piece.text.size();) {
        edges.push_back(at);
        at += say::unicode::decode(piece.text, at).size;
    }
    edges.push_back(piece.text.size());
    std::uniform_int_distribution<std::size_t> step(0, 6);
    for (std::size_t at = step(random); at + 1 < edges.size();) {
        const std::size_t end = std::min(edges.size() - 1, at + 1 + step(random));
        piece.leans.push_back({edges[at], edges[end], step(random) < 3});
        at = end + step(random);
    }
}

} // namespace

TEST_CASE("import/the corpus stays words") {
    const auto cases =
        say::test::load_corpus(std::string(SAYLINE_SOURCE_DIR) + "/grammar/test/corpus");
    REQUIRE(cases.size() > 100);
    for (const say::test::CorpusCase& each : cases) {
        INFO(each.file << ": " << each.name);
        const auto draft = say::read_text_draft(each.input, "draft");
        if (draft) check(*draft);
        check({.title = {}, .pieces = {{.text = each.input}}, .told = {}});
    }
}

TEST_CASE("import/noise of marks stays words") {
    std::mt19937 random(20261129);
    for (int round = 0; round < 4000; ++round) {
        Draft draft;
        for (int i = 0; i < 3; ++i) {
            Piece piece{.text = noise(random, signs(), 12)};
            if (round % 3 == 1) piece.kind = Piece::Kind::item;
            if (round % 6 == 1) piece.number = i + 1;
            if (round % 2 == 1) lean_on(random, piece);
            if (i == 0 && round % 5 == 0) piece.speaker = "MIRA";
            draft.pieces.push_back(piece);
        }
        check(draft);
    }
}

TEST_CASE("import/noise of bytes stays words") {
    std::mt19937 random(1129);
    std::uniform_int_distribution<int> byte(1, 255);
    for (int round = 0; round < 1000; ++round) {
        std::string bytes;
        for (int i = 0; i < 60; ++i)
            bytes += static_cast<char>(byte(random));
        const say::Importer* text = say::find_importer("txt");
        const auto draft = say::read_draft(bytes, "draft", *text);
        if (draft) check(*draft);
        const auto markdown = say::read_draft(bytes, "draft", *say::find_importer("md"));
        if (markdown) check(*markdown);
    }
}

// Square brackets are where drafts for a camera say what to do: common practice, no source. A
// number in brackets behind a word is a reference, and a word in brackets in a quotation was put in
// by whoever quotes (The Chicago Manual of Style, 6.99 and 13.60, from memory).
TEST_CASE("import/what nobody reads out stays unspoken") {
    const auto written = [](const std::string& text) {
        return say::write_script({.title = {}, .pieces = {{.text = text}}, .told = {}}, {});
    };
    const auto script = [&](const std::string& text) { return written(text).text; };
    CHECK(script("[smile] Welcome back. [VT: shore]") == "[smile] Welcome back. [VT: shore]\n");
    CHECK(written("[smile] Welcome back. [VT: shore]").directions == 2);
    CHECK(script("It grips the rock.[12] Hard.") == "It grips the rock.[12] Hard.\n");
    CHECK(script("See [12] for more.") == "See \\[12] for more.\n");
    CHECK(script("She said \"the [grey] limpet\" twice.") ==
          "She said \"the \\[grey] limpet\" twice.\n");
    CHECK(script("She said “the [grey] limpet” [smile].") ==
          "She said “the \\[grey] limpet” [smile].\n");
    CHECK(script("Hello {first_name}, welcome.") == "Hello {first_name}, welcome.\n");
    CHECK(script("So [pause] we count.") == "So [pause] we count.\n");
    CHECK(script("We count [all] limpets.") == "We count \\[all] limpets.\n");
    CHECK(script("Tick [x] here.") == "Tick \\[x] here.\n");
}

TEST_CASE("import/a text too long for a thought is cut, not lost") {
    std::string text;
    while (text.size() < 200'000)
        text += "We count *every* limpet (twice). ";
    check({.title = {}, .pieces = {{.text = text}}, .told = {}});
    // One endless word is no word that anybody says; its letters stay.
    const std::string endless(100'000, 'a');
    std::string letters;
    const Draft draft{.title = {}, .pieces = {{.text = endless}}, .told = {}};
    for (const std::string& word : read_script(say::write_script(draft, {}).text).words)
        letters += word;
    CHECK(letters == endless);
    check({.title = {}, .pieces = {{.text = std::string(100'000, '*')}}, .told = {}});
}
