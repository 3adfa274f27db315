// sayline mark: a first, light marking, as a reader would likely do it.
#include "cli/rewrite.h"
#include "features/features.h"

namespace say::cli {
namespace {

std::vector<TextEdit> mark_lightly(const Analysis& analysis) {
    return edits_of(analysis, Sweep::mark);
}

int run_mark(const Arguments& arguments, Console& console) {
    return rewrite({.done = "marked", .edits = mark_lightly}, arguments, console);
}

} // namespace

const Command mark_command = {
    .name = "mark",
    .arguments = "SCRIPT|FOLDER|- ...",
    .summary = "Put in the few marks that a reader would likely follow",
    .help = "Prints the script with one stress a sentence and a breath in what is long, where a\n"
            "reader would likely do so unasked. It is a beginning, to be changed by ear: marks\n"
            "that are there are never touched, and a second run adds nothing.",
    .flags = {write_flag, check_flag, as_flag},
    .run = run_mark,
};

} // namespace say::cli
