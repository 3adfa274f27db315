// When everything happens: for whoever runs camera, prompter and clips.
#pragma once

#include "exporters/exporter.h"

namespace say {

// CSV (RFC 4180): a row each for sections, thoughts, directions and silences, in order of time.
std::string write_running_order(const Analysis& analysis, const ExportOptions& options);

} // namespace say
