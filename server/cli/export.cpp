// sayline export: the script in the form that somebody else needs.
#include "cli/job.h"
#include "exporters/exporter.h"
#include "host/files.h"

#include <fmt/core.h>

#include <charconv>
#include <ostream>

namespace say::cli {
namespace {

// From what is still read in the hand to a few words on a page.
constexpr int fewest_points = 9;
constexpr int most_points = 72;

std::string target_names() {
    std::string names;
    for (const Exporter& exporter : exporters())
        names += fmt::format("{}{}", names.empty() ? "" : ", ", exporter.name);
    return names;
}

Result<const Exporter*> wanted_target(const Arguments& arguments) {
    const auto name = arguments.value("--to");
    if (!name) return Error{fmt::format("give --to and one of {}", target_names())};
    auto exporter = wanted_exporter(*name);
    if (!exporter) return Error{fmt::format("--to {}", exporter.error().message)};
    return exporter;
}

// A number that fills the whole value.
template <class Number> std::optional<Number> number_in(const std::string& written) {
    Number number{};
    const auto [end, error] =
        std::from_chars(written.data(), written.data() + written.size(), number);
    if (error != std::errc{} || end != written.data() + written.size()) return std::nullopt;
    return number;
}

Result<ExportOptions> wanted_options(const Arguments& arguments) {
    ExportOptions options;
    if (const auto line = arguments.value("--line")) {
        options.columns = number_in<int>(*line).value_or(0);
        if (options.columns < fewest_columns || options.columns > most_columns) {
            return Error{fmt::format("--line \"{}\": expected {} to {} characters", *line,
                                     fewest_columns, most_columns)};
        }
    }
    if (const auto points = arguments.value("--points")) {
        options.points = number_in<double>(*points).value_or(0);
        // Written so that what is no number fails too.
        if (!(options.points >= fewest_points && options.points <= most_points)) {
            return Error{fmt::format("--points \"{}\": expected {} to {}", *points, fewest_points,
                                     most_points)};
        }
    }
    if (const auto paper = arguments.value("--paper")) {
        if (*paper != "a4" && *paper != "letter")
            return Error{fmt::format("--paper \"{}\": expected a4 or letter", *paper)};
        options.letter = *paper == "letter";
    }
    options.notes = arguments.has("--notes");
    return options;
}

void export_one(Job& job, const Source& source, const Exporter& exporter,
                const ExportOptions& options, const std::optional<std::string>& file,
                Console& console) {
    const auto text = job.read_with_words(source);
    const auto analysis = text ? job.analyse(source, text) : nullptr;
    if (!analysis) return;
    const std::string made = exporter.write(*analysis, options);
    if (!file) {
        console.out << made;
        return;
    }
    if (const auto written = write_text(*file, made); !written)
        job.add_trouble({.file = "sayline", .message = written.error().message});
}

int run_export(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto exporter = wanted_target(arguments);
    const auto options = wanted_options(arguments);
    if (!exporter) job.add_trouble({.file = "sayline", .message = exporter.error().message});
    if (!options) job.add_trouble({.file = "sayline", .message = options.error().message});
    if (!job.failed()) {
        const std::vector<Source> sources = job.sources();
        if (sources.size() > 1) {
            job.add_trouble({.file = "sayline", .message = "give one script to export"});
        } else if (!sources.empty()) {
            export_one(job, sources.front(), **exporter, *options, arguments.value("--out"),
                       console);
        }
    }
    job.report(console);
    return job.failed() ? status_failed : status_clean;
}

std::vector<Flag> export_flags() {
    static const std::string names = target_names(); // the table's, for as long as the program runs
    std::vector<Flag> flags = {
        {"--to", "TARGET", names},
        {"--out", "FILE", "Where to write it (standard output)"},
        {"--line", "CHARACTERS", "How long a caption's line may be, 16 to 80 (42)"},
        {"--paper", "SIZE", "What print is laid out for: a4 or letter (a4)"},
        {"--points", "NUMBER", "How large its words are, 9 to 72 (16)"},
        {"--notes", {}, "Print the notes too, in the margin"}};
    for (Flag& flag : reading_flags())
        flags.push_back(flag);
    return flags;
}

} // namespace

const Command export_command = {
    .name = "export",
    .arguments = "SCRIPT|-",
    .summary = "Write the script in the form that somebody else needs",
    .help =
        "vtt and srt are captions at the script's own times, csv is a running order for the\n"
        "crew, ssml is markup for a speech synthesiser, page is a file that a browser shows in\n"
        "front of the lens: docs/reading-page.md. The times are an estimate: "
        "docs/exports.md says how good it is.",
    .flags = export_flags(),
    .run = run_export,
};

} // namespace say::cli
