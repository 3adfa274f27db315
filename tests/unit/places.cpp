// links: say_features say_fixtures
// Lenses, folds and selections on small scripts. What they should be is the project's own choice:
// no source.
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <fmt/core.h>

#include <string>
#include <vector>

namespace {

using namespace say;

std::vector<std::string> titles(const std::string& text) {
    std::vector<std::string> result;
    for (const Lens& lens : lenses(*test::analyse_text(text, {})))
        result.push_back(lens.title);
    return result;
}

// First and last line from 1 and what it is.
std::vector<std::string> folded(const std::string& text, std::size_t most = 1000) {
    constexpr const char* names[] = {"header", "section", "thought", "note", "direction"};
    const auto analysis = test::analyse_text(text, {});
    const Text& lines = *analysis->document.text;
    std::vector<std::string> result;
    for (const Fold& fold : folds(*analysis, most)) {
        result.push_back(fmt::format("{}-{} {}", lines.line_of(fold.span.begin) + 1,
                                     lines.line_of(fold.span.end) + 1,
                                     names[static_cast<std::size_t>(fold.kind)]));
    }
    return result;
}

// What grows from where `@@` stands in the text.
std::vector<std::string> grown(std::string text) {
    const std::size_t at = text.find("@@");
    REQUIRE(at != std::string::npos);
    text.erase(at, 2);
    std::vector<std::string> result;
    for (const Span span :
         selections(*test::analyse_text(text, {}), Offset{static_cast<std::uint32_t>(at)}))
        result.emplace_back(slice(text, span));
    return result;
}

using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("places/a lens says the time against the target") {
    // Silence takes the time that is written, and nothing else here takes any.
    CHECK(titles("[wait 72s]\n") == Texts{"Script: 1:12"});
    CHECK(titles("---\ntarget: 1:00\n---\n[wait 72s]\n") == Texts{"Script: 1:12, 12 s over 1:00"});
    CHECK(titles("---\ntarget: 1:20-1:30\n---\n[wait 72s]\n") ==
          Texts{"Script: 1:12, 8 s short of 1:20-1:30"});
    CHECK(titles("---\ntarget: 1:30 max\n---\n[wait 72s]\n") == Texts{"Script: 1:12 of 1:30 max"});
    CHECK(titles("# A (0:05 max)\n\n[wait 5.2s]\n") ==
          Texts{"Script: 0:05", "0:05, 0.2 s over 0:05 max"});
    CHECK(titles("# A (5:00)\n\n[wait 72s]\n") ==
          Texts{"Script: 1:12", "1:12, 3:48 short of 5:00"});
    // Nothing is said of what is not written yet.
    CHECK(titles("# A (0:05)\n").empty());
    CHECK(titles("").empty());
}

TEST_CASE("places/what folds is what has several lines") {
    const std::string text = "---\ntitle: Tide\n---\n\n"            // 1-4
                             "# One\n\n"                            // 5-6
                             "A thought\nof two lines.\n\n"         // 7-9
                             "One line.\n\n"                        // 10-11
                             "## Two\n\n"                           // 12-13
                             "% a note\n% of two\n\nThe end.\n\n\n" // 14-19
                             "# Three\n";                           // 20
    CHECK(folded(text) ==
          Texts{"1-3 header", "5-17 section", "7-8 thought", "12-17 section", "14-15 note"});
    CHECK(folded(text, 2) == Texts{"1-3 header", "5-17 section"});
    CHECK(folded(text, 3) == Texts{"1-3 header", "5-17 section", "12-17 section"});
    CHECK(folded("Here\n[clip: the tide\ngoes out]\nwe go.") ==
          Texts{"1-4 thought", "2-3 direction"});
    CHECK(folded("# Empty\n").empty());
    CHECK(folded("").empty());
    CHECK(folded("# A\r\n\r\nOne.\r\n\r\n# B\r\n") == Texts{"1-3 section"});
}

TEST_CASE("places/a selection grows by what is said") {
    CHECK(grown("# Shore\n\nMIRA counts. We walk the *sa@@me* shore, all of it / and count.\n") ==
          Texts{"same", "*same*", "We walk the *same* shore", "We walk the *same* shore, all of it",
                "We walk the *same* shore, all of it / and count.",
                "MIRA counts. We walk the *same* shore, all of it / and count.",
                "# Shore\n\nMIRA counts. We walk the *same* shore, all of it / and count.\n"});
    CHECK(grown("---\nspeakers: MIRA=mira, J@@O\n---\n") ==
          Texts{"JO", "MIRA=mira, JO", "speakers: MIRA=mira, JO",
                "---\nspeakers: MIRA=mira, JO\n---", "---\nspeakers: MIRA=mira, JO\n---\n"});
    CHECK(grown("# O@@ne\n\nA.\n\n# Two\n") ==
          Texts{"# One", "# One\n\nA.\n\n", "# One\n\nA.\n\n# Two\n"});
    CHECK(grown("@@") == Texts{""});
    CHECK(grown("Half *an@@ mark") == Texts{"an", "Half *an mark"});
}
