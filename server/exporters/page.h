// The reading page: the script in front of the lens (docs/reading-page.md).
#pragma once

#include "exporters/exporter.h"

namespace say {

std::string write_page(const Analysis& analysis, const ExportOptions& options);
// The same for `sayline page --live`: it listens for new texts of the script at "events", which are
// what script_json writes.
std::string live_page(const Analysis& analysis);

} // namespace say
