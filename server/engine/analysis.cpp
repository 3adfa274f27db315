// One version of a script becomes an analysis: cut, look up, read what is new, lay the times, ask
// the rules.
#include "engine/analysis.h"

#include "base/hash.h"
#include "engine/assemble.h"
#include "engine/findings.h"
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

// A header may name a reader whose file is not there: then the times are nobody's. Where there is
// no reader at all yet, the name is a plan.
void miss_readers(Header& header, const Options& options, std::string_view text) {
    if (options.readers.empty()) return;
    const auto miss = [&](Span span) {
        const std::string name(slice(text, span));
        if (name.empty() || options.readers.contains(name)) return;
        std::string known;
        for (const auto& reader : options.readers)
            known += fmt::format("{}{}", known.empty() ? "" : " or ", reader.first);
        header.problems.push_back(
            {span,
             fmt::format("“{}” has no file .sayline/readers/{}.json, so its pace is not known",
                         name, name),
             known + ", or let sayline calibrate learn it"});
    };
    for (const HeaderEntry& entry : header.entries) {
        if (unicode::to_lower(slice(text, entry.key)) == "reader" && !options.reader_is_flag)
            miss(entry.value);
    }
    for (const Speaker& speaker : header.speakers)
        miss(speaker.reader_span);
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
    hash.add(std::uint64_t{options.findings});
    hash.add(static_cast<std::uint64_t>(options.findings_from_severity));
    hash.add(static_cast<std::uint64_t>(options.findings_from_stage));
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
            const Severity severity = severity_of(*rule, draft, options);
            if (severity < options.findings_from_severity) continue;
            thought.drafts.push_back({rule, std::move(draft), severity});
        }
    }
}

// Which rules of the script need to look at it.
std::uint32_t concerns(const Thought& thought, const Options& options) {
    const ThoughtView view = view_of(thought, options);
    std::uint32_t bits = 0;
    for (std::size_t i = 0; i < script_rules().size(); ++i) {
        const Rule& rule = *script_rules()[i];
        if (rule.concerns != nullptr && rule.concerns(view)) bits |= std::uint32_t{1} << i;
    }
    return bits;
}

std::shared_ptr<Thought> make_thought(std::string_view text, const Block& block, const Voice& voice,
                                      const Options& options, const Header& header,
                                      Parser& parser) {
    auto made = std::make_shared<Thought>();
    Thought& thought = *made;
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
    thought.concerns = concerns(thought, options);
    return made;
}

// The reader's own voice, then one for each speaker: made once, not once for each thought.
std::vector<VoiceInForce> voices_of(const Options& options, const Header& header) {
    std::vector<VoiceInForce> voices;
    const auto add = [&](const std::string& reader) {
        Voice voice = voice_of(options, reader);
        const std::uint64_t print = fingerprint(voice, options, header);
        voices.push_back({std::move(voice), print});
    };
    add(options.reader);
    for (const Speaker& speaker : header.speakers)
        add(speaker.reader.empty() ? options.reader : speaker.reader);
    return voices;
}

// --- from the last version on -------------------------------------------------------------------

// True if the script stands as it did, but for a change behind its header.
bool continues(const Analysis& last, const Script& script, Change change) {
    constexpr std::uint32_t line_end = 2; // the header's own
    const Span header = last.script.header.span;
    return last.script.voices == script.voices && header == script.header.span &&
           (header.empty() || change.begin >= header.end.value + line_end);
}

// Cuts the script's blocks and says what it has in common with the last version.
Past cut(const Document& document, const Analysis* last, Script& script) {
    const std::string_view text = document.text->bytes();
    if (last != nullptr) {
        const Change change = document.change_from(last->document.text);
        if (continues(*last, script, change)) {
            Recut recut = recut_blocks(text, script.header, last->script.blocks, change);
            script.blocks = std::move(recut.blocks);
            return {&last->script, recut.before, recut.after};
        }
    }
    script.blocks = cut_blocks(text, script.header);
    return {last != nullptr ? &last->script : nullptr, 0, 0};
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
    analysis->given = options;
    const std::string_view text = document.text->bytes();
    if (text.size() > text_cap) {
        analysis->options = options;
        return analysis;
    }
    Script& script = analysis->script;
    script.header = parse_header(text);
    miss_readers(script.header, options, text);
    analysis->options = in_force(options, script.header, text);
    const std::vector<VoiceInForce> voices = voices_of(analysis->options, script.header);
    for (const VoiceInForce& voice : voices)
        script.voices.push_back(voice.print);
    const std::shared_ptr<const Analysis> last = memo.last();
    const Past past = cut(document, last.get(), script);
    const MakeThought make = [&](const Block& block, const Voice& voice) {
        return make_thought(text, block, voice, analysis->options, script.header, parser);
    };
    const auto again = assemble(text, analysis->options, voices, past, script, memo, make, cancel);
    if (!again) return nullptr;
    const Standing standing{last.get(), again->before, again->after};
    collect_findings(*analysis, standing, cancel);
    if (cancel.tripped()) return nullptr;
    memo.finish(analysis);
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
