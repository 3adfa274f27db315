// links: say_syntax
// Times as people write them. Running times in news rundowns are written m:ss and :ss (common
// practice, no source); a stroke of metres is no time.
#include "syntax/header.h"

#include "support/catch.h"

using namespace say;

namespace {

double held_by(std::string_view direction) {
    const auto time = ending_time(direction);
    return time ? time->seconds.count() : 0;
}

} // namespace

TEST_CASE("header/a direction holds the time that it ends with") {
    for (const auto& [written, seconds] :
         std::initializer_list<std::pair<const char*, double>>{{"clip: the tide 4s", 4},
                                                               {"clip:4s", 4},
                                                               {"VT: hall, 22 secs", 22},
                                                               {"VT: hall, 22 Secs.", 22},
                                                               {"wait 3 sec", 3},
                                                               {"hold\n2s", 2},
                                                               {"hold 90 seconds", 90},
                                                               {"music 1 min 30 secs", 90},
                                                               {"music 1m30s", 90},
                                                               {"take 2 minutes", 120},
                                                               {"VT 0:22", 22},
                                                               {"VT :22", 22},
                                                               {":22", 22},
                                                               {"0:05", 5},
                                                               {"5s", 5}}) {
        INFO(written);
        CHECK(held_by(written) == seconds);
    }
    for (const char* written : {"smile", "page 2", "look at 10:30", "on at 9:30", "step back 2 m",
                                "0:00", "wait 0s", "2 sec pause", "", ":", "seconds", "10:22 h"}) {
        INFO(written);
        CHECK_FALSE(ending_time(written).has_value());
    }
    CHECK(ending_time("clip: low tide.mp4 22 secs")->words == "clip: low tide.mp4");
    CHECK(ending_time("5s")->words.empty());
}

TEST_CASE("header/targets take the same units") {
    CHECK(parse_target("2 min 30 sec") == parse_target("2:30"));
    CHECK(parse_target("20 secs") == Target{Seconds{20}, Seconds{20}});
    CHECK(parse_target(":10") == Target{Seconds{10}, Seconds{10}});
    CHECK(parse_target("2 minutes max") == Target{Seconds{0}, Seconds{120}});
    CHECK_FALSE(parse_target("2 max").has_value());
    CHECK_FALSE(parse_target("2 m").has_value());
    CHECK_FALSE(parse_target("1:75").has_value());
}

// A web address and a time of day are no keys. Common practice, no source.
TEST_CASE("header/a key of one word needs no blank behind its colon") {
    const Header header = parse_header("---\ntitle:Limpets\ntarget:2:00\n---\nHello.");
    CHECK(header.closed);
    CHECK(header.title == "Limpets");
    REQUIRE(header.target.has_value());
    CHECK(header.target->high == Seconds{120});
    CHECK(parse_header("---\nhttps://example.org\n---").entries.empty());
    CHECK(parse_header("---\nAt 10:30 we walk.\n---").entries.empty());
}
