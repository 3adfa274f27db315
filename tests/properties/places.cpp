// links: say_features say_fixtures
// What must hold of every place that a feature names, at every offset of any script: it lies in the
// text, and what should hold something else does.
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <random>
#include <string>
#include <vector>

namespace {

using namespace say;

// Headers, speakers, half-typed marks, every kind of line end, characters of one to four bytes.
std::string noise(unsigned seed) {
    static const std::vector<std::string> starts = {
        "",
        "---\nspeakers: MIRA=mira, JO\nreader: jo\npace: 1.1x\n---\n",
        "---\r\nspeakers: JO,  MIRA = m ,ÉVA\r\ntarget: 0:10\r\n---\r\n",
        "---\nspeakers: MIRA, MIRA AND JO, JO\n",
        "\xEF\xBB\xBF---\ntitle: 🐚\nspeakers: 🐚, JO\n---\n",
        "---\nspeakers:\nspeakers: JO, MIRA\n---\n\n",
    };
    static const std::vector<std::string> pieces = {
        "limpet ",
        "The tide, ",
        "🐚 ",
        "e\u0301 ",
        "ÉVA: ",
        "MIRA: ",
        "JO + MIRA: ",
        "\n",
        "\n",
        "\n\n",
        "\r\n",
        "\r\n\r\n",
        "\r",
        "*",
        "**",
        "~",
        "_",
        "°",
        "\"",
        "(",
        ")",
        ">",
        "<",
        " / ",
        " ... ",
        "[smile]",
        "[clip: tide.mp4 4s] ",
        "[clip:\n tide",
        "]",
        "# Part one",
        "## 🐚 (0:05)\n",
        "# (0:10)\n",
        "- item\n",
        "1. one\n",
        "% a note\n",
        "% allow: no-breath\n",
        "---\n",
        "Patella{puh-TEHL-uh} ",
        "so:: ",
        ". ",
        "! ",
        "JO AND MIRA: ",
        "x ",
    };
    std::mt19937 random(seed);
    std::string text = starts[random() % starts.size()];
    for (int i = 0; i < 40; ++i)
        text += pieces[random() % pieces.size()];
    return text;
}

std::vector<std::string> texts() {
    std::vector<std::string> result = {"", "\n", "\r\n", "\xEF\xBB\xBF", "*", "---", "# ", "🐚"};
    for (const test::Fixture& fixture : test::load_fixtures("rules")) {
        for (const test::Sample& sample : fixture.samples)
            result.push_back(sample.text);
    }
    for (unsigned seed = 1; seed <= 150; ++seed)
        result.push_back(noise(seed));
    return result;
}

bool lies_in(Span span, std::string_view text) {
    return span.begin <= span.end && span.end.value <= text.size();
}

} // namespace

TEST_CASE("places/a selection grows and ends with the whole text") {
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        for (std::uint32_t at = 0; at <= text.size(); ++at) {
            const std::vector<Span> chain = selections(*analysis, Offset{at});
            REQUIRE(!chain.empty());
            REQUIRE(chain.front().touches(Offset{at}));
            REQUIRE(chain.back() == make_span(0, text.size()));
            for (std::size_t i = 1; i < chain.size(); ++i) {
                REQUIRE(chain[i].covers(chain[i - 1]));
                REQUIRE(chain[i] != chain[i - 1]);
            }
        }
    }
}

TEST_CASE("places/folds nest, stand in order and one a line") {
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        const Text& lines = *analysis->document.text;
        const std::vector<Fold> all = folds(*analysis, 1000);
        for (std::size_t i = 0; i < all.size(); ++i) {
            REQUIRE(lies_in(all[i].span, text));
            CHECK(lines.line_of(all[i].span.begin) < lines.line_of(all[i].span.end));
            if (i > 0) {
                CHECK(lines.line_of(all[i - 1].span.begin) < lines.line_of(all[i].span.begin));
            }
            for (std::size_t j = 0; j < i; ++j) {
                const bool apart = all[j].span.end <= all[i].span.begin;
                CHECK((apart || all[j].span.covers(all[i].span)));
            }
        }
        // A limit takes from the same folds.
        const std::vector<Fold> few = folds(*analysis, 2);
        CHECK(few.size() == std::min<std::size_t>(2, all.size()));
        for (const Fold& fold : few) {
            CHECK(std::any_of(all.begin(), all.end(),
                              [&](const Fold& each) { return each.span == fold.span; }));
        }
        CHECK(folds(*analysis, 0).empty());
    }
}

TEST_CASE("places/lenses stand on one line each and say the same twice") {
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        const auto again = test::analyse_text(text, {});
        const std::vector<Lens> first = lenses(*analysis);
        const std::vector<Lens> second = lenses(*again);
        REQUIRE(first.size() == second.size());
        for (std::size_t i = 0; i < first.size(); ++i) {
            REQUIRE(lies_in(first[i].span, text));
            const Text& lines = *analysis->document.text;
            CHECK(lines.line_of(first[i].span.begin) == lines.line_of(first[i].span.end));
            CHECK(first[i].title == second[i].title);
        }
    }
}

TEST_CASE("places/names stand where they are said to, each once and in order") {
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        for (std::uint32_t at = 0; at <= text.size(); ++at) {
            const auto name = name_at(*analysis, Offset{at});
            const auto spot = rename_spot(*analysis, Offset{at});
            CHECK(spot.has_value() == (name && name->kind != Name::Kind::direction));
            if (!name) continue;
            REQUIRE(name->at.touches(Offset{at}));
            bool has_itself = false;
            Offset last;
            for (const Name::Use& use : name->uses) {
                REQUIRE(lies_in(use.span, text));
                REQUIRE(last <= use.span.begin);
                last = use.span.end;
                has_itself = has_itself || use.span == name->at;
                if (name->kind == Name::Kind::direction) continue;
                REQUIRE(slice(text, use.span) == name->text);
            }
            REQUIRE(has_itself);
        }
    }
}

// A name that is changed and changed back leaves the text as it was, and changing it leaves what is
// said as it was.
TEST_CASE("places/renaming changes names alone and can be undone") {
    int renamed = 0;
    for (const std::string& text : texts()) {
        INFO(text);
        const auto before = test::analyse_text(text, {});
        for (std::uint32_t at = 0; at <= text.size(); ++at) {
            const auto spot = rename_spot(*before, Offset{at});
            if (!spot) continue;
            const Renaming there = rename(*before, Offset{at}, "ZOË 🐚");
            if (!there.refusal.empty()) {
                CHECK(there.edits.empty());
                continue;
            }
            const std::string changed = say::apply(text, there.edits);
            INFO(changed);
            const auto after = test::analyse_text(changed, {});
            REQUIRE(after->script.timing.expected == before->script.timing.expected);
            REQUIRE(test::spoken_words(*after) == test::spoken_words(*before));
            // The cursor stands in the first place that changed.
            REQUIRE(!there.edits.empty());
            const Renaming back = rename(*after, there.edits.front().span.begin, spot->name);
            CHECK(back.refusal.empty());
            REQUIRE(say::apply(changed, back.edits) == text);
            ++renamed;
        }
    }
    CHECK(renamed > 1000); // else it is not tried at all
}

TEST_CASE("places/ends of marks lie in the text, and linked ones read the same") {
    int linked = 0;
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        for (std::uint32_t at = 0; at <= text.size(); ++at) {
            for (const Highlight& each : highlights(*analysis, Offset{at}))
                REQUIRE(lies_in(each.span, text));
            const auto ends = linked_ends(*analysis, Offset{at});
            if (!ends) continue;
            ++linked;
            REQUIRE(lies_in(ends->close, text));
            REQUIRE(ends->open.end <= ends->close.begin);
            REQUIRE((ends->open.touches(Offset{at}) || ends->close.touches(Offset{at})));
            REQUIRE(slice(text, ends->open) == slice(text, ends->close));
        }
    }
    CHECK(linked > 100);
}

TEST_CASE("places/links lie in the text and are asked about before they are given") {
    for (const std::string& text : texts()) {
        INFO(text);
        const auto analysis = test::analyse_text(text, {});
        int asked = 0;
        const auto all = links(*analysis, [&](const Link&) { return ++asked > 0; });
        CHECK(static_cast<int>(all.size()) == asked);
        for (const Link& link : all)
            REQUIRE(lies_in(link.span, text));
        CHECK(links(*analysis, [](const Link&) { return false; }).empty());
    }
}
