// Offsets to columns and back, and features to the protocol.
#include "lsp/convert.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>

namespace say::lsp {
namespace {

bool is_continuation(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

// How many columns the character that begins with `lead` takes.
std::uint32_t units_of(char lead, Encoding encoding) {
    const auto byte = static_cast<unsigned char>(lead);
    const bool astral = byte >= 0xF0;
    return encoding == Encoding::utf16 && astral ? 2 : 1;
}

std::uint32_t count_units(std::string_view bytes, Encoding encoding) {
    if (encoding == Encoding::utf8) return static_cast<std::uint32_t>(bytes.size());
    std::uint32_t units = 0;
    for (const char byte : bytes) {
        if (!is_continuation(byte)) units += units_of(byte, encoding);
    }
    return units;
}

// The protocol's SymbolKind.
int symbol_kind(OutlineEntry::Kind kind) {
    switch (kind) {
    case OutlineEntry::Kind::script: return 1;   // File
    case OutlineEntry::Kind::section: return 3;  // Namespace
    case OutlineEntry::Kind::thought: return 15; // String
    }
    return 15;
}

// The protocol's CompletionItemKind.
int completion_kind(say::CompletionItem::Kind kind) {
    switch (kind) {
    case say::CompletionItem::Kind::mark: return 24;      // Operator
    case say::CompletionItem::Kind::key: return 10;       // Property
    case say::CompletionItem::Kind::value: return 12;     // Value
    case say::CompletionItem::Kind::speaker: return 6;    // Variable
    case say::CompletionItem::Kind::direction: return 23; // Event
    case say::CompletionItem::Kind::pronouncer: return 1; // Text
    case say::CompletionItem::Kind::rule: return 20;      // EnumMember
    }
    return 1;
}

std::optional<char> percent_decoded(std::string_view text, std::size_t at) {
    if (at + 3 > text.size() || text[at] != '%') return std::nullopt;
    unsigned value = 0;
    const char* const first = text.data() + at + 1;
    const auto [stop, error] = std::from_chars(first, first + 2, value, 16);
    if (error != std::errc{} || stop != first + 2) return std::nullopt;
    return static_cast<char>(value);
}

bool stands_in_uri(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           std::string_view("-._~/").find(c) != std::string_view::npos;
}

} // namespace

// --- positions ---------------------------------------------------------------------------------

Offset Columns::offset(Position position) {
    if (position.line >= text_->line_count()) return text_->end();
    const Span line = text_->line_span(position.line);
    const std::string_view bytes = text_->bytes();
    if (encoding_ == Encoding::utf8) {
        Offset at = std::min(line.end,
                             Offset{line.begin.value + std::min(position.character, line.size())});
        while (at > line.begin && at < line.end && is_continuation(bytes[at.value]))
            --at.value;
        return at;
    }
    if (line_ != position.line || units_ > position.character || at_ < line.begin) {
        line_ = position.line;
        at_ = line.begin;
        units_ = 0;
    }
    while (at_ < line.end && units_ < position.character) {
        const std::uint32_t units = units_of(bytes[at_.value], encoding_);
        if (units_ + units > position.character) break; // inside a surrogate pair
        units_ += units;
        ++at_.value;
        while (at_ < line.end && is_continuation(bytes[at_.value]))
            ++at_.value;
    }
    return at_;
}

Span Columns::span(Range range) {
    const Offset begin = offset(range.start);
    const Offset end = offset(range.end);
    return {begin, std::max(begin, end)};
}

Position Columns::position(Offset at) {
    at = std::min(at, text_->end());
    const bool same = text_->line_start(line_) <= at &&
                      (at < text_->line_start(line_ + 1) || line_ + 1 == text_->line_count());
    const std::uint32_t line = same ? line_ : text_->line_of(at);
    const Span span = text_->line_span(line);
    at = std::min(at, span.end); // never between the two bytes of a line end
    if (line != line_ || at < at_ || at_ < span.begin) {
        line_ = line;
        at_ = span.begin;
        units_ = 0;
    }
    units_ += count_units(slice(text_->bytes(), Span{at_, at}), encoding_);
    at_ = at;
    return {line_, units_};
}

Range Columns::range(Span span) {
    const Position start = position(span.begin);
    return {start, position(span.end)};
}

Change apply_changes(Text& text, std::vector<ContentChange> changes, Encoding encoding) {
    const auto size_of = [](const Text& any) { return any.end().value; };
    Change all{size_of(text), size_of(text), size_of(text)}; // nothing yet
    bool any = false;
    for (ContentChange& change : changes) {
        const std::uint32_t before = size_of(text);
        Change one{0, before, 0};
        if (change.range) {
            const Span span = Columns(text, encoding).span(*change.range);
            text.replace(span, change.text);
            one = {span.begin.value, span.end.value,
                   span.begin.value + static_cast<std::uint32_t>(change.text.size())};
        } else {
            text = Text(std::move(change.text));
            one.new_end = size_of(text);
        }
        all = any ? joined(all, one, size_of(text)) : one;
        any = true;
    }
    return all;
}

// --- addresses ---------------------------------------------------------------------------------

std::optional<std::filesystem::path> path_of(std::string_view uri) {
    constexpr std::string_view scheme = "file://";
    if (!uri.starts_with(scheme)) return std::nullopt;
    uri.remove_prefix(scheme.size());
    const auto slash = uri.find('/'); // what stands before it is a host: empty for this one
    if (slash == std::string_view::npos) return std::nullopt;
    uri.remove_prefix(slash);

    std::string path;
    for (std::size_t at = 0; at < uri.size(); ++at) {
        if (const auto decoded = percent_decoded(uri, at)) {
            if (*decoded == '\0') return std::nullopt;
            path += *decoded;
            at += 2;
        } else {
            path += uri[at];
        }
    }
    // "/c:/scripts" is how a drive letter travels.
    if (path.size() > 2 && path[2] == ':' && std::filesystem::path::preferred_separator != '/') {
        path.erase(0, 1);
    }
    return std::filesystem::path(path);
}

std::string uri_of(const std::filesystem::path& path) {
    std::string uri = "file://";
    const std::string generic = path.generic_string();
    if (!generic.starts_with('/')) uri += '/';
    for (const char c : generic) {
        if (stands_in_uri(c)) {
            uri += c;
        } else {
            uri += fmt::format("%{:02X}", static_cast<unsigned>(static_cast<unsigned char>(c)));
        }
    }
    return uri;
}

std::vector<std::filesystem::path> paths_of(const std::vector<std::string>& uris) {
    std::vector<std::filesystem::path> paths;
    for (const std::string& uri : uris) {
        if (auto path = path_of(uri)) paths.push_back(std::move(*path));
    }
    return paths;
}

// --- answers -----------------------------------------------------------------------------------

std::vector<TextEdit> to_edits(const std::vector<say::TextEdit>& edits, Columns& columns) {
    std::vector<TextEdit> result;
    result.reserve(edits.size());
    for (const say::TextEdit& edit : edits) {
        result.push_back({columns.range(edit.span), edit.replacement});
    }
    return result;
}

DocumentSymbol to_symbol(const OutlineEntry& entry, Columns& columns) {
    DocumentSymbol symbol{.name = entry.name,
                          .detail = entry.detail,
                          .kind = symbol_kind(entry.kind),
                          .range = columns.range(entry.span),
                          .selectionRange = {},
                          .children = {}};
    // Clients refuse all symbols for one without a name or whose name lies outside it.
    if (symbol.name.find_first_not_of(" \t\r\n") == std::string::npos) symbol.name = "(no name)";
    const Span name = entry.span.covers(entry.name_span) ? entry.name_span
                                                         : Span{entry.span.begin, entry.span.begin};
    symbol.selectionRange = columns.range(name);
    for (const OutlineEntry& child : entry.children) {
        symbol.children.push_back(to_symbol(child, columns));
    }
    return symbol;
}

SemanticTokens to_tokens(const std::vector<Token>& tokens, Columns& columns) {
    SemanticTokens result;
    result.data.reserve(tokens.size() * 5);
    Position last;
    for (const Token& token : tokens) {
        const Range range = columns.range(token.span);
        if (range.start.line != range.end.line || range.start == range.end) continue;
        const bool same_line = range.start.line == last.line;
        result.data.push_back(range.start.line - last.line);
        result.data.push_back(range.start.character - (same_line ? last.character : 0));
        result.data.push_back(range.end.character - range.start.character);
        result.data.push_back(static_cast<std::uint32_t>(token.type));
        result.data.push_back(token.modifiers);
        last = range.start;
    }
    return result;
}

CompletionItem to_completion(const say::CompletionItem& item, Columns& columns,
                             const ClientAbilities& client) {
    CompletionItem result{.label = item.label,
                          .kind = completion_kind(item.kind),
                          .detail = item.detail,
                          .documentation = {},
                          .markdown = client.completion_markdown,
                          .filterText = item.filter,
                          .snippet = item.snippet && client.snippets,
                          .textEdit = {columns.range(item.replace), item.insert}};
    if (static_cast<std::uint32_t>(result.kind) > client.last_completion_kind) result.kind = 1;
    if (client.completion_resolve) {
        result.topic = item.topic;
    } else {
        result.documentation = to_documentation(item.topic, client);
    }
    if (item.snippet && !result.snippet) {
        result.textEdit.newText = without_stops(result.textEdit.newText);
    }
    return result;
}

std::string to_documentation(std::string_view topic, const ClientAbilities& client) {
    std::string text = completion_documentation(topic);
    return client.completion_markdown ? text : to_plain(text);
}

std::string to_plain(std::string_view markdown) {
    std::string plain;
    plain.reserve(markdown.size());
    for (std::size_t at = 0; at < markdown.size(); ++at) {
        const char c = markdown[at];
        if (c == '\\' && at + 1 < markdown.size() && markdown[at + 1] > ' ') {
            plain += markdown[++at];
        } else if (c != '*' && c != '`') {
            plain += c;
        }
    }
    return plain;
}

std::string without_stops(std::string_view snippet) {
    std::string plain;
    for (std::size_t at = 0; at < snippet.size(); ++at) {
        const char c = snippet[at];
        const char next = at + 1 < snippet.size() ? snippet[at + 1] : '\0';
        if (c == '\\' && next != '\0') {
            plain += next;
            ++at;
        } else if (c == '$' && next >= '0' && next <= '9') {
            ++at;
        } else if (c == '$' && next == '{') {
            // "${1:words}" leaves its words, "${1}" nothing.
            const auto end = snippet.find('}', at);
            if (end == std::string_view::npos) break;
            const std::string_view inside = snippet.substr(at + 2, end - at - 2);
            const auto colon = inside.find(':');
            if (colon != std::string_view::npos) plain += inside.substr(colon + 1);
            at = end;
        } else {
            plain += c;
        }
    }
    return plain;
}

} // namespace say::lsp
