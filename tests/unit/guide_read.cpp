// links: say_host say_exporters say_fixtures
// The guide read against the script's own times, whatever stands in the script. What it sounds like
// is measured in tests/exports/guide_read.py.
#include "exporters/guide_read.h"

#include "speech/machine_voice.h"
#include "support/catch.h"
#include "support/fixture.h"

#include <algorithm>
#include <cmath>
#include <random>

using namespace say;

namespace {

std::shared_ptr<const Analysis> analysed(std::string_view text) {
    return test::analyse_text(text, Options{});
}

struct Heard {
    std::vector<std::int16_t> samples;
    double seconds = 0;
    std::size_t largest_part = 0; // bytes
};

std::uint32_t number_at(std::string_view bytes, std::size_t at) {
    std::uint32_t number = 0;
    for (std::size_t i = 4; i-- > 0;)
        number = number * 256 + static_cast<unsigned char>(bytes[at + i]);
    return number;
}

Heard hear(const Analysis& analysis, std::size_t first = 0, std::size_t last = SIZE_MAX) {
    GuideRead read(analysis, first, last);
    const std::string head = read.head();
    std::string data;
    Heard heard{.samples = {}, .seconds = read.seconds().count()};
    while (!read.done()) {
        const std::string part = read.next();
        REQUIRE(!part.empty());
        heard.largest_part = std::max(heard.largest_part, part.size());
        data += part;
    }
    CHECK(read.share_done() == 1);
    // RIFF: the sizes in the head are those of the file and of its samples.
    CHECK(number_at(head, 4) + 8 == head.size() + data.size());
    CHECK(number_at(head, head.size() - 4) == data.size());
    for (std::size_t i = 0; i + 1 < data.size(); i += 2) {
        heard.samples.push_back(static_cast<std::int16_t>(
            static_cast<unsigned char>(data[i]) | (static_cast<unsigned char>(data[i + 1]) << 8U)));
    }
    return heard;
}

// To a sample.
void check_length(const Analysis& analysis) {
    const double seconds = analysis.script.timing.expected.count();
    const double heard = static_cast<double>(hear(analysis).samples.size()) / samples_a_second;
    CHECK(std::abs(heard - seconds) <= 1.0 / samples_a_second);
}

bool is_silent(const Heard& heard) {
    return std::all_of(heard.samples.begin(), heard.samples.end(),
                       [](std::int16_t sample) { return sample == 0; });
}

} // namespace

TEST_CASE("guide read/it lasts as long as the script, whatever stands in it") {
    for (const char* text :
         {"Hello.\n", "% a note\n", "[smile]\n", "[clip: the tide 4s]\n", "# A heading\n",
          "We wait (2.5) and count xx to 1,250.\n\n- one\n- two\n\n[hold 3s]\n\nDone?\n",
          "\xF0\x9F\x90\x9A\n", "\xE8\xB4\x9D \xE5\xA3\xB3 counts.\n", "Zzyzx{ZHUHNG-zhuhng} hm.\n",
          "NASA and the F-B-I, e.g. at https://example.org/a-b?c=1 on 14 May 2026.\n",
          "So:::: slow, <very very slow>, >and quick<.\n"}) {
        INFO(text);
        check_length(*analysed(text));
    }
    std::string long_one;
    for (int i = 0; i < 2000; ++i)
        long_one += "limpets ";
    const auto analysis = analysed(long_one + "\n");
    check_length(*analysis);
    CHECK(hear(*analysis).largest_part < std::size_t{4} * 1024 * 1024);
}

TEST_CASE("guide read/random scripts keep their length") {
    const std::vector<std::string> pieces = {"limpets",
                                             "*shore*",
                                             "**never**",
                                             "~softly~",
                                             "(by the way)",
                                             "\"go,\"",
                                             ">quickly<",
                                             "<slowly>",
                                             "so::",
                                             "^up",
                                             "\u2191higher",
                                             "lower\u2193",
                                             "up\u2197",
                                             "down\u2198",
                                             "...",
                                             "xx",
                                             "/",
                                             "//",
                                             "(.)",
                                             "(0.7)",
                                             "[smile]",
                                             "[hold 1s]",
                                             "1,250",
                                             "14 May",
                                             "Dr. Bell",
                                             "A.M.",
                                             "NASA",
                                             "\xC3\xA9t\xC3\xA9",
                                             "Patella{puh-TEHL-uh}",
                                             "8:30{= half past eight}",
                                             "x",
                                             ".",
                                             "?",
                                             ",",
                                             ";",
                                             "\n\n",
                                             "\n\n- ",
                                             "\n\n# Part\n\n",
                                             "\n\n[wait 2s]\n\n"};
    for (unsigned seed = 0; seed < 60; ++seed) {
        std::mt19937 random(seed);
        std::string text;
        for (int i = 0; i < 60; ++i)
            text += pieces[random() % pieces.size()] + " ";
        INFO("seed " << seed);
        check_length(*analysed(text + "\n"));
    }
}

TEST_CASE("guide read/a part begins with its first thought and ends with its last") {
    const auto analysis = analysed("One limpet.\n\nTwo limpets sit here.\n\nThree.\n");
    const auto& thoughts = analysis->script.thoughts;
    const Heard second = hear(*analysis, 1, 2);
    CHECK(second.seconds ==
          Approx(thoughts[1].thought->reading.timing.expected.count()).margin(1e-4));
    const Heard both = hear(*analysis, 0, 2);
    const auto gap_at = static_cast<std::size_t>(
        (thoughts[0].thought->reading.timing.expected.count() + 0.01) * samples_a_second);
    CHECK(std::all_of(both.samples.begin() + static_cast<std::ptrdiff_t>(gap_at),
                      both.samples.begin() + static_cast<std::ptrdiff_t>(gap_at) + 8000,
                      [](std::int16_t sample) { return sample == 0; }));
    CHECK(hear(*analysis, 3, 9).samples.empty());
    CHECK_FALSE(is_silent(second));
}

TEST_CASE("guide read/what has no sound is silence") {
    CHECK(is_silent(hear(*analysed("[clip: the tide 4s]\n"))));
    CHECK(hear(*analysed("% nobody says this\n")).samples.empty());
}

TEST_CASE("guide read/more than a WAVE file can hold is refused") {
    // 4,294,967,295 bytes at 32,000 a second are 37.3 hours.
    std::string hours;
    for (int i = 0; i < 600; ++i)
        hours += "[wait 300s]\n\n";
    const auto analysis = analysed(hours);
    const double total = analysis->script.timing.expected.count() / 3600;
    INFO(total << " hours");
    const GuideRead read(*analysis, 0, analysis->script.thoughts.size());
    CHECK(read.check().has_value() == (total < 37.2));
    CHECK(total > 38);
}

TEST_CASE("machine voice/sounds last as they are told to, joined or not") {
    // No recording joins these two: English has no word with them (the phones of the dictionary).
    const std::vector<TimedPhone> odd = {{{Sound::ZH, 0}, Seconds{0.1}},
                                         {{Sound::NG, 0}, Seconds{0.1}},
                                         {{Sound::AH, 0}, Seconds{0.1}},
                                         {{Sound::HH, 0}, Seconds{0.1}}};
    const std::vector<PitchPoint> level = {{Seconds{0}, 100}};
    CHECK(machine_voice(odd, level).size() == 6400);
    CHECK(machine_voice({}, level).empty());
    const std::vector<std::int16_t> mute = machine_voice(odd, {});
    CHECK(std::count(mute.begin(), mute.end(), 0) == 6400);
    // Far outside what a voice can do: the pitch is kept where the recordings hold together.
    const std::vector<PitchPoint> wild = {{Seconds{0}, -5}, {Seconds{0}, 1e9}, {Seconds{9}, 0}};
    CHECK(machine_voice(odd, wild).size() == 6400);
}
