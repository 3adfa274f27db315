// The JSON forms of what the command line prints; "schema" changes only with a new number.
#pragma once

#include "cli/job.h"
#include "features/features.h"

#include <memory>
#include <string>
#include <vector>

namespace say::cli {

struct Checked {
    std::string file;
    std::shared_ptr<const Analysis> analysis;
    std::size_t fixed = 0; // edits applied by --fix
};
std::string check_json(const std::vector<Checked>& files, const std::vector<Trouble>& trouble);

struct Timed {
    std::string file;
    std::shared_ptr<const Analysis> analysis;
    std::vector<TimeRow> rows;
};
std::string time_json(const std::vector<Timed>& files, const std::vector<Trouble>& trouble);

struct Formatted {
    std::string file;
    bool changed = false;
};
std::string format_json(const std::vector<Formatted>& files, const std::vector<Trouble>& trouble);

} // namespace say::cli
