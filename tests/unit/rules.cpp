// links: say_engine say_fixtures
// Every rule against its fixture: what it finds, where it is quiet, what its fixes write. And what
// holds for all of them: each has a manual, each fix removes its finding and keeps what it
// promises.
#include "support/catch.h"
#include "support/fixture.h"
#include "text/edit.h"

#include <algorithm>
#include <set>

using namespace say;
using namespace say::test;

namespace {

int count_of(const Analysis& analysis, std::string_view rule) {
    return static_cast<int>(
        std::count_if(analysis.findings.begin(), analysis.findings.end(),
                      [&](const Finding& finding) { return finding.rule->id == rule; }));
}

int count_errors(const Analysis& analysis) {
    return static_cast<int>(
        std::count_if(analysis.findings.begin(), analysis.findings.end(),
                      [](const Finding& f) { return f.severity == Severity::error; }));
}

std::string titles(const Analysis& analysis) {
    std::string text;
    for (const Finding& finding : analysis.findings) {
        for (const Fix& fix : fixes_of(analysis, finding))
            text += fix.title + "; ";
    }
    return text;
}

// What the sample should say after the test ran: as it is, unless it is out of date.
void check_drawn(Sample& sample, const Fixture& fixture) {
    const auto analysis = analyse_text(sample.text, fixture.options);
    const std::string drawn = draw(sample.text, analysis->findings, fixture.rule == "all");
    if (updates_expected()) {
        if (!matches(drawn, sample.drawn)) sample.drawn = drawn;
        return;
    }
    if (sample.kind == Sample::Kind::quiet) CHECK(analysis->findings.empty());
    if (!matches(drawn, sample.drawn)) CHECK(drawn == sample.drawn);
    if (sample.kind == Sample::Kind::finds) CHECK_FALSE(analysis->findings.empty());
}

void check_fix(Sample& sample, const Fixture& fixture) {
    const auto before = analyse_text(sample.text, fixture.options);
    const std::optional<Fix> fix = find_fix(*before, sample.title);
    INFO("offered: " << titles(*before));
    CHECK(fix.has_value());
    if (!fix) return;
    const std::string after = say::apply(sample.text, fix->edits);
    if (updates_expected()) {
        if (!matches(after, sample.after))
            sample.after = after.ends_with('\n') ? after : after + '\n';
        return;
    }
    if (!matches(after, sample.after)) CHECK(after == sample.after);

    const auto mended = analyse_text(after, fixture.options);
    const Rule* rule = before->findings.front().rule;
    CHECK(count_of(*mended, rule->id) < count_of(*before, rule->id));
    CHECK(count_errors(*mended) <= count_errors(*before));
    if (fix->keeps_every_word) CHECK(spoken_words(*mended) == spoken_words(*before));
}

} // namespace

TEST_CASE("rules/fixtures") {
    for (Fixture& fixture : load_fixtures("rules")) {
        DYNAMIC_SECTION(fixture.name) {
            for (Sample& sample : fixture.samples) {
                INFO(fixture.name << ".fixture:" << sample.line << ": " << sample.heading);
                if (sample.kind == Sample::Kind::fix) {
                    check_fix(sample, fixture);
                } else {
                    check_drawn(sample, fixture);
                }
            }
            if (updates_expected()) write_fixture(fixture);
        }
    }
}

TEST_CASE("rules/each has a fixture with a finding and a fixture has a rule") {
    std::set<std::string> shown;
    for (const Fixture& fixture : load_fixtures("rules")) {
        if (fixture.rule == "all") continue;
        INFO(fixture.name);
        CHECK(fixture.name == fixture.rule);
        const bool finds =
            std::any_of(fixture.samples.begin(), fixture.samples.end(),
                        [](const Sample& sample) { return sample.kind == Sample::Kind::finds; });
        const bool quiet =
            std::any_of(fixture.samples.begin(), fixture.samples.end(),
                        [](const Sample& sample) { return sample.kind == Sample::Kind::quiet; });
        CHECK(finds);
        CHECK(quiet);
        shown.insert(fixture.rule);
    }
    for (const Rule* rule : all_rules()) {
        if (rule->id == "thought-too-long") continue; // 64 KiB: the test below
        INFO(rule->id);
        CHECK(shown.count(std::string(rule->id)) == 1);
    }
}

TEST_CASE("rules/a thought over the cap is one finding") {
    std::string text;
    while (text.size() <= thought_cap)
        text += "We walk the *same* stretch of shore. ";
    Options options;
    for (const Rule* rule : all_rules()) {
        if (rule->id != "thought-too-long")
            options.rule_levels[std::string(rule->id)] = RuleLevel::off;
    }
    const auto analysis = analyse_text(text, options);
    REQUIRE(analysis->findings.size() == 1);
    CHECK(analysis->findings[0].message() ==
          "64 KiB without a blank line: above 64 no mark is read");
    CHECK(analyse_text(text.substr(0, 60000), options)->findings.empty());
}

TEST_CASE("rules/each is told apart and explained") {
    std::set<std::string_view> ids;
    for (const Rule* rule : all_rules()) {
        INFO(rule->id);
        CHECK(ids.insert(rule->id).second);
        CHECK(rule->id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos);
        CHECK(find_rule(rule->id) == rule);
        CHECK(rule->summary.size() > 10);
        CHECK_FALSE(rule->summary.ends_with('.'));
        CHECK(rule->manual.size() > 80);
        CHECK(rule->manual.ends_with('.'));
        CHECK((rule->check == nullptr) != (rule->check_script == nullptr));
    }
    CHECK(find_rule("no-such-rule") == nullptr);
}

TEST_CASE("rules/at most one finding of length a thought") {
    // The sentence is long, on one breath and joins two ideas: only the first of the family speaks.
    const auto analysis = analyse_text(
        "The volunteers walk along the whole shore before the tide comes back in the early "
        "morning and they write down every single limpet that they can find under the cold wet "
        "stones.\n",
        Options{});
    int length = 0;
    for (const Finding& finding : analysis->findings)
        length += finding.rule->family == Family::length ? 1 : 0;
    CHECK(length == 1);
}

// The forms in which times are shown. No source: our own.
TEST_CASE("rules/times are shown in one form") {
    CHECK(format_seconds(Seconds{4.06}) == "4.1 s");
    CHECK(format_seconds(Seconds{59.94}) == "59.9 s");
    CHECK(format_seconds(Seconds{59.96}) == "1:00");
    CHECK(format_seconds(Seconds{125}) == "2:05");
    CHECK(format_clock(Seconds{112.4}) == "1:52");
    CHECK(format_clock(Seconds{3723}) == "1:02:03");
    CHECK(format_range({Seconds{3.5}, Seconds{3.1}, Seconds{4.0}, Seconds{3.5}, Seconds{0}}) ==
          "between 3.1 s and 4.0 s");
    CHECK(format_range({Seconds{140}, Seconds{125}, Seconds{155}, Seconds{140}, Seconds{0}}) ==
          "between 2:05 and 2:35");
    CHECK(format_target({Seconds{150}, Seconds{150}}) == "2:30");
    CHECK(format_target({Seconds{140}, Seconds{150}}) == "2:20-2:30");
    CHECK(format_target({Seconds{0}, Seconds{150}}) == "2:30 max");
}

// An exact target is met within the slack or 5 %, whichever is more; a range is taken as written.
TEST_CASE("rules/a time is held against its target") {
    const Seconds slack{2};
    const Target exact{Seconds{30}, Seconds{30}};
    CHECK(off_target(Seconds{32}, exact, slack) == Seconds{0});
    CHECK(off_target(Seconds{33}, exact, slack) == Seconds{3});
    CHECK(off_target(Seconds{26}, exact, slack) == Seconds{-4});
    const Target long_one{Seconds{600}, Seconds{600}};
    CHECK(off_target(Seconds{629}, long_one, slack) == Seconds{0});
    CHECK(off_target(Seconds{631}, long_one, slack) == Seconds{31});
    const Target most{Seconds{0}, Seconds{45}};
    CHECK(off_target(Seconds{5}, most, slack) == Seconds{0});
    CHECK(off_target(Seconds{46}, most, slack) == Seconds{1});
    const Target range{Seconds{20}, Seconds{30}};
    CHECK(off_target(Seconds{19}, range, slack) == Seconds{-1});
    CHECK(off_target(Seconds{25}, range, slack) == Seconds{0});
}
