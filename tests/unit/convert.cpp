// links: say_lsp
// Lines and columns. Source: the Language Server Protocol 3.17, "Text Documents", "Position" and
// "TextDocumentContentChangeEvent"; RFC 8089 for file addresses. The example of the deseret letter
// with its columns 0, 1 and 3 is the specification's own.
#include "lsp/convert.h"

#include "lsp/diagnostics.h"
#include "support/catch.h"

#include <fmt/core.h>

#include <random>

using namespace say;
using lsp::Columns;
using lsp::Encoding;
using lsp::Position;
using lsp::Range;

namespace {

Offset offset(const std::string& bytes, Encoding encoding, Position position) {
    const Text text(bytes);
    return Columns(text, encoding).offset(position);
}

Position position(const std::string& bytes, Encoding encoding, std::uint32_t at) {
    const Text text(bytes);
    return Columns(text, encoding).position(Offset{at});
}

std::string changed(const std::string& bytes, std::vector<lsp::ContentChange> changes,
                    Encoding encoding = Encoding::utf16) {
    Text text(bytes);
    lsp::apply_changes(text, std::move(changes), encoding);
    return std::string(text.bytes());
}

void add_finding(Analysis& analysis, std::uint32_t at, Severity severity) {
    const FindingDraft& draft = analysis.script_drafts.emplace_back(
        FindingDraft{.span = make_span(at, at + 1), .message = std::to_string(at), .fixes = {}});
    analysis.findings.push_back({nullptr, severity, draft.span, &draft, -1});
}

// Enough of everything that is found.
std::string test_script() {
    std::string text;
    for (int i = 0; i < 12; ++i) {
        text += "The limpets of Trelissick *cling to the rock, and they wait for the tide because "
                "the sun is hot, and they wait.\n\nWe utilize é🐚 string in order to count. "
                "Bow (low.\n\n# Part\n\n";
    }
    return text;
}

} // namespace

TEST_CASE("convert/counts columns as the encoding asks") {
    const std::string text = "a\xF0\x90\x90\x80"
                             "b"; // the specification's example: a, U+10400, b
    CHECK(position(text, Encoding::utf16, 1) == Position{0, 1});
    CHECK(position(text, Encoding::utf16, 5) == Position{0, 3});
    CHECK(position(text, Encoding::utf8, 5) == Position{0, 5});
    CHECK(position(text, Encoding::utf32, 5) == Position{0, 2});
    CHECK(offset(text, Encoding::utf16, {0, 3}) == Offset{5});
    CHECK(offset(text, Encoding::utf8, {0, 5}) == Offset{5});
    CHECK(offset(text, Encoding::utf32, {0, 2}) == Offset{5});
}

TEST_CASE("convert/inside a character is its beginning") {
    const std::string text = "a\xF0\x90\x90\x80"
                             "b";
    CHECK(offset(text, Encoding::utf16, {0, 2}) == Offset{1});
    for (std::uint32_t inside = 2; inside < 5; ++inside) {
        CHECK(offset(text, Encoding::utf8, {0, inside}) == Offset{1});
    }
}

TEST_CASE("convert/beyond the end is the end") {
    const std::string text = "one\r\ntwo\rthree\nfour";
    for (const Encoding encoding : {Encoding::utf8, Encoding::utf16, Encoding::utf32}) {
        CHECK(offset(text, encoding, {0, 99}) == Offset{3}); // before CR LF, not between
        CHECK(offset(text, encoding, {1, 99}) == Offset{8}); // a lone CR ends a line
        CHECK(offset(text, encoding, {2, 99}) == Offset{14});
        CHECK(offset(text, encoding, {3, 99}) == Offset{19});
        CHECK(offset(text, encoding, {4, 0}) == Offset{19});
        CHECK(offset(text, encoding, {0xFFFFFFFF, 0xFFFFFFFF}) == Offset{19});
        CHECK(position(text, encoding, 4) == Position{0, 3}); // between CR and LF
        CHECK(position(text, encoding, 5) == Position{1, 0});
        CHECK(position(text, encoding, 9) == Position{2, 0});
        CHECK(position(text, encoding, 15) == Position{3, 0});
        CHECK(position(text, encoding, 999) == Position{3, 4});
        CHECK(offset("", encoding, {0, 5}) == Offset{0});
        CHECK(position("", encoding, 5) == Position{0, 0});
        CHECK(position("a\n", encoding, 2) == Position{1, 0});
    }
}

TEST_CASE("convert/there and back in every order") {
    // Letters of one to four bytes, all line ends, in a fixed but scrambled order of questions.
    const Text text("caf\u00e9 \xF0\x9F\x90\x9A limpet\r\n\u2191up\r\xF0\x9F\x90\x9A\n\n\u20ac"
                    "e\u0301nd");
    std::vector<std::uint32_t> starts;
    for (std::uint32_t at = 0; at <= text.end().value; ++at) {
        const std::string_view rest = text.bytes().substr(at);
        const bool inside =
            !rest.empty() && (static_cast<unsigned char>(rest.front()) & 0xC0U) == 0x80U;
        const bool in_line_end = at > 0 && text.bytes()[at - 1] == '\r' && rest.starts_with('\n');
        if (!inside && !in_line_end) starts.push_back(at);
    }
    std::mt19937 random(7);
    for (const Encoding encoding : {Encoding::utf8, Encoding::utf16, Encoding::utf32}) {
        Columns columns(text, encoding);
        for (int round = 0; round < 500; ++round) {
            const Offset at{starts[random() % starts.size()]};
            const Position there = columns.position(at);
            CHECK(columns.offset(there) == at);
            CHECK(Columns(text, encoding).position(at) == there);
        }
    }
}

TEST_CASE("convert/each change sees the result of the last") {
    CHECK(changed("tide", {{Range{{0, 0}, {0, 0}}, "low "}, {Range{{0, 4}, {0, 5}}, "T"}}) ==
          "low Tide");
    CHECK(changed("old", {{std::nullopt, "new\ntext"}, {Range{{1, 4}, {1, 4}}, "!"}}) ==
          "new\ntext!");
    CHECK(changed("a\nb", {{Range{{0, 1}, {1, 0}}, ""}, {Range{{0, 9}, {0, 9}}, "c"}}) == "abc");
}

TEST_CASE("convert/changes count in the encoding agreed on") {
    const std::string shell = "\xF0\x9F\x90\x9A"; // U+1F41A
    CHECK(changed(shell + "x", {{Range{{0, 2}, {0, 3}}, "y"}}, Encoding::utf16) == shell + "y");
    CHECK(changed(shell + "x", {{Range{{0, 4}, {0, 5}}, "y"}}, Encoding::utf8) == shell + "y");
    CHECK(changed(shell + "x", {{Range{{0, 1}, {0, 2}}, "y"}}, Encoding::utf32) == shell + "y");
    CHECK(changed("e\u0301x", {{Range{{0, 2}, {0, 3}}, "y"}}, Encoding::utf16) == "e\u0301y");
}

TEST_CASE("convert/changes beyond the end are clamped") {
    CHECK(changed("a\r\nb", {{Range{{0, 9}, {0, 99}}, "!"}}) == "a!\r\nb");
    CHECK(changed("a", {{Range{{7, 0}, {9, 9}}, "b"}}) == "ab");
}

TEST_CASE("convert/addresses of files") {
    CHECK(lsp::path_of("file:///tide/pool.say") == "/tide/pool.say");
    CHECK(lsp::path_of("file://localhost/tide/a%20b.say") == "/tide/a b.say");
    CHECK(lsp::path_of("file:///caf%C3%A9.say") == "/caf\u00e9.say");
    CHECK(lsp::path_of("file:///100%25.say") == "/100%.say");
    CHECK(lsp::path_of("file:///a%zz.say") == "/a%zz.say");
    CHECK_FALSE(lsp::path_of("untitled:Untitled-1"));
    CHECK_FALSE(lsp::path_of("file:///a%00b"));
    CHECK_FALSE(lsp::path_of("file://"));
    CHECK(lsp::uri_of("/tide/a b%.say") == "file:///tide/a%20b%25.say");
    CHECK(lsp::path_of(lsp::uri_of("/t\u00efde/#1?.say")) == "/t\u00efde/#1?.say");
}

TEST_CASE("convert/a text that was edited has the lines of one that was not") {
    const std::vector<std::string> pieces = {"\r", "\n", "\r\n", "a", "", "ab\n", "\n\r", "é"};
    for (unsigned seed = 1; seed <= 200; ++seed) {
        std::mt19937 random(seed);
        Text text("one\r\ntwo\rthree\n");
        for (int step = 0; step < 60; ++step) {
            const std::size_t size = text.bytes().size();
            const std::size_t begin = random() % (size + 1);
            const std::size_t end = std::min(size, begin + random() % 4);
            text.replace(make_span(begin, end), pieces[random() % pieces.size()]);
            const Text fresh{std::string(text.bytes())};
            INFO("seed " << seed << " step " << step);
            REQUIRE(text.line_count() == fresh.line_count());
            for (std::uint32_t line = 0; line < fresh.line_count(); ++line)
                REQUIRE(text.line_start(line) == fresh.line_start(line));
        }
    }
}

TEST_CASE("convert/where a text differs holds over many edits") {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        std::mt19937 random(seed);
        Text text("one\r\ntwo\rthree\nfour five six\n");
        const std::string before(text.bytes());
        const auto below = [&](unsigned most) { return static_cast<unsigned>(random() % most); };
        std::vector<lsp::ContentChange> changes;
        for (unsigned i = 0; i <= random() % 4; ++i) {
            const lsp::Position start{below(5), below(8)};
            const lsp::Position end{start.line + below(2), start.character + below(5)};
            changes.push_back({lsp::Range{start, std::max(start, end)},
                               std::string(random() % 3, 'x') + (random() % 3 == 0 ? "\n" : "")});
        }
        const Change change = lsp::apply_changes(text, changes, Encoding::utf16);
        const std::string after(text.bytes());
        INFO("seed " << seed);
        REQUIRE(change.begin <= std::min(change.old_end, change.new_end));
        CHECK(before.substr(0, change.begin) == after.substr(0, change.begin));
        CHECK(before.substr(change.old_end) == after.substr(change.new_end));
    }
}

TEST_CASE("convert/diagnostics from version to version are those of the last one alone") {
    const std::string start = test_script();
    for (unsigned seed = 1; seed <= 15; ++seed) {
        std::mt19937 random(seed);
        std::string text = start;
        Parser parser;
        Memo memo;
        lsp::DiagnosticList list;
        for (int step = 0; step < 25; ++step) {
            const std::size_t begin = random() % (text.size() + 1);
            const std::size_t size = std::min<std::size_t>(random() % 9, text.size() - begin);
            const std::vector<std::string> pieces = {"*", "\n", "\n\n", "\r\n", "é🐚", "a", ""};
            text.replace(begin, size, pieces[random() % pieces.size()]);
            const Document document{"a.say", step, std::make_shared<const Text>(text)};
            const auto analysis = analyse(document, Options{}, parser, memo, Cancel{});
            INFO("seed " << seed << " step " << step);
            const lsp::Findings alone =
                lsp::findings_of(lsp::to_diagnostics(*analysis, Encoding::utf16));
            const lsp::Findings& from_last = list.of(analysis, Encoding::utf16);
            REQUIRE(from_last.json == alone.json);
            REQUIRE(from_last.id == alone.id);
            REQUIRE(from_last.any == alone.any);
        }
    }
}

TEST_CASE("convert/what is half typed is told once the writer rests") {
    Parser parser;
    Memo memo;
    lsp::DiagnosticList list;
    std::shared_ptr<const Analysis> last;
    const auto told = [&](const std::string& text, std::optional<std::size_t> typing) {
        const Document document{"a.say", 0, std::make_shared<const Text>(text)};
        if (!last || last->document.text->bytes() != text)
            last = analyse(document, Options{}, parser, memo, Cancel{});
        const auto at =
            typing ? std::optional(Offset{static_cast<std::uint32_t>(*typing)}) : std::nullopt;
        std::string codes;
        const std::string json = list.of(last, Encoding::utf16, at).json;
        for (const std::string_view code :
             {"unknown-word", "mark-unclosed", "header-unclosed", "off-target"}) {
            if (json.find(code) != std::string::npos) codes += fmt::format("{} ", code);
        }
        return codes;
    };
    const std::string word = "We walk along the shr";
    CHECK(told(word, word.size()).empty());
    CHECK(told(word, std::nullopt) == "unknown-word ");
    CHECK(told(word + " ", word.size() + 1) == "unknown-word ");

    const std::string mark = "We walk along *the sea";
    CHECK(told(mark, mark.size()).empty());
    CHECK(told(mark, 3) == "mark-unclosed ");
    CHECK(told(mark, std::nullopt) == "mark-unclosed ");

    const std::string header = "---\ntitle: Tides\ntar";
    CHECK(told(header, header.size()).empty());
    CHECK(told(header, std::nullopt).find("header-unclosed") != std::string::npos);

    // A target keeps its words while somebody types, and is told anew afterwards.
    const auto says = [&](std::optional<Offset> typing, std::string_view words) {
        return list.of(last, Encoding::utf16, typing).json.find(words) != std::string::npos;
    };
    const std::string target = "---\ntarget: 1:00\nstage: mark\n---\n\nWe walk along the sea";
    CHECK(told(target, target.size()).empty());
    CHECK(told(target, std::nullopt) == "off-target ");
    CHECK(says(std::nullopt, "59 s short"));
    const std::string longer =
        target + " today. Then we count it all. It takes the day. Then home.";
    CHECK(told(longer, longer.size()) == "off-target ");
    CHECK(says(Offset{static_cast<std::uint32_t>(longer.size())}, "59 s short"));
    CHECK(told(longer, std::nullopt) == "off-target ");
    CHECK(!says(std::nullopt, "59 s short"));
}

TEST_CASE("convert/shows the worst findings and counts the rest") {
    Analysis analysis;
    analysis.document.text = std::make_shared<const Text>(std::string(1000, 'a'));
    for (std::uint32_t at = 0; at < 400; ++at) {
        add_finding(analysis, at, at == 399 ? Severity::error : Severity::hint);
    }
    const auto diagnostics = lsp::to_diagnostics(analysis, Encoding::utf16);
    REQUIRE(diagnostics.size() == lsp::most_findings + 1);
    CHECK(diagnostics[0].message == "0");
    CHECK(diagnostics[299].message == "399"); // in place, though the last by order
    CHECK(diagnostics.back().message.starts_with("100 more findings"));
    CHECK(diagnostics.back().severity == 3);

    analysis.findings.resize(300);
    CHECK(lsp::to_diagnostics(analysis, Encoding::utf16).size() == 300);
}

TEST_CASE("convert/tokens are relative to the last") {
    // The specification's own example of encoding: lines 2, 2 and 5, columns 5, 10 and 2, lengths
    // 3, 4 and 7, without its types and modifiers ("Integer Encoding for Tokens").
    const Text text("\n\n     abc  defg\n\n\n  hijklmn\n");
    Columns columns(text, Encoding::utf16);
    const std::vector<Token> tokens{{make_span(7, 10), TokenType::heading, 3},
                                    {make_span(12, 16), TokenType::key, 0},
                                    {make_span(21, 28), TokenType::value, 0}};
    CHECK(lsp::to_tokens(tokens, columns).data ==
          std::vector<std::uint32_t>{2, 5, 3, 0, 3, 0, 5, 4, 1, 0, 3, 2, 7, 2, 0});
}

TEST_CASE("convert/plain forms for simple clients") {
    CHECK(lsp::to_plain("**4.1 s** of `*stress*` \\*not\\*") == "4.1 s of stress *not*");
    CHECK(lsp::without_stops("*$1*$0") == "**");
    CHECK(lsp::without_stops("{${1:puh-TEHL}}") == "{puh-TEHL}");
    CHECK(lsp::without_stops("${1}\\$2 $") == "$2 $");
    CHECK(lsp::without_stops("${1:open") == "");
}

TEST_CASE("convert/a symbol has a name and a place inside its range") {
    const Text text("# Hello\n");
    Columns columns(text, Encoding::utf16);
    OutlineEntry entry;
    entry.name = " ";
    entry.span = make_span(2, 4);
    entry.name_span = make_span(0, 7);
    const auto symbol = lsp::to_symbol(entry, columns);
    CHECK(symbol.name == "(no name)");
    CHECK(symbol.selectionRange.start == symbol.range.start);
}

TEST_CASE("convert/a line of a million characters stays linear") {
    // Quadratic work would be 10^12 steps: the test would not come back.
    const Text text(std::string(1'000'000, 'a'));
    Columns columns(text, Encoding::utf16);
    std::uint64_t sum = 0;
    for (std::uint32_t at = 0; at < 1'000'000; at += 2) {
        sum += columns.position(Offset{at}).character;
    }
    CHECK(sum == 499'999ULL * 500'000ULL);
}
