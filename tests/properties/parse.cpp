// links: say_syntax say_corpus
// A thought parsed by itself, a file parsed anew and a file parsed by edits give the same marks:
// that is what lets the server parse one paragraph a keystroke (docs/decisions.md).
#include "support/catch.h"
#include "support/corpus.h"
#include "syntax/build.h"
#include "syntax/script.h"

#include <tree_sitter/api.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <random>

extern "C" const TSLanguage* tree_sitter_sayline();

namespace {

using say::MarkKind;
using say::Offset;
using say::Span;

struct Seen {
    MarkKind kind;
    Span span;
    auto operator<=>(const Seen&) const = default;
};

struct TreeParser {
    TSParser* parser = ts_parser_new();
    TreeParser() { REQUIRE(ts_parser_set_language(parser, tree_sitter_sayline())); }
    ~TreeParser() { ts_parser_delete(parser); }
    TreeParser(const TreeParser&) = delete;
    TreeParser& operator=(const TreeParser&) = delete;

    TSTree* parse(const std::string& text, const TSTree* old = nullptr) const {
        return ts_parser_parse_string(parser, old, text.data(),
                                      static_cast<std::uint32_t>(text.size()));
    }
};

void collect(TSNode node, std::vector<Seen>& seen) {
    const std::string_view type = ts_node_type(node);
    for (const say::NodeName& row : say::node_names()) {
        const bool mark = row.kind.use == say::NodeUse::pair ||
                          row.kind.use == say::NodeUse::standing ||
                          row.kind.use == say::NodeUse::attached;
        if (mark && ts_node_is_named(node) && row.name == type) {
            seen.push_back(
                {row.kind.mark, say::make_span(ts_node_start_byte(node), ts_node_end_byte(node))});
        }
    }
    for (std::uint32_t i = 0; i < ts_node_child_count(node); ++i)
        collect(ts_node_child(node, i), seen);
}

std::vector<Seen> marks_of_file(const TreeParser& parser, const std::string& text) {
    TSTree* tree = parser.parse(text);
    std::vector<Seen> seen;
    collect(ts_tree_root_node(tree), seen);
    ts_tree_delete(tree);
    std::sort(seen.begin(), seen.end());
    return seen;
}

std::vector<Seen> marks_of_blocks(say::Parser& parser, const std::string& text) {
    // Which names are declared is no matter of the grammar's, so none are here.
    say::Header header = say::parse_header(text);
    header.speakers.clear();
    std::vector<Seen> seen;
    for (const say::Block& block : say::cut_blocks(text, header)) {
        if (block.kind != say::BlockKind::paragraph && block.kind != say::BlockKind::item) continue;
        for (const say::Mark& mark : parser.parse(text, block).marks) {
            // A quote left open has its opening alone in the tree.
            if (mark.kind == MarkKind::quoted && mark.close.empty()) continue;
            seen.push_back({mark.kind, mark.span + block.span.begin.value});
        }
    }
    std::sort(seen.begin(), seen.end());
    return seen;
}

std::string show(const std::vector<Seen>& seen, const std::string& text) {
    std::string result;
    for (const Seen& each : seen) {
        result += std::string(say::row_of(each.kind).name) + "[" +
                  std::string(say::slice(text, each.span)) + "]@" +
                  std::to_string(each.span.begin.value) + " ";
    }
    return result;
}

const std::vector<std::string>& pieces() {
    static const std::vector<std::string> list = {"*",     "**",  "_",
                                                  "~",     "°",   "(",
                                                  ")",     ">",   "<",
                                                  "\"",    "“",   "”",
                                                  "[",     "]",   "{",
                                                  "}",     "{=",  "/",
                                                  "//",    " / ", " // ",
                                                  "...",   "…",   "....",
                                                  " x ",   "xx",  " xx ",
                                                  ". x",   "(.)", "(1.5)",
                                                  "(2s)",  "^",   "↑",
                                                  "↓",     "↗",   "↘",
                                                  "::",    "‿",   "\\",
                                                  "`",     "% ",  "%",
                                                  "- ",    "1. ", "2. ",
                                                  "# ",    "## ", "---",
                                                  "MIRA:", "\n",  "\n\n",
                                                  "\r\n",  "\r",  " ",
                                                  " ",     " ",   "word",
                                                  "sea",   "so",  "I",
                                                  "9:30",  "5",   ".",
                                                  ",",     "?",   "!",
                                                  "-",     "–",   "https://a.b/c",
                                                  "a@b.c", "\t",  "\xC2\xA0",
                                                  "é",     "🐚"};
    return list;
}

std::string soup(std::mt19937& random, int size) {
    std::string text;
    for (int i = 0; i < size; ++i)
        text += pieces()[random() % pieces().size()];
    return text;
}

// The place itself, or the end of the character that it would cut.
std::size_t whole_character(const std::string& text, std::size_t at) {
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U)
        ++at;
    return at;
}

TSPoint point_at(const std::string& text, std::size_t at) {
    TSPoint point{0, 0};
    for (std::size_t i = 0; i < at; ++i) {
        if (text[i] == '\n') {
            ++point.row;
            point.column = 0;
        } else {
            ++point.column;
        }
    }
    return point;
}

std::string string_of(const TSTree* tree) {
    char* text = ts_node_string(ts_tree_root_node(tree));
    std::string result(text);
    std::free(text); // NOLINT(cppcoreguidelines-no-malloc): the library allocates it
    return result;
}

} // namespace

TEST_CASE("parse/a block by itself gives the marks of the whole file") {
    const TreeParser tree;
    say::Parser parser;
    for (const auto& each : say::test::load_corpus(SAYLINE_SOURCE_DIR "/grammar/test/corpus")) {
        INFO(each.file << ": " << each.name << "\n" << each.input);
        CHECK(show(marks_of_blocks(parser, each.input), each.input) ==
              show(marks_of_file(tree, each.input), each.input));
    }
    for (unsigned seed = 1; seed <= 3000; ++seed) {
        std::mt19937 random(seed);
        const std::string text = soup(random, 5 + static_cast<int>(random() % 40));
        INFO("seed " << seed << "\n" << text);
        REQUIRE(show(marks_of_blocks(parser, text), text) == show(marks_of_file(tree, text), text));
    }
}

TEST_CASE("parse/edits give the tree of a fresh parse") {
    const TreeParser parser;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        std::mt19937 random(seed);
        std::string text = soup(random, 120);
        TSTree* tree = parser.parse(text);
        for (int step = 0; step < 25; ++step) {
            // Editors never cut through a character, and the runtime counts on it.
            const std::size_t begin = whole_character(text, random() % (text.size() + 1));
            const std::size_t end =
                whole_character(text, std::min(text.size(), begin + random() % 6));
            const std::string inserted = random() % 3 == 0 ? "" : soup(random, 2);
            TSInputEdit edit{};
            edit.start_byte = static_cast<std::uint32_t>(begin);
            edit.old_end_byte = static_cast<std::uint32_t>(end);
            edit.new_end_byte = static_cast<std::uint32_t>(begin + inserted.size());
            edit.start_point = point_at(text, begin);
            edit.old_end_point = point_at(text, end);
            const std::string before = text;
            text.replace(begin, end - begin, inserted);
            edit.new_end_point = point_at(text, begin + inserted.size());
            ts_tree_edit(tree, &edit);
            TSTree* edited = parser.parse(text, tree);
            TSTree* fresh = parser.parse(text);
            INFO("seed " << seed << " step " << step << "\n" << before << "\n=>\n" << text);
            REQUIRE(string_of(edited) == string_of(fresh));
            ts_tree_delete(fresh);
            ts_tree_delete(tree);
            tree = edited;
        }
        ts_tree_delete(tree);
    }
}

TEST_CASE("parse/a hundred thousand unclosed marks are read in one go") {
    say::Parser parser;
    for (const std::string mark : {"*", "_", "~", "(", ">", "<", "\"", "[", "{", "“", "°"}) {
        std::string text;
        for (int i = 0; i < 100000; ++i)
            text += mark + "a ";
        // Over the cap of a thought: plain words, one problem.
        const auto blocks = say::cut_blocks(text, say::Header{});
        REQUIRE(blocks.size() == 1);
        const say::Written written = parser.parse(text, blocks.front());
        CHECK(written.problems.size() == 1);
        CHECK(written.words.size() == 100000);
        // And just below it: marks are sought, none are found, and the words are all there.
        const std::string below = text.substr(0, say::thought_cap - 16);
        const auto one = say::cut_blocks(below, say::Header{});
        INFO("mark " << mark);
        CHECK(parser.parse(below, one.front()).words.size() > 10000);
    }
}
