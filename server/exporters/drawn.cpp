#include "exporters/drawn.h"

#include <algorithm>
#include <map>

namespace say {
namespace {

// What stands between words, by its place in the source; at one place in the order of the marks.
using Signs = std::multimap<Offset, DrawnPart>;

bool is_own_of(const Mark& mark, int word) {
    switch (row_of(mark.kind).shape) {
    case MarkShape::prefix: return mark.first == word;
    case MarkShape::suffix:
    case MarkShape::word: return std::max(mark.first, mark.last) == word;
    // A tie is the word's before it.
    case MarkShape::standing: return mark.kind == MarkKind::tie && mark.first == word;
    default: return false;
    }
}

bool is_over(const Mark& mark, int word) {
    return row_of(mark.kind).shape == MarkShape::pair && mark.first <= word && word <= mark.last &&
           mark.first >= 0;
}

DrawnWord word_at(const Thought& thought, std::size_t index) {
    const Said& said = thought.reading.said[index];
    DrawnWord word{.text = slice(thought.written.plain.text, thought.written.words[index].plain),
                   .at = said.at,
                   .seconds = said.seconds,
                   .marks = {},
                   .sound = {},
                   .instead = {},
                   .syllables = said.syllables};
    for (const Mark* mark : marks_of(thought, static_cast<int>(index))) {
        if (mark->kind == MarkKind::pronouncer) {
            word.sound = mark->argument;
        } else if (mark->kind == MarkKind::say_as) {
            word.instead = mark->argument;
        } else {
            word.marks.push_back(mark->kind);
        }
    }
    return word;
}

// The moment behind a word: a thought's start for -1.
Seconds behind(const Thought& thought, int word) {
    if (word < 0 || thought.reading.said.empty()) return Seconds{0};
    const Said& said = thought.reading.said[static_cast<std::size_t>(word)];
    return said.at + said.seconds;
}

struct Hold {
    Seconds at{0};
    Seconds seconds{0};
};

// When a mark stops the voice, and for how long: none where the punctuation holds as long.
Hold hold_of(const Thought& thought, const Mark& mark) {
    for (const PauseAt& pause : thought.reading.pauses) {
        if (is_marked(pause) && pause.span.begin == mark.span.begin)
            return {pause.at, pause.seconds};
    }
    return {behind(thought, mark.first), Seconds{0}};
}

// Around whole words, also where a mark encloses a part of one.
void add_edges(Signs& signs, const std::vector<Word>& words, const Mark& mark) {
    const Span first = words[static_cast<std::size_t>(mark.first)].source;
    const Span last = words[static_cast<std::size_t>(mark.last)].source;
    const Offset close = mark.close.empty() ? mark.span.end : mark.close.begin;
    signs.insert({std::min(mark.open.begin, first.begin), DrawnEdge{mark.kind, true}});
    signs.insert({std::max(close, last.end), DrawnEdge{mark.kind, false}});
}

Signs signs_of(const Thought& thought) {
    Signs signs;
    for (const Mark& mark : thought.written.marks) {
        if (is_pause(mark.kind)) {
            const Hold hold = hold_of(thought, mark);
            signs.insert({mark.span.begin, DrawnPause{mark.kind, hold.at, hold.seconds}});
        } else if (mark.kind == MarkKind::direction) {
            const Hold hold = hold_of(thought, mark);
            signs.insert({mark.span.begin, DrawnDirection{mark.argument, hold.at, mark.seconds}});
        } else if (row_of(mark.kind).shape == MarkShape::pair && mark.first >= 0) {
            add_edges(signs, thought.written.words, mark);
        }
    }
    return signs;
}

// Lays words, the signs between them and what stands at places of the source into one row.
class Row {
public:
    explicit Row(const Thought& thought)
        : thought_(thought), signs_(signs_of(thought)), next_(signs_.begin()) {}

    std::vector<DrawnPart> parts() {
        const std::vector<Word>& words = thought_.written.words;
        std::uint32_t done = 0;
        for (std::size_t index = 0; index < words.size(); ++index) {
            add_text(done, words[index].plain.begin.value);
            add_signs(words[index].source.begin);
            parts_.emplace_back(word_at(thought_, index));
            done = words[index].plain.end.value;
        }
        add_text(done, static_cast<std::uint32_t>(thought_.written.plain.text.size()));
        add_signs(Offset{UINT32_MAX});
        return std::move(parts_);
    }

private:
    void add_signs(Offset up_to) {
        for (; next_ != signs_.end() && next_->first <= up_to; ++next_)
            parts_.push_back(next_->second);
    }

    // Plain text, cut where a sign stands in the source.
    void add_text(std::uint32_t begin, std::uint32_t end) {
        const Plain& plain = thought_.written.plain;
        for (std::uint32_t from = begin; from < end;) {
            add_signs(Offset{plain.source[from]});
            std::uint32_t to = from + 1;
            while (to < end && (next_ == signs_.end() || Offset{plain.source[to]} < next_->first))
                ++to;
            parts_.emplace_back(DrawnText{std::string_view(plain.text).substr(from, to - from)});
            from = to;
        }
    }

    const Thought& thought_;
    Signs signs_;
    Signs::const_iterator next_;
    std::vector<DrawnPart> parts_;
};

} // namespace

std::vector<const Mark*> marks_of(const Thought& thought, int word) {
    std::vector<const Mark*> marks;
    for (const Mark& mark : thought.written.marks) {
        if (is_over(mark, word)) marks.push_back(&mark);
    }
    for (const Mark& mark : thought.written.marks) {
        if (is_own_of(mark, word)) marks.push_back(&mark);
    }
    return marks;
}

std::vector<DrawnPart> drawn(const Thought& thought) {
    return Row(thought).parts();
}

std::string_view list_marker(const Analysis& analysis, const Placed& placed) {
    const Block& block = placed.block;
    if (block.kind != BlockKind::item) return {};
    const std::string_view text = analysis.document.text->bytes();
    const std::uint32_t begin = std::max(block.span.begin.value, block.notes.end.value);
    const std::string_view line = text.substr(begin, block.content.begin.value - begin);
    const std::size_t from = line.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return line.substr(from, line.find_first_of(" \t", from) - from);
}

std::string_view drawn_kind(const Placed& placed) {
    if (!placed.thought->has_words()) return "silence";
    return placed.block.kind == BlockKind::item ? "item" : "paragraph";
}

} // namespace say
