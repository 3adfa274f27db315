// textDocument/foldingRange: header, sections, and thoughts, notes and directions of several lines.
#include "features/features.h"

#include <algorithm>

namespace say {
namespace {

// A section without the blank lines below its last words.
Span without_blank_lines(const Text& text, Span span) {
    const auto is_blank = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
    Offset end = span.end;
    while (end > span.begin && is_blank(text.bytes()[end.value - 1]))
        --end.value;
    return {span.begin, text.line_span(text.line_of(end)).end};
}

// Which stay where the editor takes only so many: the lower first.
int rank_of(const Fold& fold, int level) {
    if (fold.kind == Fold::Kind::header) return 0;
    if (fold.kind == Fold::Kind::section) return level;
    return 4;
}

class Folder {
public:
    explicit Folder(const Analysis& analysis)
        : script_(analysis.script), text_(*analysis.document.text) {}

    std::vector<Fold> fold(std::size_t most) {
        if (!script_.header.span.empty()) add({script_.header.span, Fold::Kind::header});
        for (const Section& section : script_.sections) {
            add({without_blank_lines(text_, section.span), Fold::Kind::section}, section.level);
        }
        for (const Block& block : script_.blocks) {
            if (!block.notes.empty()) add({block.notes, Fold::Kind::note});
            if (block.kind == BlockKind::note) add({block.span, Fold::Kind::note});
        }
        for (const Placed& placed : script_.thoughts)
            add_thought(placed);
        return chosen(most);
    }

private:
    struct Ranked {
        Fold fold;
        std::uint32_t line = 0; // the first
        int rank = 0;
    };

    void add(const Fold& fold, int level = 0) {
        const std::uint32_t line = text_.line_of(fold.span.begin);
        if (text_.line_of(fold.span.end) > line)
            folds_.push_back({fold, line, rank_of(fold, level)});
    }

    void add_thought(const Placed& placed) {
        const Block& block = placed.block;
        if (text_.line_of(block.span.begin) == text_.line_of(block.span.end)) return;
        add({block.span, Fold::Kind::thought});
        for (const Mark& mark : placed.thought->written.marks) {
            if (mark.kind == MarkKind::direction)
                add({mark.span + block.span.begin.value, Fold::Kind::direction});
        }
    }

    std::vector<Fold> chosen(std::size_t most) {
        const auto by_place = [](const Ranked& a, const Ranked& b) {
            if (a.line != b.line) return a.line < b.line;
            return a.fold.span.end > b.fold.span.end;
        };
        std::sort(folds_.begin(), folds_.end(), by_place);
        // An editor shows one fold a line: the outer one.
        const auto same_line = [](const Ranked& a, const Ranked& b) { return a.line == b.line; };
        folds_.erase(std::unique(folds_.begin(), folds_.end(), same_line), folds_.end());
        if (folds_.size() > most) {
            std::stable_sort(folds_.begin(), folds_.end(),
                             [](const Ranked& a, const Ranked& b) { return a.rank < b.rank; });
            folds_.resize(most);
            std::sort(folds_.begin(), folds_.end(), by_place);
        }
        std::vector<Fold> result;
        result.reserve(folds_.size());
        for (const Ranked& each : folds_)
            result.push_back(each.fold);
        return result;
    }

    const Script& script_;
    const Text& text_;
    std::vector<Ranked> folds_;
};

} // namespace

std::vector<Fold> folds(const Analysis& analysis, std::size_t most) {
    return Folder(analysis).fold(most);
}

} // namespace say
