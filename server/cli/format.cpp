// sayline format: one way to write the marks; no spoken word changes and a second run changes
// nothing.
#include "cli/rewrite.h"
#include "features/features.h"

namespace say::cli {
namespace {

int run_format(const Arguments& arguments, Console& console) {
    return rewrite({.done = "formatted", .edits = say::format}, arguments, console);
}

} // namespace

const Command format_command = {
    .name = "format",
    .arguments = "SCRIPT|FOLDER|- ...",
    .summary = "Write marks and blanks in one way",
    .help = "Prints the script as the formatter writes it. Spoken words never change, lines are\n"
            "neither wrapped nor joined, and a second run changes nothing.",
    .flags = {write_flag, check_flag, as_flag},
    .run = run_format,
};

} // namespace say::cli
