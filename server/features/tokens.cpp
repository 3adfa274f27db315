// textDocument/semanticTokens: marks, and the words under them, by what the reader does.
#include "features/features.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr std::array<std::string_view, 8> type_names = {"heading", "key",       "value", "speaker",
                                                        "note",    "direction", "mark",  "words"};
constexpr std::array<std::string_view, 9> modifier_names = {
    "stress", "heavy", "soft", "quick", "slow", "aside", "quoted", "punch", "unspoken"};

std::uint32_t modifier_of(MarkKind kind) {
    const auto bit = [](TokenModifier modifier) { return static_cast<std::uint32_t>(modifier); };
    switch (kind) {
    case MarkKind::stress: return bit(TokenModifier::stress);
    case MarkKind::heavy_stress: return bit(TokenModifier::heavy);
    case MarkKind::soft: return bit(TokenModifier::soft);
    case MarkKind::quick: return bit(TokenModifier::quick);
    case MarkKind::slow: return bit(TokenModifier::slow);
    case MarkKind::aside: return bit(TokenModifier::aside);
    case MarkKind::quoted: return bit(TokenModifier::quoted);
    case MarkKind::punch: return bit(TokenModifier::punch);
    default: return 0;
    }
}

// One colour a byte; runs of the same colour on one line become tokens. 0 is plain text.
using Colour = std::uint32_t;

Colour colour(TokenType type, std::uint32_t modifiers = 0) {
    return (modifiers << 8U) | (static_cast<Colour>(type) + 1);
}

class Painter {
public:
    Painter(std::string_view text, Span span, std::vector<Token>& tokens)
        : text_(text), span_(span), colours_(span.size(), 0), tokens_(tokens) {}

    void paint(Span span, Colour with) {
        const std::uint32_t begin = std::max(span.begin, span_.begin).value - span_.begin.value;
        const std::uint32_t end = std::min(span.end, span_.end).value;
        for (std::uint32_t i = begin; i + span_.begin.value < end; ++i)
            colours_[i] = with;
    }

    // Marks on words add up: heavy stress within a slow stretch is both.
    void add(Span span, std::uint32_t modifier) {
        const std::uint32_t begin = std::max(span.begin, span_.begin).value - span_.begin.value;
        const std::uint32_t end = std::min(span.end, span_.end).value;
        for (std::uint32_t i = begin; i + span_.begin.value < end; ++i) {
            colours_[i] = colour(TokenType::words, (colours_[i] >> 8U) | modifier);
        }
    }

    void finish() {
        for (std::uint32_t i = 0; i < colours_.size();) {
            const Colour here = colours_[i];
            std::uint32_t end = i + 1;
            while (end < colours_.size() && colours_[end] == here && !line_end(i)) {
                if (line_end(end)) break;
                ++end;
            }
            if (here != 0 && !line_end(i)) {
                tokens_.push_back({make_span(i, end) + span_.begin.value,
                                   static_cast<TokenType>((here & 0xFFU) - 1), here >> 8U});
            }
            i = end;
        }
    }

private:
    bool line_end(std::uint32_t i) const {
        const char c = text_[span_.begin.value + i];
        return c == '\n' || c == '\r';
    }

    std::string_view text_;
    Span span_;
    std::vector<Colour> colours_;
    std::vector<Token>& tokens_;
};

// Note lines inside a thought.
void paint_notes(Painter& painter, std::string_view text, Span span) {
    std::uint32_t line = span.begin.value;
    while (line < span.end.value) {
        std::uint32_t end = line;
        while (end < span.end.value && text[end] != '\n' && text[end] != '\r')
            ++end;
        std::uint32_t first = line;
        while (first < end && (text[first] == ' ' || text[first] == '\t'))
            ++first;
        const bool note =
            first < end && text[first] == '%' && (first + 1 == end || text[first + 1] == ' ');
        if (note) painter.paint(make_span(first, end), colour(TokenType::note));
        line = end + 1;
    }
}

void paint_thought(std::string_view text, const Placed& placed, std::vector<Token>& tokens) {
    const Block& block = placed.block;
    Painter painter(text, block.span, tokens);
    if (block.kind == BlockKind::item) {
        const Offset marker_end = block.speaker.empty() ? block.content.begin : block.speaker.begin;
        painter.paint({block.span.begin, marker_end}, colour(TokenType::mark));
    }
    if (!block.speaker.empty()) {
        painter.paint({block.speaker.begin, block.speaker.end + 1}, colour(TokenType::speaker));
    }
    const std::uint32_t by = block.span.begin.value;
    const std::vector<Mark>& marks = placed.thought->written.marks;
    for (const Mark& mark : marks) {
        const std::uint32_t modifier = modifier_of(mark.kind);
        if (modifier == 0) continue;
        const Offset begin = mark.open.empty() ? mark.span.begin : mark.open.end;
        const Offset end = mark.open.empty() ? mark.span.end : mark.close.begin;
        painter.add(Span{begin, end} + by, modifier);
    }
    for (const Mark& mark : marks) {
        if (mark.kind == MarkKind::punch) continue;
        if (!mark.open.empty()) {
            painter.paint(mark.open + by, colour(TokenType::mark, modifier_of(mark.kind)));
            painter.paint(mark.close + by, colour(TokenType::mark, modifier_of(mark.kind)));
            continue;
        }
        const TokenType type =
            mark.kind == MarkKind::direction ? TokenType::direction : TokenType::mark;
        painter.paint(mark.span + by, colour(type));
    }
    paint_notes(painter, text, block.span);
    painter.finish();
}

void paint_header(const Header& header, std::vector<Token>& tokens) {
    for (const HeaderEntry& entry : header.entries) {
        tokens.push_back({entry.key, TokenType::key, 0});
        if (!entry.value.empty()) tokens.push_back({entry.value, TokenType::value, 0});
    }
}

} // namespace

std::string_view name_of(TokenType type) {
    return type_names[static_cast<std::size_t>(type)];
}

std::vector<std::string_view> token_type_names() {
    return {type_names.begin(), type_names.end()};
}

std::vector<std::string_view> token_modifier_names() {
    return {modifier_names.begin(), modifier_names.end()};
}

std::vector<Token> tokens(const Analysis& analysis, Span range) {
    std::vector<Token> result;
    const Script& script = analysis.script;
    const std::string_view text = analysis.document.text->bytes();
    if (!script.header.span.empty() && script.header.span.end >= range.begin)
        paint_header(script.header, result);

    auto placed = script.thoughts.begin();
    for (const Block& block : script.blocks) {
        if (block.span.begin > range.end) break;
        if (block.span.end < range.begin) continue;
        switch (block.kind) {
        case BlockKind::heading: {
            Painter painter(text, block.span, result);
            painter.paint(block.span, colour(TokenType::heading));
            painter.finish();
            break;
        }
        case BlockKind::note: {
            Painter painter(text, block.span, result);
            painter.paint(block.span, colour(TokenType::note));
            painter.finish();
            break;
        }
        case BlockKind::divider: result.push_back({block.span, TokenType::mark, 0}); break;
        case BlockKind::paragraph:
        case BlockKind::item:
            if (!block.notes.empty()) {
                Painter painter(text, block.notes, result);
                painter.paint(block.notes, colour(TokenType::note));
                painter.finish();
            }
            placed = std::lower_bound(
                placed, script.thoughts.end(), block.span.begin,
                [](const Placed& each, Offset begin) { return each.block.span.begin < begin; });
            if (placed != script.thoughts.end()) paint_thought(text, *placed, result);
            break;
        }
    }
    return result;
}

} // namespace say
