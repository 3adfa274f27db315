#pragma once

#include "exporters/exporter.h"

namespace say {

// The running order with every word, as one JSON value; docs/exports.md describes the fields.
// "schema" changes only with a new number.
inline constexpr int running_order_schema = 1;
std::string write_json(const Analysis& analysis, const ExportOptions& options);
// The same on one line: what the pages carry with them.
std::string script_json(const Analysis& analysis);
// The captions of the vtt target, as one JSON list on one line.
std::string captions_json(const Analysis& analysis, const ExportOptions& options);

} // namespace say
