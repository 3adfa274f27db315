// The layout is tree-sitter's: === name === input --- tree, with rules of the same length.
#include "support/corpus.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace say::test {
namespace {

std::string read_file(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<std::string> split_lines(const std::string& text) {
    std::vector<std::string> lines;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = text.find('\n', at);
        lines.push_back(text.substr(at, end == std::string::npos ? end : end - at));
        if (end == std::string::npos) break;
        at = end + 1;
    }
    return lines;
}

bool is_rule(std::string line, char of) {
    if (!line.empty() && line.back() == '\r') line.pop_back();
    return line.size() >= 20 &&
           std::all_of(line.begin(), line.end(), [&](char c) { return c == of; });
}

} // namespace

std::string collapse_blanks(const std::string& text) {
    std::string result;
    for (char c : text) {
        const bool blank = c == ' ' || c == '\n' || c == '\r' || c == '\t';
        if (!blank) {
            result += c;
        } else if (!result.empty() && result.back() != ' ') {
            result += ' ';
        }
    }
    while (!result.empty() && result.back() == ' ')
        result.pop_back();
    return result;
}

std::vector<CorpusCase> load_corpus(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == ".txt") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());

    std::vector<CorpusCase> cases;
    for (const auto& path : files) {
        const std::vector<std::string> lines = split_lines(read_file(path));
        for (std::size_t i = 0; i + 2 < lines.size();) {
            if (!is_rule(lines[i], '=') || !is_rule(lines[i + 2], '=')) {
                ++i;
                continue;
            }
            CorpusCase each{
                .file = path.filename().string(), .name = lines[i + 1], .input = {}, .tree = {}};
            std::size_t at = i + 3;
            for (; at < lines.size() && !is_rule(lines[at], '-'); ++at)
                each.input += lines[at] + "\n";
            if (!each.input.empty()) each.input.pop_back();
            std::string tree;
            for (++at; at < lines.size() && !is_rule(lines[at], '='); ++at)
                tree += lines[at] + "\n";
            each.tree = collapse_blanks(tree);
            cases.push_back(std::move(each));
            i = at;
        }
    }
    return cases;
}

} // namespace say::test
