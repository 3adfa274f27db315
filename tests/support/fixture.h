// Fixtures: script samples in text files, with what Sayline finds drawn under them. docs of the
// form are in DEVELOPERS.md; the same samples feed other tests.
#pragma once

#include "engine/analysis.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace say::test {

struct Sample {
    enum class Kind { finds, quiet, fix } kind = Kind::finds;
    std::string heading; // the line behind "--- "
    std::string title;   // a fix's, or why it is quiet
    std::string drawn;   // as in the file: with the findings under the lines
    std::string text;    // what is analysed
    std::string after;   // of a fix
    int line = 0;        // of the heading
};

struct Fixture {
    std::string name; // "no-breath"
    std::filesystem::path path;
    std::string preamble; // the lines above the first sample
    std::string rule;     // an id, or "all"
    Options options;
    std::vector<Sample> samples;
};

// Every .fixture file of tests/fixtures/FOLDER, by name. A malformed file throws with its line.
std::vector<Fixture> load_fixtures(std::string_view folder);
// The file as it should stand: used where UPDATE_EXPECTED is set.
void write_fixture(const Fixture& fixture);
bool updates_expected();

std::shared_ptr<const Analysis> analyse_text(std::string_view text, const Options& options);
// The text with its findings drawn under the lines; with `name_rules` each says which rule it is.
std::string draw(std::string_view text, const std::vector<Finding>& findings, bool name_rules);
// Line by line; `…` in `expected` stands for anything.
bool matches(std::string_view actual, std::string_view expected);
// The fix of this title, of the first finding that has one.
std::optional<Fix> find_fix(const Analysis& analysis, std::string_view title);
// Everything that is said, in order, one word behind the other.
std::string spoken_words(const Analysis& analysis);

} // namespace say::test
