// The one file of the command line that knows the JSON library.
#include "cli/json.h"

#include "cli/render.h"
#include "engine/ear.h"

#include <nlohmann/json.hpp>

#include <cmath>

namespace say::cli {
namespace {

using Json = nlohmann::ordered_json;

constexpr int schema = 1;

// A hundredth of a second is finer than any reader; more digits would only look exact.
double rounded(Seconds seconds) {
    return std::round(seconds.count() * 100) / 100;
}

Json trouble_json(const std::vector<Trouble>& trouble) {
    Json list = Json::array();
    for (const Trouble& one : trouble) {
        Json json;
        json["file"] = one.file;
        if (one.line > 0) json["line"] = one.line;
        if (one.column > 0) json["column"] = one.column;
        json["message"] = one.message;
        json["fatal"] = one.fatal;
        list.push_back(std::move(json));
    }
    return list;
}

std::string report(Json files, const std::vector<Trouble>& trouble) {
    Json json;
    json["schema"] = schema;
    json["files"] = std::move(files);
    json["problems"] = trouble_json(trouble);
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

void add_timing(Json& json, const Timing& timing) {
    json["seconds"] = rounded(timing.expected);
    json["low"] = rounded(timing.low);
    json["high"] = rounded(timing.high);
}

Json fix_json(const Fix& fix) {
    Json json;
    json["title"] = fix.title;
    json["keeps_every_word"] = fix.keeps_every_word;
    Json edits = Json::array();
    for (const TextEdit& edit : fix.edits) {
        edits.push_back({{"begin", edit.span.begin.value},
                         {"end", edit.span.end.value},
                         {"text", edit.replacement}});
    }
    json["edits"] = std::move(edits);
    return json;
}

Json finding_json(const Analysis& analysis, const Finding& finding) {
    const Text& text = *analysis.document.text;
    const Place begin = place_of(text, finding.span.begin);
    const Place end = place_of(text, finding.span.end);
    Json json;
    json["rule"] = finding.rule->id;
    json["severity"] = name_of(finding.severity);
    json["message"] = finding.message();
    json["line"] = begin.line;
    json["column"] = begin.column;
    json["end_line"] = end.line;
    json["end_column"] = end.column;
    json["begin"] = finding.span.begin.value;
    json["end"] = finding.span.end.value;
    if (!finding.readings().empty()) json["readings"] = finding.readings();
    Json fixes = Json::array();
    for (const Fix& fix : fixes_of(analysis, finding))
        fixes.push_back(fix_json(fix));
    json["fixes"] = std::move(fixes);
    return json;
}

Json ear_json(const EarFigures& figures) {
    const auto tenth = [](double value) { return std::round(value * 10) / 10; };
    return {{"easy_listening", tenth(figures.easy_listening)},
            {"words_a_thought", tenth(figures.words_a_thought)},
            {"seconds_a_thought", rounded(figures.seconds_a_thought)},
            {"stressed_a_minute", tenth(figures.stressed_a_minute)},
            {"marked_pauses_a_minute", tenth(figures.marked_pauses_a_minute)},
            {"written_pauses_a_minute", tenth(figures.written_pauses_a_minute)},
            {"words_a_minute", tenth(figures.words_a_minute)},
            {"syllables_a_second", tenth(figures.syllables_a_second)}};
}

// Null for a thought: figures for the ear need a stretch.
Json row_ear(const Script& script, const TimeRow& row) {
    if (row.level == 0) return ear_json(ear_of(script));
    if (row.section < 0) return nullptr;
    return ear_json(ear_of(script, script.sections[static_cast<std::size_t>(row.section)]));
}

Json row_json(const Script& script, const TimeRow& row) {
    Json json;
    json["name"] = row.name;
    json["level"] = row.level;
    json["in"] = rounded(row.at);
    json["out"] = rounded(row.at + row.timing.expected);
    add_timing(json, row.timing);
    json["speech"] = rounded(row.timing.speech);
    json["pause"] = rounded(row.timing.pause);
    json["words"] = row.words;
    if (row.target) {
        json["target"] = {{"low", rounded(row.target->low)}, {"high", rounded(row.target->high)}};
        json["off"] = rounded(row.off);
    }
    json["begin"] = row.span.begin.value;
    json["end"] = row.span.end.value;
    if (Json ear = row_ear(script, row); !ear.is_null()) json["ear"] = std::move(ear);
    return json;
}

} // namespace

std::string check_json(const std::vector<Checked>& files, const std::vector<Trouble>& trouble) {
    Json list = Json::array();
    for (const Checked& file : files) {
        Json json;
        json["file"] = file.file;
        add_timing(json, file.analysis->script.timing);
        json["words"] = file.analysis->script.words;
        json["fixed"] = file.fixed;
        Json findings = Json::array();
        for (const Finding& finding : file.analysis->findings) {
            findings.push_back(finding_json(*file.analysis, finding));
        }
        json["findings"] = std::move(findings);
        list.push_back(std::move(json));
    }
    return report(std::move(list), trouble);
}

std::string time_json(const std::vector<Timed>& files, const std::vector<Trouble>& trouble) {
    Json list = Json::array();
    for (const Timed& file : files) {
        Json json;
        json["file"] = file.file;
        add_timing(json, file.analysis->script.timing);
        json["words"] = file.analysis->script.words;
        Json rows = Json::array();
        for (const TimeRow& row : file.rows)
            rows.push_back(row_json(file.analysis->script, row));
        json["rows"] = std::move(rows);
        list.push_back(std::move(json));
    }
    return report(std::move(list), trouble);
}

std::string calibrate_json(const Calibrated& calibrated, bool written) {
    constexpr double thousandths = 1000;
    const Learnt& learnt = calibrated.learnt;
    Json json;
    json["schema"] = schema;
    json["reader"] = calibrated.reader;
    json["file"] = calibrated.file;
    json["written"] = written;
    json["speech"] = std::round(learnt.numbers.speech * thousandths) / thousandths;
    json["pauses"] = std::round(learnt.numbers.pauses * thousandths) / thousandths;
    json["seconds"] = rounded(learnt.rests_on);
    json["takes"] = learnt.takes;
    json["date"] = learnt.newest;
    json["one_minute_percent"] = std::round(calibrated.percent * 10) / 10;
    json["counted_before"] = calibrated.again;
    Json left_out = Json::array();
    for (const CalibratedLeftOut& left : calibrated.left_out) {
        Json one;
        one["file"] = left.file;
        if (left.line > 0) one["line"] = left.line;
        one["why"] = left.why;
        left_out.push_back(std::move(one));
    }
    json["left_out"] = std::move(left_out);
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string format_json(const std::vector<Formatted>& files, const std::vector<Trouble>& trouble) {
    Json list = Json::array();
    for (const Formatted& file : files) {
        list.push_back({{"file", file.file}, {"changed", file.changed}});
    }
    return report(std::move(list), trouble);
}

} // namespace say::cli
