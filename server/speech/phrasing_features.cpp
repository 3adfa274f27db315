#include "speech/phrasing_features.h"

#include "base/hash.h"
#include "speech/lexicon.h"

#include <algorithm>
#include <cstddef>

namespace say {
namespace {

// Sorted, to be searched by halves.
constexpr std::string_view clause_openers[] = {
    "although", "and",   "because", "but",   "if",      "or",    "since", "that", "though",
    "unless",   "until", "when",    "where", "whether", "which", "while", "who",
};

bool opens_clause(std::string_view word) {
    return std::binary_search(std::begin(clause_openers), std::end(clause_openers), word);
}

std::uint32_t hash_of(std::string_view text) {
    return static_cast<std::uint32_t>(Hash{}.add(text).value() >> 32U);
}

std::string_view last_letters(std::string_view text, std::size_t count) {
    return text.substr(text.size() - std::min(count, text.size()));
}

constexpr std::uint32_t no_word = 0x51ed270b;

std::uint8_t small(std::size_t number, std::size_t most = 255) {
    return static_cast<std::uint8_t>(std::min(number, most));
}

// Distances count exactly when short and by steps when long.
std::uint32_t bucket(std::uint32_t distance) {
    if (distance <= 8) return distance;
    if (distance <= 10) return 9;
    if (distance <= 13) return 10;
    if (distance <= 17) return 11;
    if (distance <= 23) return 12;
    return 13;
}

std::uint32_t coarse(std::uint32_t distance) {
    if (distance <= 3) return distance;
    if (distance <= 5) return 4;
    if (distance <= 8) return 5;
    if (distance <= 12) return 6;
    return 7;
}

bool ends_sentence(Stop stop) {
    return stop >= Stop::full;
}

// Rows are chosen by a number a feature and what it saw.
class Picker {
public:
    explicit Picker(PhrasingRows& rows) : rows_(rows) {}
    void add(std::uint32_t a, std::uint32_t b = 0, std::uint32_t c = 0, std::uint32_t d = 0) {
        std::uint64_t state = (static_cast<std::uint64_t>(count_) + 1) * 0x9e3779b97f4a7c15ULL;
        state = (state ^ a) * 0xd6e8feb86659fd93ULL;
        state = (state ^ (state >> 32U) ^ b) * 0x9e3779b97f4a7c15ULL;
        state = (state ^ (state >> 32U) ^ c) * 0xd6e8feb86659fd93ULL;
        state = (state ^ (state >> 32U) ^ d) * 0x9e3779b97f4a7c15ULL;
        state ^= state >> 29U;
        state *= 0xd6e8feb86659fd93ULL;
        rows_[count_++] = static_cast<std::uint32_t>(state >> (64U - phrasing_row_bits));
    }
    std::size_t count() const { return count_; }

private:
    PhrasingRows& rows_;
    std::size_t count_ = 0;
};

} // namespace

PhrasingFeatures::PhrasingFeatures(std::span<const PhrasingWord> words) : facts_(words.size()) {
    const std::size_t count = words.size();
    std::size_t from_stop = 0;
    std::size_t from_start = 0;
    std::size_t content_since = 0;
    std::size_t function_since = 0;
    std::size_t syllables_since = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const std::string_view text = words[i].text;
        Facts& fact = facts_[i];
        fact.word = hash_of(text);
        fact.suffix2 = hash_of(last_letters(text, 2));
        fact.suffix3 = hash_of(last_letters(text, 3));
        fact.suffix4 = hash_of(last_letters(text, 4));
        fact.prefix3 = hash_of(text.substr(0, 3));
        fact.syllables = words[i].syllables;
        fact.length = small(text.size());
        fact.function = is_function_word(text);
        fact.opener = opens_clause(text);
        fact.capital = words[i].capital;
        fact.after = words[i].after;
        if (!fact.function) {
            for (std::size_t j = i > 60 ? i - 60 : 0; j < i && !fact.given; ++j)
                fact.given = facts_[j].word == fact.word;
        }
        fact.from_stop = small(from_stop);
        fact.from_start = small(from_start);
        fact.content_since = small(content_since);
        fact.function_since = small(function_since);
        fact.syllables_since = small(syllables_since);
        ++from_stop;
        ++from_start;
        syllables_since += fact.syllables;
        if (fact.function) {
            ++function_since;
        } else {
            ++content_since;
            function_since = 0;
        }
        if (fact.after != Stop::none)
            from_stop = content_since = function_since = syllables_since = 0;
        if (ends_sentence(fact.after)) from_start = 0;
    }
    std::size_t to_stop = 0;
    std::size_t to_end = 0;
    std::size_t content_to = 0;
    std::size_t syllables_to = 0;
    for (std::size_t i = count; i-- > 0;) {
        Facts& fact = facts_[i];
        if (fact.after != Stop::none) to_stop = content_to = syllables_to = 0;
        if (ends_sentence(fact.after)) to_end = 0;
        fact.to_stop = small(to_stop++);
        fact.to_end = small(to_end++);
        fact.content_to = small(content_to);
        fact.syllables_to = small(syllables_to);
        syllables_to += fact.syllables;
        if (!fact.function) ++content_to;
    }
}

const PhrasingFeatures::Facts& PhrasingFeatures::at(std::ptrdiff_t index) const {
    static const Facts outside = [] {
        Facts facts;
        facts.word = facts.suffix2 = facts.suffix3 = facts.suffix4 = facts.prefix3 = no_word;
        facts.function = true;
        facts.after = Stop::full;
        return facts;
    }();
    if (index < 0 || index >= static_cast<std::ptrdiff_t>(facts_.size())) return outside;
    return facts_[static_cast<std::size_t>(index)];
}

void PhrasingFeatures::rows(std::size_t index, PhrasingRows& out) const {
    const auto i = static_cast<std::ptrdiff_t>(index);
    const Facts& w = at(i);
    const Facts& l1 = at(i - 1);
    const Facts& l2 = at(i - 2);
    const Facts& r1 = at(i + 1);
    const Facts& r2 = at(i + 2);
    const Facts& r3 = at(i + 3);
    const auto after = static_cast<std::uint32_t>(w.after);
    const auto before = static_cast<std::uint32_t>(l1.after);
    const auto next = static_cast<std::uint32_t>(r1.after);
    std::uint32_t pattern = 0;
    for (std::ptrdiff_t k = -3; k <= 3; ++k)
        pattern = pattern * 2 + (at(i + k).function ? 1U : 0U);
    const std::uint32_t near = (pattern >> 1U) & 31U;
    const std::uint32_t nearest = (pattern >> 2U) & 7U;
    const auto shape =
        static_cast<std::uint32_t>((w.capital ? 1 : 0) | (w.from_start == 0 ? 2 : 0));
    const std::uint32_t given = w.given ? 1 : 0;
    const std::uint32_t length = std::min<std::uint32_t>(w.length, 12);

    Picker pick(out);
    pick.add(1);
    pick.add(w.word);
    pick.add(l1.word);
    pick.add(r1.word);
    pick.add(l2.word);
    pick.add(r2.word);
    pick.add(l1.word, w.word);
    pick.add(w.word, r1.word);
    pick.add(l2.word, l1.word);
    pick.add(r1.word, r2.word);
    pick.add(w.suffix2);
    pick.add(w.suffix3);
    pick.add(w.suffix4);
    pick.add(w.prefix3);
    pick.add(l1.suffix3);
    pick.add(r1.suffix3);
    pick.add(l1.suffix2, w.suffix2);
    pick.add(w.suffix3, r1.suffix3);
    pick.add(shape, w.function);
    pick.add(shape, w.word);
    pick.add(after, before);
    pick.add(after, w.word);
    pick.add(before, w.word);
    pick.add(after, r1.word);
    pick.add(after, next, before);
    pick.add(bucket(w.from_stop), w.function);
    pick.add(bucket(w.to_stop), w.function);
    pick.add(coarse(w.from_stop), coarse(w.to_stop), near);
    pick.add(bucket(w.from_start));
    pick.add(bucket(w.to_end));
    pick.add(bucket(w.from_stop), bucket(w.to_stop));
    pick.add(w.syllables, w.function);
    pick.add(w.syllables, r1.syllables, l1.syllables);
    pick.add(w.syllables, after, nearest);
    pick.add(pattern);
    pick.add(near, after, before);
    pick.add(nearest, w.word);
    pick.add(bucket(w.content_since), w.function);
    pick.add(bucket(w.content_to), w.function);
    pick.add(std::min<std::uint32_t>(w.content_since, 5), std::min<std::uint32_t>(w.content_to, 5),
             w.function, after);
    pick.add(r1.opener ? 1 : 0, bucket(w.from_stop), w.function);
    pick.add(r1.word, coarse(w.from_stop));
    pick.add(r1.word, coarse(w.to_stop));
    pick.add(w.word, coarse(w.from_stop));
    pick.add(w.word, coarse(w.to_stop));
    pick.add(given, w.function, w.syllables);
    pick.add(given, w.word);
    pick.add(length, w.function, after);
    pick.add(w.function_since, w.function, r1.function);
    pick.add(w.function_since, r1.word);
    pick.add(w.suffix3, r1.function, after);
    pick.add(w.suffix2, r1.word);
    pick.add(l1.word, w.suffix2);
    pick.add(l1.word, nearest, w.syllables);
    pick.add(r1.suffix2, r2.suffix2, near);
    pick.add(r1.function, r2.function, r3.function, w.suffix2);
    pick.add(w.syllables_since / 2U, w.function);
    pick.add(w.syllables_to / 2U, w.function, r1.function);
    pick.add(l1.word, r1.word);
    pick.add(l1.suffix3, w.word);
    pick.add(w.word, r1.suffix3);
    pick.add(l1.word, w.word, r1.word);
    pick.add(w.capital, l1.capital, r1.capital, nearest);
    pick.add(bucket(w.to_end), coarse(w.from_start), w.function);
}

} // namespace say
