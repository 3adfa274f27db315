// Messages in, messages out. Every request is answered once: what waits for an answer stands in
// `waiting_`, and answering takes it out.
#include "lsp/session.h"

#include "base/log.h"
#include "host/files.h"
#include "host/settings.h"
#include "lsp/convert.h"
#include "lsp/frame.h"
#include "lsp/told.h"

#include <fmt/core.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <utility>

namespace say::lsp {
namespace {

using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point since) {
    return std::chrono::duration<double, std::milli>(Clock::now() - since).count();
}

std::optional<RequestId> id_of(const Json& message) {
    const auto found = message.find("id");
    if (found == message.end()) return std::nullopt;
    if (found->is_string()) return RequestId{found->get<std::string>()};
    if (!found->is_number_integer()) return std::nullopt;
    return RequestId{found->get<std::int64_t>()};
}

std::string_view text_of(const Json& message, const char* member) {
    const auto found = message.find(member);
    if (found == message.end() || !found->is_string()) return {};
    return found->get_ref<const std::string&>();
}

// Settings come as they are or under the name of their section.
KeptJson settings_in(const KeptJson& json) {
    if (!json || !json->is_object()) return nullptr;
    const auto section = json->find("sayline");
    if (section == json->end()) return json->empty() ? nullptr : json;
    return section->is_object() ? std::make_shared<const Json>(*section) : nullptr;
}

bool same(const KeptJson& a, const KeptJson& b) {
    return a == b || (a && b && *a == *b);
}

Reply run_guarded(const Prepared& prepared, const Snapshot& snapshot) {
    try {
        return prepared.run(snapshot);
    } catch (const std::exception& bug) {
        log::error(fmt::format("request about {} failed: {}", snapshot.uri, bug.what()));
        return {.result = {}, .edit = {}, .error = "the server failed on this; its log says more"};
    }
}

// A problem's place counts lines and code points from 1; the diagnostic runs to the line's end.
Range range_of(const SettingsProblem& problem, Encoding encoding) {
    const auto read = read_text(problem.file);
    if (!read || problem.line == 0) return {};
    const Text& text = **read;
    const Position place{problem.line - 1, problem.column > 0 ? problem.column - 1 : 0};
    const Offset begin = Columns(text, Encoding::utf32).offset(place);
    return Columns(text, encoding).range({begin, text.line_span(place.line).end});
}

} // namespace

Session::Session(Worker& worker, Surroundings surroundings)
    : worker_(worker), surroundings_(std::move(surroundings)) {}

Session::~Session() {
    for (auto& [uri, script] : scripts_) {
        script.current->stop.request_stop();
    }
    for (auto& [id, waiting] : waiting_) {
        waiting.version->stop.request_stop();
    }
}

int Session::status_at_end() const {
    return exit_status_.value_or(state_ == State::shut_down ? 0 : 1);
}

// --- the envelope ------------------------------------------------------------------------------

void Session::receive(std::span<char> body) {
    repair_surrogates(body);
    Json message = Json::parse(body.begin(), body.end(), nullptr, false);
    if (message.is_discarded()) {
        refuse(ErrorCode::parse_error, "the message is not JSON");
        return;
    }
    if (message.is_array()) {
        take_batch(message);
    } else {
        take_guarded(message);
    }
}

void Session::take_batch(Json& messages) {
    if (messages.empty()) return refuse(ErrorCode::invalid_request, "a batch holds a message");
    batches_.open();
    for (Json& message : messages)
        take_guarded(message);
    if (const std::string answers = batches_.close(); !answers.empty()) surroundings_.send(answers);
}

void Session::take_guarded(Json& message) {
    try {
        take(message);
    } catch (const std::exception& bug) {
        log::error(fmt::format("message failed: {}", bug.what()));
        const auto id = id_of(message);
        if (id && message.contains("method")) {
            send_error(id, ErrorCode::internal_error, "the server failed on this");
        }
    }
}

void Session::refuse(ErrorCode code, std::string_view why) {
    log::warning(fmt::format("message refused: {}", why));
    send_error({}, code, why);
}

void Session::take(Json& message) {
    if (!message.is_object()) {
        refuse(ErrorCode::invalid_request, "a message is a JSON object");
        return;
    }
    const bool has_id = message.contains("id");
    const auto id = id_of(message);
    if (!message.contains("method")) {
        if (has_id && (message.contains("result") || message.contains("error"))) {
            take_answer(message);
        } else {
            send_error(id, ErrorCode::invalid_request, "the message has no method");
        }
        return;
    }
    const std::string method(text_of(message, "method"));
    if (method.empty() || text_of(message, "jsonrpc") != "2.0" || (has_id && !id)) {
        send_error(id, ErrorCode::invalid_request,
                   method.empty()  ? "method: expected a name"
                   : has_id && !id ? "id: expected a whole number or a string"
                                   : "jsonrpc: expected \"2.0\"");
        return;
    }
    if (id) {
        batches_.expect(*id);
        take_request(message, method, *id);
    } else {
        take_notification(message, method);
    }
}

void Session::take_request(Json& message, std::string_view name, const RequestId& id) {
    const auto refuse_it = [&](ErrorCode code, std::string_view why) { send_error(id, code, why); };
    if (state_ == State::shut_down) {
        return refuse_it(ErrorCode::invalid_request, "the server was shut down");
    }
    if (state_ == State::fresh && name != "initialize") {
        return refuse_it(ErrorCode::server_not_initialized, "initialize comes first");
    }
    if (state_ == State::running && name == "initialize") {
        return refuse_it(ErrorCode::invalid_request, "initialize comes only once");
    }
    const Method* const method = find_method(name);
    if (method == nullptr) {
        return refuse_it(ErrorCode::method_not_found, fmt::format("no method {}", name));
    }
    if (!method->is_request) {
        return refuse_it(ErrorCode::invalid_request,
                         fmt::format("{} is a notification and has no id", name));
    }
    if (waiting_.contains(id) || checks_.contains(id) || searches_.contains(id) ||
        speeches_.contains(id)) {
        return refuse_it(ErrorCode::invalid_request, "a request with this id still waits");
    }

    std::string problem;
    const In params(message["params"], problem);
    if (method->lane == Lane::late) {
        method->begin(*this, id, params);
        if (!problem.empty()) refuse_it(ErrorCode::invalid_params, problem);
        return;
    }
    if (method->lane == Lane::in_order) {
        const Json result = method->handle(*this, params);
        if (!problem.empty()) return refuse_it(ErrorCode::invalid_params, problem);
        answer(id, response(id, write(result)));
        return;
    }
    Prepared prepared = method->prepare(params);
    if (problem.empty() && prepared.at_once) return deliver(id, prepared.at_once(*client_));
    if (problem.empty() && find(prepared.uri) == nullptr) {
        problem = fmt::format("textDocument.uri: {} is not open", prepared.uri);
    }
    if (!problem.empty()) return refuse_it(ErrorCode::invalid_params, problem);
    start(*method, id, std::move(prepared));
}

void Session::take_notification(Json& message, std::string_view name) {
    if (state_ != State::running && name != "exit") return;
    const Method* const method = find_method(name);
    if (method == nullptr || method->is_request) {
        log::debug(fmt::format("notification {} passed over", name));
        return;
    }
    std::string problem;
    const In params(message["params"], problem);
    method->handle(*this, params);
    if (!problem.empty()) log::error(fmt::format("{} passed over: {}", name, problem));
}

void Session::take_answer(const Json& message) {
    const auto id = id_of(message);
    const auto* const number = id ? std::get_if<std::int64_t>(&*id) : nullptr;
    const auto asked = number != nullptr ? asked_.find(*number) : asked_.end();
    if (asked == asked_.end()) return;
    const Answer answer = std::move(asked->second);
    asked_.erase(asked);
    const auto result = message.find("result");
    if (answer) answer(result == message.end() ? Json() : *result);
}

void Session::send(const Json& message) {
    surroundings_.send(write(message));
}

void Session::answer(const std::optional<RequestId>& id, std::string message) {
    const std::string ready = batches_.add(id, std::move(message));
    if (!ready.empty()) surroundings_.send(ready);
}

void Session::send_error(const std::optional<RequestId>& id, ErrorCode code, std::string_view why) {
    const Json message = {{"jsonrpc", "2.0"},
                          {"id", id ? encode(*id) : Json()},
                          {"error", {{"code", static_cast<int>(code)}, {"message", why}}}};
    answer(id, write(message));
}

void Session::notify(std::string_view method, Json params) {
    send({{"jsonrpc", "2.0"}, {"method", method}, {"params", std::move(params)}});
}

void Session::begin_progress(const KeptJson& token, std::string_view title) {
    if (!token) return;
    notify("$/progress",
           {{"token", *token},
            {"value",
             {{"kind", "begin"}, {"title", title}, {"cancellable", true}, {"percentage", 0}}}});
}

void Session::report_progress(const KeptJson& token, int percent, const std::string& message) {
    if (!token) return;
    Json value = {{"kind", "report"}, {"percentage", percent}};
    if (!message.empty()) value["message"] = message;
    notify("$/progress", {{"token", *token}, {"value", std::move(value)}});
}

void Session::end_progress(const KeptJson& token) {
    if (token) notify("$/progress", {{"token", *token}, {"value", {{"kind", "end"}}}});
}

void Session::ask_client(std::string_view method, Json params, Answer answer) {
    const std::int64_t id = ++last_asked_;
    asked_.emplace(id, std::move(answer));
    Json message = {{"jsonrpc", "2.0"}, {"id", id}, {"method", method}};
    if (!params.is_null()) message["params"] = std::move(params);
    send(message);
}

// --- requests about a script -------------------------------------------------------------------

void Session::start(const Method& method, const RequestId& id, Prepared prepared) {
    OpenScript& script = *find(prepared.uri);
    std::shared_ptr<Version> version = script.current;
    ++version->waiting;
    Waiting waiting{.serial = ++last_serial_,
                    .method = std::string(method.name),
                    .version = version,
                    .cancel = {},
                    .since = Clock::now()};
    const std::uint64_t serial = waiting.serial;
    std::stop_token cancelled = waiting.cancel.get_token();
    waiting_.emplace(id, std::move(waiting));

    if (method.lane == Lane::now && script.latest) {
        const Document& document = version->document;
        const Snapshot snapshot{document.uri, document.version, *document.text, *script.latest,
                                *client_};
        finish(id, serial, run_guarded(prepared, snapshot));
        return;
    }
    // Only what it returns may touch the session: the rest runs on the worker.
    worker_.after_analysis(
        version,
        [this, id, serial, version, typing = version->typing, cancelled = std::move(cancelled),
         client = client_,
         prepared = std::move(prepared)](const Analysis* analysis) -> Worker::Task {
            if (cancelled.stop_requested()) return {};
            Reply reply{.result = {}, .edit = {}, .error = "the script could not be analysed"};
            if (analysis != nullptr) {
                const Document& document = version->document;
                const Snapshot snapshot{
                    document.uri, document.version,    *document.text,    *analysis,
                    *client,      version->told.get(), version->analysis, typing};
                reply = run_guarded(prepared, snapshot);
            }
            return [this, id, serial, reply = std::move(reply)] { finish(id, serial, reply); };
        });
}

void Session::finish(const RequestId& id, std::uint64_t serial, const Reply& reply) {
    const auto found = waiting_.find(id);
    if (found == waiting_.end() || found->second.serial != serial) return; // cancelled meanwhile
    const Waiting waiting = take_waiting(found);
    deliver(id, reply);
    const std::string line =
        fmt::format("{} on version {}: {:.2f} ms", waiting.method,
                    waiting.version->document.version, milliseconds_since(waiting.since));
    log::debug(line);
    if (tracing_) notify("$/logTrace", {{"message", line}});
}

void Session::deliver(const RequestId& id, const Reply& reply) {
    if (reply.edit) ask_client("workspace/applyEdit", *reply.edit, {});
    if (reply.show) ask_client("window/showDocument", *reply.show, {});
    if (reply.error.empty()) {
        answer(id, response(id, reply.result));
    } else {
        send_error(id, ErrorCode::request_failed, reply.error);
    }
}

Session::Waiting Session::take_waiting(std::map<RequestId, Waiting>::iterator found) {
    Waiting waiting = std::move(found->second);
    waiting_.erase(found);
    Version& version = *waiting.version;
    --version.waiting;
    if (version.superseded && version.waiting == 0) version.stop.request_stop();
    return waiting;
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::cancel(CancelParams params) {
    const auto found = waiting_.find(params.id);
    if (found == waiting_.end()) {
        // Else it was answered, or never asked.
        if (!cancel_check(params.id) && !cancel_search(params.id)) cancel_speech(params.id);
        return;
    }
    Waiting waiting = take_waiting(found);
    waiting.cancel.request_stop();
    send_error(params.id, ErrorCode::request_cancelled, "cancelled");
}

// --- lifecycle ---------------------------------------------------------------------------------

Json Session::initialize(InitializeParams params) {
    client_ = std::make_shared<const ClientAbilities>(params.capabilities);
    common_settings_ = settings_in(params.initializationOptions);
    set_trace({params.trace});
    folders_ = std::move(params.folders);
    state_ = State::running;
    if (params.processId && *params.processId > 0 && surroundings_.watch_parent) {
        surroundings_.watch_parent(*params.processId);
    }
    Json capabilities = server_capabilities(client_->encoding);
    // The protocol allows the longer form only to those who say that they know it.
    if (!client_->rename_prepare) capabilities["renameProvider"] = true;
    if (!client_->inline_completion) capabilities.erase("inlineCompletionProvider"); // of 3.18
    if (!client_->action_documentation)
        capabilities["codeActionProvider"].erase("documentation"); // the same
    return {{"capabilities", std::move(capabilities)},
            {"serverInfo", {{"name", "sayline"}, {"version", surroundings_.program_version}}}};
}

void Session::initialized(NoParams /*params*/) {
    announce_watches();
    if (!client_->configuration) return;
    ask_client("workspace/configuration", {{"items", {{{"section", "sayline"}}}}},
               [this](const Json& result) {
                   if (!result.is_array() || result.size() != 1 || !result[0].is_object()) return;
                   common_settings_ = std::make_shared<const Json>(result[0]);
                   for (auto& [uri, script] : scripts_) {
                       if (!script.editor_settings) reload_settings(uri, script);
                   }
               });
}

Json Session::shutdown(NoParams /*params*/) {
    state_ = State::shut_down;
    while (!checks_.empty())
        cancel_check(RequestId(checks_.begin()->first));
    while (!searches_.empty())
        cancel_search(RequestId(searches_.begin()->first));
    while (!speeches_.empty())
        cancel_speech(RequestId(speeches_.begin()->first));
    for (auto& [uri, script] : scripts_) {
        supersede(*script.current);
    }
    return {};
}

void Session::exit(NoParams /*params*/) {
    exit_status_ = state_ == State::shut_down ? 0 : 1;
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::set_trace(SetTraceParams params) {
    tracing_ = params.value == "messages" || params.value == "verbose";
}

void Session::announce_watches() {
    Json registrations = Json::array();
    if (client_->configuration && client_->watch_configuration) {
        registrations.push_back({{"id", "settings"},
                                 {"method", "workspace/didChangeConfiguration"},
                                 {"registerOptions", {{"section", "sayline"}}}});
    }
    if (client_->watch_files) {
        const Json settings = {{"globPattern", "**/.sayline/**"}};
        const Json lexicons = {{"globPattern", "**/*.pls"}}; // they may stand elsewhere
        const Json scripts = {{"globPattern", "**/*.say"}};
        registrations.push_back(
            {{"id", "settings-files"},
             {"method", "workspace/didChangeWatchedFiles"},
             {"registerOptions", {{"watchers", Json::array({settings, lexicons, scripts})}}}});
    }
    if (registrations.empty()) return;
    ask_client("client/registerCapability", {{"registrations", std::move(registrations)}}, {});
}

// --- scripts -----------------------------------------------------------------------------------

Session::OpenScript* Session::find(const std::string& uri) {
    const auto found = scripts_.find(uri);
    if (found == scripts_.end()) return nullptr;
    settle(found->second);
    return &found->second;
}

void Session::settle() {
    for (auto& [uri, script] : scripts_)
        settle(script);
}

namespace {

// Where a writer types: behind a character put in, or in the place of one taken out. Some editors
// send the keys of an instant in one go.
std::optional<Offset> struck_at(const Change& change) {
    constexpr std::uint32_t longest = 8; // bytes
    const std::uint32_t came = change.new_end - change.begin;
    const std::uint32_t went = change.old_end - change.begin;
    const bool one = came + went > 0 && came + went <= longest;
    return one && (came == 0 || went == 0) ? std::optional(Offset{change.new_end}) : std::nullopt;
}

} // namespace

void Session::settle(OpenScript& script) {
    if (!script.typed_version) return;
    const Version& last = *script.current;
    auto version = std::make_shared<Version>();
    version->document = {.uri = last.document.uri,
                         .version = *script.typed_version,
                         .text = std::make_shared<const Text>(*script.typed),
                         .since = last.document.text,
                         .change = script.typed_change};
    version->options = last.options;
    version->memo = last.memo;
    version->told = last.told;
    version->typing = struck_at(script.typed_change);
    script.typed_version.reset();
    replace_version(script, version);
}

void Session::did_open(DidOpenTextDocumentParams params) {
    auto version = std::make_shared<Version>();
    version->document = {.uri = params.uri,
                         .version = params.version,
                         .text = std::make_shared<const Text>(std::move(params.text))};
    version->memo = std::make_shared<Memo>();
    version->told = std::make_shared<Told>();
    OpenScript fresh;
    version->options = load_options(params.uri, fresh);
    // Opened twice without a close: the client still shows what was published.
    OpenScript& script = scripts_[params.uri];
    script.typed.reset();
    script.typed_version.reset();
    script.editor_settings = nullptr;
    script.settings_stamp = fresh.settings_stamp;
    script.lexicons = std::move(fresh.lexicons);
    replace_version(script, version);
    if (client_->configuration) pull_settings(params.uri);
}

void Session::did_change(DidChangeTextDocumentParams params) {
    const auto found = scripts_.find(params.uri);
    if (found == scripts_.end()) {
        log::error(fmt::format("a change to {}, which is not open, passed over", params.uri));
        return;
    }
    OpenScript& script = found->second;
    const int last = script.typed_version.value_or(script.current->document.version);
    const int number = params.version.value_or(last + 1);
    if (number <= last) {
        log::warning(fmt::format("{}: version {} after {}; edits are taken in the order they come",
                                 params.uri, number, last));
    }
    if (!script.typed) script.typed = *script.current->document.text;
    const Change change =
        apply_changes(*script.typed, std::move(params.contentChanges), client_->encoding);
    script.typed_change = script.typed_version
                              ? joined(script.typed_change, change, script.typed->end().value)
                              : change;
    script.typed_version = number;
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::did_save(DocumentParams params) {
    if (const OpenScript* const script = find(params.textDocument.uri))
        tell_all_findings(script->current);
    // Without a watch on files this is the moment to look at them.
    if (!client_->watch_files) reload_changed_settings();
    wake_parked();
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::did_close(DocumentParams params) {
    const std::string& uri = params.textDocument.uri;
    OpenScript* const script = find(uri);
    if (script == nullptr) return;
    supersede(*script->current);
    if (script->shows_findings) {
        notify("textDocument/publishDiagnostics", {{"uri", uri}, {"diagnostics", Json::array()}});
    }
    scripts_.erase(uri);
    problems_.erase(uri);
    publish_settings_problems();
}

void Session::replace_version(OpenScript& script, const std::shared_ptr<Version>& next) {
    if (script.current) supersede(*script.current);
    script.current = next;
    if (!surroundings_.once_quiet) next->typing.reset(); // nobody would tell the rest
    tell_findings(next);
}

void Session::tell_findings(const std::shared_ptr<Version>& version) {
    worker_.after_analysis(
        version,
        [this, version, typing = version->typing,
         client = client_](const Analysis* analysis) -> Worker::Task {
            if (analysis == nullptr) return {};
            Findings findings;
            if (!client->pulls_diagnostics) {
                findings = version->told->findings(version->analysis, *version->document.text,
                                                   client->encoding, typing);
            }
            return [this, version, findings = std::move(findings)] { analysed(version, findings); };
        },
        Worker::Turn::late);
}

// The writer rests: what was half typed is told too.
void Session::tell_all_findings(const std::shared_ptr<Version>& version) {
    const OpenScript* const script = find(version->document.uri);
    if (script == nullptr || script->current != version || !version->typing) return;
    version->typing.reset();
    if (!client_->pulls_diagnostics) return tell_findings(version);
    wake_parked();
    if (client_->refresh_diagnostics) ask_client("workspace/diagnostic/refresh", {}, {});
}

void Session::supersede(Version& version) {
    version.superseded = true;
    if (version.waiting == 0) version.stop.request_stop();
}

void Session::analysed(const std::shared_ptr<Version>& version, const Findings& findings) {
    OpenScript* const script = find(version->document.uri);
    if (script == nullptr || script->current != version) return;
    script->latest = version->analysis;
    if (!client_->pulls_diagnostics) publish(*script, findings);
    if (version->typing) surroundings_.once_quiet([this, version] { tell_all_findings(version); });
}

// An unchanged list is sent again only to clients that look at the version: they would otherwise
// take the findings for those of an older text. To the others it is news to nobody.
void Session::publish(OpenScript& script, const Findings& findings) {
    const bool unchanged = script.published == findings.id;
    if (unchanged && !client_->diagnostic_versions) return;
    script.published = findings.id;
    script.shows_findings = findings.any;
    const Document& document = script.current->document;
    surroundings_.send(
        fmt::format(R"({{"jsonrpc":"2.0","method":"textDocument/publishDiagnostics",)"
                    R"("params":{{"uri":{},"version":{},"diagnostics":{}}}}})",
                    write(document.uri), document.version, findings.json));
}

// --- settings ----------------------------------------------------------------------------------

std::shared_ptr<const Options> Session::load_options(const std::string& uri, OpenScript& script) {
    const std::filesystem::path path = path_of(uri).value_or(std::filesystem::path{});
    const KeptJson& editor = script.editor_settings ? script.editor_settings : common_settings_;
    Setup setup = load_setup(path, editor.get());
    script.lexicons = std::move(setup.lexicons);
    script.settings_stamp = settings_stamp(path, script.lexicons);

    std::vector<FileProblem>& problems = problems_[uri];
    problems.clear();
    for (const SettingsProblem& problem : setup.problems) {
        if (problem.file.empty()) {
            log::warning(fmt::format("editor settings: {}", problem.message));
            // Told once: every script would say the same.
            if (told_.insert(problem.message).second) {
                notify("window/logMessage",
                       {{"type", 2}, {"message", "Settings: " + problem.message}});
            }
            continue;
        }
        problems.push_back({.file = uri_of(problem.file),
                            .diagnostic = {.range = range_of(problem, client_->encoding),
                                           .severity = 2,
                                           .code = "settings",
                                           .message = problem.message}});
    }
    publish_settings_problems();
    return std::make_shared<const Options>(std::move(setup.options));
}

void Session::reload_settings(const std::string& uri, OpenScript& script) {
    settle(script);
    auto version = std::make_shared<Version>();
    version->document = script.current->document;
    version->memo = script.current->memo;
    version->told = script.current->told;
    version->options = load_options(uri, script);
    replace_version(script, version);
}

void Session::reload_changed_settings() {
    bool any = false;
    for (auto& [uri, script] : scripts_) {
        const std::filesystem::path path = path_of(uri).value_or(std::filesystem::path{});
        if (settings_stamp(path, script.lexicons) == script.settings_stamp) continue;
        reload_settings(uri, script);
        any = true;
    }
    if (any) ask_to_refresh();
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::did_change_configuration(DidChangeConfigurationParams params) {
    const KeptJson pushed = settings_in(params.settings);
    if (pushed && !same(pushed, common_settings_)) {
        common_settings_ = pushed;
        for (auto& [uri, script] : scripts_) {
            if (!script.editor_settings) reload_settings(uri, script);
        }
        ask_to_refresh();
    }
    if (!client_->configuration) return;
    for (const auto& [uri, script] : scripts_) {
        pull_settings(uri);
    }
}

// NOLINTNEXTLINE(performance-unnecessary-value-param): every handler is handed its own params.
void Session::did_change_watched_files(FileEvents /*params*/) {
    reload_changed_settings();
    wake_parked();
}

// A watch may say the same, a little later or not at all: what did not change is not read again.
void Session::did_change_files(NoParams /*params*/) {
    did_change_watched_files({});
}

void Session::pull_settings(const std::string& uri) {
    const Json item = {{"scopeUri", uri}, {"section", "sayline"}};
    ask_client("workspace/configuration", {{"items", Json::array({item})}},
               [this, uri](const Json& result) {
                   OpenScript* const script = find(uri);
                   if (script == nullptr || !result.is_array() || result.size() != 1) return;
                   KeptJson settings = std::make_shared<const Json>(
                       result[0].is_object() ? result[0] : Json::object());
                   const KeptJson nothing = std::make_shared<const Json>(Json::object());
                   const KeptJson before = script->editor_settings ? script->editor_settings
                                           : common_settings_      ? common_settings_
                                                                   : nothing;
                   script->editor_settings = settings;
                   if (same(settings, before)) return;
                   reload_settings(uri, *script);
                   ask_to_refresh();
               });
}

void Session::publish_settings_problems() {
    std::map<std::string, std::vector<Diagnostic>> by_file;
    for (const std::string& file : files_with_problems_) {
        by_file[file]; // an empty list takes back what was said
    }
    for (const auto& [uri, problems] : problems_) {
        for (const FileProblem& problem : problems) {
            std::vector<Diagnostic>& list = by_file[problem.file];
            const bool known =
                std::find(list.begin(), list.end(), problem.diagnostic) != list.end();
            if (!known) list.push_back(problem.diagnostic);
        }
    }
    files_with_problems_.clear();
    for (const auto& [file, diagnostics] : by_file) {
        Json list = Json::array();
        for (const Diagnostic& diagnostic : diagnostics) {
            list.push_back(encode(diagnostic));
        }
        if (!diagnostics.empty()) files_with_problems_.insert(file);
        notify("textDocument/publishDiagnostics", {{"uri", file}, {"diagnostics", list}});
    }
}

// Hints are asked for by the client, which does not know that their times have changed.
void Session::ask_to_refresh() {
    if (client_->refresh_hints) ask_client("workspace/inlayHint/refresh", {}, {});
    wake_parked();
    if (client_->refresh_diagnostics) ask_client("workspace/diagnostic/refresh", {}, {});
    if (client_->refresh_lenses) ask_client("workspace/codeLens/refresh", {}, {});
}

} // namespace say::lsp
