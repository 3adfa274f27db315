// One reader's file, checked field by field.
#include "host/readers.h"

#include "host/files.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

namespace say {
namespace {

constexpr int known_version = 1;
constexpr double slowest = 4.0;  // seconds factor
constexpr double fastest = 0.25; // seconds factor

// A number of the file in its range; the default where the key is not there.
Result<double> read_factor(const nlohmann::json& json, const char* key, double low,
                           const std::string& name) {
    const auto found = json.find(key);
    if (found == json.end()) return 1.0;
    const double value = found->is_number() ? found->get<double>() : -1.0;
    if (!(value >= low && value <= slowest)) {
        return Error{fmt::format("{}: \"{}\" may be a number from {:g} to {:g}; measure the reader "
                                 "again or remove the line",
                                 name, key, low, slowest)};
    }
    return value;
}

} // namespace

Result<Options::Reader> load_reader(const std::filesystem::path& file) {
    const std::string name = file.string();
    const auto text = read_text(file);
    if (!text) return text.error();
    const auto json = nlohmann::json::parse((*text)->bytes(), nullptr, false, true);
    if (!json.is_object()) {
        return Error{fmt::format("{}: not a reader's file (a JSON object is expected)", name)};
    }
    const auto version = json.find("version");
    if (version == json.end() || !version->is_number_integer()) {
        return Error{
            fmt::format("{}: \"version\" is missing; it should be {}", name, known_version)};
    }
    if (*version != known_version) {
        return Error{fmt::format("{}: version {} was written by another Sayline; this one reads "
                                 "version {}",
                                 name, version->dump(), known_version)};
    }
    const auto speech = read_factor(json, "speech", fastest, name);
    if (!speech) return speech.error();
    const auto pauses = read_factor(json, "pauses", 0.0, name);
    if (!pauses) return pauses.error();
    return Options::Reader{.speech = *speech, .pauses = *pauses};
}

} // namespace say
