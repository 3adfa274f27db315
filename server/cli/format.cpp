// sayline format: one way to write the marks; no spoken word changes and a second run changes
// nothing.
#include "cli/job.h"
#include "cli/json.h"
#include "features/features.h"
#include "host/files.h"

#include <ostream>

namespace say::cli {
namespace {

struct Wish {
    bool json = false;
    bool write = false;
    bool only_look = false;
};

void tell(const Source& source, bool changed, const Wish& wish, std::ostream& out) {
    if (!changed || wish.json) return;
    out << source.name << (wish.only_look ? ": would change\n" : ": formatted\n");
}

// True if the text is not as the formatter writes it; nothing after trouble.
std::optional<bool> format_one(Job& job, const Source& source, const Wish& wish,
                               std::ostream& out) {
    const auto text = job.read(source);
    const auto analysis = text ? job.analyse(source, text) : nullptr;
    if (!analysis) return std::nullopt;
    const std::string formatted = apply(text->bytes(), say::format(*analysis));
    const bool changed = formatted != text->bytes();
    if (!wish.write && !wish.only_look) {
        if (!wish.json) out << formatted;
        return changed;
    }
    if (wish.write && changed) {
        if (source.file.empty()) {
            job.add_trouble({.file = "sayline", .message = "--write needs a file to write to"});
            return std::nullopt;
        }
        if (const auto written = write_text(source.file, formatted); !written) {
            job.add_trouble({.file = "sayline", .message = written.error().message});
            return std::nullopt;
        }
    }
    tell(source, changed, wish, out);
    return changed;
}

int run_format(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto json = wants_json(arguments);
    if (!json) job.add_trouble({.file = "sayline", .message = json.error().message});
    const Wish wish{.json = json && *json,
                    .write = arguments.has("--write"),
                    .only_look = arguments.has("--check")};
    if (wish.write && wish.only_look) {
        job.add_trouble({.file = "sayline", .message = "give --write or --check, not both"});
    }
    if (job.failed()) {
        job.report(console);
        return status_failed;
    }
    std::vector<Formatted> files;
    bool found = false;
    for (const Source& source : job.sources()) {
        const auto changed = format_one(job, source, wish, console.out);
        if (!wish.json) job.report(console);
        if (!changed) continue;
        files.push_back({source.name, *changed});
        found |= *changed && wish.only_look;
    }
    if (wish.json) {
        console.out << format_json(files, job.trouble());
    } else {
        job.report(console);
    }
    if (job.failed()) return status_failed;
    return found ? status_findings : status_clean;
}

} // namespace

const Command format_command = {
    .name = "format",
    .arguments = "SCRIPT|FOLDER|- ...",
    .summary = "Write marks and blanks in one way",
    .help = "Prints the script as the formatter writes it. Spoken words never change, lines are\n"
            "neither wrapped nor joined, and a second run changes nothing.",
    .flags = {{"--write", {}, "Write it to the file instead of printing it"},
              {"--check", {}, "Only say which files would change; exit with 1 if any would"},
              as_flag},
    .run = run_format,
};

} // namespace say::cli
