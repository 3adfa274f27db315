// A reader's own speed, learnt from timed reads: `.sayline/readers/NAME.json`, one file a reader.
#pragma once

#include "base/result.h"
#include "engine/options.h"

#include <filesystem>
#include <string>

namespace say {

// {"version": 1, "name": "mira", "speech": 1.05, "pauses": 0.9}. Keys this version does not know
// are passed over: a later one may have written them. The name that counts is the file's.
Result<Options::Reader> load_reader(const std::filesystem::path& file);

} // namespace say
