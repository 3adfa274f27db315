// Builds a thought from the nodes of its block. What needs a word list (is this capital word a
// punch?) is settled later, in speech/settle.cpp.
#include "syntax/build.h"

#include "syntax/words.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>
#include <charconv>

namespace say {
namespace {

// How a byte of the source reaches the plain text.
enum class Role : char { text, joined, parting };

void paint(std::vector<Role>& roles, Span span, Role role) {
    for (std::uint32_t i = span.begin.value; i < span.end.value && i < roles.size(); ++i)
        roles[i] = role;
}

// A fourth dot ends the sentence ("I never meant that...."), so one of the dots is text.
bool ends_sentence(std::string_view pause) {
    return std::count(pause.begin(), pause.end(), '.') >= 4;
}

void paint_node(std::vector<Role>& roles, std::string_view source, const MarkNode& node) {
    switch (node.kind.use) {
    case NodeUse::none: return;
    case NodeUse::opener: paint(roles, node.open, Role::joined); return;
    case NodeUse::pair:
        paint(roles, node.open, Role::joined);
        paint(roles, node.close, Role::joined);
        return;
    case NodeUse::standing:
        paint(roles, node.span, Role::parting);
        if (node.kind.mark == MarkKind::pause && ends_sentence(slice(source, node.span))) {
            roles[node.span.begin.value] = Role::text;
        }
        return;
    case NodeUse::note: paint(roles, node.span, Role::parting); return;
    case NodeUse::attached: paint(roles, node.span, Role::joined); return;
    case NodeUse::escape:
        paint(roles, make_span(node.span.begin.value, node.span.begin.value + 1), Role::joined);
        return;
    case NodeUse::code:
        paint(roles, make_span(node.span.begin.value, node.span.begin.value + 1), Role::joined);
        paint(roles, make_span(node.span.end.value - 1, node.span.end.value), Role::joined);
        return;
    }
}

Plain make_plain(std::string_view source, Span content, const std::vector<Role>& roles) {
    Plain plain;
    plain.text.reserve(content.size());
    plain.source.reserve(content.size());
    bool blank = false;
    std::uint32_t blank_at = 0;
    const auto add = [&](char byte, std::uint32_t at) {
        plain.text += byte;
        plain.source.push_back(at);
    };
    for (std::uint32_t at = content.begin.value; at < content.end.value;) {
        const unicode::CodePoint c = unicode::decode(source, at);
        const Role role = roles[at];
        if (role == Role::parting || (role == Role::text && unicode::is_blank(c.value))) {
            if (!blank) blank_at = at;
            blank = true;
        } else if (role == Role::text) {
            if (blank && !plain.text.empty()) add(' ', blank_at);
            blank = false;
            for (std::uint32_t i = 0; i < c.size; ++i)
                add(source[at + i], at + i);
        }
        at += c.size;
    }
    return plain;
}

std::vector<Word> make_words(std::string_view source, const Plain& plain) {
    std::vector<Word> words;
    for (const Span span : split_words(plain.text)) {
        Word word{.plain = span, .source = plain.to_source(span)};
        const std::uint32_t begin = word.source.begin.value;
        word.escaped = begin > 0 && source[begin - 1] == '\\';
        words.push_back(word);
    }
    return words;
}

// The word that ends at or before `at`, -1 if there is none.
int word_before(const std::vector<Word>& words, Offset at) {
    const auto after = std::partition_point(
        words.begin(), words.end(), [&](const Word& word) { return word.source.begin < at; });
    return static_cast<int>(after - words.begin()) - 1;
}

int count_parts(std::string_view argument) {
    int parts = 0;
    bool inside = false;
    for (char c : argument) {
        const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!blank && !inside) ++parts;
        inside = !blank;
    }
    return parts;
}

std::string braces_argument(std::string_view written, MarkKind kind) {
    std::string_view inner = written;
    inner.remove_prefix(std::min<std::size_t>(inner.size(), kind == MarkKind::say_as ? 2 : 1));
    if (inner.ends_with('}')) inner.remove_suffix(1);
    return std::string(ascii::trim(inner));
}

Seconds timed_pause_seconds(std::string_view written) {
    std::string_view inner = written;
    if (inner.starts_with('(')) inner.remove_prefix(1);
    double value = 0;
    std::from_chars(inner.data(), inner.data() + inner.size(), value);
    return Seconds{value};
}

void fill_argument(Mark& mark, std::string_view written) {
    switch (mark.kind) {
    case MarkKind::pronouncer:
    case MarkKind::say_as: mark.argument = braces_argument(written, mark.kind); return;
    case MarkKind::timed_pause:
        mark.argument = std::string(written);
        mark.seconds = timed_pause_seconds(written);
        return;
    // How many x, how many colons: the table of times says what one takes.
    case MarkKind::beat:
    case MarkKind::stretch:
        mark.argument = std::string(written);
        mark.seconds = Seconds{static_cast<double>(written.size())};
        return;
    case MarkKind::direction: {
        std::string_view inner = written;
        if (inner.starts_with('[')) inner.remove_prefix(1);
        if (inner.ends_with(']')) inner.remove_suffix(1);
        mark.argument = std::string(ascii::trim(inner));
        if (const auto time = ending_time(inner)) mark.seconds = time->seconds;
        return;
    }
    default: return;
    }
}

void place_mark(Mark& mark, const MarkNode& node, const std::vector<Word>& words) {
    if (node.kind.use == NodeUse::pair || node.kind.use == NodeUse::opener) {
        mark.open = node.open;
        mark.close = node.close;
        // The first word that reaches beyond the opening, to the last that begins before the
        // closing.
        const auto first = std::partition_point(words.begin(), words.end(), [&](const Word& word) {
            return word.source.end <= node.open.end;
        });
        const int last = word_before(words, node.close.begin);
        mark.first = static_cast<int>(first - words.begin());
        mark.last = last;
        if (mark.first > last) mark.first = mark.last = word_before(words, node.open.begin);
        return;
    }
    mark.first = mark.last = word_before(words, node.span.begin);
    const bool leads = mark.kind == MarkKind::step_up || mark.kind == MarkKind::step_down;
    if (leads) {
        const int next = word_before(words, node.span.begin + 1) + 1;
        if (next < static_cast<int>(words.size())) mark.first = mark.last = next;
    }
    if (mark.kind == MarkKind::pronouncer) {
        const int parts = count_parts(mark.argument);
        if (parts >= 1 && parts <= mark.last + 1) mark.first = mark.last - parts + 1;
    }
}

std::vector<Mark> make_marks(std::string_view source, std::span<const MarkNode> nodes,
                             const std::vector<Word>& words) {
    std::vector<Mark> marks;
    for (const MarkNode& node : nodes) {
        const NodeUse use = node.kind.use;
        const bool marks_something = use == NodeUse::pair || use == NodeUse::opener ||
                                     use == NodeUse::standing || use == NodeUse::attached;
        if (!marks_something) continue;
        Mark mark{
            .kind = node.kind.mark, .span = node.span, .open = {}, .close = {}, .argument = {}};
        fill_argument(mark, slice(source, node.span));
        place_mark(mark, node, words);
        marks.push_back(std::move(mark));
    }
    return marks;
}

constexpr NodeName pair_row(std::string_view name, MarkKind kind) {
    return {name, {NodeUse::pair, kind}};
}
constexpr NodeName standing_row(std::string_view name, MarkKind kind) {
    return {name, {NodeUse::standing, kind}};
}
constexpr NodeName attached_row(std::string_view name, MarkKind kind) {
    return {name, {NodeUse::attached, kind}};
}

constexpr std::array<NodeName, 26> names{{
    standing_row("pause", MarkKind::pause),
    standing_row("beat", MarkKind::beat),
    standing_row("breath", MarkKind::breath),
    standing_row("reset", MarkKind::reset),
    standing_row("micropause", MarkKind::micropause),
    standing_row("timed_pause", MarkKind::timed_pause),
    standing_row("tie", MarkKind::tie),
    standing_row("direction", MarkKind::direction),
    pair_row("stress", MarkKind::stress),
    pair_row("heavy_stress", MarkKind::heavy_stress),
    pair_row("soft", MarkKind::soft),
    pair_row("aside", MarkKind::aside),
    pair_row("quoted", MarkKind::quoted),
    {"quoted_open", {NodeUse::opener, MarkKind::quoted}},
    pair_row("quick", MarkKind::quick),
    pair_row("slow", MarkKind::slow),
    attached_row("step_up", MarkKind::step_up),
    attached_row("step_down", MarkKind::step_down),
    attached_row("end_up", MarkKind::end_up),
    attached_row("end_down", MarkKind::end_down),
    attached_row("stretch", MarkKind::stretch),
    attached_row("pronouncer", MarkKind::pronouncer),
    attached_row("say_as", MarkKind::say_as),
    {"escape", {NodeUse::escape, MarkKind::pause}},
    {"code", {NodeUse::code, MarkKind::pause}},
    {"note", {NodeUse::note, MarkKind::pause}},
}};

} // namespace

std::span<const NodeName> node_names() {
    return names;
}

Span Plain::to_source(Span plain) const {
    if (source.empty()) return {};
    const auto last = static_cast<std::uint32_t>(source.size());
    const std::uint32_t begin = std::min(plain.begin.value, last - 1);
    const std::uint32_t end = std::clamp(plain.end.value, begin + 1, last);
    if (plain.empty()) return {Offset{source[begin]}, Offset{source[begin]}};
    return make_span(source[begin], source[end - 1] + 1);
}

Written build(std::string_view source, Span content, std::span<const MarkNode> nodes) {
    std::vector<Role> roles(source.size(), Role::text);
    Written written;
    for (const MarkNode& node : nodes) {
        paint_node(roles, source, node);
        if (node.kind.use == NodeUse::note) read_allow(slice(source, node.span), written.allow);
    }
    written.plain = make_plain(source, content, roles);
    written.words = make_words(source, written.plain);
    written.marks = make_marks(source, nodes, written.words);
    if (!written.marks.empty() && written.marks.front().kind == MarkKind::direction) {
        const Mark& first = written.marks.front();
        const bool opens = first.first < 0 && unicode::to_lower(first.argument) == "spare";
        written.spare = opens;
    }
    std::vector<char> hidden(source.size(), 0);
    for (std::size_t i = 0; i < source.size(); ++i)
        hidden[i] = roles[i] == Role::text ? 0 : 1;
    written.problems = find_problems(source, content, hidden, written);
    return written;
}

void read_allow(std::string_view line, std::vector<std::string>& allow) {
    line = ascii::trim(line);
    if (line.starts_with('%')) line = ascii::trim(line.substr(1));
    constexpr std::string_view key = "allow:";
    if (!line.starts_with(key)) return;
    line.remove_prefix(key.size());
    while (!line.empty()) {
        const std::size_t comma = line.find_first_of(", ");
        const std::string_view id = ascii::trim(line.substr(0, comma));
        if (!id.empty()) allow.emplace_back(id);
        if (comma == std::string_view::npos) return;
        line.remove_prefix(comma + 1);
    }
}

Written build_too_long(std::string_view source, Span content) {
    Written written;
    const std::vector<Role> roles(source.size(), Role::text);
    written.plain = make_plain(source, content, roles);
    written.words = make_words(source, written.plain);
    written.problems.push_back(
        {ProblemKind::too_long, make_span(content.begin.value, content.begin.value + 1), "64 KiB"});
    return written;
}

Written plain_thought(std::string_view line) {
    Written written;
    written.plain.text = std::string(line);
    written.plain.source.resize(line.size());
    for (std::size_t i = 0; i < line.size(); ++i)
        written.plain.source[i] = static_cast<std::uint32_t>(i);
    written.words = make_words(line, written.plain);
    for (Word& word : written.words)
        word.escaped = false;
    return written;
}

} // namespace say
