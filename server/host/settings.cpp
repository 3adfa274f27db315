// Merges the sources of settings, weakest first, and says where each wrong value stands. The JSON
// library keeps no places, so a small scan of the text finds the line of a key when one is needed.
#include "host/settings.h"

#include "base/hash.h"
#include "host/files.h"
#include "host/pls.h"
#include "host/readers.h"
#include "text/text.h"
#include "text/unicode.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <optional>
#include <string_view>

namespace say {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

// --- where a key stands ------------------------------------------------------------------------

// Walks JSON with comments far enough to find keys; the text is known to be well formed.
class KeyFinder {
public:
    explicit KeyFinder(std::string_view text) : text_(text) {}

    // The last place of a key of the outermost object, or of the object called `group` in it: as
    // in the library, the last of several wins.
    std::optional<std::size_t> find(std::string_view group, std::string_view key) {
        std::optional<std::size_t> found;
        int depth = 0;
        bool in_group = false;
        std::string last; // key or text most lately read
        for (at_ = 0; at_ < text_.size();) {
            const char c = text_[at_];
            if (c == '/') {
                skip_comment();
            } else if (c == '"') {
                const std::size_t begin = at_;
                last = read_string();
                const bool level = group.empty() ? depth == 1 : depth == 2 && in_group;
                if (level && last == key && is_key()) found = begin;
            } else {
                if (c == '{' || c == '[') {
                    if (depth == 1) in_group = c == '{' && last == group;
                    ++depth;
                }
                if (c == '}' || c == ']') --depth;
                ++at_;
            }
        }
        return found;
    }

private:
    void skip_comment() {
        const bool block = text_.substr(at_, 2) == "/*";
        const std::size_t end = block ? text_.find("*/", at_ + 2) : text_.find('\n', at_);
        at_ = end == std::string_view::npos ? text_.size() : end + (block ? 2 : 1);
    }

    // Escapes stay as written: no key of ours needs one.
    std::string read_string() {
        const std::size_t begin = ++at_;
        while (at_ < text_.size() && text_[at_] != '"')
            at_ += text_[at_] == '\\' ? 2 : 1;
        at_ = std::min(at_, text_.size());
        std::string result(text_.substr(begin, at_ - begin));
        if (at_ < text_.size()) ++at_;
        return result;
    }

    bool is_key() const {
        const std::size_t next = text_.find_first_not_of(" \t\r\n", at_);
        return next != std::string_view::npos && (text_[next] == ':' || text_[next] == '/');
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

// --- one source of settings --------------------------------------------------------------------

struct Source {
    fs::path file; // empty for an editor's
    std::shared_ptr<const Text> text = std::make_shared<const Text>(std::string{});
};

SettingsProblem problem_at(const Source& source, std::optional<std::size_t> at,
                           std::string message) {
    SettingsProblem problem{.file = source.file, .message = std::move(message)};
    if (!at) return problem;
    const Text& text = *source.text;
    const Offset offset{static_cast<std::uint32_t>(std::min(*at, text.bytes().size()))};
    const std::uint32_t line = text.line_of(offset);
    const Span before{text.line_start(line), offset};
    problem.line = line + 1;
    problem.column =
        1 + static_cast<std::uint32_t>(unicode::count_code_points(slice(text.bytes(), before)));
    return problem;
}

SettingsProblem problem_with(const Source& source, std::string_view group, std::string_view key,
                             std::string message) {
    if (source.file.empty()) return {.file = {}, .message = std::move(message)};
    return problem_at(source, KeyFinder(source.text->bytes()).find(group, key), std::move(message));
}

std::optional<OptionValue> to_option_value(const json& value) {
    if (value.is_boolean()) return OptionValue{value.get<bool>()};
    if (value.is_number()) return OptionValue{value.get<double>()};
    if (value.is_string()) return OptionValue{value.get<std::string>()};
    const auto is_text = [](const json& entry) { return entry.is_string(); };
    if (value.is_array() && std::all_of(value.begin(), value.end(), is_text)) {
        return OptionValue{value.get<std::vector<std::string>>()};
    }
    return std::nullopt;
}

void apply_rules(const json& levels, const Source& source, Setup& setup) {
    if (!levels.is_object()) {
        setup.problems.push_back(
            problem_with(source, {}, "rules",
                         "rules may be an object of rule ids, as in {\"long-sentence\": \"off\"}"));
        return;
    }
    for (const auto& [id, level] : levels.items()) {
        if (level.is_null()) continue;
        const std::string word = level.is_string() ? level.get<std::string>() : level.dump();
        if (const auto set = set_rule_level(setup.options, id, word); !set) {
            setup.problems.push_back(problem_with(source, "rules", id, set.error().message));
        }
    }
}

void apply_settings(const json& settings, const Source& source, Setup& setup) {
    for (const auto& [key, value] : settings.items()) {
        // null is how an editor says "not set"; "$schema" names our own schema.
        if (value.is_null() || key == "$schema") continue;
        if (key == "rules") {
            apply_rules(value, source, setup);
            continue;
        }
        const auto plain = to_option_value(value);
        // A list or an object is shown as text, so that the message names what may stand there.
        const OptionValue shown =
            plain ? *plain : OptionValue{value.is_array() ? "[...]" : "{...}"};
        if (const auto set = set_option(setup.options, key, shown); !set) {
            setup.problems.push_back(problem_with(source, {}, key, set.error().message));
        }
    }
}

// The library's sentence without its own preamble: "syntax error while parsing value - ...".
std::string plain_message(std::string_view what) {
    const auto at = what.find("syntax error");
    if (at != std::string_view::npos) what.remove_prefix(at);
    return fmt::format("not JSON: {}; nothing in this file applies", what);
}

// A sentence that names its file, for a problem whose place names it already.
SettingsProblem file_problem(const fs::path& file, std::string message) {
    if (message.starts_with(file.string())) message.erase(0, file.string().size());
    const auto words = std::min(message.find_first_not_of(": "), message.size());
    return {.file = file, .message = message.substr(words)};
}

void apply_file(Source& source, Setup& setup) {
    std::error_code error;
    if (!fs::exists(source.file, error)) return;
    const auto text = read_text(source.file);
    if (!text) {
        setup.problems.push_back(file_problem(source.file, text.error().message));
        return;
    }
    source.text = *text;
    json settings;
    try {
        settings = json::parse(source.text->bytes(), nullptr, true, true);
    } catch (const json::parse_error& wrong) {
        const std::size_t at = wrong.byte > 0 ? wrong.byte - 1 : 0;
        setup.problems.push_back(problem_at(source, at, plain_message(wrong.what())));
        return;
    }
    if (!settings.is_object()) {
        setup.problems.push_back(
            problem_at(source, 0, "settings may be an object, as in {\"breath_limit\": 6}"));
        return;
    }
    apply_settings(settings, source, setup);
}

std::vector<fs::path> reader_files(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code error;
    for (fs::directory_iterator it(folder / "readers", error), end; !error && it != end;
         it.increment(error)) {
        if (it->path().extension() == ".json") files.push_back(it->path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

void load_readers(Setup& setup) {
    for (const fs::path& file : reader_files(setup.folder)) {
        const auto reader = load_reader(file);
        if (reader) {
            setup.options.readers.insert_or_assign(file.stem().string(), *reader);
            continue;
        }
        setup.problems.push_back(file_problem(file, reader.error().message));
    }
}

// A reader without a file would silently be read at nobody's pace.
void check_reader(const Source& source, std::string_view before, Setup& setup) {
    const std::string& reader = setup.options.reader;
    if (reader.empty() || reader == before || setup.options.readers.contains(reader)) return;
    setup.problems.push_back(problem_with(
        source, {}, "reader",
        fmt::format("reader \"{}\" has no file .sayline/readers/{}.json; the times are those of an "
                    "unknown reader",
                    reader, reader)));
}

// --- lexicons ----------------------------------------------------------------------------------

constexpr std::string_view word_list_name = "words.pls";

// One file into the list. What is wrong in it is reported there, that it cannot be read where it is
// named.
void load_lexicon(const fs::path& file, const Source& named_in, WordList& list, Setup& setup) {
    const auto text = read_text(file);
    if (!text) {
        SettingsProblem problem = file_problem(file, text.error().message);
        if (!named_in.file.empty()) {
            problem = problem_with(
                named_in, {}, "lexicons",
                fmt::format("lexicon \"{}\": {}", file.filename().string(), problem.message));
        }
        setup.problems.push_back(std::move(problem));
        return;
    }
    const Source source{.file = file, .text = *text};
    const Pls pls = read_pls((*text)->bytes());
    for (const PlsFault& fault : pls.faults)
        setup.problems.push_back(problem_at(source, fault.at.value, fault.message));
    add_to(list, pls);
}

// The project's own list, then those that are named.
void load_lexicons(const Source& named_in, const fs::path& base, Setup& setup) {
    WordList list;
    std::error_code error;
    const fs::path own = setup.folder / word_list_name;
    if (!setup.folder.empty() && fs::exists(own, error)) load_lexicon(own, {}, list, setup);
    setup.lexicons.clear();
    for (const std::string& name : setup.options.lexicons) {
        const fs::path file = (base / name).lexically_normal();
        setup.lexicons.push_back(file);
        load_lexicon(file, named_in, list, setup);
    }
    setup.options.voice.words =
        list.empty() ? nullptr : std::make_shared<const WordList>(std::move(list));
}

// --- schema ------------------------------------------------------------------------------------

nlohmann::ordered_json default_of(const OptionRow& row) {
    switch (row.type) {
    case OptionType::boolean: return row.default_value == "true";
    case OptionType::number:
    case OptionType::seconds:
    case OptionType::words: return nlohmann::ordered_json::parse(row.default_value);
    case OptionType::choice:
    case OptionType::pace:
    case OptionType::text: return std::string(row.default_value);
    case OptionType::files: return nlohmann::ordered_json::array();
    }
    return nullptr;
}

void add_shape(nlohmann::ordered_json& entry, const OptionRow& row) {
    switch (row.type) {
    case OptionType::boolean: entry["type"] = "boolean"; return;
    case OptionType::number:
    case OptionType::seconds: entry["type"] = "number"; break;
    case OptionType::words: entry["type"] = "integer"; break;
    case OptionType::text: entry["type"] = "string"; return;
    case OptionType::files:
        entry["type"] = "array";
        entry["items"] = {{"type", "string"}};
        return;
    case OptionType::pace:
        entry["type"] = {"number", "string"};
        entry["minimum"] = 0.25;
        entry["maximum"] = 4;
        return;
    case OptionType::choice:
        if (row.low >= row.high) {
            entry["type"] = "string";
            entry["enum"] = row.choices;
            return;
        }
        entry["anyOf"] = {{{"type", "string"}, {"enum", row.choices}},
                          {{"type", "number"}, {"minimum", row.low}, {"maximum", row.high}}};
        return;
    }
    entry["minimum"] = row.low;
    entry["maximum"] = row.high;
}

nlohmann::ordered_json rules_schema() {
    nlohmann::ordered_json entries = nlohmann::ordered_json::object();
    for (const Rule* rule : all_rules()) {
        entries[std::string(rule->id)] = {{"type", "string"},
                                          {"enum", {"off", "hint", "warning"}},
                                          {"description", rule->summary}};
    }
    return {{"type", "object"},
            {"description", "How each rule is heard: `off`, `hint` or `warning`."},
            {"default", nlohmann::ordered_json::object()},
            {"properties", std::move(entries)},
            {"additionalProperties", false}};
}

} // namespace

Setup load_setup(const fs::path& script, const json* editor_settings) {
    Setup setup;
    setup.folder = script.empty() ? fs::path{} : find_settings_folder(script);
    Source file;
    if (!setup.folder.empty()) {
        load_readers(setup);
        file.file = setup.folder / "settings.json";
        apply_file(file, setup);
        check_reader(file, {}, setup);
    }
    bool named_by_editor = false;
    if (editor_settings != nullptr && editor_settings->is_object()) {
        const std::string before = setup.options.reader;
        const std::vector<std::string> named = setup.options.lexicons;
        apply_settings(*editor_settings, Source{}, setup);
        check_reader(Source{}, before, setup);
        named_by_editor = setup.options.lexicons != named;
    }
    const fs::path base = setup.folder.empty() ? script.parent_path() : setup.folder;
    load_lexicons(named_by_editor ? Source{} : file, base, setup);
    return setup;
}

void load_lexicons(Setup& setup, const fs::path& base) {
    // What was wrong with those that no longer count is no news.
    std::erase_if(setup.problems, [&](const SettingsProblem& problem) {
        return std::find(setup.lexicons.begin(), setup.lexicons.end(), problem.file) !=
                   setup.lexicons.end() ||
               problem.file == setup.folder / word_list_name;
    });
    load_lexicons(Source{}, base, setup);
}

fs::path word_list_file(const fs::path& script) {
    const fs::path folder = find_settings_folder(script);
    if (!folder.empty()) return folder / word_list_name;
    std::error_code error;
    return fs::absolute(script, error).lexically_normal().parent_path() / ".sayline" /
           word_list_name;
}

std::uint64_t settings_stamp(const fs::path& script, std::span<const fs::path> lexicons) {
    if (script.empty()) return 0;
    Hash hash;
    const fs::path folder = find_settings_folder(script);
    if (!folder.empty()) {
        hash.add(folder.string());
        hash.add(stamp_of(folder / "settings.json"));
        hash.add(stamp_of(folder / word_list_name));
        for (const fs::path& file : reader_files(folder)) {
            hash.add(file.string());
            hash.add(stamp_of(file));
        }
    } else if (lexicons.empty()) {
        return 0;
    }
    for (const fs::path& file : lexicons)
        hash.add(stamp_of(file));
    return hash.value() | 1U;
}

fs::path reader_file(const fs::path& script, std::string_view reader) {
    const fs::path folder = find_settings_folder(script);
    return folder.empty() ? fs::path{} : folder / "readers" / (std::string(reader) + ".json");
}

nlohmann::ordered_json schema_json() {
    nlohmann::ordered_json properties = nlohmann::ordered_json::object();
    properties["$schema"] = {{"type", "string"}};
    for (const OptionRow& row : option_rows()) {
        nlohmann::ordered_json entry = nlohmann::ordered_json::object();
        add_shape(entry, row);
        entry["default"] = default_of(row);
        entry["description"] = row.help;
        entry["$comment"] = fmt::format("Default: {}.", row.source);
        properties[std::string(row.key)] = std::move(entry);
    }
    properties["rules"] = rules_schema();
    return {{"$schema", "http://json-schema.org/draft-07/schema#"},
            {"title", "Sayline settings"},
            {"description", "The file .sayline/settings.json beside a script. Comments are "
                            "allowed. Every key is optional."},
            {"type", "object"},
            {"properties", std::move(properties)},
            {"additionalProperties", false}};
}

} // namespace say
