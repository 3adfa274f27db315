// Texts with times: captions (WebVTT of the W3C; SRT, which has no standard) and lines of seconds
// and text. What cannot be used is left out with its line, not refused.
#pragma once

#include "base/result.h"
#include "engine/timed_text.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

struct Captions {
    std::vector<Cue> cues; // as the file has them
    std::vector<LeftOut> left_out;
    std::vector<Cue>
        untimed; // turns and line: what is left out for want of times, words all the same
};

// "WEBVTT" at the top; hours may be left out; NOTE, STYLE and REGION blocks, cue settings and tags
// are passed over, character references read. Sounds in brackets, music and dialogue dashes are not
// spoken.
Result<Captions> read_webvtt(std::string_view bytes, const std::string& name);
// Comma or dot before the milliseconds; numbers may be missing.
Result<Captions> read_srt(std::string_view bytes, const std::string& name);

struct TimedLines {
    std::vector<TimedLine> lines;
    std::vector<LeftOut> left_out;
};
// "seconds<TAB>text" a line; empty lines and those that begin with # are passed over.
Result<TimedLines> read_timed_lines(std::string_view bytes, const std::string& name);

} // namespace say
