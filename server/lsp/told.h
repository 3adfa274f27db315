// What a client was told of one script, so that the next answer may be short. Touched by the thread
// that analyses alone.
#pragma once

#include "host/files.h"
#include "lsp/diagnostics.h"
#include "lsp/protocol.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace say::lsp {

// A text above this is kept, but not analysed: one finding says so.
inline constexpr std::size_t analysis_cap = largest_file;

class Told {
public:
    // The findings of a version as JSON, with those about the text as a whole. `text` is the
    // version's own: what is analysed of a text above the cap is empty.
    // `typing` is where a word is being typed.
    const Findings& findings(const std::shared_ptr<const Analysis>& analysis, const Text& text,
                             Encoding encoding, std::optional<Offset> typing);

    // All tokens under a name of their own.
    SemanticTokens tokens(SemanticTokens fresh);
    // From the tokens of that name to these; all of them if it is not the name of the last.
    SemanticTokensDelta tokens_since(std::string_view id, SemanticTokens fresh);

private:
    DiagnosticList list_;
    SemanticTokens tokens_;
};

} // namespace say::lsp
