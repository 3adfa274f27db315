// links: say_speech
// Where sentences end. Each row is a text and its sentences, parted by " ||| ".
#include "speech/sentences.h"

#include "support/catch.h"

#include <chrono>
#include <string>
#include <vector>

using namespace say;

namespace {

struct Row {
    const char* text;
    const char* sentences;
};

std::string split(std::string_view text) {
    std::string joined;
    for (const Span sentence : split_sentences(text)) {
        if (!joined.empty()) joined += " ||| ";
        joined += slice(text, sentence);
    }
    return joined;
}

} // namespace

// English Golden Rules of pragmatic_segmenter (MIT, Copyright (c) 2015 Kevin S. Dias),
// spec/pragmatic_segmenter/languages/english_spec.rb, commit 358fe97e: rules 1, 4, 7 ... 52.
// Rule 40 is kept with its line end: inside a thought that is a blank.
TEST_CASE("sentences/follow the English Golden Rules") {
    const std::vector<Row> rows = {
        {"Hello World. My name is Jonas.", "Hello World. ||| My name is Jonas."},
        {"My name is Jonas E. Smith.", "My name is Jonas E. Smith."},
        {"They closed the deal with Pitt, Briggs & Co. at noon.",
         "They closed the deal with Pitt, Briggs & Co. at noon."},
        {"I can see Mt. Fuji from here.", "I can see Mt. Fuji from here."},
        {"I visited the U.S.A. last year.", "I visited the U.S.A. last year."},
        {"I work for the U.S. Government in Virginia.",
         "I work for the U.S. Government in Virginia."},
        {"She has $100.00 in her bag.", "She has $100.00 in her bag."},
        {"Her email is Jane.Doe@example.com. I sent her an email.",
         "Her email is Jane.Doe@example.com. ||| I sent her an email."},
        {"She turned to him, \"This is great.\" she said.",
         "She turned to him, \"This is great.\" she said."},
        {"Hello?? Who is there?", "Hello?? ||| Who is there?"},
        {"1.) The first item 2.) The second item", "1.) The first item ||| 2.) The second item"},
        {"1) The first item. 2) The second item.", "1) The first item. ||| 2) The second item."},
        {"• 9. The first item • 10. The second item",
         "• 9. The first item ||| • 10. The second item"},
        {"This is a sentence\ncut off in the middle because pdf.",
         "This is a sentence\ncut off in the middle because pdf."},
        {"You can find it at N°. 1026.253.553. That is where the treasure is.",
         "You can find it at N°. 1026.253.553. ||| That is where the treasure is."},
        {"Thoreau argues that by simplifying one’s life, “the laws of the universe will appear "
         "less complex. . . .”",
         "Thoreau argues that by simplifying one’s life, “the laws of the universe will appear "
         "less complex. . . .”"},
        {"I never meant that.... She left the store.",
         "I never meant that.... ||| She left the store."},
        {"Hello world.Today is Tuesday.Mr. Smith went to the store and bought 1,000.That is a lot.",
         "Hello world. ||| Today is Tuesday. ||| Mr. Smith went to the store and bought 1,000. ||| "
         "That is a lot."},
    };
    for (const Row& row : rows)
        CHECK(split(row.text) == row.sentences);
}

// Common practice, no source; the last rows are modelled, from memory, on further Golden Rules.
TEST_CASE("sentences/know abbreviations initials clocks and lists") {
    const std::vector<Row> rows = {
        {"One habit which was somewhat weakened . . . was that of combining words into compounds. "
         ". . . The practice was not abandoned. . . .",
         "One habit which was somewhat weakened . . . was that of combining words into compounds. "
         ". . . ||| The practice was not abandoned. . . ."},
        {"We met Dr. Hill at 4 p.m. on Tues. Jan. 5 in Washington, D.C. before lunch.",
         "We met Dr. Hill at 4 p.m. on Tues. Jan. 5 in Washington, D.C. before lunch."},
        {"J. R. R. Tolkien and J.K. Rowling wrote books. E. B. White did too.",
         "J. R. R. Tolkien and J.K. Rowling wrote books. ||| E. B. White did too."},
        {"No. I won't. See No. 5 on the list, fig. A and Vol. II.",
         "No. ||| I won't. ||| See No. 5 on the list, fig. A and Vol. II."},
        {"Bring rope, boots, etc. Mira brings the rest.",
         "Bring rope, boots, etc. ||| Mira brings the rest."},
        {"It grew 2.5 cm. Then it stopped.", "It grew 2.5 cm. ||| Then it stopped."},
        {"It starts at 6 p.m. Eastern. It starts at 6 p.m. EST. Be there.",
         "It starts at 6 p.m. Eastern. ||| It starts at 6 p.m. EST. ||| Be there."},
        {"\"Really?\" Mira asked. \"Yes!\" said Jo.",
         "\"Really?\" Mira asked. ||| \"Yes!\" said Jo."},
        {"“It is cold.” “So put on a coat.”", "“It is cold.” ||| “So put on a coat.”"},
        {"so i went there. then it rained. is that ok? yes, e.g. mud.",
         "so i went there. ||| then it rained. ||| is that ok? ||| yes, e.g. mud."},
        {"I use Node.js. iPhones too. I read ASP.NET books. Visit example.com. Now.",
         "I use Node.js. ||| iPhones too. ||| I read ASP.NET books. ||| Visit example.com. ||| "
         "Now."},
        {"You need vitamin C. It helps. We tried plan B. The rest is luck.",
         "You need vitamin C. ||| It helps. ||| We tried plan B. ||| The rest is luck."},
        {"She holds a Ph.D. in biology. She got her Ph.D. Then she left.",
         "She holds a Ph.D. in biology. ||| She got her Ph.D. ||| Then she left."},
        {"Well ... that was it… And so it went. Wait.... What?",
         "Well ... that was it… And so it went. ||| Wait.... ||| What?"},
        {"Patella is a name. (It means a little dish.) We count them.",
         "Patella is a name. ||| (It means a little dish.) ||| We count them."},
        {"今日は。元気です。", "今日は。 ||| 元気です。"},
        {"He was born Oct. 3, 1950, in St. Louis. In Sept. The tide turns.",
         "He was born Oct. 3, 1950, in St. Louis. ||| In Sept. ||| The tide turns."},
        {"The score was 3. They lost. Version 2.0.1. Good.",
         "The score was 3. ||| They lost. ||| Version 2.0.1. ||| Good."},
        {"Mr. and Mrs. Hill vs. the sea. Prof. I. Newton knew.",
         "Mr. and Mrs. Hill vs. the sea. ||| Prof. I. Newton knew."},
        {"He paid $5. 20 people saw it. #tides won.",
         "He paid $5. ||| 20 people saw it. ||| #tides won."},
        {"Alphabet Inc. Chief John left Acme Corp. in March. We saw Acme Ltd. He left.",
         "Alphabet Inc. Chief John left Acme Corp. in March. ||| We saw Acme Ltd. ||| He left."},
        {"In the U.S. Mira works. The U.N. Security Council met. It met in the U.K. Parliament.",
         "In the U.S. Mira works. ||| The U.N. Security Council met. ||| It met in the U.K. "
         "Parliament."},
        {"Is it far?No. It's near!Come.", "Is it far? ||| No. ||| It's near! ||| Come."},
        {"Wait. ... \"", "Wait. ... \""},
        {"The tide (see fig. 3) turns. [Look left.] Then go.",
         "The tide (see fig. 3) turns. ||| [Look left.] ||| Then go."},
        {"I was born in the 1980s. The 90s were fun.",
         "I was born in the 1980s. ||| The 90s were fun."},
        {"At 5 a.m. Mr. Hill rose. He left at 6 P.M. Mr. Hill then slept.",
         "At 5 a.m. Mr. Hill rose. ||| He left at 6 P.M. ||| Mr. Hill then slept."},
        {"1. Open the jar 2. Count the limpets", "1. Open the jar ||| 2. Count the limpets"},
        {"a. boots b. string", "a. boots ||| b. string"},
        {"She counts (Jo wrote for years.) at the pool.",
         "She counts (Jo wrote for years.) at the pool."},
        {"It sank.... We left. It is ... well, I know ... I said so.",
         "It sank.... ||| We left. ||| It is ... well, I know ... I said so."},
    };
    for (const Row& row : rows)
        CHECK(split(row.text) == row.sentences);
}

TEST_CASE("sentences/take a line end for a blank") {
    CHECK(split("The tide\nturned. It\r\nrose.") == "The tide\nturned. ||| It\r\nrose.");
}

TEST_CASE("sentences/hold every character and are never empty") {
    CHECK(split_sentences("").empty());
    CHECK(split_sentences(" \n\t ").empty());
    CHECK(split("...") == "...");
    CHECK(split("?! . ! (") == "?! . ! (");
    CHECK(split("\xff. \xc2\xff.") == "\xff. ||| \xc2\xff.");
    const std::string text = "A. b? C!\"D. e). 1.) F … G . . . . H\u3002\xf0 I.J K\u00a0. L ";
    for (std::size_t size = 0; size <= text.size(); ++size) {
        const std::string_view part = std::string_view(text).substr(0, size);
        std::string kept;
        std::uint32_t last = 0;
        for (const Span sentence : split_sentences(part)) {
            CHECK(!sentence.empty());
            CHECK(last <= sentence.begin.value);
            last = sentence.end.value;
            kept += slice(part, sentence);
        }
        std::erase(kept, ' ');
        std::string expected(part);
        std::erase(expected, ' ');
        const std::size_t nbsp = expected.ends_with("\u00a0") ? 2 : 0;
        CHECK(kept.size() + nbsp == expected.size());
    }
}

// Twice the text takes about twice the time, not four times: an upper bound that only a walk over
// the whole text at every stop would break (it took a minute for this size).
TEST_CASE("sentences/stay quick on a run without blanks") {
    for (const char* unit : {"A.", "Aa.", "a.", "p.m. X ", "\u3002"}) {
        std::string text;
        while (text.size() < 65536)
            text += unit;
        const auto begin = std::chrono::steady_clock::now();
        CHECK_FALSE(split_sentences(text).empty());
        CHECK(std::chrono::steady_clock::now() - begin < std::chrono::seconds(5));
    }
}
