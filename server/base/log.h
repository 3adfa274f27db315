// Logging, to standard error only: standard output belongs to the protocol and to results.
#pragma once

#include <string_view>

namespace say::log {

enum class Level { error, warning, info, debug };

// Called once, first thing in main: the library's default logger would write to standard output.
void start(Level level);

void error(std::string_view message);
void warning(std::string_view message);
void info(std::string_view message);
void debug(std::string_view message);

} // namespace say::log
