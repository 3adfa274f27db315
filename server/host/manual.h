// The page about the rules, printed from the table that the program itself runs on.
#pragma once

#include "base/result.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace say {

std::string rules_page(); // Markdown
// The page as a file that an editor can open: in the user's folder for what can be made anew (XDG
// Base Directory Specification), or in the one for temporary files.
Result<std::filesystem::path> rules_page_file();

namespace manual {
// A table's cell may hold any character but the one that ends it.
std::string cell(std::string_view text);
} // namespace manual

} // namespace say
