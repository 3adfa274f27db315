// Text that was read with a clock running, made into stretches that a reader's numbers are learnt
// from (calibration.h).
#pragma once

#include "engine/analysis.h"
#include "engine/calibration.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// A gap between captions that is shorter is no pause of its own.
inline constexpr Seconds shortest_silence{0.3};

// What one person says in a caption.
struct Turn {
    std::string text;         // nothing but what is spoken; empty for a sound
    std::string written = {}; // the same with what stands in brackets, as a draft keeps it
    std::string sound;        // what is heard and not said: "door slams", a line of music
    std::string voice;        // who says it, as the file tells: "MIRA"
    bool changes = false;     // somebody else than before, named or not
};

// One caption: what is said between two times.
struct Cue {
    Seconds begin{0};
    Seconds end{0};
    std::string text;       // one line, nothing but what is spoken; empty for a sound or music
    std::string voice;      // who says it, if the file tells
    std::uint32_t line = 0; // of the file, from 1
    std::vector<Turn> turns = {}; // the same, line by line, with sounds and what tells who speaks
};

// A text and how long it took, from its first sound to its last.
struct TimedLine {
    Seconds took{0};
    std::string text;
    std::uint32_t line = 0;
};

// What was not used, and why: one sentence.
struct LeftOut {
    std::uint32_t line = 0; // of the file; 0 for all of it
    std::string why;
};

struct Heard {
    std::vector<TimedStretch> stretches;
    Seconds seconds{0}; // of the stretches: speech and the pauses in it
    int words = 0;      // spoken
    std::vector<LeftOut> left_out;
};

// Captions joined into runs where less than a breath's pause parts them; the gaps between runs are
// the reader's pauses, longer ones are something else and are not counted.
Heard hear_captions(std::span<const Cue> cues, const Options& options, Parser& parser);
Heard hear_lines(std::span<const TimedLine> lines, const Options& options, Parser& parser);
// A script that took so long from its first word to its last, or what one speaker says of it if one
// is named. `analysis` was made without a reader.
Heard hear_script(const Analysis& analysis, Seconds took, std::string_view speaker = {});
// The same for plain text: a paragraph is a thought, nothing is a mark.
Heard hear_text(std::string_view text, Seconds took, const Options& options, Parser& parser);

// Without the reader's own numbers, which are what is sought.
Options options_of_nobody(Options options);

} // namespace say
