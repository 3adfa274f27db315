#include "speech/word_list.h"

#include "base/hash.h"
#include "speech/lexicon.h"
#include "text/unicode.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace say {
namespace {

std::uint64_t key_of(const OwnWord& word, std::uint64_t before) {
    Hash hash;
    hash.add(before);
    for (const std::string& part : word.words)
        hash.add(part);
    for (const OwnReading& reading : word.readings) {
        hash.add(reading.alias);
        for (const Phones& phones : reading.phones)
            hash.add(to_arpabet(phones));
    }
    return hash.value();
}

using Entries = std::map<std::string, std::vector<OwnWord>, std::less<>>;

void add_to(Entries& by_first, OwnWord word) {
    std::vector<OwnWord>& entries = by_first[word.words.front()];
    for (OwnWord& entry : entries) {
        if (entry.words != word.words) continue;
        for (OwnReading& reading : word.readings) {
            const auto known = std::find(entry.readings.begin(), entry.readings.end(), reading);
            if (known == entry.readings.end()) entry.readings.push_back(std::move(reading));
        }
        return;
    }
    const auto place = std::find_if(entries.begin(), entries.end(), [&](const OwnWord& entry) {
        return entry.words.size() < word.words.size();
    });
    entries.insert(place, std::move(word));
}

const OwnWord* longest_of(const Entries& by_first, std::span<const std::string> words) {
    const auto entries = by_first.find(words.front());
    if (entries == by_first.end()) return nullptr;
    for (const OwnWord& entry : entries->second) {
        const bool fits = entry.words.size() <= words.size() &&
                          std::equal(entry.words.begin(), entry.words.end(), words.begin());
        if (fits) return &entry;
    }
    return nullptr;
}

const OwnWord* word_of(const Entries& by_first, std::string_view word) {
    const auto entries = by_first.find(word);
    if (entries == by_first.end()) return nullptr;
    const OwnWord& shortest = entries->second.back();
    return shortest.words.size() == 1 ? &shortest : nullptr;
}

// Nothing where it has no accents, or where without them it is another word: "résumé".
std::optional<OwnWord> without_accents(const OwnWord& word) {
    OwnWord plain = word;
    bool unknown = false;
    for (std::string& part : plain.words) {
        const std::string letters = unicode::fold(unicode::to_ascii(part));
        unknown = unknown || (letters != part && pronounce(letters).known == Known::guess);
        part = letters;
    }
    if (!unknown) return std::nullopt;
    return plain;
}

} // namespace

void WordList::add(OwnWord word) {
    if (word.words.empty() || word.readings.empty()) return;
    key_ = key_of(word, key_);
    if (auto plain = without_accents(word)) add_to(unaccented_, std::move(*plain));
    add_to(by_first_, std::move(word));
}

const OwnWord* WordList::find(std::span<const std::string> words) const {
    if (words.empty()) return nullptr;
    const OwnWord* word = longest_of(by_first_, words);
    return word != nullptr ? word : longest_of(unaccented_, words);
}

const OwnWord* WordList::find(std::string_view word) const {
    const OwnWord* found = word_of(by_first_, word);
    return found != nullptr ? found : word_of(unaccented_, word);
}

} // namespace say
