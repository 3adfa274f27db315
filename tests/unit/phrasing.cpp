// links: say_speech
// The plain rule for stress and pauses: what it leans on, and where it would let a reader breathe.
#include "speech/phrasing.h"

#include "support/catch.h"

using namespace say;

namespace {

constexpr float some = 0.5F;
constexpr float strong = 1.5F;

} // namespace

TEST_CASE("phrasing/leans on content words and passes over grammar words") {
    // Function words are rarely accented: common practice, no source.
    const std::vector<PhrasingWord> words = {{"The"}, {"tide"}, {"and"}, {"the"}, {"limpets"}};
    const std::vector<Phrasing> phrasing = phrase(words);
    REQUIRE(phrasing.size() == 5);
    CHECK(phrasing[0].stress < some);
    CHECK(phrasing[1].stress >= some);
    CHECK(phrasing[1].stress < strong);
    CHECK(phrasing[2].stress < some);
    CHECK(phrasing[4].stress >= strong); // seven letters
}

TEST_CASE("phrasing/pauses after punctuation and before a clause") {
    // "And, but, or" and the words that open a clause are where readers breathe without a comma:
    // common practice, no source.
    const std::vector<PhrasingWord> words = {
        {"Wait", Juncture::comma},  {"please"}, {"because"}, {"it"}, {"moves", Juncture::strong},
        {"slowly", Juncture::stop}, {"and"},    {"stops"}};
    const std::vector<Phrasing> phrasing = phrase(words);
    CHECK(phrasing[0].boundary >= strong);
    CHECK(phrasing[1].boundary > 0); // before "because": ranked, not claimed
    CHECK(phrasing[1].boundary < some);
    CHECK(phrasing[2].boundary == 0);
    CHECK(phrasing[4].boundary >= strong);
    CHECK(phrasing[5].boundary >= strong); // a stop keeps its pause before "and"
    CHECK(phrasing[7].boundary == 0);
}

TEST_CASE("phrasing/reads capitals typographic apostrophes and other letters") {
    const std::vector<PhrasingWord> words = {
        {"BECAUSE"}, {"caf\xC3\xA9s"}, {"\xC3\xA9t\xC3\xA9"}, {"\xFF"}};
    const std::vector<Phrasing> phrasing = phrase(words);
    CHECK(phrasing[0].stress == 0);
    CHECK(phrasing[1].stress >= some);
    CHECK(phrasing[2].stress < strong); // three letters, though five bytes
    CHECK(phrase({}).empty());
}
