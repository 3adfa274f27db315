// One version of a script becomes an analysis: cut, look up, read what is new, lay the times, ask
// the rules.
#include "engine/analysis.h"

#include "base/hash.h"
#include "rules/header_lines.h"
#include "speech/settle.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstring>

namespace say {
namespace {

// Above this a script is kept but not analysed: ten days of talk.
constexpr std::size_t text_cap = std::size_t{64} * 1024 * 1024;

// --- who reads, and how -------------------------------------------------------------------------

Language language_of(std::string_view tag) {
    const std::string lower = unicode::to_lower(tag);
    const bool british =
        lower == "en-gb" || lower == "en-ie" || lower == "en-au" || lower == "en-nz";
    return british ? Language::en_gb : Language::en_us;
}

// Words a minute replace the reader's own speed; a factor comes on top of it.
bool pace_is_absolute(const Header& header, std::string_view text) {
    for (const HeaderEntry& entry : header.entries) {
        if (unicode::to_lower(slice(text, entry.key)) == "pace") {
            return slice(text, entry.value).find("wpm") != std::string_view::npos;
        }
    }
    return false;
}

// The header over the settings, a flag over the header.
Options in_force(const Options& given, const Header& header, std::string_view text) {
    Options options = given;
    if (!header.reader.empty() && !options.reader_is_flag) options.reader = header.reader;
    if (header.pace && !options.pace_is_flag) {
        options.voice.speed = *header.pace;
        options.pace_is_absolute = pace_is_absolute(header, text);
    }
    if (header.stage && !options.stage_is_flag) options.stage = *header.stage;
    if (!header.language.empty() && !options.language_is_flag) options.language = header.language;
    options.voice.language = language_of(options.language);
    return options;
}

Voice voice_of(const Options& options, const std::string& reader) {
    Voice voice = options.voice;
    const auto found = options.readers.find(reader);
    if (found == options.readers.end()) return voice;
    if (!options.pace_is_absolute) voice.speed /= found->second.speech;
    voice.pauses *= found->second.pauses;
    voice.pace_error = found->second.rests_on ? pace_error(*found->second.rests_on) : set_pace;
    return voice;
}

std::uint64_t fingerprint(const Voice& voice, const Options& options, const Header& header) {
    Hash hash;
    const auto number = [&](double value) {
        std::uint64_t bits = 0;
        std::memcpy(&bits, &value, sizeof bits);
        hash.add(bits);
    };
    number(voice.speed);
    number(voice.pauses);
    number(voice.pace_error.share);
    hash.add(static_cast<std::uint64_t>(voice.language));
    const PauseTable& table = voice.table;
    for (const Seconds pause :
         {table.pause, table.beat, table.breath, table.reset, table.micropause, table.comma,
          table.strong, table.sentence, table.stretch, table.before_heavy}) {
        number(pause.count());
    }
    for (const double rate : {table.quick, table.slow, table.stress, table.heavy})
        number(rate);
    hash.add(voice.words ? voice.words->key() : 0);

    const RuleOptions& rules = options.rules;
    number(rules.breath_limit.count());
    number(rules.one_note.count());
    number(rules.twister_threshold);
    for (const int count :
         {rules.long_sentence_words, rules.marked_sentence_words, rules.sentences_a_thought,
          rules.marked_sentences_a_thought, rules.joined_sentence_words, rules.stress_words}) {
        hash.add(static_cast<std::uint64_t>(count));
    }
    hash.add(static_cast<std::uint64_t>(options.stage));
    for (const auto& [id, level] : options.rule_levels) {
        hash.add(id).add(static_cast<std::uint64_t>(level));
    }
    for (const std::string& id : header.allow)
        hash.add(id);
    for (const Speaker& speaker : header.speakers)
        hash.add(speaker.name);
    return hash.value();
}

// --- one thought --------------------------------------------------------------------------------

void read_allow_notes(std::string_view notes, std::vector<std::string>& allow) {
    while (!notes.empty()) {
        const std::size_t end = notes.find_first_of("\r\n");
        read_allow(notes.substr(0, end), allow);
        if (end == std::string_view::npos) return;
        notes.remove_prefix(end + 1);
    }
}

std::uint64_t words_key_of(const Reading& reading) {
    Hash hash;
    for (const Said& said : reading.said) {
        for (const SpokenWord& word : said.spoken)
            hash.add(word.text);
    }
    return hash.value();
}

bool silenced(const Rule& rule, const Options& options, const std::vector<std::string>& allow) {
    if (rule.stage > options.stage) return true;
    if (std::find(allow.begin(), allow.end(), rule.id) != allow.end()) return true;
    const auto level = options.rule_levels.find(rule.id);
    return level != options.rule_levels.end() && level->second == RuleLevel::off;
}

void ask_rules(Thought& thought, const Options& options, const Header& header) {
    std::vector<std::string> allow = thought.written.allow;
    allow.insert(allow.end(), header.allow.begin(), header.allow.end());
    const ThoughtView view = view_of(thought, options);
    bool length_found = false;
    for (const Rule* rule : all_rules()) {
        if (rule->check == nullptr || silenced(*rule, options, allow)) continue;
        if (rule->family == Family::length && length_found) continue;
        for (FindingDraft& draft : rule->check(view)) {
            if (rule->family == Family::length) length_found = true;
            thought.drafts.push_back({rule, std::move(draft)});
        }
    }
}

Thought make_thought(std::string_view text, const Block& block, const Voice& voice,
                     const Options& options, const Header& header, Parser& parser) {
    Thought thought;
    thought.kind = block.kind;
    thought.source = slice(text, block.span);
    const std::uint32_t begin = block.span.begin.value;
    thought.content = make_span(block.content.begin.value - begin, block.content.end.value - begin);
    thought.written = parser.parse(text, block);
    read_allow_notes(slice(text, block.notes), thought.written.allow);
    settle(thought.written);
    thought.reading = read(thought.written, thought.source, voice);
    thought.words_key = words_key_of(thought.reading);
    ask_rules(thought, options, header);
    return thought;
}

std::uint64_t key_of(std::string_view text, const Block& block, std::uint64_t fingerprint) {
    return Hash{}
        .add(slice(text, block.span))
        .add(slice(text, block.notes))
        .add(static_cast<std::uint64_t>(block.kind))
        .add(static_cast<std::uint64_t>(block.content.begin.value - block.span.begin.value))
        .add(fingerprint)
        .value();
}

// --- the script ---------------------------------------------------------------------------------

struct TargetAtEnd {
    std::string_view name;
    std::optional<Target> target;
    Span span; // in the heading's text
};

TargetAtEnd split_heading(std::string_view heading) {
    while (!heading.empty() && (heading.back() == ' ' || heading.back() == '\t'))
        heading.remove_suffix(1);
    if (!heading.ends_with(')')) return {heading, {}, {}};
    const std::size_t open = heading.rfind('(');
    if (open == std::string_view::npos) return {heading, {}, {}};
    const auto target = parse_target(heading.substr(open + 1, heading.size() - open - 2));
    if (!target) return {heading, {}, {}};
    std::string_view name = heading.substr(0, open);
    while (!name.empty() && (name.back() == ' ' || name.back() == '\t'))
        name.remove_suffix(1);
    return {name, target, make_span(open + 1, heading.size() - 1)};
}

class Assembler {
public:
    Assembler(std::string_view text, const Options& options, Script& script)
        : text_(text), options_(options), script_(script) {}

    // Voices are made once for each speaker, not once for each thought.
    bool assemble(Parser& parser, Memo& memo, const Cancel& cancel) {
        add_voice(options_.reader);
        for (const Speaker& speaker : script_.header.speakers) {
            add_voice(speaker.reader.empty() ? options_.reader : speaker.reader);
        }
        script_.thoughts.reserve(script_.blocks.size());
        for (const Block& block : script_.blocks) {
            switch (block.kind) {
            case BlockKind::heading: open_section(block); break;
            case BlockKind::paragraph:
            case BlockKind::item:
                if (cancel.tripped()) return false;
                place(block, parser, memo);
                break;
            case BlockKind::note:
            case BlockKind::divider: break;
            }
        }
        close_sections(1, Offset{static_cast<std::uint32_t>(text_.size())});
        lay_times();
        number_occurrences();
        return true;
    }

private:
    struct Reader {
        Voice voice;
        std::uint64_t fingerprint;
    };

    void add_voice(const std::string& reader) {
        Voice voice = voice_of(options_, reader);
        const std::uint64_t print = fingerprint(voice, options_, script_.header);
        readers_.push_back({std::move(voice), print});
    }

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

    void place(const Block& block, Parser& parser, Memo& memo) {
        hear_speaker(block);
        const Reader& reader = readers_[speaker_];
        const std::uint64_t key = key_of(text_, block, reader.fingerprint);
        auto thought = memo.find(key, slice(text_, block.span));
        if (!thought) {
            auto fresh = std::make_shared<Thought>(
                make_thought(text_, block, reader.voice, options_, script_.header, parser));
            fresh->key = key;
            thought = fresh;
            memo.keep(thought);
        }
        Placed placed;
        placed.block = block;
        placed.section = open_.empty() ? -1 : open_.back();
        placed.speaker = speaker_name_;
        placed.thought = std::move(thought);
        script_.thoughts.push_back(std::move(placed));
        gaps_.push_back(reader.voice.pauses);
        pace_errors_.push_back(reader.voice.pace_error);
    }

    void open_section(const Block& block) {
        close_sections(block.level, block.span.begin);
        const TargetAtEnd heading = split_heading(slice(text_, block.content));
        Section section;
        section.name = heading.name;
        section.level = block.level;
        section.parent = open_.empty() ? -1 : open_.back();
        section.heading = block.span;
        section.span = block.span;
        section.target = heading.target;
        if (heading.target) section.target_span = heading.span + block.content.begin.value;
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

    // A gap stands between two thoughts with words; silences and lone directions have none of their
    // own.
    void lay_times() {
        std::vector<Placed>& thoughts = script_.thoughts;
        int last_with_words = -1;
        for (std::size_t i = 0; i < thoughts.size(); ++i) {
            if (!thoughts[i].thought->has_words()) continue;
            if (last_with_words >= 0) {
                Placed& before = thoughts[static_cast<std::size_t>(last_with_words)];
                const bool items = before.block.kind == BlockKind::item &&
                                   thoughts[i].block.kind == BlockKind::item;
                const PauseTable& table = options_.voice.table;
                before.gap = (items ? table.item_gap : table.gap) *
                             gaps_[static_cast<std::size_t>(last_with_words)];
            }
            last_with_words = static_cast<int>(i);
        }

        // Where the next thought with words begins, for each thought.
        std::vector<Offset> next(thoughts.size(), Offset{UINT32_MAX});
        for (std::size_t i = thoughts.size(); i-- > 1;) {
            next[i - 1] = thoughts[i].thought->has_words() ? thoughts[i].block.span.begin : next[i];
        }

        std::vector<Totals> sections(script_.sections.size());
        Totals whole;
        std::vector<bool> begun(script_.sections.size(), false);
        for (std::size_t i = 0; i < thoughts.size(); ++i) {
            Placed& placed = thoughts[i];
            placed.at = whole.total();
            const Reading& reading = placed.thought->reading;
            const double error = pace_errors_[i].share;
            const auto add = [&](Totals& totals, bool with_gap) {
                totals.speech += reading.timing.speech;
                totals.pause += reading.timing.pause;
                totals.held += reading.held;
                Seconds uncertain = reading.timing.expected - reading.held;
                if (with_gap) {
                    totals.pause += placed.gap;
                    uncertain += placed.gap;
                }
                totals.off += error * uncertain;
            };
            for (int s = placed.section; s >= 0;
                 s = script_.sections[static_cast<std::size_t>(s)].parent) {
                const auto index = static_cast<std::size_t>(s);
                Section& section = script_.sections[index];
                if (!begun[index]) section.at = placed.at;
                begun[index] = true;
                // The gap behind a section's last thought belongs to what holds both.
                add(sections[index], gap_inside(next[i], section));
                ++section.thoughts;
            }
            add(whole, true);
            script_.words += static_cast<int>(placed.thought->written.words.size());
            script_.spoken_words += reading.spoken_words;
        }
        for (std::size_t i = 0; i < sections.size(); ++i) {
            script_.sections[i].timing = sections[i].timing();
            if (!begun[i]) script_.sections[i].at = at_of_empty(script_.sections[i]);
        }
        script_.timing = whole.timing();
    }

    struct Totals {
        Seconds speech{0};
        Seconds pause{0};
        Seconds held{0};
        Seconds off{0}; // what the readers' paces may be off, each by its own share
        Seconds total() const { return speech + pause; }
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

    void number_occurrences() {
        std::unordered_map<std::uint64_t, int> seen;
        seen.reserve(script_.thoughts.size());
        for (Placed& placed : script_.thoughts)
            placed.occurrence = seen[placed.thought->words_key]++;
    }

    std::string_view text_;
    const Options& options_;
    Script& script_;
    std::vector<Reader> readers_;
    std::vector<double> gaps_;           // the pause factor of each thought's reader
    std::vector<PaceError> pace_errors_; // of each thought's reader
    std::vector<int> open_;              // sections that are open, outer first
    std::size_t speaker_ = 0;
    std::string_view speaker_name_;
};

// --- findings -----------------------------------------------------------------------------------

Severity severity_of(const Rule& rule, const FindingDraft& draft, const Options& options) {
    const auto level = options.rule_levels.find(rule.id);
    if (level != options.rule_levels.end() && level->second == RuleLevel::hint)
        return Severity::hint;
    if (level != options.rule_levels.end() && level->second == RuleLevel::warning)
        return Severity::warning;
    return draft.severity.value_or(rule.severity);
}

// "Leave this one": a note above the thought, or one more id in the note that is there already.
Fix leave_here(std::string_view text, const Rule& rule, const Placed& placed) {
    Fix fix{.title = "Leave this one", .edits = {}};
    const std::string_view notes = slice(text, placed.block.notes);
    const std::size_t at = notes.rfind("% allow:");
    if (at != std::string_view::npos) {
        std::size_t end = notes.find_first_of("\r\n", at);
        if (end == std::string_view::npos) end = notes.size();
        const std::uint32_t place =
            placed.block.notes.begin.value + static_cast<std::uint32_t>(end);
        fix.edits.push_back({make_span(place, place), fmt::format(", {}", rule.id)});
        return fix;
    }
    const Offset begin = placed.block.span.begin;
    fix.edits.push_back({{begin, begin}, fmt::format("% allow: {}\n", rule.id)});
    if (uses_crlf(text)) write_crlf(fix.edits);
    return fix;
}

Fix leave_everywhere(const ScriptView& script, const Rule& rule) {
    Fix fix{.title = "Leave this rule out of the script", .edits = {}};
    for (const HeaderEntry& entry : script.header.entries) {
        if (unicode::to_lower(slice(script.text, entry.key)) != "allow") continue;
        fix.edits.push_back({{entry.value.end, entry.value.end}, fmt::format(", {}", rule.id)});
        return fix;
    }
    fix.edits.push_back(rules::add_header_line(script, fmt::format("allow: {}", rule.id)));
    return fix;
}

void move_into_place(FindingDraft& draft, std::uint32_t by, bool crlf) {
    draft.span = draft.span + by;
    for (Fix& fix : draft.fixes) {
        for (TextEdit& edit : fix.edits)
            edit.span = edit.span + by;
        if (crlf) write_crlf(fix.edits);
    }
}

Finding stamp(FindingDraft draft, const Rule& rule, const Options& options) {
    Finding finding;
    finding.rule = &rule;
    finding.severity = severity_of(rule, draft, options);
    finding.span = draft.span;
    finding.message = std::move(draft.message);
    finding.fixes = std::move(draft.fixes);
    finding.readings = std::move(draft.readings);
    return finding;
}

void thought_findings(std::string_view text, const Script& script, const Options& options,
                      std::vector<Finding>& findings) {
    const bool crlf = uses_crlf(text);
    for (const Placed& placed : script.thoughts) {
        for (const Thought::Draft& made : placed.thought->drafts) {
            FindingDraft draft = made.draft;
            move_into_place(draft, placed.block.span.begin.value, crlf);
            Finding finding = stamp(std::move(draft), *made.rule, options);
            finding.fixes.push_back(leave_here(text, *made.rule, placed));
            findings.push_back(std::move(finding));
        }
    }
}

std::vector<Stretch> stretches(const Script& script) {
    std::vector<Stretch> result;
    result.reserve(script.sections.size());
    for (const Section& section : script.sections) {
        result.push_back({.name = section.name,
                          .span = section.heading,
                          .parent = section.parent,
                          .level = section.level,
                          .target = section.target,
                          .target_span = section.target_span,
                          .timing = section.timing,
                          .has_thoughts = section.thoughts > 0});
    }
    return result;
}

void script_findings(std::string_view text, const Script& script, const Options& options,
                     std::vector<Finding>& findings, const Cancel& cancel) {
    const std::vector<Stretch> sections = stretches(script);
    std::vector<ThoughtSummary> thoughts;
    thoughts.reserve(script.thoughts.size());
    for (const Placed& placed : script.thoughts) {
        thoughts.push_back({.begin = placed.block.span.begin,
                            .source = placed.thought->source,
                            .content = placed.thought->content,
                            .kind = placed.thought->kind,
                            .section = placed.section,
                            .written = &placed.thought->written,
                            .reading = &placed.thought->reading});
    }
    const Header& header = script.header;
    const ScriptView view{.text = text,
                          .header = header,
                          .whole = {.name = {},
                                    .span = header.target_span,
                                    .target = header.target,
                                    .target_span = header.target_span,
                                    .timing = script.timing,
                                    .has_thoughts = !script.thoughts.empty()},
                          .sections = sections,
                          .thoughts = thoughts,
                          .stage = options.stage,
                          .options = options.rules,
                          .language = options.voice.language};
    for (const Rule* rule : all_rules()) {
        if (rule->check_script == nullptr || cancel.tripped()) continue;
        if (silenced(*rule, options, header.allow)) continue;
        for (FindingDraft& draft : rule->check_script(view)) {
            Finding finding = stamp(std::move(draft), *rule, options);
            const Placed* placed = script.thought_at(finding.span.begin);
            if (placed != nullptr) {
                const std::vector<std::string>& allow = placed->thought->written.allow;
                if (std::find(allow.begin(), allow.end(), rule->id) != allow.end()) continue;
                finding.fixes.push_back(leave_here(text, *rule, *placed));
            } else {
                finding.fixes.push_back(leave_everywhere(view, *rule));
            }
            findings.push_back(std::move(finding));
        }
    }
}

} // namespace

ThoughtView view_of(const Thought& thought, const Options& options) {
    return {.source = thought.source,
            .content = thought.content,
            .written = thought.written,
            .reading = thought.reading,
            .kind = thought.kind,
            .stage = options.stage,
            .language = options.voice.language,
            .options = options.rules};
}

std::string Placed::id() const {
    return fmt::format("{:08x}-{}", static_cast<std::uint32_t>(thought->words_key >> 32U),
                       occurrence);
}

const Placed* Script::thought_at(Offset at) const {
    const auto after =
        std::partition_point(thoughts.begin(), thoughts.end(),
                             [&](const Placed& placed) { return placed.block.span.begin <= at; });
    if (after == thoughts.begin()) return nullptr;
    const Placed& placed = *(after - 1);
    return placed.block.span.touches(at) ? &placed : nullptr;
}

const Section* Script::section_at(Offset at) const {
    const Section* found = nullptr;
    for (const Section& section : sections) {
        if (section.span.begin > at) break;
        if (section.span.contains(at)) found = &section;
    }
    return found;
}

std::shared_ptr<const Analysis> analyse(const Document& document, const Options& options,
                                        Parser& parser, Memo& memo, const Cancel& cancel) {
    auto analysis = std::make_shared<Analysis>();
    analysis->document = document;
    const std::string_view text = document.text->bytes();
    if (text.size() > text_cap) {
        analysis->options = options;
        return analysis;
    }
    Script& script = analysis->script;
    script.header = parse_header(text);
    analysis->options = in_force(options, script.header, text);
    script.blocks = cut_blocks(text, script.header);
    const bool finished = Assembler(text, analysis->options, script).assemble(parser, memo, cancel);
    if (!finished) return nullptr;
    memo.next_generation();
    thought_findings(text, script, analysis->options, analysis->findings);
    script_findings(text, script, analysis->options, analysis->findings, cancel);
    if (cancel.tripped()) return nullptr;
    std::stable_sort(
        analysis->findings.begin(), analysis->findings.end(),
        [](const Finding& a, const Finding& b) { return a.span.begin < b.span.begin; });
    return analysis;
}

std::shared_ptr<const Thought> analyse_line(std::string_view line, bool plain,
                                            const Options& options, Parser& parser) {
    auto thought = std::make_shared<Thought>();
    thought->source = line;
    thought->content = make_span(0, line.size());
    thought->written = plain ? plain_thought(line) : marked_thought(parser, line);
    if (!plain) settle(thought->written);
    Options whole = in_force(options, Header{}, {});
    thought->reading = read(thought->written, thought->source, voice_of(whole, whole.reader));
    thought->words_key = words_key_of(thought->reading);
    return thought;
}

} // namespace say
