// links: say_host
// Caption files as the W3C's WebVTT describes them and as SRT files are (format wikis agree on
// them), and what is wrong in real ones.
#include "importers/captions.h"

#include "support/catch.h"
#include "support/error.h"

#include <fmt/core.h>

using namespace say;

namespace {

std::string shown(const Captions& captions) {
    std::string text;
    for (const Cue& cue : captions.cues) {
        text += fmt::format("{:.3f} {:.3f} {}{}\n", cue.begin.count(), cue.end.count(),
                            cue.voice.empty() ? "" : cue.voice + ": ", cue.text);
    }
    for (const LeftOut& left : captions.left_out)
        text += fmt::format("line {}: {}\n", left.line, left.why);
    return text;
}

std::string vtt(std::string_view cues) {
    const auto read = read_webvtt("WEBVTT\n\n" + std::string(cues), "talk.vtt");
    return read ? shown(*read) : read.error().message;
}

std::string srt(std::string_view cues) {
    const auto read = read_srt(cues, "talk.srt");
    return read ? shown(*read) : read.error().message;
}

} // namespace

TEST_CASE("captions/WebVTT times, settings, notes and identifiers") {
    CHECK(vtt("00:01.500 --> 00:02.000\nOne.") == "1.500 2.000 One.\n");
    CHECK(vtt("100:00:01.500 --> 100:00:02.000\nOne.") == "360001.500 360002.000 One.\n");
    CHECK(
        vtt("a name\n00:01.000\t-->  00:02.000 line:0 position:20%,line-left align:start\nOne.") ==
        "1.000 2.000 One.\n");
    CHECK(vtt("NOTE\nnot --> this? no: it has no times\n\n00:01.000 --> 00:02.000\nOne.\ntwo") ==
          "1.000 2.000 One. two\n");
    CHECK(vtt("STYLE\n::cue {}\n\nREGION\nid:a\n\n00:01.000 --> 00:02.000\nNOTE that.") ==
          "1.000 2.000 NOTE that.\n");
}

TEST_CASE("captions/WebVTT tags and escapes") {
    CHECK(vtt("00:01.000 --> 00:02.000\n<v Mira>One <c.loud.red>two</c> <00:01.500><b>three</b>") ==
          "1.000 2.000 Mira: One two three\n");
    CHECK(vtt("00:01.000 --> 00:02.000\n<v.first Mira Bell>Fish &amp; chips, 3 &lt; 4&nbsp;x "
              "&#233;.") == "1.000 2.000 Mira Bell: Fish & chips, 3 < 4 x é.\n");
    CHECK(
        vtt("00:01.000 --> 00:02.000\n<lang en-GB>A <ruby>base<rt>above</rt></ruby> &c.</lang>") ==
        "1.000 2.000 A base &c.\n");
    CHECK(vtt("00:01.000 --> 00:02.000\n<v Mira>One.</v> <v Jo>Two.\n\n00:02.000 --> "
              "00:03.000\nOn.") ==
          "1.000 2.000 \n2.000 3.000 On.\nline 3: two people speak in this cue\n");
}

TEST_CASE("captions/SRT numbers, commas, line ends and places") {
    CHECK(srt("\xEF\xBB\xBF"
              "1\r\n00:00:01,000 --> 00:00:02,000\r\n<font color=\"red\">One</font>\r\ntwo.\r\n\r\n"
              "2\r\n00:00:02.000 --> 00:00:03.000\r\n{\\an8}Three.\r\n") ==
          "1.000 2.000 One two.\n2.000 3.000 Three.\n");
    // A missing blank line, a missing number.
    CHECK(srt("1\n00:00:01,000 --> 00:00:02,000\nOne.\n2\n00:00:02,000 --> 00:00:03,000\nTwo.\n\n"
              "00:00:03,000 --> 00:00:04,000\nThree.") ==
          "1.000 2.000 One.\n2.000 3.000 Two.\n3.000 4.000 Three.\n");
}

TEST_CASE("captions/sounds, music and names are not spoken") {
    CHECK(srt("1\n00:00:01,000 --> 00:00:02,000\n- [waves] Hello.") == "1.000 2.000 Hello.\n");
    CHECK(srt("1\n00:00:01,000 --> 00:00:02,000\n- [waves] Hello.\n>> MIRA: Hello to you.") ==
          "1.000 2.000 \nline 2: two people speak in this cue\n");
    CHECK(srt("1\n00:00:01,000 --> 00:00:02,000\n(laughter)\n\n2\n00:00:02,000 --> 00:00:03,000\n"
              "♪ by the sea ♪\n\n3\n00:00:03,000 --> 00:00:04,000\nAt 9:30 (or so).") ==
          "1.000 2.000 \n2.000 3.000 \n3.000 4.000 At 9:30 (or so).\n");
}

TEST_CASE("captions/a name before the words holds until somebody else speaks") {
    CHECK(srt("1\n00:00:01,000 --> 00:00:02,000\nRUNE: We count\nlimpets.\n\n"
              "2\n00:00:02,000 --> 00:00:03,000\nThere are many.\n\n"
              "3\n00:00:03,000 --> 00:00:04,000\n[waves]\n\n"
              "4\n00:00:04,000 --> 00:00:05,000\nTESS: How many?\n\n"
              "5\n00:00:05,000 --> 00:00:06,000\n- Twelve.") ==
          "1.000 2.000 RUNE: We count limpets.\n2.000 3.000 RUNE: There are many.\n"
          "3.000 4.000 \n4.000 5.000 TESS: How many?\n5.000 6.000 Twelve.\n");
}

TEST_CASE("captions/lines that roll up are said once") {
    CHECK(vtt("00:01.000 --> 00:02.000\nthe tide\ncomes in\n\n00:02.000 --> 00:03.000\ncomes "
              "in\ntwice\n\n"
              "00:03.000 --> 00:04.000\nNo.\n\n00:04.000 --> 00:05.000\nNo.") ==
          "1.000 2.000 the tide comes in\n2.000 3.000 twice\n3.000 4.000 No.\n4.000 5.000 No.\n");
}

TEST_CASE("captions/what cannot be read is left out with its line") {
    CHECK(vtt("00:61.000 --> 00:62.000\nOne.\n\n00:02.000 --> 00:03.000\nTwo.\n\nThree.") ==
          "2.000 3.000 Two.\n"
          "line 3: the times cannot be read; they are written 00:01:02.500 --> 00:01:04.000\n"
          "line 9: no times above this text\n");
    CHECK(srt("Nothing here.") ==
          "talk.srt: no captions with words in it; give one that holds what was said");
    CHECK(read_webvtt("WEBVTTX\n", "a.vtt").error().message ==
          "a.vtt:1: not WebVTT: the first line should be WEBVTT");
    CHECK(read_webvtt("", "a.vtt").has_error());
}

TEST_CASE("captions/timed lines") {
    const auto read =
        read_timed_lines("# times\n2.5\tOne two.\r\n\nnan\tx\n-1\tx\n3 four\n4\tfive\tsix", "a");
    REQUIRE(read.has_value());
    REQUIRE(read->lines.size() == 2);
    CHECK(read->lines[0].took.count() == 2.5);
    CHECK(read->lines[0].text == "One two.");
    CHECK(read->lines[1].text == "five\tsix");
    CHECK(read->left_out.size() == 3);
    CHECK(read_timed_lines("one\n", "a").has_error());
}

TEST_CASE("captions/who says what") {
    const auto captions =
        say::read_webvtt("WEBVTT\n\n"
                         "00:01.000 --> 00:02.000\n<v Mira>Hello.\n<v Jo>Hi.\n\n"
                         "00:02.000 --> 00:03.000\n>> JO: Where?\n[wind]\n- Here.\n",
                         "talk.vtt");
    REQUIRE(captions.has_value());
    REQUIRE(captions->cues.size() == 2);
    const std::vector<say::Turn>& both = captions->cues[0].turns;
    REQUIRE(both.size() == 2);
    CHECK(both[0].voice == "Mira");
    CHECK(both[1].voice == "Jo");
    CHECK(both[1].text == "Hi.");
    const std::vector<say::Turn>& turns = captions->cues[1].turns;
    REQUIRE(turns.size() == 3);
    CHECK(turns[0].voice == "JO");
    CHECK(turns[0].changes);
    CHECK(turns[1].sound == "[wind]");
    CHECK(turns[2].text == "Here.");
    CHECK(turns[2].changes);
}

// Sounds stand in square brackets (DCMP Captioning Key, "Sound Effects and Music", from memory); a
// draft keeps them, a calibration does not count them.
TEST_CASE("captions/brackets are written and not said") {
    const auto captions = say::read_srt("1\n00:00:01,000 --> 00:00:02,000\nWe paid [in cash].\n"
                                        "Two [tense music\nplays] three.\n",
                                        "talk.srt");
    REQUIRE(captions.has_value());
    const std::vector<say::Turn>& turns = captions->cues[0].turns;
    REQUIRE(turns.size() == 2);
    CHECK(turns[0].text == "We paid .");
    CHECK(turns[0].written == "We paid [in cash].");
    CHECK(turns[1].text == "Two  three.");
    CHECK(turns[1].written == "Two [tense music plays] three.");
}

TEST_CASE("captions/words without times are kept apart") {
    const auto captions =
        say::read_srt("1\n00:00:01,000 --> 00:00:02,000\nOne.\n\nBelow a blank line.\n"
                      "2\n00:00:02,000 --> 00:00:03,000\nTwo.\n\n"
                      "3\n00:00:03,000 -> 00:00:04,000\nA bad arrow.\n\n"
                      "4\npress --> to go on\n",
                      "talk.srt");
    REQUIRE(captions.has_value());
    CHECK(shown(*captions) ==
          "1.000 2.000 One.\n2.000 3.000 Two.\n"
          "line 5: no times above this text\n"
          "line 11: the times cannot be read; they are written 00:01:02.500 --> 00:01:04.000\n"
          "line 15: the times cannot be read; they are written 00:01:02.500 --> 00:01:04.000\n");
    REQUIRE(captions->untimed.size() == 3);
    CHECK(captions->untimed[0].turns[0].written == "Below a blank line.");
    CHECK(captions->untimed[1].turns[0].written == "A bad arrow.");
    CHECK(captions->untimed[2].turns[0].written == "press --> to go on");
}
