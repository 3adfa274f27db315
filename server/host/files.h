// The only home of files. Every failure is one sentence with place and remedy.
#pragma once

#include "base/result.h"
#include "text/text.h"

#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// More than a day of speech; what is larger is no script.
inline constexpr std::size_t largest_file = std::size_t{8} * 1024 * 1024;

// A text file: readable, not too large, not binary, UTF-8.
Result<std::shared_ptr<const Text>> read_text(const std::filesystem::path& file);
// The same from standard input; sentences call it "standard input".
Result<std::shared_ptr<const Text>> read_standard_input();
// Any file or standard input, up to `largest` bytes.
Result<std::string> read_bytes(const std::filesystem::path& file, std::size_t largest);
Result<std::string> read_input_bytes(std::size_t largest);
// What is wrong with bytes that should be a text called `name`; nothing if they are one.
Result<void> check_text(std::string_view bytes, const std::string& name);

// Replaces a file in one step: a reader sees the old text or the new one, never half of it.
Result<void> write_text(const std::filesystem::path& file, std::string_view bytes);

// A slip of the hand must not cost a script: an error if `file` is `script` itself (may be empty)
// or another one.
Result<void> check_no_script(const std::filesystem::path& file,
                             const std::filesystem::path& script);
// What is made from a script into this file may be made anew unasked if it was made so before: the
// file is not there, empty, or its first bytes hold `sign`. An empty `sign` is never found.
bool may_make_anew(const std::filesystem::path& file, std::string_view sign);
// Up to so many bytes of a regular file that is there; nothing of any other.
std::optional<std::string> first_bytes(const std::filesystem::path& file, std::size_t most);

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

// The same for what is made in parts. One that is not finished leaves nothing behind.
class NewFile {
public:
    static Result<NewFile> begin(const std::filesystem::path& file);
    NewFile(NewFile&&) = default;
    NewFile& operator=(NewFile&&) = delete;
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;
    ~NewFile();

    bool add(std::string_view bytes); // false once it cannot be written; finish says why
    Result<void> finish();

private:
    NewFile() = default;

    std::filesystem::path file_; // as given
    std::filesystem::path target_;
    std::filesystem::path draft_; // the target itself where that is a device or a pipe
    std::unique_ptr<std::FILE, CloseFile> handle_;
    int failed_ = 0; // errno of the first failure
};

struct Walk {
    std::vector<std::filesystem::path> scripts; // sorted
    std::vector<Error> errors;                  // folders that could not be read
};
// All scripts (*.say) below a folder; hidden files and folders are passed over, links not followed.
Walk find_scripts(const std::filesystem::path& folder);

// The same a folder at a time, for those who have other things to do between.
class ScriptWalk {
public:
    explicit ScriptWalk(std::vector<std::filesystem::path> folders) : left_(std::move(folders)) {}

    bool done() const { return left_.empty(); }
    void step(Walk& found); // reads one folder; the scripts found are not sorted

private:
    std::vector<std::filesystem::path> left_;
};

// The `.sayline` folder beside a script or in the nearest folder above it; empty if there is none.
std::filesystem::path find_settings_folder(const std::filesystem::path& script);

// Changes when the file does (time and size); 0 for a file that is not there.
std::uint64_t stamp_of(const std::filesystem::path& file);

bool is_terminal_output();
bool is_terminal_error();
// The environment asks for plain output (https://no-color.org), or the terminal can do no other.
bool colour_unwanted();

} // namespace say
