// textDocument/formatting: tidies what is never spoken. Idempotent; joins, wraps and rewords
// nothing.
#include "features/features.h"
#include "text/unicode.h"

#include <algorithm>

namespace say {
namespace {

bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

class Tidier {
public:
    explicit Tidier(const Analysis& analysis)
        : analysis_(analysis), text_(analysis.document.text->bytes()) {}

    std::vector<TextEdit> tidy() {
        lines();
        header();
        for (const Block& block : analysis_.script.blocks)
            opening(block);
        for (const Placed& placed : analysis_.script.thoughts)
            marks(placed);
        std::stable_sort(edits_.begin(), edits_.end(), [](const TextEdit& a, const TextEdit& b) {
            return a.span.begin < b.span.begin;
        });
        return std::move(edits_);
    }

private:
    void replace(Span span, std::string_view with) {
        if (slice(text_, span) != with) edits_.push_back({span, std::string(with)});
    }

    // Blanks at line ends, more than one empty line in a row, the end of the file.
    void lines() {
        const Text& text = *analysis_.document.text;
        const std::uint32_t count = text.line_count();
        std::uint32_t last_written = 0;
        bool any = false;
        for (std::uint32_t line = 0; line < count; ++line) {
            const Span span = text.line_span(line);
            Offset end = span.end;
            while (end > span.begin && is_blank(text_[end.value - 1]))
                --end.value;
            // A backslash before the blank would change its meaning at a line end.
            const bool escaped = end > span.begin && text_[end.value - 1] == '\\';
            if (end == span.begin) {
                if (end != span.end) replace(span, "");
                continue;
            }
            if (end != span.end && !escaped) replace({end, span.end}, "");
            if (any && line > last_written + 2) {
                edits_.push_back({{text.line_start(last_written + 2), text.line_start(line)}, ""});
                drop_within({text.line_start(last_written + 2), text.line_start(line)});
            }
            last_written = line;
            any = true;
        }
        if (any) end_of_file(last_written);
    }

    // Edits of lines that go altogether.
    void drop_within(Span span) {
        edits_.erase(std::remove_if(edits_.begin(), edits_.end() - 1,
                                    [&](const TextEdit& edit) { return span.covers(edit.span); }),
                     edits_.end() - 1);
    }

    void end_of_file(std::uint32_t last_written) {
        const Text& text = *analysis_.document.text;
        const Span last = text.line_span(last_written);
        const bool crlf = text_.find("\r\n") != std::string_view::npos;
        const std::string_view eol = crlf ? "\r\n" : "\n";
        const Offset next = text.line_start(last_written + 1);
        if (last.end == text.end()) {
            edits_.push_back({{last.end, last.end}, std::string(eol)});
        } else if (next < text.end()) {
            drop_behind(next);
            edits_.push_back({{next, text.end()}, ""});
        }
    }

    void drop_behind(Offset at) {
        std::erase_if(edits_, [&](const TextEdit& edit) { return edit.span.begin >= at; });
    }

    // "key:   value" to "key: value".
    void header() {
        for (const HeaderEntry& entry : analysis_.script.header.entries) {
            if (!entry.value.empty()) replace({entry.key.end + 1, entry.value.begin}, " ");
        }
    }

    // "-   item", "#   Name", "MIRA:   text": one blank behind what opens a block.
    void opening(const Block& block) {
        if (block.kind == BlockKind::heading || block.kind == BlockKind::item) {
            one_blank_before(block.speaker.empty() ? block.content.begin : block.speaker.begin,
                             block.span.begin);
        }
        if (!block.speaker.empty() && block.content.begin > block.speaker.end + 1) {
            one_blank_before(block.content.begin, block.speaker.end + 1);
        }
    }

    void one_blank_before(Offset at, Offset limit) {
        Offset begin = at;
        while (begin > limit && is_blank(text_[begin.value - 1]))
            --begin.value;
        if (begin < at && begin > limit) replace({begin, at}, " ");
        if (begin < at && begin == limit && at.value - begin.value > 1) replace({begin, at}, " ");
    }

    void marks(const Placed& placed) {
        const std::uint32_t by = placed.block.span.begin.value;
        for (const Mark& mark : placed.thought->written.marks) {
            if (mark.kind == MarkKind::heavy_stress && slice(text_, mark.open + by) == "***") {
                replace(mark.open + by, "**");
                replace(mark.close + by, "**");
            }
            if (mark.kind == MarkKind::end_up || mark.kind == MarkKind::end_down)
                arrow_last(mark.span + by);
        }
    }

    // "so↗?" to "so?↗": the arrows behind their stop, several of them together.
    void arrow_last(Span first) {
        if (first.begin.value >= first.size() && is_arrow(first.begin.value - first.size())) return;
        Span arrows = first;
        while (is_arrow(arrows.end.value))
            arrows.end = arrows.end + first.size();
        Offset end = arrows.end;
        constexpr std::string_view stops = ".,;:!?";
        while (end.value < text_.size() && stops.find(text_[end.value]) != std::string_view::npos)
            ++end.value;
        const std::string_view stop = slice(text_, {arrows.end, end});
        // "so↗..." is an arrow before a pause, which stays where it is.
        if (stop.empty() || stop.starts_with("..")) return;
        replace({arrows.begin, end}, std::string(stop) + std::string(slice(text_, arrows)));
    }

    bool is_arrow(std::uint32_t at) const {
        const std::string_view here = text_.substr(std::min<std::size_t>(at, text_.size()), 3);
        return here == row_of(MarkKind::end_up).written ||
               here == row_of(MarkKind::end_down).written;
    }

    const Analysis& analysis_;
    std::string_view text_;
    std::vector<TextEdit> edits_;
};

} // namespace

std::vector<TextEdit> format(const Analysis& analysis) {
    return Tidier(analysis).tidy();
}

} // namespace say
