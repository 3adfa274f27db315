// The 39 sounds of the CMU Pronouncing Dictionary and their three spellings:
// ARPAbet (docs of cmudict), IPA, and the broadcasters' respelling (docs/pronunciation.md).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// Vowels first, so that is_vowel is one comparison. The order is also that of the packed lexicon.
// NOLINTBEGIN(readability-identifier-naming): the dictionary's own names
// clang-format off
enum class Sound : std::uint8_t {
    AA, AE, AH, AO, AW, AY, EH, ER, EY, IH, IY, OW, OY, UH, UW,
    B, CH, D, DH, F, G, HH, JH, K, L, M, N, NG, P, R, S, SH, T, TH, V, W, Y, Z, ZH,
};
// clang-format on
// NOLINTEND(readability-identifier-naming)
inline constexpr int sound_count = 39;

struct Phone {
    Sound sound = Sound::AH;
    std::uint8_t stress = 0; // 1 primary, 2 secondary, 0 none; always 0 for a consonant
    auto operator<=>(const Phone&) const = default;
};
using Phones = std::vector<Phone>;

constexpr bool is_vowel(Sound sound) {
    return sound <= Sound::UW;
}

std::string_view name_of(Sound sound);                     // "AA", "ZH"
std::string to_arpabet(std::span<const Phone> phones);     // "P L IY1 Z"
std::optional<Phones> from_arpabet(std::string_view text); // nothing if a symbol is unknown
int syllable_count(std::span<const Phone> phones); // vowels; at least 1 if there is any phone
// Where each syllable begins: consonants go with the vowel they precede, as many of them as can
// begin an English word.
std::vector<std::size_t> syllable_starts(std::span<const Phone> phones);

// Consonants that an English mouth can begin a word with: none, one, or a cluster of the tables 2
// and 3 of Roach, English Phonetics and Phonology, chapter 8, and those of borrowed names
// ("schmaltz", "Gwen", "Vladimir") with which five words or more of the dictionary begin.
bool can_begin_word(std::span<const Phone> consonants);
// Consonants that can end one: no l, r, m, n, w or y behind a consonant less open than it.
bool can_end_word(std::span<const Phone> consonants);

// "pliz", "pəˈtɛlə": no slashes, no lengths, a stress mark before its syllable. from_ipa gives the
// same phones back.
std::string to_ipa(std::span<const Phone> phones);
// With or without slashes. A word of one syllable is stressed without a mark, unless its vowel is
// ə or ɚ. Nothing if a symbol is unknown.
std::optional<Phones> from_ipa(std::string_view ipa);
// The first symbol that from_ipa cannot read, as written; empty if it knows them all.
std::string_view unknown_ipa(std::string_view ipa);

std::string to_respelling(std::span<const Phone> phones); // "puh-TEHL-uh"
// A respelling as broadcasters write it: syllables joined by hyphens, the stressed one in capitals.
// Nothing if a syllable cannot be read.
std::optional<Phones> from_respelling(std::string_view respelling);

} // namespace say
