// A reader's two numbers, learnt from what the model says of a text and what a clock said of it.
// docs/timing.md has the method and what it is worth.
#pragma once

#include "base/units.h"
#include "speech/range.h"

#include <span>

namespace say {

// Some text that was read, and how long it took: what the model says at speed 1, and the clock.
struct TimedStretch {
    Seconds speech{0};   // the model's sounds
    Seconds pause{0};    // the model's pauses that a reader scales: punctuation and gaps
    Seconds measured{0}; // the clock's, without what marks and directions hold
    Seconds spread{0};   // how far the model is off where the reader is known: one standard error
    int words = 0;       // spoken
};

// How far the model is off on a text of that length with the reader's pace known.
Seconds spread_of(Seconds measured);
// The same for the silences between runs of speech alone.
Seconds spread_of_silences(int silences);

// What stretches say together: the sums of a weighted regression of the measured time on speech and
// pause. Sums of several takes are added; the text they came from is not needed again.
struct Evidence {
    double speech_speech = 0;
    double speech_pause = 0;
    double pause_pause = 0;
    double speech_measured = 0;
    double pause_measured = 0;

    Evidence& operator+=(const Evidence& other);
    Evidence operator*(double weight) const;
};

// Factors on seconds: 1.1 is slower than speed 1.
struct ReaderNumbers {
    double speech = 1.0;
    double pauses = 1.0;
};

// Without evidence these are everybody's numbers; the more there is, the less those weigh.
ReaderNumbers numbers_from(const Evidence& evidence);

// The evidence of one take. A stretch that the others disagree with counts less; `earlier` is what
// the reader's other takes say.
Evidence evidence_of(std::span<const TimedStretch> stretches, const Evidence& earlier);

// The words a minute that the reader would read running talk at, if this stretch were all we knew:
// words a minute corrected for how long the words are.
double even_pace(const TimedStretch& stretch);
// Outside these a time is a slip of the clock, not a pace: readers speak 90 to 300 words a minute.
inline constexpr double slowest_pace = 90;
inline constexpr double fastest_pace = 300;
bool plausible(const TimedStretch& stretch);

// What an older take still weighs beside the newest: a voice changes with time and practice.
double weight_of_age(double days);

} // namespace say
