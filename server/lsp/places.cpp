#include "lsp/places.h"

#include "features/features.h"
#include "host/files.h"
#include "host/readers.h"
#include "lsp/convert.h"

#include <filesystem>
#include <utility>

namespace say::lsp {
namespace {

Columns columns_of(const Snapshot& snapshot) {
    return {snapshot.text, snapshot.client.encoding};
}

// Of the protocol's three kinds only one is a kind of block here; the others have none.
std::string_view kind_of(Fold::Kind kind) {
    return kind == Fold::Kind::note || kind == Fold::Kind::direction ? "comment" : "";
}

// --- files -------------------------------------------------------------------------------------

namespace fs = std::filesystem;

bool lies_below(const fs::path& folder, const fs::path& file) {
    const fs::path inside = file.lexically_relative(folder);
    return !inside.empty() && *inside.begin() != "..";
}

// A name as seen from one of the folders, if there is such a file below any of them: neither `..`
// nor a link leads out. Empty if there is none.
fs::path file_below(const std::vector<fs::path>& folders, const fs::path& name) {
    std::error_code error;
    for (const fs::path& from : folders) {
        fs::path file = fs::canonical(from / name, error);
        if (error || !fs::is_regular_file(file, error)) continue;
        for (const fs::path& folder : folders) {
            const fs::path root = fs::canonical(folder, error);
            if (!error && lies_below(root, file)) return file;
        }
    }
    return {};
}

// Beside the script, or in the folder that holds its `.sayline`; empty if there is no such file.
fs::path file_of(const fs::path& script, const Link& link) {
    const fs::path settings = find_settings_folder(script);
    if (link.kind == Link::Kind::reader) {
        if (settings.empty() || !check_reader_name(link.target)) return {};
        return file_below({settings / "readers"}, link.target + ".json");
    }
    std::vector<fs::path> folders{script.parent_path()};
    if (!settings.empty()) folders.push_back(settings.parent_path());
    return file_below(folders, link.target);
}

struct FileLink {
    Link link;
    fs::path file;
};

std::vector<FileLink> file_links(const Snapshot& snapshot) {
    const auto script = path_of(snapshot.uri);
    if (!script) return {};
    std::vector<fs::path> files;
    const auto exists = [&](const Link& link) {
        fs::path file = file_of(*script, link);
        if (file.empty()) return false;
        files.push_back(std::move(file));
        return true;
    };
    std::vector<FileLink> result;
    for (Link& link : links(snapshot.analysis, exists))
        result.push_back({std::move(link), std::move(files[result.size()])});
    return result;
}

int kind_of(Highlight::Kind kind) {
    switch (kind) {
    case Highlight::Kind::text: return 1;
    case Highlight::Kind::use: return 2;
    case Highlight::Kind::declaration: return 3;
    }
    return 1;
}

} // namespace

std::vector<CodeLens> on_code_lens(const Snapshot& snapshot, const DocumentParams& /*params*/) {
    Columns columns = columns_of(snapshot);
    std::vector<CodeLens> result;
    for (Lens& lens : lenses(snapshot.analysis))
        result.push_back({columns.range(lens.span), std::move(lens.title)});
    return result;
}

std::vector<FoldingRange> on_folding_range(const Snapshot& snapshot,
                                           const DocumentParams& /*params*/) {
    const bool lines_only = snapshot.client.fold_lines_only;
    Columns columns = columns_of(snapshot);
    std::vector<FoldingRange> result;
    for (const Fold& fold : folds(snapshot.analysis, snapshot.client.most_folds)) {
        // An end column costs the way along its line, which nobody asks for here.
        const Range range = lines_only ? Range{{snapshot.text.line_of(fold.span.begin), 0},
                                               {snapshot.text.line_of(fold.span.end), 0}}
                                       : columns.range(fold.span);
        result.push_back({range, std::string(kind_of(fold.kind)), lines_only});
    }
    return result;
}

std::vector<SelectionRange> on_selection_range(const Snapshot& snapshot,
                                               const SelectionRangeParams& params) {
    Columns columns = columns_of(snapshot);
    std::vector<SelectionRange> result;
    for (const Position& position : params.positions) {
        SelectionRange selection;
        for (const Span span : selections(snapshot.analysis, columns.offset(position)))
            selection.ranges.push_back(columns.range(span));
        result.push_back(std::move(selection));
    }
    return result;
}

std::optional<std::vector<DocumentHighlight>> on_document_highlight(const Snapshot& snapshot,
                                                                    const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    std::vector<DocumentHighlight> result;
    for (const Highlight& each : highlights(snapshot.analysis, columns.offset(params.position)))
        result.push_back({columns.range(each.span), kind_of(each.kind)});
    // None at all lets the editor highlight equal words by itself.
    if (result.empty()) return std::nullopt;
    return result;
}

std::optional<LinkedEditingRanges> on_linked_editing_range(const Snapshot& snapshot,
                                                           const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    const auto ends = linked_ends(snapshot.analysis, columns.offset(params.position));
    if (!ends) return std::nullopt;
    return LinkedEditingRanges{columns.range(ends->open), columns.range(ends->close),
                               std::string(ends->pattern)};
}

std::optional<std::vector<Location>> on_references(const Snapshot& snapshot,
                                                   const ReferenceParams& params) {
    Columns columns = columns_of(snapshot);
    const auto name = name_at(snapshot.analysis, columns.offset(params.position));
    if (!name) return std::nullopt;
    std::vector<Location> result;
    for (const Name::Use& use : name->uses) {
        if (use.declares && !params.includeDeclaration) continue;
        result.push_back({snapshot.uri, columns.range(use.span)});
    }
    return result;
}

std::optional<Location> on_definition(const Snapshot& snapshot, const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    const Offset at = columns.offset(params.position);
    for (const FileLink& each : file_links(snapshot)) {
        if (each.link.span.touches(at)) return Location{uri_of(each.file), {}};
    }
    const auto name = name_at(snapshot.analysis, at);
    if (!name) return std::nullopt;
    for (const Name::Use& use : name->uses) {
        if (use.declares) return Location{snapshot.uri, columns.range(use.span)};
    }
    return std::nullopt;
}

std::optional<PrepareRename> on_prepare_rename(const Snapshot& snapshot,
                                               const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    auto spot = rename_spot(snapshot.analysis, columns.offset(params.position));
    if (!spot) return std::nullopt;
    return PrepareRename{columns.range(spot->span), std::move(spot->name)};
}

RenameOutcome on_rename(const Snapshot& snapshot, const RenameParams& params) {
    Columns columns = columns_of(snapshot);
    Renaming renaming = rename(snapshot.analysis, columns.offset(params.position), params.newName);
    return {.edit = {.uri = snapshot.uri,
                     .version = snapshot.version,
                     .edits = to_edits(renaming.edits, columns),
                     .versioned = snapshot.client.document_changes},
            .refusal = std::move(renaming.refusal)};
}

std::vector<DocumentLink> on_document_link(const Snapshot& snapshot,
                                           const DocumentParams& /*params*/) {
    Columns columns = columns_of(snapshot);
    std::vector<DocumentLink> result;
    for (const FileLink& each : file_links(snapshot)) {
        const bool reader = each.link.kind == Link::Kind::reader;
        result.push_back({columns.range(each.link.span), uri_of(each.file),
                          reader ? "The pace of " + each.link.target : std::string{}});
    }
    return result;
}

} // namespace say::lsp
