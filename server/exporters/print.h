// The reading copy on paper: HTML with print rules for A4 or Letter. docs/print.md tells its use.
#pragma once

#include "exporters/exporter.h"

namespace say {

std::string write_print(const Analysis& analysis, const ExportOptions& options);

} // namespace say
