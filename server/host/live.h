// Serves a page on this machine alone and tells it of every save: of its script, and of the
// settings, readers and word lists that the script is read with. The practice page is beside it.
#pragma once

#include "base/result.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace say {

struct LiveText {
    std::string page;                            // HTML, for who comes to the address
    std::string json;                            // one line, for who is there already
    std::string practice;                        // HTML, for who comes to "practice" below it
    std::vector<std::filesystem::path> lexicons; // that it was read with, there or not
};

struct LiveJob {
    std::filesystem::path file;                  // the script; looked at several times a second
    std::uint16_t port = 0;                      // 0: any that is free
    std::function<Result<LiveText>()> render;    // the file as it is now
    std::function<void(std::string_view)> ready; // called once, with the address
    std::function<void(std::string_view)> say_result; // of each save: empty, or what is wrong
};

// Runs until the process is told to end (SIGINT, SIGTERM). An error if the first rendering fails or
// the port cannot be had; later, what cannot be read leaves the last good page standing.
Result<void> serve_live(const LiveJob& job);

// True for what a browser on this machine sends as Host when it was given our address. Any other
// name leads here by a trick: a stranger's page whose name was made to point at this machine. The
// port may be another: an editor that works on a far machine passes the page on to the near one.
bool is_own_host(std::string_view host);
// The same of an address with our port: what a page of ours names as its origin.
bool is_own_address(std::string_view address, std::uint16_t port);

} // namespace say
