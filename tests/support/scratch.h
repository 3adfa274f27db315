// A folder of a test's own.
#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

namespace say {

namespace fs = std::filesystem;

// A folder that is gone when the test is over.
class Scratch {
public:
    Scratch() : folder_(fs::temp_directory_path() / unique_name()) {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    ~Scratch() { fs::remove_all(folder_); }
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;

    fs::path write(const fs::path& name, std::string_view bytes) const {
        fs::path file = folder_ / name;
        fs::create_directories(file.parent_path());
        std::ofstream(file, std::ios::binary) << bytes;
        return file;
    }
    fs::path at(const fs::path& name) const { return folder_ / name; }

private:
    static std::string unique_name() {
        return "sayline-test-" + std::to_string(reinterpret_cast<std::uintptr_t>(&unique_name)) +
               "-" + std::to_string(std::chrono::steady_clock::now().time_since_epoch().count());
    }
    fs::path folder_;
};

} // namespace say
