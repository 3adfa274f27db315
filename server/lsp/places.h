// Handlers of the requests that ask where something stands and not what it says: lenses, folds,
// selections. Their rows are in methods.cpp.
#pragma once

#include "lsp/method.h"
#include "lsp/protocol.h"

#include <vector>

namespace say::lsp {

std::vector<CodeLens> on_code_lens(const Snapshot& snapshot, const DocumentParams& params);
std::vector<FoldingRange> on_folding_range(const Snapshot& snapshot, const DocumentParams& params);
std::vector<SelectionRange> on_selection_range(const Snapshot& snapshot,
                                               const SelectionRangeParams& params);

} // namespace say::lsp
