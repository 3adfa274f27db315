// textDocument/references, definition, rename: speakers, sections and directions by their names.
#include "features/features.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>

namespace say {
namespace {

// --- speakers ----------------------------------------------------------------------------------

std::optional<Span> touched(const std::vector<Span>& spans, Offset at) {
    const auto found = std::find_if(spans.begin(), spans.end(),
                                    [&](const Span& span) { return span.touches(at); });
    return found == spans.end() ? std::nullopt : std::optional(*found);
}

std::optional<Span> speaker_at(const Analysis& analysis, Offset at) {
    const Header& header = analysis.script.header;
    for (const Speaker& speaker : header.speakers) {
        if (speaker.name_span.touches(at)) return speaker.name_span;
    }
    const Placed* placed = analysis.script.thought_at(at);
    if (placed == nullptr || !placed->block.speaker.touches(at)) return std::nullopt;
    return touched(speaker_names(analysis.document.text->bytes(), placed->block, header), at);
}

Name speaker_of(const Analysis& analysis, Span at) {
    const std::string_view text = analysis.document.text->bytes();
    Name name{
        .kind = Name::Kind::speaker, .at = at, .text = std::string(slice(text, at)), .uses = {}};
    for (const Speaker& speaker : analysis.script.header.speakers) {
        if (speaker.name == name.text)
            name.uses.push_back({.span = speaker.name_span, .declares = true});
    }
    for (const Placed& placed : analysis.script.thoughts) {
        if (placed.block.speaker.empty()) continue;
        for (const Span span : speaker_names(text, placed.block, analysis.script.header)) {
            if (slice(text, span) == name.text) name.uses.push_back({.span = span});
        }
    }
    return name;
}

// --- sections ----------------------------------------------------------------------------------

// The heading's text without its target.
Span name_span_of(const Script& script, const Section& section) {
    const auto block =
        std::partition_point(script.blocks.begin(), script.blocks.end(), [&](const Block& each) {
            return each.span.begin < section.heading.begin;
        });
    if (block == script.blocks.end()) return {};
    const Offset begin = block->content.begin;
    return {begin, begin + static_cast<std::uint32_t>(section.name.size())};
}

std::optional<Name> section_of(const Script& script, Offset at) {
    const Section* section = script.section_at(at);
    // Behind a heading without a line end the text ends, and with it the section.
    if (section == nullptr && at.value > 0) section = script.section_at(Offset{at.value - 1});
    if (section == nullptr) return std::nullopt;
    const Span span = name_span_of(script, *section);
    if (span.empty() || !span.touches(at)) return std::nullopt;
    return Name{.kind = Name::Kind::section,
                .at = span,
                .text = section->name,
                .uses = {{.span = span, .declares = true}}};
}

// --- directions --------------------------------------------------------------------------------

// What a direction asks for: its words without the time it holds, however they are written.
std::string asked_for(const Mark& direction) {
    std::string_view words = ascii::trim(direction.argument);
    if (const auto time = ending_time(words); time && !time->words.empty()) words = time->words;
    std::string folded;
    for (const char c : unicode::fold(words)) {
        const bool is_blank = c == ' ' || c == '\t' || c == '\r' || c == '\n';
        if (!is_blank)
            folded += c;
        else if (!folded.empty() && folded.back() != ' ')
            folded += ' ';
    }
    return folded;
}

std::optional<Name> direction_at(const Analysis& analysis, Offset at) {
    const Placed* placed = analysis.script.thought_at(at);
    if (placed == nullptr) return std::nullopt;
    const std::uint32_t by = placed->block.span.begin.value;
    const auto& marks = placed->thought->written.marks;
    const auto found = std::find_if(marks.begin(), marks.end(), [&](const Mark& mark) {
        return mark.kind == MarkKind::direction && mark.span.touches(Offset{at.value - by});
    });
    if (found == marks.end()) return std::nullopt;
    Name name{.kind = Name::Kind::direction,
              .at = found->span + by,
              .text = asked_for(*found),
              .uses = {}};
    for (const Placed& each : analysis.script.thoughts) {
        for (const Mark& mark : each.thought->written.marks) {
            if (mark.kind != MarkKind::direction || asked_for(mark) != name.text) continue;
            name.uses.push_back({.span = mark.span + each.block.span.begin.value});
        }
    }
    return name;
}

// --- renaming ----------------------------------------------------------------------------------

bool has_any(std::string_view text, std::string_view signs) {
    return text.find_first_of(signs) != std::string_view::npos;
}

std::string refusal_of(const Script& script, const Name& old, std::string_view name) {
    if (name.empty()) return "the name is empty";
    if (has_any(name, "\r\n")) return "a name stands on one line";
    if (old.kind == Name::Kind::section) return "";
    if (has_any(name, ",=:")) return "a speaker's name has no comma, equals sign or colon in it";
    for (const Speaker& speaker : script.header.speakers) {
        if (speaker.name == name && name != old.text)
            return fmt::format("{} is a speaker already", name);
    }
    return "";
}

// What a script says to the reader of its blocks, with names left out of the comparison by writing
// the old for the new.
struct Cut {
    Header header;
    std::vector<Block> blocks;
    std::string_view text;

    explicit Cut(std::string_view whole)
        : header(parse_header(whole)), blocks(cut_blocks(whole, header)), text(whole) {}
};

bool same_speakers(const Cut& before, const Cut& after, std::string_view old,
                   std::string_view name) {
    return std::equal(
        before.header.speakers.begin(), before.header.speakers.end(), after.header.speakers.begin(),
        after.header.speakers.end(), [&](const Speaker& was, const Speaker& is) {
            return is.name == (was.name == old ? name : was.name) && is.reader == was.reader;
        });
}

// The grammar knows a speaker by its capitals: behind another name a mark may be read otherwise.
bool same_reading(Parser& parser, const Cut& before, const Block& was, const Cut& after,
                  const Block& is) {
    const Written then = parser.parse(before.text, was);
    const Written now = parser.parse(after.text, is);
    return then.plain.text == now.plain.text &&
           std::equal(then.marks.begin(), then.marks.end(), now.marks.begin(), now.marks.end(),
                      [](const Mark& a, const Mark& b) {
                          return a.kind == b.kind && a.first == b.first && a.last == b.last;
                      });
}

// Speakers and headings may have changed as asked for, anything else not at all.
bool same_block(Parser& parser, const Cut& before, const Block& was, const Cut& after,
                const Block& is, const Name& old, std::string_view name) {
    if (was.kind != is.kind || was.level != is.level) return false;
    const std::string_view words = slice(before.text, was.content);
    if (old.kind == Name::Kind::section && was.content.begin == old.at.begin) {
        const std::string_view behind = words.substr(old.text.size());
        return slice(after.text, is.content) == std::string(name) + std::string(behind);
    }
    if (words != slice(after.text, is.content)) return false;
    const std::vector<Span> spoke = speaker_names(before.text, was, before.header);
    const std::vector<Span> speaks = speaker_names(after.text, is, after.header);
    bool changed = false;
    const auto as_asked = [&](Span then, Span now) {
        const std::string_view said = slice(before.text, then);
        const bool renamed = old.kind == Name::Kind::speaker && said == old.text;
        changed = changed || renamed;
        return slice(after.text, now) == (renamed ? name : said);
    };
    if (!std::equal(spoke.begin(), spoke.end(), speaks.begin(), speaks.end(), as_asked))
        return false;
    return !changed || same_reading(parser, before, was, after, is);
}

bool same_otherwise(std::string_view before, std::string_view after, const Name& old,
                    std::string_view name) {
    const Cut was(before);
    const Cut is(after);
    Parser parser;
    const std::string_view kept =
        old.kind == Name::Kind::speaker ? name : std::string_view(old.text);
    return same_speakers(was, is, old.text, kept) &&
           std::equal(was.blocks.begin(), was.blocks.end(), is.blocks.begin(), is.blocks.end(),
                      [&](const Block& then, const Block& now) {
                          return same_block(parser, was, then, is, now, old, name);
                      });
}

} // namespace

std::optional<Name> name_at(const Analysis& analysis, Offset at) {
    if (const auto speaker = speaker_at(analysis, at)) return speaker_of(analysis, *speaker);
    if (auto section = section_of(analysis.script, at)) return section;
    return direction_at(analysis, at);
}

std::optional<RenameSpot> rename_spot(const Analysis& analysis, Offset at) {
    if (const auto speaker = speaker_at(analysis, at))
        return RenameSpot{*speaker, std::string(slice(analysis.document.text->bytes(), *speaker))};
    if (const auto section = section_of(analysis.script, at))
        return RenameSpot{section->at, section->text};
    return std::nullopt;
}

Renaming rename(const Analysis& analysis, Offset at, std::string_view wanted) {
    const auto old = name_at(analysis, at);
    if (!old || old->kind == Name::Kind::direction)
        return {.edits = {}, .refusal = "only speakers and sections have a name to change"};
    const std::string_view name = ascii::trim(wanted);
    Renaming result{.edits = {}, .refusal = refusal_of(analysis.script, *old, name)};
    if (!result.refusal.empty() || name == old->text) return result;

    for (const Name::Use& use : old->uses)
        result.edits.push_back({use.span, std::string(name)});
    const std::string_view before = analysis.document.text->bytes();
    const std::string after = apply(before, result.edits);
    const bool section = old->kind == Name::Kind::section;
    if (section && split_heading(name).target) {
        result = {.edits = {}, .refusal = "the time at its end would be read as the target"};
    } else if (!same_otherwise(before, after, *old, name)) {
        result = {.edits = {},
                  .refusal = fmt::format("with “{}” some lines would be read otherwise", name)};
    }
    return result;
}

} // namespace say
