// The program: the command line's subcommands and the language server's, in one table.
#include "base/log.h"
#include "cli/command.h"
#include "host/files.h"
#include "lsp/serve.h"

#include <exception>
#include <iostream>
#include <string>
#include <vector>

namespace {

constexpr const char* version = SAYLINE_VERSION;

int run_serve(const say::cli::Arguments& arguments, say::cli::Console& /*console*/) {
    if (arguments.has("--verbose")) say::log::start(say::log::Level::debug);
    return say::serve({.transport = say::ServeArguments::Transport::stdio,
                       .in_step = arguments.has("--in-step"),
                       .version = version});
}

const say::cli::Command serve_command = {
    .name = "serve",
    .arguments = "",
    .summary = "Run the language server on standard input and output",
    .help = "An editor starts this; docs/editors.md says how. The log goes to standard error.",
    .flags = {{"--stdio", {}, "Accepted since some editors add it; there is no other way"},
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
