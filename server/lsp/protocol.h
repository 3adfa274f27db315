// The Language Server Protocol 3.17, as far as we use it. Members keep the protocol's spelling.
// https://microsoft.github.io/language-server-protocol/specifications/lsp/3.17/specification/
#pragma once

#include "lsp/decode.h"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace say::lsp {

// --- the envelope ------------------------------------------------------------------------------

using RequestId = std::variant<std::int64_t, std::string>;

enum class ErrorCode {
    parse_error = -32700,
    invalid_request = -32600,
    method_not_found = -32601,
    invalid_params = -32602,
    internal_error = -32603,
    server_not_initialized = -32002,
    request_failed = -32803,
    request_cancelled = -32800,
};

// --- positions ---------------------------------------------------------------------------------

enum class Encoding { utf8, utf16, utf32 };

struct Position {
    std::uint32_t line = 0;
    std::uint32_t character = 0;
    auto operator<=>(const Position&) const = default;
};

struct Range {
    Position start;
    Position end;
    auto operator<=>(const Range&) const = default;
};

struct TextDocumentIdentifier {
    std::string uri;
};

// --- lifecycle ---------------------------------------------------------------------------------

// What the client said it can do, and what we made of it. Fixed after initialize, so any thread
// may read it.
struct ClientAbilities {
    Encoding encoding = Encoding::utf16;
    bool hover_markdown = false;
    bool snippets = false;
    bool completion_markdown = false;
    bool completion_resolve = false; // asks for an item's documentation when it is looked at
    bool hint_resolve = false;       // the same for a hint's tooltip
    bool inline_completion = false;  // of LSP 3.18
    bool show_document = false;
    std::uint32_t last_completion_kind = 18; // of those that need no declaration
    bool nested_symbols = false;
    bool action_literals = false;
    bool action_preferred = false;
    bool action_resolve = false;     // asks for an action's edit when it is chosen
    bool change_annotations = false; // can show edits before they are taken
    bool document_changes = false;
    bool create_files = false;         // an edit may make a file
    bool snippet_edits = false;        // of LSP 3.18, as is the next
    bool action_documentation = false; // shows what explains a kind of action
    bool apply_edit = false;
    bool configuration = false;
    bool watch_configuration = false; // may be asked to announce it
    bool watch_files = false;
    bool diagnostic_versions = false;
    bool pulls_diagnostics = false; // asks for them; then none are sent unasked
    bool refresh_diagnostics = false;
    bool refresh_hints = false;
    bool refresh_lenses = false;
    bool rename_prepare = false;
    bool fold_lines_only = false;
    std::uint32_t most_folds = 0xFFFFFFFF;
};

struct InitializeParams {
    std::optional<int> processId;
    ClientAbilities capabilities;
    KeptJson initializationOptions;
    std::string trace;
    std::vector<std::string> folders; // URIs
};

struct NoParams {};

struct SetTraceParams {
    std::string value;
};

struct CancelParams {
    RequestId id;
};

// --- documents ---------------------------------------------------------------------------------

struct DidOpenTextDocumentParams {
    std::string uri;
    int version = 0;
    std::string text;
};

struct ContentChange {
    std::optional<Range> range; // none: the whole text
    std::string text;
};

struct DidChangeTextDocumentParams {
    std::string uri;
    std::optional<int> version;
    std::vector<ContentChange> contentChanges;
};

// didClose and didSave.
struct DocumentParams {
    TextDocumentIdentifier textDocument;
};

struct DiagnosticParams {
    TextDocumentIdentifier textDocument;
    std::string previousResultId;
};

struct WorkspaceDiagnosticParams {
    std::map<std::string, std::string> previousResultIds; // by URI
    KeptJson workDoneToken;                               // null without one
    KeptJson partialResultToken;
};

struct WorkspaceSymbolParams {
    std::string query;
};

struct FoldersChange {
    std::vector<std::string> added; // URIs
    std::vector<std::string> removed;
};

struct SemanticTokensDeltaParams {
    TextDocumentIdentifier textDocument;
    std::string previousResultId;
};

struct PositionParams {
    TextDocumentIdentifier textDocument;
    Position position;
};

struct RangeParams {
    TextDocumentIdentifier textDocument;
    Range range;
};

struct ReferenceParams {
    TextDocumentIdentifier textDocument;
    Position position;
    bool includeDeclaration = false;
};

struct RenameParams {
    TextDocumentIdentifier textDocument;
    Position position;
    std::string newName;
};

struct SelectionRangeParams {
    TextDocumentIdentifier textDocument;
    std::vector<Position> positions;
};

// --- workspace ---------------------------------------------------------------------------------

struct DidChangeConfigurationParams {
    KeptJson settings;
};

struct FileEvents {
    std::vector<std::string> uris;
};

struct ExecuteCommandParams {
    std::string command;
    TextDocumentIdentifier textDocument; // the first argument: a URI, or an object with one
    KeptJson edit;                       // sayline.applyFix: the WorkspaceEdit
};

// --- what is sent ------------------------------------------------------------------------------

struct TextEdit {
    Range range;
    std::string newText;
    std::string snippet{}; // in its place, with a stop to type over; empty for none (LSP 3.18)
};

struct WorkspaceEdit {
    std::string uri;
    int version = 0;
    std::vector<TextEdit> edits;
    bool versioned = false; // documentChanges, else changes
    std::string preview{};  // what to show above the edits before they are taken; needs versioned
    bool creates = false;   // the file is made first, if it is not there; only where versioned
    bool unopened = false;  // a file that the client has not opened here: it has no version
};

struct Diagnostic {
    Range range;
    int severity = 0; // 1 error, 2 warning, 3 information, 4 hint
    std::string code; // the rule; empty for none
    std::string message;
    bool operator==(const Diagnostic&) const = default;
};

struct Hover {
    bool markdown = true;
    std::string value;
    Range range;
};

struct InlayHint {
    Position position;
    std::string label;
    std::string tooltip;
    std::string script{}; // whose hint it is, where the tooltip is left to inlayHint/resolve
};

// Without items: as the client knows it.
struct DiagnosticReport {
    std::string resultId;
    std::optional<std::string> items; // JSON, already written
};

struct CodeAction {
    std::string title;
    std::string kind;
    std::optional<Diagnostic> diagnostic;
    bool isPreferred = false;
    WorkspaceEdit edit;
    bool as_command = false; // for clients that know no action but a command
    std::string sweep{};     // the edit is made by codeAction/resolve
    std::string command{};   // in place of an edit: one that the server makes when it is chosen
    std::string script;      // whose action it is
};

struct CodeActionResolveParams {
    TextDocumentIdentifier textDocument; // from the action's data
    std::string sweep;
    KeptJson action;
};

struct InlayHintResolveParams {
    TextDocumentIdentifier textDocument; // from the hint's data
    Position position;
    KeptJson hint;
};

struct OnTypeFormattingParams {
    TextDocumentIdentifier textDocument;
    Position position;
    std::string ch;
};

struct InlineCompletionParams {
    TextDocumentIdentifier textDocument;
    Position position;
    bool invoked = false; // the writer asked; else the editor did by itself
};

struct CompletionResolveParams {
    TextDocumentIdentifier textDocument; // from the item's data
    std::string topic;
    KeptJson item;
};

struct CodeActionParams {
    TextDocumentIdentifier textDocument;
    Range range;
    std::vector<std::string> only;
};

struct DocumentSymbol {
    std::string name;
    std::string detail;
    int kind = 0;
    Range range;
    Range selectionRange;
    std::vector<DocumentSymbol> children;
};

struct DocumentSymbols {
    std::string uri; // of the flat form
    bool nested = true;
    std::vector<DocumentSymbol> symbols;
};

struct SemanticTokens {
    std::vector<std::uint32_t> data; // five a token, each relative to the last
    std::string resultId{};          // for all of a script
};

struct SemanticTokensDelta {
    struct Edit {
        std::uint32_t start = 0;
        std::uint32_t deleteCount = 0;
        std::vector<std::uint32_t> data;
    };
    SemanticTokens whole;
    std::optional<Edit> edit{}; // in place of the whole
};

struct CompletionItem {
    std::string label;
    int kind = 0;
    std::string detail;
    std::string documentation;
    bool markdown = true;
    std::string filterText;
    bool snippet = false;
    TextEdit textEdit;
    std::string sortText{}; // our order
    std::string script{};   // whose item it is, where completionItem/resolve documents the topic
    std::string topic{};
};

struct CompletionList {
    std::vector<CompletionItem> items;
};

struct InlineCompletionList {
    std::vector<TextEdit> items;
};

// A lens says something and does nothing: its command has no name.
struct CodeLens {
    Range range;
    std::string title;
};

struct FoldingRange {
    Range range;
    std::string kind; // "comment", "region"; empty for none
    bool lines_only = false;
};

struct Location {
    std::string uri;
    Range range;
};

struct SymbolInformation {
    std::string name;
    int kind = 0;
    Location location;
    std::string containerName; // empty for none
};

struct DocumentHighlight {
    Range range;
    int kind = 0; // 1 text, 2 read, 3 write
};

struct LinkedEditingRanges {
    Range open;
    Range close;
    std::string wordPattern;
};

struct PrepareRename {
    Range range;
    std::string placeholder;
};

struct RenameOutcome {
    WorkspaceEdit edit;
    std::string refusal; // why there is none
};

struct DocumentLink {
    Range range;
    std::string target; // a URI
    std::string tooltip;
};

// From the innermost outwards.
struct SelectionRange {
    std::vector<Range> ranges;
};

// --- our own -----------------------------------------------------------------------------------

struct ScriptTimes {
    struct Target {
        double low = 0;
        double high = 0;
    };
    struct Row {
        std::string name;
        int level = 0;
        double at = 0;
        double seconds = 0;
        double low = 0;
        double high = 0;
        std::optional<Target> target;
        double off = 0;
        int words = 0;
        Range range;
    };
    Row whole;
    std::vector<Row> sections;
    std::optional<double> at; // when what stands at the position asked for is said
};

struct TimesParams {
    TextDocumentIdentifier textDocument;
    std::optional<Position> position;
};

struct ExplainParams {
    TextDocumentIdentifier textDocument;
    std::optional<Position> position; // none: every thought
};

struct SpeakParams {
    TextDocumentIdentifier textDocument;
    std::string file;                 // a URI: where the sound is written
    std::optional<Position> position; // only the thought there
    KeptJson workDoneToken;           // null without one
};

struct ExportParams {
    TextDocumentIdentifier textDocument;
    std::string target; // as in `sayline export --to`
    int columns = 0;    // of a caption's line; 0: as ever
};

struct Exported {
    std::string target;
    std::string text;
    std::string error; // why there is none
};

// An edit for the client to make before the request is answered.
struct CommandOutcome {
    std::string label;
    KeptJson edit;      // a WorkspaceEdit; null if there is nothing to do
    std::string error;  // why it could not be done
    std::string show{}; // the URI of a file to show
};

// --- between structs and JSON ------------------------------------------------------------------

void decode(const In& in, InitializeParams& params);
void decode(const In& in, NoParams& params);
void decode(const In& in, SetTraceParams& params);
void decode(const In& in, CancelParams& params);
void decode(const In& in, DidOpenTextDocumentParams& params);
void decode(const In& in, DidChangeTextDocumentParams& params);
void decode(const In& in, DocumentParams& params);
void decode(const In& in, DiagnosticParams& params);
void decode(const In& in, SemanticTokensDeltaParams& params);
void decode(const In& in, WorkspaceDiagnosticParams& params);
void decode(const In& in, WorkspaceSymbolParams& params);
void decode(const In& in, FoldersChange& params);
void decode(const In& in, PositionParams& params);
void decode(const In& in, RangeParams& params);
void decode(const In& in, DidChangeConfigurationParams& params);
void decode(const In& in, FileEvents& params);
void decode(const In& in, ExecuteCommandParams& params);
void decode(const In& in, CodeActionParams& params);
void decode(const In& in, CodeActionResolveParams& params);
void decode(const In& in, InlayHintResolveParams& params);
void decode(const In& in, CompletionResolveParams& params);
void decode(const In& in, OnTypeFormattingParams& params);
void decode(const In& in, InlineCompletionParams& params);
void decode(const In& in, TimesParams& params);
void decode(const In& in, ExplainParams& params);
void decode(const In& in, ExportParams& params);
void decode(const In& in, SpeakParams& params);
void decode(const In& in, SelectionRangeParams& params);
void decode(const In& in, ReferenceParams& params);
void decode(const In& in, RenameParams& params);

Json markup(bool markdown, std::string value); // a MarkupContent
Json encode(const Position& position);
Json encode(const Range& range);
Json encode(const TextEdit& edit);
Json encode(const WorkspaceEdit& edit);
Json encode(const Diagnostic& diagnostic);
Json encode(const Hover& hover);
Json encode(const InlayHint& hint);
Json encode(const CodeAction& action);
Json encode(const CompletionList& list);
Json encode(const InlineCompletionList& list);
Json encode(const CodeLens& lens);
Json encode(const FoldingRange& fold);
Json encode(const SelectionRange& selection);
Json encode(const Location& location);
Json encode(const SymbolInformation& symbol);
Json encode(const DocumentHighlight& highlight);
Json encode(const LinkedEditingRanges& ranges);
Json encode(const PrepareRename& spot);
Json encode(const DocumentLink& link);
Json encode(const ScriptTimes& times);
Json encode(const Exported& made);
Json encode(const RequestId& id);

// On one line. What is not UTF-8 becomes U+FFFD.
std::string write(const Json& json);
// The message that answers a request; `result` is JSON.
std::string response(const RequestId& id, std::string_view result);
// The answers that may be as long as the script are written at once, without a tree of values.
std::string write(const DocumentSymbols& symbols);
std::string write(const SemanticTokens& tokens);
std::string write(const SemanticTokensDelta& delta);
// `more`: further members, with a comma behind each.
std::string write(const DiagnosticReport& report, std::string_view more = {});

} // namespace say::lsp
