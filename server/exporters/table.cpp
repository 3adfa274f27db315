// Every target, one line each.
#include "exporters/caption_files.h"
#include "exporters/exporter.h"
#include "exporters/guide_read.h"
#include "exporters/json.h"
#include "exporters/page.h"
#include "exporters/practice.h"
#include "exporters/print.h"
#include "exporters/rhythm.h"
#include "exporters/running_order.h"
#include "exporters/ssml.h"

#include <fmt/core.h>

#include <array>

namespace say {
namespace {

constexpr std::string_view page_sign = R"(<meta name="generator" content="Sayline">)";

constexpr std::array<Exporter, 10> table{{
    {"vtt", "captions as WebVTT, with speakers", write_webvtt},
    {"srt", "captions as SRT", write_srt},
    {"ssml", "markup for a speech synthesiser, SSML 1.1", write_ssml},
    {"csv", "a running order: sections, thoughts and directions with their times",
     write_running_order},
    {.name = "json",
     .summary = "a running order with every word, pause and mark, for other programs",
     .write = write_json,
     .sign = R"("schema": 1,)"},
    {.name = "svg",
     .summary = "a picture of the script's rhythm",
     .write = write_rhythm,
     .sign = " of speech and "},
    {.name = "page",
     .summary = "a reading page for the lens: one HTML file, offline",
     .write = write_page,
     .ending = "html",
     .sign = page_sign},
    {.name = "practice",
     .summary = "a page to rehearse with: captions, a cold read, takes of one's own voice",
     .write = write_practice,
     .ending = "html",
     .sign = page_sign},
    {.name = "print",
     .summary = "a reading copy for paper, as a page that a browser prints",
     .write = write_print,
     .ending = "html",
     .sign = page_sign},
    {.name = "wav",
     .summary = "a guide read by a machine's voice, with captions beside it",
     .write = write_guide_read,
     .ending = "wav",
     .stream = stream_guide_read,
     .beside = "vtt",
     .sign = guide_read_sign},
}};

} // namespace

std::span<const Exporter> exporters() {
    return table;
}

std::string_view ending_of(const Exporter& exporter) {
    return exporter.ending.empty() ? exporter.name : exporter.ending;
}

std::string exporter_names() {
    std::string names;
    for (const Exporter& exporter : table)
        names += fmt::format("{}{}", names.empty() ? "" : ", ", exporter.name);
    return names;
}

Result<const Exporter*> wanted_exporter(std::string_view name) {
    for (const Exporter& exporter : table) {
        if (exporter.name == name) return &exporter;
    }
    return Error{fmt::format("\"{}\" is no target; there are {}", name, exporter_names())};
}

} // namespace say
