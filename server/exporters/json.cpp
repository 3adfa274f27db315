#include "exporters/json.h"

#include "exporters/captions.h"
#include "exporters/drawn.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace say {
namespace {

using Json = nlohmann::ordered_json;

// To a millisecond: finer than anything that plays by it.
double rounded(Seconds seconds) {
    return std::round(seconds.count() * 1000) / 1000;
}

Json target_json(const std::optional<Target>& target) {
    if (!target) return nullptr;
    return {{"low", rounded(target->low)}, {"high", rounded(target->high)}};
}

Json part_json(const DrawnWord& word) {
    Json marks = Json::array();
    for (const MarkKind kind : word.marks)
        marks.push_back(row_of(kind).name);
    Json json = {{"word", word.text},
                 {"at", rounded(word.at)},
                 {"seconds", rounded(word.seconds)},
                 {"syllables", word.syllables}};
    if (!marks.empty()) json["marks"] = std::move(marks);
    if (!word.sound.empty()) json["sound"] = word.sound;
    if (!word.instead.empty()) json["instead"] = word.instead;
    return json;
}

Json part_json(const DrawnText& text) {
    return {{"text", text.text}};
}

Json part_json(const DrawnPause& pause) {
    return {{"pause", row_of(pause.kind).name},
            {"at", rounded(pause.at)},
            {"seconds", rounded(pause.seconds)}};
}

Json part_json(const DrawnDirection& direction) {
    return {{"direction", direction.text},
            {"at", rounded(direction.at)},
            {"seconds", rounded(direction.seconds)}};
}

Json part_json(const DrawnEdge& edge) {
    return {{edge.opens ? "open" : "close", row_of(edge.kind).name}};
}

Json parts_json(const Thought& thought) {
    Json parts = Json::array();
    for (const DrawnPart& part : drawn(thought))
        parts.push_back(std::visit([](const auto& each) { return part_json(each); }, part));
    return parts;
}

Json thought_json(const Analysis& analysis, const Placed& placed) {
    const Thought& thought = *placed.thought;
    const std::uint32_t line = analysis.document.text->line_of(placed.block.content.begin);
    const Timing& timing = thought.reading.timing;
    return {{"id", placed.id()},
            {"kind", drawn_kind(placed)},
            {"line", line + 1},
            {"section", placed.section},
            {"speaker", placed.speaker},
            {"marker", list_marker(analysis, placed)},
            {"spare", thought.written.spare},
            {"at", rounded(placed.at)},
            {"seconds", rounded(timing.expected)},
            {"speech", rounded(timing.speech)},
            {"pause", rounded(timing.pause)},
            {"gap", rounded(placed.gap)},
            {"text", thought.written.plain.text},
            {"parts", parts_json(thought)}};
}

Json sections_json(const Script& script) {
    Json sections = Json::array();
    for (const Section& section : script.sections) {
        sections.push_back({{"name", section.name},
                            {"level", section.level},
                            {"parent", section.parent},
                            {"at", rounded(section.at)},
                            {"seconds", rounded(section.timing.expected)},
                            {"target", target_json(section.target)}});
    }
    return sections;
}

Json to_json(const Analysis& analysis) {
    const Script& script = analysis.script;
    Json speakers = Json::array();
    for (const Speaker& speaker : script.header.speakers)
        speakers.push_back(speaker.name);
    Json thoughts = Json::array();
    for (const Placed& placed : script.thoughts)
        thoughts.push_back(thought_json(analysis, placed));
    return {{"schema", running_order_schema},
            {"title", script.header.title},
            {"date", script.header.date},
            {"language", analysis.options.language},
            {"seconds", rounded(script.timing.expected)},
            {"low", rounded(script.timing.low)},
            {"high", rounded(script.timing.high)},
            {"target", target_json(script.header.target)},
            {"speakers", std::move(speakers)},
            {"sections", sections_json(script)},
            {"thoughts", std::move(thoughts)}};
}

// Any bytes are taken: what is not UTF-8 becomes U+FFFD.
std::string dump(const Json& json, int indent) {
    return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

} // namespace

std::string write_json(const Analysis& analysis, const ExportOptions& /*options*/) {
    return dump(to_json(analysis), 1) + '\n';
}

std::string script_json(const Analysis& analysis) {
    return dump(to_json(analysis), -1);
}

std::string captions_json(const Analysis& analysis, const ExportOptions& options) {
    Json list = Json::array();
    for (const Caption& caption : captions(analysis, {.columns = options.columns})) {
        list.push_back({{"begin", rounded(caption.begin)},
                        {"end", rounded(caption.end)},
                        {"lines", caption.lines},
                        {"speaker", caption.speaker}});
    }
    return dump(list, -1);
}

} // namespace say
