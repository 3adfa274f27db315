// Phones to the International Phonetic Alphabet and back. What to_ipa writes, from_ipa reads as the
// same phones.
#include "speech/phones.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>

namespace say {

namespace {

constexpr std::string_view primary_mark = "ˈ";
constexpr std::string_view secondary_mark = "ˌ";
// The linking mark: a word that leans on its neighbour. It tells "ɪz" without any stress from "ɪz"
// with.
constexpr std::string_view leaning_mark = "‿";
constexpr char32_t tie_above = 0x361;
constexpr char32_t tie_below = 0x35C;
constexpr char32_t syllabic = 0x329;

// In the order of Sound. AH and ER are written by their stress, see written().
constexpr std::array<std::string_view, sound_count> symbols = {
    "ɑ", "æ", "ʌ", "ɔ",  "aʊ", "aɪ", "ɛ", "ɝ", "eɪ", "ɪ",  "i", "oʊ", "ɔɪ",
    "ʊ", "u", "b", "tʃ", "d",  "ð",  "f", "ɡ", "h",  "dʒ", "k", "l",  "m",
    "n", "ŋ", "p", "ɹ",  "s",  "ʃ",  "t", "θ", "v",  "w",  "j", "z",  "ʒ",
};

// What else is read: other habits of writing English, and the nearest English sound of foreign
// symbols.
struct Reading {
    std::string_view written;
    Sound sound;
};
constexpr Reading further_readings[] = {
    {"ə", Sound::AH},  {"ɐ", Sound::AH},  {"ɚ", Sound::ER},  {"ɜɹ", Sound::ER}, {"ɜr", Sound::ER},
    {"ɜ", Sound::ER},  {"ɒ", Sound::AA},  {"a", Sound::AA},  {"e", Sound::EH},  {"o", Sound::OW},
    {"əʊ", Sound::OW}, {"ɑɪ", Sound::AY}, {"ɑʊ", Sound::AW}, {"ɒɪ", Sound::OY}, {"oɪ", Sound::OY},
    {"aj", Sound::AY}, {"aw", Sound::AW}, {"ej", Sound::EY}, {"ow", Sound::OW}, {"ɔj", Sound::OY},
    {"ɨ", Sound::IH},  {"ʉ", Sound::UW},  {"y", Sound::UW},  {"ø", Sound::ER},  {"œ", Sound::ER},
    {"g", Sound::G},   {"r", Sound::R},   {"ɾ", Sound::T},   {"ʁ", Sound::R},   {"ʀ", Sound::R},
    {"ɻ", Sound::R},   {"ɫ", Sound::L},   {"x", Sound::K},   {"χ", Sound::K},   {"ç", Sound::HH},
    {"ɣ", Sound::G},   {"β", Sound::V},   {"ʍ", Sound::W},   {"ʧ", Sound::CH},  {"ʤ", Sound::JH},
    {"ʔ", Sound::T},   {"ɲ", Sound::N},   {"ʎ", Sound::L},   {"ɱ", Sound::M},
};

std::string_view written(const Phone& phone) {
    if (phone.stress == 0 && phone.sound == Sound::AH) return "ə";
    if (phone.stress == 0 && phone.sound == Sound::ER) return "ɚ";
    return symbols[static_cast<std::size_t>(phone.sound)];
}

// The longest symbol at the front of `text`; its text is empty if there is none.
Reading longest_symbol(std::string_view text) {
    Reading best{"", Sound::AH};
    const auto consider = [&](const Reading& reading) {
        if (text.starts_with(reading.written) && best.written.size() < reading.written.size()) {
            best = reading;
        }
    };
    for (int i = 0; i < sound_count; i++) {
        consider({symbols[static_cast<std::size_t>(i)], static_cast<Sound>(i)});
    }
    std::for_each(std::begin(further_readings), std::end(further_readings), consider);
    return best;
}

// Would the two be read as another symbol that starts with the first: "tʃ" for T SH?
bool would_merge(std::string_view first, std::string_view second) {
    return !first.empty() &&
           first.size() < longest_symbol(std::string(first).append(second)).written.size();
}

bool is_reduced(std::string_view symbol) {
    return symbol == "ə" || symbol == "ɚ";
}

std::string_view mark_of(int stress) {
    return stress == 1 ? primary_mark : stress == 2 ? secondary_mark : std::string_view();
}

// The stress of the syllable that begins at `start`, or 0.
int stress_of_syllable(std::span<const Phone> phones, std::size_t start) {
    while (start < phones.size() && !is_vowel(phones[start].sound))
        start++;
    return start < phones.size() ? phones[start].stress : 0;
}

// A word of one syllable needs no mark for its stress; it needs one for the lack of it.
std::string_view mark_of_only_syllable(std::span<const Phone> phones) {
    const auto vowel = std::find_if(phones.begin(), phones.end(),
                                    [](const Phone& phone) { return is_vowel(phone.sound); });
    if (vowel == phones.end() || vowel->stress == 1) return {};
    if (vowel->stress == 0) return is_reduced(written(*vowel)) ? std::string_view() : leaning_mark;
    return mark_of(vowel->stress);
}

// Ties, lengths, brackets, syllable breaks, aspiration and the like: they change none of our
// sounds.
bool is_passed_over(char32_t c) {
    constexpr std::u32string_view others = U"/[]().ːˑ‿ʰʷʲˠˤ̯-";
    const bool is_combining = 0x300 <= c && c <= 0x36F;
    return is_combining || unicode::is_blank(c) || unicode::is_ignorable(c) ||
           others.find(c) != std::u32string_view::npos;
}

int stress_of_mark(char32_t c) {
    return c == U'ˈ' || c == U'\'' || c == U'’' ? 1 : c == U'ˌ' || c == U',' ? 2 : 0;
}

// Without tie bars the two halves of an affricate or a diphthong stand side by side, as we look
// them up.
std::string without_ties(std::string_view ipa) {
    std::string plain;
    for (std::size_t at = 0; at < ipa.size();) {
        const auto c = unicode::decode(ipa, at);
        if (c.value != tie_above && c.value != tie_below) plain += ipa.substr(at, c.size);
        at += c.size;
    }
    return plain;
}

// What has been read so far; the stress waits for the vowel of its syllable.
struct Reader {
    Phones phones;
    int stress = 0;
    bool any_mark = false;
    bool any_full_vowel = false;

    void add(const Reading& symbol) {
        Phone phone{symbol.sound, 0};
        if (is_vowel(phone.sound)) {
            phone.stress = static_cast<std::uint8_t>(stress);
            stress = 0;
            any_full_vowel = any_full_vowel || !is_reduced(symbol.written);
        }
        phones.push_back(phone);
    }

    // "n̩": the mark stands under a consonant that is a syllable by itself.
    void make_syllabic() {
        if (phones.empty() || is_vowel(phones.back().sound)) return;
        phones.insert(phones.end() - 1, Phone{Sound::AH, 0});
    }

    // False if it is no sign of ours.
    bool take_sign(char32_t c) {
        if (const int marked = stress_of_mark(c); marked != 0) {
            stress = marked;
            any_mark = true;
        } else if (c == syllabic) {
            make_syllabic();
        } else if (is_passed_over(c)) {
            any_mark = any_mark || c == U'‿';
        } else {
            return false;
        }
        return true;
    }

    void stress_only_syllable() {
        if (any_mark || !any_full_vowel || syllable_count(phones) != 1) return;
        for (Phone& phone : phones)
            phone.stress = is_vowel(phone.sound) ? 1 : 0;
    }
};

// Reads from `at` on to the end or to what is no sign; `at` stands there.
void read_signs(std::string_view plain, Reader& reader, std::size_t& at) {
    while (at < plain.size()) {
        const Reading symbol = longest_symbol(plain.substr(at));
        if (!symbol.written.empty()) {
            reader.add(symbol);
            at += symbol.written.size();
            continue;
        }
        const auto c = unicode::decode(plain, at);
        if (!reader.take_sign(c.value)) return;
        at += c.size;
    }
}

} // namespace

std::string to_ipa(std::span<const Phone> phones) {
    const std::vector<std::size_t> starts = syllable_starts(phones);
    std::string ipa;
    std::string_view previous;
    for (std::size_t at = 0; at < phones.size(); at++) {
        std::string_view mark;
        if (std::binary_search(starts.begin(), starts.end(), at)) {
            mark = starts.size() == 1 ? mark_of_only_syllable(phones)
                                      : mark_of(stress_of_syllable(phones, at));
        }
        const std::string_view symbol = written(phones[at]);
        if (mark.empty() && would_merge(previous, symbol)) mark = ".";
        ipa.append(mark).append(symbol);
        previous = symbol;
    }
    return ipa;
}

std::optional<Phones> from_ipa(std::string_view ipa) {
    const std::string plain = without_ties(ipa);
    Reader reader;
    std::size_t at = 0;
    read_signs(plain, reader, at);
    if (at < plain.size() || reader.phones.empty()) return std::nullopt;
    reader.stress_only_syllable();
    return reader.phones;
}

std::string_view unknown_ipa(std::string_view ipa) {
    const std::string plain = without_ties(ipa);
    Reader reader;
    std::size_t at = 0;
    read_signs(plain, reader, at);
    if (at >= plain.size()) return {};
    const std::string_view symbol =
        std::string_view(plain).substr(at, unicode::decode(plain, at).size);
    return ipa.substr(ipa.find(symbol), symbol.size());
}

} // namespace say
