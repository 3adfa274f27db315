// links: say_exporters say_fixtures
// A page carries the script inside itself. Where a <script> element ends: HTML Living Standard,
// "Restrictions for contents of script elements" (no `</script` and no `<!--` inside). What must be
// escaped in text and attributes: the same, "Serializing HTML fragments".
#include "base/markup.h"
#include "exporters/assets.h"
#include "exporters/exporter.h"
#include "exporters/json.h"
#include "support/catch.h"

using namespace say;

namespace {

std::shared_ptr<const Analysis> analysed(std::string text) {
    Parser parser;
    Memo memo;
    const Document document{
        .uri = "talk.say", .version = 0, .text = std::make_shared<const Text>(std::move(text))};
    return analyse(document, Options{}, parser, memo, Cancel{});
}

std::size_t count(std::string_view text, std::string_view wanted) {
    std::size_t n = 0;
    for (auto at = text.find(wanted); at != std::string_view::npos; at = text.find(wanted, at + 1))
        ++n;
    return n;
}

const std::string hostile = "---\ntitle: {{script}} \"<b>&\"\n---\n"
                            "Say </script><script>alert(1)</script> <!-- and <img src=x "
                            "onerror=alert(2)>.\n\nThen {{styles}} \xF0\x9F\x90\x9A.\n";

std::string_view embedded(std::string_view page) {
    constexpr std::string_view opening = "id=\"script\">";
    const std::size_t begin = page.find(opening) + opening.size();
    return page.substr(begin, page.find("</script>", begin) - begin);
}

} // namespace

TEST_CASE("pages/no text of the script ends its element or is markup") {
    const auto analysis = analysed(hostile);
    for (const std::string_view target : {"page", "practice"}) {
        const Exporter& exporter = **wanted_exporter(target);
        const std::string plain = exporter.write(*analysed("Hello.\n"), {});
        const std::string page = exporter.write(*analysis, {});
        CHECK(count(page, "</script") == count(plain, "</script"));
        CHECK(count(page, "<!--") == count(plain, "<!--"));
        CHECK(count(page, "<img") == 0);
        CHECK(embedded(page).find('<') == std::string_view::npos);
        CHECK(page.find("{{script}} &quot;&lt;b&gt;&amp;&quot;</title>") != std::string::npos);
        CHECK(page.find("{{styles}} \xF0\x9F\x90\x9A") != std::string::npos);
    }
}

TEST_CASE("pages/the script on the page is that of the json target") {
    const auto analysis = analysed("MIRA says *hello*. / Then 5 < 6.\n");
    for (const std::string_view target : {"page", "practice"}) {
        const std::string page = (*wanted_exporter(target))->write(*analysis, {});
        CHECK(embedded(page) == json_in_html(script_json(*analysis)));
    }
    CHECK(json_in_html("\"5 < 6\"") == "\"5 \\u003c 6\"");
    CHECK(markup_value("a < b & \"c\" > d") == "a &lt; b &amp; &quot;c&quot; &gt; d");
    CHECK(markup_text("a < b & \"c\" > d") == "a &lt; b &amp; \"c\" &gt; d");
}

TEST_CASE("pages/nothing is loaded from anywhere") {
    for (const std::string_view target : {"page", "practice"}) {
        const std::string page = (*wanted_exporter(target))->write(*analysed("Hello.\n"), {});
        CHECK(page.find("{{") == std::string::npos);
        for (const std::string_view way : {"http:", "https:", " src=", "@import", "url("})
            CHECK(page.find(way) == std::string::npos);
    }
}

TEST_CASE("pages/captions on the practice page are those of the vtt target") {
    const auto analysis = analysed("Count every limpet inside the square, and say the number.\n");
    const std::string page = (*wanted_exporter("practice"))->write(*analysis, {.columns = 32});
    const std::string written = (*wanted_exporter("vtt"))->write(*analysis, {.columns = 32});
    CHECK(page.find(captions_json(*analysis, {.columns = 32})) != std::string::npos);
    const std::string lines =
        "\"lines\":[\"Count every limpet inside\",\"the square, and say the number.\"]";
    CHECK(page.find(lines) != std::string::npos);
    CHECK(written.find("\nCount every limpet inside\nthe square, and say the number.\n") !=
          std::string::npos);
}

TEST_CASE("pages/a file that may be made anew says at its head who made it") {
    int signed_ones = 0;
    for (const Exporter& exporter : exporters()) {
        if (exporter.sign.empty()) continue;
        INFO(exporter.name);
        ++signed_ones;
        const std::string file = exporter.write(*analysed("---\ntitle: Limpets\n---\nOne.\n"), {});
        CHECK(file.substr(0, sign_within).find(exporter.sign) != std::string::npos);
    }
    CHECK(signed_ones == 6);
}
