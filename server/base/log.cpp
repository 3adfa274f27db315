// The only file that knows spdlog, whose header costs seconds of compile time.
#include "base/log.h"

#include <spdlog/sinks/stdout_sinks.h>
#include <spdlog/spdlog.h>

namespace say::log {
namespace {

spdlog::level::level_enum to_spdlog(Level level) {
    switch (level) {
    case Level::error: return spdlog::level::err;
    case Level::warning: return spdlog::level::warn;
    case Level::info: return spdlog::level::info;
    case Level::debug: return spdlog::level::debug;
    }
    return spdlog::level::warn;
}

} // namespace

void start(Level level) {
    auto logger = std::make_shared<spdlog::logger>(
        "sayline", std::make_shared<spdlog::sinks::stderr_sink_mt>());
    logger->set_pattern("%H:%M:%S.%e %l %v");
    logger->set_level(to_spdlog(level));
    logger->flush_on(spdlog::level::warn);
    spdlog::set_default_logger(std::move(logger));
}

void error(std::string_view message) {
    spdlog::error("{}", message);
}

void warning(std::string_view message) {
    spdlog::warn("{}", message);
}

void info(std::string_view message) {
    spdlog::info("{}", message);
}

void debug(std::string_view message) {
    spdlog::debug("{}", message);
}

} // namespace say::log
