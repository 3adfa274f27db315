// sayline import: a draft that was written elsewhere, as a script.
#include "cli/command.h"
#include "cli/render.h"
#include "host/files.h"
#include "importers/importer.h"
#include "importers/script_writer.h"
#include "syntax/words.h"

#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace say::cli {
namespace {

std::string kinds() {
    std::string names;
    for (const Importer& importer : importers())
        names += fmt::format("{}{}", names.empty() ? "" : ", ", importer.name);
    return names;
}

Result<const Importer*> wanted_importer(const Arguments& arguments, std::string_view bytes,
                                        const std::string& name) {
    const auto kind = arguments.value("--from");
    if (!kind) return importer_for(bytes, name);
    const Importer* importer = find_importer(*kind);
    if (importer != nullptr) return importer;
    return Error{fmt::format("--from \"{}\" is no kind of draft; there are {}", *kind, kinds())};
}

// The first words of each, in quotes: “Remember: the sea comes …”.
std::string beginnings(const std::vector<std::string>& stresses) {
    constexpr std::size_t most_words = 4;
    constexpr std::size_t most_shown = 5;
    std::string shown;
    for (std::size_t i = 0; i < std::min(stresses.size(), most_shown); ++i) {
        const std::vector<Span> words = split_words(stresses[i]);
        const bool all = words.size() <= most_words;
        const std::string_view begin =
            std::string_view(stresses[i])
                .substr(0, all ? std::string_view::npos : words[most_words - 1].end.value);
        shown += fmt::format("{}“{}{}”", i == 0 ? "" : ", ", printable(begin), all ? "" : " …");
    }
    if (stresses.size() > most_shown)
        shown += fmt::format(" and {} more", stresses.size() - most_shown);
    return shown;
}

// Who writes a draft may have set apart whole paragraphs: nobody can lean on those.
void tell(const std::string& name, const Draft& draft, const WrittenScript& script,
          const ScriptWishes& wishes, std::ostream& err) {
    for (const std::string& told : draft.told)
        err << fmt::format("{}: {}\n", name, told);
    if (script.directions > 0) {
        const bool one = script.directions == 1;
        err << fmt::format("{}: {} in square brackets {} not spoken; a backslash before the "
                           "bracket makes {} words\n",
                           name,
                           one ? "1 direction" : fmt::format("{} directions", script.directions),
                           one ? "is" : "are", one ? "it" : "them");
    }
    if (script.left_out.empty()) return;
    const std::size_t count = script.left_out.size();
    err << fmt::format("{}: {} of {} stresses left out: a reader leans on {} words at most ({})\n",
                       name, count, count + static_cast<std::size_t>(script.stresses),
                       wishes.stress_words, beginnings(script.left_out));
}

Result<void> import_one(const Arguments& arguments, Console& console) {
    if (arguments.files.size() != 1)
        return Error{"sayline: give one draft, or - for standard input"};
    const std::string& file = arguments.files.front();
    const std::string name = file == "-" ? "standard input" : file;
    const auto out = arguments.value("--out");
    std::error_code error;
    if (out && !arguments.has("--replace") && std::filesystem::exists(*out, error)) {
        return Error{
            fmt::format("{}: exists; give another name, or --replace to write over it", *out)};
    }
    const auto bytes =
        file == "-" ? read_input_bytes(largest_draft) : read_bytes(file, largest_draft);
    if (!bytes) return bytes.error();
    const auto importer = wanted_importer(arguments, *bytes, name);
    if (!importer) return importer.error();
    const auto draft = read_draft(*bytes, name, **importer);
    if (!draft) return draft.error();
    const ScriptWishes wishes{.sentences = arguments.has("--sentences")};
    WrittenScript script = write_script(titled(*draft), wishes);
    if (arguments.has("--lower")) script.text = lowered(script.text);
    if (!out) {
        console.out << script.text;
    } else if (const auto written = write_text(*out, script.text); !written) {
        return written.error();
    }
    tell(name, *draft, script, wishes, console.err);
    return {};
}

int run_import(const Arguments& arguments, Console& console) {
    if (const auto done = import_one(arguments, console); !done) {
        console.err << done.error().message << '\n';
        return status_failed;
    }
    return status_clean;
}

} // namespace

const Command import_command = {
    .name = "import",
    .arguments = "DRAFT|-",
    .summary = "Make a script of a draft that was written elsewhere",
    .help = "Reads plain text, Markdown, DOCX, ODT, WebVTT and SRT. Every word stays; bold and "
            "italic words are stressed,\nheadings become sections, comments notes. What looks like "
            "a mark and is none has a backslash before it.\ndocs/import.md has the whole.",
    .flags = {{"--from", "KIND", "txt, md, docx, odt, vtt or srt (told by the file)"},
              {"--out", "FILE", "Where to write it (standard output)"},
              {"--replace", {}, "Write over a file that is there"},
              {"--sentences", {}, "Make every sentence a paragraph"},
              {"--lower", {}, "Write what is all in capitals in lower case"}},
    .run = run_import,
};

} // namespace say::cli
