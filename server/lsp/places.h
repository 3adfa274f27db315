// Handlers of the requests that ask where something stands and not what it says: lenses, folds,
// selections, uses of names, the ends of marks, files. Their rows are in methods.cpp.
#pragma once

#include "lsp/method.h"
#include "lsp/protocol.h"

#include <optional>
#include <vector>

namespace say::lsp {

std::vector<CodeLens> on_code_lens(const Snapshot& snapshot, const DocumentParams& params);
std::vector<FoldingRange> on_folding_range(const Snapshot& snapshot, const DocumentParams& params);
std::vector<SelectionRange> on_selection_range(const Snapshot& snapshot,
                                               const SelectionRangeParams& params);

std::optional<std::vector<DocumentHighlight>> on_document_highlight(const Snapshot& snapshot,
                                                                    const PositionParams& params);
std::optional<LinkedEditingRanges> on_linked_editing_range(const Snapshot& snapshot,
                                                           const PositionParams& params);
std::optional<std::vector<Location>> on_references(const Snapshot& snapshot,
                                                   const ReferenceParams& params);
std::optional<Location> on_definition(const Snapshot& snapshot, const PositionParams& params);
std::optional<PrepareRename> on_prepare_rename(const Snapshot& snapshot,
                                               const PositionParams& params);
RenameOutcome on_rename(const Snapshot& snapshot, const RenameParams& params);
std::vector<DocumentLink> on_document_link(const Snapshot& snapshot, const DocumentParams& params);

} // namespace say::lsp
