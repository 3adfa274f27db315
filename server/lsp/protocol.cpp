// The protocol's structs from JSON and to JSON.
#include "lsp/protocol.h"

#include "text/unicode.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace say::lsp {
namespace {

void decode(const In& in, Position& position) {
    position.line = in["line"].natural();
    position.character = in["character"].natural();
}

void decode(const In& in, Range& range) {
    if (!in.exists()) {
        in.refuse("missing");
        return;
    }
    decode(in["start"], range.start);
    decode(in["end"], range.end);
    if (!in.failed() && range.end < range.start) in.refuse("ends before it starts");
}

void decode(const In& in, TextDocumentIdentifier& document) {
    document.uri = in["uri"].string();
}

bool has_entry(const In& list, std::string_view wanted) {
    bool found = false;
    list.entries([&](const In& entry) { found = found || entry.string() == wanted; });
    return found;
}

// The client's order counts: it prefers what comes first, and we can do all three.
Encoding choose_encoding(const In& encodings) {
    std::optional<Encoding> chosen;
    encodings.entries([&](const In& entry) {
        if (chosen) return;
        const std::string name = entry.string();
        if (name == "utf-8") chosen = Encoding::utf8;
        if (name == "utf-16") chosen = Encoding::utf16;
        if (name == "utf-32") chosen = Encoding::utf32;
    });
    return chosen.value_or(Encoding::utf16);
}

void decode_text_abilities(const In& text, ClientAbilities& client) {
    client.hover_markdown = has_entry(text["hover"]["contentFormat"], "markdown");
    const In item = text["completion"]["completionItem"];
    client.snippets = item["snippetSupport"].flag();
    client.completion_markdown = has_entry(item["documentationFormat"], "markdown");
    client.completion_resolve = has_entry(item["resolveSupport"]["properties"], "documentation");
    client.hint_resolve = has_entry(text["inlayHint"]["resolveSupport"]["properties"], "tooltip");
    text["completion"]["completionItemKind"]["valueSet"].entries([&](const In& kind) {
        client.last_completion_kind = std::max(client.last_completion_kind, kind.natural());
    });
    client.nested_symbols = text["documentSymbol"]["hierarchicalDocumentSymbolSupport"].flag();
    const In action = text["codeAction"];
    client.action_literals = action["codeActionLiteralSupport"].exists();
    client.action_preferred = action["isPreferredSupport"].flag();
    client.action_resolve =
        action["dataSupport"].flag() && has_entry(action["resolveSupport"]["properties"], "edit");
    client.rename_prepare = text["rename"]["prepareSupport"].flag();
    client.action_documentation = action["documentationSupport"].flag();
    client.inline_completion = text["inlineCompletion"].exists();
    const In folding = text["foldingRange"];
    client.fold_lines_only = folding["lineFoldingOnly"].flag();
    if (folding["rangeLimit"].exists()) client.most_folds = folding["rangeLimit"].natural();
    client.diagnostic_versions = text["publishDiagnostics"]["versionSupport"].flag();
    client.pulls_diagnostics = text["diagnostic"].exists();
}

void decode_workspace_abilities(const In& workspace, ClientAbilities& client) {
    client.apply_edit = workspace["applyEdit"].flag();
    client.document_changes = workspace["workspaceEdit"]["documentChanges"].flag();
    client.change_annotations =
        client.document_changes && workspace["workspaceEdit"]["changeAnnotationSupport"].exists();
    client.create_files = client.document_changes &&
                          has_entry(workspace["workspaceEdit"]["resourceOperations"], "create");
    client.snippet_edits =
        client.document_changes && workspace["workspaceEdit"]["snippetEditSupport"].flag();
    client.configuration = workspace["configuration"].flag();
    client.watch_configuration = workspace["didChangeConfiguration"]["dynamicRegistration"].flag();
    client.watch_files = workspace["didChangeWatchedFiles"]["dynamicRegistration"].flag();
    client.refresh_hints = workspace["inlayHint"]["refreshSupport"].flag();
    client.refresh_diagnostics = workspace["diagnostics"]["refreshSupport"].flag();
    client.refresh_lenses = workspace["codeLens"]["refreshSupport"].flag();
}

Json encode_edits(const std::vector<TextEdit>& edits) {
    Json list = Json::array();
    for (const TextEdit& edit : edits) {
        list.push_back(encode(edit));
    }
    return list;
}

// Hundredths: finer is below what the model knows, and shorter to send.
double rounded(double value) {
    return std::round(value * 100) / 100;
}

Json encode_row(const ScriptTimes::Row& row) {
    Json target;
    if (row.target) target = {{"low", row.target->low}, {"high", row.target->high}};
    return {{"seconds", rounded(row.seconds)}, {"low", rounded(row.low)},
            {"high", rounded(row.high)},       {"target", std::move(target)},
            {"off", rounded(row.off)},         {"words", row.words}};
}

} // namespace

// --- from the client ---------------------------------------------------------------------------

void decode(const In& in, InitializeParams& params) {
    if (in["processId"].exists()) params.processId = in["processId"].integer();
    const In capabilities = in["capabilities"];
    params.capabilities.encoding = choose_encoding(capabilities["general"]["positionEncodings"]);
    decode_text_abilities(capabilities["textDocument"], params.capabilities);
    decode_workspace_abilities(capabilities["workspace"], params.capabilities);
    params.capabilities.show_document = capabilities["window"]["showDocument"]["support"].flag();
    params.initializationOptions = in["initializationOptions"].json();
    if (in["trace"].exists()) params.trace = in["trace"].string();
    if (in["workspaceFolders"].exists()) {
        in["workspaceFolders"].entries(
            [&](const In& each) { params.folders.push_back(each["uri"].string()); });
    } else if (in["rootUri"].exists()) {
        params.folders.push_back(in["rootUri"].string());
    }
}

void decode(const In& /*in*/, NoParams& /*params*/) {}

void decode(const In& in, SetTraceParams& params) {
    params.value = in["value"].string();
}

void decode(const In& in, CancelParams& params) {
    const In id = in["id"];
    if (id.is_string()) {
        params.id = id.string();
    } else {
        params.id = std::int64_t{id.integer()};
    }
}

void decode(const In& in, DidOpenTextDocumentParams& params) {
    const In document = in["textDocument"];
    params.uri = document["uri"].string();
    params.version = document["version"].integer();
    params.text = document["text"].take_string();
}

void decode(const In& in, DidChangeTextDocumentParams& params) {
    const In document = in["textDocument"];
    params.uri = document["uri"].string();
    if (document["version"].exists()) params.version = document["version"].integer();
    in["contentChanges"].entries([&](const In& entry) {
        ContentChange change;
        if (entry["range"].exists()) decode(entry["range"], change.range.emplace());
        change.text = entry["text"].take_string();
        params.contentChanges.push_back(std::move(change));
    });
}

void decode(const In& in, DocumentParams& params) {
    decode(in["textDocument"], params.textDocument);
}

void decode(const In& in, DiagnosticParams& params) {
    decode(in["textDocument"], params.textDocument);
    if (in["previousResultId"].exists()) params.previousResultId = in["previousResultId"].string();
}

void decode(const In& in, WorkspaceDiagnosticParams& params) {
    in["previousResultIds"].entries([&](const In& entry) {
        params.previousResultIds[entry["uri"].string()] = entry["value"].string();
    });
    params.workDoneToken = in["workDoneToken"].json();
    params.partialResultToken = in["partialResultToken"].json();
}

void decode(const In& in, WorkspaceSymbolParams& params) {
    params.query = in["query"].string();
}

void decode(const In& in, FoldersChange& params) {
    const In event = in["event"];
    event["added"].entries([&](const In& each) { params.added.push_back(each["uri"].string()); });
    event["removed"].entries(
        [&](const In& each) { params.removed.push_back(each["uri"].string()); });
}

void decode(const In& in, SemanticTokensDeltaParams& params) {
    decode(in["textDocument"], params.textDocument);
    params.previousResultId = in["previousResultId"].string();
}

void decode(const In& in, PositionParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["position"], params.position);
}

void decode(const In& in, RangeParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["range"], params.range);
}

void decode(const In& in, DidChangeConfigurationParams& params) {
    params.settings = in["settings"].json();
}

void decode(const In& in, FileEvents& params) {
    in["changes"].entries([&](const In& change) { params.uris.push_back(change["uri"].string()); });
}

void decode(const In& in, ExecuteCommandParams& params) {
    params.command = in["command"].string();
    std::size_t index = 0;
    in["arguments"].entries([&](const In& argument) {
        if (index == 0) {
            params.textDocument.uri =
                argument.is_object() ? argument["uri"].string() : argument.string();
        }
        if (index == 1) params.edit = argument.json();
        ++index;
    });
}

void decode(const In& in, CodeActionParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["range"], params.range);
    in["context"]["only"].entries([&](const In& kind) { params.only.push_back(kind.string()); });
}

void decode(const In& in, CodeActionResolveParams& params) {
    params.textDocument.uri = in["data"]["uri"].string();
    params.sweep = in["data"]["sweep"].string();
    params.action = in.json();
}

void decode(const In& in, InlayHintResolveParams& params) {
    params.textDocument.uri = in["data"]["uri"].string();
    decode(in["position"], params.position);
    params.hint = in.json();
}

void decode(const In& in, OnTypeFormattingParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["position"], params.position);
    params.ch = in["ch"].string();
}

void decode(const In& in, InlineCompletionParams& params) {
    constexpr int invoked = 1; // InlineCompletionTriggerKind.Invoked
    decode(in["textDocument"], params.textDocument);
    decode(in["position"], params.position);
    const In kind = in["context"]["triggerKind"];
    params.invoked = !kind.exists() || kind.integer() == invoked;
}

void decode(const In& in, CompletionResolveParams& params) {
    params.textDocument.uri = in["data"]["uri"].string();
    params.topic = in["data"]["topic"].string();
    params.item = in.json();
}

void decode(const In& in, TimesParams& params) {
    decode(in["textDocument"], params.textDocument);
    if (in["position"].exists()) decode(in["position"], params.position.emplace());
}

void decode(const In& in, ExportParams& params) {
    decode(in["textDocument"], params.textDocument);
    params.target = in["target"].string();
    if (in["columns"].exists()) params.columns = in["columns"].integer();
}

void decode(const In& in, SpeakParams& params) {
    decode(in["textDocument"], params.textDocument);
    params.file = in["file"].string();
    if (in["position"].exists()) decode(in["position"], params.position.emplace());
    params.workDoneToken = in["workDoneToken"].json();
}

void decode(const In& in, ExplainParams& params) {
    decode(in["textDocument"], params.textDocument);
    if (in["position"].exists()) decode(in["position"], params.position.emplace());
}

void decode(const In& in, ReferenceParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["position"], params.position);
    params.includeDeclaration = in["context"]["includeDeclaration"].flag();
}

void decode(const In& in, RenameParams& params) {
    decode(in["textDocument"], params.textDocument);
    decode(in["position"], params.position);
    params.newName = in["newName"].string();
}

void decode(const In& in, SelectionRangeParams& params) {
    decode(in["textDocument"], params.textDocument);
    in["positions"].entries(
        [&](const In& position) { decode(position, params.positions.emplace_back()); });
}

// --- to the client -----------------------------------------------------------------------------

Json markup(bool markdown, std::string value) {
    return {{"kind", markdown ? "markdown" : "plaintext"}, {"value", std::move(value)}};
}

Json encode(const Position& position) {
    return {{"line", position.line}, {"character", position.character}};
}

Json encode(const Range& range) {
    return {{"start", encode(range.start)}, {"end", encode(range.end)}};
}

Json encode(const TextEdit& edit) {
    if (edit.snippet.empty()) return {{"range", encode(edit.range)}, {"newText", edit.newText}};
    return {{"range", encode(edit.range)},
            {"snippet", {{"kind", "snippet"}, {"value", edit.snippet}}}};
}

Json encode(const WorkspaceEdit& edit) {
    constexpr const char* annotation = "preview";
    Json edits = encode_edits(edit.edits);
    if (!edit.versioned) return {{"changes", {{edit.uri, std::move(edits)}}}};
    if (!edit.preview.empty()) {
        for (Json& one : edits)
            one["annotationId"] = annotation;
    }
    Json changes = Json::array();
    if (edit.creates) {
        changes.push_back(
            {{"kind", "create"}, {"uri", edit.uri}, {"options", {{"ignoreIfExists", true}}}});
    }
    const Json version = edit.unopened ? Json() : Json(edit.version);
    changes.push_back(
        {{"textDocument", {{"uri", edit.uri}, {"version", version}}}, {"edits", std::move(edits)}});
    Json result = {{"documentChanges", std::move(changes)}};
    if (!edit.preview.empty()) {
        result["changeAnnotations"][annotation] = {{"label", edit.preview},
                                                   {"needsConfirmation", true}};
    }
    return result;
}

Json encode(const Diagnostic& diagnostic) {
    Json result = {{"range", encode(diagnostic.range)},
                   {"severity", diagnostic.severity},
                   {"source", "sayline"},
                   {"message", diagnostic.message}};
    if (!diagnostic.code.empty()) result["code"] = diagnostic.code;
    return result;
}

Json encode(const Hover& hover) {
    return {{"contents", markup(hover.markdown, hover.value)}, {"range", encode(hover.range)}};
}

Json encode(const InlayHint& hint) {
    Json result = {
        {"position", encode(hint.position)}, {"label", hint.label}, {"paddingLeft", true}};
    if (!hint.tooltip.empty()) result["tooltip"] = hint.tooltip;
    if (!hint.script.empty()) result["data"] = {{"uri", hint.script}};
    return result;
}

Json encode(const CodeAction& action) {
    const auto command = [&]() -> Json {
        return {{"title", action.title},
                {"command", action.command},
                {"arguments", Json::array({action.script})}};
    };
    if (action.as_command && !action.command.empty()) return command();
    if (action.as_command) {
        return {{"title", action.title},
                {"command", "sayline.applyFix"},
                {"arguments", Json::array({action.script, encode(action.edit)})}};
    }
    Json result = {{"title", action.title}, {"kind", action.kind}};
    if (!action.command.empty()) {
        result["command"] = command();
    } else if (action.sweep.empty()) {
        result["edit"] = encode(action.edit);
    } else {
        result["data"] = {{"uri", action.script}, {"sweep", action.sweep}};
    }
    if (action.diagnostic) result["diagnostics"] = Json::array({encode(*action.diagnostic)});
    if (action.isPreferred) result["isPreferred"] = true;
    return result;
}

Json encode(const CompletionList& list) {
    Json items = Json::array();
    for (const CompletionItem& item : list.items) {
        Json entry = {{"label", item.label},
                      {"kind", item.kind},
                      {"insertTextFormat", item.snippet ? 2 : 1},
                      {"textEdit", encode(item.textEdit)}};
        if (!item.detail.empty()) entry["detail"] = item.detail;
        if (!item.filterText.empty()) entry["filterText"] = item.filterText;
        if (!item.documentation.empty()) {
            entry["documentation"] = markup(item.markdown, item.documentation);
        }
        if (!item.sortText.empty()) entry["sortText"] = item.sortText;
        if (!item.script.empty()) entry["data"] = {{"uri", item.script}, {"topic", item.topic}};
        items.push_back(std::move(entry));
    }
    return {{"isIncomplete", false}, {"items", std::move(items)}};
}

Json encode(const InlineCompletionList& list) {
    Json items = Json::array();
    for (const TextEdit& item : list.items)
        items.push_back({{"insertText", item.newText}, {"range", encode(item.range)}});
    return {{"items", std::move(items)}};
}

Json encode(const CodeLens& lens) {
    return {{"range", encode(lens.range)}, {"command", {{"title", lens.title}, {"command", ""}}}};
}

Json encode(const FoldingRange& fold) {
    Json result = {{"startLine", fold.range.start.line}, {"endLine", fold.range.end.line}};
    if (!fold.lines_only) result["endCharacter"] = fold.range.end.character;
    if (!fold.kind.empty()) result["kind"] = fold.kind;
    return result;
}

Json encode(const Location& location) {
    return {{"uri", location.uri}, {"range", encode(location.range)}};
}

Json encode(const SymbolInformation& symbol) {
    Json result = {
        {"name", symbol.name}, {"kind", symbol.kind}, {"location", encode(symbol.location)}};
    if (!symbol.containerName.empty()) result["containerName"] = symbol.containerName;
    return result;
}

Json encode(const DocumentHighlight& highlight) {
    return {{"range", encode(highlight.range)}, {"kind", highlight.kind}};
}

Json encode(const LinkedEditingRanges& ranges) {
    return {{"ranges", Json::array({encode(ranges.open), encode(ranges.close)})},
            {"wordPattern", ranges.wordPattern}};
}

Json encode(const PrepareRename& spot) {
    return {{"range", encode(spot.range)}, {"placeholder", spot.placeholder}};
}

Json encode(const DocumentLink& link) {
    Json result = {{"range", encode(link.range)}, {"target", link.target}};
    if (!link.tooltip.empty()) result["tooltip"] = link.tooltip;
    return result;
}

// The protocol wants the innermost outermost: each holds its parent.
Json encode(const SelectionRange& selection) {
    Json result;
    for (auto range = selection.ranges.rbegin(); range != selection.ranges.rend(); ++range) {
        Json inner = {{"range", encode(*range)}};
        if (!result.is_null()) inner["parent"] = std::move(result);
        result = std::move(inner);
    }
    return result;
}

Json encode(const ScriptTimes& times) {
    Json result = encode_row(times.whole);
    result["schema"] = 1;
    Json& sections = result["sections"] = Json::array();
    for (const ScriptTimes::Row& row : times.sections) {
        Json entry = encode_row(row);
        entry["name"] = row.name;
        entry["level"] = row.level;
        entry["at"] = rounded(row.at);
        entry["range"] = encode(row.range);
        sections.push_back(std::move(entry));
    }
    if (times.at) result["at"] = rounded(*times.at);
    return result;
}

Json encode(const Exported& made) {
    return {{"target", made.target}, {"text", made.text}};
}

Json encode(const RequestId& id) {
    if (const auto* number = std::get_if<std::int64_t>(&id)) return *number;
    return std::get<std::string>(id);
}

std::string write(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

// --- long answers, written at once -------------------------------------------------------------

namespace {

// As a JSON string. Most names are plain letters, which stand as they are.
void add_text(std::string& out, std::string_view text) {
    const bool escaped = std::any_of(text.begin(), text.end(), [](char c) {
        return static_cast<unsigned char>(c) < ' ' || c == '"' || c == '\\';
    });
    const bool plain = !escaped && unicode::is_valid_utf8(text);
    if (plain) {
        out += '"';
        out += text;
        out += '"';
    } else {
        out += write(Json(text));
    }
}

void add_range(std::string& out, const Range& range) {
    fmt::format_to(std::back_inserter(out),
                   R"({{"start":{{"line":{},"character":{}}},"end":{{"line":{},"character":{}}}}})",
                   range.start.line, range.start.character, range.end.line, range.end.character);
}

void add_nested(std::string& out, const DocumentSymbol& symbol) {
    out += R"({"name":)";
    add_text(out, symbol.name);
    if (!symbol.detail.empty()) {
        out += R"(,"detail":)";
        add_text(out, symbol.detail);
    }
    fmt::format_to(std::back_inserter(out), R"(,"kind":{},"range":)", symbol.kind);
    add_range(out, symbol.range);
    out += R"(,"selectionRange":)";
    add_range(out, symbol.selectionRange);
    if (!symbol.children.empty()) {
        out += R"(,"children":[)";
        for (const DocumentSymbol& child : symbol.children) {
            if (out.back() != '[') out += ',';
            add_nested(out, child);
        }
        out += ']';
    }
    out += '}';
}

// One row a symbol, for clients that know no tree.
void add_flat(std::string& out, const DocumentSymbol& symbol, std::string_view uri,
              std::string_view container) {
    if (out.back() != '[') out += ',';
    out += R"({"name":)";
    add_text(out, symbol.name);
    fmt::format_to(std::back_inserter(out), R"(,"kind":{},"location":{{"uri":)", symbol.kind);
    add_text(out, uri);
    out += R"(,"range":)";
    add_range(out, symbol.range);
    out += '}';
    if (!container.empty()) {
        out += R"(,"containerName":)";
        add_text(out, container);
    }
    out += '}';
    for (const DocumentSymbol& child : symbol.children)
        add_flat(out, child, uri, symbol.name);
}

} // namespace

std::string write(const DocumentSymbols& symbols) {
    std::string out = "[";
    for (const DocumentSymbol& symbol : symbols.symbols) {
        if (!symbols.nested) {
            add_flat(out, symbol, symbols.uri, {});
            continue;
        }
        if (out.back() != '[') out += ',';
        add_nested(out, symbol);
    }
    return out + ']';
}

std::string write(const SemanticTokens& tokens) {
    const std::string id =
        tokens.resultId.empty() ? "" : fmt::format(R"("resultId":"{}",)", tokens.resultId);
    return fmt::format(R"({{{}"data":[{}]}})", id, fmt::join(tokens.data, ","));
}

std::string response(const RequestId& id, std::string_view result) {
    return fmt::format(R"({{"jsonrpc":"2.0","id":{},"result":{}}})", write(encode(id)), result);
}

std::string write(const DiagnosticReport& report, std::string_view more) {
    if (!report.items)
        return fmt::format(R"({{{}"kind":"unchanged","resultId":"{}"}})", more, report.resultId);
    return fmt::format(R"({{{}"kind":"full","resultId":"{}","items":{}}})", more, report.resultId,
                       *report.items);
}

std::string write(const SemanticTokensDelta& delta) {
    if (!delta.edit) return write(delta.whole);
    const SemanticTokensDelta::Edit& edit = *delta.edit;
    const bool empty = edit.deleteCount == 0 && edit.data.empty();
    const std::string edits =
        empty ? ""
              : fmt::format(R"({{"start":{},"deleteCount":{},"data":[{}]}})", edit.start,
                            edit.deleteCount, fmt::join(edit.data, ","));
    return fmt::format(R"({{"resultId":"{}","edits":[{}]}})", delta.whole.resultId, edits);
}

} // namespace say::lsp
