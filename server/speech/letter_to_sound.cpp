// flite's letter-to-sound rules (a decision tree a letter, trained on the CMU dictionary) and
// nothing else of flite. They are made on first use, so that starting the program costs nothing.
// The trees now and then find a letter silent that must sound ("trkl" for "treacle"), so what no
// English mouth can say is mended here, letter by letter.
#include "speech/letter_to_sound.h"

#include "speech/flite_guard.h"
#include "text/ascii.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <iterator>
#include <span>
#include <string>
#include <vector>

extern "C" {
#include <flite/cst_lexicon.h>
#include <flite/cst_lts.h>
cst_lexicon* cmu_lex_init(void); // in flite_cmulex, which has no header
}

namespace say {

namespace {

// A letter and what it adds to the word's sound: mostly one sound, two for an x, none if silent.
struct SoundedLetter {
    char letter = 'a';
    Phones phones;
};
using SoundedLetters = std::vector<SoundedLetter>;

// --- the trees -----------------------------------------------------------------------------------

void make_rules(void* made) {
    static const cst_lexicon* const lexicon = cmu_lex_init();
    *static_cast<const cst_lts_rules**>(made) = lexicon->lts_rule_set;
}

const cst_lts_rules* letter_rules() {
    const cst_lts_rules* rules = nullptr;
    return flite::guarded(make_rules, &rules) ? rules : nullptr;
}

// "ax" or "ah0" or "k" or "y-uw1": flite writes the schwa of the dictionary's AH0 as "ax".
void append_sound(Phones& phones, std::string name) {
    std::transform(name.begin(), name.end(), name.begin(), [](char c) { return ascii::upper(c); });
    std::replace(name.begin(), name.end(), '-', ' ');
    for (std::size_t at = 0; (at = name.find("AX", at)) != std::string::npos;)
        name.replace(at, 2, "AH");
    if (const auto read = from_arpabet(name))
        phones.insert(phones.end(), read->begin(), read->end());
}

// A tree asks for letters around the one in question: four before it, then four behind it.
constexpr std::size_t window = 4;
using Around = std::array<cst_lts_letter, 2 * window + 1>; // the last is for features, of which
                                                           // the rules of English have none

cst_lts_rule state_at(const cst_lts_rules& rules, cst_lts_addr address) {
    cst_lts_rule state{};
    std::memcpy(&state, rules.models + std::size_t{address} * sizeof state, sizeof state);
    return state;
}

std::string_view answer_of(const cst_lts_rules& rules, char letter, const Around& around) {
    cst_lts_rule state = state_at(rules, rules.letter_index[letter - 'a']);
    while (state.feat != CST_LTS_EOR) {
        const bool yes = state.feat < around.size() && around[state.feat] == state.val;
        state = state_at(rules, yes ? state.qtrue : state.qfalse);
    }
    return rules.phone_table[state.val];
}

// The word between two "#", and beyond these nothing, written "0".
SoundedLetters sound_out(const cst_lts_rules& rules, std::string_view letters) {
    const std::string edge = std::string(window - 1, '0');
    const std::string padded = edge + '#' + std::string(letters) + '#' + edge;
    SoundedLetters sounded;
    for (std::size_t i = 0; i < letters.size(); ++i) {
        Around around{};
        std::copy_n(padded.begin() + static_cast<std::ptrdiff_t>(i), window, around.begin());
        std::copy_n(padded.begin() + static_cast<std::ptrdiff_t>(i + window + 1), window,
                    around.begin() + window);
        SoundedLetter letter{.letter = letters[i], .phones = {}};
        const std::string_view answer = answer_of(rules, letters[i], around);
        if (answer != "epsilon") append_sound(letter.phones, std::string(answer));
        sounded.push_back(std::move(letter));
    }
    return sounded;
}

// --- what nobody can say -------------------------------------------------------------------------

bool is_vowel_letter(char c) {
    return std::string_view("aeiouy").find(c) != std::string_view::npos;
}

bool has_vowel(const Phones& phones) {
    return std::any_of(phones.begin(), phones.end(),
                       [](const Phone& phone) { return is_vowel(phone.sound); });
}

// Letters [first, last) between two vowels that sound, and the consonants they give.
struct Gap {
    std::size_t first = 0;
    std::size_t last = 0;
    Phones consonants;
    bool begins = false; // the word
    bool ends = false;
};

std::vector<Gap> gaps_of(const SoundedLetters& word) {
    std::vector<Gap> gaps(1);
    gaps.back().begins = true;
    for (std::size_t i = 0; i < word.size(); ++i) {
        for (const Phone& phone : word[i].phones) {
            if (!is_vowel(phone.sound)) {
                gaps.back().consonants.push_back(phone);
                continue;
            }
            gaps.back().last = i;
            gaps.push_back({.first = i + 1, .consonants = {}});
        }
    }
    gaps.back().last = word.size();
    gaps.back().ends = true;
    for (Gap& gap : gaps)
        gap.last = std::max(gap.first, gap.last);
    return gaps;
}

// Wherever it is parted, something stands that no English word ends or begins with.
bool can_be_said(const Gap& gap) {
    const std::span<const Phone> all = gap.consonants;
    if (gap.begins) return can_begin_word(all);
    if (gap.ends) return can_end_word(all);
    for (std::size_t cut = 0; cut <= all.size(); ++cut) {
        if (can_end_word(all.first(cut)) && can_begin_word(all.subspan(cut))) return true;
    }
    return false;
}

// A run of vowel letters.
struct Run {
    std::size_t first = 0;
    std::size_t last = 0;
};

// An r or w behind it may hold its vowel: "ear" of "heard", "iew" of "viewer".
bool is_silent(const SoundedLetters& word, Run run) {
    const bool holds =
        run.last < word.size() && (word[run.last].letter == 'r' || word[run.last].letter == 'w');
    const std::size_t last = run.last + (holds ? 1 : 0);
    for (std::size_t i = run.first; i < last; ++i) {
        if (has_vowel(word[i].phones)) return false;
    }
    return true;
}

// Those that give no vowel.
std::vector<Run> silent_runs(const SoundedLetters& word) {
    std::vector<Run> runs;
    for (std::size_t i = 0; i < word.size(); ++i) {
        // The u of "quay" and "guess" belongs to the consonant.
        const bool is_mute = i > 0 && word[i].letter == 'u' &&
                             (word[i - 1].letter == 'q' || word[i - 1].letter == 'g') &&
                             i + 1 < word.size() && is_vowel_letter(word[i + 1].letter);
        if (!is_vowel_letter(word[i].letter) || is_mute) continue;
        if (!runs.empty() && runs.back().last == i) {
            runs.back().last = i + 1;
        } else {
            runs.push_back({i, i + 1});
        }
    }
    std::erase_if(runs, [&](Run run) { return !is_silent(word, run); });
    return runs;
}

std::string written(const SoundedLetters& word, Run run) {
    std::string letters;
    for (std::size_t i = run.first; i < run.last; ++i)
        letters += word[i].letter;
    return letters;
}

// What a run of vowel letters most often is, from memory of English spelling. A single one is weak.
std::string_view usual_sound(std::string_view letters) {
    struct Usual {
        std::string_view letters;
        std::string_view sound;
    };
    constexpr Usual usual[] = {
        {"ai", "EY2"}, {"au", "AO2"}, {"ay", "EY2"}, {"ea", "IY2"}, {"ee", "IY2"}, {"ei", "EY2"},
        {"eu", "UW2"}, {"ey", "IY0"}, {"ie", "IY2"}, {"oa", "OW2"}, {"oe", "OW2"}, {"oi", "OY2"},
        {"oo", "UW2"}, {"ou", "UW2"}, {"oy", "OY2"}, {"ui", "UW2"}, {"i", "IH0"},  {"y", "IH0"},
    };
    for (const Usual& row : usual) {
        if (row.letters == letters) return row.sound;
    }
    return "AH0";
}

std::string_view usual_sound_before_r(std::string_view letters) {
    if (letters == "ai" || letters == "ea" || letters == "ei") return "EH2";
    return letters == "oa" || letters == "oo" || letters == "ou" ? "AO2" : "";
}

void sound_run(SoundedLetters& word, Run run) {
    const std::string letters = written(word, run);
    Phones& phones = word[run.first].phones;
    const bool before_r = run.last < word.size() && word[run.last].letter == 'r' &&
                          word[run.last].phones == Phones{{Sound::R, 0}};
    const std::string_view full = before_r ? usual_sound_before_r(letters) : "";
    const bool vowel_follows = run.last + 1 < word.size() && has_vowel(word[run.last + 1].phones);
    if (!full.empty()) {
        append_sound(phones, std::string(full));
    } else if (before_r && !vowel_follows) {
        word[run.last].phones.front() = {Sound::ER, 0};
    } else {
        append_sound(phones, std::string(usual_sound(letters)));
    }
}

bool is_at_end(const SoundedLetters& word, Run run) {
    const bool plural = run.last + 1 == word.size() && std::strchr("ds", word[run.last].letter);
    return run.last == word.size() || plural;
}

bool is_open(const Phone& phone) {
    using enum Sound;
    return phone.sound == L || phone.sound == M || phone.sound == N || phone.sound == W ||
           phone.sound == Y;
}

// "Mbappe", "Tlaloc": a weak vowel behind the first consonant; "Ngema" begins with an n.
void ease_beginning(SoundedLetters& word, const Gap& gap) {
    for (std::size_t i = gap.first; i < gap.last; ++i) {
        Phones& phones = word[i].phones;
        if (phones.empty()) continue;
        if (phones.front().sound == Sound::NG) {
            phones.front().sound = Sound::N;
        } else {
            phones.push_back({Sound::AH, 0});
        }
        return;
    }
}

// A vowel where there is no letter for one, before the open consonant that cannot stand: "calibr".
void add_weak_vowel(SoundedLetters& word, const Gap& gap) {
    if (gap.begins) return ease_beginning(word, gap);
    // A letter may give a vowel and the consonant behind it: the l of "Tumblr".
    bool first = word[gap.first - 1].phones.size() < 2;
    for (std::size_t i = gap.first; i < gap.last; ++i) {
        Phones& phones = word[i].phones;
        if (phones.empty()) continue;
        if (!first && phones.front().sound == Sound::R) {
            phones.front() = {Sound::ER, 0};
            return;
        }
        if (!first && is_open(phones.front())) {
            phones.insert(phones.begin(), {Sound::AH, 0});
            return;
        }
        first = false;
    }
}

// "Schiavi": the trees give the s of "sch" its sound of "Schubert" and the c that of "school".
bool harden_sch(SoundedLetters& word, const Gap& gap) {
    for (std::size_t i = gap.first; i + 1 < gap.last; ++i) {
        const bool both =
            word[i].phones == Phones{{Sound::SH, 0}} && word[i + 1].phones == Phones{{Sound::K, 0}};
        if (!both) continue;
        word[i].phones.front().sound = Sound::S;
        return true;
    }
    return false;
}

bool is_glide(const Phone& phone) {
    return phone.sound == Sound::HH || phone.sound == Sound::W || phone.sound == Sound::Y;
}

// No English word ends in the sound of h, w or y: "Ruhe", "cologne".
bool drop_last_glide(SoundedLetters& word, const Gap& gap) {
    if (!gap.ends || gap.begins) return false;
    for (std::size_t i = gap.first; i < gap.last; ++i) {
        if (std::erase_if(word[i].phones, is_glide) > 0) return true;
    }
    return false;
}

// Gives one gap a vowel that it lacks; false if all can be said.
bool mend_one(SoundedLetters& word) {
    const std::vector<Run> silent = silent_runs(word);
    for (const Gap& gap : gaps_of(word)) {
        const bool sayable = can_be_said(gap);
        for (const Run& run : silent) {
            if (run.first < gap.first || run.last > gap.last || is_at_end(word, run)) continue;
            // Two vowel letters inside a word are not silent both: "halloumi".
            const bool inner = run.last - run.first > 1 && run.first > gap.first;
            if (sayable && !inner) continue;
            sound_run(word, run);
            return true;
        }
        if (!sayable && !harden_sch(word, gap) && !drop_last_glide(word, gap)) {
            add_weak_vowel(word, gap);
        }
        if (!sayable) return true;
    }
    return false;
}

bool is_stressed(const Phone& phone) {
    return phone.stress == 1;
}

// Where the trees stress nothing: the first vowel that they found or that two letters write.
void stress_first(SoundedLetters& word, const SoundedLetters& found) {
    for (std::size_t i = 0; i < word.size(); ++i) {
        for (Phone& phone : word[i].phones) {
            if (!is_vowel(phone.sound)) continue;
            if (!has_vowel(found[i].phones) && phone.stress == 0) continue;
            phone.stress = 1;
            return;
        }
    }
}

Phones guess_piece(const cst_lts_rules& rules, std::string_view letters) {
    const SoundedLetters found = sound_out(rules, letters);
    SoundedLetters word = found;
    // A vowel a turn; there are no more to give than letters.
    bool mended = false;
    for (std::size_t turn = 0; turn < letters.size() && mend_one(word); ++turn)
        mended = true;
    const bool stressed = std::any_of(word.begin(), word.end(), [](const SoundedLetter& letter) {
        return std::any_of(letter.phones.begin(), letter.phones.end(), is_stressed);
    });
    if (mended && !stressed) stress_first(word, found);
    Phones phones;
    for (const SoundedLetter& letter : word)
        phones.insert(phones.end(), letter.phones.begin(), letter.phones.end());
    return phones;
}

// A long run of letters is no word; cut, it is guessed in little time.
constexpr std::size_t longest_piece = 64;

} // namespace

Phones guess_sounds(std::string_view letters) {
    const cst_lts_rules* const rules = letter_rules();
    if (rules == nullptr) return {};
    std::string plain;
    std::copy_if(letters.begin(), letters.end(), std::back_inserter(plain), ascii::is_lower);
    Phones phones;
    for (std::size_t at = 0; at < plain.size(); at += longest_piece) {
        const Phones piece = guess_piece(*rules, std::string_view(plain).substr(at, longest_piece));
        phones.insert(phones.end(), piece.begin(), piece.end());
    }
    return phones;
}

} // namespace say
