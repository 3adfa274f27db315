// Every target, one line each.
#include "exporters/caption_files.h"
#include "exporters/exporter.h"
#include "exporters/json.h"
#include "exporters/rhythm.h"
#include "exporters/running_order.h"
#include "exporters/ssml.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

constexpr std::array<Exporter, 6> table{{
    {"vtt", "captions as WebVTT, with speakers", write_webvtt},
    {"srt", "captions as SRT", write_srt},
    {"ssml", "markup for a speech synthesiser, SSML 1.1", write_ssml},
    {"csv", "a running order: sections, thoughts and directions with their times",
     write_running_order},
    {"json", "the same with every word, pause and mark, for other programs", write_json},
    {"svg", "a picture of the script's rhythm", write_rhythm},
}};

} // namespace

std::span<const Exporter> exporters() {
    return table;
}

const Exporter* find_exporter(std::string_view name) {
    const auto* const found =
        std::find_if(table.begin(), table.end(),
                     [&](const Exporter& exporter) { return exporter.name == name; });
    return found == table.end() ? nullptr : found;
}

} // namespace say
