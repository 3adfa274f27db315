// The program: the command line's subcommands and the language server's, in one table.
#include "base/log.h"
#include "base/result.h"
#include "cli/command.h"
#include "host/files.h"
#include "lsp/serve.h"

#include <charconv>
#include <cstdint>
#include <exception>
#include <iostream>
#include <limits>
#include <optional>
#include <string>
#include <system_error>
#include <vector>

namespace {

constexpr const char* version = SAYLINE_VERSION;

// A whole number from 1 to `most`; nothing for anything else.
std::optional<int> read_number(const std::string& written, int most) {
    int number = 0;
    const char* const end = written.data() + written.size();
    const auto [rest, error] = std::from_chars(written.data(), end, number);
    if (error != std::errc{} || rest != end || number < 1 || number > most) return std::nullopt;
    return number;
}

say::Result<say::ServeArguments> read_serve(const say::cli::Arguments& arguments) {
    using Transport = say::ServeArguments::Transport;
    say::ServeArguments serve;
    serve.in_step = arguments.has("--in-step");
    serve.version = version;
    if (arguments.has("--stdio") + arguments.has("--socket") + arguments.has("--pipe") > 1) {
        return say::Error{"give one of --stdio, --socket and --pipe"};
    }
    if (const auto written = arguments.value("--socket")) {
        const auto port = read_number(*written, std::numeric_limits<std::uint16_t>::max());
        if (!port) {
            return say::Error{"--socket " + *written +
                              ": a port is a whole number from 1 to 65535"};
        }
        serve.transport = Transport::socket;
        serve.port = static_cast<std::uint16_t>(*port);
    }
    if (const auto written = arguments.value("--pipe")) {
        if (written->empty()) return say::Error{"--pipe needs the path of a Unix domain socket"};
        serve.transport = Transport::pipe;
        serve.path = *written;
    }
    if (const auto written = arguments.value("--clientProcessId")) {
        serve.client_process = read_number(*written, std::numeric_limits<int>::max());
        if (!serve.client_process) {
            return say::Error{"--clientProcessId " + *written +
                              ": a process is a whole number from 1"};
        }
    }
    return serve;
}

int run_serve(const say::cli::Arguments& arguments, say::cli::Console& console) {
    if (arguments.has("--verbose")) say::log::start(say::log::Level::debug);
    const auto serve = read_serve(arguments);
    if (!serve) {
        console.err << "sayline: " << serve.error().message << '\n';
        return say::cli::status_failed;
    }
    return say::serve(*serve);
}

const say::cli::Command serve_command = {
    .name = "serve",
    .arguments = "",
    .summary = "Run the language server",
    .help = "An editor starts this; docs/editors.md says how. The log goes to standard error.",
    .flags = {{"--stdio", {}, "Speak on standard input and output, as without any flag"},
              {"--socket", "PORT", "Speak to the client that listens on this machine's PORT"},
              {"--pipe", "PATH", "Speak to the client that listens on this Unix domain socket"},
              {"--clientProcessId", "N", "End when process N, the client, ends"},
              {"--in-step", {}, "Analyse between messages, for recorded sessions"},
              {"--verbose", {}, "Log each request"}},
    .run = run_serve,
};

} // namespace

int main(int argc, char** argv) {
    // Before anything else: the log must never write to standard output.
    say::log::start(say::log::Level::info);
    std::ios::sync_with_stdio(false);
    say::cli::Console console{.out = std::cout,
                              .err = std::cerr,
                              .colour = say::is_terminal_output() && !say::colour_unwanted()};
    try {
        say::cli::Program program{.version = version, .commands = say::cli::commands()};
        program.commands.push_back(&serve_command);
        const std::vector<std::string> words(argv + 1, argv + argc);
        const int status = say::cli::run(program, words, console);
        console.out.flush();
        if (console.out) return status;
        console.err << "sayline: the output could not be written\n";
    } catch (const std::exception& bug) {
        console.err << "sayline: stopped by a fault of its own: " << bug.what() << '\n';
    }
    return say::cli::status_failed;
}
