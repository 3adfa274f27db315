// links: say_host
// Lexicon files. Their shape is that of the W3C's Pronunciation Lexicon Specification 1.0, section
// 4 and its examples (from memory); what is said of wrong files is our own.
#include "host/pls.h"

#include "host/settings.h"
#include "speech/reading.h"
#include "support/catch.h"
#include "support/scratch.h"
#include "text/edit.h"
#include "text/text.h"

#include <nlohmann/json.hpp>

using namespace say;

namespace {

std::string lexicon(std::string_view inside) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<lexicon version=\"1.0\" xmlns=\"http://www.w3.org/2005/01/pronunciation-lexicon\"\n"
           "      alphabet=\"ipa\" xml:lang=\"en-US\">\n" +
           std::string(inside) + "</lexicon>\n";
}

std::string sounds(const OwnReading& reading) {
    if (!reading.alias.empty()) return "= " + reading.alias;
    std::string text;
    for (const Phones& part : reading.phones)
        text += (text.empty() ? "" : " | ") + to_arpabet(part);
    return text;
}

std::vector<std::string> faults(std::string_view bytes) {
    std::vector<std::string> list;
    const Text text{std::string(bytes)};
    for (const PlsFault& fault : read_pls(bytes).faults)
        list.push_back(std::to_string(text.line_of(fault.at) + 1) + ": " + fault.message);
    return list;
}

std::string added(std::string_view bytes, std::string_view word, std::string_view ipa) {
    return apply(bytes, pls_edits(bytes, word, {*from_ipa(ipa)}));
}

} // namespace

TEST_CASE("pls/the Recommendation's kinds of entry are read") {
    const Pls pls = read_pls(lexicon("  <lexeme>\n    <grapheme>judgment</grapheme>\n"
                                     "    <grapheme>judgement</grapheme>\n"
                                     "    <phoneme>ˈdʒʌdʒ.mənt</phoneme>\n  </lexeme>\n"
                                     "  <lexeme>\n    <grapheme>fiancé</grapheme>\n"
                                     "    <phoneme>fiˈɒns.eɪ</phoneme>\n"
                                     "    <phoneme prefer=\"true\">ˌfiː.ɑːnˈseɪ</phoneme>\n"
                                     "    <example>My fiancé and I</example>\n  </lexeme>\n"
                                     "  <lexeme role=\"claws:VVI\" xmlns:claws=\"http://a/b\">\n"
                                     "    <grapheme>W3C</grapheme>\n"
                                     "    <alias>World Wide Web Consortium</alias>\n"
                                     "  </lexeme>\n"));
    CHECK(pls.faults.empty());
    REQUIRE(pls.lexemes.size() == 3);
    CHECK(pls.lexemes[0].graphemes == std::vector<std::string>{"judgment", "judgement"});
    CHECK(sounds(pls.lexemes[0].readings.front()) == "JH AH1 JH M AH0 N T");
    REQUIRE(pls.lexemes[1].readings.size() == 2);
    CHECK(sounds(pls.lexemes[1].readings[0]) == "F IY2 AA0 N S EY1");
    CHECK(sounds(pls.lexemes[1].readings[1]) == "F IY0 AA1 N S EY0");
    CHECK(sounds(pls.lexemes[2].readings.front()) == "= World Wide Web Consortium");
}

TEST_CASE("pls/prefixes, comments, CDATA and a byte order mark make no difference") {
    const std::string bytes =
        "\xEF\xBB\xBF<p:lexicon version='1.0' alphabet='ipa' xml:lang='en'\n"
        "  xmlns:p='http://www.w3.org/2005/01/pronunciation-lexicon' xmlns:o='urn:other'>\n"
        "<!-- the crew --><p:metadata><o:x/></p:metadata><o:more>text</o:more>\n"
        "<p:lexeme><p:grapheme>  Krill\n Bay </p:grapheme><p:phoneme><![CDATA[ˈkɹɪl ˈbeɪ]]>"
        "</p:phoneme></p:lexeme></p:lexicon>";
    const Pls pls = read_pls(bytes);
    CHECK(pls.faults.empty());
    REQUIRE(pls.lexemes.size() == 1);
    CHECK(pls.lexemes[0].graphemes.front() == "Krill Bay");
    CHECK(sounds(pls.lexemes[0].readings.front()) == "K R IH1 L | B EY1");
}

TEST_CASE("pls/each fault has its line and the rest still counts") {
    const std::string bytes = lexicon("<lexeme><grapheme>cat</grapheme><phoneme>ˈkǂæt</phoneme>\n"
                                      "</lexeme><lexeme/>\n"
                                      "<lexeme><phoneme>ˈkæt</phoneme></lexeme>\n"
                                      "<lexeme><grapheme> </grapheme><alias>a</alias></lexeme>\n"
                                      "<lexeme><grapheme>tea</grapheme><alias/></lexeme>\n"
                                      "<word>tea</word>\n"
                                      "<lexeme><grapheme>sea</grapheme><phoneme "
                                      "alphabet=\"x-sampa\">si</phoneme></lexeme>\n"
                                      "<lexeme><grapheme>be</grapheme><phoneme prefer=\"1\">"
                                      "ˈbi</phoneme></lexeme>\n");
    const std::vector<std::string> said = faults(bytes);
    REQUIRE(said.size() == 9);
    CHECK(said[0].starts_with("4: \"ǂ\" in the phoneme of \"cat\""));
    CHECK(said[1].starts_with("5: <lexeme> has no grapheme"));
    CHECK(said[2].starts_with("5: <lexeme> says no sound"));
    CHECK(said[3].starts_with("6: <lexeme> has no grapheme"));
    CHECK(said[4].starts_with("7: <grapheme> is empty"));
    CHECK(said[5].starts_with("8: <alias> is empty"));
    CHECK(said[6].starts_with("9: <word> cannot stand here"));
    CHECK(said[7].starts_with("10: alphabet is \"x-sampa\""));
    CHECK(said[8].starts_with("11: prefer is \"1\""));
    CHECK(read_pls(bytes).lexemes.size() == 1);
}

TEST_CASE("pls/a file that is no lexicon applies not at all") {
    const auto first = [](std::string_view bytes) {
        const std::vector<std::string> said = faults(bytes);
        return said.empty() ? std::string("none") : said.front();
    };
    CHECK(first("") == "none");
    CHECK(first(" \n") == "none");
    CHECK(first("<lexicon>").starts_with("1: not XML"));
    CHECK(first("{}").starts_with("1: text outside the lexicon"));
    CHECK(first("<words/>").starts_with("1: <words> is no lexicon"));
    CHECK(first("\n<lexicon version=\"1.0\"/>").starts_with("2: <lexicon> is of the namespace"));
    // The attack that doubles an entity over and over: the definition itself is refused.
    const std::string bomb = "<?xml version=\"1.0\"?>\n<!DOCTYPE lexicon [<!ENTITY a \"aaaa\">\n"
                             "<!ENTITY b \"&a;&a;\">]>\n<lexicon/>";
    const std::vector<std::string> said = faults(bomb);
    CHECK(std::any_of(said.begin(), said.end(), [](const std::string& fault) {
        return fault.find("a document type is not read") != std::string::npos;
    }));
    CHECK(read_pls(bomb).lexemes.empty());

    std::string german = lexicon("<lexeme><grapheme>a</grapheme><phoneme>a</phoneme></lexeme>");
    german.replace(german.find("en-US"), 5, "de-DE");
    CHECK(first(german).find("xml:lang is \"de-DE\"; it may be en") != std::string::npos);
    CHECK(read_pls(german).lexemes.empty());
    std::string silent =
        lexicon("<lexeme><grapheme>a</grapheme><phoneme>a</phoneme><alias>b</alias></lexeme>");
    silent.erase(silent.find("alphabet=\"ipa\""), 14);
    CHECK(first(silent).starts_with("2: <lexicon> has no alphabet"));
    REQUIRE(read_pls(silent).lexemes.size() == 1);
    CHECK(sounds(read_pls(silent).lexemes[0].readings.front()) == "= b");
}

TEST_CASE("pls/any bytes are taken, and deep nesting too") {
    std::string deep;
    for (int i = 0; i < 200000; ++i)
        deep += "<a>";
    CHECK_FALSE(read_pls(deep).faults.empty());
    const std::string whole = lexicon("<lexeme><grapheme>cat</grapheme><phoneme>ˈkæt</phoneme>"
                                      "</lexeme>");
    const std::size_t last = whole.rfind('>');
    for (std::size_t size = 0; size < last; ++size)
        CHECK(read_pls(std::string_view(whole).substr(0, size)).lexemes.empty());
}

TEST_CASE("pls/a list says entries of one word and of several") {
    WordList list;
    add_to(list, read_pls(lexicon("<lexeme><grapheme>Krill Bay</grapheme><grapheme>KB</grapheme>"
                                  "<phoneme>ˈkɹɪl ˈbeɪ</phoneme></lexeme>"
                                  "<lexeme><grapheme>Krill</grapheme><phoneme>ˈkɹaɪl</phoneme>"
                                  "<phoneme>ˈkɹeɪl</phoneme></lexeme>")));
    const std::vector<std::string> two = {"krill", "bay", "is"};
    REQUIRE(list.find(two) != nullptr);
    CHECK(list.find(two)->words.size() == 2);
    REQUIRE(list.find("krill") != nullptr);
    CHECK(list.find("krill")->readings.size() == 2);
    REQUIRE(list.find("kb") != nullptr);
    CHECK(sounds(list.find("kb")->readings.front()) == "K R IH1 L B EY1");
    CHECK(list.find("bay") == nullptr);
}

TEST_CASE("pls/a new entry changes nothing else of the file") {
    const std::string fresh = added("", "Nguyen", "ˈwɪn");
    CHECK(read_pls(fresh).faults.empty());
    REQUIRE(read_pls(fresh).lexemes.size() == 1);

    const std::string before = lexicon("  <!-- ours -->\n  <lexeme><grapheme>a&amp;b</grapheme>"
                                       "<alias>a and b</alias></lexeme>\n");
    const std::string after = added(before, "R&D<lab>", "ˈlæb");
    const std::size_t end = before.find("</lexicon>");
    CHECK(after.starts_with(before.substr(0, end)));
    CHECK(after.ends_with(before.substr(end)));
    REQUIRE(read_pls(after).lexemes.size() == 2);
    CHECK(read_pls(after).lexemes[1].graphemes.front() == "R&D<lab>");
    // The same again is no change; another sound takes the place of the old one.
    CHECK(pls_edits(after, "r&d<LAB>", {*from_ipa("ˈlæb")}).empty());
    const std::string other = added(after, "R&D<lab>", "ˈleɪb");
    REQUIRE(read_pls(other).lexemes.size() == 2);
    CHECK(sounds(read_pls(other).lexemes[1].readings.front()) == "L EY1 B");
    // An alias stays, below the new sound.
    const std::string above = added(before, "A&B", "ˈæb");
    REQUIRE(read_pls(above).lexemes.size() == 2);
    CHECK(sounds(read_pls(above).lexemes[0].readings.front()) == "AE1 B");
    // No room between the tags, and line ends of the file's own.
    const std::string_view shut =
        "<lexicon version=\"1.0\" alphabet=\"ipa\" xml:lang=\"en\"\r\n"
        " xmlns=\"http://www.w3.org/2005/01/pronunciation-lexicon\"/>\r\n";
    const std::string opened = added(shut, "a", "ˈæ");
    CHECK(read_pls(opened).faults.empty());
    CHECK(read_pls(opened).lexemes.size() == 1);
    CHECK(opened.find("lexeme>\r\n") != std::string::npos);
    // What is no lexicon is left alone.
    CHECK(pls_edits("<words/>", "a", {*from_ipa("ˈæ")}).empty());
}

TEST_CASE("pls/the settings name lexicons, and the project's own list comes first") {
    const Scratch scratch;
    const auto entry = [](std::string_view word, std::string_view ipa) {
        return "<lexeme><grapheme>" + std::string(word) + "</grapheme><phoneme>" +
               std::string(ipa) + "</phoneme></lexeme>\n";
    };
    scratch.write(".sayline/settings.json", R"({"lexicons": ["../names.pls", "gone.pls"]})");
    scratch.write("names.pls",
                  lexicon(entry("Nguyen", "ˈwɪn") + entry("Krill", "ˈkɹɪl") + entry("bad", "ˈǂ")));
    scratch.write(".sayline/words.pls", lexicon(entry("krill", "ˈkɹaɪl")));
    const auto script = scratch.at("talk.say");
    const Setup setup = load_setup(script, nullptr);
    REQUIRE(setup.options.voice.words != nullptr);
    const OwnWord* krill = setup.options.voice.words->find("krill");
    REQUIRE(krill != nullptr);
    CHECK(sounds(krill->readings.front()) == "K R AY1 L");
    CHECK(krill->readings.size() == 2);
    CHECK(setup.options.voice.words->find("nguyen") != nullptr);

    REQUIRE(setup.problems.size() == 2);
    CHECK(setup.problems[0].file.filename() == "names.pls");
    CHECK(setup.problems[0].line == 6);
    CHECK(setup.problems[1].file.filename() == "settings.json");
    CHECK(setup.problems[1].message.find("gone.pls") != std::string::npos);
    CHECK(setup.problems[1].column == 2);

    const auto stamp = settings_stamp(script, setup.lexicons);
    scratch.write("gone.pls", "");
    CHECK(settings_stamp(script, setup.lexicons) == stamp); // another folder's
    scratch.write(".sayline/gone.pls", lexicon(""));
    CHECK(settings_stamp(script, setup.lexicons) != stamp);
    CHECK(word_list_file(script) == scratch.at(".sayline/words.pls"));
    CHECK(word_list_file(scratch.at("../nowhere-else/talk.say")).filename() == "words.pls");

    nlohmann::json editor = {{"lexicons", nlohmann::json::array({"../names.pls"})}};
    CHECK(load_setup(script, &editor).problems.size() == 1);
    editor["lexicons"] = 3;
    const Setup wrong = load_setup(script, &editor);
    REQUIRE(wrong.problems.size() == 2); // and names.pls of the file still counts
    CHECK(wrong.problems.front().message ==
          "lexicons cannot be 3; it may be a list of files, as in [\"names.pls\"]");
}

TEST_CASE("pls/words of the list are said so wherever they stand") {
    const Scratch scratch;
    scratch.write(".sayline/words.pls",
                  lexicon("<lexeme><grapheme>Nguyen</grapheme><phoneme>ˈwɪn</phoneme></lexeme>\n"
                          "<lexeme><grapheme>Krill Bay</grapheme><phoneme>ˈkɹɪl ˈbeɪ</phoneme>"
                          "</lexeme><lexeme><grapheme>W3C</grapheme>"
                          "<alias>web consortium</alias></lexeme>"
                          "<lexeme><grapheme>LCV</grapheme><alias>limpet volunteers</alias>"
                          "</lexeme><lexeme><grapheme>RB</grapheme><alias>rock boat</alias>"
                          "</lexeme><lexeme><grapheme>Hjørdis</grapheme>"
                          "<phoneme>ˈjɔɹdɪs</phoneme></lexeme>"
                          "<lexeme><grapheme>mådeira</grapheme><phoneme>ˈmoʊ</phoneme></lexeme>"
                          "<lexeme><grapheme>GIF</grapheme><phoneme>ˈdʒɪf</phoneme></lexeme>"));
    const Setup setup = load_setup(scratch.at("talk.say"), nullptr);
    CHECK(setup.problems.empty());
    const auto heard = [&](std::string_view text) {
        const std::string source(text);
        const Written written = plain_thought(source);
        const Reading reading = read(written, source, setup.options.voice);
        std::string all;
        for (const Said& said : reading.said) {
            for (const Phones& phones : said.phones)
                all += (all.empty() ? "" : " | ") + to_arpabet(phones);
            if (said.known == Known::list) all += '*';
        }
        return all;
    };
    CHECK(heard("Nguyen") == "W IH1 N*");
    CHECK(heard("NGUYEN's") == "W IH1 N Z*");
    CHECK(heard("Nguyen-led") == "W IH1 N L EH1 D*");
    CHECK(heard("krill bay") == "K R IH1 L* | B EY1*");
    CHECK(heard("krill, bay") == "K R IH1 L | B EY1");
    CHECK(heard("Krill Bay's") == "K R IH1 L* | B EY1 Z*");
    CHECK(heard("W3C") == "W EH1 B | K AH0 N S AO1 R SH IY0 AH0 M*");
    CHECK(heard("GIF") == "JH IH1 F*");
    // The plural of initials, and what is a plural already.
    CHECK(heard("RBs") == "R AA1 K | B OW1 T S*");
    CHECK(heard("RB's") == "R AA1 K | B OW1 T S*");
    CHECK(heard("LCVs") == heard("LCV"));
    CHECK(heard("LCV's") == heard("LCV"));
    CHECK(heard("rbs") != heard("RBs"));
    // Without its accents, unless that is a word of its own.
    CHECK(heard("Hjørdis") == "Y AO1 R D IH0 S*");
    CHECK(heard("Hjordis's") == "Y AO1 R D IH0 S IH0 Z*");
    CHECK(heard("Madeira") == "M AH0 D IH1 R AH0");
}
