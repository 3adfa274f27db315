// The project's own words: how each sounds, or what is said in its place. The host fills the list
// from lexicon files; docs/pronunciation.md says which and in what order.
#pragma once

#include "speech/phones.h"

#include <cstdint>
#include <functional>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace say {

// One way to say an entry. Of the two one is empty.
struct OwnReading {
    std::vector<Phones> phones; // one list a word of the entry, or one for them all
    std::string alias;          // what is said instead, as it would be written
    auto operator<=>(const OwnReading&) const = default;
};

struct OwnWord {
    std::vector<std::string> words;   // folded, as they stand side by side; never empty
    std::vector<OwnReading> readings; // the first is said; never empty
};

class WordList {
public:
    // An entry that is there already keeps its reading and takes the new ones as further ones.
    void add(OwnWord word);

    // The longest entry that the folded words begin with; null if there is none. An entry with
    // accents is found without them too ("Hjordis" for Hjørdis), unless that is a word of its own.
    const OwnWord* find(std::span<const std::string> words) const;
    // The entry of one word alone.
    const OwnWord* find(std::string_view word) const;

    bool empty() const { return by_first_.empty(); }
    // Of all that is in it: two lists with one key say every word alike.
    std::uint64_t key() const { return key_; }

private:
    using Entries = std::map<std::string, std::vector<OwnWord>, std::less<>>;
    Entries by_first_;   // the longest first
    Entries unaccented_; // the same for what accents were taken from
    std::uint64_t key_ = 0;
};

} // namespace say
