// What a window holds and what its score is made of. Each feature is explained in docs/twisters.md.
#include "speech/twister_window.h"

#include <algorithm>
#include <bit>

namespace say::twister_model {
namespace {

constexpr int consonant_divisor = 10; // consonants have no .7: their weights are 5 and 2
constexpr double no_vowel_share = 1.898e-05;

constexpr std::uint64_t sibilant_sounds =
    bits(Sound::S, Sound::Z, Sound::SH, Sound::ZH, Sound::CH, Sound::JH);

// -log10 of the chance that at least `count` of `total` syllables have a vowel of that share.
double binomial_tail(int count, int total, double share) {
    double chance = std::pow(1 - share, total - count);
    for (int i = 1; i <= count; ++i)
        chance *= share * (total - count + i) / i;
    double sum = 0;
    for (int i = count; i <= total; ++i) {
        sum += chance;
        chance *= share / (1 - share) * (total - i) / (i + 1);
    }
    return -std::log10(std::max(sum, 1e-12));
}

double share_of_vowel(std::size_t vowel) {
    return vowel == no_vowel ? no_vowel_share : vowel_share[vowel];
}

// How much better "k of n by its own share" explains a count than the share of ordinary speech.
double evidence(const Tables& tables, int k, int n, double log_share, double log_rest) {
    return tables.log_of(k) + tables.log_of(n - k) - tables.log_of(n) - k * log_share -
           (n - k) * log_rest;
}

} // namespace

Tables::Tables() {
    for (int n = 2; n < logs; ++n)
        n_log_n[static_cast<std::size_t>(n)] = n * std::log(n);
    for (std::size_t vowel = 0; vowel < tails.size(); ++vowel) {
        for (int total = 2; total < totals; ++total) {
            for (int count = 2; count <= std::min(total, counts - 1); ++count) {
                tails[vowel][static_cast<std::size_t>(total)][static_cast<std::size_t>(count)] =
                    static_cast<float>(binomial_tail(count, total, share_of_vowel(vowel)));
            }
        }
    }
    for (std::size_t i = vowel_count; i < sound_count; ++i) {
        log_onset[i] = std::log(onset_share[i]);
        log_not_onset[i] = std::log1p(-onset_share[i]);
        log_consonant[i] = std::log(consonant_share[i]);
        log_not_consonant[i] = std::log1p(-consonant_share[i]);
    }
}

double Tables::tail(std::size_t vowel, int count, int total) const {
    if (count < counts && total < totals) {
        return tails[vowel][static_cast<std::size_t>(total)][static_cast<std::size_t>(count)];
    }
    return binomial_tail(count, total, share_of_vowel(vowel));
}

// Built once, at the first thought that is judged.
const Tables& tables() {
    static const Tables built;
    return built;
}

void Window::add(const Content& content) {
    const int before = std::min(size_, reach);
    for (int i = 0; i < before; ++i) {
        near_ += content.near[static_cast<std::size_t>(i)];
        confusable_ += content.confusable[static_cast<std::size_t>(i)];
    }
    if (content.same_before == 0 || content.same_before > size_) add_new(content);
    add_consonants(content);
    for (int i = 0; i < content.vowel_slots; ++i) {
        const std::size_t vowel = content.vowels[static_cast<std::size_t>(i)];
        if (++vowels_[vowel] > 1) frequent_vowels_ |= std::uint64_t{1} << vowel;
    }
    syllable_total_ += content.vowel_slots;
    ++size_;
}

// A word that comes back adds nothing to the evidence: it would only be counted twice.
void Window::add_new(const Content& content) {
    ++different_;
    units_ += content.units;
    if (!content.has_onset) vowel_units_ += content.units;
    for (int i = 0; i < content.onset_count; ++i) {
        const Onset& onset = content.onsets[static_cast<std::size_t>(i)];
        onset_units_[at(onset.sound)] += onset.units;
        if (onset_units_[at(onset.sound)] > unit) frequent_onsets_ |= bit(onset.sound);
    }
    const int each = content.units / consonant_divisor;
    for (const Phone& phone : content.phones) {
        if (is_vowel(phone.sound)) continue;
        unit_sums_[at(phone.sound)] += each;
        consonant_units_ += each;
        if (unit_sums_[at(phone.sound)] > unit / consonant_divisor) {
            frequent_consonants_ |= bit(phone.sound);
        }
    }
}

void Window::add_consonants(const Content& content) {
    for (const Phone& phone : content.phones) {
        if (is_vowel(phone.sound)) continue;
        int& here = consonants_[at(phone.sound)];
        n_log_n_ -= tables_.log_of(here);
        n_log_n_ += tables_.log_of(++here);
        log_shares_ += tables_.log_consonant[at(phone.sound)];
        sibilant_total_ += (sibilant_sounds & bit(phone.sound)) != 0 ? 1 : 0;
        ++consonant_total_;
    }
}

double Window::onset_evidence_of(Sound sound) const {
    const int k = onset_units_[at(sound)];
    if (k <= unit || k <= units_ * onset_share[at(sound)]) return 0;
    return evidence(tables_, k, units_, tables_.log_onset[at(sound)],
                    tables_.log_not_onset[at(sound)]) /
           unit;
}

double Window::consonant_evidence_of(Sound sound) const {
    const int k = unit_sums_[at(sound)];
    constexpr int one = unit / consonant_divisor;
    if (k <= one || k <= consonant_units_ * consonant_share[at(sound)]) return 0;
    return evidence(tables_, k, consonant_units_, tables_.log_consonant[at(sound)],
                    tables_.log_not_consonant[at(sound)]) /
           one;
}

double Window::best_onset() const {
    double best = 0;
    for (std::uint64_t left = frequent_onsets_; left != 0; left &= left - 1) {
        best = std::max(best, onset_evidence_of(static_cast<Sound>(std::countr_zero(left))));
    }
    return best;
}

double Window::best_consonant() const {
    double best = 0;
    for (std::uint64_t left = frequent_consonants_; left != 0; left &= left - 1) {
        best = std::max(best, consonant_evidence_of(static_cast<Sound>(std::countr_zero(left))));
    }
    return best;
}

double Window::best_vowel() const {
    double best = 0;
    for (std::uint64_t left = frequent_vowels_; left != 0; left &= left - 1) {
        const auto vowel = static_cast<std::size_t>(std::countr_zero(left));
        best = std::max(best, tables_.tail(vowel, vowels_[vowel], syllable_total_));
    }
    return best;
}

double Window::vowel_beginning_evidence() const {
    if (vowel_units_ <= unit || vowel_units_ <= units_ * vowel_beginning_share) return 0;
    return evidence(tables_, vowel_units_, units_, tables_.log_vowel_beginning,
                    tables_.log_other_beginning) /
           unit;
}

double Window::th_mixed() const {
    const int hissing =
        count(Sound::S) + count(Sound::F) + count(Sound::SH) + count(Sound::T) + count(Sound::Z);
    return std::min(count(Sound::TH), hissing);
}

// The middle of the three counts: how often a second one mixes in.
double Window::liquids_mixed() const {
    const int r = count(Sound::R);
    const int l = count(Sound::L);
    const int w = count(Sound::W);
    return std::max(std::min(r, l), std::min(std::max(r, l), w));
}

std::array<double, feature_count> Window::parts(int span) const {
    const double n = size_;
    const double total = std::max(consonant_total_, 1);
    std::array<double, feature_count> parts{};
    parts[onset_evidence] = best_onset();
    parts[consonant_evidence] = best_consonant();
    parts[near_words] = near_ / n;
    parts[confusable_onsets] = confusable_ / n;
    parts[vowel_surprise] = best_vowel();
    parts[consonant_skew] =
        (n_log_n_ - tables_.log_of(consonant_total_) - log_shares_) / std::sqrt(total);
    parts[repetition] = (n - different_) / n;
    parts[density] = n / span;
    parts[length] = tables_.log_of(size_) / n;
    parts[sibilants] = sibilant_total_ / total;
    parts[th_mix] = th_mixed() / total;
    parts[liquid_mix] = liquids_mixed() / total;
    parts[vowel_beginnings] = vowel_beginning_evidence();
    for (std::size_t i = 0; i < feature_count; ++i)
        parts[i] *= weights[i];
    return parts;
}

double Window::score(int span) const {
    double sum = bias;
    for (const double part : parts(span))
        sum += part;
    return sum;
}

double Window::weight_of(Sound consonant) const {
    return weights[onset_evidence] * onset_evidence_of(consonant) +
           weights[consonant_evidence] * consonant_evidence_of(consonant);
}

} // namespace say::twister_model
