// The two files that captions are carried in.
#pragma once

#include "exporters/exporter.h"

namespace say {

std::string write_webvtt(const Analysis& analysis, const ExportOptions& options);
std::string write_srt(const Analysis& analysis, const ExportOptions& options);

// "00:01:02.345"; `point` stands before the milliseconds.
std::string stamp(Seconds seconds, char point);

} // namespace say
