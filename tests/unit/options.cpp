// links: say_engine
// The table of settings against the plain structs it fills and against the guidance it quotes.
#include "engine/options.h"

#include "support/catch.h"
#include "support/error.h"

#include <cmath>
#include <set>

using namespace say;

namespace {

std::string message_of(const Result<void>& result) {
    return result ? std::string("no error") : result.error().message;
}

} // namespace

TEST_CASE("options/defaults of the table are those of the structs") {
    const Options plain;
    Options filled;
    // Away from the defaults first, so that a row that sets nothing is noticed.
    filled.voice.speed = 0;
    filled.voice.table = PauseTable{};
    for (auto time : {&PauseTable::pause, &PauseTable::beat, &PauseTable::breath,
                      &PauseTable::reset, &PauseTable::micropause, &PauseTable::comma,
                      &PauseTable::strong, &PauseTable::sentence, &PauseTable::gap,
                      &PauseTable::item_gap, &PauseTable::stretch, &PauseTable::before_heavy}) {
        filled.voice.table.*time = Seconds{-1};
    }
    for (auto rate :
         {&PauseTable::quick, &PauseTable::slow, &PauseTable::stress, &PauseTable::heavy}) {
        filled.voice.table.*rate = -1;
    }
    filled.rules = {Seconds{-1}, -1, -1, -1, -1, -1, -1, Seconds{-1}, -1};
    filled.stage = Stage::read;
    filled.language.clear();
    filled.hint_seconds = false;
    filled.hint_clock = true;
    for (const OptionRow& row : option_rows()) {
        INFO(row.key);
        CHECK(message_of(set_option(filled, row.key, std::string(row.default_value))) ==
              "no error");
    }
    CHECK(filled.voice.speed == plain.voice.speed);
    CHECK(filled.voice.table == plain.voice.table);
    CHECK(filled.voice.language == plain.voice.language);
    CHECK(filled.reader == plain.reader);
    CHECK(filled.language == plain.language);
    CHECK(filled.stage == plain.stage);
    CHECK(filled.hint_seconds == plain.hint_seconds);
    CHECK(filled.hint_clock == plain.hint_clock);
    CHECK_FALSE(filled.pace_is_absolute);
    CHECK(filled.rules.breath_limit == plain.rules.breath_limit);
    CHECK(filled.rules.long_sentence_words == plain.rules.long_sentence_words);
    CHECK(filled.rules.marked_sentence_words == plain.rules.marked_sentence_words);
    CHECK(filled.rules.sentences_a_thought == plain.rules.sentences_a_thought);
    CHECK(filled.rules.marked_sentences_a_thought == plain.rules.marked_sentences_a_thought);
    CHECK(filled.rules.joined_sentence_words == plain.rules.joined_sentence_words);
    CHECK(filled.rules.twister_threshold == plain.rules.twister_threshold);
    CHECK(filled.rules.target_slack == plain.rules.target_slack);
    CHECK(filled.rules.stress_words == plain.rules.stress_words);
}

TEST_CASE("options/rows are complete and their keys are their own") {
    std::set<std::string_view> keys;
    for (const OptionRow& row : option_rows()) {
        INFO(row.key);
        CHECK(keys.insert(row.key).second);
        CHECK(row.help.ends_with('.'));
        CHECK_FALSE(row.source.empty());
        CHECK_FALSE(allowed_values(row).empty());
        CHECK(find_option(row.key) == &row);
    }
}

TEST_CASE("options/numbers that are guidance are as published") {
    const Options options;
    // GOV.UK, content design: break up sentences over 25 words.
    CHECK(options.rules.long_sentence_words == 25);
    CHECK(options.rules.marked_sentence_words == 25);
    // Liu et al. 2022, Front. Psychol. 13:778018: 0.6 s at punctuation sounded most natural.
    CHECK(options.voice.table.sentence == Seconds{0.6});
    // Jefferson's transcription system: a micropause is at most 0.2 s.
    CHECK(options.voice.table.micropause <= Seconds{0.2});
}

TEST_CASE("options/a value may come as text as on the command line") {
    Options options;
    REQUIRE(set_option(options, "breath_limit", std::string("4.5s")).has_value());
    CHECK(options.rules.breath_limit == Seconds{4.5});
    REQUIRE(set_option(options, "breath_limit", std::string(" 5 s ")).has_value());
    CHECK(options.rules.breath_limit == Seconds{5});
    REQUIRE(set_option(options, "long_sentence_words", std::string("30")).has_value());
    CHECK(options.rules.long_sentence_words == 30);
    REQUIRE(set_option(options, "hint_clock", std::string("true")).has_value());
    CHECK(options.hint_clock);
    REQUIRE(set_option(options, "language", std::string("EN-gb")).has_value());
    CHECK(options.language == "en-GB");
    CHECK(options.voice.language == Language::en_gb);
    REQUIRE(set_option(options, "rate_quick", 1.5).has_value());
    CHECK(options.voice.table.quick == 1.5);
}

TEST_CASE("options/pace is a factor or words a minute") {
    Options options;
    REQUIRE(set_option(options, "pace", 1.1).has_value());
    CHECK(options.voice.speed == Approx(1.1));
    CHECK_FALSE(options.pace_is_absolute);
    REQUIRE(set_option(options, "pace", std::string("0.9x")).has_value());
    CHECK(options.voice.speed == Approx(0.9));
    REQUIRE(set_option(options, "pace", std::string("165 wpm")).has_value());
    CHECK(options.voice.speed == Approx(165.0 / 172.0));
    CHECK(options.pace_is_absolute);
    CHECK(message_of(set_option(options, "pace", std::string("fast"))).find("0.25x to 4x") !=
          std::string::npos);
    CHECK(options.voice.speed == Approx(165.0 / 172.0));
}

TEST_CASE("options/twister is a word or a score") {
    Options options;
    REQUIRE(set_option(options, "twister", std::string("strict")).has_value());
    CHECK(options.rules.twister_threshold == twister_strict_threshold);
    REQUIRE(set_option(options, "twister", 0.5).has_value());
    CHECK(options.rules.twister_threshold == 0.5);
    REQUIRE(set_option(options, "twister", std::string("off")).has_value());
    CHECK(std::isinf(options.rules.twister_threshold));
    CHECK_FALSE(set_option(options, "twister", 21.0).has_value());
    // Below the strict threshold nothing is explained, so no message could name the sounds.
    CHECK_FALSE(set_option(options, "twister", -0.5).has_value());
    CHECK_FALSE(set_option(options, "twister", std::string("loud")).has_value());
}

TEST_CASE("options/a wrong value says what may stand there and changes nothing") {
    Options options;
    CHECK(message_of(set_option(options, "breath_limit", 40.0)) ==
          "breath_limit cannot be 40; it may be 1 to 30 seconds");
    CHECK(message_of(set_option(options, "breath_limit", std::string("soon"))) ==
          "breath_limit cannot be \"soon\"; it may be 1 to 30 seconds");
    CHECK(message_of(set_option(options, "breath_limit", std::nan(""))).find("1 to 30") !=
          std::string::npos);
    CHECK(message_of(set_option(options, "long_sentence_words", 12.5)) ==
          "long_sentence_words cannot be 12.5; it may be a whole number from 5 to 200");
    CHECK(message_of(set_option(options, "stage", std::string("final"))) ==
          "stage cannot be \"final\"; it may be draft, mark or read");
    CHECK(message_of(set_option(options, "hint_clock", 1.0)) ==
          "hint_clock cannot be 1; it may be true or false");
    CHECK(message_of(set_option(options, "reader", true)) ==
          "reader cannot be true; it may be text");
    CHECK(message_of(set_option(options, "breth_limit", 5.0)) ==
          "no setting is called \"breth_limit\"; did you mean \"breath_limit\"?");
    CHECK(message_of(set_option(options, "volume", 5.0)) == "no setting is called \"volume\"");
    CHECK(options.rules.breath_limit == Seconds{6});
    CHECK(options.rules.long_sentence_words == 25);
    CHECK(options.stage == Stage::draft);
}

TEST_CASE("options/how loud a rule is") {
    Options options;
    REQUIRE_FALSE(all_rules().empty());
    const std::string id(all_rules().front()->id);
    REQUIRE(set_rule_level(options, id, "off").has_value());
    CHECK(options.rule_levels.at(id) == RuleLevel::off);
    REQUIRE(set_rule_level(options, id, "hint").has_value());
    CHECK(options.rule_levels.at(id) == RuleLevel::hint);
    CHECK(message_of(set_rule_level(options, id, "loud")) ==
          "rule " + id + " cannot be \"loud\"; it may be off, hint or warning");
    CHECK(message_of(set_rule_level(options, id + "s", "off")) ==
          "no rule is called \"" + id + "s\"; did you mean \"" + id + "\"?");
    CHECK(options.rule_levels.size() == 1);
}
