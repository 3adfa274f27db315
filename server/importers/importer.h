// What a draft comes as: one file a format, one row a format, a function from bytes to a draft.
// Nothing here opens a file, and nothing inside a document is ever written to one.
#pragma once

#include "base/result.h"
#include "importers/draft.h"

#include <span>
#include <string>
#include <string_view>

namespace say {

// A document with its pictures; its parts have limits of their own (package.h).
inline constexpr std::size_t largest_draft = std::size_t{64} * 1024 * 1024;
// Of a text, a Markdown file, captions: more than a day of speech.
inline constexpr std::size_t largest_text_draft = std::size_t{8} * 1024 * 1024;

struct Importer {
    std::string_view name;    // "md"
    std::string_view summary; // one line, no full stop
    std::string_view endings; // of file names, each with its dot, parted by blanks
    bool is_text = true;      // `read` is handed UTF-8
    // `name` is the file's, for sentences.
    Result<Draft> (*read)(std::string_view bytes, const std::string& name) = nullptr;
};

std::span<const Importer> importers();
const Importer* find_importer(std::string_view name); // null if there is none

// Which one reads these bytes: by what they begin with, then by the file's ending. An error names
// what to save the draft as.
Result<const Importer*> importer_for(std::string_view bytes, const std::string& name);

// Reads a draft; a text in another encoding than UTF-8 is converted, and that is told.
Result<Draft> read_draft(std::string_view bytes, const std::string& name, const Importer& importer);

Result<Draft> read_text_draft(std::string_view text, const std::string& name);
Result<Draft> read_markdown(std::string_view text, const std::string& name);
Result<Draft> read_docx(std::string_view bytes, const std::string& name);
Result<Draft> read_odt(std::string_view bytes, const std::string& name);
Result<Draft> read_webvtt_draft(std::string_view text, const std::string& name);
Result<Draft> read_srt_draft(std::string_view text, const std::string& name);

} // namespace say
