// textDocument/completion and its resolve: keys in the header, speakers and directions where they
// stand, arrows behind ^, pronouncers behind a word, marks where a blank stands. Never while plain
// words are being typed.
#include "features/features.h"
#include "speech/lexicon.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <set>

namespace say {
namespace {

using Kind = CompletionItem::Kind;

struct Place {
    std::string_view text;
    Offset line; // where the line begins
    Offset at;
    std::string_view before; // the line up to the cursor
};

Place place_of(const Text& text, Offset at) {
    const Offset line = text.line_start(text.line_of(at));
    return {text.bytes(), line, at, slice(text.bytes(), {line, at})};
}

// In the header: behind the first fence and before the second, closed or not.
bool in_header(std::string_view text, Offset at) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    const Header header = parse_header(text);
    if (header.closed && !header.span.empty()) {
        const std::size_t fence = text.find_last_of("\r\n", header.span.end.value - 1);
        return at.value >= header.span.begin.value + 4 && at.value <= fence;
    }
    const std::size_t begin = text.starts_with(mark) ? mark.size() : 0;
    if (!text.substr(begin).starts_with("---")) return false;
    if (at.value < begin + 4) return false;
    const std::size_t close = text.find("\n---", begin + 3);
    const std::size_t blank = std::min(text.find("\n\n", begin), text.find("\n\r\n", begin));
    return at.value <= std::min(close, blank);
}

// Where the word at the cursor ends: what is chosen there takes the place of all of it.
template <class Belongs> Offset end_of(const Place& place, Belongs belongs) {
    std::uint32_t end = place.at.value;
    while (end < place.text.size() && belongs(place.text[end]))
        ++end;
    return Offset{end};
}

Offset end_of_word(const Place& place) {
    return end_of(place, [](char c) { return ascii::is_alnum(c) || c == '-' || c == '_'; });
}

// With a colon and the blank behind it.
Offset end_of_key(const Place& place) {
    Offset end = end_of_word(place);
    const std::string_view rest = place.text.substr(end.value);
    return end + (rest.starts_with(": ") ? 2 : rest.starts_with(":") ? 1 : 0);
}

CompletionItem item(Kind kind, std::string_view label, std::string_view detail, Span replace,
                    std::string_view insert) {
    CompletionItem result;
    result.kind = kind;
    result.label = label;
    result.detail = detail;
    result.replace = replace;
    result.insert = insert;
    return result;
}

void header_keys_at(const Place& place, std::vector<CompletionItem>& items) {
    for (const HeaderKey& key : header_keys()) {
        CompletionItem each = item(Kind::key, key.name, key.help, {place.line, end_of_key(place)},
                                   fmt::format("{}: ", key.name));
        each.topic = fmt::format("key:{}", key.name);
        items.push_back(std::move(each));
    }
}

void rule_ids_at(Span replace, std::vector<CompletionItem>& items) {
    for (const Rule* rule : all_rules()) {
        CompletionItem each = item(Kind::rule, rule->id, rule->summary, replace, rule->id);
        each.topic = fmt::format("rule:{}", rule->id);
        items.push_back(std::move(each));
    }
}

// "speakers: MIRA=": whose pace.
void readers_at(const Place& place, const Analysis& analysis, std::vector<CompletionItem>& items) {
    const std::size_t equals = place.before.find_last_of("=,");
    if (place.before[equals] != '=') return;
    const Span replace = make_span(place.line.value + equals + 1, end_of_word(place).value);
    for (const auto& [name, reader] : analysis.options.readers)
        items.push_back(item(Kind::value, name, "a reader of this folder", replace, name));
}

void header_values_at(const Place& place, const Analysis* analysis,
                      std::vector<CompletionItem>& items) {
    const std::size_t colon = place.before.find(':');
    const std::string_view key = place.before.substr(0, colon);
    const std::size_t list = place.before.find_last_of(",: ");
    const Span replace = make_span(place.line.value + list + 1, end_of_word(place).value);
    const std::string lead = place.before[list] == ' ' ? "" : " ";
    const auto value = [&](std::string_view label, std::string_view detail) {
        items.push_back(item(Kind::value, label, detail, replace, lead + std::string(label)));
    };
    if (key == "stage") {
        value("draft", "writing: only what matters is said");
        value("mark", "marking for the voice");
        value("read", "ready to be read");
    } else if (key == "language") {
        value("en-US", "US English");
        value("en-GB", "British English");
    } else if (key == "allow") {
        rule_ids_at(replace, items);
    } else if (key == "speakers" && place.before[list] != ',' && analysis != nullptr &&
               place.before.find_last_of('=') != std::string_view::npos) {
        readers_at(place, *analysis, items);
    } else if (key == "reader" && analysis != nullptr) {
        for (const auto& [name, reader] : analysis->options.readers)
            value(name, "a reader of this folder");
    }
}

struct DirectionRow {
    std::string_view label;
    std::string_view help;
    std::string_view snippet;
};
constexpr std::array<DirectionRow, 14> directions{{
    {"wait", "holds the time it states", "wait ${1:2s}"},
    {"clip", "a clip plays and holds its time", "clip: ${1:what} ${2:10s}"},
    {"ad lib", "words of the moment, for the time it states", "ad lib: ${1:about} ${2:10s}"},
    {"ask", "a question to the room, for the time it states", "ask: ${1:what} ${2:5s}"},
    {"slide", "a slide changes while you speak", "slide: ${1:which}"},
    {"camera", "another camera, while you speak", "camera: ${1:which}"},
    {"graphic", "a graphic comes, while you speak", "graphic: ${1:which}"},
    {"prop", "a thing to show, while you speak", "prop: ${1:what}"},
    {"look", "where to look, while you speak", "look: ${1:where}"},
    {"smile", "to do, not to say", "smile"},
    {"hold up", "to do, not to say", "hold up ${1:what}"},
    {"look left", "to do, not to say", "look left"},
    {"look to camera", "to do, not to say", "look to camera"},
    {"spare", "a thought that may be dropped", "spare"},
}};

void directions_at(const Place& place, std::size_t open, const Analysis* analysis,
                   std::vector<CompletionItem>& items) {
    const Offset word = end_of_word(place);
    const Offset end =
        end_of(place, [](char c) { return c != ']' && c != '[' && c != '\n' && c != '\r'; });
    const bool closed = end.value < place.text.size() && place.text[end.value] == ']';
    // What stands behind the word at the cursor in closed brackets stays: "clip" of "[clip: x 4s]".
    const bool has_more = closed && end.value > word.value;
    const Span replace =
        make_span(place.line.value + open + 1, closed ? word.value : place.at.value);
    const std::string_view close = closed ? "" : "]";
    std::set<std::string> seen;
    for (const DirectionRow& row : directions) {
        const std::string_view head = row.snippet.substr(0, row.snippet.find_first_of(":$"));
        CompletionItem each = item(Kind::direction, row.label, row.help, replace,
                                   has_more ? std::string(ascii::trim_right(head))
                                            : fmt::format("{}{}", row.snippet, close));
        each.snippet = !has_more;
        items.push_back(std::move(each));
        seen.insert(std::string(row.label));
    }
    if (analysis == nullptr || has_more) return;
    for (const Placed& placed : analysis->script.thoughts) {
        for (const Mark& mark : placed.thought->written.marks) {
            const Offset begin = mark.span.begin + placed.block.span.begin.value;
            if (mark.kind != MarkKind::direction || mark.argument.empty() ||
                begin.value == replace.begin.value - 1)
                continue;
            if (!seen.insert(mark.argument).second) continue;
            items.push_back(item(Kind::direction, mark.argument, "used in this script", replace,
                                 mark.argument + std::string(close)));
        }
    }
}

void arrows_at(const Place& place, std::vector<CompletionItem>& items) {
    const Span replace{Offset{place.at.value - 1}, place.at};
    for (const MarkKind kind :
         {MarkKind::step_up, MarkKind::step_down, MarkKind::end_up, MarkKind::end_down}) {
        const MarkRow& row = row_of(kind);
        CompletionItem each = item(Kind::mark, fmt::format("{} {}", row.written, row.name),
                                   row.does, replace, row.written);
        each.filter = "^";
        each.topic = fmt::format("mark:{}", row.name);
        items.push_back(std::move(each));
    }
}

// Behind "word{": how the word is thought to sound, to be mended by hand.
void pronouncers_at(const Place& place, std::size_t open, std::vector<CompletionItem>& items) {
    std::size_t begin = open;
    while (begin > 0 && place.before[begin - 1] != ' ' && place.before[begin - 1] != '\t')
        --begin;
    while (begin < open && !unicode::is_letter(unicode::decode(place.before, begin).value)) {
        begin += unicode::decode(place.before, begin).size;
    }
    const std::string_view word = place.before.substr(begin, open - begin);
    if (word.empty()) return;
    const Offset end =
        end_of(place, [](char c) { return c != '}' && c != '{' && c != '\n' && c != '\r'; });
    const bool closed = end.value < place.text.size() && place.text[end.value] == '}';
    const Span replace =
        make_span(place.line.value + open + 1, closed ? end.value : place.at.value);
    const std::string_view close = closed ? "" : "}";
    const Pronunciation sound = pronounce(unicode::fold(word));
    std::vector<Phones> ways{sound.phones};
    ways.insert(ways.end(), sound.others.begin(), sound.others.end());
    const std::string_view whose =
        sound.known == Known::guess ? "a guess: mend it" : "as in the dictionary";
    for (const Phones& phones : ways) {
        if (phones.empty()) continue;
        const std::string respelled = to_respelling(phones);
        const std::string ipa = fmt::format("/{}/", to_ipa(phones));
        items.push_back(
            item(Kind::pronouncer, respelled, whose, replace, respelled + std::string(close)));
        items.push_back(item(Kind::pronouncer, ipa, whose, replace, ipa + std::string(close)));
    }
    CompletionItem words = item(Kind::pronouncer, "= other words", "says these words instead",
                                replace, fmt::format("= ${{1:words}}{}", close));
    words.filter = "=";
    words.snippet = true;
    items.push_back(std::move(words));
}

void speakers_at(const Place& place, const Analysis* analysis, std::vector<CompletionItem>& items) {
    if (analysis == nullptr) return;
    const std::string_view typed = ascii::trim_left(place.before);
    const Span replace = make_span(place.at.value - typed.size(), end_of_key(place).value);
    for (const Speaker& speaker : analysis->script.header.speakers) {
        items.push_back(
            item(Kind::speaker, speaker.name + ":", "who says it", replace, speaker.name + ": "));
    }
}

std::string mark_snippet(const MarkRow& row) {
    switch (row.shape) {
    case MarkShape::pair: {
        const std::size_t blank = row.written.find(' ');
        return fmt::format("{}${{1:words}}{}", row.written.substr(0, blank),
                           row.written.substr(blank + 1));
    }
    case MarkShape::block: return "[${1:what to do}]";
    case MarkShape::suffix:
        return row.kind == MarkKind::pronouncer ? "{${1:saying}}"
               : row.kind == MarkKind::say_as   ? "{= ${1:words}}"
                                                : std::string(row.written);
    default: return std::string(row.written);
    }
}

void marks_at(const Place& place, std::vector<CompletionItem>& items) {
    for (const MarkRow& row : mark_rows()) {
        if (row.kind == MarkKind::punch) continue; // a word in capitals: nothing to insert
        CompletionItem each =
            item(Kind::mark, row.name, row.written, {place.at, place.at}, mark_snippet(row));
        each.snippet = true;
        each.topic = fmt::format("mark:{}", row.name);
        items.push_back(std::move(each));
    }
}

// What a note may say to the rules: nothing else in it is ours to complete.
void note_words_at(const Place& place, std::string_view typed, std::vector<CompletionItem>& items) {
    constexpr std::string_view allow = "% allow:";
    if (!allow.starts_with(typed)) return;
    const auto begin = Offset{place.at.value - static_cast<std::uint32_t>(typed.size())};
    items.push_back(item(Kind::key, allow, "a rule stays silent in the thought below",
                         {begin, place.at}, "% allow: "));
}

bool all_capitals(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}

std::string about_mark(std::string_view name) {
    for (const MarkRow& row : mark_rows()) {
        if (row.name != name) continue;
        return fmt::format("The reader {}.\n\nTime: {}.\n\n*{}*", row.does, row.cost, row.origin);
    }
    return {};
}

std::string about_key(std::string_view name) {
    for (const HeaderKey& key : header_keys()) {
        if (key.name != name) continue;
        return fmt::format("{}\n\n`{}: {}`", key.help, key.name, key.example);
    }
    return {};
}

std::string about_rule(std::string_view id) {
    const Rule* const rule = find_rule(id);
    return rule == nullptr ? std::string{} : std::string(rule->manual);
}

} // namespace

std::string completion_documentation(std::string_view topic) {
    const std::size_t colon = topic.find(':');
    if (colon == std::string_view::npos) return {};
    const std::string_view kind = topic.substr(0, colon);
    const std::string_view name = topic.substr(colon + 1);
    if (kind == "mark") return about_mark(name);
    if (kind == "key") return about_key(name);
    return kind == "rule" ? about_rule(name) : std::string{};
}

std::vector<CompletionItem> completion(const Text& text, Offset at, const Analysis* analysis) {
    std::vector<CompletionItem> items;
    const Place place = place_of(text, at);
    if (in_header(place.text, at)) {
        if (place.before.find(':') == std::string_view::npos) {
            header_keys_at(place, items);
        } else {
            header_values_at(place, analysis, items);
        }
        return items;
    }
    const std::string_view typed = ascii::trim_left(place.before);
    if (typed.starts_with("% allow:")) {
        const std::size_t list = place.before.find_last_of(":, ");
        rule_ids_at(make_span(place.line.value + list + 1, end_of_word(place).value), items);
        return items;
    }
    if (typed == "%" || typed.starts_with("% ")) {
        note_words_at(place, typed, items);
        return items;
    }
    if (typed.starts_with("#")) return items;
    const std::size_t open = place.before.find_last_of("[]");
    const bool escaped =
        open != std::string_view::npos && open > 0 && place.before[open - 1] == '\\';
    if (open != std::string_view::npos && place.before[open] == '[' && !escaped) {
        directions_at(place, open, analysis, items);
        return items;
    }
    const std::size_t brace = place.before.find_last_of("{}");
    if (brace != std::string_view::npos && place.before[brace] == '{') {
        pronouncers_at(place, brace, items);
        return items;
    }
    if (place.before.ends_with('^')) {
        arrows_at(place, items);
        return items;
    }
    if (all_capitals(typed)) speakers_at(place, analysis, items);
    // A blank or nothing before the cursor: the writer asked; while a word is typed nobody did.
    if (typed.empty() || place.before.ends_with(' ')) marks_at(place, items);
    return items;
}

} // namespace say
