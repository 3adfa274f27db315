// The sums over a window of content words, and the score they give. A window grows to the right by
// one word at a time, so that it costs no more than its last word.
#pragma once

#include "speech/twister_words.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

namespace say::twister_model {

// Logarithms and chances that every window asks for.
struct Tables {
    static constexpr int logs = 1024;
    static constexpr int totals = 41;
    static constexpr int counts = 13;

    std::array<double, logs> n_log_n{};
    std::array<std::array<std::array<float, counts>, totals>, vowel_count + 1> tails{};
    std::array<double, sound_count> log_onset{}; // logarithms of the share and of the rest
    std::array<double, sound_count> log_not_onset{};
    std::array<double, sound_count> log_consonant{};
    std::array<double, sound_count> log_not_consonant{};
    double log_vowel_beginning = std::log(vowel_beginning_share);
    double log_other_beginning = std::log1p(-vowel_beginning_share);

    Tables();

    double log_of(int n) const {
        return n < logs ? n_log_n[static_cast<std::size_t>(n)] : n * std::log(n);
    }
    double tail(std::size_t vowel, int count, int total) const;
};

// Built once, when the first thought is judged.
const Tables& tables();

class Window {
public:
    Window() : tables_(tables()) {}

    void add(const Content& content);
    // What each feature adds to the score, over so many words, small ones included.
    std::array<double, feature_count> parts(int span) const;
    double score(int span) const;
    int size() const { return size_; }

    // What one consonant adds, as a beginning and anywhere.
    double weight_of(Sound consonant) const;

private:
    double onset_evidence_of(Sound sound) const;
    double consonant_evidence_of(Sound sound) const;
    void add_new(const Content& content);
    void add_consonants(const Content& content);
    double best_onset() const;
    double best_consonant() const;
    double best_vowel() const;
    double vowel_beginning_evidence() const;
    double th_mixed() const;
    double liquids_mixed() const;

    int count(Sound sound) const { return consonants_[at(sound)]; }

    const Tables& tables_;
    int size_ = 0;
    int different_ = 0;       // stems
    int units_ = 0;           // of the different words
    int vowel_units_ = 0;     // of those that begin with a vowel
    int consonant_units_ = 0; // of their consonants
    int consonant_total_ = 0; // of all words
    int syllable_total_ = 0;  // slots of all words
    int sibilant_total_ = 0;
    std::uint64_t frequent_onsets_ = 0; // those met more than once
    std::uint64_t frequent_consonants_ = 0;
    std::uint64_t frequent_vowels_ = 0;
    double near_ = 0;
    double confusable_ = 0;
    double n_log_n_ = 0;    // sum over consonants
    double log_shares_ = 0; // sum over consonants
    std::array<int, sound_count> onset_units_{};
    std::array<int, sound_count> unit_sums_{};
    std::array<int, sound_count> consonants_{};
    std::array<int, vowel_count + 1> vowels_{};
};

} // namespace say::twister_model
