// What edits do to the words and the marks, seen by reading anew what they touch: a rule
// knows its own thought as it stands, not what the parser makes of the text afterwards.
#include "base/hash.h"
#include "engine/analysis.h"
#include "speech/settle.h"

#include <algorithm>

namespace say {
namespace {

// One thought before or after the edits. Its words are read only when they are asked for: where a
// fix writes marks alone, the text shows that they stay.
struct Version {
    const Written* written = nullptr;
    std::span<const Said> said; // empty: not read yet
};

bool is_thought(const Block& block) {
    return block.kind == BlockKind::paragraph || block.kind == BlockKind::item;
}

std::vector<Version> versions_in(const Script& script, Span blocks) {
    std::vector<Version> versions;
    const auto first = std::partition_point(
        script.thoughts.begin(), script.thoughts.end(),
        [&](const Placed& placed) { return placed.block.span.end < blocks.begin; });
    for (auto placed = first; placed != script.thoughts.end(); ++placed) {
        if (placed->block.span.begin >= blocks.end) break;
        const Thought& thought = *placed->thought;
        versions.push_back({&thought.written, thought.reading.said});
    }
    return versions;
}

std::vector<Written> parse_all(std::string_view text, std::span<const Block> blocks) {
    thread_local Parser parser; // one a worker
    std::vector<Written> all;
    for (const Block& block : blocks) {
        if (!is_thought(block)) continue;
        all.push_back(parser.parse(text, block));
        settle(all.back());
    }
    return all;
}

std::vector<Version> versions_of(const std::vector<Written>& thoughts) {
    std::vector<Version> versions;
    versions.reserve(thoughts.size());
    for (const Written& written : thoughts)
        versions.push_back({&written, {}});
    return versions;
}

// --- words ---------------------------------------------------------------------------------------

bool says_otherwise(const Mark& mark) {
    return mark.kind == MarkKind::say_as || mark.kind == MarkKind::pronouncer;
}

// True if all that the spoken words are made from is the same: the text without its marks, and the
// marks that give a word another one.
bool sounds_alike(const Written& a, const Written& b) {
    if (a.plain.text != b.plain.text) return false;
    const auto same_place = [](const Word& one, const Word& other) {
        return one.plain == other.plain;
    };
    if (!std::equal(a.words.begin(), a.words.end(), b.words.begin(), b.words.end(), same_place))
        return false;
    auto one = a.marks.begin();
    auto other = b.marks.begin();
    while (true) {
        one = std::find_if(one, a.marks.end(), says_otherwise);
        other = std::find_if(other, b.marks.end(), says_otherwise);
        if (one == a.marks.end() || other == b.marks.end())
            return one == a.marks.end() && other == b.marks.end();
        if (one->kind != other->kind || one->argument != other->argument ||
            one->first != other->first || one->last != other->last)
            return false;
        ++one;
        ++other;
    }
}

std::string spoken_in(std::span<const Version> versions, const Voice& voice) {
    std::string spoken;
    for (const Version& version : versions) {
        std::vector<Said> made;
        if (version.said.empty()) made = read_words(*version.written, voice);
        for (const Said& said : version.said.empty() ? std::span<const Said>(made) : version.said)
            spoken += join(said.spoken) + " ";
    }
    return spoken;
}

bool keeps_words(std::span<const Version> was, std::span<const Version> is, const Voice& voice) {
    const auto alike = [](const Version& a, const Version& b) {
        return sounds_alike(*a.written, *b.written);
    };
    while (!was.empty() && !is.empty() && alike(was.front(), is.front())) {
        was = was.subspan(1);
        is = is.subspan(1);
    }
    while (!was.empty() && !is.empty() && alike(was.back(), is.back())) {
        was = was.first(was.size() - 1);
        is = is.first(is.size() - 1);
    }
    return spoken_in(was, voice) == spoken_in(is, voice);
}

// Signs that open what nothing closes, or close what nothing opens.
std::ptrdiff_t torn_in(std::span<const Version> versions) {
    std::ptrdiff_t torn = 0;
    for (const Version& version : versions) {
        const std::vector<Problem>& problems = version.written->problems;
        torn += std::count_if(problems.begin(), problems.end(), [](const Problem& problem) {
            return problem.kind == ProblemKind::unclosed || problem.kind == ProblemKind::stray;
        });
    }
    return torn;
}

// --- what is read anew --------------------------------------------------------------------------

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
    const auto blocks =
        std::span<const Block>(recut.blocks)
            .subspan(recut.before, recut.blocks.size() - recut.after - recut.before);
    const std::vector<Written> written = parse_all(after, blocks);
    const std::vector<Version> was = versions_in(analysis.script, old);
    const std::vector<Version> is = versions_of(written);
    return {.keeps_words = keeps_words(was, is, analysis.options.voice),
            .torn = torn_in(is) - torn_in(was)};
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
