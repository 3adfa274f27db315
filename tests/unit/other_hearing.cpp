// links: say_speech
// Phrases that may be cut in another place. Those whose two hearings are well known: common
// practice, no source.
#include "speech/other_hearing.h"

#include "speech/lexicon.h"
#include "support/catch.h"

#include <deque>

using namespace say;

namespace {

// The words of a phrase with their sounds; keeps both alive.
struct Phrase {
    std::deque<std::string> texts;
    std::deque<Phones> phones;
    std::vector<TwisterWord> words;

    explicit Phrase(std::string_view phrase) {
        while (!phrase.empty()) {
            const std::size_t end = std::min(phrase.find(' '), phrase.size());
            texts.emplace_back(phrase.substr(0, end));
            phones.push_back(pronounce(texts.back()).phones);
            words.push_back({texts.back(), phones.back()});
            phrase.remove_prefix(std::min(phrase.size(), end + 1));
        }
    }
};

std::string heard(std::string_view phrase) {
    const Phrase words(phrase);
    return other_hearing(words.words, words.words.size() - 1).value_or("");
}

} // namespace

TEST_CASE("other_hearing/finds the other phrase") {
    CHECK(heard("grey tape") == "great ape");
    CHECK(heard("great ape") == "gray tape");
    CHECK(heard("night rate") == "nitrate");
    CHECK(heard("ice cream") == "I scream");
    CHECK(heard("i scream") == "ice cream");
    CHECK(heard("peace talks") == "pea stalks");
    CHECK(heard("mint spy") == "mince pie");
    // a phrase of ordinary talk, whose other cut nobody would say
    for (const char* phrase : {"to think", "use it", "like an", "we can't", "for my", "the tide",
                               "limpet count", "grey stone", "we had ice cream"}) {
        INFO(phrase);
        CHECK(heard(phrase).empty());
    }
}
