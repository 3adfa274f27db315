// The language server as a process: bytes in, bytes out, exit status.
#pragma once

#include <string>

namespace say {

struct ServeArguments {
    enum class Transport { stdio } transport = Transport::stdio;
    // Analyses between messages on the one thread instead of beside them: recorded sessions and
    // tests then always see the same order.
    bool in_step = false;
    std::string version; // of the program, as clients are told
};

// Serves one client until it says exit, its input ends or its process dies.
// 0 after a shutdown, 1 otherwise, as the protocol says.
int serve(const ServeArguments& arguments);

} // namespace say
