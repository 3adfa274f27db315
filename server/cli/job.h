// What every subcommand does before its own work: settings, files, one analysis a script.
#pragma once

#include "cli/command.h"
#include "engine/analysis.h"
#include "host/settings.h"

#include <memory>
#include <set>
#include <string>
#include <vector>

namespace say::cli {

// The flags that set how a script is read; each is stronger than the script's own header.
std::vector<Flag> reading_flags();
inline constexpr Flag as_flag{"--as", "text|json", "How to print (text)"};

// The flags given, so that a script's settings can be overruled by them.
Result<void> apply_reading_flags(const Arguments& arguments, Options& options);
// True for json; an error for anything else than text and json.
Result<bool> wants_json(const Arguments& arguments);

struct Source {
    std::string name;           // as given, "standard input" for -
    std::filesystem::path file; // empty for standard input
};

// What could not be done, in one place for text and JSON output.
struct Trouble {
    std::string file;
    std::uint32_t line = 0; // 0 where there is no place to point at
    std::uint32_t column = 0;
    std::string message;
    bool fatal = true; // false for a setting that does not apply: the rest of the job is done

    std::string text() const; // "talk.say:12: ..." for people
};

class Job {
public:
    explicit Job(const Arguments& arguments) : arguments_(arguments) {}

    // The scripts named; folders become the scripts in them. What is not there is trouble.
    std::vector<Source> sources();

    // Null after trouble.
    std::shared_ptr<const Text> read(const Source& source);
    std::shared_ptr<const Text> read_with_words(const Source& source); // an empty one is trouble
    std::shared_ptr<const Analysis> analyse(const Source& source,
                                            const std::shared_ptr<const Text>& text);
    // The settings for a script, with the flags on top; nothing if a flag is wrong.
    std::optional<Options> options(const Source& source);

    // The word lists that the last options named.
    const std::vector<std::filesystem::path>& lexicons() const { return lexicons_; }

    const std::vector<Trouble>& trouble() const { return trouble_; }
    bool failed() const; // any fatal trouble
    // Prints trouble that came up since the last call.
    void report(Console& console);
    void add_trouble(Trouble trouble);

private:
    const Arguments& arguments_;
    Parser parser_;
    std::vector<std::filesystem::path> lexicons_;
    std::vector<Trouble> trouble_;
    std::set<std::string> seen_; // the same settings file serves many scripts: say it once
    std::size_t reported_ = 0;
};

} // namespace say::cli
