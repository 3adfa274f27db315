// WebVTT of the W3C: identifiers, timing lines, voice spans; nothing of a text can end a cue.
#include "base/markup.h"
#include "exporters/caption_files.h"
#include "exporters/captions.h"

#include <fmt/core.h>

namespace say {
std::string write_webvtt(const Analysis& analysis, const ExportOptions& options) {
    std::string text =
        "WEBVTT\n\nNOTE Times are an estimate, made from the script's words and marks.\n";
    int number = 0;
    for (const Caption& caption : captions(analysis, {.columns = options.columns})) {
        text += fmt::format("\n{}\n{} --> {}\n", ++number, stamp(caption.begin, '.'),
                            stamp(caption.end, '.'));
        if (!caption.speaker.empty()) text += fmt::format("<v {}>", markup_text(caption.speaker));
        for (const std::string& line : caption.lines)
            text += markup_text(line) + '\n';
    }
    return text;
}

} // namespace say
