// sayline export: the script in the form that somebody else needs.
#include "cli/job.h"
#include "exporters/exporter.h"
#include "host/files.h"

#include <fmt/core.h>

#include <charconv>
#include <chrono>
#include <filesystem>
#include <ostream>

namespace say::cli {
namespace {

// From what is still read in the hand to a few words on a page.
constexpr int fewest_points = 9;
constexpr int most_points = 72;

Result<const Exporter*> wanted_target(const Arguments& arguments) {
    const auto name = arguments.value("--to");
    if (!name) return Error{fmt::format("give --to and one of {}", exporter_names())};
    auto exporter = wanted_exporter(*name);
    if (!exporter) return Error{fmt::format("--to {}", exporter.error().message)};
    return exporter;
}

// How far a long export is, where somebody watches; what is made at once shows nothing.
class Progress {
public:
    explicit Progress(Console& console) : err_(is_terminal_error() ? &console.err : nullptr) {}
    ~Progress() {
        if (percent_ > 0) *err_ << "\r     \r" << std::flush;
    }
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;

    void show(double done) {
        constexpr std::chrono::milliseconds patience{500};
        const int percent = static_cast<int>(100 * done);
        if (err_ == nullptr || percent == percent_ || Clock::now() - begin_ < patience) return;
        percent_ = percent;
        *err_ << fmt::format("\r{:3} %", percent) << std::flush;
    }

private:
    using Clock = std::chrono::steady_clock;

    std::ostream* err_; // null where nobody watches
    Clock::time_point begin_ = Clock::now();
    int percent_ = 0;
};

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

// Where it goes.
struct Target {
    std::filesystem::path file;
    bool replace = false; // what stands beside it
};

std::optional<Target> wanted_file(const Arguments& arguments) {
    const auto file = arguments.value("--out");
    if (!file) return std::nullopt;
    return Target{*file, arguments.has("--replace")};
}

Result<void> to_file(const Exporter& exporter, const Analysis& analysis,
                     const ExportOptions& options, const std::filesystem::path& file,
                     Progress& progress) {
    if (exporter.stream == nullptr) return write_text(file, exporter.write(analysis, options));
    auto made = NewFile::begin(file);
    if (!made) return made.error();
    const auto whole = exporter.stream(analysis, options, [&](std::string_view bytes, double done) {
        progress.show(done);
        return made->add(bytes);
    });
    return whole ? made->finish() : whole;
}

Result<void> to_output(const Exporter& exporter, const Analysis& analysis,
                       const ExportOptions& options, Console& console) {
    if (exporter.stream == nullptr) {
        console.out << exporter.write(analysis, options);
        return {};
    }
    if (is_terminal_output())
        return Error{fmt::format("give --out FILE: {} is nothing for a terminal", exporter.name)};
    return exporter.stream(analysis, options, [&](std::string_view bytes, double /*done*/) {
        return static_cast<bool>(console.out.write(bytes.data(), std::ssize(bytes)));
    });
}

// The captions of a sound, where players look for them: the same name with another ending.
std::filesystem::path beside(std::filesystem::path file, const Exporter& exporter) {
    return file.replace_extension(ending_of(exporter));
}

// Captions that are there already may have been mended by hand: they stay unless it is said.
Result<void> write_beside(const Exporter& exporter, const Analysis& analysis,
                          const ExportOptions& options, const Target& target, Console& console) {
    const std::filesystem::path file = beside(target.file, exporter);
    std::error_code error;
    if (!target.replace && std::filesystem::exists(file, error)) {
        console.err << file.string() << " is there and stays as it is; --replace makes it anew\n";
        return {};
    }
    return write_text(file, exporter.write(analysis, options));
}

Result<void> write_all(const Exporter& exporter, const Analysis& analysis,
                       const ExportOptions& options, const Target& target, Console& console) {
    {
        Progress progress(console);
        auto written = to_file(exporter, analysis, options, target.file, progress);
        if (!written || exporter.beside.empty()) return written;
    }
    return write_beside(**wanted_exporter(exporter.beside), analysis, options, target, console);
}

// What a script was made into before is made anew; nobody else's file is written over unasked, nor
// one that people mend by hand.
Result<void> check_target(const Target& target, const Source& source, const Exporter& exporter) {
    if (auto fits = check_no_script(target.file, source.file); !fits)
        return Error{fmt::format("--out {}", fits.error().message)};
    if (target.replace || may_make_anew(target.file, exporter.sign)) return {};
    return Error{fmt::format("--out {}: is there already; give another name, or --replace to write "
                             "over it",
                             target.file.string())};
}

void export_one(Job& job, const Source& source, const Exporter& exporter,
                const ExportOptions& options, const std::optional<Target>& target,
                Console& console) {
    const auto fits = target ? check_target(*target, source, exporter) : Result<void>{};
    if (!fits) return job.add_trouble({.file = "sayline", .message = fits.error().message});
    const auto text = job.read_with_words(source);
    const auto analysis = text ? job.analyse(source, text) : nullptr;
    if (!analysis) return;
    const auto written = target ? write_all(exporter, *analysis, options, *target, console)
                                : to_output(exporter, *analysis, options, console);
    if (!written) job.add_trouble({.file = "sayline", .message = written.error().message});
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
            export_one(job, sources.front(), **exporter, *options, wanted_file(arguments), console);
        }
    }
    job.report(console);
    return job.failed() ? status_failed : status_clean;
}

std::vector<Flag> export_flags() {
    static const std::string names =
        exporter_names(); // the table's, for as long as the program runs
    std::vector<Flag> flags = {
        {"--to", "TARGET", names},
        {"--out", "FILE", "Where to write it (standard output)"},
        {"--replace", {}, "Write over a file that is there, and over the captions beside a sound"},
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
        "crew, ssml is markup for a speech synthesiser, wav is a guide read by a machine's voice\n"
        "(with captions beside it), page is a file that a browser shows in front of the lens,\n"
        "practice one to rehearse with: docs/reading-page.md, docs/practice.md. docs/exports.md\n"
        "has all of them. The times are an estimate.",
    .flags = export_flags(),
    .run = run_export,
};

} // namespace say::cli
