// What a script becomes on its way to the lens, the ear and the screen: one file a target, one row
// a target, a function from an analysis to bytes.
#pragma once

#include "base/result.h"
#include "engine/analysis.h"

#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace say {

struct ExportOptions {
    int columns = 42;    // of a caption's line, in characters
    bool letter = false; // paper: US Letter in place of A4
    double points = 16;  // of the words that are read on paper
    bool notes = false;  // notes stand in the margin of the paper
};

// Takes what is made, part by part, and how much is done, 0 to 1. False when nobody wants more.
using Sink = std::function<bool(std::string_view bytes, double done)>;

struct Exporter {
    std::string_view name;    // "vtt"
    std::string_view summary; // one line, no full stop
    std::string (*write)(const Analysis& analysis, const ExportOptions& options) = nullptr;
    std::string_view ending = {}; // of its file's name; empty: the target's name
    // The same in parts, where the whole is too much to hold: sound. Null for texts.
    Result<void> (*stream)(const Analysis& analysis, const ExportOptions& options,
                           const Sink& sink) = nullptr;
    std::string_view beside = {}; // the target whose file is written beside it
    // What stands in the first bytes of each of its files and hardly in anybody else's: such a file
    // is made anew without a question. Empty for what people go on to mend by hand.
    std::string_view sign = {};
};
// So many bytes.
inline constexpr std::size_t sign_within = 2048;

// How long a caption's line may be, in characters.
inline constexpr int fewest_columns = 16;
inline constexpr int most_columns = 80;

std::span<const Exporter> exporters();
std::string exporter_names(); // with commas between
// Of the names of its files: "vtt".
std::string_view ending_of(const Exporter& exporter);
// The target of that name, or a sentence that names those there are.
Result<const Exporter*> wanted_exporter(std::string_view name);

} // namespace say
