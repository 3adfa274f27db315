// sayline time: how long the script, its sections and its thoughts take to say.
#include "cli/job.h"
#include "cli/json.h"
#include "cli/render.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <ostream>

namespace say::cli {
namespace {

constexpr int bar_width = 20;
constexpr int thought_level = 4;
constexpr std::size_t longest_name = 56; // code points

std::string shortened(std::string_view name) {
    std::string plain = printable(name);
    if (unicode::count_code_points(plain) <= longest_name) return plain;
    std::size_t end = 0;
    for (std::size_t i = 0; i + 2 < longest_name; ++i)
        end += unicode::decode(plain, end).size;
    return plain.substr(0, end) + " …";
}

std::string against_target(const TimeRow& row) {
    if (!row.target) return {};
    std::string text = fmt::format("of {}", format_target(*row.target));
    if (row.off > Seconds{0}) text += fmt::format(", {} over", format_seconds(row.off));
    if (row.off < Seconds{0}) text += fmt::format(", {} short", format_seconds(-row.off));
    return text;
}

void print_row(const TimeRow& row, const Paint& paint, std::ostream& out) {
    constexpr std::size_t column = bar_width + bar_width / 2; // a bar and what it may be over
    const bool thought = row.level == thought_level;
    const Seconds end = row.at + row.timing.expected;
    const std::string drawn =
        row.target ? bar(row.timing.expected, row.target->high, bar_width) : std::string{};
    const std::string clock = fmt::format("{:>6} {:>6}  {:>7}", format_clock(row.at),
                                          format_clock(end), format_seconds(row.timing.expected));
    const int indent = thought ? 4 : 2 * (std::max(row.level, 1) - 1);
    std::string name = std::string(static_cast<std::size_t>(indent), ' ') + shortened(row.name);
    if (!thought) name = paint.strong(name);
    std::string line = fmt::format(
        "{}  {}{}  {}", clock, row.off > Seconds{0} ? paint.alarm(drawn) : paint.calm(drawn),
        std::string(drawn.size() < column ? column - drawn.size() : 0, ' '), name);
    const std::string note = against_target(row);
    if (!note.empty()) line += "  " + (row.off != Seconds{0} ? paint.alarm(note) : note);
    out << line << '\n';
}

void print_timed(const Timed& timed, const Paint& paint, std::ostream& out) {
    const Script& script = timed.analysis->script;
    out << paint.strong(timed.file) << ": " << format_seconds(script.timing.expected) << ", "
        << format_range(script.timing) << ", "
        << counted(static_cast<std::size_t>(script.words), "word") << '\n';
    for (const TimeRow& row : timed.rows) {
        if (row.level != 0 || !row.target) continue;
        out << "  " << bar(script.timing.expected, row.target->high, bar_width) << "  "
            << against_target(row) << '\n';
    }
    if (timed.rows.size() > 1) out << paint.faint("    in    out     time\n");
    for (const TimeRow& row : timed.rows) {
        if (row.level > 0) print_row(row, paint, out);
    }
}

int run_time(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto json = wants_json(arguments);
    if (!json) {
        job.add_trouble({.file = "sayline", .message = json.error().message});
        job.report(console);
        return status_failed;
    }
    const Paint paint(console.colour);
    std::vector<Timed> files;
    for (const Source& source : job.sources()) {
        const auto text = job.read_with_words(source);
        const auto analysis = text ? job.analyse(source, text) : nullptr;
        if (!*json) job.report(console);
        if (!analysis) continue;
        Timed timed{source.name, analysis, times(*analysis, !arguments.has("--sections"))};
        if (!*json) {
            if (!files.empty()) console.out << '\n';
            print_timed(timed, paint, console.out);
        }
        files.push_back(std::move(timed));
    }
    if (*json) {
        console.out << time_json(files, job.trouble());
    } else {
        job.report(console);
    }
    return job.failed() ? status_failed : status_clean;
}

std::vector<Flag> time_flags() {
    std::vector<Flag> flags = {{"--sections", {}, "Leave the thoughts out"}, as_flag};
    for (const Flag& flag : reading_flags())
        flags.push_back(flag);
    return flags;
}

} // namespace

const Command time_command = {
    .name = "time",
    .arguments = "SCRIPT|FOLDER|- ...",
    .summary = "Show how long it takes to say",
    .help =
        "Prints the script's time and its likely range, then for each section and thought when\n"
        "it begins and ends on the clock and how long it takes. Where a target is set a bar\n"
        "shows how much of it is used: # used, . free, + over.",
    .flags = time_flags(),
    .run = run_time,
};

} // namespace say::cli
