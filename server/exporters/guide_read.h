// The guide read: a machine says the script with its marked pauses, pace and stress, so that the
// writer hears rhythm and length before anybody stands at the camera. docs/exports.md tells what
// each mark becomes.
#pragma once

#include "exporters/exporter.h"

#include <cstdint>
#include <vector>

namespace say {

// A sound file, piece by piece: RIFF/WAVE of 16 bits a sample, one channel, with a note of what it
// is. It begins and ends when its thoughts do; the analysis must outlive it.
class GuideRead {
public:
    // Thoughts [first, last) of the script; past the last one's end nothing is heard, not its gap.
    GuideRead(const Analysis& analysis, std::size_t first, std::size_t last);

    // Why it cannot be made: more than 4 GB, some 37 hours, are no WAVE file.
    Result<void> check() const;
    Seconds seconds() const;
    std::string head() const; // what stands before the samples
    bool done() const { return written_ == total_; }
    // The next samples: a stretch of talk, or some seconds of silence.
    std::string next();
    double share_done() const; // 0 to 1

private:
    struct Stretch {
        int first = 0; // words [first, last) of its thought, with no silence between them
        int last = 0;
    };

    Seconds begin_of(std::size_t thought) const; // from the file's beginning
    void find_stretches();
    std::string silence_until(std::uint64_t sample);
    std::string say(const Placed& placed, Stretch stretch);

    const Analysis& analysis_;
    std::size_t thought_; // where it is
    std::size_t last_;
    Seconds origin_{0};
    std::vector<Stretch> stretches_; // of that thought
    std::size_t stretch_ = 0;
    std::uint64_t total_ = 0; // samples
    std::uint64_t written_ = 0;
};

// Begins the comment in the file's head.
inline constexpr std::string_view guide_read_sign = "Guide read by a machine's voice";

std::string write_guide_read(const Analysis& analysis, const ExportOptions& options);
Result<void> stream_guide_read(const Analysis& analysis, const ExportOptions& options,
                               const Sink& sink);

} // namespace say
