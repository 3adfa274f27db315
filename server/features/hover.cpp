// textDocument/hover: what is under the cursor, as it will be said, with its seconds.
#include "engine/ear.h"
#include "features/features.h"
#include "speech/homographs.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>

namespace say {
namespace {

std::string seconds_of(Seconds seconds) {
    return format_seconds(seconds);
}

// --- a mark ------------------------------------------------------------------------------------

std::string mark_cost(const Mark& mark, const Thought& thought) {
    for (const PauseAt& pause : thought.reading.pauses) {
        if (pause.span == mark.span)
            return fmt::format("It takes {} here.", seconds_of(pause.seconds));
    }
    if (is_pause(mark.kind)) return "The punctuation here pauses longer, so it adds nothing.";
    const MarkRow& row = row_of(mark.kind);
    return fmt::format("Time: {}.", row.cost);
}

HoverText hover_mark(const Placed& placed, const Mark& mark) {
    const MarkRow& row = row_of(mark.kind);
    std::string text = fmt::format("**{}**: the reader {}.\n\n{}\n\n*{}*", row.name, row.does,
                                   mark_cost(mark, *placed.thought), row.origin);
    if (mark.kind == MarkKind::direction && mark.argument == "spare") {
        text = "**spare**: this thought may be dropped when time runs short.\n\nThe word itself is "
               "not said and takes no time.";
    } else if (mark.kind == MarkKind::direction) {
        text = fmt::format("**direction**: to do, not to say.\n\n{}",
                           mark.seconds > Seconds{0}
                               ? fmt::format("It holds {} of silence.", seconds_of(mark.seconds))
                               : std::string("It takes no time of its own."));
    }
    return {mark.span + placed.block.span.begin.value, std::move(text)};
}

// The delimiters of a pair, the whole of any other mark.
bool on_mark(const Mark& mark, Offset at) {
    if (mark.kind == MarkKind::punch) return false; // the word itself says more
    if (!mark.open.empty()) return mark.open.contains(at) || mark.close.contains(at);
    return mark.span.contains(at);
}

// --- a word ------------------------------------------------------------------------------------

std::string known_as(const Said& said) {
    switch (said.known) {
    case Known::lexicon: return "From the dictionary.";
    case Known::guess: return "Not in the dictionary: the sound is a guess.";
    case Known::writer: return "As the writer says.";
    case Known::list: return "From the project's word list.";
    }
    return "";
}

std::string sound_of(const Phones& phones) {
    return fmt::format("{} · /{}/", to_respelling(phones), to_ipa(phones));
}

// "lead" goes first or is a metal: what was chosen, why, and the other.
std::string other_reading(const Homograph& homograph, const Said& said) {
    const bool first = homograph.readings[0].arpabet == to_arpabet(said.phones.front());
    const HomographReading& chosen = homograph.readings[first ? 0 : 1];
    const HomographReading& other = homograph.readings[first ? 1 : 0];
    return fmt::format(" {}: {}. Also said: {}: {}.",
                       said.undecided ? "Nothing near it says which, so the usual one"
                                      : "Chosen by the words around it",
                       chosen.gloss, sound_of(from_arpabet(other.arpabet).value_or(Phones())),
                       other.gloss);
}

// The other sounds of a word: with their meaning for a homograph, else what the list or the
// dictionary has beside the one that is said.
std::string other_sounds(const Said& said) {
    if (said.spoken.size() != 1 || said.spoken.front().letters) return "";
    const std::string& word = said.spoken.front().text;
    std::vector<Phones> others = said.others;
    if (said.known == Known::lexicon) {
        if (const Homograph* homograph = find_homograph(word); homograph != nullptr) {
            return other_reading(*homograph, said);
        }
        others = pronounce(word).others;
    }
    std::string text;
    for (const Phones& phones : others) {
        // With another stress alone it reads the same.
        if (to_respelling(phones) == to_respelling(said.phones.front())) continue;
        text += fmt::format("{}{}", text.empty() ? " Also said: " : ", ", sound_of(phones));
    }
    return text.empty() ? text : text + ".";
}

std::string marks_on(const Thought& thought, int word) {
    std::string names;
    for (const Mark& mark : thought.written.marks) {
        const bool shapes = row_of(mark.kind).shape == MarkShape::pair ||
                            mark.kind == MarkKind::punch ||
                            row_of(mark.kind).shape == MarkShape::prefix;
        if (!shapes || mark.first > word || mark.last < word) continue;
        if (!names.empty()) names += ", ";
        names += row_of(mark.kind).name;
    }
    return names.empty() ? "" : fmt::format("\n\nMarked: {}.", names);
}

// Why the word is underlined, where its rule has more to say than its message.
std::string reasons(const Thought& thought, Span word) {
    std::string text;
    for (const Thought::Draft& found : thought.drafts) {
        const Span span = found.draft.span;
        if (found.rule->why.empty() || word.begin < span.begin || span.end < word.end) continue;
        text += fmt::format("\n\n{}. {}", unicode::to_upper_first(found.draft.message),
                            found.rule->why);
    }
    return text;
}

// What has more syllables than any figure or word that people say is a slip of the keyboard.
constexpr int most_syllables = 60;

HoverText hover_word(const Placed& placed, int index) {
    const Thought& thought = *placed.thought;
    const Word& word = thought.written.words[static_cast<std::size_t>(index)];
    const Said& said = thought.reading.said[static_cast<std::size_t>(index)];
    const Span span = word.source + placed.block.span.begin.value;
    const std::string_view written = slice(thought.written.plain.text, word.plain);
    if (said.spoken.empty()) return {span, fmt::format("**{}** is not spoken.", written)};

    if (said.syllables > most_syllables) {
        return {span, fmt::format("{:.2f} s: too long to be one word", said.seconds.count())};
    }

    std::string respelled;
    std::string ipa;
    for (const Phones& phones : said.phones) {
        if (!respelled.empty()) respelled += ' ', ipa += ' ';
        respelled += to_respelling(phones);
        ipa += to_ipa(phones);
    }
    std::string text = fmt::format("**{}** · {} · /{}/\n\n", written, respelled, ipa);
    const std::string spoken = join(said.spoken);
    if (spoken != unicode::fold(written)) text += fmt::format("Said: {}\n\n", spoken);
    text += fmt::format("{} {}, {:.2f} s", said.syllables,
                        said.syllables == 1 ? "syllable" : "syllables", said.seconds.count());
    text += fmt::format("{}\n\n{}{}{}", marks_on(thought, index), known_as(said),
                        other_sounds(said), reasons(thought, word.source));
    return {span, std::move(text)};
}

// --- a thought ---------------------------------------------------------------------------------

std::string breath_line(const Reading& reading) {
    if (reading.breaths.empty()) return "";
    const auto longest = std::max_element(
        reading.breaths.begin(), reading.breaths.end(),
        [](const BreathGroup& a, const BreathGroup& b) { return a.seconds < b.seconds; });
    if (reading.breaths.size() == 1) return "One breath.";
    return fmt::format("{} breaths, the longest {}.", reading.breaths.size(),
                       seconds_of(longest->seconds));
}

std::string target_share(const Analysis& analysis, const Placed& placed) {
    const Script& script = analysis.script;
    std::optional<Target> target = script.header.target;
    std::string_view whose = "the script's";
    if (placed.section >= 0) {
        const Section& section = script.sections[static_cast<std::size_t>(placed.section)];
        if (section.target) {
            target = section.target;
            whose = "its section's";
        }
    }
    if (!target) return "";
    const double share = placed.thought->reading.timing.expected / target->high;
    return fmt::format("{:.0f} % of {} {}.", 100 * share, whose, format_target(*target));
}

HoverText hover_thought(const Analysis& analysis, const Placed& placed) {
    const Reading& reading = placed.thought->reading;
    const Timing& timing = reading.timing;
    std::string text =
        fmt::format("**{}** · {}\n\n", seconds_of(timing.expected), format_range(timing));
    if (placed.thought->has_words()) {
        const double rate =
            timing.speech > Seconds{0} ? reading.syllables / timing.speech.count() : 0;
        const std::size_t words = placed.thought->written.words.size();
        text += fmt::format("{} {}, {:.1f} syllables a second. ", words,
                            words == 1 ? "word" : "words", rate);
        text += breath_line(reading) + "\n\n";
    }
    text += fmt::format("From {} to {}.", format_clock(placed.at),
                        format_clock(placed.at + timing.expected));
    const std::string share = target_share(analysis, placed);
    if (!share.empty()) text += " " + share;
    if (placed.thought->written.spare) text += "\n\nSpare: it may be dropped.";
    return {placed.span(), std::move(text)};
}

// --- a heading and the header ------------------------------------------------------------------

std::string against_target(const Timing& timing, const std::optional<Target>& target,
                           Seconds slack) {
    std::string text =
        fmt::format("**{}** · {}", format_clock(timing.expected), format_range(timing));
    if (!target) return text;
    const Seconds off = off_target(timing.expected, *target, slack);
    text += fmt::format("\n\nTarget {}: ", format_target(*target));
    if (off == Seconds{0}) return text + "met.";
    return text + fmt::format("{} {}.", format_seconds(off < Seconds{0} ? -off : off),
                              off < Seconds{0} ? "short" : "over");
}

std::string with_ear(std::string text, const EarFigures& figures) {
    const std::string ear = describe(figures);
    if (!ear.empty()) text += "\n\n" + ear;
    return text;
}

// What the script takes, below what the key at that place means.
HoverText hover_header(const Analysis& analysis, Offset at) {
    const Script& script = analysis.script;
    HoverText hover{script.header.span,
                    with_ear(against_target(script.timing, script.header.target,
                                            analysis.options.rules.target_slack),
                             ear_of(script))};
    for (const HeaderEntry& entry : script.header.entries) {
        const Span line{entry.key.begin, std::max(entry.key.end, entry.value.end)};
        if (!line.touches(at)) continue;
        const std::string_view name = slice(analysis.document.text->bytes(), entry.key);
        const std::string about =
            completion_documentation(fmt::format("key:{}", unicode::to_lower(name)));
        if (about.empty()) break; // a key of the writer's own
        hover.span = line;
        hover.markdown = fmt::format("**{}**: {}\n\n{}", name, about, hover.markdown);
        break;
    }
    return hover;
}

} // namespace

std::optional<HoverText> hover(const Analysis& analysis, Offset at) {
    const Script& script = analysis.script;
    const Seconds slack = analysis.options.rules.target_slack;
    if (!script.header.span.empty() && script.header.span.touches(at)) {
        return hover_header(analysis, at);
    }
    if (const Section* section = script.section_at(at);
        section != nullptr && section->heading.touches(at)) {
        std::string text = fmt::format("{}\n\nBegins at {}.",
                                       against_target(section->timing, section->target, slack),
                                       format_clock(section->at));
        return HoverText{section->heading, with_ear(std::move(text), ear_of(script, *section))};
    }
    const Placed* placed = script.thought_at(at);
    if (placed == nullptr) return std::nullopt;

    const Offset inside{at.value - placed->block.span.begin.value};
    const Written& written = placed->thought->written;
    // Inner marks come later: the innermost wins.
    for (auto mark = written.marks.rbegin(); mark != written.marks.rend(); ++mark) {
        if (on_mark(*mark, inside)) return hover_mark(*placed, *mark);
    }
    for (std::size_t i = 0; i < written.words.size(); ++i) {
        if (written.words[i].source.contains(inside))
            return hover_word(*placed, static_cast<int>(i));
    }
    return hover_thought(analysis, *placed);
}

} // namespace say
