// Joins of neighbouring words: what clashes there and how it is settled.
#include "rules/join.h"

#include "rules/clause.h"
#include "rules/plain_words.h"
#include "rules/split.h"
#include "rules/wording.h"
#include "speech/lexicon.h"
#include "speech/sound_letters.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>

namespace say::rules {
namespace {

// No source: our choice, made on ordinary talk.
constexpr std::size_t sibilant_reach = 4; // sounds on each side of the join
constexpr std::size_t mixed_sibilants = 3;
constexpr std::size_t like_sibilants = 4;
constexpr int many_consonants = 5;
constexpr int many_obstruents = 4;

// Of one kind with s and z but for the place of the tongue: these are said for each other.
bool is_hushing(Sound sound) {
    return sound == Sound::SH || sound == Sound::ZH;
}

bool is_hissing(Sound sound) {
    return sound == Sound::S || sound == Sound::Z;
}

// Stops, fricatives and affricates: the breath is held or squeezed.
bool is_obstruent(const Phone& phone) {
    switch (phone.sound) {
    case Sound::L:
    case Sound::M:
    case Sound::N:
    case Sound::NG:
    case Sound::R:
    case Sound::W:
    case Sound::Y:
    case Sound::HH: return false;
    default: return !is_vowel(phone.sound);
    }
}

bool is_vowel_phone(const Phone& phone) {
    return is_vowel(phone.sound);
}

bool is_paused(const ThoughtView& view, int index) {
    if (is_parted_behind(view, index - 1)) return true;
    return !pauses_behind(view.reading, index - 1).empty();
}

bool is_slowed(const ThoughtView& view, int index) {
    const Mark* slow = mark_over(view, index, MarkKind::slow);
    return slow && slow->first < index;
}

// The twister's own finding speaks of these words already.
bool is_twister(const ThoughtView& view, int index) {
    const Twister& twister = view.reading.twister;
    return twister.score > view.options.twister_threshold && twister.first < index &&
           index < twister.last;
}

// "next to", "asked the": a small word is leant on the one before, and its join is worn smooth.
bool is_small(const ThoughtView& view, int index) {
    const Said& said = said_at(view, index);
    return !said.spoken.empty() && is_function_word(said.spoken.front().text);
}

bool may_open_after(std::string_view source, std::uint32_t at) {
    return at == 0 || ascii::is_blank(source[at - 1]);
}

bool may_close_before(std::string_view source, std::uint32_t at) {
    return at >= source.size() || ascii::is_blank(source[at]) ||
           std::string_view{".,;:!?"}.find(source[at]) != std::string_view::npos;
}

void add_pause(const ThoughtView& view, int index, std::string_view mark, std::string_view title,
               std::vector<Fix>& fixes) {
    auto edit = pause_before(view, index, mark);
    if (!edit) return;
    fixes.push_back({.title = fmt::format("{} before {}", title, quoted(view.word(index))),
                     .edits = {std::move(*edit)}});
}

// Another word in the place of `word`, one of the two that meet before word `index`.
void add_swap(const ThoughtView& view, int index, int word, JoinTest test,
              std::vector<Fix>& fixes) {
    auto fix = swap_fix(view, word, [&](const PlainMatch& match, std::string_view swap) {
        if (match.last != word + 1) return true; // more words than the one that meets
        const Pronunciation swapped = pronounce(swap);
        Join join = join_before(view, index);
        (word == index ? join.right : join.left) = swapped.phones;
        return test(join);
    });
    if (fix) fixes.push_back(std::move(*fix));
}

} // namespace

bool is_open(const ThoughtView& view, int index) {
    return said_at(view, index - 1).known != Known::guess &&
           said_at(view, index).known != Known::guess && !is_small(view, index - 1) &&
           !is_small(view, index) && !is_paused(view, index) && !is_slowed(view, index) &&
           !is_twister(view, index);
}

bool is_sibilant(Sound sound) {
    return is_hissing(sound) || is_hushing(sound) || sound == Sound::CH || sound == Sound::JH;
}

std::vector<Sound> sibilants_near(const Join& join) {
    std::vector<Sound> found;
    const auto add = [&found](std::span<const Phone> phones) {
        for (const Phone& phone : phones)
            if (is_sibilant(phone.sound)) found.push_back(phone.sound);
    };
    add(join.left.last(std::min(sibilant_reach, join.left.size())));
    add(join.right.first(std::min(sibilant_reach, join.right.size())));
    return found;
}

Cluster cluster_of(const Join& join) {
    const auto last_vowel = std::find_if(join.left.rbegin(), join.left.rend(), is_vowel_phone);
    const auto next_vowel = std::find_if(join.right.begin(), join.right.end(), is_vowel_phone);
    Cluster cluster{
        .left = join.left.last(static_cast<std::size_t>(last_vowel - join.left.rbegin())),
        .right = join.right.first(static_cast<std::size_t>(next_vowel - join.right.begin()))};
    // Behind its vowel an r colours it, and in half of English it is not said at all.
    if (!cluster.left.empty() && cluster.left.front().sound == Sound::R) {
        cluster.left = cluster.left.subspan(1);
    }
    // "thousand squares", "next came": a t or d in the middle is dropped without harm (Guy 1980, on
    // the deletion of final stops; from memory).
    const bool drops =
        cluster.left.size() > 1 && !cluster.right.empty() &&
        (cluster.left.back().sound == Sound::T || cluster.left.back().sound == Sound::D);
    if (drops) cluster.left = cluster.left.first(cluster.left.size() - 1);
    cluster.count = static_cast<int>(cluster.left.size() + cluster.right.size());
    const bool held = !cluster.left.empty() && !cluster.right.empty() &&
                      cluster.left.back().sound == cluster.right.front().sound;
    if (held) --cluster.count;
    return cluster;
}

bool piles_sibilants(const Join& join) {
    if (join.left.empty() || join.right.empty()) return false;
    if (!is_sibilant(join.right.front().sound)) return false;
    // Up to one consonant may stand between: "sixth sheep".
    const std::size_t size = join.left.size();
    const Sound last = join.left.back().sound;
    const bool touches = is_sibilant(last) ||
                         (size > 1 && !is_vowel(last) && is_sibilant(join.left[size - 2].sound));
    if (!touches) return false;
    const std::vector<Sound> near = sibilants_near(join);
    const bool mixed = std::any_of(near.begin(), near.end(), is_hushing) &&
                       std::any_of(near.begin(), near.end(), is_hissing);
    return near.size() >= (mixed ? mixed_sibilants : like_sibilants);
}

bool piles_consonants(const Join& join) {
    if (join.left.empty() || join.right.empty()) return false;
    if (is_vowel(join.left.back().sound) || is_vowel(join.right.front().sound)) return false;
    const Cluster cluster = cluster_of(join);
    if (cluster.left.empty()) return false;
    if (cluster.count >= many_consonants) return true;
    const auto all_hard = [](std::span<const Phone> phones) {
        return std::all_of(phones.begin(), phones.end(), is_obstruent);
    };
    // "first step" is easy: three of them belong to one word.
    const bool lopsided = std::max(cluster.left.size(), cluster.right.size()) >= 3;
    return lopsided && cluster.count >= many_obstruents && all_hard(cluster.left) &&
           all_hard(cluster.right);
}

Join join_before(const ThoughtView& view, int index) {
    const auto& left = said_at(view, index - 1).phones;
    const auto& right = said_at(view, index).phones;
    if (left.empty() || right.empty()) return {};
    return {left.back(), right.front()};
}

std::vector<int> open_joins(const ThoughtView& view, JoinTest test) {
    std::vector<int> found;
    const int count = static_cast<int>(view.reading.said.size());
    for (int i = 1; i < count; ++i) {
        if (!test(join_before(view, i)) || !is_open(view, i)) continue;
        found.push_back(i);
        ++i;
    }
    return found;
}

std::vector<Fix> join_fixes(const ThoughtView& view, int index, JoinTest test) {
    std::vector<Fix> fixes;
    add_pause(view, index, "(.)", "Leave a moment", fixes);
    add_pause(view, index, "/", "Breathe", fixes);
    if (!fixes.empty()) fixes.front().preferred = true;
    if (auto fix = slow_fix(view, index - 1, index)) fixes.push_back(std::move(*fix));
    add_swap(view, index, index - 1, test, fixes);
    add_swap(view, index, index, test, fixes);
    return fixes;
}

std::optional<Fix> slow_fix(const ThoughtView& view, int first, int last) {
    const Span span = words_span(view, first, last);
    for (const Mark& mark : view.written.marks) {
        const bool around = !mark.open.empty() && mark.open.end <= span.begin &&
                            (mark.close.empty() || span.end <= mark.close.begin);
        const bool apart = mark.span.end <= span.begin || span.end <= mark.span.begin;
        const bool paced = mark.kind == MarkKind::slow || mark.kind == MarkKind::quick;
        if (!apart && (!around || paced)) return std::nullopt;
    }
    if (!may_open_after(view.source, span.begin.value) ||
        !may_close_before(view.source, span.end.value)) {
        return std::nullopt;
    }
    return Fix{.title = "Mark these words slow",
               .edits = {{{span.begin, span.begin}, "<"}, {{span.end, span.end}, ">"}}};
}

std::string spelled(std::span<const Phone> phones) {
    std::string text;
    for (const Phone& phone : phones) {
        if (!text.empty()) text += '-';
        text += letters_of(phone.sound);
    }
    return text;
}

Span words_span(const ThoughtView& view, int first, int last) {
    const auto& words = view.written.words;
    return {words[static_cast<std::size_t>(first)].source.begin,
            words[static_cast<std::size_t>(last)].source.end};
}

} // namespace say::rules
