// links: say_lsp
// The outermost coat of the protocol. Sources: the Language Server Protocol 3.17, "Base Protocol";
// RFC 8259 section 7 for escapes, RFC 9110 section 5.1 for header names in any case.
#include "lsp/frame.h"

#include "support/catch.h"

#include <string>
#include <vector>

using namespace say::lsp;

namespace {

std::string message(const std::string& body) {
    return frame_header(body.size()) + body;
}

std::vector<std::string> read_all(FrameReader& reader) {
    std::vector<std::string> bodies;
    while (const auto frame = reader.next()) {
        bodies.emplace_back(frame->body.data(), frame->body.size());
    }
    return bodies;
}

std::string repaired(std::string json) {
    repair_surrogates(json);
    return json;
}

// The complaint about a header, empty if it was taken.
std::string complaint(const std::string& bytes) {
    FrameReader reader;
    reader.feed(bytes);
    (void)read_all(reader);
    return reader.complaint();
}

} // namespace

TEST_CASE("frame/cuts messages out of any pieces") {
    const std::string stream = message("{\"a\":1}") + message("") + message("{\"b\":\"\r\n\r\n\"}");
    const std::vector<std::string> expected{"{\"a\":1}", "", "{\"b\":\"\r\n\r\n\"}"};
    for (std::size_t size = 1; size <= stream.size(); ++size) {
        FrameReader reader;
        std::vector<std::string> bodies;
        for (std::size_t at = 0; at < stream.size(); at += size) {
            reader.feed(std::string_view(stream).substr(at, size));
            for (std::string& body : read_all(reader)) {
                bodies.push_back(std::move(body));
            }
        }
        CHECK(bodies == expected);
    }
}

TEST_CASE("frame/keeps what was handed out until it is fed again") {
    FrameReader reader;
    reader.feed(message("first") + message("second"));
    const auto first = reader.next();
    const auto second = reader.next();
    REQUIRE((first && second));
    CHECK(std::string(first->body.begin(), first->body.end()) == "first");
    CHECK(std::string(second->body.begin(), second->body.end()) == "second");
}

TEST_CASE("frame/takes headers as they come") {
    for (const std::string header :
         {"Content-Length: 2\r\n\r\n", "content-length:2\r\n\r\n", "CONTENT-LENGTH: \t2  \r\n\r\n",
          "X-Tide: low\r\nContent-Length: 2\r\n\r\n", "Content-Length: 2\n\n",
          "\r\nContent-Length: 2\r\n\r\n",
          "Content-Length: 2\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n",
          "Content-Length: 2\r\ncontent-type: text/plain;charset=\"UTF8\"\r\n\r\n"}) {
        FrameReader reader;
        reader.feed(header + "{}");
        const auto frame = reader.next();
        INFO(header);
        REQUIRE(frame);
        CHECK(std::string(frame->body.begin(), frame->body.end()) == "{}");
        CHECK(frame->refusal.empty());
    }
}

TEST_CASE("frame/refuses another charset and goes on") {
    FrameReader reader;
    reader.feed("Content-Length: 2\r\nContent-Type: text/plain; charset=utf-16\r\n\r\n{}" +
                message("[]"));
    const auto first = reader.next();
    REQUIRE(first);
    CHECK(first->refusal.find("utf-16") != std::string::npos);
    const auto second = reader.next();
    REQUIRE(second);
    CHECK(second->refusal.empty());
    CHECK(std::string(second->body.begin(), second->body.end()) == "[]");
}

TEST_CASE("frame/breaks off where no length can be known") {
    CHECK(complaint("Content-Length: 2\r\n\r\n{}").empty());
    CHECK(complaint("Content-Type: x\r\n\r\n{}").find("without Content-Length") !=
          std::string::npos);
    CHECK(complaint("Content-Length: -5\r\n\r\n").find("not a number") != std::string::npos);
    CHECK(complaint("Content-Length: 5x\r\n\r\n").find("not a number") != std::string::npos);
    CHECK(complaint("Content-Length:\r\n\r\n").find("not a number") != std::string::npos);
    CHECK(complaint("Content-Length: 99999999999999999999999\r\n\r\n").find("above the limit") !=
          std::string::npos);
    CHECK(complaint("Content-Length: 9000000000\r\n\r\n").find("above the limit") !=
          std::string::npos);
    CHECK(complaint("Content-Length: 2\r\nContent-Length: 3\r\n\r\n").find("differ") !=
          std::string::npos);
    CHECK(complaint("no colon here\r\n\r\n").find("colon") != std::string::npos);
    CHECK(complaint(std::string(20'000, 'x')).find("without an end") != std::string::npos);
    // Many short lines are as endless as one long one.
    std::string lines;
    for (int i = 0; i < 3000; ++i) {
        lines += "X: tide\r\n";
    }
    CHECK(complaint(lines).find("without an end") != std::string::npos);
}

TEST_CASE("frame/a broken stream stays broken") {
    FrameReader reader;
    reader.feed("nonsense\r\n\r\n");
    CHECK_FALSE(reader.next());
    reader.feed(message("{}"));
    CHECK_FALSE(reader.next());
    CHECK(reader.broken());
}

TEST_CASE("frame/writes the header the protocol asks for") {
    CHECK(frame_header(17) == "Content-Length: 17\r\n\r\n");
}

TEST_CASE("frame/replaces half surrogate pairs and nothing else") {
    CHECK(repaired(R"("\ud83d\ude00")") == R"("\ud83d\ude00")"); // U+1F600, a whole pair
    CHECK(repaired(R"("\ud83d")") == R"("\uFFFD")");
    CHECK(repaired(R"("\uDE00 x")") == R"("\uFFFD x")");
    CHECK(repaired(R"("\ude00\ud83d")") == R"("\uFFFD\uFFFD")");
    CHECK(repaired(R"("\ud83d\ud83d\ude00")") == R"("\uFFFD\ud83d\ude00")");
    CHECK(repaired(R"("\ud83d\n")") == R"("\uFFFD\n")");
    CHECK(repaired(R"("\\ud83d")") == R"("\\ud83d")"); // a backslash and five letters
    CHECK(repaired(R"("\\\ud83d")") == R"("\\\uFFFD")");
    CHECK(repaired(R"("\u00e9\u8840")") == R"("\u00e9\u8840")");
    CHECK(repaired(R"("\ud8)") == R"("\ud8)"); // cut off: the parser says so
    CHECK(repaired("\\").size() == 1);
}
