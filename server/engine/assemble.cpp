// Thoughts in a row: what is known of them, whose they are, when each begins.
#include "engine/assemble.h"

#include "base/hash.h"

#include <algorithm>
#include <bit>
#include <unordered_map>

namespace say {
namespace {

// --- what keeps them alive ----------------------------------------------------------------------

constexpr std::size_t chunk_size = 128;

std::shared_ptr<const Thought> kept_at(const KeptThoughts& kept, std::size_t index) {
    for (const auto& chunk : kept) {
        if (index < chunk->size()) return (*chunk)[index];
        index -= chunk->size();
    }
    return nullptr;
}

void add_chunks(KeptThoughts& kept, const KeptChunk& thoughts) {
    for (std::size_t at = 0; at < thoughts.size(); at += chunk_size) {
        const auto first = thoughts.begin() + static_cast<std::ptrdiff_t>(at);
        const std::size_t size = std::min(chunk_size, thoughts.size() - at);
        kept.push_back(
            std::make_shared<const KeptChunk>(first, first + static_cast<std::ptrdiff_t>(size)));
    }
}

// Those of `old` with [first, last) replaced. Chunks that lie wholly outside are shared.
KeptThoughts with_replaced(const KeptThoughts& old, std::size_t first, std::size_t last,
                           const KeptChunk& made) {
    KeptThoughts kept;
    kept.reserve(old.size() + made.size() / chunk_size + 1);
    KeptChunk torn; // of the chunks that the replaced ones cut, with what comes in their place
    bool placed = false;
    std::size_t begin = 0;
    const auto place = [&] {
        torn.insert(torn.end(), made.begin(), made.end());
        placed = true;
    };
    const auto settle = [&] {
        add_chunks(kept, torn);
        torn.clear();
    };
    for (const auto& chunk : old) {
        const std::size_t end = begin + chunk->size();
        if (end <= first || begin >= last) {
            if (begin >= last && !placed) place();
            if (begin >= last) settle();
            kept.push_back(chunk);
        } else {
            for (std::size_t i = begin; i < end; ++i) {
                if (i >= first && i < last) continue;
                if (i >= last && !placed) place();
                torn.push_back((*chunk)[i - begin]);
            }
        }
        begin = end;
    }
    if (!placed) place();
    settle();
    return kept;
}

// --- the script ---------------------------------------------------------------------------------

class Assembler {
public:
    Assembler(std::string_view text, const Options& options, const Past& past, Script& script)
        : text_(text), options_(options), past_(past), script_(script) {}

    bool assemble(std::span<const VoiceInForce> voices, Memo& memo, const MakeThought& make,
                  const Cancel& cancel) {
        voices_ = voices;
        script_.thoughts.reserve(script_.blocks.size());
        script_.summaries.reserve(script_.blocks.size());
        script_.concerned.resize(script_rules().size());
        const auto again = [&](const Block& block) {
            place_again(block);
            return true;
        };
        const auto anew = [&](const Block& block) {
            if (cancel.tripped()) return false;
            place(block, memo, make);
            return true;
        };
        const std::size_t tail = script_.blocks.size() - past_.after;
        walk(0, past_.before, 0, again);
        begin_middle();
        if (!walk(past_.before, tail, {}, anew)) return false;
        if (same_voice_behind()) {
            const std::size_t made = script_.thoughts.size();
            keep(old_tail_);
            next_old_ = old_tail_;
            walk(tail, script_.blocks.size(), old_sections_above_tail(), again);
            number_occurrences(made);
            if (past_.script != nullptr) {
                standing_ = {first_made_, past_.script->thoughts.size() - old_tail_};
            }
        } else {
            old_tail_ = past_.script->thoughts.size();
            looked_up_ = false;
            if (!walk(tail, script_.blocks.size(), {}, anew)) return false;
            keep(old_tail_);
            number_occurrences(script_.thoughts.size());
        }
        close_sections(1, Offset{static_cast<std::uint32_t>(text_.size())});
        memo.count_reused(script_.thoughts.size() - made_.size());
        lay_times();
        return true;
    }

    Again again() const { return standing_; }

private:
    // The speaker in force: an index into readers_, 0 before anybody is named.
    void hear_speaker(const Block& block) {
        const std::string_view name = slice(text_, block.speaker);
        if (name.empty()) return;
        speaker_name_ = name;
        speaker_ = 0;
        const std::vector<Speaker>& speakers = script_.header.speakers;
        for (std::size_t i = 0; i < speakers.size(); ++i) {
            // Of names joined by AND the first sets the pace.
            const bool longer =
                speaker_ != 0 && speakers[speaker_ - 1].name.size() >= speakers[i].name.size();
            if (name.starts_with(speakers[i].name) && !longer) speaker_ = i + 1;
        }
    }

    // `old` is how many sections of the old script stand above: their headings are the same, and
    // read already.
    template <class Place>
    bool walk(std::size_t first, std::size_t last, std::optional<std::size_t> old,
              Place place_block) {
        for (std::size_t i = first; i < last; ++i) {
            const Block& block = script_.blocks[i];
            switch (block.kind) {
            case BlockKind::heading:
                open_section(block, old ? &past_.script->sections[(*old)++] : nullptr);
                break;
            case BlockKind::paragraph:
            case BlockKind::item:
                if (!place_block(block)) return false;
                break;
            case BlockKind::note:
            case BlockKind::divider: break;
            }
        }
        return true;
    }

    // From here on thoughts are new or elsewhere, up to those that stood behind the change.
    void begin_middle() {
        first_made_ = script_.thoughts.size();
        if (past_.script == nullptr) return;
        const std::vector<Placed>& old = past_.script->thoughts;
        const std::vector<Block>& blocks = past_.script->blocks;
        old_tail_ = old.size();
        if (past_.after == 0) return;
        const Offset tail = blocks[blocks.size() - past_.after].span.begin;
        const auto found = std::partition_point(old.begin(), old.end(), [&](const Placed& each) {
            return each.block.span.begin < tail;
        });
        old_tail_ = static_cast<std::size_t>(found - old.begin());
    }

    // Whoever spoke last above them in the old script does so still.
    bool same_voice_behind() const {
        if (past_.script == nullptr || past_.after == 0) return true;
        const int before = old_tail_ == 0 ? 0 : past_.script->thoughts[old_tail_ - 1].voice;
        return before == static_cast<int>(speaker_);
    }

    // The thought that stood in the old script in this place of the row.
    void place_again(const Block& block) {
        hear_speaker(block);
        Placed placed = past_.script->thoughts[next_old_];
        placed.block = block;
        add(placed, past_.script->summaries[next_old_]);
        ++next_old_;
    }

    void place(const Block& block, Memo& memo, const MakeThought& make) {
        hear_speaker(block);
        const VoiceInForce& voice = voices_[speaker_];
        const std::uint64_t key = thought_key(text_, block, voice.print);
        auto thought = find_old(key, slice(text_, block.span));
        if (!thought) thought = memo.find(key, slice(text_, block.span));
        if (!thought) {
            auto fresh = make(block, voice.voice);
            fresh->key = key;
            thought = std::move(fresh);
            memo.keep(thought);
        }
        Placed placed;
        placed.block = block;
        placed.voice = static_cast<int>(speaker_);
        placed.words_key = thought->words_key;
        placed.thought = thought.get();
        add(placed, summary_of(*thought));
        made_.push_back(std::move(thought));
    }

    void add(Placed& placed, ThoughtSummary summary) {
        placed.section = open_.empty() ? -1 : open_.back();
        placed.speaker = speaker_name_;
        placed.gap = Seconds{0};
        summary.begin = placed.block.span.begin;
        summary.section = placed.section;
        for (std::uint32_t bits = summary.concerns; bits != 0; bits &= bits - 1) {
            script_.concerned[static_cast<std::size_t>(std::countr_zero(bits))].push_back(
                static_cast<std::uint32_t>(script_.summaries.size()));
        }
        script_.thoughts.push_back(placed);
        script_.summaries.push_back(summary);
    }

    static ThoughtSummary summary_of(const Thought& thought) {
        const Reading& reading = thought.reading;
        return {.begin = {},
                .source = thought.source,
                .content = thought.content,
                .kind = thought.kind,
                .section = -1,
                .written = &thought.written,
                .reading = &reading,
                .speech = reading.timing.speech,
                .pause = reading.timing.pause,
                .held = reading.held,
                .expected = reading.timing.expected,
                .words = static_cast<int>(thought.written.words.size()),
                .spoken_words = reading.spoken_words,
                .has_words = thought.has_words(),
                .concerns = thought.concerns};
    }

    // A paragraph that only moved, or one of many that were changed at once.
    std::shared_ptr<const Thought> find_old(std::uint64_t key, std::string_view source) {
        if (past_.script == nullptr) return nullptr;
        const std::vector<Placed>& old = past_.script->thoughts;
        if (!looked_up_) {
            for (std::size_t i = first_made_; i < std::max(old_tail_, first_made_); ++i)
                old_by_key_.emplace(old[i].thought->key, i);
            looked_up_ = true;
        }
        const auto found = old_by_key_.find(key);
        if (found == old_by_key_.end() || old[found->second].thought->source != source)
            return nullptr;
        return kept_at(past_.script->kept, found->second);
    }

    void keep(std::size_t old_end) {
        if (past_.script == nullptr) {
            add_chunks(script_.kept, made_);
        } else {
            script_.kept = with_replaced(past_.script->kept, first_made_, old_end, made_);
        }
    }

    std::size_t old_sections_above_tail() const {
        if (past_.script == nullptr) return 0;
        const std::vector<Block>& blocks = past_.script->blocks;
        const std::size_t tail = blocks.size() - past_.after;
        if (tail == blocks.size()) return past_.script->sections.size();
        const std::vector<Section>& sections = past_.script->sections;
        const auto found =
            std::partition_point(sections.begin(), sections.end(), [&](const Section& section) {
                return section.heading.begin < blocks[tail].span.begin;
            });
        return static_cast<std::size_t>(found - sections.begin());
    }

    // `old`: the section of the same heading in the old script, if it stands there.
    void open_section(const Block& block, const Section* old) {
        close_sections(block.level, block.span.begin);
        Section section;
        if (old != nullptr) {
            section.name = old->name;
            section.target = old->target;
            if (old->target)
                section.target_span =
                    old->target_span + (block.span.begin.value - old->heading.begin.value);
        } else {
            const HeadingText heading = split_heading(slice(text_, block.content));
            section.name = heading.name;
            section.target = heading.target;
            if (heading.target)
                section.target_span = heading.target_span + block.content.begin.value;
        }
        section.level = block.level;
        section.parent = open_.empty() ? -1 : open_.back();
        section.heading = block.span;
        section.span = block.span;
        open_.push_back(static_cast<int>(script_.sections.size()));
        script_.sections.push_back(std::move(section));
    }

    void close_sections(int level, Offset end) {
        while (!open_.empty() &&
               script_.sections[static_cast<std::size_t>(open_.back())].level >= level) {
            script_.sections[static_cast<std::size_t>(open_.back())].span.end = end;
            open_.pop_back();
        }
    }

    // The next thought with words behind one of them; the row's size if there is none. Asked in
    // order, so that the way is gone once.
    std::size_t next_with_words(std::size_t index) {
        if (next_with_words_ > index) return next_with_words_;
        next_with_words_ = index + 1;
        while (next_with_words_ < script_.summaries.size() &&
               !script_.summaries[next_with_words_].has_words)
            ++next_with_words_;
        return next_with_words_;
    }

    // A gap stands between two thoughts with words; silences and lone directions have none of their
    // own.
    Seconds gap_behind(std::size_t index, std::size_t next) const {
        const std::vector<ThoughtSummary>& summaries = script_.summaries;
        if (next == summaries.size() || !summaries[index].has_words) return Seconds{0};
        const bool items =
            summaries[index].kind == BlockKind::item && summaries[next].kind == BlockKind::item;
        const PauseTable& table = options_.voice.table;
        return (items ? table.item_gap : table.gap) * voice_of(script_.thoughts[index]).pauses;
    }

    void lay_times() {
        std::vector<Totals> sections(script_.sections.size());
        Totals whole;
        std::vector<bool> begun(script_.sections.size(), false);
        for (std::size_t i = 0; i < script_.thoughts.size(); ++i) {
            Placed& placed = script_.thoughts[i];
            const ThoughtSummary& summary = script_.summaries[i];
            placed.at = whole.total();
            const std::size_t next = next_with_words(i);
            placed.gap = gap_behind(i, next);
            const Offset next_begin = next == script_.summaries.size()
                                          ? Offset{UINT32_MAX}
                                          : script_.summaries[next].begin;
            const double error = voice_of(placed).pace_error.share;
            for (int s = placed.section; s >= 0;
                 s = script_.sections[static_cast<std::size_t>(s)].parent) {
                const auto index = static_cast<std::size_t>(s);
                Section& section = script_.sections[index];
                if (!begun[index]) section.at = placed.at;
                begun[index] = true;
                // The gap behind a section's last thought belongs to what holds both.
                const bool with_gap = gap_inside(next_begin, section);
                sections[index].add(summary, with_gap ? placed.gap : Seconds{0}, error);
                ++section.thoughts;
                section.words += summary.words;
            }
            whole.add(summary, placed.gap, error);
            script_.words += summary.words;
            script_.spoken_words += summary.spoken_words;
        }
        for (std::size_t i = 0; i < sections.size(); ++i) {
            script_.sections[i].timing = sections[i].timing();
            script_.sections[i].held = sections[i].held;
            if (!begun[i]) script_.sections[i].at = at_of_empty(script_.sections[i]);
        }
        script_.timing = whole.timing();
        script_.held = whole.held;
    }

    struct Totals {
        Seconds speech{0};
        Seconds pause{0};
        Seconds held{0};
        Seconds off{0}; // what the readers' paces may be off, each by its own share
        Seconds total() const { return speech + pause; }
        void add(const ThoughtSummary& thought, Seconds gap, double error) {
            speech += thought.speech;
            pause += thought.pause;
            pause += gap;
            held += thought.held;
            off += error * (thought.expected - thought.held + gap);
        }
        Timing timing() const {
            const Seconds uncertain = total() - held;
            const PaceError pace{uncertain > Seconds{0} ? off / uncertain : 0.0};
            return with_range(speech, pause, held, pace);
        }
    };

    // True if the next thought with words, whose beginning is `next`, stands in the section too.
    static bool gap_inside(Offset next, const Section& section) { return next < section.span.end; }

    Seconds at_of_empty(const Section& section) const {
        const auto next = std::partition_point(
            script_.thoughts.begin(), script_.thoughts.end(),
            [&](const Placed& placed) { return placed.block.span.begin < section.heading.begin; });
        return next == script_.thoughts.end() ? Seconds{0} : next->at;
    }

    // How often the same words stand above. Thoughts in [made, end) stood in the old script: their
    // numbers change only where words were put in or taken out that are theirs too.
    void number_occurrences(std::size_t made) {
        std::vector<Placed>& thoughts = script_.thoughts;
        if (past_.script == nullptr || made - first_made_ > most_counted ||
            old_tail_ - std::min(old_tail_, first_made_) > most_counted) {
            std::unordered_map<std::uint64_t, int> seen;
            seen.reserve(thoughts.size());
            for (Placed& placed : thoughts)
                placed.occurrence = seen[placed.words_key]++;
            return;
        }
        for (std::size_t i = first_made_; i < made; ++i)
            thoughts[i].occurrence = count_above(i);
        // Usually one goes and one comes.
        for (std::size_t i = first_made_; i < std::max(made, old_tail_); ++i) {
            const bool came = i < made;
            const bool went = i < old_tail_;
            const std::uint64_t now = came ? thoughts[i].words_key : 0;
            const std::uint64_t before = went ? past_.script->thoughts[i].words_key : 0;
            if (came && went && now == before) continue;
            if (came) renumber(now, 1, made);
            if (went) renumber(before, -1, made);
        }
    }

    int count_above(std::size_t index) const {
        const auto first = script_.thoughts.begin();
        const auto here = first + static_cast<std::ptrdiff_t>(index);
        return static_cast<int>(std::count_if(
            first, here, [&](const Placed& each) { return each.words_key == here->words_key; }));
    }

    void renumber(std::uint64_t words_key, int by, std::size_t from) {
        for (std::size_t i = from; i < script_.thoughts.size(); ++i) {
            if (script_.thoughts[i].words_key == words_key) script_.thoughts[i].occurrence += by;
        }
    }

    const Voice& voice_of(const Placed& placed) const {
        return voices_[static_cast<std::size_t>(placed.voice)].voice;
    }

    // More thoughts changed at once than this: all are counted anew.
    static constexpr std::size_t most_counted = 16;

    std::string_view text_;
    const Options& options_;
    const Past past_;
    Script& script_;
    std::span<const VoiceInForce> voices_;
    std::vector<int> open_; // sections that are open, outer first
    std::size_t speaker_ = 0;
    std::string_view speaker_name_;

    KeptChunk made_;             // the thoughts of the middle, in order
    std::size_t first_made_ = 0; // where they begin, in the new row and in the old
    std::size_t old_tail_ = 0;   // where what stood behind the change begins in the old row
    std::size_t next_old_ = 0;   // the next to be placed again
    Again standing_;
    bool looked_up_ = false;
    std::size_t next_with_words_ = 0;
    std::unordered_map<std::uint64_t, std::size_t> old_by_key_; // of the old middle
};

} // namespace

std::uint64_t thought_key(std::string_view text, const Block& block, std::uint64_t print) {
    return Hash{}
        .add(slice(text, block.span))
        .add(slice(text, block.notes))
        .add(static_cast<std::uint64_t>(block.kind))
        .add(static_cast<std::uint64_t>(block.content.begin.value - block.span.begin.value))
        .add(print)
        .value();
}

std::optional<Again> assemble(std::string_view text, const Options& options,
                              std::span<const VoiceInForce> voices, const Past& past,
                              Script& script, Memo& memo, const MakeThought& make,
                              const Cancel& cancel) {
    Assembler assembler(text, options, past, script);
    if (!assembler.assemble(voices, memo, make, cancel)) return std::nullopt;
    return assembler.again();
}

} // namespace say
