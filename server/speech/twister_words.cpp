// Syllables, stems and distances of the words that the twister score compares.
#include "speech/twister_words.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

namespace say::twister_model {
namespace {

constexpr int longest_compared = 32; // sounds; longer "words" are noise and near to nothing

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
    return is_vowel(one) ? 600 : 1000 - static_cast<int>(std::lround(500 * similarity(one, other)));
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

const SwapCosts& swap_costs() {
    static const SwapCosts costs = make_swap_costs();
    return costs;
}

// Edit distance of the sounds over the longer length; exact below near_limit, else just "far".
double distance(const SwapCosts& costs, std::span<const Phone> one, std::span<const Phone> other) {
    constexpr double far = 1.0;
    const int longer = static_cast<int>(std::max(one.size(), other.size()));
    const int shorter = static_cast<int>(std::min(one.size(), other.size()));
    const int limit = static_cast<int>(near_limit * 1000) * longer; // thousandths
    if (longer > longest_compared || (longer - shorter) * 1000 >= limit) return far;

    std::array<int, longest_compared + 1> row{};
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

void compare(const Content& before, Content& content, std::size_t apart) {
    const double closeness = static_cast<double>(std::min(before.units, content.units)) / unit /
                             static_cast<double>(apart);
    if (before.has_onset && content.has_onset) {
        const double alike = similarity(before.onsets[0].sound, content.onsets[0].sound);
        if (alike >= confusable_limit && alike < 1) {
            content.confusable[apart - 1] = closeness * alike;
        }
    }
    const double apart_by = distance(swap_costs(), before.phones, content.phones);
    if (apart_by < near_limit) content.near[apart - 1] = closeness * (near_limit - apart_by);
}

void compare_with_earlier(std::vector<Content>& contents) {
    Content& content = contents.back();
    const std::size_t here = contents.size() - 1;
    for (std::size_t apart = 1; apart < static_cast<std::size_t>(most_words) && apart <= here;
         ++apart) {
        const Content& before = contents[here - apart];
        if (before.stem == content.stem) {
            if (content.same_before == 0) content.same_before = static_cast<int>(apart);
        } else if (apart <= static_cast<std::size_t>(reach)) {
            compare(before, content, apart);
        }
    }
}

} // namespace

bool begins_with(const Content& content, Sound sound) {
    const auto begin = content.onsets.begin();
    return std::any_of(begin, begin + content.onset_count,
                       [sound](const Onset& onset) { return onset.sound == sound; });
}

bool holds(const Content& content, Sound sound) {
    return std::any_of(content.phones.begin(), content.phones.end(),
                       [sound](const Phone& phone) { return phone.sound == sound; });
}

std::vector<Content> measure(std::span<const TwisterWord> words) {
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
        compare_with_earlier(contents);
    }
    return contents;
}

} // namespace say::twister_model
