// links: say_engine
// Three ordinary drafts without a mark (tests/drafts): an explainer, a news read and a lesson.
// While drafting, a writer hears of at most one thing in two thoughts.
#include "engine/analysis.h"
#include "support/catch.h"

#include <fstream>
#include <sstream>

using namespace say;

namespace {

std::shared_ptr<const Analysis> analysis_of(const std::string& name) {
    std::ifstream file(SAYLINE_SOURCE_DIR "/tests/drafts/" + name, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    Parser parser;
    Memo memo;
    const Document document{name, 1, std::make_shared<const Text>(text.str())};
    return analyse(document, Options{}, parser, memo, Cancel{});
}

} // namespace

TEST_CASE("drafts/are left in peace while they are written") {
    for (const std::string name : {"explainer.say", "news.say", "lesson.say"}) {
        INFO(name);
        const auto analysis = analysis_of(name);
        CHECK(analysis->options.stage == Stage::draft);
        CHECK(analysis->script.words >= 300);
        CHECK(analysis->script.words <= 600);
        CHECK(analysis->findings.size() * 2 <= analysis->script.thoughts.size());
    }
}
