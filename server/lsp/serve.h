// The language server as a process: bytes in, bytes out, exit status.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

namespace say {

struct ServeArguments {
    // Where the client is: on standard input and output, or listening for us, on a port of this
    // machine's loopback address or on a Unix domain socket.
    enum class Transport { stdio, socket, pipe } transport = Transport::stdio;
    std::uint16_t port = 0; // of a socket
    std::string path;       // of a pipe
    // The client's process, whose end is ours; nothing if only `initialize` says it.
    std::optional<int> client_process;
    // Analyses between messages on the one thread instead of beside them: recorded sessions and
    // tests then always see the same order.
    bool in_step = false;
    std::string version; // of the program, as clients are told
};

// Serves one client until it says exit, its input ends or its process dies.
// 0 after a shutdown, 1 otherwise, as the protocol says; 2 where no client listens.
int serve(const ServeArguments& arguments);

} // namespace say
