// links: say_features say_fixtures
// Findings turned off as a whole, by rule, by severity and by stage, while the rest goes on. Which
// settings there are is the project's own choice: no source.
#include "engine/options.h"
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <map>
#include <string>

namespace {

using namespace say;

// A warning of a thought, a hint of a thought and a warning of the whole script.
const std::string script = "---\ntarget: 0:02 max\n---\n"
                           "We utilize a square of string on the shore every spring.\n\n"
                           "He *leans on it and never stops.\n";

std::shared_ptr<const Analysis> analysed(const std::map<std::string, std::string>& settings) {
    Options options;
    for (const auto& [key, value] : settings)
        REQUIRE(set_option(options, key, value).has_value());
    return test::analyse_text(script, options);
}

std::map<Severity, int> counted(const Analysis& analysis) {
    std::map<Severity, int> counts;
    for (const Finding& finding : analysis.findings)
        ++counts[finding.severity];
    return counts;
}

} // namespace

TEST_CASE("quiet/without findings times, hints and hover go on") {
    const auto loud = analysed({});
    const auto quiet = analysed({{"findings", "false"}});
    REQUIRE(!loud->findings.empty());
    CHECK(quiet->findings.empty());
    CHECK(quiet->script.timing.expected == loud->script.timing.expected);
    const Span all{Offset{}, loud->document.text->end()};
    CHECK(inlay_hints(*quiet, all).size() == inlay_hints(*loud, all).size());
    CHECK(hover(*quiet, Offset{30}).has_value());
    CHECK(outline(*quiet).size() == outline(*loud).size());
}

TEST_CASE("quiet/findings below a severity are not shown") {
    const auto counts = counted(*analysed({}));
    REQUIRE(counts.contains(Severity::hint));
    REQUIRE(counts.contains(Severity::warning));
    const auto heavier = counted(*analysed({{"findings_from_severity", "warning"}}));
    CHECK(!heavier.contains(Severity::hint));
    CHECK(heavier.at(Severity::warning) == counts.at(Severity::warning));
    const auto heaviest = counted(*analysed({{"findings_from_severity", "error"}}));
    CHECK(!heaviest.contains(Severity::warning));
}

TEST_CASE("quiet/a draft may be left alone until it has come to a stage") {
    CHECK(analysed({{"findings_from_stage", "mark"}})->findings.empty());
    CHECK(analysed({{"findings_from_stage", "read"}, {"stage", "mark"}})->findings.empty());
    CHECK(!analysed({{"findings_from_stage", "mark"}, {"stage", "mark"}})->findings.empty());
}

TEST_CASE("quiet/one rule is off or a hint and the others go on") {
    const auto loud = analysed({});
    const Rule& rule = *loud->findings.front().rule;
    Options options;
    REQUIRE(set_rule_level(options, rule.id, "off").has_value());
    const auto without = test::analyse_text(script, options);
    CHECK(without->findings.size() < loud->findings.size());
    for (const Finding& finding : without->findings)
        CHECK(finding.rule != &rule);
    CHECK(!without->findings.empty());
}

TEST_CASE("quiet/a setting that changed is heard though every thought was looked at before") {
    Parser parser;
    Memo memo;
    Document document{.uri = "", .version = 1, .text = std::make_shared<const Text>(script)};
    const auto findings = [&](const Options& options) {
        return analyse(document, options, parser, memo, Cancel{})->findings.size();
    };
    const std::size_t loud = findings({});
    REQUIRE(loud > 0);
    Options off;
    off.findings = false;
    CHECK(findings(off) == 0);
    CHECK(findings({}) == loud);
}

// The dictionary has "if" twice, once without its stress, and "than" with two vowels
// (CMUdict 0.7b, IF(1) and THAN(1)).
TEST_CASE("quiet/a hover tells of other sounds only where they read otherwise") {
    const auto hovered = [](const std::string& text) {
        const auto found = hover(*test::analyse_text(text, Options{}), Offset{0});
        return found ? found->markdown : std::string{};
    };
    CHECK(hovered("If you count.\n").find("Also said") == std::string::npos);
    CHECK(hovered("Than you count.\n").find("Also said: thuhn") != std::string::npos);
}
