// What a script becomes on its way to the lens, the ear and the screen: one file a target, one row
// a target, a function from an analysis to bytes.
#pragma once

#include "engine/analysis.h"

#include <span>
#include <string>
#include <string_view>

namespace say {

struct ExportOptions {
    int columns = 42; // of a caption's line, in characters
};

struct Exporter {
    std::string_view name;    // "vtt"
    std::string_view summary; // one line, no full stop
    std::string (*write)(const Analysis& analysis, const ExportOptions& options) = nullptr;
};

std::span<const Exporter> exporters();
const Exporter* find_exporter(std::string_view name); // null if there is none

} // namespace say
