// What edits do to the words and the marks, seen by reading anew what they touch: a rule
// knows its own thought as it stands, not what the parser makes of the text afterwards.
#include "base/hash.h"
#include "engine/analysis.h"
#include "speech/settle.h"

#include <algorithm>

namespace say {
namespace {

struct Told {
    std::string spoken;
    std::ptrdiff_t torn = 0; // signs that open what nothing closes, or close what nothing opens
};

void add(Told& told, const Written& written, std::span<const Said> words) {
    for (const Said& said : words)
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
    const auto first = std::partition_point(
        script.thoughts.begin(), script.thoughts.end(),
        [&](const Placed& placed) { return placed.block.span.end < blocks.begin; });
    for (auto placed = first; placed != script.thoughts.end(); ++placed) {
        if (placed->block.span.begin >= blocks.end) break;
        add(told, placed->thought->written, placed->thought->reading.said);
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
        add(told, written, read_words(written, slice(text, block.span), options.voice));
    }
    return told;
}

// The blocks that edits lie in with those beside them, cut out of the script: what is tried costs
// the same in a long one.
struct Cutout {
    std::uint32_t begin = 0; // in the script
    std::string_view text;
    std::vector<Block> blocks; // their places are in `text`

    std::vector<TextEdit> moved(std::vector<TextEdit> edits) const {
        for (TextEdit& edit : edits)
            edit.span = edit.span + (0U - begin);
        return edits;
    }
};

Cutout cut_out(const Analysis& analysis, const std::vector<TextEdit>& edits) {
    constexpr std::ptrdiff_t beside = 2; // whether a number begins an item, the block above says
    const std::vector<Block>& blocks = analysis.script.blocks;
    Span touched = edits.front().span;
    for (const TextEdit& edit : edits) {
        touched.begin = std::min(touched.begin, edit.span.begin);
        touched.end = std::max(touched.end, edit.span.end);
    }
    auto first = std::partition_point(blocks.begin(), blocks.end(), [&](const Block& block) {
        return block.span.end < touched.begin;
    });
    auto last = std::partition_point(
        first, blocks.end(), [&](const Block& block) { return block.span.begin <= touched.end; });
    first -= std::min(beside, first - blocks.begin());
    last += std::min(beside, blocks.end() - last);
    const std::string_view text = analysis.document.text->bytes();
    Cutout cutout;
    cutout.begin =
        first == blocks.begin() ? analysis.script.header.span.end.value : first->span.begin.value;
    const std::size_t end = last == blocks.end() ? text.size() : last->span.begin.value;
    cutout.text = text.substr(cutout.begin, end - cutout.begin);
    for (auto block = first; block != last; ++block)
        cutout.blocks.push_back(moved(*block, 0U - cutout.begin));
    return cutout;
}

// All that an outcome depends on. Two that share 64 bits by accident are not to be feared: a fix
// would be shown or not, and nothing is done before the writer chooses it.
std::uint64_t key_of(const Analysis& analysis, const Cutout& cutout,
                     const std::vector<TextEdit>& edits) {
    Hash key;
    const Header& header = analysis.script.header;
    key.add(slice(analysis.document.text->bytes(), header.span)).add(cutout.text);
    for (const std::uint64_t voice : analysis.script.voices)
        key.add(voice);
    for (const TextEdit& edit : edits) {
        key.add(edit.span.begin.value - cutout.begin).add(edit.span.size()).add(edit.replacement);
    }
    return key.value();
}

Outcome try_on(const Analysis& analysis, const Cutout& cutout, std::vector<TextEdit> edits) {
    const std::string after = apply(cutout.text, cutout.moved(std::move(edits)));
    Header without_place = analysis.script.header; // the cutout begins behind it
    without_place.span = {};
    const Recut recut =
        recut_blocks(after, without_place, cutout.blocks, difference(cutout.text, after));
    const std::size_t old_end = cutout.blocks.size() - recut.after;
    if (recut.before > old_end) return {};
    Span old{};
    if (recut.before < old_end) {
        old = {cutout.blocks[recut.before].span.begin, cutout.blocks[old_end - 1].span.end};
        old.end.value = std::max(old.end.value, old.begin.value + 1);
        old = old + cutout.begin;
    }
    const std::span<const Block> blocks(recut.blocks);
    const Told was = told_by(analysis.script, old);
    const Told is =
        told_by(after, blocks.subspan(recut.before, blocks.size() - recut.after - recut.before),
                analysis.options);
    return {.keeps_words = is.spoken == was.spoken, .torn = is.torn - was.torn};
}

} // namespace

std::optional<Outcome> Tried::find(std::uint64_t key) const {
    const std::lock_guard lock(mutex_);
    const auto found = std::find_if(outcomes_.begin(), outcomes_.end(),
                                    [key](const auto& kept) { return kept.first == key; });
    return found == outcomes_.end() ? std::nullopt : std::optional(found->second);
}

void Tried::keep(std::uint64_t key, Outcome outcome) {
    const std::lock_guard lock(mutex_);
    if (outcomes_.size() >= most) outcomes_.clear();
    outcomes_.emplace_back(key, outcome);
}

Outcome outcome_of(const Analysis& analysis, std::vector<TextEdit> edits) {
    const Header& header = analysis.script.header;
    const bool in_header =
        !header.span.empty() && std::any_of(edits.begin(), edits.end(), [&](const TextEdit& edit) {
            return edit.span.begin <= header.span.end;
        });
    if (in_header || edits.empty()) return {};
    const Placed* placed = analysis.script.thought_at(edits.front().span.begin);
    const Cutout cutout = cut_out(analysis, edits);
    if (placed == nullptr) return try_on(analysis, cutout, std::move(edits));
    const std::uint64_t key = key_of(analysis, cutout, edits);
    if (const auto known = placed->thought->tried.find(key)) return *known;
    const Outcome outcome = try_on(analysis, cutout, std::move(edits));
    placed->thought->tried.keep(key, outcome);
    return outcome;
}

} // namespace say
