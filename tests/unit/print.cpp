// links: say_exporters say_fixtures
// The reading copy's HTML: every word in order, nothing of the script read as markup, notes only
// where they are wanted. tests/exports/print.mjs looks at the paper.
#include "exporters/print.h"

#include "support/catch.h"
#include "support/fixture.h"

#include <string>

using namespace say;

namespace {

std::string printed(const std::string& script, const ExportOptions& options = {}) {
    const std::string page = write_print(*test::analyse_text(script, Options{}), options);
    return page.substr(page.find("<body>"));
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("print/marks are drawn, and pairs that cross stay well-formed") {
    CHECK(has(printed("We *count ~here*.\n"), R"(We <span class="stress">count ~here</span>.)"));
    CHECK(has(printed("We *count ~all~* of them.\n"),
              R"(<span class="stress">count <span class="soft">all</span></span> of them.)"));
    CHECK(has(printed("(So) \"he said\".\n"),
              R"(<span class="aside">(So)</span> <span class="quoted">“he said”</span>.)"));
    CHECK(has(printed(">Quickly< now.\n"),
              R"(<span class="quick">Quickly<span class="tip"></span></span> now.)"));
    CHECK(has(printed("Our old‿lifeboat.\n"), "</span>&nbsp;lifeboat."));
    CHECK(has(printed("Count Patella{puh-TEHL-uh}, all.\n"),
              "<ruby>Patella,<rt>puh-TEHL-uh</rt></ruby> all."));
}

TEST_CASE("print/a pause stays with the word before it") {
    const std::string page = printed("We count / here.\n");
    CHECK(has(page, R"(We <span class="kept">count&nbsp;<svg class="shape pause")"));
    CHECK(has(page, R"(aria-label="breath")"));
    // More seconds than crosses are easily counted are written as a number.
    CHECK(has(printed("xxxxxxxxx\n"), R"(aria-label="beat">9.0 s</span>)"));
}

TEST_CASE("print/nothing that is written becomes markup or style") {
    const std::string page =
        write_print(*test::analyse_text(
                        "---\ntitle: </style><b>\"\n---\n\n<i>Hello</i> & so [<u>]\n", Options{}),
                    {});
    CHECK_FALSE(has(page, "</style><b>"));
    CHECK_FALSE(has(page, "<i>Hello"));
    CHECK_FALSE(has(page, "<u>"));
    CHECK(has(page, "<title>&lt;/style&gt;&lt;b&gt;&quot;</title>"));
}

TEST_CASE("print/notes and spare thoughts") {
    const std::string script = "% Mind the weed.\n\nHello.\n\n[spare] Goodbye.\n";
    CHECK_FALSE(has(printed(script), "weed"));
    CHECK(has(printed(script, {.notes = true}), R"(<p class="note">Mind the weed.</p>)"));
    const std::string page = printed(script);
    CHECK(has(page, R"(<span class="drop">spare</span>)"));
    CHECK_FALSE(has(page, R"(<span class="direction">spare)"));
}
