// sayline time: how long the script, its sections and its thoughts take to say.
#include "cli/job.h"
#include "cli/json.h"
#include "cli/render.h"
#include "engine/ear.h"
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

// A stretch a line; what is over the formula's limit stands out. True if it is.
bool print_ear_row(std::string_view name, int indent, const EarFigures& figures, const Paint& paint,
                   std::ostream& out) {
    if (figures.words_a_minute <= 0) return false;
    std::string easy = fmt::format("{:>6.1f}", figures.easy_listening);
    easy = figures.hard_to_follow() ? paint.alarm(easy + "!") : easy + " ";
    out << fmt::format("{} {:>5.0f} {:>6.1f} {:>8.1f} {:>7.1f} {:>8.1f} {:>7.0f} {:>9.1f}  {}{}\n",
                       easy, figures.words_a_thought, figures.seconds_a_thought.count(),
                       figures.stressed_a_minute, figures.marked_pauses_a_minute,
                       figures.written_pauses_a_minute, figures.words_a_minute,
                       figures.syllables_a_second,
                       std::string(static_cast<std::size_t>(indent), ' '), shortened(name));
    return figures.hard_to_follow();
}

void print_ear(const Timed& timed, const Paint& paint, std::ostream& out) {
    const Script& script = timed.analysis->script;
    out << '\n'
        << paint.faint("  easy   a thought     stresses    pauses a minute    words syllables\n"
                       "listening words seconds a minute  marked  written a minute  a second\n");
    bool hard = print_ear_row("the whole", 0, ear_of(script), paint, out);
    for (const Section& section : script.sections)
        hard |= print_ear_row(section.name, 2 * section.level, ear_of(script, section), paint, out);
    if (hard) {
        out << fmt::format(
            "! over {:.0f}: hard to follow by ear; shorter sentences or words mend it\n",
            EarFigures::easy_listening_limit);
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
            if (arguments.has("--ear")) print_ear(timed, paint, console.out);
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
    std::vector<Flag> flags = {{"--sections", {}, "Leave the thoughts out"},
                               {"--ear", {}, "Add what a listener meets, by section"},
                               as_flag};
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
        "shows how much of it is used: # used, . free, + over. docs/timing.md says what the "
        "figures\n"
        "for the ear mean.",
    .flags = time_flags(),
    .run = run_time,
};

} // namespace say::cli
