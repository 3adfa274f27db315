// links: say_features say_fixtures
// What Enter leaves behind, and the mark that is offered at the cursor. What is useful there is the
// project's own choice: no source.
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <string>

namespace {

using namespace say;

// The text after Enter at `@@` and what came of it.
std::string entered(std::string text, bool blank_line, const std::string& line_end = "\n") {
    const std::size_t at = text.find("@@");
    REQUIRE(at != std::string::npos);
    text.replace(at, 2, line_end);
    Options options;
    options.blank_line_after_sentence = blank_line;
    const Offset cursor{static_cast<std::uint32_t>(at + line_end.size())};
    const auto edits = after_enter(Text(text), cursor, options);
    for (const TextEdit& edit : edits) {
        CHECK(edit.span.empty()); // nothing of the writer's is ever taken
        CHECK(edit.span.end < cursor);
        text.insert(edit.span.begin.value, edit.replacement);
    }
    return text;
}

// The text with the mark that is offered at `@@`, or the text alone.
std::string offered(std::string text) {
    const std::size_t at = text.find("@@");
    REQUIRE(at != std::string::npos);
    text.erase(at, 2);
    const auto analysis = test::analyse_text(text, {});
    const auto mark = next_mark(*analysis, Offset{static_cast<std::uint32_t>(at)});
    if (mark) text.replace(mark->replace.begin.value, mark->replace.size(), mark->insert);
    return text;
}

} // namespace

TEST_CASE("typing/Enter behind a finished sentence begins a thought where that is set") {
    CHECK(entered("We count limpets.@@", true) == "We count limpets.\n\n");
    CHECK(entered("We count limpets.@@", false) == "We count limpets.\n");
    CHECK(entered("Do we?@@ We do.", true) == "Do we?\n\n We do.");
    CHECK(entered("He said \"go.\"@@", true) == "He said \"go.\"\n\n");
    CHECK(entered("We *count.*@@", true) == "We *count.*\n\n");
    CHECK(entered("We count. //@@", true) == "We count. //\n\n");
    CHECK(entered("We count. xx@@", true) == "We count. xx\n\n");
    CHECK(entered("We count. [look left]@@", true) == "We count. [look left]\n\n");
    CHECK(entered("So we count....@@", true) == "So we count....\n\n");
    CHECK(entered("We count.\r\n\r\nAll.@@", true, "\r\n") == "We count.\r\n\r\nAll.\r\n\r\n");
    CHECK(entered("---\ntitle: Tide\n---\nWe count.@@", true) ==
          "---\ntitle: Tide\n---\nWe count.\n\n");
}

TEST_CASE("typing/Enter changes nothing where a thought goes on or nothing is spoken") {
    for (const std::string text :
         {"We count@@", "We count,@@", "We wait...@@", "We met Dr.@@", "@@", "We count.\n\n@@",
          "# The tide.@@", "% A note.@@", "- A point.@@", "1. A point.@@", "---@@",
          "---\ntitle: The tide.@@", "---\ntitle: The tide.\ndate: now.@@", "...@@", ".@@"}) {
        INFO(text);
        std::string plain = text;
        plain.replace(plain.find("@@"), 2, "\n");
        CHECK(entered(text, true) == plain);
    }
}

TEST_CASE("typing/Enter closes a direction or a pronouncer that was left open") {
    CHECK(entered("We count. [look left@@", false) == "We count. [look left]\n");
    CHECK(entered("[clip: the tide 4s @@", false) == "[clip: the tide 4s] \n");
    CHECK(entered("See Patella{puh-TEL-uh@@", true) == "See Patella{puh-TEL-uh}\n");
    for (const std::string text :
         {"We [look left@@]", "We [look left@@ and up] now", "We \\[look@@", "a[i@@", "We [@@",
          "We [look left] go@@", "f {x@@", "`We [look` at `@@", "We say `[look@@", "% [look@@",
          "# See [look@@"}) {
        INFO(text);
        std::string plain = text;
        plain.replace(plain.find("@@"), 2, "\n");
        CHECK(entered(text, false) == plain);
    }
}

TEST_CASE("typing/the next mark is offered where a reader would put it") {
    CHECK(offered("We count every @@limpet.\n") == "We count every *limpet*.\n");
    CHECK(offered("We count @@every limpet.\n") == "We count every limpet.\n");
    CHECK(offered("We count every *@@limpet*.\n") == "We count every *limpet*.\n");
    CHECK(offered("@@\n\nGo.\n") == "\n\nGo.\n");
    const std::string late = "Then we go home before the tide comes in.\n";
    CHECK(offered("Then we go home @@before the tide comes in.\n") ==
          "Then we go home / before the tide comes in.\n");
    CHECK(offered("Then we go home@@ before the tide comes in.\n") ==
          "Then we go home / before the tide comes in.\n");
    CHECK(offered("Then we go home before the @@tide comes in.\n") ==
          "Then we go home before the *tide* comes in.\n");
}
