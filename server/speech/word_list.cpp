#include "speech/word_list.h"

#include "base/hash.h"

#include <algorithm>

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

} // namespace

void WordList::add(OwnWord word) {
    if (word.words.empty() || word.readings.empty()) return;
    key_ = key_of(word, key_);
    std::vector<OwnWord>& entries = by_first_[word.words.front()];
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

const OwnWord* WordList::find(std::span<const std::string> words) const {
    if (words.empty()) return nullptr;
    const auto entries = by_first_.find(words.front());
    if (entries == by_first_.end()) return nullptr;
    for (const OwnWord& entry : entries->second) {
        const bool fits = entry.words.size() <= words.size() &&
                          std::equal(entry.words.begin(), entry.words.end(), words.begin());
        if (fits) return &entry;
    }
    return nullptr;
}

const OwnWord* WordList::find(std::string_view word) const {
    const auto entries = by_first_.find(word);
    if (entries == by_first_.end()) return nullptr;
    const OwnWord& shortest = entries->second.back();
    return shortest.words.size() == 1 ? &shortest : nullptr;
}

} // namespace say
