// Lines of the header as fixes need them.
#pragma once

#include "rules/rule.h"

namespace say::rules {

// The line around `at` with its line end, so that taking it away leaves no gap.
Span whole_line(std::string_view text, Offset at);
// The line end that the text uses.
std::string_view line_end(std::string_view text);
// The edit that adds `key: value` to the header, or makes a header for it.
TextEdit add_header_line(const ScriptView& script, std::string_view line);

} // namespace say::rules
