// The JSON forms of what the command line prints; "schema" changes only with a new number.
#pragma once

#include "cli/job.h"
#include "features/features.h"
#include "host/readers.h"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace say::cli {

// By rule, how many findings there are.
using ByRule = std::map<std::string_view, int>;

struct Checked {
    std::string file;
    std::shared_ptr<const Analysis> analysis;
    std::size_t fixed = 0; // edits applied by --fix
    ByRule gone = {};      // and what they were for; below 0 what they brought with them
};
std::string check_json(const std::vector<Checked>& files, const std::vector<Trouble>& trouble);

struct Timed {
    std::string file;
    std::shared_ptr<const Analysis> analysis;
    std::vector<TimeRow> rows;
};
std::string time_json(const std::vector<Timed>& files, const std::vector<Trouble>& trouble);

struct CalibratedLeftOut {
    std::string file;
    std::uint32_t line = 0; // 0 for all of it
    std::string why;
};
struct Calibrated {
    std::string reader;
    std::string file; // the reader's
    Learnt learnt{};
    double percent = 0;               // the range of a one-minute script
    std::vector<std::string> again{}; // files whose take was there already
    std::vector<CalibratedLeftOut> left_out{};
};
std::string calibrate_json(const Calibrated& calibrated, bool written);

struct Formatted {
    std::string file;
    bool changed = false;
};
std::string format_json(const std::vector<Formatted>& files, const std::vector<Trouble>& trouble);

} // namespace say::cli
