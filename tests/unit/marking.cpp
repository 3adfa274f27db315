// links: say_engine say_features say_fixtures
// What light marks put into plain sentences of the trades: a news read, a lesson, a product talk,
// a keynote. The marks are those that guides for broadcasters ask for:
//   [manual] US Navy, Journalist training manual, broadcast writing (tpub.com/journalist/151.htm):
//            the comma tells the announcer to pause.
//   [hyphen] "Writing for your announcer" (vskills.in): words that go together take no breath
//            between them.
//   [stress] P. Pozner, "Sentence stress and pausing in broadcast journalism": stress what carries
//            the news (who, what, when), and part the sentence into groups with a key word each.
//   [contrast] "Get a better broadcast, podcast and video voice" 0306: negatives, opposites and
//            contrasts point to what the sentence is about.
//   [radio]  R. McLeish and J. Link, "Radio Production", newsreading: lean on the new idea, not on
//            the verb, and not on what was said before; from memory.
//   [custom] Common practice, no source.
#include "engine/analysis.h"
#include "features/features.h"
#include "support/catch.h"
#include "support/fixture.h"
#include "text/edit.h"

#include <algorithm>
#include <string>

using namespace say;

namespace {

std::string without_marks(std::string text) {
    text.erase(std::remove(text.begin(), text.end(), '*'), text.end());
    for (std::size_t at = text.find("/ "); at != std::string::npos; at = text.find("/ ", at))
        text.erase(at, 2);
    return text;
}

struct Sample {
    std::string marked; // as a reader would mark it
    std::string why;
};

// The words alone go in, what a reader would mark comes out.
std::string lightly_marked(const std::string& text) {
    const auto analysis = test::analyse_text(text, {});
    return say::apply(text, edits_of(*analysis, Sweep::mark));
}

} // namespace

TEST_CASE("marking/leans on what holds true, and on what is new in a list of likes") {
    const auto sample = GENERATE(values<Sample>({
        {"It isn't the cold that hurts; it's the *wind*.", "[contrast]"},
        {"Don't look out, look *down*.", "[contrast]"},
        {"We don't count fish. We count *limpets*.", "[contrast] over two sentences"},
        {"Not twelve people, but twelve *hundred*.", "[contrast]"},
        {"You don't need a boat, you need *boots*.", "[contrast]"},
        {"They came by bus, they came by bike, and one came by *kayak*.", "[radio] the new item"},
        {"My grandmother told me to look *down*, not out.", "[contrast]"},
    }));
    INFO(sample.why);
    CHECK(lightly_marked(without_marks(sample.marked)) == sample.marked);
}
