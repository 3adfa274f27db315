// What a listener meets: how hard the sentences are to follow, how long a thought is, how often the
// voice leans and rests, how fast it goes. docs/timing.md names the sources.
#pragma once

#include "engine/analysis.h"

#include <string>

namespace say {

struct EarFigures {
    // Fang (1966): in each sentence the syllables beyond one of each word, summed; the mean of the
    // sentences. Spoken words count, initials as one a letter.
    double easy_listening = 0;
    double words_a_thought = 0; // spoken
    Seconds seconds_a_thought{0};
    double stressed_a_minute = 0;       // words marked with a stress, or in capitals
    double marked_pauses_a_minute = 0;  // places where a mark or a direction holds
    double written_pauses_a_minute = 0; // places where punctuation or a gap does
    double words_a_minute = 0;          // spoken, pauses included
    double syllables_a_second = 0;      // of speech alone

    bool hard_to_follow() const { return easy_listening > easy_listening_limit; }
    static constexpr double easy_listening_limit = 12; // Fang's
};

// All zero where nothing is said.
EarFigures ear_of(const Script& script);
// With the sections it holds.
EarFigures ear_of(const Script& script, const Section& section);

// "Easy Listening 7.2, thoughts of 14 words (5.2 s), ...": for hover. Empty where nothing is said.
std::string describe(const EarFigures& figures);

} // namespace say
