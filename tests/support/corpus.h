// Reads the grammar's corpus: cases of a name, an input and the tree it must give.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace say::test {

struct CorpusCase {
    std::string file;
    std::string name;
    std::string input;
    std::string tree; // blanks collapsed
};

std::vector<CorpusCase> load_corpus(const std::filesystem::path& folder);
std::string collapse_blanks(const std::string& text);

} // namespace say::test
