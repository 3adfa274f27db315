// The practice page: captions to read along without sound, a cold read that is timed, and takes of
// one's own voice (docs/practice.md).
#pragma once

#include "exporters/exporter.h"

namespace say {

std::string write_practice(const Analysis& analysis, const ExportOptions& options);

} // namespace say
