// links: say_syntax
// What counts as one written word, and how strong the punctuation between two of them is.
// The cases follow docs/format.md; common practice, no source, where nothing else stands beside
// one.
#include "syntax/words.h"

#include "support/catch.h"
#include "syntax/script.h"

#include <string>

using namespace say;

namespace {

std::string cut(std::string_view text) {
    std::string joined;
    for (const Span word : split_words(text)) {
        if (!joined.empty()) joined += '|';
        joined += slice(text, word);
    }
    return joined;
}

} // namespace

TEST_CASE("words/drops the punctuation around a word") {
    CHECK(cut("") == "");
    CHECK(cut("  \t\n ") == "");
    CHECK(cut("Please call Stella.") == "Please|call|Stella");
    CHECK(cut("(Well), \"yes\" - 'no'!") == "Well|yes|no");
    CHECK(cut("“Yes,” she said; «no»: „so“") == "Yes|she|said|no|so");
    CHECK(cut("Wait?! What??") == "Wait|What");
    CHECK(cut("Dr. Smith of the U.S. is here, etc.") == "Dr|Smith|of|the|U.S|is|here|etc");
    CHECK(cut("*Please* _call_ ~me~") == "Please|call|me");
    CHECK(cut(". - ... — \" ) !") == "");
}

TEST_CASE("words/keeps apostrophes that belong to the word") {
    CHECK(cut("don't the dog’s it's") == "don't|the|dog’s|it's");
    CHECK(cut("'tis ’twas 'em") == "'tis|’twas|'em");
    CHECK(cut("'single' and 'two words'") == "single|and|two|words");
    CHECK(cut("goin' home o' nights") == "goin'|home|o'|nights");
    CHECK(cut("'I was in' he said") == "I|was|in|he|said");
    CHECK(cut("the '90s and ’80s") == "the|'90s|and|’80s");
    CHECK(cut("the dogs' bowls") == "the|dogs|bowls");
}

TEST_CASE("words/cuts at dashes and at three dots") {
    CHECK(cut("a—b a — b a -- b a--b a---b a – b") == "a|b|a|b|a|b|a|b|a|b|a|b");
    CHECK(cut("wait...what wait…what wait.... What . . . then") ==
          "wait|what|wait|what|wait|What|then");
    CHECK(cut("a well-known 10-year-old London–Paris 1980–86") ==
          "a|well-known|10-year-old|London–Paris|1980–86");
    CHECK(cut("end- -start") == "end|start");
}

TEST_CASE("words/keeps what belongs to a figure") {
    CHECK(cut("$5, 5%, #1, -0.1, +1-123, .5, 20°") == "$5|5%|#1|-0.1|+1-123|.5|20°");
    CHECK(cut("£1,500.50. €30 ¥30b 5€ 1/2") == "£1,500.50|€30|¥30b|5€|1/2");
    CHECK(cut("12\" pipe, 5'6\" tall") == "12\"|pipe|5'6\"|tall");
    CHECK(cut("\"in 1984\" he said") == "in|1984|he|said");
    CHECK(cut("9:30 01.10.2010 1:01:01 -$5 ~5 <5") == "9:30|01.10.2010|1:01:01|-$5|~5|<5");
    CHECK(cut("(123) 123-5678 1.) 2)") == "123|123-5678|1|2");
    CHECK(cut("C++ and C# and 18+") == "C++|and|C#|and|18+");
}

TEST_CASE("words/keeps addresses and names whole") {
    CHECK(cut("AT&T a@b.c, <https://a.b/c?d=e,f> @mira #tag #mytext#") ==
          "AT&T|a@b.c|https://a.b/c?d=e,f|@mira|#tag|#mytext#");
    CHECK(cut("and/or word(s) (s)he f(x) Node.js ASP.NET .com") ==
          "and/or|word(s)|(s)he|f(x)|Node.js|ASP.NET|.com");
}

TEST_CASE("words/parts what lacks its blank") {
    CHECK(cut("Hello world.Today is Tuesday.Mr. Smith") == "Hello|world|Today|is|Tuesday|Mr|Smith");
    CHECK(cut("bought 1,000.That is a lot") == "bought|1,000|That|is|a|lot");
    CHECK(cut("Wow!Great yes,no note:this one;two said,\"Yes\"") ==
          "Wow|Great|yes|no|note|this|one|two|said|Yes");
}

TEST_CASE("words/says lone signs and no lone punctuation") {
    CHECK(cut("salt & sand, 5 + 3 = 8, 99 %, at @ noon") == "salt|&|sand|5|+|3|=|8|99|%|at|@|noon");
    CHECK(cut("x < 30 and 3 * 4 but * not") == "x|<|30|and|3|*|4|but|not");
    CHECK(cut("10 - 12 days, 5 - 3 = 2, in 2020 - 15 years") ==
          "10|-|12|days|5|-|3|=|2|in|2020|15|years");
    CHECK(cut("$ 5") == "$|5");
    CHECK(cut("fun 🎉 and games🎉") == "fun|🎉|and|games");
}

TEST_CASE("words/takes any blank and any bytes") {
    CHECK(cut("one\u00a0two\u2003three\u2028four\u3000five") == "one|two|three|four|five");
    CHECK(cut("café naïve Ärger 日本語。日本") == "café|naïve|Ärger|日本語|日本");
    CHECK(cut("\xff\xfe") == "");
    CHECK(cut("a\xe2\x80 b\xc2") == "a|b");
    CHECK(cut(std::string_view("a\0b", 3)).size() == 3);
}

TEST_CASE("words/junctures go by the strongest sign") {
    CHECK(juncture_of(" ", false) == Juncture::none);
    CHECK(juncture_of("\" ", false) == Juncture::none);
    CHECK(juncture_of(", ", false) == Juncture::comma);
    CHECK(juncture_of(",\" ", false) == Juncture::comma);
    CHECK(juncture_of(" (", false) == Juncture::comma);
    CHECK(juncture_of("); ", false) == Juncture::strong);
    CHECK(juncture_of(": ", false) == Juncture::strong);
    CHECK(juncture_of(" - ", false) == Juncture::strong);
    CHECK(juncture_of("- ", false) == Juncture::none);
    CHECK(juncture_of("--", false) == Juncture::strong);
    CHECK(juncture_of(" — ", false) == Juncture::strong);
    CHECK(juncture_of("...", false) == Juncture::strong);
    CHECK(juncture_of("… ", false) == Juncture::strong);
    CHECK(juncture_of(". ", false) == Juncture::none); // "Dr. Smith"
    CHECK(juncture_of(". ", true) == Juncture::stop);
    CHECK(juncture_of("?\" ", true) == Juncture::stop);
    // "Really?" he said: the voice stops though the sentence goes on.
    CHECK(juncture_of("?\" ", false) == Juncture::stop);
}

// The last byte of "à" in UTF-8 is a no-break space in Latin-1 (Unicode Standard, C0 Controls and
// Latin-1 Supplement).
TEST_CASE("words/what a mark holds keeps its last letter") {
    const std::string text = "Hello [voilà] Zoë{zo‿à} now.\n";
    Parser parser;
    const std::vector<Block> blocks = cut_blocks(text, parse_header(text));
    const Written written = parser.parse(text, blocks.front());
    REQUIRE(written.marks.size() == 2);
    CHECK(written.marks[0].argument == "voilà");
    CHECK(written.marks[1].argument == "zo‿à");
}
