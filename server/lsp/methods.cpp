// The methods of the protocol, one row each, and the handlers of those that ask about a script.
// A handler is a function from a snapshot and its parameters to what is sent; the row decodes,
// calls and encodes.
#include "exporters/exporter.h"
#include "host/explain_json.h"
#include "host/files.h"
#include "host/manual.h"
#include "host/pls.h"
#include "host/settings.h"
#include "lsp/convert.h"
#include "lsp/method.h"
#include "lsp/places.h"
#include "lsp/session.h"
#include "lsp/told.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>
#include <filesystem>

namespace say::lsp {
namespace {

// --- handlers ----------------------------------------------------------------------------------

Columns columns_of(const Snapshot& snapshot) {
    return {snapshot.text, snapshot.client.encoding};
}

std::optional<Hover> on_hover(const Snapshot& snapshot, const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    auto found = hover(snapshot.analysis, columns.offset(params.position));
    if (!found) return std::nullopt;
    const bool markdown = snapshot.client.hover_markdown;
    return Hover{.markdown = markdown,
                 .value = markdown ? std::move(found->markdown) : to_plain(found->markdown),
                 .range = columns.range(found->span)};
}

std::vector<InlayHint> on_inlay_hint(const Snapshot& snapshot, const RangeParams& params) {
    Columns columns = columns_of(snapshot);
    std::vector<InlayHint> hints;
    for (say::InlayHint& hint : inlay_hints(snapshot.analysis, columns.span(params.range))) {
        InlayHint& sent = hints.emplace_back(InlayHint{
            .position = columns.position(hint.at), .label = std::move(hint.label), .tooltip = {}});
        if (snapshot.client.hint_resolve) {
            sent.script = snapshot.uri;
        } else {
            sent.tooltip = inlay_tooltip(snapshot.analysis, hint.at);
        }
    }
    return hints;
}

// The hint comes back with its tooltip. Where the script has changed meanwhile and nothing ends
// there any more, it comes back as it is: the client is about to ask for hints anew.
Json on_inlay_hint_resolve(const Snapshot& snapshot, const InlayHintResolveParams& params) {
    Json hint = *params.hint;
    Columns columns = columns_of(snapshot);
    std::string tooltip = inlay_tooltip(snapshot.analysis, columns.offset(params.position));
    if (!tooltip.empty()) hint["tooltip"] = std::move(tooltip);
    return hint;
}

std::string_view action_kind(FixAction::Kind kind) {
    switch (kind) {
    case FixAction::Kind::quickfix: return "quickfix";
    case FixAction::Kind::rewrite: return "refactor.rewrite";
    case FixAction::Kind::fix_all: return "source.fixAll.sayline";
    }
    return "quickfix";
}

// "source" asks for "source.fixAll.sayline" too.
bool wanted(std::string_view kind, const std::vector<std::string>& only) {
    if (only.empty()) return true;
    return std::any_of(only.begin(), only.end(), [&](const std::string& prefix) {
        return prefix.empty() || kind == prefix ||
               (kind.starts_with(prefix) && kind[prefix.size()] == '.');
    });
}

WorkspaceEdit edit_of(const Snapshot& snapshot, const std::vector<say::TextEdit>& edits,
                      Columns& columns) {
    return {.uri = snapshot.uri,
            .version = snapshot.version,
            .edits = to_edits(edits, columns),
            .versioned = snapshot.client.document_changes};
}

// With stops in a snippet's own syntax: what a guess put in is selected, to be typed over.
std::string snippet_of(std::string_view text, Span guess) {
    const auto plain = [](std::string_view part) {
        std::string escaped;
        for (const char c : part) {
            if (c == '$' || c == '}' || c == '\\') escaped += '\\';
            escaped += c;
        }
        return escaped;
    };
    return fmt::format("{}${{1:{}}}{}", plain(text.substr(0, guess.begin.value)),
                       plain(slice(text, guess)), plain(text.substr(guess.end.value)));
}

// One place to type over at a time; a bulk fix has none.
WorkspaceEdit edit_of(const Snapshot& snapshot, const Fix& fix, Columns& columns) {
    WorkspaceEdit edit = edit_of(snapshot, fix.edits, columns);
    if (!snapshot.client.snippet_edits || fix.edits.size() != 1) return edit;
    const say::TextEdit& only = fix.edits.front();
    if (const Span guess = first_guess(only); !guess.empty())
        edit.edits.front().snippet = snippet_of(only.replacement, guess);
    return edit;
}

// Many edits that rest on a guess are shown before they are taken, where the editor can.
WorkspaceEdit edit_of(const Snapshot& snapshot, const std::vector<say::TextEdit>& edits,
                      Columns& columns, std::string_view preview) {
    WorkspaceEdit edit = edit_of(snapshot, edits, columns);
    if (snapshot.client.change_annotations) edit.preview = preview;
    return edit;
}

WorkspaceEdit edit_of(const Snapshot& snapshot, Sweep sweep, Columns& columns) {
    return edit_of(snapshot, edits_of(snapshot.analysis, sweep), columns,
                   is_guess(sweep) ? title_of(sweep) : std::string_view{});
}

// What a lesson writes into the project's word list; nothing where there is no place for it.
std::optional<WorkspaceEdit> edit_of(const Snapshot& snapshot, const Lesson& lesson) {
    const auto script = path_of(snapshot.uri);
    if (!script) return std::nullopt;
    const std::filesystem::path file = word_list_file(*script);
    std::error_code error;
    const bool exists = std::filesystem::exists(file, error);
    if (!exists && !snapshot.client.create_files) return std::nullopt;
    auto text = std::make_shared<const Text>(std::string{});
    if (exists) {
        const auto read = read_text(file);
        if (!read) return std::nullopt;
        text = *read;
        // Most likely the editor holds what it should say, from a lesson before, and has not saved
        // it: a second beginning would spoil the list.
        if (text->bytes().empty()) return std::nullopt;
    }
    const auto edits = pls_edits(text->bytes(), lesson.words, lesson.phones);
    if (edits.empty()) return std::nullopt;
    Columns columns(*text, snapshot.client.encoding);
    return WorkspaceEdit{.uri = uri_of(file),
                         .version = 0,
                         .edits = to_edits(edits, columns),
                         .versioned = snapshot.client.document_changes,
                         .creates = !exists,
                         .unopened = true};
}

constexpr std::string_view fix_all_command = "sayline.fixAll";
constexpr std::string_view split_command = "sayline.splitScript";
constexpr std::string_view mark_command = "sayline.markScript";
constexpr std::string_view apply_command = "sayline.applyFix";
constexpr std::string_view show_settings_command = "sayline.openSettings";
constexpr std::string_view show_reader_command = "sayline.openReader";
constexpr std::string_view show_rules_command = "sayline.openRules";

std::string_view command_of(Sweep sweep) {
    switch (sweep) {
    case Sweep::split: return split_command;
    case Sweep::mend: return fix_all_command;
    case Sweep::mark: return mark_command;
    }
    return {};
}

std::vector<CodeAction> on_code_action(const Snapshot& snapshot, const CodeActionParams& params) {
    const ClientAbilities& client = snapshot.client;
    Columns columns = columns_of(snapshot);
    std::vector<CodeAction> actions;
    for (const FixAction& action : fixes(snapshot.analysis, columns.span(params.range))) {
        const std::string_view kind = action_kind(action.kind);
        if (!wanted(kind, params.only)) continue;
        CodeAction result{.title = action.fix.title,
                          .kind = std::string(kind),
                          .diagnostic = {},
                          .isPreferred = action.fix.preferred && client.action_preferred,
                          .edit = {},
                          .as_command = !client.action_literals,
                          .script = snapshot.uri};
        if (action.lesson) {
            auto edit = edit_of(snapshot, *action.lesson);
            if (!edit) continue;
            result.edit = std::move(*edit);
        } else if (action.sweep && client.action_resolve && client.action_literals) {
            result.sweep = name_of(*action.sweep);
        } else if (action.sweep && client.apply_edit) {
            result.command = command_of(*action.sweep); // its edits are made when it is chosen
        } else if (action.sweep) {
            result.edit = edit_of(snapshot, *action.sweep, columns);
        } else if (action.preview) {
            result.edit = edit_of(snapshot, action.fix.edits, columns, action.fix.title);
        } else {
            result.edit = edit_of(snapshot, action.fix, columns);
        }
        if (action.finding != nullptr) {
            result.diagnostic = to_diagnostic(*action.finding, columns);
        }
        actions.push_back(std::move(result));
    }
    return actions;
}

// The action comes back with its edit, made for the script as it is now.
Json on_code_action_resolve(const Snapshot& snapshot, const CodeActionResolveParams& params) {
    Json action = params.action ? *params.action : Json::object();
    const std::optional<Sweep> sweep = find_sweep(params.sweep);
    if (!sweep) return action;
    Columns columns = columns_of(snapshot);
    action["edit"] = encode(edit_of(snapshot, *sweep, columns));
    return action;
}

DocumentSymbols on_document_symbol(const Snapshot& snapshot, const DocumentParams& /*params*/) {
    Columns columns = columns_of(snapshot);
    DocumentSymbols result{
        .uri = snapshot.uri, .nested = snapshot.client.nested_symbols, .symbols = {}};
    for (const OutlineEntry& entry : outline(snapshot.analysis)) {
        result.symbols.push_back(to_symbol(entry, columns));
    }
    return result;
}

DiagnosticReport on_diagnostic(const Snapshot& snapshot, const DiagnosticParams& params) {
    const Findings& findings = snapshot.told->findings(snapshot.kept, snapshot.text,
                                                       snapshot.client.encoding, snapshot.typing);
    DiagnosticReport report{.resultId = findings.id, .items = {}};
    if (findings.id != params.previousResultId) report.items = findings.json;
    return report;
}

SemanticTokens all_tokens(const Snapshot& snapshot) {
    Columns columns = columns_of(snapshot);
    return to_tokens(tokens(snapshot.analysis, Span{Offset{}, snapshot.text.end()}), columns);
}

SemanticTokens on_tokens(const Snapshot& snapshot, const DocumentParams& /*params*/) {
    return snapshot.told->tokens(all_tokens(snapshot));
}

SemanticTokensDelta on_tokens_delta(const Snapshot& snapshot,
                                    const SemanticTokensDeltaParams& params) {
    return snapshot.told->tokens_since(params.previousResultId, all_tokens(snapshot));
}

SemanticTokens on_tokens_range(const Snapshot& snapshot, const RangeParams& params) {
    Columns columns = columns_of(snapshot);
    return to_tokens(tokens(snapshot.analysis, columns.span(params.range)), columns);
}

CompletionList on_completion(const Snapshot& snapshot, const PositionParams& params) {
    Columns columns = columns_of(snapshot);
    CompletionList list;
    const Offset at = columns.offset(params.position);
    for (const say::CompletionItem& item : completion(snapshot.text, at, &snapshot.analysis)) {
        list.items.push_back(to_completion(item, columns, snapshot.client));
        // Clients sort by label unless told; ours is the order of use.
        list.items.back().sortText = std::to_string(1000 + list.items.size());
        // Clients ask about every item that is looked at, those without a topic too.
        if (snapshot.client.completion_resolve) list.items.back().script = snapshot.uri;
    }
    return list;
}

Json on_completion_resolve(const Snapshot& snapshot, const CompletionResolveParams& params) {
    Json item = *params.item;
    std::string text = to_documentation(params.topic, snapshot.client);
    if (!text.empty()) {
        item["documentation"] = markup(snapshot.client.completion_markdown, std::move(text));
    }
    return item;
}

std::vector<TextEdit> on_formatting(const Snapshot& snapshot, const DocumentParams& /*params*/) {
    Columns columns = columns_of(snapshot);
    return to_edits(format(snapshot.analysis), columns);
}

std::vector<TextEdit> on_range_formatting(const Snapshot& snapshot, const RangeParams& params) {
    Columns columns = columns_of(snapshot);
    const Span range = columns.span(params.range);
    auto edits = format(snapshot.analysis);
    std::erase_if(edits, [&](const say::TextEdit& edit) { return !range.covers(edit.span); });
    return to_edits(edits, columns);
}

// Enter alone may change what stands before the cursor.
std::vector<TextEdit> on_type_formatting(const Snapshot& snapshot,
                                         const OnTypeFormattingParams& params) {
    if (params.ch != "\n") return {};
    Columns columns = columns_of(snapshot);
    const Offset at = columns.offset(params.position);
    return to_edits(after_enter(snapshot.text, at, snapshot.analysis.options), columns);
}

// Unasked nothing is offered in a draft: nobody nags a writer to mark.
InlineCompletionList on_inline_completion(const Snapshot& snapshot,
                                          const InlineCompletionParams& params) {
    InlineCompletionList list;
    if (!params.invoked && snapshot.analysis.options.stage == Stage::draft) return list;
    Columns columns = columns_of(snapshot);
    const auto mark = next_mark(snapshot.analysis, columns.offset(params.position));
    if (mark) list.items.push_back({columns.range(mark->replace), mark->insert});
    return list;
}

CommandOutcome refusal(std::string why) {
    return {.label = {}, .edit = {}, .error = std::move(why)};
}

// The file in the editor, if both exist and can do it.
CommandOutcome show(const ClientAbilities& client, const std::filesystem::path& file,
                    std::string_view remedy) {
    std::error_code error;
    if (!std::filesystem::exists(file, error)) {
        return refusal(fmt::format("there is no {} yet; {}", file.string(), remedy));
    }
    if (!client.show_document) {
        return refusal("this editor cannot be asked to open a file; it is " + file.string());
    }
    CommandOutcome outcome;
    outcome.show = uri_of(file);
    return outcome;
}

CommandOutcome show_settings(const Snapshot& snapshot) {
    const auto script = path_of(snapshot.uri);
    if (!script) return refusal("the script is not saved yet, so no folder has its settings");
    std::filesystem::path folder = find_settings_folder(*script);
    if (folder.empty()) folder = script->parent_path() / ".sayline";
    return show(snapshot.client, folder / "settings.json",
                "docs/options.md says what may stand in it");
}

CommandOutcome show_reader(const Snapshot& snapshot) {
    const auto script = path_of(snapshot.uri);
    const std::string& reader = snapshot.analysis.options.reader;
    if (!script) return refusal("the script is not saved yet, so no folder has its readers");
    if (reader.empty()) {
        return refusal("no reader is set; name one in the header, as in \"reader: mira\"");
    }
    const std::filesystem::path file = reader_file(*script, reader);
    if (file.empty()) return refusal("no folder .sayline stands beside the script or above it");
    return show(snapshot.client, file, "sayline calibrate learns it from a timed read");
}

CommandOutcome show_rules(const ClientAbilities& client) {
    const auto page = rules_page_file();
    if (!page) return refusal(page.error().message);
    return show(client, *page, "`sayline docs rules` prints it");
}

CommandOutcome on_command(const Snapshot& snapshot, const ExecuteCommandParams& params) {
    if (params.command == show_settings_command) return show_settings(snapshot);
    if (params.command == show_reader_command) return show_reader(snapshot);
    if (!snapshot.client.apply_edit) {
        return {.label = {}, .edit = {}, .error = "the editor cannot apply edits"};
    }
    Columns columns = columns_of(snapshot);
    const auto outcome = [&](Sweep sweep) {
        const std::vector<say::TextEdit> edits = edits_of(snapshot.analysis, sweep);
        CommandOutcome result{.label = std::string(title_of(sweep)), .edit = {}, .error = {}};
        if (!edits.empty()) {
            const auto preview = is_guess(sweep) ? title_of(sweep) : std::string_view{};
            result.edit =
                std::make_shared<const Json>(encode(edit_of(snapshot, edits, columns, preview)));
        }
        return result;
    };
    if (params.command == fix_all_command) return outcome(Sweep::mend);
    if (params.command == split_command) return outcome(Sweep::split);
    if (params.command == mark_command) return outcome(Sweep::mark);
    if (params.command == apply_command) {
        return {.label = "Apply a fix", .edit = params.edit, .error = {}};
    }
    return {.label = {}, .edit = {}, .error = "unknown command " + params.command};
}

ScriptTimes::Row to_row(const TimeRow& row, Columns& columns) {
    ScriptTimes::Row result{.name = row.name,
                            .level = row.level,
                            .at = row.at.count(),
                            .seconds = row.timing.expected.count(),
                            .low = row.timing.low.count(),
                            .high = row.timing.high.count(),
                            .target = {},
                            .off = row.off.count(),
                            .words = row.words,
                            .range = columns.range(row.span)};
    if (row.target) result.target = {row.target->low.count(), row.target->high.count()};
    return result;
}

ScriptTimes on_times(const Snapshot& snapshot, const TimesParams& params) {
    Columns columns = columns_of(snapshot);
    ScriptTimes result;
    for (const TimeRow& row : times(snapshot.analysis, false)) {
        if (row.level == 0) {
            result.whole = to_row(row, columns);
        } else {
            result.sections.push_back(to_row(row, columns));
        }
    }
    if (params.position)
        result.at = said_at(snapshot.analysis, columns.offset(*params.position)).count();
    return result;
}

// For an editor's list of what can be made. A sound is no text: sayline/speak makes it.
Json export_targets() {
    Json targets = Json::array();
    for (const Exporter& each : exporters()) {
        if (each.stream != nullptr) continue;
        targets.push_back(
            {{"name", each.name}, {"summary", each.summary}, {"file", ending_of(each)}});
    }
    return targets;
}

Exported on_export(const Snapshot& snapshot, const ExportParams& params) {
    const auto exporter = wanted_exporter(params.target);
    if (!exporter) return {.target = {}, .text = {}, .error = exporter.error().message};
    if ((*exporter)->stream != nullptr) {
        return {.target = {},
                .text = {},
                .error = fmt::format("{} is a sound, not a text; sayline/speak writes it to a file",
                                     params.target)};
    }
    ExportOptions options;
    if (params.columns > 0)
        options.columns = std::clamp(params.columns, fewest_columns, most_columns);
    return {.target = params.target,
            .text = (*exporter)->write(snapshot.analysis, options),
            .error = {}};
}

Json on_explain(const Snapshot& snapshot, const ExplainParams& params) {
    Json items = Json::array();
    if (!params.position) {
        explain_script(snapshot.analysis,
                       [&](const nlohmann::ordered_json& item) { items.push_back(Json(item)); });
        return items;
    }
    const Offset at = columns_of(snapshot).offset(*params.position);
    if (const Placed* placed = snapshot.analysis.script.thought_at(at)) {
        items.push_back(Json(explain_thought(snapshot.analysis, *placed)));
    }
    return items;
}

// --- from handlers to rows ---------------------------------------------------------------------

Reply to_reply(const Json& result) {
    return {.result = write(result), .edit = {}, .error = {}};
}

template <class Result> Reply to_reply(const Result& result) {
    return to_reply(encode(result));
}

template <class Result> Reply to_reply(const std::optional<Result>& result) {
    return to_reply(result ? encode(*result) : Json());
}

template <class Result> Reply to_reply(const std::vector<Result>& results);

template <class Result> Reply to_reply(const std::optional<std::vector<Result>>& results) {
    return results ? to_reply(*results) : to_reply(Json());
}

template <class Result> Reply to_reply(const std::vector<Result>& results) {
    Json list = Json::array();
    for (const Result& result : results) {
        list.push_back(encode(result));
    }
    return to_reply(list);
}

Reply to_reply(const DocumentSymbols& symbols) {
    return {.result = write(symbols), .edit = {}, .error = {}};
}

Reply to_reply(const SemanticTokens& tokens) {
    return {.result = write(tokens), .edit = {}, .error = {}};
}

Reply to_reply(const DiagnosticReport& report) {
    return {.result = write(report), .edit = {}, .error = {}};
}

Reply to_reply(const SemanticTokensDelta& delta) {
    return {.result = write(delta), .edit = {}, .error = {}};
}

Reply to_reply(const Exported& made) {
    return {.result = write(encode(made)), .edit = {}, .error = made.error};
}

Reply to_reply(const RenameOutcome& outcome) {
    return {.result = write(encode(outcome.edit)), .edit = {}, .error = outcome.refusal};
}

Reply to_reply(const CommandOutcome& outcome) {
    Reply reply{.result = "null", .edit = {}, .error = outcome.error};
    if (outcome.edit) {
        const Json edit = {{"label", outcome.label}, {"edit", *outcome.edit}};
        reply.edit = std::make_shared<const Json>(edit);
    }
    if (!outcome.show.empty()) {
        const Json show = {{"uri", outcome.show}, {"takeFocus", true}};
        reply.show = std::make_shared<const Json>(show);
    }
    return reply;
}

template <class Result, class Params>
Prepared prepare(const In& in, Result (*handler)(const Snapshot&, const Params&)) {
    Params params;
    decode(in, params);
    std::string uri = params.textDocument.uri;
    return {.uri = std::move(uri),
            .run = [params = std::move(params), handler](const Snapshot& snapshot) {
                return to_reply(handler(snapshot, params));
            }};
}

// All commands but one are about a script.
Prepared prepare_command(const In& in) {
    ExecuteCommandParams params;
    decode(in, params);
    if (params.command == show_rules_command) {
        return {.uri = {}, .run = {}, .at_once = [](const ClientAbilities& client) {
                    return to_reply(show_rules(client));
                }};
    }
    if (params.textDocument.uri.empty())
        in["arguments"].refuse("expected the script's URI as the first one");
    return prepare<CommandOutcome, ExecuteCommandParams>(in, on_command);
}

template <class Params>
Json call(Session& session, const In& in, void (Session::*handler)(Params)) {
    Params params;
    decode(in, params);
    if (!in.failed()) (session.*handler)(std::move(params));
    return {};
}

template <class Params>
Json call(Session& session, const In& in, Json (Session::*handler)(Params)) {
    Params params;
    decode(in, params);
    return in.failed() ? Json() : (session.*handler)(std::move(params));
}

using Advertise = void (*)(Json&);

template <auto Handler> Method request(std::string_view name, Lane lane, Advertise advertise) {
    return {.name = name,
            .lane = lane,
            .is_request = true,
            .prepare = [](const In& in) { return prepare(in, Handler); },
            .advertise = advertise};
}

// A request that is answered a step at a time: about the open folders, or a sound.
template <class Params>
void begin(Session& session, const RequestId& id, const In& in,
           void (Session::*handler)(const RequestId&, Params)) {
    Params params;
    decode(in, params);
    if (!in.failed()) (session.*handler)(id, std::move(params));
}

template <auto Handler> Method late_request(std::string_view name, Advertise advertise = nullptr) {
    return {.name = name,
            .lane = Lane::late,
            .is_request = true,
            .begin = [](Session& session, const RequestId& id,
                        const In& in) { begin(session, id, in, Handler); },
            .advertise = advertise};
}

// A request of the session itself.
template <auto Handler> Method request(std::string_view name) {
    return {.name = name, .is_request = true, .handle = [](Session& session, const In& in) {
                return call(session, in, Handler);
            }};
}

template <auto Handler> Method notification(std::string_view name, Advertise advertise = nullptr) {
    return {.name = name,
            .handle = [](Session& session, const In& in) { return call(session, in, Handler); },
            .advertise = advertise};
}

// --- capabilities of more than one word --------------------------------------------------------

void advertise_actions(Json& capabilities) {
    capabilities["codeActionProvider"] = {
        {"codeActionKinds", {"quickfix", "refactor.rewrite", "source.fixAll.sayline"}},
        {"documentation", Json::array({{{"kind", "quickfix"},
                                        {"command",
                                         {{"title", "What the rules look for"},
                                          {"command", show_rules_command}}}}})}};
}

void advertise_completion(Json& capabilities) {
    capabilities["completionProvider"] = {
        {"triggerCharacters", {"^", "{", "[", "*", "/", "(", "%", ":"}}};
}

void advertise_commands(Json& capabilities) {
    capabilities["executeCommandProvider"] = {
        {"commands",
         {fix_all_command, split_command, mark_command, apply_command, show_rules_command,
          show_settings_command, show_reader_command}}};
}

void advertise_tokens(Json& capabilities) {
    Json& provider = capabilities["semanticTokensProvider"];
    provider["legend"] = {{"tokenTypes", token_type_names()},
                          {"tokenModifiers", token_modifier_names()}};
    provider["full"] = {{"delta", true}};
}

void advertise_diagnostics(Json& capabilities) {
    capabilities["diagnosticProvider"] = {{"identifier", "sayline"},
                                          {"interFileDependencies", false},
                                          {"workspaceDiagnostics", true}};
}

void advertise_folders(Json& capabilities) {
    capabilities["workspace"]["workspaceFolders"] = {{"supported", true},
                                                     {"changeNotifications", true}};
}

// The files that times and findings of a script may depend on.
void advertise_file_operation(Json& capabilities, std::string_view name) {
    Json filters = Json::array();
    for (const char* const glob : {"**/.sayline/**", "**/*.pls", "**/*.say"})
        filters.push_back({{"scheme", "file"}, {"pattern", {{"glob", glob}, {"matches", "file"}}}});
    filters.push_back({{"scheme", "file"}, {"pattern", {{"glob", "**"}, {"matches", "folder"}}}});
    capabilities["workspace"]["fileOperations"][name] = {{"filters", std::move(filters)}};
}

} // namespace

std::span<const Method> methods() {
    static const std::vector<Method> table = {
        request<&Session::initialize>("initialize"),
        notification<&Session::initialized>("initialized"),
        request<&Session::shutdown>("shutdown"),
        notification<&Session::exit>("exit"),
        notification<&Session::set_trace>("$/setTrace"),
        notification<&Session::cancel>("$/cancelRequest"),
        notification<&Session::did_open>(
            "textDocument/didOpen",
            [](Json& capabilities) { capabilities["textDocumentSync"]["openClose"] = true; }),
        notification<&Session::did_change>(
            "textDocument/didChange",
            [](Json& capabilities) { capabilities["textDocumentSync"]["change"] = 2; }),
        notification<&Session::did_save>(
            "textDocument/didSave",
            [](Json& capabilities) { capabilities["textDocumentSync"]["save"] = true; }),
        notification<&Session::did_close>("textDocument/didClose"),
        notification<&Session::did_change_configuration>("workspace/didChangeConfiguration"),
        notification<&Session::did_change_watched_files>("workspace/didChangeWatchedFiles"),
        notification<&Session::did_change_workspace_folders>("workspace/didChangeWorkspaceFolders",
                                                             advertise_folders),
        notification<&Session::did_change_files>(
            "workspace/didCreateFiles",
            [](Json& capabilities) { advertise_file_operation(capabilities, "didCreate"); }),
        notification<&Session::did_change_files>(
            "workspace/didRenameFiles",
            [](Json& capabilities) { advertise_file_operation(capabilities, "didRename"); }),
        notification<&Session::did_change_files>(
            "workspace/didDeleteFiles",
            [](Json& capabilities) { advertise_file_operation(capabilities, "didDelete"); }),
        request<on_hover>("textDocument/hover", Lane::worker,
                          [](Json& capabilities) { capabilities["hoverProvider"] = true; }),
        request<on_completion>("textDocument/completion", Lane::now, advertise_completion),
        request<on_inlay_hint>(
            "textDocument/inlayHint", Lane::worker,
            [](Json& capabilities) { capabilities["inlayHintProvider"] = true; }),
        request<on_inlay_hint_resolve>(
            "inlayHint/resolve", Lane::worker,
            [](Json& capabilities) {
                capabilities["inlayHintProvider"] = {{"resolveProvider", true}};
            }),
        request<on_completion_resolve>("completionItem/resolve", Lane::now,
                                       [](Json& capabilities) {
                                           capabilities["completionProvider"]["resolveProvider"] =
                                               true;
                                       }),
        request<on_code_action>("textDocument/codeAction", Lane::worker, advertise_actions),
        request<on_code_action_resolve>("codeAction/resolve", Lane::worker,
                                        [](Json& capabilities) {
                                            capabilities["codeActionProvider"]["resolveProvider"] =
                                                true;
                                        }),
        {"workspace/executeCommand", Lane::worker, true, prepare_command, nullptr, nullptr,
         advertise_commands},
        request<on_document_symbol>(
            "textDocument/documentSymbol", Lane::worker,
            [](Json& capabilities) { capabilities["documentSymbolProvider"] = true; }),
        request<on_tokens>("textDocument/semanticTokens/full", Lane::worker, advertise_tokens),
        request<on_tokens_delta>("textDocument/semanticTokens/full/delta", Lane::worker, nullptr),
        request<on_diagnostic>("textDocument/diagnostic", Lane::worker, advertise_diagnostics),
        late_request<&Session::workspace_diagnostic>("workspace/diagnostic"),
        late_request<&Session::workspace_symbol>(
            "workspace/symbol",
            [](Json& capabilities) { capabilities["workspaceSymbolProvider"] = true; }),
        request<on_tokens_range>(
            "textDocument/semanticTokens/range", Lane::worker,
            [](Json& capabilities) { capabilities["semanticTokensProvider"]["range"] = true; }),
        request<on_formatting>(
            "textDocument/formatting", Lane::worker,
            [](Json& capabilities) { capabilities["documentFormattingProvider"] = true; }),
        request<on_range_formatting>(
            "textDocument/rangeFormatting", Lane::worker,
            [](Json& capabilities) { capabilities["documentRangeFormattingProvider"] = true; }),
        request<on_type_formatting>("textDocument/onTypeFormatting", Lane::now,
                                    [](Json& capabilities) {
                                        capabilities["documentOnTypeFormattingProvider"] = {
                                            {"firstTriggerCharacter", "\n"}};
                                    }),
        request<on_inline_completion>(
            "textDocument/inlineCompletion", Lane::worker,
            [](Json& capabilities) { capabilities["inlineCompletionProvider"] = true; }),
        request<on_code_lens>("textDocument/codeLens", Lane::worker,
                              [](Json& capabilities) {
                                  capabilities["codeLensProvider"] = {{"resolveProvider", false}};
                              }),
        request<on_folding_range>(
            "textDocument/foldingRange", Lane::worker,
            [](Json& capabilities) { capabilities["foldingRangeProvider"] = true; }),
        request<on_selection_range>(
            "textDocument/selectionRange", Lane::worker,
            [](Json& capabilities) { capabilities["selectionRangeProvider"] = true; }),
        request<on_document_highlight>(
            "textDocument/documentHighlight", Lane::worker,
            [](Json& capabilities) { capabilities["documentHighlightProvider"] = true; }),
        request<on_linked_editing_range>(
            "textDocument/linkedEditingRange", Lane::worker,
            [](Json& capabilities) { capabilities["linkedEditingRangeProvider"] = true; }),
        request<on_references>(
            "textDocument/references", Lane::worker,
            [](Json& capabilities) { capabilities["referencesProvider"] = true; }),
        request<on_definition>(
            "textDocument/definition", Lane::worker,
            [](Json& capabilities) { capabilities["definitionProvider"] = true; }),
        request<on_rename>("textDocument/rename", Lane::worker,
                           [](Json& capabilities) {
                               capabilities["renameProvider"] = {{"prepareProvider", true}};
                           }),
        request<on_prepare_rename>("textDocument/prepareRename", Lane::worker, nullptr),
        request<on_document_link>(
            "textDocument/documentLink", Lane::worker,
            [](Json& capabilities) {
                capabilities["documentLinkProvider"] = {{"resolveProvider", false}};
            }),
        request<on_times>("sayline/times", Lane::worker, nullptr),
        request<on_explain>("sayline/explain", Lane::worker, nullptr),
        request<on_export>("sayline/export", Lane::worker,
                           [](Json& capabilities) {
                               capabilities["experimental"]["sayline"]["targets"] =
                                   export_targets();
                           }),
        late_request<&Session::speak>(
            "sayline/speak",
            [](Json& capabilities) { capabilities["experimental"]["sayline"]["speak"] = true; }),
    };
    return table;
}

const Method* find_method(std::string_view name) {
    const std::span<const Method> table = methods();
    const auto found = std::find_if(table.begin(), table.end(),
                                    [&](const Method& method) { return method.name == name; });
    return found == table.end() ? nullptr : &*found;
}

Json server_capabilities(Encoding encoding) {
    constexpr std::array names{"utf-8", "utf-16", "utf-32"};
    Json capabilities = {{"positionEncoding", names[static_cast<std::size_t>(encoding)]}};
    for (const Method& method : methods()) {
        if (method.advertise != nullptr) method.advertise(capabilities);
    }
    return capabilities;
}

} // namespace say::lsp
