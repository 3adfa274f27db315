// Cuts a script into blocks by its lines alone: a scan at memory speed, the same on every
// keystroke. The grammar cuts the same way; a property test holds the two equal.
#include "syntax/script.h"
#include "text/unicode.h"

#include <algorithm>
#include <cstring>

namespace say {
namespace {

struct Line {
    Span span;               // without its line end
    std::uint32_t first = 0; // the first byte that is no blank; span.end on a blank line
    std::uint32_t next = 0;  // where the next line begins
};

Line line_at(std::string_view text, std::uint32_t begin) {
    const auto size = static_cast<std::uint32_t>(text.size());
    std::uint32_t end = begin;
    while (end < size && text[end] != '\n' && text[end] != '\r')
        ++end;
    std::uint32_t next = end;
    if (next < size && text[next] == '\r') ++next;
    if (next < size && text[next] == '\n' && (next == end || text[next - 1] == '\r')) ++next;

    std::uint32_t first = begin;
    while (first < end) {
        const auto byte = static_cast<unsigned char>(text[first]);
        if (byte > ' ' && byte < 0x80) break;
        const unicode::CodePoint c = unicode::decode(text, first);
        if (!unicode::is_blank(c.value)) break;
        first += c.size;
    }
    return {make_span(begin, end), std::min(first, end), next};
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

bool is_space(char c) {
    return c == ' ' || c == '\t';
}

// What a line's beginning makes of it. `size` is the length of the marker with its blanks.
struct Opening {
    enum class Kind { text, heading, item, note, divider } kind = Kind::text;
    std::uint32_t size = 0;
    int level = 0;
    int number = 0; // of a numbered item; 0 for "- "
};

Opening opening_of(std::string_view rest) {
    if (rest.empty()) return {};
    const auto at = [&](std::size_t i) { return i < rest.size() ? rest[i] : '\0'; };
    const auto blanks_from = [&](std::size_t i) {
        while (is_space(at(i)))
            ++i;
        return static_cast<std::uint32_t>(i);
    };
    switch (rest[0]) {
    case '#': {
        std::size_t level = 1;
        while (level < 4 && at(level) == '#')
            ++level;
        if (level > 3 || !is_space(at(level))) return {};
        const std::uint32_t size = blanks_from(level);
        if (size >= rest.size()) return {};
        return {Opening::Kind::heading, size, static_cast<int>(level), 0};
    }
    case '%':
        if (!is_space(at(1)) && rest.size() > 1) return {};
        return {Opening::Kind::note, blanks_from(1), 0, 0};
    case '-':
        if (is_space(at(1))) {
            const std::uint32_t size = blanks_from(1);
            if (size >= rest.size()) return {};
            return {Opening::Kind::item, size, 0, 0};
        }
        if (rest.starts_with("---") && blanks_from(3) == rest.size()) {
            return {Opening::Kind::divider, 3, 0, 0};
        }
        return {};
    default: break;
    }
    if (!is_digit(rest[0])) return {};
    std::size_t digits = 1;
    if (is_digit(at(1))) digits = 2;
    if (at(digits) != '.' || !is_space(at(digits + 1))) return {};
    const std::uint32_t size = blanks_from(digits + 1);
    if (size >= rest.size()) return {};
    int number = rest[0] - '0';
    if (digits == 2) number = number * 10 + (rest[1] - '0');
    return {Opening::Kind::item, size, 0, number == 0 ? 100 : number};
}

// The length of a declared speaker's name (or names joined by AND or +) before a colon, or 0.
// Calls `each` with begin and size of every name on the way, also where it comes to nothing.
template <class Each>
std::uint32_t read_speakers(std::string_view rest, const std::vector<Speaker>& speakers,
                            Each each) {
    std::size_t at = 0;
    while (true) {
        const Speaker* best = nullptr;
        for (const Speaker& speaker : speakers) {
            if (!rest.substr(at).starts_with(speaker.name)) continue;
            if (best == nullptr || speaker.name.size() > best->name.size()) best = &speaker;
        }
        if (best == nullptr) return 0;
        each(at, best->name.size());
        at += best->name.size();
        if (at < rest.size() && rest[at] == ':') break;
        std::size_t joint = at;
        while (joint < rest.size() && rest[joint] == ' ')
            ++joint;
        if (rest.substr(joint).starts_with("AND ")) {
            joint += 4;
        } else if (rest.substr(joint).starts_with("+")) {
            joint += 1;
        } else {
            return 0;
        }
        while (joint < rest.size() && rest[joint] == ' ')
            ++joint;
        at = joint;
    }
    const std::size_t behind = at + 1;
    if (behind < rest.size() && !is_space(rest[behind]) && rest[behind] != '\n' &&
        rest[behind] != '\r') {
        return 0;
    }
    return static_cast<std::uint32_t>(at);
}

std::uint32_t speaker_size(std::string_view rest, const std::vector<Speaker>& speakers) {
    return read_speakers(rest, speakers, [](std::size_t, std::size_t) {});
}

class Cutter {
public:
    Cutter(std::string_view text, const Header& header) : text_(text), header_(header) {}

    std::vector<Block> cut() {
        blocks_.reserve(text_.size() / 80 + 4);
        cut_from(body_begin(), [](std::uint32_t) { return false; });
        return std::move(blocks_);
    }

    Recut cut_around(const std::vector<Block>& old, Change change) {
        const std::uint32_t from = blank_line_above(change.begin);
        const auto stands_before = [](std::uint32_t at) {
            return [at](const Block& block) { return block.span.begin.value < at; };
        };
        const auto first = std::partition_point(old.begin(), old.end(), stands_before(from));
        blocks_.reserve(old.size() + 4);
        blocks_.assign(old.begin(), first);
        Recut result;
        result.before = blocks_.size();
        // A blank line that stands whole behind the change, with its line end above, is a blank
        // line of the old text too: from there on all is as it was.
        const std::uint32_t at =
            cut_from(from, [&](std::uint32_t line) { return line > change.new_end; });
        const auto rest =
            std::partition_point(first, old.end(), stands_before(at - change.shift()));
        result.after = static_cast<std::size_t>(old.end() - rest);
        for (auto block = rest; block != old.end(); ++block)
            blocks_.push_back(moved(*block, change.shift()));
        result.blocks = std::move(blocks_);
        return result;
    }

private:
    std::uint32_t body_begin() const {
        const std::uint32_t end = header_.span.end.value;
        return header_.span.empty() ? end : line_at(text_, end).next;
    }

    // Cuts until behind a blank line at which `stops`, or to the end; says where that is.
    template <class Stops> std::uint32_t cut_from(std::uint32_t at, Stops stops) {
        while (at < text_.size()) {
            const Line line = line_at(text_, at);
            take(line);
            at = line.next;
            if (is_blank(line) && stops(line.span.begin.value)) return at;
        }
        close();
        return at;
    }

    static bool is_blank(const Line& line) { return line.first == line.span.end.value; }

    // Where the last blank line begins that ends before `at`, else the body's first line.
    std::uint32_t blank_line_above(std::uint32_t at) const {
        const std::uint32_t body = body_begin();
        for (std::size_t end = at; end > body;) {
            const std::size_t feed = text_.rfind('\n', end - 1);
            if (feed == std::string_view::npos || feed < body) return body;
            const Line line = line_at(text_, static_cast<std::uint32_t>(feed) + 1);
            const bool whole = line.next > line.span.end.value && line.next <= at;
            if (is_blank(line) && whole) return line.span.begin.value;
            end = feed;
        }
        return body;
    }

    void take(const Line& line) {
        if (is_blank(line)) {
            close();
            return;
        }
        const std::string_view rest = slice(text_, {Offset{line.first}, line.span.end});
        Opening opening = opening_of(rest);
        const bool numbered = opening.kind == Opening::Kind::item && opening.number != 0;
        if (numbered && opening.number != 1 && !(open_ && numbered_)) {
            opening = {}; // a figure that begins a sentence: "5. That's all"
        }
        switch (opening.kind) {
        case Opening::Kind::heading: {
            close();
            block_ = Block{.kind = BlockKind::heading,
                           .span = line.span,
                           .notes = {},
                           .content = {Offset{line.first + opening.size}, line.span.end},
                           .speaker = {},
                           .level = opening.level};
            open_ = true;
            close();
            return;
        }
        case Opening::Kind::divider:
            close();
            block_ = Block{.kind = BlockKind::divider,
                           .span = line.span,
                           .notes = {},
                           .content = {},
                           .speaker = {}};
            open_ = true;
            close();
            return;
        case Opening::Kind::item: {
            const Span notes = notes_above();
            close();
            begin(BlockKind::item, line, line.first + opening.size, notes);
            numbered_ = numbered;
            return;
        }
        case Opening::Kind::note: note(line); return;
        case Opening::Kind::text: {
            const std::uint32_t named = speaker_size(rest, header_.speakers);
            if (!open_ || named > 0) {
                const Span notes = notes_above();
                close();
                begin(BlockKind::paragraph, line, line.first, notes);
            } else {
                grow(line);
            }
            return;
        }
        }
    }

    void begin(BlockKind kind, const Line& line, std::uint32_t content, Span notes) {
        block_ =
            Block{.kind = kind, .span = line.span, .notes = notes, .content = {}, .speaker = {}};
        const std::string_view rest = slice(text_, {Offset{content}, line.span.end});
        if (const std::uint32_t size = speaker_size(rest, header_.speakers)) {
            block_.speaker = make_span(content, content + size);
            content += size + 1;
            while (content < line.span.end.value && is_space(text_[content]))
                ++content;
        }
        block_.content = {Offset{content}, line.span.end};
        open_ = true;
        numbered_ = false;
    }

    void grow(const Line& line) {
        block_.span.end = line.span.end;
        block_.content.end = line.span.end;
        trailing_ = {};
    }

    void note(const Line& line) {
        if (open_) {
            if (trailing_.empty()) trailing_.begin = line.span.begin;
            trailing_.end = line.span.end;
            block_.span.end = line.span.end;
            block_.content.end = line.span.end;
            return;
        }
        if (pending_.empty()) pending_.begin = line.span.begin;
        pending_.end = line.span.end;
    }

    // Note lines directly above a new thought belong to it.
    Span notes_above() {
        Span notes = pending_;
        pending_ = {};
        if (open_ && !trailing_.empty()) {
            notes = trailing_;
            block_.span.end = before(trailing_.begin);
            block_.content.end = std::max(block_.content.begin, block_.span.end);
        }
        return notes;
    }

    // The end of the line above `at`.
    Offset before(Offset at) const {
        while (at > block_.span.begin &&
               (text_[at.value - 1] == '\n' || text_[at.value - 1] == '\r')) {
            --at.value;
        }
        return at;
    }

    void close() {
        if (!pending_.empty()) {
            blocks_.push_back(Block{.kind = BlockKind::note,
                                    .span = pending_,
                                    .notes = {},
                                    .content = {},
                                    .speaker = {}});
            pending_ = {};
        }
        if (open_) blocks_.push_back(block_);
        open_ = false;
        trailing_ = {};
    }

    std::string_view text_;
    const Header& header_;
    std::vector<Block> blocks_;
    Block block_;
    bool open_ = false;
    bool numbered_ = false; // the open thought is an item with a number
    Span pending_;          // note lines with no thought yet
    Span trailing_;         // note lines at the end of the open thought
};

} // namespace

std::vector<Span> speaker_names(std::string_view text, const Block& block, const Header& header) {
    std::vector<Span> names;
    if (block.speaker.empty()) return names;
    const Span line{block.speaker.begin, block.content.end};
    read_speakers(slice(text, line), header.speakers, [&](std::size_t begin, std::size_t size) {
        names.push_back(make_span(begin, begin + size) + block.speaker.begin.value);
    });
    return names;
}

Block moved(Block block, std::uint32_t by) {
    for (Span* span : {&block.span, &block.notes, &block.content, &block.speaker}) {
        if (*span != Span{}) *span = *span + by;
    }
    return block;
}

std::vector<Block> cut_blocks(std::string_view text, const Header& header) {
    return Cutter(text, header).cut();
}

Recut recut_blocks(std::string_view text, const Header& header, const std::vector<Block>& old,
                   Change change) {
    return Cutter(text, header).cut_around(old, change);
}

} // namespace say
