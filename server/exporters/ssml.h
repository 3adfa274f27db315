// SSML 1.1 (W3C Recommendation of 7 September 2010): every mark as markup for a synthesiser.
// docs/exports.md has the table of what becomes what.
#pragma once

#include "exporters/exporter.h"

namespace say {

std::string write_ssml(const Analysis& analysis, const ExportOptions& options);

} // namespace say
