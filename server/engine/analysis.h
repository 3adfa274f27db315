// A script analysed: what every feature, the server and the command line start from.
// Immutable and shared; the same text and options give the same answer on any machine.
#pragma once

#include "base/cancel.h"
#include "engine/options.h"
#include "rules/rule.h"
#include "text/text.h"

#include <atomic>
#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

namespace say {

// What edits would do, tried on the blocks that they touch. Those of the header touch none.
struct Outcome {
    bool keeps_words = true; // what is spoken stays as it is
    std::ptrdiff_t torn =
        0; // so many more signs open what nothing closes, or close what is not open
};

// What came of edits that were tried, by all that it depends on. Any thread may ask.
class Tried {
public:
    std::optional<Outcome> find(std::uint64_t key) const;
    void keep(std::uint64_t key, Outcome outcome);

private:
    static constexpr std::size_t most = 64; // more than one thought has fixes
    mutable std::mutex mutex_;
    std::vector<std::pair<std::uint64_t, Outcome>> outcomes_;
};

// A thought with all that is known of it by itself. Offsets are relative to its block's start, so
// that a line inserted above moves it without touching it.
struct Thought {
    BlockKind kind = BlockKind::paragraph;
    std::string source;          // the block's bytes
    Span content;                // in `source`
    std::uint64_t key = 0;       // of all that the result depends on
    std::uint64_t words_key = 0; // of the spoken words alone: takes and carried marks follow it
    Written written;
    Reading reading;
    struct Draft {
        const Rule* rule = nullptr;
        FindingDraft draft;
        Severity severity = Severity::warning;
    };
    std::vector<Draft> drafts;  // silenced ones and those of a later stage left out
    std::uint32_t concerns = 0; // as in ThoughtSummary
    // Whether a reader would likely mark anything in it. Looked for when first asked, as it takes
    // longer than all the rest; every thread finds the same.
    enum class Likely : std::uint8_t { unasked, no, yes };
    mutable std::atomic<Likely> likely_marks{Likely::unasked};
    mutable Tried tried; // what came of its fixes

    bool has_words() const { return !reading.said.empty(); }
    // Words, or silence of its own: not a lone direction without a duration.
    bool takes_time() const { return has_words() || reading.timing.expected > Seconds{0}; }
};

// How rules and fixes see a thought; it and the options must outlive the view.
ThoughtView view_of(const Thought& thought, const Options& options);

struct Placed {
    Block block;                      // absolute
    Seconds at{0};                    // when it begins, from the top
    Seconds gap{0};                   // the gap behind it
    int section = -1;                 // index into Script::sections
    int occurrence = 0;               // how many thoughts with the same words stand above it
    int voice = 0;                    // whose it is: index into Script::voices
    std::string_view speaker;         // in force; points into the text
    std::uint64_t words_key = 0;      // the thought's
    const Thought* thought = nullptr; // kept by Script::kept

    Span span() const { return block.span; }
    std::string id() const; // words_key and occurrence: "9f3c51d2-0"
};

struct Section {
    std::string name;
    int level = 1;
    int parent = -1;
    Span heading; // absolute
    Span span;    // to the next heading of its level or above, or the text's end
    std::optional<Target> target;
    Span target_span;
    Timing timing; // with the sections it holds and the gaps inside it
    Seconds at{0};
    int thoughts = 0;
    int words = 0;   // written, those of the sections it holds too
    Seconds held{0}; // of the time, what directions and timed pauses hold
};

// Keeps a script's thoughts alive, in order. In chunks, so that the next version of the script
// shares all but the one that changed.
using KeptChunk = std::vector<std::shared_ptr<const Thought>>;
using KeptThoughts = std::vector<std::shared_ptr<const KeptChunk>>;

struct Script {
    Header header;
    std::vector<Block> blocks;                         // all of them
    std::vector<Placed> thoughts;                      // in order; lone directions and silences too
    std::vector<ThoughtSummary> summaries;             // one a thought
    std::vector<std::vector<std::uint32_t>> concerned; // for each script rule, which thoughts
    std::vector<std::uint64_t> voices; // what thoughts of each voice depend on beside their text
    KeptThoughts kept;
    std::vector<Section> sections;
    Timing timing;
    Seconds held{0}; // of the time, what directions and timed pauses hold
    int words = 0;   // written
    int spoken_words = 0;

    const Placed* thought_at(Offset at) const; // null between thoughts
    const Section* section_at(Offset at) const;
};

// Points into its analysis, which must outlive it.
struct Finding {
    const Rule* rule = nullptr;
    Severity severity = Severity::warning;
    Span span;                           // absolute
    const FindingDraft* draft = nullptr; // of a thought, or of Analysis::script_drafts
    int thought = -1;                    // whose draft it is; -1: the script's

    std::string_view message() const { return draft->message; }
    const std::vector<std::string>& readings() const { return draft->readings; }
};

struct Analysis {
    Document document;
    Options options; // as in force: header and reader applied
    Options given;   // what they were made of: another version of the text starts from these
    Script script;
    std::vector<Finding> findings; // by place
    std::deque<FindingDraft> script_drafts;
};

// Kept with the thought in which the edits begin, as editors ask at every key.
Outcome outcome_of(const Analysis& analysis, std::vector<TextEdit> edits);

// A finding's fixes, absolute; "leave this one" is the last. Made when somebody asks, and
// tried out.
std::vector<Fix> fixes_of(const Analysis& analysis, const Finding& finding);
// True if one of them is meant to keep every word and is what most writers would choose.
bool has_sure_fix(const Finding& finding);
// True for the last of the fixes: it changes nothing that is said or shown.
bool leaves_as_is(const Fix& fix);

// What is known of a script from its last version on: the analysis, from which the next one starts,
// and thoughts that were made lately, by their key. Bytes are compared on a hit.
class Memo {
public:
    std::shared_ptr<const Thought> find(std::uint64_t key, std::string_view source);
    void keep(std::shared_ptr<const Thought> thought);

    const std::shared_ptr<const Analysis>& last() const { return last_; }
    void finish(std::shared_ptr<const Analysis> analysis); // it becomes the last
    void count_reused(std::size_t thoughts) { hits_ += thoughts; }

    std::size_t hits() const { return hits_; }
    std::size_t misses() const { return misses_; }

private:
    using Table = std::unordered_map<std::uint64_t, std::shared_ptr<const Thought>>;
    std::shared_ptr<const Analysis> last_;
    Table young_;
    Table old_;
    std::size_t hits_ = 0;
    std::size_t misses_ = 0;
};

// Null only if `cancel` tripped: finished thoughts then stay in the memo.
std::shared_ptr<const Analysis> analyse(const Document& document, const Options& options,
                                        Parser& parser, Memo& memo, const Cancel& cancel);

// One thought by itself, for `explain --lines`.
std::shared_ptr<const Thought> analyse_line(std::string_view line, bool plain,
                                            const Options& options, Parser& parser);

} // namespace say
