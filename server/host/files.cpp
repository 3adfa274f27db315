// Reads and writes whole files; what this platform calls its terminal is asked here alone.
#include "host/files.h"

#include "base/hash.h"
#include "exporters/exporter.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <memory>
#include <system_error>
#include <unistd.h>

namespace say {
namespace {

namespace fs = std::filesystem;

using File = std::unique_ptr<std::FILE, CloseFile>;

Result<std::string> read_all(std::FILE* file, const std::string& name, std::size_t largest) {
    std::string bytes;
    std::string chunk(std::size_t{64} * 1024, '\0');
    while (bytes.size() <= largest) {
        const std::size_t got = std::fread(chunk.data(), 1, chunk.size(), file);
        if (got == 0) break;
        bytes.append(chunk, 0, got);
    }
    if (std::ferror(file) != 0) {
        return Error{fmt::format("{}: cannot be read ({})", name, std::strerror(errno))};
    }
    if (bytes.size() > largest) {
        return Error{
            fmt::format("{}: larger than {} MiB; split it into parts", name, largest >> 20U)};
    }
    // A text could be an error's message as well: said outright.
    return {boost::system::in_place_value, std::move(bytes)};
}

Result<std::shared_ptr<const Text>> read_checked(std::FILE* file, const std::string& name) {
    auto bytes = read_all(file, name, largest_file);
    if (!bytes) return bytes.error();
    if (const auto fine = check_text(*bytes, name); !fine) return fine.error();
    return std::make_shared<const Text>(std::move(*bytes));
}

Result<File> open_file(const fs::path& file) {
    std::error_code error;
    if (fs::is_directory(file, error)) {
        return Error{fmt::format("{}: a folder, not a file", file.string())};
    }
    File handle{std::fopen(file.c_str(), "rb")};
    if (handle) return handle;
    return Error{fmt::format("{}: cannot be opened ({})", file.string(), std::strerror(errno))};
}

bool is_hidden(const fs::path& path) {
    return path.filename().string().starts_with('.');
}

// A draft in another encoding can be read all the same, though not as a script.
std::string save_as_utf8(const std::string& name) {
    return name.ends_with(".say") ? "save it as UTF-8, or import it (--from txt) if it has no marks"
                                  : "save it as UTF-8";
}

} // namespace

Result<void> check_text(std::string_view bytes, const std::string& name) {
    if (bytes.starts_with("\xFF\xFE") || bytes.starts_with("\xFE\xFF")) {
        return Error{fmt::format("{}: UTF-16 text; {}", name, save_as_utf8(name))};
    }
    if (const auto at = bytes.find('\0'); at != std::string_view::npos) {
        return Error{
            fmt::format("{}: not a text (a zero byte at {}); give a script", name, at + 1)};
    }
    const std::size_t bad = unicode::first_invalid_utf8(bytes);
    if (bad == std::string_view::npos) return {};
    const Text before{std::string(bytes.substr(0, bad))};
    return Error{fmt::format(
        "{}:{}: not UTF-8 (byte {}, value 0x{:02X}); {}", name, before.line_count(), bad + 1,
        static_cast<unsigned>(static_cast<unsigned char>(bytes[bad])), save_as_utf8(name))};
}

Result<std::shared_ptr<const Text>> read_text(const fs::path& file) {
    const auto handle = open_file(file);
    if (!handle) return handle.error();
    return read_checked(handle->get(), file.string());
}

Result<std::string> read_bytes(const fs::path& file, std::size_t largest) {
    const auto handle = open_file(file);
    if (!handle) return handle.error();
    return read_all(handle->get(), file.string(), largest);
}

Result<std::string> read_input_bytes(std::size_t largest) {
    return read_all(stdin, "standard input", largest);
}

Result<std::shared_ptr<const Text>> read_standard_input() {
    return read_checked(stdin, "standard input");
}

Result<NewFile> NewFile::begin(const fs::path& file) {
    std::error_code error;
    NewFile made;
    made.file_ = file;
    // What a link points at is replaced, not the link.
    made.target_ = fs::exists(file, error) ? fs::canonical(file, error) : file;
    made.draft_ = made.target_;
    // A device or a pipe takes what is written; nothing may stand in its place.
    if (!fs::exists(made.target_, error) || fs::is_regular_file(made.target_, error))
        made.draft_ += fmt::format(".{}.tmp", ::getpid());
    made.handle_.reset(std::fopen(made.draft_.c_str(), "wb"));
    if (made.handle_) return made;
    return Error{fmt::format("{}: cannot be written ({})", file.string(), std::strerror(errno))};
}

NewFile::~NewFile() {
    if (!handle_ || draft_ == target_) return;
    handle_.reset();
    std::error_code ignored;
    fs::remove(draft_, ignored);
}

bool NewFile::add(std::string_view bytes) {
    if (failed_ == 0 && std::fwrite(bytes.data(), 1, bytes.size(), handle_.get()) != bytes.size()) {
        failed_ = errno;
    }
    return failed_ == 0;
}

Result<void> NewFile::finish() {
    const bool in_place = draft_ == target_;
    if (failed_ == 0 && std::fflush(handle_.get()) != 0) failed_ = errno;
    if (failed_ == 0 && !in_place && ::fsync(::fileno(handle_.get())) != 0) failed_ = errno;
    handle_.reset();
    std::error_code error;
    const auto fail = [&](std::string_view what, const std::string& why) {
        std::error_code ignored;
        if (!in_place) fs::remove(draft_, ignored);
        return Error{fmt::format("{}: cannot be {} ({})", file_.string(), what, why)};
    };
    if (failed_ != 0) return fail("written", std::strerror(failed_));
    if (in_place) return {};
    const auto status = fs::status(target_, error);
    if (!error && fs::exists(status)) fs::permissions(draft_, status.permissions(), error);
    fs::rename(draft_, target_, error);
    if (error) return fail("replaced", error.message());
    return {};
}

Result<void> write_text(const fs::path& file, std::string_view bytes) {
    auto made = NewFile::begin(file);
    if (!made) return made.error();
    made->add(bytes);
    return made->finish();
}

Result<void> check_no_script(const fs::path& file, const fs::path& script) {
    std::error_code error;
    if (!script.empty() && fs::equivalent(file, script, error))
        return Error{file.string() + ": that is the script itself; give another name"};
    // Also where none is yet: what is not a script under a script's name comes to grief later.
    if (file.extension() == ".say")
        return Error{file.string() + ": that is a script's name; give another ending"};
    return {};
}

std::optional<std::string> first_bytes(const fs::path& file, std::size_t most) {
    std::error_code error;
    if (!fs::is_regular_file(file, error)) return std::nullopt;
    std::ifstream stream(file, std::ios::binary);
    std::string bytes(most, '\0');
    stream.read(bytes.data(), std::ssize(bytes));
    bytes.resize(static_cast<std::size_t>(std::max<std::streamsize>(stream.gcount(), 0)));
    return bytes;
}

bool may_make_anew(const fs::path& file, std::string_view sign) {
    const auto there = first_bytes(file, sign_within);
    if (!there || there->empty()) return true;
    return !sign.empty() && there->find(sign) != std::string::npos;
}

void ScriptWalk::step(Walk& found) {
    if (left_.empty()) return;
    const fs::path folder = std::move(left_.back());
    left_.pop_back();
    std::error_code error;
    for (fs::directory_iterator it(folder, error), end; !error && it != end; it.increment(error)) {
        const fs::directory_entry& entry = *it;
        if (is_hidden(entry.path())) continue;
        std::error_code ignored; // An entry that vanished meanwhile is neither.
        if (entry.is_directory(ignored) && !entry.is_symlink(ignored)) {
            left_.push_back(entry.path());
        } else if (entry.path().extension() == ".say" && entry.is_regular_file(ignored)) {
            found.scripts.push_back(entry.path());
        }
    }
    if (error) {
        found.errors.push_back(
            {fmt::format("{}: the folder cannot be read ({})", folder.string(), error.message())});
    }
}

Walk find_scripts(const fs::path& folder) {
    Walk result;
    ScriptWalk walk({folder});
    while (!walk.done())
        walk.step(result);
    std::sort(result.scripts.begin(), result.scripts.end());
    return result;
}

fs::path find_settings_folder(const fs::path& script) {
    std::error_code error;
    fs::path folder = fs::absolute(script, error).lexically_normal().parent_path();
    if (error) return {};
    while (true) {
        fs::path here = folder / ".sayline";
        if (fs::is_directory(here, error)) return here;
        if (!folder.has_relative_path()) return {};
        folder = folder.parent_path();
    }
}

std::uint64_t stamp_of(const fs::path& file) {
    std::error_code error;
    const auto time = fs::last_write_time(file, error);
    if (error) return 0;
    const auto size = fs::is_directory(file, error) ? 0 : fs::file_size(file, error);
    Hash hash;
    hash.add(static_cast<std::uint64_t>(time.time_since_epoch().count()));
    hash.add(static_cast<std::uint64_t>(size));
    return hash.value() | 1U; // Never the 0 of a file that is not there.
}

bool is_terminal_output() {
    return ::isatty(STDOUT_FILENO) == 1;
}

bool is_terminal_error() {
    return ::isatty(STDERR_FILENO) == 1;
}

bool colour_unwanted() {
    const char* no_colour = std::getenv("NO_COLOR");
    if (no_colour != nullptr && *no_colour != '\0') return true;
    const char* terminal = std::getenv("TERM");
    return terminal == nullptr || std::string_view(terminal) == "dumb";
}

} // namespace say
