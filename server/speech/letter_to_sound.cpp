// flite's letter-to-sound rules (a decision tree a letter, trained on the CMU dictionary) and
// nothing else of flite. They are made on first use, so that starting the program costs nothing.
#include "speech/letter_to_sound.h"

#include "text/ascii.h"

#include <algorithm>
#include <csetjmp>
#include <iterator>
#include <mutex>
#include <string>

extern "C" {
#include <flite/cst_error.h>
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

// flite ends the process when it meets an error of its own, unless cst_errjmp says where to jump
// to. The jump passes over C frames only: nothing here owns anything when it happens.
cst_val* apply_rules(const char* letters) {
    static const cst_lexicon* const lexicon = cmu_lex_init();
    // Volatile: its value must be known after a jump.
    cst_val* volatile sounds = nullptr;
    jmp_buf on_error;
    cst_errjmp = &on_error;
    if (setjmp(on_error) == 0) sounds = lts_apply(letters, "", lexicon->lts_rule_set);
    cst_errjmp = nullptr;
    return sounds;
}

// "ax" or "ah0" or "k": flite writes the schwa of the dictionary's AH0 as "ax".
void append_sound(Phones& phones, std::string name) {
    std::transform(name.begin(), name.end(), name.begin(), [](char c) { return ascii::upper(c); });
    if (name.starts_with("AX")) name.replace(0, 2, "AH");
    if (const auto read = from_arpabet(name))
        phones.insert(phones.end(), read->begin(), read->end());
}

void append_guess(Phones& phones, const std::string& letters) {
    static std::mutex mutex; // cst_errjmp is one for the whole process
    const std::lock_guard lock(mutex);
    cst_val* const sounds = apply_rules(letters.c_str());
    for (const cst_val* sound = sounds; sound != nullptr; sound = val_cdr(sound)) {
        append_sound(phones, val_string(val_car(sound)));
    }
    delete_val(sounds);
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
