// Findings wait for the writer: nobody wants to hear of a word, a mark or a line of the header
// before it is there.
#include "features/features.h"

namespace say {
namespace {

// A mark that was opened above the cursor in its thought may still be closed.
bool may_be_closed(const Analysis& analysis, const Finding& finding, Offset cursor) {
    if (finding.rule->id != "mark-unclosed" || finding.span.begin >= cursor) return false;
    const Placed* placed = analysis.script.thought_at(cursor);
    return placed != nullptr && placed->span().touches(finding.span.begin);
}

// A header is open for as long as it is written, and a line behind its last key is the next.
bool is_header_open(const Analysis& analysis, const Finding& finding, Offset cursor) {
    const Header& header = analysis.script.header;
    if (finding.rule->id != "header-unclosed" || header.closed) return false;
    const Text& text = *analysis.document.text;
    return text.line_of(cursor) <= text.line_of(header.span.end) + 1;
}

} // namespace

Telling telling_of(const Analysis& analysis, const Finding& finding, Offset cursor) {
    if (finding.rule == nullptr) return Telling::now;
    if (finding.rule->id == "off-target") return Telling::as_it_stands;
    // How long a sentence or a breath is holds at every key.
    const bool at_cursor = finding.rule->family != Family::length && finding.span.touches(cursor);
    const bool later = at_cursor || may_be_closed(analysis, finding, cursor) ||
                       is_header_open(analysis, finding, cursor);
    return later ? Telling::later : Telling::now;
}

} // namespace say
