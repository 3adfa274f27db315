// What edits do to the words and the marks, seen by reading anew what they touch: a rule
// knows its own thought as it stands, not what the parser makes of the text afterwards.
#include "engine/analysis.h"
#include "speech/settle.h"

#include <algorithm>

namespace say {
namespace {

struct Told {
    std::string spoken;
    std::ptrdiff_t torn = 0; // signs that open what nothing closes, or close what nothing opens
};

void add(Told& told, const Written& written, const Reading& reading) {
    for (const Said& said : reading.said)
        told.spoken += join(said.spoken) + " ";
    told.torn +=
        std::count_if(written.problems.begin(), written.problems.end(), [](const Problem& problem) {
            return problem.kind == ProblemKind::unclosed || problem.kind == ProblemKind::stray;
        });
}

bool is_thought(const Block& block) {
    return block.kind == BlockKind::paragraph || block.kind == BlockKind::item;
}

Told told_by(const Script& script, Span blocks) {
    Told told;
    for (const Placed& placed : script.thoughts) {
        if (placed.block.span.end < blocks.begin) continue;
        if (placed.block.span.begin >= blocks.end) break;
        add(told, placed.thought->written, placed.thought->reading);
    }
    return told;
}

Told told_by(std::string_view text, std::span<const Block> blocks, const Options& options) {
    Told told;
    Parser parser;
    for (const Block& block : blocks) {
        if (!is_thought(block)) continue;
        Written written = parser.parse(text, block);
        settle(written);
        const Reading reading = read(written, slice(text, block.span), options.voice);
        add(told, written, reading);
    }
    return told;
}

} // namespace

Outcome outcome_of(const Analysis& analysis, std::vector<TextEdit> edits) {
    const Script& script = analysis.script;
    const std::string_view before = analysis.document.text->bytes();
    const Offset header_end = script.header.span.end;
    for (const TextEdit& edit : edits) {
        if (edit.span.begin <= header_end && !script.header.span.empty()) return {};
    }
    const std::string after = apply(before, std::move(edits));
    const Recut recut =
        recut_blocks(after, script.header, script.blocks, difference(before, after));
    const std::size_t old_end = script.blocks.size() - recut.after;
    if (recut.before > old_end) return {};
    Span old{};
    if (recut.before < old_end) {
        old = {script.blocks[recut.before].span.begin, script.blocks[old_end - 1].span.end};
        old.end.value = std::max(old.end.value, old.begin.value + 1);
    }
    const std::span<const Block> blocks(recut.blocks);
    const Told was = told_by(script, old);
    const Told is =
        told_by(after, blocks.subspan(recut.before, blocks.size() - recut.after - recut.before),
                analysis.options);
    return {.keeps_words = is.spoken == was.spoken, .torn = is.torn - was.torn};
}

} // namespace say
