// The one place with lines and columns: between byte offsets and the protocol's positions, and
// between what the features answer and what the protocol carries.
#pragma once

#include "features/features.h"
#include "lsp/protocol.h"
#include "text/text.h"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace say::lsp {

// A text seen in lines and columns. Going on within a line costs only the way from the last answer,
// so that a million characters on one line stay linear; one thread each.
class Columns {
public:
    Columns(const Text& text, Encoding encoding) : text_(&text), encoding_(encoding) {}

    // Beyond a line's end is its end, beyond the last line the text's end, inside a character its
    // beginning.
    Offset offset(Position position);
    Span span(Range range);
    Position position(Offset at);
    Range range(Span span);

private:
    const Text* text_;
    Encoding encoding_;
    // The last answer: `units_` columns lie between the line's start and `at_`.
    std::uint32_t line_ = 0;
    Offset at_;
    std::uint32_t units_ = 0;
};

// Edits of which each sees the result of the last. Says where the text differs then.
Change apply_changes(Text& text, std::vector<ContentChange> changes, Encoding encoding);

// file:///… to a path and back; other schemes have no path.
std::optional<std::filesystem::path> path_of(std::string_view uri);
std::string uri_of(const std::filesystem::path& path);
std::vector<std::filesystem::path> paths_of(const std::vector<std::string>& uris);

std::vector<TextEdit> to_edits(const std::vector<say::TextEdit>& edits, Columns& columns);
DocumentSymbol to_symbol(const OutlineEntry& entry, Columns& columns);
SemanticTokens to_tokens(const std::vector<Token>& tokens, Columns& columns);
CompletionItem to_completion(const say::CompletionItem& item, Columns& columns,
                             const ClientAbilities& client);
// What completion has to say on a topic, in the form that the client can show.
std::string to_documentation(std::string_view topic, const ClientAbilities& client);
// Markdown as a terminal can show it: without emphasis, code and link marks.
std::string to_plain(std::string_view markdown);
// A snippet without its stops: "~$1~" becomes "~~".
std::string without_stops(std::string_view snippet);

} // namespace say::lsp
