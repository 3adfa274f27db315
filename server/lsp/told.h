// What a client was told of one script, so that the next answer may be short. Touched by the thread
// that analyses alone.
#pragma once

#include "host/files.h"
#include "lsp/convert.h"
#include "lsp/protocol.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace say::lsp {

// A text above this is kept, but not analysed: one finding says so.
inline constexpr std::size_t analysis_cap = largest_file;

struct Findings {
    std::string id;          // the same findings have the same one, in any run of the server
    std::string json = "[]"; // a list of diagnostics
    bool any = false;
};

class Told {
public:
    // The findings of a version as JSON, with those about the text as a whole. `text` is the
    // version's own: what is analysed of a text above the cap is empty.
    const Findings& findings(const std::shared_ptr<const Analysis>& analysis, const Text& text,
                             Encoding encoding);

    // All tokens under a name of their own.
    SemanticTokens tokens(SemanticTokens fresh);
    // From the tokens of that name to these; all of them if it is not the name of the last.
    SemanticTokensDelta tokens_since(std::string_view id, SemanticTokens fresh);

private:
    std::shared_ptr<const Analysis> analysis_; // that the list is of
    DiagnosticList list_;
    std::vector<Diagnostic> diagnostics_;
    std::vector<std::string> parts_; // the same as JSON, one each
    Findings findings_;
    SemanticTokens tokens_;
};

Findings findings_of(const std::vector<Diagnostic>& diagnostics);

} // namespace say::lsp
