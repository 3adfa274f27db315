// Words to sounds: the CMU Pronouncing Dictionary, packed and compiled in; rules for the rest.
#pragma once

#include "speech/phones.h"

#include <string>
#include <string_view>
#include <vector>

namespace say {

// Where a sound comes from: the dictionary and its rules, a guess from the letters, the writer's
// own mark in the script, the project's word list.
enum class Known { lexicon, guess, writer, list };

inline bool is_given(Known known) {
    return known == Known::writer || known == Known::list;
}

struct Pronunciation {
    Phones phones;
    Known known = Known::guess;
    std::vector<Phones> others; // further readings of the dictionary
};

// Is it in the dictionary as it stands? `word` is folded (unicode::fold): lower case, straight
// apostrophe.
bool in_lexicon(std::string_view word);

// Dictionary; then possessives, plurals, verb endings and compounds of dictionary words (still
// Known::lexicon, as their sound follows from a rule); then letter-to-sound (guess). Parts joined
// by hyphens are looked up one by one. Any bytes are taken: what has no letter has no sound.
Pronunciation pronounce(std::string_view word);

// The letters one by one, as in FBI ("EH1 F B IY1 AY1"): one list of phones a letter.
std::vector<Phones> spell_out(std::string_view letters);

// Words that carry grammar rather than content ("the", "of", "can't"): shorter and rarely stressed.
bool is_function_word(std::string_view word);

} // namespace say
