// sayline docs: the manual's tables, printed from the tables the program itself runs on. A test
// holds the committed pages and these equal.
#include "cli/command.h"
#include "engine/options.h"
#include "host/manual.h"
#include "host/settings.h"
#include "syntax/marks.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <array>
#include <ostream>

namespace say::cli {
namespace {

using manual::cell;

void print_rules(std::ostream& out) {
    out << rules_page();
}

void print_options(std::ostream& out) {
    out << "# Settings\n\n"
           "They stand in `.sayline/settings.json` beside the script or in the nearest folder "
           "above.\n"
           "Comments are allowed, nothing is ever written to it, and a wrong value is reported "
           "where "
           "it stands while the rest applies.\n"
           "A flag on the command line (`--set key=value`) is stronger than the script's header, "
           "the "
           "header stronger than the editor's setting, that one stronger than the file, and the "
           "file "
           "stronger than the default.\n"
           "How loud each rule is stands under `\"rules\"`: see [rules.md](rules.md).\n\n"
           "```json\n{\n    // The readers here are out of breath early.\n"
           "    \"breath_limit\": 5,\n    \"rules\": {\"contraction\": \"off\"}\n}\n```\n\n"
           "| key | default | may be | sets | the default's source |\n"
           "| --- | --- | --- | --- | --- |\n";
    for (const OptionRow& row : option_rows()) {
        const std::string shown =
            row.default_value.empty() ? "empty" : fmt::format("`{}`", row.default_value);
        out << fmt::format("| `{}` | {} | {} | {} | {} |\n", row.key, shown,
                           cell(allowed_values(row)), cell(row.help), cell(row.source));
    }
}

void print_schema(std::ostream& out) {
    out << schema_json().dump(2) << '\n';
}

void print_marks(std::ostream& out) {
    out << "# Marks\n\n"
           "Every mark that may stand inside a thought; [format.md](format.md) says where each is "
           "text instead.\n"
           "The times are settings: see [options.md](options.md).\n\n"
           "| mark | written | the reader | time | origin |\n| --- | --- | --- | --- | --- |\n";
    for (const MarkRow& row : mark_rows()) {
        out << fmt::format("| {} | `{}` | {} | {} | {} |\n", row.name, cell(row.written),
                           cell(row.does), cell(row.cost), cell(row.origin));
    }
}

struct Page {
    std::string_view name;
    void (*print)(std::ostream&);
};
constexpr std::array pages = {Page{"rules", print_rules}, Page{"options", print_options},
                              Page{"schema", print_schema}, Page{"marks", print_marks}};

int run_docs(const Arguments& arguments, Console& console) {
    for (const Page& page : pages) {
        if (arguments.files.size() == 1 && arguments.files.front() == page.name) {
            page.print(console.out);
            return status_clean;
        }
    }
    console.err << "sayline: give the page to print: rules, options, schema or marks\n";
    return status_failed;
}

} // namespace

const Command docs_command = {
    .name = "docs",
    .arguments = "rules|options|schema|marks",
    .summary = "Print the manual's tables and the settings' schema",
    .help = {},
    .flags = {},
    .run = run_docs,
};

} // namespace say::cli
