// Finds the window of a text that trips the tongue most, and says what clashes in it.
#include "speech/twister.h"

#include "speech/lexicon.h"
#include "speech/sound_letters.h"
#include "speech/twister_window.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace say {
namespace {

using namespace twister_model;
using Contents = std::span<const Content>;

// -- The best window ---------------------------------------------------------------------------

int span_of(Contents window) {
    return window.back().index - window.front().index + 1;
}

struct Best {
    double score = Twister{}.score;
    Contents window;
};

Best best_window(Contents contents) {
    Best best;
    for (std::size_t first = 0; first < contents.size(); ++first) {
        Window window;
        for (std::size_t last = first; last < contents.size() && window.size() < most_words;
             ++last) {
            const Contents words = contents.subspan(first, last - first + 1);
            if (span_of(words) > widest_span) break;
            window.add(contents[last]);
            if (window.size() < fewest_words) continue;
            const double score = window.score(span_of(words));
            if (score > best.score) best = {score, words};
        }
    }
    return best;
}

Window window_of(Contents contents) {
    Window window;
    for (const Content& content : contents)
        window.add(content);
    return window;
}

// One or two content words are judged together, wherever they stand.
double score_of_few(Contents contents) {
    return std::min(window_of(contents).score(span_of(contents)), score_limit_of_few);
}

// -- What clashes ------------------------------------------------------------------------------

// From here on a consonant is named before likeness or vowels are: writers know it by its letter.
constexpr double telling = 1.5;       // of the score
constexpr double second_share = 0.5;  // a second sound is named if it adds this much of the first
constexpr double partner_limit = 0.6; // of similarity, for a sound that begins no word
constexpr double rival_limit = 0.6;   // of rivalry, below which a sound is no rival
constexpr double inside_share = 0.25; // a sound inside a word counts less than at its beginning

struct Cause {
    Clash clash = Clash::pile;
    std::vector<Sound> sounds;
};

constexpr std::array<Sound, sound_count> all_sounds = [] {
    std::array<Sound, sound_count> sounds{};
    for (std::size_t i = 0; i < sounds.size(); ++i)
        sounds[i] = static_cast<Sound>(i);
    return sounds;
}();
constexpr std::span<const Sound> vowels{all_sounds.data(), vowel_count};
constexpr std::span<const Sound> consonants{all_sounds.data() + vowel_count,
                                            sound_count - vowel_count};

struct Strongest {
    Sound sound = Sound::AA;
    double value = 0;
};

template <typename Value> Strongest strongest(std::span<const Sound> sounds, Value value_of) {
    Strongest best;
    for (const Sound sound : sounds) {
        const double value = value_of(sound);
        if (value > best.value) best = {sound, value};
    }
    return best;
}

template <typename Test> double count(Contents window, Test test) {
    return static_cast<double>(std::count_if(window.begin(), window.end(), test));
}

double heads_of(Contents window, Sound sound) {
    return count(window, [sound](const Content& content) { return begins_with(content, sound); });
}

// How much `other` gets in the way of `sound` here: alike, and at the beginning of words.
double rivalry(Contents window, Sound sound, Sound other) {
    const double alike = similarity(sound, other);
    if (sound == other || alike < confusable_limit) return 0;
    const double heads = heads_of(window, other);
    const double all = count(window, [other](const Content& c) { return holds(c, other); });
    if (heads == 0 && (all < 2 || alike < partner_limit)) return 0;
    return alike * (heads + inside_share * (all - heads));
}

// The one that begins more words is named first.
Cause trade(Contents window, Sound one, Sound other) {
    if (heads_of(window, other) > heads_of(window, one)) std::swap(one, other);
    return {Clash::trade, {one, other}};
}

Cause consonant_cause(Contents window, const Window& sums, Strongest main) {
    const auto rival =
        strongest(consonants, [&](Sound other) { return rivalry(window, main.sound, other); });
    if (rival.value >= rival_limit) return trade(window, main.sound, rival.sound);
    const auto second = strongest(consonants, [&](Sound other) {
        const bool frequent = other != main.sound && heads_of(window, other) > 1;
        return frequent ? sums.weight_of(other) : 0.0;
    });
    if (second.value < second_share * main.value) return {Clash::pile, {main.sound}};
    return {Clash::pile, {main.sound, second.sound}};
}

// Two beginnings that are easily said for each other, though neither is frequent.
Cause swap_cause(Contents window) {
    Strongest best;
    Sound partner = Sound::AA;
    for (const Sound sound : consonants) {
        const double heads = heads_of(window, sound);
        const auto rival = strongest(
            consonants, [&](Sound other) { return heads * rivalry(window, sound, other); });
        if (rival.value > best.value) {
            best = {sound, rival.value};
            partner = rival.sound;
        }
    }
    return trade(window, best.sound, partner);
}

bool is_near_some(Contents window, std::size_t index) {
    const auto reaches = [&](std::size_t later, std::size_t earlier) {
        return window[later].near[later - earlier - 1] > 0;
    };
    for (std::size_t apart = 1; apart <= static_cast<std::size_t>(reach); ++apart) {
        if (apart <= index && reaches(index, index - apart)) return true;
        if (index + apart < window.size() && reaches(index + apart, index)) return true;
    }
    return false;
}

Strongest most_held(Contents window) {
    const auto held = [window](Sound sound) {
        return count(window, [sound](const Content& content) { return holds(content, sound); });
    };
    const Strongest consonant = strongest(consonants, held);
    return consonant.value > 1 ? consonant : strongest(vowels, held);
}

Strongest most_surprising_vowel(Contents window) {
    const auto slots_with = [window](std::size_t vowel) {
        int slots = 0;
        for (const Content& content : window) {
            const auto begin = content.vowels.begin();
            slots += static_cast<int>(std::count(begin, begin + content.vowel_slots, vowel));
        }
        return slots;
    };
    int total = 0;
    for (const Content& content : window)
        total += content.vowel_slots;
    return strongest(vowels, [&](Sound vowel) {
        const int slots = slots_with(at(vowel));
        return slots > 1 ? tables().tail(at(vowel), slots, total) : 0.0;
    });
}

Strongest most_frequent_beginning(Contents window) {
    return strongest(vowels, [window](Sound vowel) {
        return count(window, [vowel](const Content& content) {
            return content.phones.front().sound == vowel;
        });
    });
}

Cause cause_of(Contents window) {
    const Window sums = window_of(window);
    const auto parts = sums.parts(span_of(window));
    const auto main = strongest(consonants, [&](Sound sound) { return sums.weight_of(sound); });
    if (main.value >= telling) return consonant_cause(window, sums, main);

    constexpr std::array<Feature, 5> others = {confusable_onsets, near_words, vowel_surprise,
                                               vowel_beginnings, repetition};
    const Feature largest = *std::max_element(
        others.begin(), others.end(), [&](Feature a, Feature b) { return parts[a] < parts[b]; });
    switch (largest) {
    case confusable_onsets: return swap_cause(window);
    case vowel_surprise: return {Clash::vowel, {most_surprising_vowel(window).sound}};
    case vowel_beginnings: return {Clash::beginnings, {most_frequent_beginning(window).sound}};
    case repetition: return {Clash::repeat, {most_held(window).sound}};
    default: return {Clash::alike, {most_held(window).sound}};
    }
}

bool takes_part(Contents window, std::size_t index, const Cause& cause) {
    const Content& content = window[index];
    switch (cause.clash) {
    case Clash::alike: return is_near_some(window, index);
    case Clash::beginnings: return !content.has_onset;
    case Clash::repeat:
        return count(window, [&](const Content& c) { return c.stem == content.stem; }) > 1;
    default:
        return std::any_of(cause.sounds.begin(), cause.sounds.end(),
                           [&](Sound sound) { return holds(content, sound); });
    }
}

// Grammar words beside the underline join it if they begin with one of the sounds ("she sells").
void widen(std::span<const TwisterWord> words, Twister& twister) {
    const auto joins = [&](int index) {
        const TwisterWord& word = words[static_cast<std::size_t>(index)];
        return weight_of(word.text) == Weight::none && !word.phones.empty() &&
               std::count(twister.sounds.begin(), twister.sounds.end(), word.phones.front().sound) >
                   0;
    };
    if (twister.first > 0 && joins(twister.first - 1)) --twister.first;
    if (twister.last < static_cast<int>(words.size()) && joins(twister.last)) ++twister.last;
}

// Underlines from the first to the last word that takes part or is nearly like another.
void explain(Contents window, std::span<const TwisterWord> words, Twister& twister) {
    Cause cause = cause_of(window);
    std::vector<int> tripping;
    for (std::size_t i = 0; i < window.size(); ++i) {
        const bool clashes = takes_part(window, i, cause);
        if (clashes) twister.words.push_back(window[i].index);
        if (clashes || is_near_some(window, i)) tripping.push_back(window[i].index);
    }
    twister.clash = cause.clash;
    twister.sounds = std::move(cause.sounds);
    if (tripping.size() > 1) {
        twister.first = tripping.front();
        twister.last = tripping.back() + 1;
    }
    if (twister.clash == Clash::trade || twister.clash == Clash::pile) widen(words, twister);
}

Twister find_in(std::span<const TwisterWord> words) {
    Twister twister;
    const std::vector<Content> contents = measure(words);
    if (contents.empty()) return twister;
    if (contents.size() < static_cast<std::size_t>(fewest_words)) {
        twister.score = score_of_few(contents);
        return twister;
    }
    const Best best = best_window(contents);
    twister.score = best.score;
    if (best.window.empty()) return twister;
    twister.first = best.window.front().index;
    twister.last = best.window.back().index + 1;
    if (best.score >= twister_strict_threshold) explain(best.window, words, twister);
    return twister;
}

// -- Words joined by hyphens -------------------------------------------------------------------

// "orange-green" is two words to the tongue.
struct Parts {
    std::vector<TwisterWord> words;
    std::vector<int> owners; // which input word a part belongs to
};

bool is_joined(const TwisterWord& word) {
    return word.text.find('-') != std::string_view::npos;
}

// Where the sounds of the parts begin; empty if the word is not said part by part, as when the
// writer gave its sound.
std::vector<TwisterWord> split(const TwisterWord& word) {
    std::vector<TwisterWord> parts;
    std::size_t begin = 0;
    std::size_t sounds = 0;
    while (begin <= word.text.size()) {
        const std::size_t end = std::min(word.text.find('-', begin), word.text.size());
        const std::string_view text = word.text.substr(begin, end - begin);
        begin = end + 1;
        if (text.empty()) continue;
        const Phones phones = pronounce(text).phones;
        if (sounds + phones.size() > word.phones.size()) return {};
        const auto here = word.phones.subspan(sounds, phones.size());
        // Only the sounds: the stress of a later part gives way to that of the first.
        if (!std::equal(phones.begin(), phones.end(), here.begin(),
                        [](Phone a, Phone b) { return a.sound == b.sound; }))
            return {};
        parts.push_back({text, here});
        sounds += phones.size();
    }
    if (sounds != word.phones.size()) return {};
    return parts;
}

Parts parts_of(std::span<const TwisterWord> words) {
    Parts parts;
    for (std::size_t i = 0; i < words.size(); ++i) {
        std::vector<TwisterWord> split_word;
        if (is_joined(words[i])) split_word = split(words[i]);
        if (split_word.empty()) split_word = {words[i]};
        parts.words.insert(parts.words.end(), split_word.begin(), split_word.end());
        parts.owners.resize(parts.words.size(), static_cast<int>(i));
    }
    return parts;
}

// -- The message -------------------------------------------------------------------------------

constexpr int most_quoted = 9; // words

std::string quote(const Twister& twister, std::span<const TwisterWord> words) {
    const int last = std::min(twister.last, twister.first + most_quoted);
    std::string text;
    for (int i = twister.first; i < last; ++i) {
        if (!text.empty()) text += ' ';
        text += words[static_cast<std::size_t>(i)].text;
    }
    return last < twister.last ? text + " …" : text;
}

std::string subject_of(const Twister& twister) {
    const std::string first = letters_of(twister.sounds.front());
    const std::string second = letters_of(twister.sounds.back());
    return first == second ? first : first + " and " + second;
}

std::string claim_of(const Twister& twister) {
    std::string subject = subject_of(twister);
    const bool one = subject.find(' ') == std::string::npos;
    switch (twister.clash) {
    case Clash::trade: return one ? "the two sounds of th trade places" : subject + " trade places";
    case Clash::pile: return subject + (one ? " piles up" : " pile up");
    case Clash::alike: return "words that sound nearly alike trade places";
    case Clash::vowel: return "the same vowel comes back again and again";
    case Clash::beginnings: return "words that begin with a vowel run together";
    case Clash::repeat: return "the same words come back and lose their order";
    }
    return subject;
}

} // namespace

Twister find_twister(std::span<const TwisterWord> words) {
    if (std::none_of(words.begin(), words.end(), is_joined)) return find_in(words);
    const Parts parts = parts_of(words);
    Twister twister = find_in(parts.words);
    if (twister.first == twister.last) return twister;
    const auto owner = [&](int part) { return parts.owners[static_cast<std::size_t>(part)]; };
    twister.first = owner(twister.first);
    twister.last = owner(twister.last - 1) + 1;
    std::transform(twister.words.begin(), twister.words.end(), twister.words.begin(), owner);
    twister.words.erase(std::unique(twister.words.begin(), twister.words.end()),
                        twister.words.end());
    return twister;
}

std::string twister_message(const Twister& twister, std::span<const TwisterWord> words) {
    if (twister.sounds.empty()) return {};
    return fmt::format("{}: '{}'", claim_of(twister), quote(twister, words));
}

} // namespace say
