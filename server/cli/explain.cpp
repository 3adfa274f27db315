// sayline explain: why a thought takes the time it takes, word by word, as JSON lines.
#include "cli/job.h"
#include "host/explain_json.h"
#include "host/files.h"
#include "text/unicode.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <iostream>
#include <ostream>

namespace say::cli {
namespace {

// Far above any thought: a line beyond it is some other kind of file.
constexpr std::size_t longest_line = std::size_t{1024} * 1024;

std::string explain_line(std::string_view line, bool plain, const Options& options,
                         Parser& parser) {
    if (line.find_first_not_of(" \t") == std::string_view::npos) return "{}";
    if (line.size() > longest_line) {
        return to_line(explain_error(
            fmt::format("{} bytes in one line; {} are the most", line.size(), longest_line)));
    }
    const std::size_t bad = unicode::first_invalid_utf8(line);
    if (bad != std::string_view::npos) {
        return to_line(explain_error(fmt::format("not UTF-8 at byte {}", bad + 1)));
    }
    return to_line(explain_thought(*analyse_line(line, plain, options, parser), options));
}

int explain_lines(const Arguments& arguments, Job& job, Console& console) {
    const bool only_input =
        arguments.files.empty() || (arguments.files.size() == 1 && arguments.files.front() == "-");
    if (!only_input) {
        job.add_trouble({.file = "sayline", .message = "--lines reads standard input, no files"});
    }
    const auto options = job.options({});
    job.report(console);
    if (!options || job.failed()) return status_failed;

    Parser parser;
    std::string line;
    while (std::getline(std::cin, line)) {
        if (line.ends_with('\r')) line.pop_back();
        console.out << explain_line(line, arguments.has("--plain"), *options, parser) << '\n';
        // Whoever asks line by line gets each answer at once; a whole file is not slowed down.
        if (std::cin.rdbuf()->in_avail() <= 0) console.out.flush();
    }
    return status_clean;
}

int run_explain(const Arguments& arguments, Console& console) {
    Job job(arguments);
    if (arguments.has("--lines")) return explain_lines(arguments, job, console);
    if (arguments.has("--plain")) {
        job.add_trouble({.file = "sayline", .message = "--plain goes with --lines"});
    }
    for (const Source& source : job.sources()) {
        if (job.failed() && arguments.has("--plain")) break;
        const auto text = job.read_with_words(source);
        const auto analysis = text ? job.analyse(source, text) : nullptr;
        job.report(console);
        if (!analysis) continue;
        explain_script(*analysis, [&](const nlohmann::ordered_json& item) {
            console.out << to_line(item) << '\n';
        });
    }
    job.report(console);
    return job.failed() ? status_failed : status_clean;
}

std::vector<Flag> explain_flags() {
    std::vector<Flag> flags = {
        {"--lines", {}, "Read standard input: each line is a thought of its own"},
        {"--plain", {}, "With --lines: nothing in the text is a mark"},
    };
    for (const Flag& flag : reading_flags())
        flags.push_back(flag);
    return flags;
}

} // namespace

const Command explain_command = {
    .name = "explain",
    .arguments = "SCRIPT|FOLDER|- ... | --lines",
    .summary = "Show where the seconds come from, word by word, as JSON lines",
    .help =
        "Prints one JSON object a thought: the spoken words, their sounds and times, the pauses,\n"
        "marks, breath groups and the likeliest tongue-twister. Gaps and silences of a script\n"
        "are items of their own. docs/explain.md describes the fields.",
    .flags = explain_flags(),
    .run = run_explain,
};

} // namespace say::cli
