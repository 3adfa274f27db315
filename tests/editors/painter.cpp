// What a tree-sitter query paints, with the grammar as it is built in: painter QUERY CASES
// QUERY is a highlights file, CASES is colours.json. Prints JSON: for each case the list of
// [capture, text], in order. Editors differ in which of two captures of one node they follow, and
// in the predicates that they know, so a query with either is refused.
#include <nlohmann/json.hpp>
#include <tree_sitter/api.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

extern "C" const TSLanguage* tree_sitter_sayline();

namespace {

using Query = std::unique_ptr<TSQuery, void (*)(TSQuery*)>;

struct Capture {
    std::uint32_t begin, end;
    std::string name;
};

std::string read(const char* path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) throw std::runtime_error(std::string(path) + " cannot be read");
    return {std::istreambuf_iterator<char>(file), {}};
}

Query compile(const std::string& text) {
    std::uint32_t at = 0;
    TSQueryError error = TSQueryErrorNone;
    Query query(ts_query_new(tree_sitter_sayline(), text.data(),
                             static_cast<std::uint32_t>(text.size()), &at, &error),
                ts_query_delete);
    if (!query) {
        throw std::runtime_error("the query does not compile at: " + text.substr(at, 60));
    }
    for (std::uint32_t pattern = 0; pattern < ts_query_pattern_count(query.get()); ++pattern) {
        std::uint32_t steps = 0;
        ts_query_predicates_for_pattern(query.get(), pattern, &steps);
        if (steps > 0) {
            const std::uint32_t begin = ts_query_start_byte_for_pattern(query.get(), pattern);
            throw std::runtime_error("a predicate: " + text.substr(begin, 60));
        }
    }
    return query;
}

std::vector<Capture> captures_of(const TSQuery* query, const TSTree* tree) {
    const std::unique_ptr<TSQueryCursor, void (*)(TSQueryCursor*)> cursor(ts_query_cursor_new(),
                                                                          ts_query_cursor_delete);
    ts_query_cursor_exec(cursor.get(), query, ts_tree_root_node(tree));
    std::vector<Capture> result;
    TSQueryMatch match{};
    std::uint32_t index = 0;
    while (ts_query_cursor_next_capture(cursor.get(), &match, &index)) {
        const TSQueryCapture& capture = match.captures[index];
        std::uint32_t length = 0;
        const char* name = ts_query_capture_name_for_id(query, capture.index, &length);
        result.push_back({ts_node_start_byte(capture.node), ts_node_end_byte(capture.node),
                          std::string(name, length)});
    }
    // Outer ones first, so that the innermost paints last.
    std::stable_sort(result.begin(), result.end(), [](const Capture& one, const Capture& other) {
        return one.end - one.begin > other.end - other.begin;
    });
    return result;
}

void refuse_doubles(std::vector<Capture> captures, const std::string& text) {
    std::stable_sort(captures.begin(), captures.end(), [](const Capture& one, const Capture& two) {
        return std::pair(one.begin, one.end) < std::pair(two.begin, two.end);
    });
    const auto twice = std::adjacent_find(
        captures.begin(), captures.end(), [](const Capture& one, const Capture& two) {
            return one.begin == two.begin && one.end == two.end && one.name != two.name;
        });
    if (twice == captures.end()) return;
    throw std::runtime_error("two captures, " + twice->name + " and " + std::next(twice)->name +
                             ", of: " + text.substr(twice->begin, twice->end - twice->begin));
}

nlohmann::json painted(const TSQuery* query, const std::string& text) {
    const std::unique_ptr<TSParser, void (*)(TSParser*)> parser(ts_parser_new(), ts_parser_delete);
    ts_parser_set_language(parser.get(), tree_sitter_sayline());
    const std::unique_ptr<TSTree, void (*)(TSTree*)> tree(
        ts_parser_parse_string(parser.get(), nullptr, text.data(),
                               static_cast<std::uint32_t>(text.size())),
        ts_tree_delete);
    const std::vector<Capture> captures = captures_of(query, tree.get());
    refuse_doubles(captures, text);

    std::vector<std::string> names(text.size());
    for (const Capture& each : captures) {
        std::fill(names.begin() + each.begin, names.begin() + each.end, each.name);
    }
    nlohmann::json pieces = nlohmann::json::array();
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at + 1;
        const bool line_end = text[at] == '\n';
        while (!line_end && end < text.size() && text[end] != '\n' && names[end] == names[at])
            ++end;
        pieces.push_back({line_end ? std::string() : names[at], text.substr(at, end - at)});
        at = end;
    }
    return pieces;
}

} // namespace

int main(int count, char** arguments) {
    try {
        if (count != 3) throw std::runtime_error("painter QUERY CASES");
        const Query query = compile(read(arguments[1]));
        nlohmann::json all = nlohmann::json::array();
        for (const nlohmann::json& each : nlohmann::json::parse(read(arguments[2]))) {
            all.push_back(painted(query.get(), each.at("text").get<std::string>()));
        }
        std::cout << all.dump() << "\n";
        return 0;
    } catch (const std::exception& error) {
        std::cerr << "painter: " << error.what() << "\n";
        return 1;
    }
}
