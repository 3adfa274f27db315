#pragma once

#include "exporters/exporter.h"

namespace say {

// The script's rhythm as an SVG picture: rows of time, in which each word is a stroke, each silence
// a gap, each breath group as high as it is quick. docs/exports.md explains it.
std::string write_rhythm(const Analysis& analysis, const ExportOptions& options);
// The same in at most so many rows, for a place of another shape.
std::string rhythm_picture(const Analysis& analysis, int most_rows);

} // namespace say
