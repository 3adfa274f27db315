// links: say_engine
// What is heard in timed text, and what is learnt from readers whose numbers are known.
#include "engine/timed_text.h"

#include "support/catch.h"

#include <random>

using namespace say;
using Catch::Matchers::WithinAbs;

namespace {

// Stretches that a reader of these numbers reads, off by the model's own error.
std::vector<TimedStretch> read_by(const ReaderNumbers& reader, int count, unsigned seed,
                                  double noise = 1.0) {
    std::mt19937 random(seed);
    std::normal_distribution<double> normal(0, noise);
    std::uniform_real_distribution<double> share(0.05, 0.35);
    std::vector<TimedStretch> stretches;
    for (int i = 0; i < count; ++i) {
        TimedStretch stretch{.words = 60};
        stretch.pause = Seconds{20 * share(random)};
        stretch.speech = Seconds{20} - stretch.pause;
        const Seconds exact = stretch.speech * reader.speech + stretch.pause * reader.pauses;
        stretch.spread = spread_of(exact);
        stretch.measured = exact + stretch.spread * normal(random);
        stretches.push_back(stretch);
    }
    return stretches;
}

// Speech and pauses trade a little against each other; their sum is what is asked for. A text has
// about a fifth of pauses.
double whole(const Evidence& evidence) {
    const ReaderNumbers numbers = numbers_from(evidence);
    return 0.8 * numbers.speech + 0.2 * numbers.pauses;
}

} // namespace

TEST_CASE("timed text/a slow and a fast reader are known after ten minutes") {
    for (const double speech : {0.85, 0.99, 1.32}) {
        const auto take = read_by({speech, 1.0}, 30, 7);
        CHECK_THAT(whole(evidence_of(take, {})), WithinAbs(0.8 * speech + 0.2, 0.07));
    }
}

TEST_CASE("timed text/what a mark or a direction holds says nothing of the reader") {
    Parser parser;
    const Options options;
    const auto heard = [&](std::string_view script, double seconds) {
        Memo memo;
        const Document document{.uri = "a.say",
                                .version = 0,
                                .text = std::make_shared<const Text>(std::string(script))};
        return hear_script(*analyse(document, options, parser, memo, Cancel{}), Seconds{seconds});
    };
    const Heard plain = heard("We count limpets on the shore every spring.\n", 3.0);
    const Heard held = heard("We count limpets on the shore every spring. [wait 4s]\n", 7.0);
    REQUIRE(plain.stretches.size() == 1);
    REQUIRE(held.stretches.size() == 1);
    CHECK(plain.stretches[0].speech == held.stretches[0].speech);
    CHECK_THAT(held.stretches[0].measured.count(), WithinAbs(3.0, 1e-9));
}

TEST_CASE("timed text/of one voice only what it spoke was timed") {
    Parser parser;
    Memo memo;
    const Document document{
        .uri = "a.say",
        .version = 0,
        .text = std::make_shared<const Text>(std::string(
            "---\nspeakers: ANNA, BEN\n---\n\nANNA: We count limpets [VT 10s] on the shore every "
            "spring (0.5) with you.\n\nBEN: Thank you.\n"))};
    const auto analysis = analyse(document, Options{}, parser, memo, Cancel{});
    const Heard anna = hear_script(*analysis, Seconds{4.5}, "ANNA");
    REQUIRE(anna.stretches.size() == 1);
    // The clip ran while ANNA was silent; the half second is a pause of hers.
    CHECK_THAT(anna.stretches[0].measured.count(), WithinAbs(4.0, 1e-9));
    const Heard all = hear_script(*analysis, Seconds{4.5});
    REQUIRE(all.left_out.size() == 1);
    CHECK(all.left_out[0].why == "its marks and directions alone hold 10.5 s of the 4.5 s");
}

TEST_CASE("timed text/short gaps belong to the words, pauses are learnt, long gaps are "
          "neither") {
    Parser parser;
    const Options options;
    const auto cue = [](double begin, double end, const char* text) {
        return Cue{.begin = Seconds{begin}, .end = Seconds{end}, .text = text, .voice = {}};
    };
    const std::vector<Cue> cues = {cue(0, 2, "We count limpets on the shore"),
                                   cue(2.1, 3, "every spring."),
                                   cue(3.8, 6, "The tide decides how long we have."),
                                   cue(30, 32.5, "Then we go home and write it all down.")};
    const Heard heard = hear_captions(cues, options, parser);
    CHECK(heard.left_out.empty());
    REQUIRE(heard.stretches.size() ==
            3); // speech and silence of the first two sentences, the third
    CHECK_THAT(heard.stretches[1].measured.count(), WithinAbs(0.8, 1e-9));
    CHECK_THAT(heard.seconds.count(), WithinAbs(6.0 + 2.5, 1e-9));
}

TEST_CASE("timed text/a cue that overlaps another is left out with its line") {
    Parser parser;
    const Options options;
    const std::vector<Cue> cues = {{.begin = Seconds{0},
                                    .end = Seconds{3},
                                    .text = "We count limpets on the shore.",
                                    .voice = {},
                                    .line = 3},
                                   {.begin = Seconds{0.5},
                                    .end = Seconds{3},
                                    .text = "And I count the crabs there.",
                                    .voice = {},
                                    .line = 6}};
    const Heard heard = hear_captions(cues, options, parser);
    REQUIRE(heard.left_out.size() == 1);
    CHECK(heard.left_out[0].line == 6);
}
