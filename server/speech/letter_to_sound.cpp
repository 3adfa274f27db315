// flite's letter-to-sound rules (a decision tree a letter, trained on the CMU dictionary) and
// nothing else of flite. They are made on first use, so that starting the program costs nothing.
#include "speech/letter_to_sound.h"

#include "speech/flite_guard.h"
#include "text/ascii.h"

#include <algorithm>
#include <iterator>
#include <string>

extern "C" {
#include <flite/cst_lexicon.h>
#include <flite/cst_lts.h>
#include <flite/cst_val.h>
cst_lexicon* cmu_lex_init(void); // in flite_cmulex, which has no header
}

namespace say {

namespace {

// The rules look at four letters on each side, so a long run of letters may be cut anywhere; flite
// frees its lists by recursion, so it must be cut somewhere.
constexpr std::size_t longest_piece = 64;

struct Question {
    const char* letters = nullptr;
    cst_val* sounds = nullptr;
};

void apply_rules(void* asked) {
    static const cst_lexicon* const lexicon = cmu_lex_init();
    auto* const question = static_cast<Question*>(asked);
    question->sounds = lts_apply(question->letters, "", lexicon->lts_rule_set);
}

// "ax" or "ah0" or "k": flite writes the schwa of the dictionary's AH0 as "ax".
void append_sound(Phones& phones, std::string name) {
    std::transform(name.begin(), name.end(), name.begin(), [](char c) { return ascii::upper(c); });
    if (name.starts_with("AX")) name.replace(0, 2, "AH");
    if (const auto read = from_arpabet(name))
        phones.insert(phones.end(), read->begin(), read->end());
}

void append_guess(Phones& phones, const std::string& letters) {
    Question question{.letters = letters.c_str()};
    if (!flite::guarded(apply_rules, &question)) return;
    for (const cst_val* sound = question.sounds; sound != nullptr; sound = val_cdr(sound)) {
        append_sound(phones, val_string(val_car(sound)));
    }
    delete_val(question.sounds);
}

} // namespace

Phones guess_sounds(std::string_view letters) {
    std::string plain;
    std::copy_if(letters.begin(), letters.end(), std::back_inserter(plain), ascii::is_lower);
    Phones phones;
    for (std::size_t at = 0; at < plain.size(); at += longest_piece) {
        append_guess(phones, plain.substr(at, longest_piece));
    }
    return phones;
}

} // namespace say
