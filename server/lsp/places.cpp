#include "lsp/places.h"

#include "features/features.h"
#include "lsp/convert.h"

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

} // namespace say::lsp
