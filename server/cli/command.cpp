// Finds the subcommand, reads its arguments, prints help.
#include "cli/command.h"

#include "rules/nearest.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace say::cli {
namespace {

constexpr Flag help_flag{"--help", {}, "Show this help"};

const Flag* find_flag(const Command& command, std::string_view name) {
    for (const Flag& flag : command.flags) {
        if (flag.name == name) return &flag;
    }
    return name == help_flag.name || name == "-h" ? &help_flag : nullptr;
}

void print_flags(std::span<const Flag> flags, std::ostream& out) {
    std::size_t width = 0;
    const auto shape = [](const Flag& flag) {
        return flag.value.empty() ? std::string(flag.name)
                                  : fmt::format("{} {}", flag.name, flag.value);
    };
    for (const Flag& flag : flags)
        width = std::max(width, shape(flag).size());
    for (const Flag& flag : flags) {
        out << fmt::format("  {:{}}  {}\n", shape(flag), width, flag.help);
    }
}

void print_help(const Command& command, std::ostream& out) {
    out << fmt::format("sayline {} {}\n\n{}.\n", command.name, command.arguments, command.summary);
    if (!command.help.empty()) out << '\n' << command.help << '\n';
    out << "\nFlags:\n";
    std::vector<Flag> flags = command.flags;
    flags.push_back(help_flag);
    print_flags(flags, out);
}

void print_help(const Program& program, std::ostream& out) {
    out << "sayline COMMAND ...\n\n"
           "Times and checks scripts that are spoken to a camera (.say files).\n\nCommands:\n";
    for (const Command* command : program.commands) {
        out << fmt::format("  {:9}  {}\n", command->name, command->summary);
    }
    out << "\nFlags:\n  --help     Show this help; after a command, the command's\n"
           "  --version  Show the version\n\n"
           "Exit status: 0 nothing found, 1 something found, 2 the job could not be done.\n";
}

int complain(const std::string& message, Console& console) {
    console.err << "sayline: " << message << '\n';
    return status_failed;
}

} // namespace

std::optional<std::string> Arguments::value(std::string_view flag) const {
    const auto found = flags.find(flag);
    if (found == flags.end() || found->second.empty()) return std::nullopt;
    return found->second.back();
}

namespace {

Error no_flag(const Command& command, const std::string& name) {
    std::vector<std::string_view> names{help_flag.name};
    for (const Flag& flag : command.flags)
        names.push_back(flag.name);
    std::error_code error;
    if (std::filesystem::exists(name, error)) {
        return Error{fmt::format("{} is taken for a flag; name the file ./{}", name, name)};
    }
    return Error{fmt::format("{} has no flag {}{}; see sayline {} --help", command.name, name,
                             perhaps(name, names), command.name)};
}

} // namespace

std::string perhaps(std::string_view written, std::span<const std::string_view> names) {
    const std::string lower = ascii::lower(written);
    const std::string_view near = rules::nearest(lower, names);
    return near.empty() ? std::string{} : fmt::format(" (is it {}?)", near);
}

Result<Arguments> parse_arguments(const Command& command, std::span<const std::string> words) {
    Arguments arguments;
    bool flags_over = false;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        // A lone "-" is standard input; what follows "--" is a file whatever it looks like.
        if (flags_over || word == "-" || !word.starts_with('-')) {
            arguments.files.push_back(word);
            continue;
        }
        if (word == "--") {
            flags_over = true;
            continue;
        }
        const auto equals = word.find('=');
        const std::string name = word.substr(0, equals);
        const Flag* flag = find_flag(command, name);
        if (!flag) return no_flag(command, name);
        std::vector<std::string>& values = arguments.flags[std::string(flag->name)];
        const bool joined = equals != std::string::npos;
        if (flag->value.empty()) {
            if (joined) return Error{fmt::format("{} takes no value", name)};
        } else if (joined) {
            values.push_back(word.substr(equals + 1));
        } else if (i + 1 < words.size()) {
            values.push_back(words[++i]);
        } else {
            return Error{fmt::format("{} needs a value: {} {}", name, name, flag->value)};
        }
    }
    return arguments;
}

std::vector<const Command*> commands() {
    return {&import_command, &check_command,  &time_command, &calibrate_command, &format_command,
            &mark_command,   &export_command, &page_command, &explain_command,   &docs_command};
}

int run(const Program& program, std::span<const std::string> words, Console& console) {
    if (words.empty()) {
        print_help(program, console.err);
        return status_failed;
    }
    const std::string& name = words.front();
    if (name == "--help" || name == "-h" || name == "help") {
        print_help(program, console.out);
        return status_clean;
    }
    if (name == "--version") {
        console.out << "sayline " << program.version << '\n';
        return status_clean;
    }
    const auto found = std::find_if(program.commands.begin(), program.commands.end(),
                                    [&](const Command* row) { return row->name == name; });
    if (found == program.commands.end()) {
        std::vector<std::string_view> names;
        names.reserve(program.commands.size());
        for (const Command* row : program.commands)
            names.push_back(row->name);
        return complain(fmt::format("no command is called \"{}\"{}; see sayline --help", name,
                                    perhaps(name, names)),
                        console);
    }
    const Command& command = **found;
    const auto arguments = parse_arguments(command, words.subspan(1));
    if (!arguments) return complain(arguments.error().message, console);
    if (arguments->has("--help")) {
        print_help(command, console.out);
        return status_clean;
    }
    return command.run(*arguments, console);
}

} // namespace say::cli
