// The passage: the plain form of written words and what stands between them.
#include "speech/passage.h"

#include "text/ascii.h"
#include "text/unicode.h"

#include <algorithm>

namespace say {
namespace {

bool is_ascii(std::string_view text) {
    return std::none_of(text.begin(), text.end(), ascii::is_high);
}

// The ASCII sign that a typographic one stands for, 0 if none.
char plain_sign(char32_t c) {
    if (c >= 0xff01 && c <= 0xff5e) return static_cast<char>(c - 0xfee0); // full-width
    if (c >= 0x2070 && c <= 0x2079 && c != 0x2071) return static_cast<char>('0' + (c - 0x2070));
    if (c >= 0x2080 && c <= 0x2089) return static_cast<char>('0' + (c - 0x2080));
    switch (c) {
    case U'‐':
    case U'‑':
    case U'‒':
    case U'–':
    case U'—':
    case U'−': return '-';
    case U'’':
    case U'‘':
    case U'ʼ':
    case U'′': return '\'';
    case U'″': return '"';
    case U'⁄': return '/';
    default: return 0;
    }
}

// The figure above the bar of a fraction: "¹⁄₂".
char raised_above_bar(char32_t c) {
    switch (c) {
    case U'¹': return '1';
    case U'²': return '2';
    case U'³': return '3';
    default: return 0;
    }
}

std::string plain_form(std::string_view word) {
    std::string result;
    for (std::size_t at = 0; at < word.size();) {
        const unicode::CodePoint point = unicode::decode(word, at);
        at += point.size;
        if (unicode::is_ignorable(point.value)) continue;
        const bool above_bar = word.substr(at).starts_with("⁄");
        if (point.value == 0x2070 && (word.substr(at) == "C" || word.substr(at) == "F")) {
            result += "°"; // "20⁰C" has a raised nought for its degrees
            continue;
        }
        if (const char sign = above_bar ? raised_above_bar(point.value) : '\0') {
            result += sign;
        } else if (const char plain = plain_sign(point.value)) {
            result += plain;
        } else {
            unicode::append(result, point.value);
        }
    }
    return result;
}

bool is_blank_run(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const unicode::CodePoint point = unicode::decode(text, at);
        if (!unicode::is_blank(point.value)) return false;
        at += point.size;
    }
    return !text.empty();
}

// In the UK the last letter is "zed"; every word said by letters is then split around it.
void add_letters(std::vector<SpokenWord>& words, std::string_view letters, Language language) {
    if (language == Language::en_us) {
        words.push_back({std::string(letters), true});
        return;
    }
    std::size_t begin = 0;
    for (std::size_t at = letters.find('z'); at != std::string_view::npos;
         at = letters.find('z', begin)) {
        if (at > begin) words.push_back({std::string(letters.substr(begin, at - begin)), true});
        words.push_back({"zed", false});
        begin = at + 1;
    }
    if (begin < letters.size()) words.push_back({std::string(letters.substr(begin)), true});
}

} // namespace

Passage::Passage(std::string_view plain, std::span<const Span> words, Language language)
    : plain_(plain), words_(words), language_(language), spoken_(words.size()),
      said_(words.size(), 0) {}

std::string_view Passage::raw(std::size_t i) const {
    return i < words_.size() ? slice(plain_, words_[i]) : std::string_view{};
}

std::string Passage::text(std::size_t i) const {
    const std::string_view word = raw(i);
    return is_ascii(word) ? std::string(word) : plain_form(word);
}

std::string Passage::folded(std::size_t i) const {
    return is_ascii(raw(i)) ? ascii::lower(raw(i)) : unicode::to_lower(text(i));
}

std::string_view Passage::between(std::size_t i) const {
    if (i + 1 >= words_.size()) return {};
    return slice(plain_, {words_[i].end, words_[i + 1].begin});
}

bool Passage::joined(std::size_t i) const {
    return is_blank_run(between(i));
}

bool Passage::joined_by_stop(std::size_t i) const {
    const std::string_view gap = between(i);
    return gap.starts_with('.') && is_blank_run(gap.substr(1));
}

bool Passage::joined_by_comma(std::size_t i) const {
    const std::string_view gap = between(i);
    return gap.starts_with(',') && is_blank_run(gap.substr(1));
}

bool Passage::stop_behind(std::size_t i) const {
    return i < words_.size() && words_[i].end.value < plain_.size() &&
           plain_[words_[i].end.value] == '.';
}

void Passage::say(std::size_t i, std::string_view words) {
    if (i >= size()) return;
    said_[i] = 1;
    std::vector<SpokenWord>& spoken = spoken_[i].words;
    spoken.clear();
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        const std::string_view word = words.substr(at, end - at);
        at = end + 1;
        if (word.size() > 1 && word[0] == '.') {
            add_letters(spoken, word.substr(1), language_);
        } else if (!word.empty()) {
            spoken.push_back({std::string(word), false});
        }
    }
}

void Passage::say(std::size_t i, std::string_view words, std::vector<std::string> readings) {
    if (i >= size()) return;
    say(i, words);
    spoken_[i].readings = std::move(readings);
}

void Passage::say_plain(std::size_t i, std::string word) {
    said_[i] = 1;
    if (!word.empty()) spoken_[i].words.emplace_back(std::move(word), false);
}

bool Passage::shouts() const {
    if (shouts_) return *shouts_;
    std::size_t capitals = 0;
    std::size_t others = 0;
    for (const Span span : words_) {
        const std::string_view word = slice(plain_, span);
        const bool lower = std::any_of(word.begin(), word.end(), ascii::is_lower);
        const bool upper = std::any_of(word.begin(), word.end(), ascii::is_upper);
        if (lower) ++others;
        if (upper && !lower && word.size() > 1) ++capitals;
    }
    shouts_ = capitals >= 3 && capitals > others;
    return *shouts_;
}

bool is_dash_gap(std::string_view gap) {
    bool dash = false;
    for (std::size_t at = 0; at < gap.size();) {
        const unicode::CodePoint point = unicode::decode(gap, at);
        at += point.size;
        if (point.value == '-' || point.value == U'–' || point.value == U'—') {
            if (dash) return false;
            dash = true;
        } else if (point.value != '.' && !unicode::is_blank(point.value)) {
            return false;
        }
    }
    return dash;
}

void append_words(std::string& words, std::string_view more) {
    if (more.empty()) return;
    if (!words.empty()) words += ' ';
    words += more;
}

} // namespace say
