// links: say_lsp
// The table of methods against the protocol's rules of naming and against the transcripts: a method
// that nobody has recorded is not tested.
#include "lsp/method.h"
#include "support/catch.h"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

using namespace say::lsp;

namespace {

// Every client line of every transcript.
std::string client_lines() {
    std::string lines;
    for (const auto& entry : std::filesystem::directory_iterator(SAYLINE_SOURCE_DIR "/tests/lsp")) {
        if (entry.path().extension() != ".lsp") continue;
        std::ifstream file(entry.path());
        for (std::string line; std::getline(file, line);) {
            if (line.starts_with("-->")) lines += line + "\n";
        }
    }
    return lines;
}

} // namespace

TEST_CASE("methods/each has a transcript") {
    const std::string lines = client_lines();
    for (const Method& method : methods()) {
        INFO(method.name);
        CHECK(lines.find("\"method\": \"" + std::string(method.name) + "\"") != std::string::npos);
    }
}

TEST_CASE("methods/each row is whole and stands once") {
    std::set<std::string_view> names;
    for (const Method& method : methods()) {
        INFO(method.name);
        CHECK(names.insert(method.name).second);
        CHECK(find_method(method.name) == &method);
        // A request about a script is prepared, one about folders begun, anything else is handled
        // at once.
        const bool script = method.lane == Lane::now || method.lane == Lane::worker;
        CHECK((method.prepare != nullptr) == script);
        CHECK((method.begin != nullptr) == (method.lane == Lane::late));
        CHECK((method.handle != nullptr) == (method.lane == Lane::in_order));
        if (!method.is_request) CHECK(method.lane == Lane::in_order);
    }
    CHECK(find_method("textDocument/none") == nullptr);
}

TEST_CASE("methods/what is advertised follows from the rows") {
    // The names of the capabilities: LSP 3.17, "ServerCapabilities".
    const Json capabilities = server_capabilities(Encoding::utf8);
    CHECK(capabilities["positionEncoding"] == "utf-8");
    CHECK(capabilities["textDocumentSync"]["change"] == 2); // Incremental
    for (const char* name : {"hoverProvider",
                             "completionProvider",
                             "inlayHintProvider",
                             "codeActionProvider",
                             "executeCommandProvider",
                             "documentSymbolProvider",
                             "semanticTokensProvider",
                             "documentFormattingProvider",
                             "documentRangeFormattingProvider",
                             "codeLensProvider",
                             "diagnosticProvider",
                             "foldingRangeProvider",
                             "selectionRangeProvider",
                             "documentHighlightProvider",
                             "linkedEditingRangeProvider",
                             "referencesProvider",
                             "definitionProvider",
                             "renameProvider",
                             "workspaceSymbolProvider",
                             "documentLinkProvider"}) {
        INFO(name);
        CHECK(capabilities.contains(name));
    }
}
