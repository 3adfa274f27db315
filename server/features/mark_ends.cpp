// textDocument/documentHighlight and linkedEditingRange: the two ends of a mark.
#include "features/features.h"

#include <algorithm>

namespace say {
namespace {

struct Ends {
    MarkKind kind = MarkKind::stress;
    Span open;
    Span close; // empty where a quote runs to the end of its thought
};

// The pair of which an end is at the cursor. One that begins there goes before one that ends
// there: in `~*so*~` the place between the two signs is the inner one's.
std::optional<Ends> ends_at(const Script& script, Offset at) {
    const Placed* placed = script.thought_at(at);
    if (placed == nullptr) return std::nullopt;
    const std::uint32_t by = placed->block.span.begin.value;
    std::optional<Ends> found;
    for (const Mark& mark : placed->thought->written.marks) {
        if (mark.open.empty()) continue;
        const Ends ends{mark.kind, mark.open + by, mark.close.empty() ? Span{} : mark.close + by};
        if (ends.open.contains(at) || ends.close.contains(at)) return ends;
        const bool behind =
            ends.open.touches(at) || (!ends.close.empty() && ends.close.touches(at));
        if (behind && !found) found = ends;
    }
    return found;
}

Highlight to_highlight(const Name::Use& use) {
    return {use.span, use.declares ? Highlight::Kind::declaration : Highlight::Kind::use};
}

// What may stand at both ends of a pair whose ends read the same. Nothing takes the mark away.
std::string_view pattern_of(MarkKind kind) {
    switch (kind) {
    case MarkKind::stress:
    case MarkKind::heavy_stress: return "^(?:\\*{0,3}|_{0,2})$";
    case MarkKind::soft: return "^[~°]?$";
    case MarkKind::quoted: return "^\"?$";
    default: return "^\\S?$";
    }
}

} // namespace

std::vector<Highlight> highlights(const Analysis& analysis, Offset at) {
    std::vector<Highlight> result;
    if (const auto ends = ends_at(analysis.script, at)) {
        result.push_back({ends->open});
        if (!ends->close.empty()) result.push_back({ends->close});
        return result;
    }
    if (const auto name = name_at(analysis, at)) {
        for (const Name::Use& use : name->uses)
            result.push_back(to_highlight(use));
    }
    return result;
}

std::optional<LinkedEnds> linked_ends(const Analysis& analysis, Offset at) {
    const auto ends = ends_at(analysis.script, at);
    if (!ends || ends->close.empty()) return std::nullopt;
    const std::string_view text = analysis.document.text->bytes();
    if (slice(text, ends->open) != slice(text, ends->close)) return std::nullopt;
    return LinkedEnds{ends->open, ends->close, pattern_of(ends->kind)};
}

} // namespace say
