// sayline check: what the editor would underline, as text or JSON; --fix mends what can be mended
// without changing a spoken word.
#include "cli/job.h"
#include "cli/json.h"
#include "cli/render.h"
#include "host/files.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <ostream>

namespace say::cli {
namespace {

std::optional<Severity> parse_severity(std::string_view written) {
    for (const Severity severity : {Severity::hint, Severity::warning, Severity::error}) {
        if (name_of(severity) == written) return severity;
    }
    return std::nullopt;
}

std::string titles_of(const Analysis& analysis, const Finding& finding) {
    std::string titles;
    for (const Fix& fix : fixes_of(analysis, finding)) {
        if (leaves_as_is(fix)) continue; // no mending; docs/rules.md says how
        if (!titles.empty()) titles += "; ";
        titles += fix.title;
    }
    return titles;
}

void print_finding(const std::string& file, const Analysis& analysis, const Finding& finding,
                   const Paint& paint, std::ostream& out) {
    const Text& text = *analysis.document.text;
    const Place place = place_of(text, finding.span.begin);
    out << paint.strong(fmt::format("{}:{}:{}", file, place.line, place.column)) << "  "
        << paint.severity(finding.severity, name_of(finding.severity)) << "  "
        << printable(finding.message()) << "  "
        << paint.faint(fmt::format("[{}]", finding.rule->id)) << '\n';
    out << excerpt(text, finding.span, paint);
    if (!finding.readings().empty()) {
        std::string readings;
        for (const std::string& reading : finding.readings()) {
            readings += (readings.empty() ? "" : "; ") + reading;
        }
        out << "    or: " << printable(readings) << '\n';
    }
    const std::string titles = titles_of(analysis, finding);
    if (!titles.empty()) out << "    fix: " << printable(titles) << '\n';
}

std::string count_findings(const std::vector<Finding>& findings) {
    std::array<std::size_t, 3> counts{};
    for (const Finding& finding : findings)
        ++counts.at(static_cast<std::size_t>(finding.severity));
    std::string text;
    for (const Severity severity : {Severity::error, Severity::warning, Severity::hint}) {
        const std::size_t count = counts.at(static_cast<std::size_t>(severity));
        if (count == 0) continue;
        if (!text.empty()) text += ", ";
        text += counted(count, name_of(severity));
    }
    return text.empty() ? "nothing to mend" : text;
}

ByRule by_rule(const Analysis& analysis) {
    ByRule counts;
    for (const Finding& finding : analysis.findings)
        ++counts[finding.rule->id];
    return counts;
}

// " (9 no-breath, 6 run-on)": what the fixes were for.
std::string list_gone(const ByRule& gone) {
    std::string list;
    for (const auto& [id, count] : gone) {
        if (count > 0) list += fmt::format("{}{} {}", list.empty() ? "" : ", ", count, id);
    }
    return list.empty() ? list : fmt::format(" ({})", list);
}

void print_checked(const Checked& checked, const Paint& paint, std::ostream& out) {
    const Analysis& analysis = *checked.analysis;
    for (const Finding& finding : analysis.findings) {
        print_finding(checked.file, analysis, finding, paint, out);
    }
    if (!analysis.findings.empty()) out << '\n';
    out << paint.strong(checked.file) << ": ";
    if (checked.fixed > 0)
        out << counted(checked.fixed, "place") << " mended" << list_gone(checked.gone) << "; ";
    out << count_findings(analysis.findings) << "; runs "
        << format_seconds(analysis.script.timing.expected) << ", "
        << format_range(analysis.script.timing) << '\n';
}

// Applies every fix that keeps all words, then looks again. Null after trouble.
std::shared_ptr<const Analysis> fix(Job& job, const Source& source,
                                    std::shared_ptr<const Analysis> analysis, std::size_t& fixed) {
    std::vector<TextEdit> edits = edits_of(*analysis, Sweep::mend);
    if (edits.empty()) return analysis;
    fixed = edits.size();
    auto text =
        std::make_shared<const Text>(apply(analysis->document.text->bytes(), std::move(edits)));
    if (const auto written = write_text(source.file, text->bytes()); !written) {
        job.add_trouble({.file = "sayline", .message = written.error().message});
        return nullptr;
    }
    return job.analyse(source, text);
}

std::optional<Checked> check_one(Job& job, const Source& source, bool mend) {
    const auto text = job.read_with_words(source);
    if (!text) return std::nullopt;
    Checked checked{.file = source.name, .analysis = job.analyse(source, text)};
    if (!checked.analysis) return std::nullopt;
    if (mend) {
        if (source.file.empty()) {
            job.add_trouble({.file = "sayline", .message = "--fix needs a file to write to"});
            return std::nullopt;
        }
        checked.gone = by_rule(*checked.analysis);
        checked.analysis = fix(job, source, checked.analysis, checked.fixed);
        if (!checked.analysis) return std::nullopt;
        for (const auto& [id, count] : by_rule(*checked.analysis))
            checked.gone[id] -= count;
    }
    return checked;
}

int status_of(const Job& job, const std::vector<Checked>& files, Severity threshold) {
    if (job.failed()) return status_failed;
    const auto counts = [&](const Finding& finding) { return finding.severity >= threshold; };
    for (const Checked& checked : files) {
        const auto& findings = checked.analysis->findings;
        if (std::any_of(findings.begin(), findings.end(), counts)) return status_findings;
    }
    // A setting that does not apply is a warning of its own.
    return !job.trouble().empty() && threshold <= Severity::warning ? status_findings
                                                                    : status_clean;
}

int run_check(const Arguments& arguments, Console& console) {
    Job job(arguments);
    const auto json = wants_json(arguments);
    const std::string written = arguments.value("--fail-on").value_or("warning");
    const auto threshold = parse_severity(written);
    if (!json || !threshold) {
        job.add_trouble(
            {.file = "sayline",
             .message = !json ? json.error().message
                              : fmt::format("--fail-on cannot be \"{}\"; it may be hint, warning "
                                            "or error",
                                            written)});
        job.report(console);
        return status_failed;
    }
    const Paint paint(console.colour);
    std::vector<Checked> files;
    for (const Source& source : job.sources()) {
        auto checked = check_one(job, source, arguments.has("--fix"));
        if (!*json) job.report(console);
        if (!checked) continue;
        if (!*json) print_checked(*checked, paint, console.out);
        files.push_back(std::move(*checked));
    }
    if (*json) {
        console.out << check_json(files, job.trouble());
    } else {
        job.report(console);
    }
    return status_of(job, files, *threshold);
}

std::vector<Flag> check_flags() {
    std::vector<Flag> flags = {
        {"--fix", {}, "Mend what can be mended without changing a spoken word, in the file"},
        {"--fail-on", "SEVERITY", "Exit with 1 from here on: hint, warning (as set) or error"},
        as_flag,
    };
    for (const Flag& flag : reading_flags())
        flags.push_back(flag);
    return flags;
}

} // namespace

const Command check_command = {
    .name = "check",
    .arguments = "SCRIPT|FOLDER|- ...",
    .summary = "Show what will trip you when you read it",
    .help =
        "Prints what an editor would underline: the place, how serious it is, what will happen\n"
        "when it is spoken, the rule's name, the words, and what would mend it.\n"
        "Lines and columns count from 1, columns in characters.",
    .flags = check_flags(),
    .run = run_check,
};

} // namespace say::cli
