// SRT has no standard: a number, a timing line with commas, the lines, a blank line. A speaker's
// name stands before the first words, since nothing else can tell who speaks.
#include "exporters/caption_files.h"
#include "exporters/captions.h"

#include <fmt/core.h>

#include <cmath>

namespace say {

std::string stamp(Seconds seconds, char point) {
    const auto whole = static_cast<long long>(std::llround(seconds.count() * 1000));
    return fmt::format("{:02}:{:02}:{:02}{}{:03}", whole / 3'600'000, whole / 60'000 % 60,
                       whole / 1000 % 60, point, whole % 1000);
}

std::string write_srt(const Analysis& analysis, const ExportOptions& options) {
    std::string text;
    int number = 0;
    for (const Caption& caption : captions(analysis, {.columns = options.columns, .names = true})) {
        text += fmt::format("{}\n{} --> {}\n", ++number, stamp(caption.begin, ','),
                            stamp(caption.end, ','));
        for (const std::string& line : caption.lines)
            text += line + '\n';
        text += '\n';
    }
    return text;
}

} // namespace say
