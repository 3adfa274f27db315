// textDocument/documentSymbol and the tables of times: the script by sections and thoughts.
#include "features/features.h"
#include "text/unicode.h"

#include <fmt/core.h>

namespace say {
namespace {

// The first words of a thought: enough to find it by.
std::string opening_words(const Placed& placed) {
    constexpr std::size_t most = 6;
    const Written& written = placed.thought->written;
    if (written.words.empty()) {
        if (!written.marks.empty() && written.marks.front().kind == MarkKind::direction) {
            return fmt::format("[{}]", written.marks.front().argument);
        }
        return "silence";
    }
    const std::size_t count = std::min(most, written.words.size());
    const Span span{written.words.front().plain.begin, written.words[count - 1].plain.end};
    std::string name(slice(written.plain.text, span));
    if (count < written.words.size()) name += " …";
    return name;
}

std::string detail_of(const Timing& timing, const std::optional<Target>& target) {
    if (!target) return format_clock(timing.expected);
    return fmt::format("{} of {}", format_clock(timing.expected), format_target(*target));
}

OutlineEntry thought_entry(const Placed& placed) {
    return {.name = opening_words(placed),
            .detail = format_seconds(placed.thought->reading.timing.expected),
            .span = placed.span(),
            .name_span = placed.span(),
            .kind = OutlineEntry::Kind::thought,
            .children = {}};
}

// Sections and thoughts nest by place, so one walk with a stack of open sections builds the tree.
class Outliner {
public:
    explicit Outliner(const Script& script) : script_(script) {}

    std::vector<OutlineEntry> build() {
        std::size_t section = 0;
        for (const Placed& placed : script_.thoughts) {
            while (section < script_.sections.size() &&
                   script_.sections[section].heading.begin < placed.block.span.begin) {
                open(section++);
            }
            if (placed.thought->takes_time()) siblings().push_back(thought_entry(placed));
        }
        while (section < script_.sections.size())
            open(section++);
        while (!open_.empty())
            close();
        return std::move(roots_);
    }

private:
    std::vector<OutlineEntry>& siblings() {
        return open_.empty() ? roots_ : open_.back().entry.children;
    }

    void open(std::size_t index) {
        const Section& section = script_.sections[index];
        while (!open_.empty() && open_.back().level >= section.level)
            close();
        OutlineEntry entry{.name = section.name.empty() ? "section" : section.name,
                           .detail = detail_of(section.timing, section.target),
                           .span = section.span,
                           .name_span = section.heading,
                           .kind = OutlineEntry::Kind::section,
                           .children = {}};
        open_.push_back({std::move(entry), section.level});
    }

    void close() {
        OutlineEntry entry = std::move(open_.back().entry);
        open_.pop_back();
        siblings().push_back(std::move(entry));
    }

    struct Open {
        OutlineEntry entry;
        int level;
    };
    const Script& script_;
    std::vector<Open> open_;
    std::vector<OutlineEntry> roots_;
};

} // namespace

std::vector<OutlineEntry> outline(const Analysis& analysis) {
    return Outliner(analysis.script).build();
}

std::vector<TimeRow> times(const Analysis& analysis, bool with_thoughts) {
    const Script& script = analysis.script;
    const Seconds slack = analysis.options.rules.target_slack;
    std::vector<TimeRow> rows;
    rows.push_back({.name = script.header.title,
                    .level = 0,
                    .timing = script.timing,
                    .target = script.header.target,
                    .off = script.header.target
                               ? off_target(script.timing.expected, *script.header.target, slack)
                               : Seconds{0},
                    .span = script.header.span,
                    .words = script.words});
    std::size_t section = 0;
    std::vector<std::size_t> row_of_section(script.sections.size());
    const auto add_section = [&](std::size_t index) {
        const Section& each = script.sections[index];
        row_of_section[index] = rows.size();
        rows.push_back({.name = each.name,
                        .level = each.level,
                        .timing = each.timing,
                        .at = each.at,
                        .target = each.target,
                        .off = each.target ? off_target(each.timing.expected, *each.target, slack)
                                           : Seconds{0},
                        .span = each.heading,
                        .words = 0,
                        .section = static_cast<int>(index)});
    };
    for (const Placed& placed : script.thoughts) {
        while (section < script.sections.size() &&
               script.sections[section].heading.begin < placed.block.span.begin) {
            add_section(section++);
        }
        const int words = static_cast<int>(placed.thought->written.words.size());
        for (int s = placed.section; s >= 0;
             s = script.sections[static_cast<std::size_t>(s)].parent) {
            rows[row_of_section[static_cast<std::size_t>(s)]].words += words;
        }
        if (!with_thoughts || !placed.thought->takes_time()) continue;
        rows.push_back({.name = opening_words(placed),
                        .level = 4,
                        .timing = placed.thought->reading.timing,
                        .at = placed.at,
                        .target = std::nullopt,
                        .off = Seconds{0},
                        .span = placed.span(),
                        .words = words});
    }
    while (section < script.sections.size())
        add_section(section++);
    return rows;
}

Seconds said_at(const Analysis& analysis, Offset at) {
    const std::vector<Placed>& thoughts = analysis.script.thoughts;
    const auto here =
        std::partition_point(thoughts.begin(), thoughts.end(),
                             [&](const Placed& placed) { return placed.block.span.end < at; });
    if (here == thoughts.end()) return analysis.script.timing.expected;
    const Thought& thought = *here->thought;
    const std::uint32_t begin = here->block.span.begin.value;
    Seconds inside{0};
    for (std::size_t word = 0; word < thought.written.words.size(); ++word) {
        if (begin + thought.written.words[word].source.begin.value > at.value) break;
        inside = thought.reading.said[word].at;
    }
    return here->at + inside;
}

} // namespace say
