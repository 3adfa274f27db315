// One reader's file, checked field by field, and added to without losing what others wrote in it.
#include "host/readers.h"

#include "host/files.h"
#include "text/ascii.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <ctime>
#include <optional>
#include <utility>
#include <vector>

namespace say {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

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

// --- dates -------------------------------------------------------------------------------------

std::optional<std::chrono::sys_days> read_date(std::string_view date) {
    constexpr std::size_t year_end = 4;
    constexpr std::size_t month_end = 7;
    constexpr std::size_t size = 10;
    if (date.size() != size || date[year_end] != '-' || date[month_end] != '-') return std::nullopt;
    std::array<unsigned, 3> parts{};
    const std::array<std::string_view, 3> digits = {date.substr(0, 4), date.substr(5, 2),
                                                    date.substr(8, 2)};
    for (std::size_t i = 0; i < digits.size(); ++i) {
        const char* end = digits[i].data() + digits[i].size();
        const auto read = std::from_chars(digits[i].data(), end, parts[i]);
        if (read.ec != std::errc{} || read.ptr != end) return std::nullopt;
    }
    const std::chrono::year_month_day day{std::chrono::year(static_cast<int>(parts[0])),
                                          std::chrono::month(parts[1]), std::chrono::day(parts[2])};
    if (!day.ok()) return std::nullopt;
    return std::chrono::sys_days(day);
}

double days_between(std::string_view from, std::string_view to) {
    const auto begin = read_date(from);
    const auto end = read_date(to);
    return begin && end ? static_cast<double>((*end - *begin).count()) : 0.0;
}

// --- takes -------------------------------------------------------------------------------------

// Digits beyond these would only look exact.
double rounded(double value, double places) {
    return std::round(value * places) / places;
}

Json to_json(const Take& take) {
    constexpr double tenths = 10;
    constexpr double thousandths = 1000;
    const Evidence& sums = take.evidence;
    return {{"date", take.date},
            {"source", take.source},
            {"seconds", rounded(take.seconds.count(), tenths)},
            {"words", take.words},
            {"sums",
             {{"speech_speech", rounded(sums.speech_speech, thousandths)},
              {"speech_pause", rounded(sums.speech_pause, thousandths)},
              {"pause_pause", rounded(sums.pause_pause, thousandths)},
              {"speech_measured", rounded(sums.speech_measured, thousandths)},
              {"pause_measured", rounded(sums.pause_measured, thousandths)}}}};
}

std::optional<double> read_number(const Json& json, const char* key) {
    const auto found = json.find(key);
    if (found == json.end() || !found->is_number()) return std::nullopt;
    const double value = found->get<double>();
    if (!std::isfinite(value) || value < 0) return std::nullopt;
    return value;
}

std::string read_string(const Json& json, const char* key) {
    const auto found = json.find(key);
    return found != json.end() && found->is_string() ? found->get<std::string>() : std::string{};
}

std::optional<Take> read_take(const Json& json) {
    if (!json.is_object()) return std::nullopt;
    const auto sums = json.find("sums");
    const auto seconds = read_number(json, "seconds");
    if (sums == json.end() || !sums->is_object() || !seconds) return std::nullopt;
    Take take{.date = read_string(json, "date"),
              .source = read_string(json, "source"),
              .seconds = Seconds{*seconds},
              .words = static_cast<int>(std::min(1e9, read_number(json, "words").value_or(0))),
              .evidence = {}};
    Evidence& evidence = take.evidence;
    for (const auto& [key, value] : {std::pair{"speech_speech", &evidence.speech_speech},
                                     std::pair{"speech_pause", &evidence.speech_pause},
                                     std::pair{"pause_pause", &evidence.pause_pause},
                                     std::pair{"speech_measured", &evidence.speech_measured},
                                     std::pair{"pause_measured", &evidence.pause_measured}}) {
        const auto number = read_number(*sums, key);
        if (!number) return std::nullopt;
        *value = *number;
    }
    return take;
}

bool same_read(const Take& a, const Take& b) {
    constexpr Seconds hair{0.06}; // seconds are kept to a tenth
    const Seconds apart = a.seconds - b.seconds;
    return a.date == b.date && a.source == b.source && a.words == b.words && apart < hair &&
           apart > -hair;
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
    Options::Reader reader{.speech = *speech, .pauses = *pauses, .rests_on = {}};
    const auto seconds = json.find("seconds");
    if (seconds == json.end()) return reader;
    const double rests_on = seconds->is_number() ? seconds->get<double>() : -1.0;
    if (!(rests_on >= 0)) {
        return Error{fmt::format("{}: \"seconds\" may be a number from 0; measure the reader again "
                                 "or remove the line",
                                 name)};
    }
    reader.rests_on = Seconds{rests_on};
    return reader;
}

Result<void> check_reader_name(std::string_view name) {
    constexpr std::size_t longest = 64;
    const bool fits =
        !name.empty() && name.size() <= longest && name.front() != ' ' && name.back() != ' ' &&
        std::all_of(name.begin(), name.end(), [](char c) {
            return ascii::is_alnum(c) || c == ' ' || c == '-' || c == '_' || ascii::is_high(c);
        });
    if (fits) return {};
    return Error{
        fmt::format("a reader cannot be called \"{}\"; the name becomes a file: use letters, "
                    "digits, blanks, - and _",
                    name)};
}

Result<void> check_date(std::string_view date) {
    if (read_date(date)) return {};
    return Error{fmt::format("\"{}\" is no date; write it as 2026-11-25", date)};
}

std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return fmt::format("{:04}-{:02}-{:02}", local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

// --- the file to be added to ---------------------------------------------------------------------

struct ReaderFile::State {
    fs::path file;
    Json json = Json::object();
    std::vector<Take> takes;
};

ReaderFile::ReaderFile(std::unique_ptr<State> state) : state_(std::move(state)) {}
ReaderFile::ReaderFile(ReaderFile&&) noexcept = default;
ReaderFile& ReaderFile::operator=(ReaderFile&&) noexcept = default;
ReaderFile::~ReaderFile() = default;

Result<ReaderFile> ReaderFile::open(const fs::path& file, bool replace) {
    auto state = std::make_unique<State>();
    state->file = file;
    std::error_code error;
    if (!fs::exists(file, error)) return ReaderFile(std::move(state));
    const auto text = read_text(file);
    if (!text) return text.error();
    // Comments would be lost: whoever wrote them wrote the file.
    Json json = Json::parse((*text)->bytes(), nullptr, false, false);
    const bool ours = json.is_object() && json.contains("takes") && json["takes"].is_array() &&
                      !json["takes"].empty();
    if (!ours && !replace) {
        return Error{
            fmt::format("{}: written by hand, so it is left as it is; give another name, or "
                        "--replace to write over it",
                        file.string())};
    }
    if (replace) {
        if (json.is_object()) {
            json.erase("takes");
            state->json = std::move(json);
        }
        return ReaderFile(std::move(state));
    }
    const auto version = json.find("version");
    if (version == json.end() || *version != known_version) {
        return Error{fmt::format("{}: version {} was written by another Sayline; this one reads "
                                 "version {}",
                                 file.string(), version == json.end() ? "?" : version->dump(),
                                 known_version)};
    }
    for (const Json& each : json["takes"]) {
        const auto take = read_take(each);
        if (!take) {
            return Error{
                fmt::format("{}: take {} of \"takes\" is damaged; mend it, or give --replace "
                            "to begin anew",
                            file.string(), state->takes.size() + 1)};
        }
        state->takes.push_back(*take);
    }
    state->json = std::move(json);
    ReaderFile opened(std::move(state));
    if (opened.numbers_are_set_by_hand()) {
        return Error{fmt::format("{}: its numbers were changed by hand, so they are left as they "
                                 "are; give another name, or --replace to begin anew",
                                 file.string())};
    }
    return opened;
}

// The numbers are those of the takes unless somebody wrote others.
bool ReaderFile::numbers_are_set_by_hand() const {
    constexpr double hair = 0.005;
    std::string newest;
    for (const Take& take : state_->takes)
        newest = std::max(newest, take.date);
    const ReaderNumbers numbers = numbers_from(evidence(newest));
    const auto differs = [&](const char* key, double value) {
        const auto found = state_->json.find(key);
        return found == state_->json.end() || !found->is_number() ||
               std::abs(found->get<double>() - value) > hair;
    };
    return differs("speech", numbers.speech) || differs("pauses", numbers.pauses);
}

Evidence ReaderFile::evidence(std::string_view date) const {
    Evidence sum;
    for (const Take& take : state_->takes)
        sum += take.evidence * weight_of_age(days_between(take.date, date));
    return sum;
}

Learnt ReaderFile::add(const Take& take) {
    Json& json = state_->json;
    json["version"] = known_version;
    if (!json.contains("name")) json["name"] = state_->file.stem().string();
    for (const char* key : {"speech", "pauses", "date", "seconds"})
        json[key] = nullptr; // their places, above the takes
    if (!json.contains("takes")) json["takes"] = Json::array();

    Learnt learnt;
    const auto same = std::find_if(state_->takes.begin(), state_->takes.end(),
                                   [&](const Take& each) { return same_read(each, take); });
    learnt.known_take = same != state_->takes.end();
    if (!learnt.known_take) {
        state_->takes.push_back(take);
        json["takes"].push_back(to_json(take));
    }
    for (const Take& each : state_->takes) {
        learnt.rests_on += each.seconds;
        learnt.newest = std::max(learnt.newest, each.date);
    }
    learnt.takes = static_cast<int>(state_->takes.size());
    learnt.numbers = numbers_from(evidence(learnt.newest));

    constexpr double thousandths = 1000;
    constexpr double tenths = 10;
    json["speech"] = rounded(learnt.numbers.speech, thousandths);
    json["pauses"] = rounded(learnt.numbers.pauses, thousandths);
    json["date"] = learnt.newest;
    json["seconds"] = rounded(learnt.rests_on.count(), tenths);
    return learnt;
}

Result<void> ReaderFile::save() const {
    std::error_code error;
    const fs::path folder = state_->file.parent_path();
    fs::create_directories(folder, error);
    if (error) {
        return Error{
            fmt::format("{}: the folder cannot be made ({})", folder.string(), error.message())};
    }
    return write_text(state_->file,
                      state_->json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n");
}

} // namespace say
