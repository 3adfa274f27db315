// The twister score. Each content word is measured once; windows that begin at the same word then
// grow by one word at a time on running sums, so that a window costs no more than its last word.
#include "speech/twister.h"

#include "speech/twister_model.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace say {
namespace {

using namespace twister_model;

// Weights in whole numbers, so that logarithms of counts come from a table: a common word counts
// .4, a later stressed syllable .7 of its word.
constexpr int unit = 50; // 1.0
constexpr int common_unit = 20;
constexpr int later_percent = 70;
constexpr int consonant_divisor = 10; // consonants have no .7: their weights are 5 and 2

constexpr int most_slots = 12;       // no word has more stressed syllables
constexpr int longest_compared = 32; // sounds; longer "words" are noise and near to nothing
constexpr std::size_t vowel_count = static_cast<std::size_t>(Sound::UW) + 1;
constexpr std::size_t no_vowel = vowel_count; // the place of a word without any ("shh")
constexpr double no_vowel_share = 1.898e-05;

constexpr std::size_t at(Sound sound) {
    return static_cast<std::size_t>(sound);
}

constexpr std::uint64_t bit(Sound sound) {
    return std::uint64_t{1} << at(sound);
}

template <typename... Sounds> constexpr std::uint64_t bits(Sounds... sounds) {
    return (bit(sounds) | ...);
}

constexpr std::uint64_t sibilant_sounds =
    bits(Sound::S, Sound::Z, Sound::SH, Sound::ZH, Sound::CH, Sound::JH);

// -- Syllables ---------------------------------------------------------------------------------

struct Cluster {
    Sound first;
    std::uint64_t seconds;
};

// Two consonants that may begin a syllable.
constexpr Cluster pairs_of_onsets[] = {
    {Sound::P, bits(Sound::L, Sound::R, Sound::Y)},
    {Sound::B, bits(Sound::L, Sound::R, Sound::Y)},
    {Sound::K, bits(Sound::L, Sound::R, Sound::W, Sound::Y)},
    {Sound::G, bits(Sound::L, Sound::R, Sound::W, Sound::Y)},
    {Sound::F, bits(Sound::L, Sound::R, Sound::Y)},
    {Sound::S,
     bits(Sound::L, Sound::W, Sound::P, Sound::T, Sound::K, Sound::M, Sound::N, Sound::F)},
    {Sound::T, bits(Sound::R, Sound::W, Sound::Y)},
    {Sound::D, bits(Sound::R, Sound::W, Sound::Y)},
    {Sound::TH, bits(Sound::R, Sound::W)},
    {Sound::SH, bits(Sound::R, Sound::M, Sound::L, Sound::N, Sound::W)},
    {Sound::HH, bits(Sound::W, Sound::Y)},
    {Sound::V, bits(Sound::Y)},
    {Sound::M, bits(Sound::Y)},
    {Sound::N, bits(Sound::Y)},
};

constexpr std::array<std::uint64_t, sound_count> second_sounds = [] {
    std::array<std::uint64_t, sound_count> table{};
    for (const Cluster& cluster : pairs_of_onsets)
        table[at(cluster.first)] = cluster.seconds;
    return table;
}();

bool may_begin_syllable(std::span<const Phone> cluster) {
    if (cluster.empty()) return true;
    if (cluster.size() == 1) return cluster[0].sound != Sound::NG;
    const Sound second = cluster[1].sound;
    if (cluster.size() == 2) return (second_sounds[at(cluster[0].sound)] & bit(second)) != 0;
    if (cluster.size() > 3 || cluster[0].sound != Sound::S) return false;
    const Sound third = cluster[2].sound;
    if (second == Sound::P) return (bits(Sound::L, Sound::R, Sound::Y) & bit(third)) != 0;
    if (second == Sound::T) return third == Sound::R;
    return second == Sound::K && (bits(Sound::R, Sound::W, Sound::L, Sound::Y) & bit(third)) != 0;
}

// Where the syllable of the vowel at `vowel` begins: as many consonants as may begin one.
std::size_t syllable_begin(std::span<const Phone> phones, std::size_t previous, std::size_t vowel) {
    std::size_t begin = std::max(previous + 1, vowel < 3 ? 0 : vowel - 3);
    while (!may_begin_syllable(phones.subspan(begin, vowel - begin)))
        ++begin;
    return begin;
}

// -- Words -------------------------------------------------------------------------------------

struct Onset {
    Sound sound = Sound::B;
    int units = 0;
};

// A content word with all that windows ask of it.
struct Content {
    int index = 0; // in the input
    int units = 0;
    std::span<const Phone> phones;
    std::uint64_t stem = 0;
    int same_before = 0;    // so many content words ago the same stem was said; 0 for never
    bool has_onset = false; // whether the first syllable begins with a consonant: onsets[0]
    int onset_count = 0;    // different ones, of the syllables that count
    int vowel_slots = 0;    // syllables that count: the first and each stressed one
    std::array<Onset, most_slots> onsets;
    std::array<std::uint8_t, most_slots> vowels{};
    // With the words one, two and three before, distance weighed in.
    std::array<double, reach> near{};
    std::array<double, reach> confusable{};
};

// Words of one stem are one word that comes back ("sit", "sits", "sitting").
std::uint64_t stem_of(std::string_view text) {
    static constexpr std::string_view endings[] = {"ing", "ers", "ies", "ed", "er", "es", "s", "y"};
    std::string word;
    word.reserve(text.size());
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i, 2) == "'s") {
            ++i;
        } else {
            word += text[i];
        }
    }
    while (word.ends_with('\''))
        word.pop_back();
    for (const std::string_view ending : endings) {
        if (word.size() < ending.size() + 3 || !word.ends_with(ending)) continue;
        word.resize(word.size() - ending.size());
        break;
    }
    if (word.size() > 3 && word.back() == word[word.size() - 2]) word.pop_back();
    if (word.size() > 3 && word.back() == 'e') word.pop_back();

    std::uint64_t hash = 14695981039346656037U;
    for (const char c : word)
        hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
    return hash;
}

void add_onset(Content& content, Sound sound, bool as_first) {
    for (int i = 0; i < content.onset_count; ++i) {
        if (content.onsets[static_cast<std::size_t>(i)].sound == sound) return;
    }
    content.onsets[static_cast<std::size_t>(content.onset_count++)] = {
        sound, as_first ? content.units : content.units * later_percent / 100};
}

void add_syllable(Content& content, std::size_t begin, std::size_t vowel) {
    const bool is_first = content.vowel_slots == 0;
    if (content.vowel_slots == most_slots) return;
    content.vowels[static_cast<std::size_t>(content.vowel_slots++)] =
        static_cast<std::uint8_t>(content.phones[vowel].sound);
    if (begin == vowel) return;
    content.has_onset = content.has_onset || is_first;
    add_onset(content, content.phones[begin].sound, is_first);
}

void add_syllables(Content& content) {
    const std::span<const Phone> phones = content.phones;
    std::size_t previous = phones.size();
    for (std::size_t i = 0; i < phones.size(); ++i) {
        if (!is_vowel(phones[i].sound)) continue;
        const bool is_first = previous == phones.size();
        if (is_first || phones[i].stress > 0) {
            add_syllable(content, is_first ? 0 : syllable_begin(phones, previous, i), i);
        }
        previous = i;
    }
    if (previous != phones.size()) return;
    content.vowels[0] = no_vowel;
    content.vowel_slots = 1;
    content.has_onset = true;
    add_onset(content, phones[0].sound, true);
}

// What it costs to hear one sound for another, in thousandths of a sound.
int swap_cost(Sound one, Sound other) {
    if (one == other) return 0;
    if (is_vowel(one) != is_vowel(other)) return 1000;
    return is_vowel(one) ? 600 : 1000 - static_cast<int>(500 * similarity(one, other) + 0.5);
}

using SwapCosts = std::array<std::array<std::uint16_t, sound_count>, sound_count>;

SwapCosts make_swap_costs() {
    SwapCosts costs{};
    for (std::size_t i = 0; i < costs.size(); ++i) {
        for (std::size_t j = 0; j < costs.size(); ++j) {
            costs[i][j] =
                static_cast<std::uint16_t>(swap_cost(static_cast<Sound>(i), static_cast<Sound>(j)));
        }
    }
    return costs;
}

// Edit distance of the sounds over the longer length; exact below near_limit, else just "far".
double distance(const SwapCosts& costs, std::span<const Phone> one, std::span<const Phone> other) {
    constexpr double far = 1.0;
    const int longer = static_cast<int>(std::max(one.size(), other.size()));
    const int shorter = static_cast<int>(std::min(one.size(), other.size()));
    const int limit = static_cast<int>(near_limit * 1000) * longer; // thousandths
    if (longer > longest_compared || (longer - shorter) * 1000 >= limit) return far;

    std::array<int, longest_compared + 1>
        row; // NOLINT(cppcoreguidelines-pro-type-member-init): below
    for (std::size_t j = 0; j <= other.size(); ++j)
        row[j] = static_cast<int>(j) * 1000;
    for (const Phone& phone : one) {
        const auto& swaps = costs[at(phone.sound)];
        int diagonal = row[0];
        row[0] += 1000;
        int least = row[0];
        for (std::size_t j = 0; j < other.size(); ++j) {
            const int swapped = diagonal + swaps[at(other[j].sound)];
            diagonal = row[j + 1];
            row[j + 1] = std::min(swapped, std::min(row[j], diagonal) + 1000);
            least = std::min(least, row[j + 1]);
        }
        if (least >= limit) return far;
    }
    return row[other.size()] / 1000.0 / longer;
}

// -- Tables ------------------------------------------------------------------------------------

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
    SwapCosts swaps = make_swap_costs();

    Tables();

    double log_of(int n) const {
        return n < logs ? n_log_n[static_cast<std::size_t>(n)] : n * std::log(n);
    }
    double tail(std::size_t vowel, int count, int total) const;
};

double share_of_vowel(std::size_t vowel) {
    return vowel == no_vowel ? no_vowel_share : vowel_share[vowel];
}

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

// -- Windows -----------------------------------------------------------------------------------

// The sums over a window that grows to the right.
class Window {
public:
    explicit Window(const Tables& tables) : tables_(tables) {}

    void add(const Content& content);
    double score(int span) const; // over so many words, small ones included
    int size() const { return size_; }

    double onset_evidence_of(Sound sound) const;
    double consonant_evidence_of(Sound sound) const;

private:
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

// How much better "k of n by its own share" explains a count than the share of ordinary speech.
double evidence(const Tables& tables, int k, int n, double log_share, double log_rest) {
    return tables.log_of(k) + tables.log_of(n - k) - tables.log_of(n) - k * log_share -
           (n - k) * log_rest;
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

double Window::score(int span) const {
    const double n = size_;
    const double total = std::max(consonant_total_, 1);
    std::array<double, feature_count> features{};
    features[onset_evidence] = best_onset();
    features[consonant_evidence] = best_consonant();
    features[near_words] = near_ / n;
    features[confusable_onsets] = confusable_ / n;
    features[vowel_surprise] = best_vowel();
    features[consonant_skew] =
        (n_log_n_ - tables_.log_of(consonant_total_) - log_shares_) / std::sqrt(total);
    features[repetition] = (n - different_) / n;
    features[density] = n / span;
    features[length] = tables_.log_of(size_) / n;
    features[sibilants] = sibilant_total_ / total;
    features[th_mix] = th_mixed() / total;
    features[liquid_mix] = liquids_mixed() / total;
    features[vowel_beginnings] = vowel_beginning_evidence();
    double sum = bias;
    for (std::size_t i = 0; i < feature_count; ++i)
        sum += weights[i] * features[i];
    return sum;
}

// -- The text ----------------------------------------------------------------------------------

void compare(const Tables& tables, const Content& before, Content& content, std::size_t apart) {
    const double closeness = static_cast<double>(std::min(before.units, content.units)) / unit /
                             static_cast<double>(apart);
    if (before.has_onset && content.has_onset) {
        const double alike = similarity(before.onsets[0].sound, content.onsets[0].sound);
        if (alike >= confusable_limit && alike < 1) {
            content.confusable[apart - 1] = closeness * alike;
        }
    }
    const double apart_by = distance(tables.swaps, before.phones, content.phones);
    if (apart_by < near_limit) content.near[apart - 1] = closeness * (near_limit - apart_by);
}

void compare_with_earlier(const Tables& tables, std::vector<Content>& contents) {
    Content& content = contents.back();
    const std::size_t here = contents.size() - 1;
    for (std::size_t apart = 1; apart < static_cast<std::size_t>(most_words) && apart <= here;
         ++apart) {
        const Content& before = contents[here - apart];
        if (before.stem == content.stem) {
            if (content.same_before == 0) content.same_before = static_cast<int>(apart);
        } else if (apart <= static_cast<std::size_t>(reach)) {
            compare(tables, before, content, apart);
        }
    }
}

std::vector<Content> measure(const Tables& tables, std::span<const TwisterWord> words) {
    std::vector<Content> contents;
    contents.reserve(words.size());
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i].phones.empty()) continue;
        const Weight weight = weight_of(words[i].text);
        if (weight == Weight::none) continue;
        Content& content = contents.emplace_back();
        content.index = static_cast<int>(i);
        content.units = weight == Weight::common ? common_unit : unit;
        content.phones = words[i].phones;
        content.stem = stem_of(words[i].text);
        add_syllables(content);
        compare_with_earlier(tables, contents);
    }
    return contents;
}

struct Best {
    double score = Twister{}.score;
    std::size_t first = 0; // content words [first, last)
    std::size_t last = 0;
};

Best best_window(const Tables& tables, std::span<const Content> contents) {
    Best best;
    for (std::size_t first = 0; first < contents.size(); ++first) {
        Window window(tables);
        for (std::size_t last = first; last < contents.size() && window.size() < most_words;
             ++last) {
            const int span = contents[last].index - contents[first].index + 1;
            if (span > widest_span) break;
            window.add(contents[last]);
            if (window.size() < fewest_words) continue;
            const double score = window.score(span);
            if (score > best.score) best = {score, first, last + 1};
        }
    }
    return best;
}

// One or two content words are judged together, wherever they stand.
double score_of_few(const Tables& tables, std::span<const Content> contents) {
    Window window(tables);
    for (const Content& content : contents)
        window.add(content);
    return window.score(contents.back().index - contents.front().index + 1);
}

} // namespace

Twister find_twister(std::span<const TwisterWord> words) {
    Twister twister;
    const Tables& built = tables();
    const std::vector<Content> contents = measure(built, words);
    if (contents.empty()) return twister;
    if (contents.size() < static_cast<std::size_t>(fewest_words)) {
        twister.score = std::min(score_of_few(built, contents), score_limit_of_few);
        return twister;
    }
    const Best best = best_window(built, contents);
    twister.score = best.score;
    if (best.first == best.last) return twister;
    twister.first = contents[best.first].index;
    twister.last = contents[best.last - 1].index + 1;
    return twister;
}

} // namespace say
