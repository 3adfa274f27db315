// links: say_features say_fixtures
// Edits keep a script's own line ends, and a backslash silences a mark (docs/format.md).
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <random>

using namespace say;

TEST_CASE("edits/new lines are as the script's") {
    const std::string text = "One limpet sat there. Two came by with the tide. Three went home "
                             "along the shore when the water was back.\r\n\r\nGood.\r\n";
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

namespace {

// Up to four edits anywhere in a text, some of them at one place or over each other.
std::vector<TextEdit> some_edits(std::mt19937& random, std::size_t size) {
    std::uniform_int_distribution<std::size_t> place(0, size);
    std::uniform_int_distribution<std::size_t> few(0, 4);
    std::vector<TextEdit> edits(few(random));
    for (TextEdit& edit : edits) {
        const std::size_t begin = place(random);
        const std::size_t end = std::min(size, begin + few(random));
        edit = {make_span(begin, end), std::string(few(random), 'A')};
    }
    return edits;
}

} // namespace

TEST_CASE("edits/two sets become one") {
    std::mt19937 random(20261129);
    for (int round = 0; round < 20'000; ++round) {
        const std::string text = "count limpets";
        const std::vector<TextEdit> first = some_edits(random, text.size());
        const std::string between = say::apply(text, first);
        std::vector<TextEdit> then = some_edits(random, between.size());
        for (TextEdit& edit : then)
            std::fill(edit.replacement.begin(), edit.replacement.end(), 'B');
        const std::vector<TextEdit> both = composed(text, first, then);
        INFO(between);
        REQUIRE(say::apply(text, both) == say::apply(between, then));
        // They stand in order and apart.
        for (std::size_t i = 1; i < both.size(); ++i)
            REQUIRE(both[i - 1].span.end < both[i].span.begin);
    }
}
