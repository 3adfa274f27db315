// Cuts the sounds of two words in another place and looks for words there.
#include "speech/other_hearing.h"

#include "base/lists.h"

#include <algorithm>
#include <array>

namespace say {
namespace {

enum WordClass : unsigned { adjective = 1, noun = 2, pronoun = 4, verb = 8 };

struct HeardWord {
    std::string_view sounds;
    std::string_view word;
    unsigned classes;
};

constexpr HeardWord heard_words[] = {
#include "speech/data/heard_words.inc"
};

struct BySounds {
    bool operator()(const HeardWord& a, std::string_view b) const { return a.sounds < b; }
    bool operator()(std::string_view a, const HeardWord& b) const { return a < b.sounds; }
};

std::span<const HeardWord> words_of(std::string_view sounds) {
    const auto [first, last] =
        std::equal_range(std::begin(heard_words), std::end(heard_words), sounds, BySounds{});
    return {first, last};
}

constexpr char key_of(Sound sound) {
    return static_cast<char>('0' + static_cast<int>(sound));
}

std::string keys_of(std::span<const Phone> phones) {
    std::string keys;
    for (const Phone& phone : phones)
        keys += key_of(phone.sound);
    return keys;
}

// In one breath t and sh are ch, and a t between n and s is there whether or not it is meant.
std::string in_one_breath(const std::string& keys) {
    std::string result;
    for (std::size_t at = 0; at < keys.size(); ++at) {
        const char next = at + 1 < keys.size() ? keys[at + 1] : '\0';
        if (keys[at] == key_of(Sound::T) && next == key_of(Sound::SH)) {
            result += key_of(Sound::CH);
            ++at;
        } else if (keys[at] != key_of(Sound::T) || next != key_of(Sound::S) || result.empty() ||
                   result.back() != key_of(Sound::N)) {
            result += keys[at];
        }
    }
    return result;
}

unsigned classes_of(std::string_view text, std::string_view sounds) {
    for (const HeardWord& heard : words_of(sounds)) {
        if (heard.word == text || (heard.word == "I" && text == "i")) return heard.classes;
    }
    return 0;
}

bool may_stand_together(unsigned one, unsigned next) {
    const bool named = (one & (adjective | noun)) != 0 && (next & noun) != 0;
    return named || ((one & pronoun) != 0 && (next & verb) != 0);
}

// Could "I" stand in the place of word `at`? "We had I scream" is nothing anybody hears.
bool may_begin_clause(std::span<const TwisterWord> run, std::size_t at) {
    static constexpr auto openers = std::to_array<std::string_view>({
        "and",
        "because",
        "but",
        "if",
        "or",
        "so",
        "that",
        "then",
        "think",
        "when",
        "where",
        "while",
    });
    return at == 0 || is_one_of(run[at - 1].text, openers);
}

} // namespace

std::optional<std::string> other_hearing(std::span<const TwisterWord> run, std::size_t at) {
    const TwisterWord& one = run[at - 1];
    const TwisterWord& next = run[at];
    constexpr std::size_t longest = 12; // sounds of both words of the table
    if (one.phones.size() + next.phones.size() > longest) return std::nullopt;
    const std::string one_keys = keys_of(one.phones);
    const std::string next_keys = keys_of(next.phones);
    const unsigned one_classes = classes_of(one.text, one_keys);
    if (one_classes == 0) return std::nullopt;
    if (!may_stand_together(one_classes, classes_of(next.text, next_keys))) return std::nullopt;
    // "we train" is no "wheat rain": only "I" begins both a clause and a word that is heard.
    if ((one_classes & pronoun) != 0 && one.text != "i") return std::nullopt;

    const std::string keys = in_one_breath(one_keys + next_keys);
    if (one.text != "i") {
        for (const HeardWord& whole : words_of(keys)) {
            if ((whole.classes & noun) != 0) return std::string(whole.word);
        }
    }
    for (std::size_t cut = 1; cut < keys.size(); ++cut) {
        const std::string_view front = std::string_view(keys).substr(0, cut);
        if (front == one_keys) continue;
        for (const HeardWord& first : words_of(front)) {
            for (const HeardWord& second : words_of(std::string_view(keys).substr(cut))) {
                const bool clause = (first.classes & pronoun) != 0;
                if (clause && !may_begin_clause(run, at - 1)) continue;
                if (may_stand_together(first.classes, second.classes))
                    return std::string(first.word) + ' ' + std::string(second.word);
            }
        }
    }
    return std::nullopt;
}

} // namespace say
