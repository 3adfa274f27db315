// A reader's own speed, learnt from timed reads: `.sayline/readers/NAME.json`, one file a reader.
#pragma once

#include "base/result.h"
#include "engine/calibration.h"
#include "engine/options.h"

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

namespace say {

// {"version": 1, "name": "mira", "speech": 1.05, "pauses": 0.9}. "seconds", where it stands, is how
// much timed speech the numbers rest on. Keys this version does not know are passed over: a later
// one may have written them. The name that counts is the file's.
Result<Options::Reader> load_reader(const std::filesystem::path& file);

// A name that makes a file: letters, digits, blanks, - and _.
Result<void> check_reader_name(std::string_view name);

// One timed read as the file keeps it: never its text.
struct Take {
    std::string date;   // 2026-11-25
    std::string source; // "captions", "lines", "script"
    Seconds seconds{0};
    int words = 0;
    Evidence evidence;
};

// What a reader's file says after a take was added.
struct Learnt {
    ReaderNumbers numbers;
    Seconds rests_on{0};
    int takes = 0;
    std::string newest;      // date
    bool known_take = false; // it was in the file already, and counts once
};

// A reader's file as it is read to be added to: keys that are not ours stay as they are.
class ReaderFile {
public:
    // A file that is not there is an empty one. One that was written by hand (no takes, comments in
    // it, other numbers than those of its takes) is an error unless `replace`, which begins anew.
    static Result<ReaderFile> open(const std::filesystem::path& file, bool replace);
    ReaderFile(ReaderFile&&) noexcept;
    ReaderFile& operator=(ReaderFile&&) noexcept;
    ~ReaderFile();

    // What the takes in it say on that date: older ones weigh less.
    Evidence evidence(std::string_view date) const;
    Learnt add(const Take& take);
    // In one step; makes the folder where it is missing.
    Result<void> save() const;

private:
    struct State;
    explicit ReaderFile(std::unique_ptr<State> state);
    bool numbers_are_set_by_hand() const;
    std::unique_ptr<State> state_;
};

// "2026-11-25", or an error that names it.
Result<void> check_date(std::string_view date);
std::string today(); // local time

} // namespace say
