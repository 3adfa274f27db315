// links: say_features say_fixtures
// Edits keep a script's own line ends, and a backslash silences a mark (docs/format.md).
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

using namespace say;

TEST_CASE("edits/new lines are as the script's") {
    const std::string text = "One limpet sat there. Two came by. Three went home.\r\n\r\nGood.\r\n";
    const auto analysis = test::analyse_text(text, Options{});
    REQUIRE_FALSE(analysis->findings.empty());
    for (const Finding& finding : analysis->findings) {
        for (const Fix& fix : fixes_of(*analysis, finding)) {
            const std::string after = say::apply(text, fix.edits);
            for (std::size_t at = after.find('\n'); at != std::string::npos;
                 at = after.find('\n', at + 1)) {
                INFO(fix.title);
                CHECK(after[at - 1] == '\r');
            }
        }
    }
}

TEST_CASE("edits/a rule left out of a script stays out") {
    for (const std::string text : {"---\r\ntarget: 9:00\r\nstage: mark\r\n---\r\nGood.\r\n",
                                   "---\ntarget: 9:00\nstage: mark\n---\nGood.\n"}) {
        const auto analysis = test::analyse_text(text, Options{});
        REQUIRE(analysis->findings.size() == 1);
        const Finding& finding = analysis->findings.front();
        CHECK(finding.rule->id == "off-target");
        const Fix leave = fixes_of(*analysis, finding).back();
        CHECK(test::analyse_text(say::apply(text, leave.edits), Options{})->findings.empty());
    }
}

TEST_CASE("edits/a backslash makes plain text of a mark without a word about it") {
    CHECK(test::analyse_text("\\*word is here and a \\(b.", Options{})->findings.empty());
    CHECK(test::analyse_text("*word is here.", Options{})->findings.size() == 1);
}
