#include "exporters/running_order.h"

#include "exporters/legible.h"

#include <fmt/core.h>

namespace say {
namespace {

// A field in quotes where it needs them (RFC 4180, section 2).
std::string field(std::string_view text) {
    if (text.find_first_of("\",\r\n") == std::string_view::npos) return std::string(text);
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

struct Row {
    std::string_view kind;
    Seconds in{0};
    Seconds out{0};
    std::string_view section;
    std::string_view speaker;
    std::string_view text;
};

void add(std::string& table, const Row& row) {
    table += fmt::format("{},{:.2f},{:.2f},{:.2f},{},{},{}\r\n", row.kind, row.in.count(),
                         row.out.count(), (row.out - row.in).count(), field(row.section),
                         field(row.speaker), field(row.text));
}

// When a direction comes: behind the word before it.
Seconds cue_of(const Placed& placed, const Mark& mark) {
    if (mark.first < 0) return placed.at;
    const Said& before = placed.thought->reading.said[static_cast<std::size_t>(mark.first)];
    return placed.at + before.at + before.seconds;
}

void add_thought(std::string& table, const Script& script, const Placed& placed) {
    const Thought& thought = *placed.thought;
    const Legible legible(thought);
    const std::string_view section =
        placed.section < 0 ? std::string_view{}
                           : script.sections[static_cast<std::size_t>(placed.section)].name;
    Row row{.kind = thought.has_words() ? "thought" : "silence",
            .in = placed.at,
            .out = placed.at + thought.reading.timing.expected,
            .section = section,
            .speaker = placed.speaker,
            .text = legible.text()};
    if (thought.takes_time()) add(table, row);
    for (const Mark& mark : thought.written.marks) {
        if (mark.kind != MarkKind::direction) continue;
        const Seconds cue = cue_of(placed, mark);
        add(table, {.kind = "direction",
                    .in = cue,
                    .out = cue + mark.seconds,
                    .section = section,
                    .speaker = {},
                    .text = mark.argument});
    }
}

} // namespace

std::string write_running_order(const Analysis& analysis, const ExportOptions& /*options*/) {
    const Script& script = analysis.script;
    std::string table = "kind,in,out,seconds,section,speaker,text\r\n";
    std::size_t section = 0;
    const auto open_above = [&](Offset at) {
        for (; section < script.sections.size() && script.sections[section].heading.begin < at;
             ++section) {
            const Section& each = script.sections[section];
            add(table, {.kind = "section",
                        .in = each.at,
                        .out = each.at + each.timing.expected,
                        .section = each.name,
                        .speaker = {},
                        .text = {}});
        }
    };
    for (const Placed& placed : script.thoughts) {
        open_above(placed.block.span.begin);
        add_thought(table, script, placed);
    }
    open_above(Offset{UINT32_MAX});
    return table;
}

} // namespace say
