#include "cli/rewrite.h"

#include "cli/job.h"
#include "cli/json.h"
#include "host/files.h"

#include <ostream>

namespace say::cli {
namespace {

struct Wish {
    bool json = false;
    bool write = false;
    bool only_look = false;
};

void tell(const Source& source, bool changed, const Wish& wish, std::string_view done,
          std::ostream& out) {
    if (!changed || wish.json) return;
    out << source.name << ": " << (wish.only_look ? "would change" : done) << '\n';
}

// True if the text changes; nothing after trouble.
std::optional<bool> rewrite_one(Job& job, const Source& source, const Wish& wish,
                                const Rewriting& rewriting, std::ostream& out) {
    const auto text = job.read(source);
    const auto analysis = text ? job.analyse(source, text) : nullptr;
    if (!analysis) return std::nullopt;
    const std::string after = apply(text->bytes(), rewriting.edits(*analysis));
    const bool changed = after != text->bytes();
    if (!wish.write && !wish.only_look) {
        if (!wish.json) out << after;
        return changed;
    }
    if (wish.write && changed) {
        if (source.file.empty()) {
            job.add_trouble({.file = "sayline", .message = "--write needs a file to write to"});
            return std::nullopt;
        }
        if (const auto written = write_text(source.file, after); !written) {
            job.add_trouble({.file = "sayline", .message = written.error().message});
            return std::nullopt;
        }
    }
    tell(source, changed, wish, rewriting.done, out);
    return changed;
}

} // namespace

int rewrite(const Rewriting& rewriting, const Arguments& arguments, Console& console) {
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
        const auto changed = rewrite_one(job, source, wish, rewriting, console.out);
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

} // namespace say::cli
