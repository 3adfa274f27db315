// Looking up the packed dictionary: a binary search over the first words of its blocks, then one
// block read from its start. Nothing is parsed or allocated beforehand.
#include "speech/lexicon_table.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <cstring>
#include <string>

// NOLINTNEXTLINE(readability-identifier-naming): the assembler file defines them by these names
extern "C" const unsigned char say_lexicon_table[];
// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" const unsigned char say_lexicon_table_end[];

namespace say::table {

namespace {

static_assert(std::endian::native == std::endian::little, "the packed dictionary is little-endian");

constexpr std::size_t magic_size = 8;
constexpr std::size_t keys_at = magic_size + 8;
constexpr int n_vowel_codes = 45; // fifteen vowels, three stresses each
constexpr unsigned char last_phone = 0x80;

template <typename Number> Number number_at(std::size_t at) {
    Number number = 0;
    std::memcpy(&number, say_lexicon_table + at, sizeof number);
    return number;
}

std::size_t block_count() {
    return number_at<std::uint32_t>(magic_size + 4);
}

std::uint64_t key_of_block(std::size_t block) {
    return number_at<std::uint64_t>(keys_at + 8 * block);
}

// A block, or the end of the last one if `block` is the number of blocks.
const unsigned char* block_begin(std::size_t block) {
    const std::size_t n_blocks = block_count();
    const std::size_t starts_at = keys_at + 8 * n_blocks;
    const std::size_t blocks_at = starts_at + 4 * (n_blocks + 1);
    return say_lexicon_table + blocks_at + number_at<std::uint32_t>(starts_at + 4 * block);
}

struct Entry {
    std::size_t shared = 0; // letters in common with the word before it
    std::string_view rest;
    std::span<const unsigned char> readings;
    const unsigned char* next = nullptr;
};

Entry entry_at(const unsigned char* p) {
    const std::size_t n_rest = p[1];
    const std::size_t n_readings = p[2];
    const unsigned char* letters = p + 3;
    const unsigned char* readings = letters + n_rest;
    return {p[0],
            {reinterpret_cast<const char*>(letters), n_rest},
            {readings, n_readings},
            readings + n_readings};
}

// Its first eight letters as a number: such numbers are in the order of the words.
std::uint64_t key_of(std::string_view word) {
    std::uint64_t key = 0;
    for (std::size_t at = 0; at < 8; at++) {
        key = key << 8U | (at < word.size() ? static_cast<unsigned char>(word[at]) : 0U);
    }
    return key;
}

// The last block whose first word is not beyond `word`: by the keys alone, which lie close
// together, and by the words only where keys are equal.
std::size_t block_of(std::string_view word) {
    const std::uint64_t key = key_of(word);
    std::size_t low = 0;
    std::size_t size = block_count();
    while (size > 1) {
        const std::size_t half = size / 2;
        low += key_of_block(low + half) <= key ? half : 0;
        size -= half;
    }
    while (low > 0 && key_of_block(low) == key && word < entry_at(block_begin(low)).rest)
        low--;
    return low;
}

std::size_t shared_prefix(std::string_view a, std::string_view b) {
    const std::size_t n = std::min(a.size(), b.size());
    std::size_t same = 0;
    while (same < n && a[same] == b[same])
        same++;
    return same;
}

Phone unpack(unsigned char byte) {
    const int code = byte & ~last_phone;
    if (code < n_vowel_codes) {
        return {static_cast<Sound>(code / 3), static_cast<std::uint8_t>(code % 3)};
    }
    return {static_cast<Sound>(code - n_vowel_codes + n_vowel_codes / 3), 0};
}

// Takes one reading off the front of `packed`.
Phones take_reading(std::span<const unsigned char>& packed) {
    std::size_t n = 0;
    while (n < packed.size() && (packed[n] & last_phone) == 0)
        n++;
    n = std::min(n + 1, packed.size());
    Phones phones(n);
    std::transform(packed.begin(), packed.begin() + static_cast<std::ptrdiff_t>(n), phones.begin(),
                   unpack);
    packed = packed.subspan(n);
    return phones;
}

} // namespace

std::span<const unsigned char> find(std::string_view word) {
    const std::size_t block = block_of(word);
    const unsigned char* end = block_begin(block + 1);
    std::size_t matched = 0; // letters in common with the entry before
    for (const unsigned char* p = block_begin(block); p < end;) {
        const Entry entry = entry_at(p);
        p = entry.next;
        if (matched < entry.shared) continue;  // differs where the entry before it did
        if (entry.shared < matched) return {}; // beyond the word: the entries are in order
        matched += shared_prefix(entry.rest, word.substr(matched));
        if (matched == word.size() && matched == entry.shared + entry.rest.size()) {
            return entry.readings;
        }
    }
    return {};
}

Phones first_reading(std::span<const unsigned char> packed) {
    return take_reading(packed);
}

std::vector<Phones> all_readings(std::span<const unsigned char> packed) {
    std::vector<Phones> readings;
    while (!packed.empty())
        readings.push_back(take_reading(packed));
    return readings;
}

void each_word(const Visit& visit) {
    std::string word;
    const unsigned char* end = block_begin(block_count());
    for (const unsigned char* p = block_begin(0); p < end;) {
        const Entry entry = entry_at(p);
        word.resize(entry.shared);
        word += entry.rest;
        visit(word, all_readings(entry.readings));
        p = entry.next;
    }
}

std::size_t word_count() {
    return number_at<std::uint32_t>(magic_size);
}

std::size_t byte_count() {
    return static_cast<std::size_t>(say_lexicon_table_end - say_lexicon_table);
}

} // namespace say::table
