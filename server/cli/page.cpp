// sayline page: the reading page, kept up to date while the script is still being changed, and the
// practice page beside it.
#include "exporters/page.h"

#include "cli/job.h"
#include "exporters/json.h"
#include "exporters/practice.h"
#include "host/live.h"

#include <fmt/core.h>

#include <charconv>
#include <limits>
#include <ostream>

namespace say::cli {
namespace {

Result<std::uint16_t> wanted_port(const Arguments& arguments) {
    const auto written = arguments.value("--port");
    if (!written) return std::uint16_t{0};
    unsigned port = 0;
    const char* const end = written->data() + written->size();
    const auto [rest, error] = std::from_chars(written->data(), end, port);
    if (error != std::errc{} || rest != end || port < 1 ||
        port > std::numeric_limits<std::uint16_t>::max()) {
        return Error{fmt::format("--port \"{}\": expected 1 to 65535", *written)};
    }
    return static_cast<std::uint16_t>(port);
}

// Read anew each time, with the settings as they are then.
Result<LiveText> render(const Arguments& arguments, const Source& source) {
    Job job(arguments);
    const auto text = job.read_with_words(source);
    const auto analysis = text ? job.analyse(source, text) : nullptr;
    if (analysis) {
        return LiveText{.page = live_page(*analysis),
                        .json = script_json(*analysis),
                        .practice = write_practice(*analysis, {}),
                        .lexicons = job.lexicons()};
    }
    for (const Trouble& trouble : job.trouble())
        if (trouble.fatal) return Error{trouble.text()};
    return Error{fmt::format("{}: cannot be read", source.name)};
}

// What the command needs; trouble is in the job.
std::optional<Source> wanted_source(const Arguments& arguments, Job& job) {
    const auto add = [&](std::string message) {
        job.add_trouble({.file = "sayline", .message = std::move(message)});
    };
    if (!arguments.has("--live")) {
        add("give --live; sayline export --to page writes the page as a file");
        return std::nullopt;
    }
    std::vector<Source> sources = job.sources();
    if (sources.size() > 1) add("give one script to show");
    if (sources.size() != 1) return std::nullopt;
    if (!sources.front().file.empty()) return std::move(sources.front());
    add("give a file: standard input is never saved again");
    return std::nullopt;
}

Result<void> show(const Arguments& arguments, const Source& source, std::uint16_t port,
                  Console& console) {
    return serve_live({.file = source.file,
                       .port = port,
                       .render = [&] { return render(arguments, source); },
                       .ready =
                           [&](std::string_view address) {
                               console.out << fmt::format(
                                   "{0} shows {1} and follows every save; Ctrl+C ends it\n"
                                   "{0}practice is its practice page\n",
                                   address, source.name);
                               console.out.flush();
                           },
                       .say_result =
                           [&](std::string_view wrong) {
                               if (!wrong.empty())
                                   console.err << wrong << "; the last good page stays\n";
                           }});
}

int run_page(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto source = wanted_source(arguments, job);
    const auto port = wanted_port(arguments);
    if (!port) job.add_trouble({.file = "sayline", .message = port.error().message});
    if (source && port) {
        job.options(*source); // what is wrong with the settings is said here, once
        job.report(console);
        if (const auto done = show(arguments, *source, *port, console); !done) {
            console.err << done.error().message << '\n';
            return status_failed;
        }
    }
    job.report(console);
    return job.failed() ? status_failed : status_clean;
}

std::vector<Flag> page_flags() {
    std::vector<Flag> flags = {
        {"--live", {}, "Serve it on this machine alone and show every save at once"},
        {"--port", "PORT", "Where to serve it (any that is free)"}};
    for (Flag& flag : reading_flags())
        flags.push_back(flag);
    return flags;
}

} // namespace

const Command page_command = {
    .name = "page",
    .arguments = "--live SCRIPT",
    .summary = "Show the reading page of a script and keep it up to date",
    .help = "Open the address that it prints in a browser on the same machine. A save changes the\n"
            "text and keeps the place. A script that cannot be read leaves the last good page.\n"
            "docs/reading-page.md tells how to use it at the shoot.\n\n"
            "With \"practice\" behind the address it is the practice page (docs/practice.md),\n"
            "which has the script as it was saved when the page was loaded.",
    .flags = page_flags(),
    .run = run_page,
};

} // namespace say::cli
