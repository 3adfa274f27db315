// links: say_features say_fixtures
// What completion and hints have to add when somebody looks closer. Which topics there are is the
// project's own choice: no source.
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <string>

using namespace say;

TEST_CASE("completion/every topic that is offered can be looked up") {
    std::size_t seen = 0;
    for (const std::string text : {"", "We ", "We^", "---\n", "---\nallow: ", "% allow: "}) {
        const auto analysis = test::analyse_text(text, {});
        const Text& now = *analysis->document.text;
        for (const CompletionItem& item : completion(now, now.end(), analysis.get())) {
            INFO(text << " offers " << item.label);
            CHECK(!item.topic.empty());
            CHECK(!completion_documentation(item.topic).empty());
            ++seen;
        }
    }
    CHECK(seen > mark_rows().size() + all_rules().size());
}

TEST_CASE("completion/nothing is said of a topic that nobody knows") {
    for (const char* topic : {"", ":", "mark", "mark:", "mark:tide", "rule:tide", "tide:pause"})
        CHECK(completion_documentation(topic).empty());
    CHECK(completion_documentation("mark:breath").find("catches a breath") != std::string::npos);
}

TEST_CASE("completion/every hint has a tooltip, and no other place has") {
    const std::string text = "[wait 4s]\n\nWe count limpets.\n\n[look left]\n";
    const auto analysis = test::analyse_text(text, {});
    const auto hints = inlay_hints(*analysis, {Offset{}, analysis->document.text->end()});
    REQUIRE(hints.size() == 2);
    std::size_t tooltips = 0;
    for (std::uint32_t at = 0; at <= text.size(); ++at)
        tooltips += inlay_tooltip(*analysis, Offset{at}).empty() ? 0U : 1U;
    CHECK(tooltips == 2);
    CHECK(inlay_tooltip(*analysis, hints.front().at).ends_with("from 0:00 to 0:04"));
}

TEST_CASE("completion/a note offers what it may say to the rules, and nothing in other words") {
    const auto labels = [](const std::string& text) {
        const Document document{"a.say", 0, std::make_shared<const Text>(text)};
        std::string all;
        for (const CompletionItem& item :
             completion(*document.text, document.text->end(), nullptr)) {
            all += item.label + ";" + item.insert + ";";
        }
        return all;
    };
    for (const std::string text : {"%", "% ", "% al", "Hello.\n% allow"}) {
        INFO(text);
        CHECK(labels(text) == "% allow:;% allow: ;");
    }
    CHECK(labels("% also").empty());
    CHECK(labels("% remember the jar").empty());
}
