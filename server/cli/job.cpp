// Files in, analyses out; trouble is collected, never thrown.
#include "cli/job.h"

#include "host/files.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <ostream>

namespace say::cli {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view standard_input = "standard input";

// Splits off "name: " or "name:12: " that the host's sentences begin with.
Trouble to_trouble(const Source& source, const Error& error) {
    Trouble trouble{.file = source.name, .message = error.message};
    std::string_view rest = error.message;
    if (!rest.starts_with(source.name)) return trouble;
    rest.remove_prefix(source.name.size());
    if (!rest.starts_with(':')) return trouble;
    rest.remove_prefix(1);
    std::uint32_t line = 0;
    while (!rest.empty() && rest.front() >= '0' && rest.front() <= '9') {
        line = line * 10 + static_cast<std::uint32_t>(rest.front() - '0');
        rest.remove_prefix(1);
    }
    if (rest.starts_with(':')) rest.remove_prefix(1);
    if (rest.starts_with(' ')) rest.remove_prefix(1);
    trouble.line = line;
    trouble.message = std::string(rest);
    return trouble;
}

bool is_blank(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto point = unicode::decode(text, at);
        if (!unicode::is_blank(point.value) && !unicode::is_ignorable(point.value) &&
            point.value != U'\uFEFF') {
            return false;
        }
        at += point.size;
    }
    return true;
}

Result<void> apply_setting(std::string_view written, Options& options) {
    const auto equals = written.find('=');
    if (equals == std::string_view::npos) {
        return Error{
            fmt::format("--set needs KEY=VALUE, as in --set breath_limit=5, not \"{}\"", written)};
    }
    const std::string_view key = written.substr(0, equals);
    const std::string value(written.substr(equals + 1));
    constexpr std::string_view rules = "rules.";
    if (key.starts_with(rules)) return set_rule_level(options, key.substr(rules.size()), value);
    if (auto set = set_option(options, key, value); !set) return set;
    options.pace_is_flag |= key == "pace";
    options.reader_is_flag |= key == "reader";
    options.language_is_flag |= key == "language";
    options.stage_is_flag |= key == "stage";
    return {};
}

} // namespace

std::string Trouble::text() const {
    if (line == 0) return fmt::format("{}: {}", file, message);
    if (column == 0) return fmt::format("{}:{}: {}", file, line, message);
    return fmt::format("{}:{}:{}: {}", file, line, column, message);
}

std::vector<Flag> reading_flags() {
    return {
        {"--pace", "SPEED", "How fast it is read: 1.1x is faster, \"165 wpm\" works too"},
        {"--reader", "NAME", "Whose pace counts: a file of .sayline/readers"},
        {"--language", "TAG", "en-US or en-GB"},
        {"--stage", "STAGE", "How far the script is: draft, mark or read"},
        {"--set", "KEY=VALUE", "Any setting of docs/options.md, or rules.ID=off|hint|warning"},
    };
}

Result<void> apply_reading_flags(const Arguments& arguments, Options& options) {
    if (const auto settings = arguments.flags.find("--set"); settings != arguments.flags.end()) {
        for (const std::string& written : settings->second) {
            if (auto set = apply_setting(written, options); !set) return set;
        }
    }
    for (const std::string_view key : {"pace", "reader", "language", "stage"}) {
        const auto value = arguments.value(fmt::format("--{}", key));
        if (!value) continue;
        if (const auto set = apply_setting(fmt::format("{}={}", key, *value), options); !set) {
            return Error{"--" + set.error().message};
        }
    }
    if (options.reader_is_flag && !options.reader.empty() &&
        !options.readers.contains(options.reader)) {
        return Error{fmt::format("--reader \"{}\" has no file .sayline/readers/{}.json",
                                 options.reader, options.reader)};
    }
    return {};
}

Result<bool> wants_json(const Arguments& arguments) {
    const std::string as = arguments.value("--as").value_or("text");
    if (as == "json") return true;
    if (as == "text") return false;
    return Error{fmt::format("--as cannot be \"{}\"; it may be text or json", as)};
}

std::vector<Source> Job::sources() {
    std::vector<Source> sources;
    for (const std::string& name : arguments_.files) {
        std::error_code error;
        if (name == "-") {
            sources.push_back({std::string(standard_input), {}});
        } else if (fs::is_directory(name, error)) {
            Walk walk = find_scripts(name);
            for (const Error& wrong : walk.errors)
                add_trouble(to_trouble({name, {}}, wrong));
            if (walk.scripts.empty() && walk.errors.empty()) {
                add_trouble({.file = name, .message = "no .say file in this folder"});
            }
            for (const fs::path& file : walk.scripts)
                sources.push_back({file.string(), file});
        } else {
            sources.push_back({name, name});
        }
    }
    if (arguments_.files.empty()) {
        add_trouble(
            {.file = "sayline", .message = "give a script, a folder, or - for standard input"});
    }
    return sources;
}

std::shared_ptr<const Text> Job::read(const Source& source) {
    auto text = source.file.empty() ? read_standard_input() : read_text(source.file);
    if (text) return *text;
    add_trouble(to_trouble(source, text.error()));
    return nullptr;
}

std::shared_ptr<const Text> Job::read_with_words(const Source& source) {
    auto text = read(source);
    if (!text || !is_blank(text->bytes())) return text;
    add_trouble({.file = source.name, .message = "empty; write what will be said and try again"});
    return nullptr;
}

std::optional<Options> Job::options(const Source& source) {
    // Standard input has the settings of the folder one stands in.
    const fs::path script = source.file.empty() ? fs::path("-") : source.file;
    Setup setup = load_setup(script, nullptr);
    const std::vector<std::string> named = setup.options.lexicons;
    const auto set = apply_reading_flags(arguments_, setup.options);
    // What a flag names is looked for where one stands.
    if (setup.options.lexicons != named) load_lexicons(setup, {});
    lexicons_ = setup.lexicons;
    for (const SettingsProblem& problem : setup.problems) {
        std::error_code error;
        const fs::path near = fs::proximate(problem.file, error);
        const std::string name = error ? problem.file.string() : near.string();
        add_trouble({name, problem.line, problem.column, problem.message, false});
    }
    if (!set) {
        add_trouble({.file = "sayline", .message = set.error().message});
        return std::nullopt;
    }
    return std::move(setup.options);
}

std::shared_ptr<const Analysis> Job::analyse(const Source& source,
                                             const std::shared_ptr<const Text>& text) {
    const auto settings = options(source);
    if (!settings) return nullptr;
    Memo memo;
    const Document document{.uri = source.name, .version = 0, .text = text};
    return say::analyse(document, *settings, parser_, memo, Cancel{});
}

bool Job::failed() const {
    return std::any_of(trouble_.begin(), trouble_.end(),
                       [](const Trouble& trouble) { return trouble.fatal; });
}

void Job::report(Console& console) {
    for (; reported_ < trouble_.size(); ++reported_) {
        console.out.flush();
        console.err << trouble_[reported_].text() << '\n';
    }
}

void Job::add_trouble(Trouble trouble) {
    if (seen_.insert(trouble.text()).second) trouble_.push_back(std::move(trouble));
}

} // namespace say::cli
