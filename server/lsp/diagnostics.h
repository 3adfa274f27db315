// Findings as the protocol's diagnostics, and what of them is kept from version to version.
#pragma once

#include "lsp/convert.h"
#include "lsp/protocol.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace say::lsp {

Diagnostic to_diagnostic(const Finding& finding, Columns& columns);
// At most `most_findings`, the worst first if they are more, and one that counts the rest.
inline constexpr std::size_t most_findings = 300;
std::vector<Diagnostic> to_diagnostics(const Analysis& analysis, Encoding encoding);

// A list of diagnostics as it is sent.
struct Findings {
    std::string id;          // the same findings have the same one, in any run of the server
    std::string json = "[]"; // a list of diagnostics
    bool any = false;
};
Findings findings_of(const std::vector<Diagnostic>& diagnostics);

struct WrittenDiagnostic {
    std::string json;
    std::uint64_t print = 0; // of the JSON
};

// The diagnostics of a script from version to version: a key changes one or two of hundreds, so
// those away from it keep their columns and are written already. One thread each.
class DiagnosticList {
public:
    // `typing` is where a word is typed: what is half typed is not told yet. `about_text` stands
    // behind those of the script.
    const Findings& of(const std::shared_ptr<const Analysis>& analysis, Encoding encoding,
                       std::optional<Offset> typing = std::nullopt,
                       const std::optional<Diagnostic>& about_text = std::nullopt);

private:
    struct Row {
        Span span;
        const FindingDraft* draft = nullptr; // of `last_`
        Diagnostic diagnostic;
        WrittenDiagnostic written;
        bool taken = false; // by the next version
    };
    class Lookup;

    static Row row_of(Diagnostic diagnostic);
    Findings gathered() const;

    std::shared_ptr<const Analysis> last_;
    std::optional<Offset> last_typing_;
    std::vector<Row> rows_;   // by place
    std::vector<Row> behind_; // without a place: a count of the rest, what is said of the text
    Findings findings_;
};

} // namespace say::lsp
