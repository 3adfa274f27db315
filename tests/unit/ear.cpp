// links: say_engine
// The figures for the ear. The Easy Listening Formula is Fang's (1966, J. Broadcasting 11; as
// quoted in DuBay's survey of readability): syllables beyond one in each word. The syllables of the
// samples were counted with the CMU Pronouncing Dictionary; the platypus sentence is the
// encyclopedia's sample for Flesch's tests, four to seven are the US federal plain-language site's
// (public domain).
#include "engine/ear.h"

#include "support/catch.h"

#include <fmt/core.h>

using namespace say;

namespace {

std::shared_ptr<const Analysis> analysed(const std::string& text) {
    Parser parser;
    Memo memo;
    const Document document{"test.say", 1, std::make_shared<const Text>(text)};
    return analyse(document, Options{}, parser, memo, Cancel{});
}

EarFigures ear(const std::string& text) {
    return ear_of(analysed(text)->script);
}

} // namespace

TEST_CASE("ear/the Easy Listening Formula on worked examples") {
    struct Example {
        std::string text;
        int words;
        int syllables;
    };
    const std::vector<Example> examples = {
        {"The cat sat on the mat.", 6, 6},
        {"Go.", 1, 1},
        {"The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.", 13,
         24},
        {"Keep off the grass.", 4, 4},
        {"Please avoid pedestrian traffic on turf.", 6, 11},
        {"If you make a hole while freeing a stuck vehicle, you must fill the hole before you "
         "drive "
         "away.",
         19, 24},
        {"When the process of freeing a vehicle that has been stuck results in ruts or holes, the "
         "operator will fill the rut or hole created by such activity before removing the vehicle "
         "from the immediate area.",
         36, 59},
        {"Four score and seven years ago our fathers brought forth on this continent a new nation "
         "conceived in Liberty and dedicated to the proposition that all men are created equal.",
         30, 49},
    };
    std::string all;
    double sum = 0;
    for (const Example& example : examples) {
        INFO(example.text);
        const EarFigures figures = ear(example.text);
        CHECK(figures.words_a_thought == example.words);
        CHECK(figures.easy_listening == example.syllables - example.words);
        CHECK(figures.hard_to_follow() == (example.syllables - example.words > 12));
        all += example.text + "\n\n";
        sum += example.syllables - example.words;
    }
    CHECK(ear(all).easy_listening == Approx(sum / static_cast<double>(examples.size())));
}

TEST_CASE("ear/a sentence cut in two with the same words is never harder") {
    CHECK(ear("You make a hole. You must fill the hole before you drive the vehicle away.")
              .easy_listening <
          ear("You make a hole, you must fill the hole before you drive the vehicle away.")
              .easy_listening);
}

TEST_CASE("ear/what is heard counts, not what is written") {
    // Eight spoken words (references: spoken forms of money); initials are words of one letter, and
    // W has three syllables.
    CHECK(ear("$18,925,000.").words_a_thought == 8);
    CHECK(ear("The BMW.").words_a_thought == 4);
    CHECK(ear("The BMW.").easy_listening == 2);
}

TEST_CASE("ear/stresses and pauses a minute, by section") {
    const auto analysis =
        analysed("# One\n\nWe *count* limpets, / here. xx x\n\nThe TIDE comes in. // "
                 "It **goes** out.\n\n# Two\n\nNothing is marked here.\n");
    const Script& script = analysis->script;
    REQUIRE(script.sections.size() == 2);
    const Section& one = script.sections[0];
    const double minutes = one.timing.expected.count() / 60;
    const EarFigures figures = ear_of(script, one);
    CHECK(figures.stressed_a_minute == Approx(3 / minutes));
    CHECK(figures.marked_pauses_a_minute == Approx(3 / minutes));  // "/", "xx x", "//"
    CHECK(figures.written_pauses_a_minute == Approx(1 / minutes)); // the gap: marks are longer
    CHECK(figures.words_a_minute == Approx(11 / minutes));
    const EarFigures two = ear_of(script, script.sections[1]);
    CHECK(two.stressed_a_minute == 0);
    CHECK(two.marked_pauses_a_minute == 0);
    CHECK(two.written_pauses_a_minute == 0);
    CHECK(two.words_a_thought == 4);
    CHECK(ear("").words_a_minute == 0);
    CHECK(describe(ear("[clip 3s]\n")).empty());
}
