// The machine-readable view of the engine, one object a thought: `sayline explain` and the
// protocol's own request print it. docs/explain.md describes the fields; "schema" changes only with
// a new number.
#pragma once

#include "engine/analysis.h"

#include <nlohmann/json_fwd.hpp>

#include <functional>
#include <string>
#include <string_view>

namespace say {

inline constexpr int explain_schema = 1;

// A line by itself: without id and place.
nlohmann::ordered_json explain_thought(const Thought& thought, const Options& options);
nlohmann::ordered_json explain_thought(const Analysis& analysis, const Placed& placed);
// The gap behind a thought, as an item of its own: no words, its time in "pauses".
nlohmann::ordered_json explain_gap(const Analysis& analysis, const Placed& placed);
nlohmann::ordered_json explain_error(std::string_view message);

// Every item of a script in order: their seconds add up to the script's.
void explain_script(const Analysis& analysis,
                    const std::function<void(const nlohmann::ordered_json&)>& item);

// As one line of text: any bytes are taken, what is not UTF-8 becomes U+FFFD.
std::string to_line(const nlohmann::ordered_json& json);

} // namespace say
