// Reads, draws and rewrites fixtures.
#include "support/fixture.h"

#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace say::test {
namespace {

constexpr std::string_view wild = "…";

std::vector<std::string> split_lines(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t end = text.find('\n');
        lines.emplace_back(text.substr(0, end));
        if (end == std::string_view::npos) break;
        text.remove_prefix(end + 1);
    }
    return lines;
}

std::string join_lines(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines)
        text += line + '\n';
    return text;
}

std::string_view trim(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t");
    if (begin == std::string_view::npos) return {};
    return text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

void drop_blank_end(std::vector<std::string>& lines) {
    while (!lines.empty() && trim(lines.back()).empty())
        lines.pop_back();
}

// A line whose first word is all ~ underlines the line above it.
bool is_underline(std::string_view line) {
    line = trim(line);
    const std::string_view word = line.substr(0, line.find(' '));
    return !word.empty() && word.find_first_not_of('~') == std::string_view::npos;
}

[[noreturn]] void fail(const std::filesystem::path& path, int line, std::string_view what) {
    throw std::runtime_error(fmt::format("{}:{}: {}", path.filename().string(), line, what));
}

void read_setting(Fixture& fixture, std::string_view line, int number) {
    const std::size_t colon = line.find(':');
    if (colon == std::string_view::npos) fail(fixture.path, number, "a setting needs a colon");
    const std::string_view key = trim(line.substr(0, colon));
    std::string_view value = trim(line.substr(colon + 1));
    value = trim(value.substr(0, value.find("  "))); // behind two blanks stands a remark
    if (key == "rule") {
        fixture.rule = value;
        return;
    }
    std::string_view name = key;
    if (key == "options") {
        const std::size_t equals = value.find('=');
        if (equals == std::string_view::npos) fail(fixture.path, number, "options: key = value");
        name = trim(value.substr(0, equals));
        value = trim(value.substr(equals + 1));
    } else if (key != "stage" && key != "language") {
        fail(fixture.path, number, "the keys are rule, options, stage and language");
    }
    const auto set = set_option(fixture.options, name, OptionValue{std::string(value)});
    if (!set) fail(fixture.path, number, set.error().message);
}

void read_heading(Fixture& fixture, Sample& sample, std::string_view heading) {
    sample.heading = heading;
    const std::size_t colon = heading.find(':');
    const std::string_view kind = trim(heading.substr(0, colon));
    if (colon != std::string_view::npos) sample.title = trim(heading.substr(colon + 1));
    if (kind == "finds") {
        sample.kind = Sample::Kind::finds;
    } else if (kind == "quiet") {
        sample.kind = Sample::Kind::quiet;
    } else if (kind == "fix") {
        sample.kind = Sample::Kind::fix;
    } else {
        fail(fixture.path, sample.line, "a sample is finds, quiet or fix");
    }
}

bool is_heading(std::string_view line) {
    return line.starts_with("--- finds") || line.starts_with("--- quiet") ||
           line.starts_with("--- fix");
}

void finish(Fixture& fixture, Sample& sample, std::vector<std::string>& lines) {
    drop_blank_end(lines);
    if (sample.kind == Sample::Kind::fix) {
        const auto arrow = std::find(lines.begin(), lines.end(), "=>");
        if (arrow == lines.end()) fail(fixture.path, sample.line, "a fix needs a line `=>`");
        sample.after = join_lines({arrow + 1, lines.end()});
        lines.erase(arrow, lines.end());
    }
    sample.drawn = join_lines(lines);
    std::erase_if(lines, is_underline);
    sample.text = join_lines(lines);
    fixture.samples.push_back(std::move(sample));
    sample = {};
    lines.clear();
}

// Only the rule of the fixture is heard.
void silence_others(Fixture& fixture) {
    if (fixture.rule == "all") return;
    if (find_rule(fixture.rule) == nullptr) fail(fixture.path, 1, "no rule is called so");
    for (const Rule* rule : all_rules()) {
        if (rule->id == fixture.rule) {
            fixture.options.stage = std::max(fixture.options.stage, rule->stage);
        } else {
            fixture.options.rule_levels[std::string(rule->id)] = RuleLevel::off;
        }
    }
}

Fixture load_fixture(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream content;
    content << file.rdbuf();

    Fixture fixture;
    fixture.name = path.stem().string();
    fixture.path = path;
    Sample sample;
    std::vector<std::string> lines;
    bool begun = false;
    int number = 0;
    for (const std::string& line : split_lines(content.str())) {
        ++number;
        if (is_heading(line)) {
            if (begun) finish(fixture, sample, lines);
            begun = true;
            sample.line = number;
            read_heading(fixture, sample, trim(std::string_view(line).substr(4)));
        } else if (begun) {
            lines.push_back(line);
        } else {
            fixture.preamble += line + '\n';
            if (!trim(line).empty()) read_setting(fixture, line, number);
        }
    }
    if (begun) finish(fixture, sample, lines);
    silence_others(fixture);
    return fixture;
}

bool line_matches(std::string_view actual, std::string_view expected) {
    const std::size_t star = expected.find(wild);
    if (star == std::string_view::npos) return actual == expected;
    if (!actual.starts_with(expected.substr(0, star))) return false;
    actual.remove_prefix(star);
    expected.remove_prefix(star + wild.size());
    for (std::size_t at = 0; at <= actual.size(); ++at) {
        if (line_matches(actual.substr(at), expected)) return true;
    }
    return false;
}

std::string underline(std::string_view text, Span line, const Finding& finding, bool name_rule) {
    const Offset end = std::min(finding.span.end, line.end);
    const std::size_t indent =
        unicode::count_code_points(slice(text, {line.begin, finding.span.begin}));
    const std::size_t width = unicode::count_code_points(slice(text, {finding.span.begin, end}));
    return fmt::format("{}{} {}{}: {}", std::string(indent, ' '),
                       std::string(std::max<std::size_t>(width, 1), '~'), name_of(finding.severity),
                       name_rule ? fmt::format(" {}", finding.rule->id) : "", finding.message());
}

} // namespace

std::vector<Fixture> load_fixtures(std::string_view folder) {
    const std::filesystem::path path =
        std::filesystem::path(SAYLINE_SOURCE_DIR) / "tests" / "fixtures" / folder;
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(path)) {
        if (entry.path().extension() == ".fixture") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    std::vector<Fixture> fixtures;
    for (const auto& file : files)
        fixtures.push_back(load_fixture(file));
    return fixtures;
}

void write_fixture(const Fixture& fixture) {
    std::string text = fixture.preamble;
    for (const Sample& sample : fixture.samples) {
        if (!text.empty() && !text.ends_with("\n\n")) text += '\n';
        text += fmt::format("--- {}\n{}", sample.heading, sample.drawn);
        if (sample.kind == Sample::Kind::fix) text += "=>\n" + sample.after;
    }
    std::ofstream(fixture.path, std::ios::binary) << text;
}

bool updates_expected() {
    const char* value = std::getenv("UPDATE_EXPECTED");
    return value != nullptr && std::string_view(value) == "1";
}

std::shared_ptr<const Analysis> analyse_text(std::string_view text, const Options& options) {
    Parser parser;
    Memo memo;
    Document document;
    document.uri = "file:///sample.say";
    document.text = std::make_shared<const Text>(std::string(text));
    return analyse(document, options, parser, memo, Cancel{});
}

std::string draw(std::string_view text, const std::vector<Finding>& findings, bool name_rules) {
    const Text lines{std::string(text)};
    std::string drawn;
    for (std::uint32_t i = 0; i < lines.line_count(); ++i) {
        const Span line = lines.line_span(i);
        if (line.begin == lines.end() && i > 0) break; // behind the last line end
        drawn += fmt::format("{}\n", slice(text, line));
        for (const Finding& finding : findings) {
            if (lines.line_of(finding.span.begin) != i) continue;
            drawn += underline(text, line, finding, name_rules) + '\n';
        }
    }
    return drawn;
}

bool matches(std::string_view actual, std::string_view expected) {
    const auto one = split_lines(actual);
    const auto other = split_lines(expected);
    return std::equal(one.begin(), one.end(), other.begin(), other.end(), line_matches);
}

std::optional<Fix> find_fix(const Analysis& analysis, std::string_view title) {
    for (const Finding& finding : analysis.findings) {
        for (Fix& fix : fixes_of(analysis, finding)) {
            if (line_matches(fix.title, title)) return std::move(fix);
        }
    }
    return std::nullopt;
}

std::string spoken_words(const Analysis& analysis) {
    std::string words;
    for (const Placed& placed : analysis.script.thoughts) {
        for (const Said& said : placed.thought->reading.said) {
            for (const SpokenWord& word : said.spoken)
                words += word.text + ' ';
        }
    }
    return words;
}

} // namespace say::test
