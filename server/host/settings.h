// Settings from `.sayline` beside the script and from the editor, checked against the table of
// engine/options.h. What is wrong is reported where it stands, and the rest applies.
// The file is written by hand only: nothing here writes it.
#pragma once

#include "engine/options.h"

#include <nlohmann/json_fwd.hpp>

#include <cstdint>
#include <filesystem>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

struct SettingsProblem {
    std::filesystem::path file; // empty for an editor's settings
    std::uint32_t line = 0;     // from 1; 0 where there is no place to point at
    std::uint32_t column = 0;   // from 1, in code points
    std::string message;        // what is wrong and what may stand there
};

struct Setup {
    Options options;
    std::vector<SettingsProblem> problems;
    std::filesystem::path folder;                // the `.sayline` in force; empty if there is none
    std::vector<std::filesystem::path> lexicons; // named in the settings, there or not
};

// Defaults, then settings.json and the readers' files, then the editor's settings (an object with
// the same keys; null for none, and a null value is "not set"). The header and flags come later.
// `script` need not exist: a script that is not saved yet has its folder's settings. Not cheap:
// keep the result and ask settings_stamp whether it still holds.
Setup load_setup(const std::filesystem::path& script, const nlohmann::json* editor_settings);

// Changes when load_setup would read something else for this script. `lexicons` are those of its
// last setup.
std::uint64_t settings_stamp(const std::filesystem::path& script,
                             std::span<const std::filesystem::path> lexicons = {});

// Reads the lexicons of the options anew, their paths beginning at `base`: for a flag that changed
// them.
void load_lexicons(Setup& setup, const std::filesystem::path& base);

// The project's own word list for a script: in its `.sayline`, or in the one that would be beside
// it.
std::filesystem::path word_list_file(const std::filesystem::path& script);

// Where a reader of that script has their file, there or not; empty if the script has no
// `.sayline`.
std::filesystem::path reader_file(const std::filesystem::path& script, std::string_view reader);

// The JSON schema (draft-07) of settings.json, made from the tables of options and rules.
nlohmann::ordered_json schema_json();

} // namespace say
