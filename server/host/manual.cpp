#include "host/manual.h"

#include "host/files.h"
#include "rules/rule.h"

#include <fmt/core.h>

#include <cstdlib>
#include <utility>

namespace say {

namespace manual {

std::string cell(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (c == '|') result += '\\';
        result += c;
    }
    return result;
}

} // namespace manual

namespace {

using manual::cell;

// One sentence a line, as all our pages are written. A full stop inside a figure has no blank
// behind it, and one of an abbreviation is followed by a small letter.
std::string sentence_lines(std::string_view paragraph) {
    std::string result;
    for (std::size_t i = 0; i < paragraph.size(); ++i) {
        const bool end = (paragraph[i] == '.' || paragraph[i] == '?' || paragraph[i] == '!') &&
                         i + 2 < paragraph.size() && paragraph[i + 1] == ' ' &&
                         !(paragraph[i + 2] >= 'a' && paragraph[i + 2] <= 'z');
        result += paragraph[i];
        if (!end) continue;
        result += '\n';
        ++i;
    }
    return result;
}

std::filesystem::path folder_for_pages() {
    const auto folder_in = [](const char* name) {
        const char* const value =
            std::getenv(name); // NOLINT(concurrency-mt-unsafe): never set here
        return std::filesystem::path(value == nullptr ? "" : value);
    };
    if (const auto caches = folder_in("XDG_CACHE_HOME"); caches.is_absolute())
        return caches / "sayline";
    if (const auto home = folder_in("HOME"); home.is_absolute()) return home / ".cache" / "sayline";
    std::error_code error;
    return std::filesystem::temp_directory_path(error) / "sayline";
}

} // namespace

std::string rules_page() {
    std::string page =
        "# Rules\n\n"
        "What Sayline says about a script, in the order in which findings of one family win.\n"
        "A rule is heard from its stage on: `draft` is every script, `mark` and `read` are set "
        "in "
        "the header, in the settings or by `--stage`.\n"
        "Silence one at a thought with a line `% allow: rule-id` above it, in the header with "
        "`allow: rule-id`, or in `.sayline/settings.json` with `\"rules\": {\"rule-id\": "
        "\"off\"}`; `hint` and `warning` set how loud it is.\n\n"
        "| rule | severity | from stage | finds |\n| --- | --- | --- | --- |\n";
    for (const Rule* rule : all_rules()) {
        page += fmt::format("| [{0}](#{0}) | {1} | {2} | {3} |\n", rule->id,
                            name_of(rule->severity), name_of(rule->stage), cell(rule->summary));
    }
    for (const Rule* rule : all_rules()) {
        page += fmt::format("\n## {}\n\n{}\n", rule->id, sentence_lines(rule->manual));
    }
    return page;
}

Result<std::filesystem::path> rules_page_file() {
    const std::filesystem::path folder = folder_for_pages();
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error) {
        return Error{fmt::format("{}: cannot be made ({}); `sayline docs rules` prints the page",
                                 folder.string(), error.message())};
    }
    std::filesystem::path file = folder / "rules.md";
    if (const auto written = write_text(file, rules_page()); !written) return written.error();
    return Result<std::filesystem::path>{boost::system::in_place_value, std::move(file)};
}

} // namespace say
