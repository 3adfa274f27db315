// links: say_speech
// The learnt model of stress and pauses: what it leans on, and where it would let a reader breathe.
// How often it is right is measured on the study's labels (docs/phrasing.md), not here.
#include "speech/phrasing.h"

#include "speech/lexicon.h"
#include "speech/phrasing_table.h"
#include "support/catch.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

using namespace say;

namespace {

constexpr float some = 0.5F;

std::vector<PhrasingWord> words_of(std::initializer_list<std::string_view> texts) {
    std::vector<PhrasingWord> words;
    for (const std::string_view text : texts) {
        words.push_back(
            {.text = text,
             .syllables = static_cast<std::uint8_t>(syllable_count(pronounce(text).phones))});
    }
    words.front().capital = true;
    words.back().after = Stop::full;
    return words;
}

} // namespace

TEST_CASE("phrasing/leans on content words and passes over grammar words") {
    // Function words are rarely accented: common practice, no source.
    const auto phrasing = phrase(words_of({"the", "tide", "and", "the", "limpets"}));
    REQUIRE(phrasing.size() == 5);
    CHECK(phrasing[0].stress < some);
    CHECK(phrasing[1].stress >= some);
    CHECK(phrasing[2].stress < some);
    CHECK(phrasing[3].stress < some);
    CHECK(phrasing[4].stress >= some);
}

TEST_CASE("phrasing/pauses after punctuation more than inside a phrase") {
    // Measured pauses: a comma is realised 70 % of the time, stronger punctuation 94 %
    // (docs/timing.md).
    auto words = words_of({"wait", "please", "because", "it", "moves", "slowly", "and", "stops"});
    words[0].after = Stop::comma;
    words[4].after = Stop::strong;
    const auto phrasing = phrase(words);
    CHECK(phrasing[0].boundary >= some);
    CHECK(phrasing[2].boundary < some);
    CHECK(phrasing[3].boundary < some);
    CHECK(phrasing[4].boundary >= some);
    CHECK(phrasing[7].boundary >= some);
}

TEST_CASE("phrasing/finds the join of a long stretch without punctuation") {
    // A clause that opens with "because" or "if" is where a reader breathes: common practice, no
    // source.
    const auto phrasing = phrase(words_of(
        {"we",     "walk",    "the",      "same",    "stretch", "of",   "shore",     "every",
         "spring", "because", "the",      "numbers", "only",    "mean", "something", "if",
         "they",   "are",     "compared", "with",    "last",    "year"}));
    const std::size_t spring = 8;
    const std::size_t something = 14;
    CHECK(phrasing[spring].boundary >= some);
    CHECK(phrasing[something].boundary >= some);
    for (std::size_t i = 0; i + 1 < phrasing.size(); ++i) {
        if (i == spring || i == something) continue;
        CHECK(phrasing[i].boundary <
              std::max(phrasing[spring].boundary, phrasing[something].boundary));
    }
}

TEST_CASE("phrasing/keeps its chances in order and takes any text") {
    const auto words = words_of({"", "\xFF\xFE", "o'clock", "\xC3\xA9t\xC3\xA9", "fbi"});
    for (const Phrasing& phrasing : phrase(words)) {
        const PhrasingChances& word = phrasing.chances;
        CHECK(phrasing.stress <= 2);
        CHECK(phrasing.boundary <= 2);
        CHECK(word.stressed >= word.strongly_stressed);
        CHECK(word.paused >= word.strongly_paused);
        CHECK(word.strongly_stressed >= 0);
        CHECK(word.stressed <= 1);
    }
    CHECK(phrase({}).empty());
}

TEST_CASE("phrasing/rows stay in the table whatever is said") {
    const std::vector<PhrasingWord> many(400, PhrasingWord{.text = "shore", .syllables = 1});
    const PhrasingFeatures features(many);
    PhrasingRows rows;
    for (std::size_t i = 0; i < many.size(); ++i) {
        features.rows(i, rows);
        for (const std::uint32_t row : rows)
            CHECK(row < say_phrasing_table.rows.size());
    }
}
