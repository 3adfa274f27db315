// A thought as it will be said: spoken words, sounds, pauses, breath groups and their times.
// docs/timing.md explains the model and names its sources.
#pragma once

#include "base/units.h"
#include "speech/lexicon.h"
#include "speech/phrasing.h"
#include "speech/range.h"
#include "speech/spoken.h"
#include "speech/twister.h"
#include "speech/word_list.h"
#include "syntax/script.h"
#include "syntax/words.h"

#include <memory>
#include <span>
#include <string>
#include <vector>

namespace say {

// Every number of the format's time table, in seconds or as a factor on speech. docs/timing.md
// prints it.
struct PauseTable {
    Seconds pause{0.6};
    Seconds beat{1.0};
    Seconds breath{0.35};
    Seconds reset{0.7};
    Seconds micropause{0.2};
    Seconds comma{0.15};
    Seconds strong{0.30};
    Seconds sentence{0.60};
    Seconds gap{0.7};
    Seconds item_gap{0.4};
    Seconds stretch{0.15};
    Seconds before_heavy{0.1};
    double quick = 1.2;
    double slow = 0.8;
    double stress = 0.9;
    double heavy = 0.8;
    auto operator<=>(const PauseTable&) const = default;
};

// Who reads, and how. `speed` above 1 is faster and scales speech only; `pauses` scales
// punctuation's pauses and the gaps; marks hold as written.
struct Voice {
    double speed = 1.0;
    double pauses = 1.0;
    PaceError pace_error = unknown_pace; // narrower the longer the reader was timed
    Language language = Language::en_us;
    PauseTable table;
    std::shared_ptr<const WordList> words; // may be null
};

// A written word as it is said; parallel to Written::words.
struct Said {
    std::vector<SpokenWord> spoken;
    std::vector<std::string> readings; // other ways to read the writing
    std::vector<Phones> phones; // one list a spoken word (a word said by letters has one for all)
    std::vector<Phones> others; // further sounds of a word: the project's list, or a homograph
    bool undecided = false;     // a homograph, and nothing near it says which
    Known known = Known::lexicon;
    int syllables = 0;
    Seconds at{0}; // from the thought's start
    Seconds seconds{0};
    Phrasing phrasing;
    Juncture after = Juncture::none; // the punctuation behind it
};

// The spoken words of a written one; initials count as one word a letter, as the study does.
int count_words(const Said& said);

enum class PauseFrom { mark, comma, strong, sentence, direction };
std::string_view name_of(PauseFrom from);

struct PauseAt {
    Span span; // in the thought's source: the mark, or the punctuation
    Seconds at{0};
    Seconds seconds{0};
    PauseFrom from = PauseFrom::mark;
    int after = -1; // the word before it
};

// Written for the voice, so it holds as written; punctuation's pauses scale with the reader.
constexpr bool is_marked(const PauseAt& pause) {
    return pause.from == PauseFrom::mark || pause.from == PauseFrom::direction;
}

// What is said on one breath: words [first, last], between two pauses of .30 s or more.
struct BreathGroup {
    int first = 0;
    int last = 0;
    Span span; // source
    Seconds seconds{0};
};

struct Sentence {
    int first = 0; // words [first, last)
    int last = 0;
    Span plain;
    Span source;
};

struct Reading {
    std::vector<Said> said;
    std::vector<Sentence> sentences;
    std::vector<PauseAt> pauses;
    std::vector<BreathGroup> breaths;
    Timing timing;   // low and high for this thought alone
    Twister twister; // first and last are written-word indexes
    std::string twister_message;
    int spoken_words = 0; // count_words
    Seconds held{0};      // of directions and timed pauses: silence that no reader shortens
    int syllables = 0;
    // What script rules look for, so that they pass over the thoughts without it.
    bool has_guesses = false;  // the sound of a word is guessed from its letters
    bool has_taught = false;   // the writer gave the sound of a word
    bool has_readings = false; // a word can be read in more than one way
};

inline constexpr Seconds breath_group_pause{0.30};

// What readers pause at punctuation inside a thought.
Seconds pause_of(Juncture juncture, const PauseTable& table);
// Those behind a word (-1: before the first), found by halving: a thought may hold thousands.
std::span<const PauseAt> pauses_behind(const Reading& reading, int word);

// The words alone, as they are said: no sounds, times, pauses or phrasing, which take most of the
// work.
std::vector<Said> read_words(const Written& written, const Voice& voice);
// `source` is the block that `written` was read from: its spans index into it.
Reading read(const Written& written, std::string_view source, const Voice& voice);

} // namespace say
