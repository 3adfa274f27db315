// The command line: a table of subcommands, each with its flags and its help. What they share
// (arguments, files, settings) is in job.h, how they look in render.h.
#pragma once

#include "base/result.h"

#include <iosfwd>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say::cli {

// Exit statuses, the same for every subcommand.
inline constexpr int status_clean = 0;
inline constexpr int status_findings = 1;
inline constexpr int status_failed = 2;

struct Flag {
    std::string_view name;  // "--pace"
    std::string_view value; // what follows it, for the help; empty for a switch
    std::string_view help;
};

struct Arguments {
    std::vector<std::string> files; // whatever is no flag
    std::map<std::string, std::vector<std::string>, std::less<>> flags;

    bool has(std::string_view flag) const { return flags.contains(flag); }
    // The last value given; nothing if the flag was not.
    std::optional<std::string> value(std::string_view flag) const;
};

struct Console {
    std::ostream& out;
    std::ostream& err;
    bool colour = false;
};

struct Command {
    std::string_view name;
    std::string_view arguments; // for the help: "FILE..."
    std::string_view summary;   // one line
    std::string_view help;      // paragraphs, may be empty
    std::vector<Flag> flags;
    int (*run)(const Arguments& arguments, Console& console) = nullptr;
};

extern const Command check_command;
extern const Command time_command;
extern const Command calibrate_command;
extern const Command format_command;
extern const Command mark_command;
extern const Command export_command;
extern const Command page_command;
extern const Command import_command;
extern const Command explain_command;
extern const Command docs_command;

// " (is it --fix?)" behind a name that nobody knows; nothing where none is near.
std::string perhaps(std::string_view written, std::span<const std::string_view> names);

Result<Arguments> parse_arguments(const Command& command, std::span<const std::string> words);

struct Program {
    std::string version;
    std::vector<const Command*> commands; // in the order of the help
};
// The subcommands of this folder; main adds the language server's.
std::vector<const Command*> commands();

int run(const Program& program, std::span<const std::string> words, Console& console);

} // namespace say::cli
