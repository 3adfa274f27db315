// From drafts to findings; only analysis.cpp asks for it.
#pragma once

#include "engine/analysis.h"

namespace say {

// Thoughts that stood in an older analysis and stand in this one: so many at its beginning and end.
struct Standing {
    const Analysis* analysis = nullptr; // null: none
    std::size_t before = 0;
    std::size_t after = 0;
};

// True where the rule is not to be heard: at this stage, by the settings or by what is allowed.
bool silenced(const Rule& rule, const Options& options, const std::vector<std::string>& allow);
Severity severity_of(const Rule& rule, const FindingDraft& draft, const Options& options);

// Fills in the findings of an analysis that has its script.
void collect_findings(Analysis& analysis, const Standing& standing, const Cancel& cancel);

} // namespace say
