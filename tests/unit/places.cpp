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

// The offset of `@@`, and the text without it.
struct Cursor {
    std::string text;
    Offset at;
    std::shared_ptr<const Analysis> analysis;
};
Cursor cursor_in(std::string text) {
    const std::size_t at = text.find("@@");
    REQUIRE(at != std::string::npos);
    text.erase(at, 2);
    auto analysis = test::analyse_text(text, {});
    return {std::move(text), Offset{static_cast<std::uint32_t>(at)}, std::move(analysis)};
}

// Where the name at the cursor is used: offsets, declarations with a "!".
std::string uses(const std::string& text) {
    const Cursor cursor = cursor_in(text);
    const auto name = name_at(*cursor.analysis, cursor.at);
    if (!name) return "";
    std::string result = name->text + ":";
    for (const Name::Use& use : name->uses)
        result += fmt::format(" {}{}", use.span.begin.value, use.declares ? "!" : "");
    return result;
}

// The text with the new name, or why it cannot be had.
std::string renamed(const std::string& text, std::string_view name) {
    const Cursor cursor = cursor_in(text);
    const Renaming renaming = rename(*cursor.analysis, cursor.at, name);
    if (!renaming.refusal.empty()) return renaming.refusal;
    return say::apply(cursor.text, renaming.edits);
}

std::vector<std::string> lit(const std::string& text) {
    const Cursor cursor = cursor_in(text);
    std::vector<std::string> result;
    for (const Highlight& each : highlights(*cursor.analysis, cursor.at)) {
        result.push_back(
            fmt::format("{} {}", each.span.begin.value, slice(cursor.text, each.span)));
    }
    return result;
}

std::string linked(const std::string& text) {
    const Cursor cursor = cursor_in(text);
    const auto ends = linked_ends(*cursor.analysis, cursor.at);
    if (!ends) return "";
    return fmt::format("{} {} {}", ends->open.begin.value, ends->close.begin.value, ends->pattern);
}

std::vector<std::string> linked_files(const std::string& text) {
    std::vector<std::string> result;
    const auto all = links(*test::analyse_text(text, {}), [](const Link&) { return true; });
    for (const Link& link : all) {
        result.push_back(fmt::format("{} {} {}", link.span.begin.value,
                                     link.kind == Link::Kind::reader ? "reader" : "file",
                                     link.target));
    }
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

TEST_CASE("places/a name is found wherever it is used") {
    const std::string header = "---\nspeakers: MIRA=mira, JO\n---\n"; // MIRA 14, JO 25, 32 long
    CHECK(uses(header + "MI@@RA: One.\n\nJO: Two.\n\nMIRA AND JO: Three.\n") == "MIRA: 14! 32 54");
    CHECK(uses(header + "MIRA: One.\n\nJO: Two.\n\nMIRA AND JO@@: Three.\n") == "JO: 25! 44 63");
    CHECK(uses("---\nspeakers: MIRA=mira, @@JO\n---\nJO: Two.\n") == "JO: 25! 32");
    CHECK(uses(header + "MIRA: JO@@ counts.\n").empty()); // a word, not a speaker
    CHECK(uses("JO@@: Not declared.\n").empty());
    CHECK(uses("# Ti@@de (0:20)\n\nOut.\n") == "Tide: 2!");
    CHECK(uses("# Tide (0:@@20)\n\nOut.\n").empty());
    // The same clip, whatever time it holds.
    CHECK(uses("[cl@@ip: Tide 4s] So.\n\nHere [clip:  tide 2s] too [clip: tides].\n") ==
          "clip: tide: 0 26");
}

TEST_CASE("places/renaming") {
    const std::string header = "---\r\nspeakers: MIRA=mira, JO\r\n---\r\n";
    CHECK(renamed(header + "MIRA@@: One. MIRA: two.\r\n\r\nJO + MIRA: Three.", " ZOË ") ==
          "---\r\nspeakers: ZOË=mira, JO\r\n---\r\nZOË: One. MIRA: two.\r\n\r\nJO + ZOË: Three.");
    CHECK(renamed("## The ti@@de (0:20)\n\nThe tide.", "Low water") ==
          "## Low water (0:20)\n\nThe tide.");
    CHECK(renamed(header + "JO@@: One.", "MIRA") == "MIRA is a speaker already");
    CHECK(renamed(header + "JO@@: One.", "JO") ==
          "---\r\nspeakers: MIRA=mira, JO\r\n---\r\nJO: One.");
    CHECK(renamed(header + "JO@@: One.", "  ") == "the name is empty");
    CHECK(renamed(header + "JO@@: One.", "A\nB") == "a name stands on one line");
    CHECK(renamed(header + "JO@@: One.", "A, B") ==
          "a speaker's name has no comma, equals sign or colon in it");
    // A line that is a speaker's only after the change, one that is a heading then, a note that
    // is none behind small letters.
    CHECK(renamed(header + "JO@@: One.\n\nANN: Two.", "ANN") ==
          "with “ANN” some lines would be read otherwise");
    CHECK(renamed(header + "JO@@: One.", "# JO") ==
          "with “# JO” some lines would be read otherwise");
    CHECK(renamed(header + "JO@@: % a note", "Jo") ==
          "with “Jo” some lines would be read otherwise");
    CHECK(renamed("# Ti@@de\n\nOut.", "Tide (0:20)") ==
          "the time at its end would be read as the target");
    CHECK(renamed("[sm@@ile] Out.", "laugh") == "only speakers and sections have a name to change");
    CHECK(renamed("Ou@@t.", "In") == "only speakers and sections have a name to change");
}

TEST_CASE("places/the two ends of a mark") {
    CHECK(lit("We >walk o@@n< here.").empty());
    CHECK(lit("We @@>walk on< here.") == Texts{"3 >", "11 <"});
    CHECK(lit("We >walk on<@@ here.") == Texts{"3 >", "11 <"});
    CHECK(lit("A ~@@*so*~ b.") == Texts{"3 *", "6 *"}); // the one that begins there
    CHECK(lit("\"@@To the end") == Texts{"0 \""});      // a quote runs to its thought's end
    CHECK(lit("---\nspeakers: JO\n---\nJO@@: Hi.") == Texts{"14 JO", "21 JO"});
    CHECK(linked("A *so@@* b.") == "2 5 ^(?:\\*{0,3}|_{0,2})$");
    CHECK(linked("A °@@so° b.") == "2 6 ^[~°]?$");
    CHECK(linked("We @@>walk on< here.").empty()); // its ends differ
    CHECK(linked("A *so@@ b.").empty());           // half typed
    CHECK(linked("@@").empty());
}

TEST_CASE("places/files that a script names") {
    CHECK(linked_files("---\nreader: jo\npace: 1.1x\nspeakers: MIRA=mira, JO\n---\n\nHi.") ==
          Texts{"12 reader jo", "21 reader jo", "41 reader mira"});
    CHECK(linked_files("[clip: low tide.mp4 4s] See pool.jpg.\n\n[map.png and 2.5 or e.g.]") ==
          Texts{"7 file low tide.mp4", "40 file map.png"});
    CHECK(linked_files("[clip: a.mp4\nb.mp4]") == Texts{"7 file a.mp4", "13 file b.mp4"});
    CHECK(linked_files("[").empty());
    CHECK(linked_files("[.] [x.] [.mp4]").empty());
}

TEST_CASE("places/what a script can be found by") {
    std::string found;
    for (const Landmark& mark : landmarks("---\r\ntitle: Tide\r\nspeakers: MIRA, 🐚\r\n---\r\n"
                                          "# Low water (0:20)\r\n\r\nOut.\r\n\r\n# (0:10)\r\n"))
        found += fmt::format("{}@{} ", mark.name, mark.span.begin.value);
    CHECK(found == "Tide@12 MIRA@28 🐚@34 Low water@45 ");
    CHECK(landmarks("").empty());
    CHECK(answers("Low water", "lwa"));
    CHECK(answers("Low water", "low WATER"));
    CHECK(answers("Low water", ""));
    CHECK(answers("Éva", "é"));
    CHECK(!answers("Low water", "wl"));
}
