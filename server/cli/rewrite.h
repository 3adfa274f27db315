// Subcommands that write a script anew: they print it, or change the file where that is asked for.
#pragma once

#include "cli/command.h"
#include "cli/job.h"
#include "engine/analysis.h"

#include <string_view>
#include <vector>

namespace say::cli {

struct Rewriting {
    std::string_view done; // "formatted": what is said of a file that was changed
    std::vector<TextEdit> (*edits)(const Analysis& analysis) = nullptr;
};

inline constexpr Flag write_flag{"--write", {}, "Write it to the file instead of printing it"};
inline constexpr Flag check_flag{
    "--check", {}, "Only say which files would change; exit with 1 if any would"};

int rewrite(const Rewriting& rewriting, const Arguments& arguments, Console& console);

} // namespace say::cli
