// One client's session: what is open, what was asked, what has been answered. Lives on the reading
// thread; knows messages but neither streams nor threads.
#pragma once

#include "engine/options.h"
#include "host/files.h"
#include "lsp/batch.h"
#include "lsp/method.h"
#include "lsp/told.h"
#include "lsp/worker.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

namespace say::lsp {

class Session {
public:
    struct Surroundings {
        std::function<void(std::string)> send; // one message's body
        std::function<void(int)> watch_parent; // the client's process; may be empty
        // Runs the task once nobody has asked for another for a moment; may be empty.
        std::function<void(std::function<void()>)> once_quiet;
        std::string program_version;
    };

    Session(Worker& worker, Surroundings surroundings);
    ~Session();
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;

    // One message; it is taken apart in place.
    void receive(std::span<char> body);
    // A message that could not be read as one: answered with an error that names no request.
    void refuse(ErrorCode code, std::string_view why);
    // Nothing more has arrived: what was typed until now is looked at.
    void settle();
    // Set once the client said exit.
    std::optional<int> exit_status() const { return exit_status_; }
    // What the end of the input means now.
    int status_at_end() const;

    // The handlers of methods.cpp.
    Json initialize(InitializeParams params);
    void initialized(NoParams params);
    Json shutdown(NoParams params);
    void exit(NoParams params);
    void set_trace(SetTraceParams params);
    void cancel(CancelParams params);
    void did_open(DidOpenTextDocumentParams params);
    void did_change(DidChangeTextDocumentParams params);
    void did_save(DocumentParams params);
    void did_close(DocumentParams params);
    void did_change_configuration(DidChangeConfigurationParams params);
    void did_change_watched_files(FileEvents params);
    void did_change_files(NoParams params); // made, renamed or deleted by the editor
    void did_change_workspace_folders(FoldersChange params);
    void workspace_diagnostic(const RequestId& id, WorkspaceDiagnosticParams params);
    void workspace_symbol(const RequestId& id, WorkspaceSymbolParams params);
    void speak(const RequestId& id, SpeakParams params);

private:
    enum class State { fresh, running, shut_down };

    struct OpenScript {
        std::shared_ptr<Version> current;
        // The text as typed so far. Changes that come in one go make one version.
        std::optional<Text> typed;
        std::optional<int> typed_version;       // null where it is the current one
        Change typed_change;                    // since the current version
        std::shared_ptr<const Analysis> latest; // may be of an earlier version
        KeptJson editor_settings;               // null until the client answered for this script
        std::uint64_t settings_stamp = 0;
        std::vector<std::filesystem::path> lexicons; // that the stamp is made of too
        std::string published; // the name of the findings that were sent; empty before the first
        bool shows_findings = false;
    };

    struct Waiting {
        std::uint64_t serial = 0; // a client may use an id again once it was answered
        std::string method;
        std::shared_ptr<Version> version;
        std::stop_source cancel;
        std::chrono::steady_clock::time_point since;
    };

    // Going through the scripts of the open folders, one after the other, beside all else.
    struct FolderCheck {
        RequestId id;
        WorkspaceDiagnosticParams params;
        std::vector<std::filesystem::path> scripts;
        std::size_t next = 0;
        int percent = 0;
        bool any_news = false;
        std::string items; // reports that were not sent yet, with commas between
        bool over = false; // answered or cancelled
    };
    // Looking for a name in the scripts of the open folders (folder_search.cpp).
    struct FolderSearch;
    // Saying a script into a file (speak.cpp).
    struct Speech;
    // What is known of a script that is not open, while its file and settings stay as they are.
    struct FileReport {
        std::uint64_t stamp = 0;
        std::uint64_t settings_stamp = 0;
        std::string resultId;
    };

    using Answer = std::function<void(const Json& result)>; // null if the client answered an error

    // envelope
    void take(Json& message);
    void take_request(Json& message, std::string_view method, const RequestId& id);
    void take_notification(Json& message, std::string_view method);
    void take_answer(const Json& message);
    void send(const Json& message);
    void take_batch(Json& messages);
    void take_guarded(Json& message);
    void answer(const std::optional<RequestId>& id, std::string message);
    void send_error(const std::optional<RequestId>& id, ErrorCode code, std::string_view why);
    void notify(std::string_view method, Json params);
    // What a client shows of long work; nothing where it gave no token.
    void begin_progress(const KeptJson& token, std::string_view title);
    void report_progress(const KeptJson& token, int percent, const std::string& message);
    void end_progress(const KeptJson& token);
    void ask_client(std::string_view method, Json params, Answer answer);

    // requests about a script
    void start(const Method& method, const RequestId& id, Prepared prepared);
    void finish(const RequestId& id, std::uint64_t serial, const Reply& reply);
    void deliver(const RequestId& id, const Reply& reply);
    Waiting take_waiting(std::map<RequestId, Waiting>::iterator found);

    // scripts
    OpenScript* find(const std::string& uri); // with all that was typed
    void settle(OpenScript& script);
    void replace_version(OpenScript& script, const std::shared_ptr<Version>& next);
    void supersede(Version& version);
    void tell_findings(const std::shared_ptr<Version>& version);
    void tell_all_findings(const std::shared_ptr<Version>& version);
    void analysed(const std::shared_ptr<Version>& version, const Findings& findings);
    void publish(OpenScript& script, const Findings& findings);

    // folders (folder_check.cpp)
    void walk_folders(const std::shared_ptr<FolderCheck>& check, std::shared_ptr<ScriptWalk> walk);
    void check_next(const std::shared_ptr<FolderCheck>& check);
    void check_open(const std::shared_ptr<FolderCheck>& check, const std::string& uri,
                    const OpenScript& script);
    void check_file(const std::shared_ptr<FolderCheck>& check, const std::filesystem::path& file);
    void add_report(FolderCheck& check, const std::string& uri, std::optional<int> version,
                    const Findings& findings);
    void tell_progress(FolderCheck& check);
    void finish_check(const std::shared_ptr<FolderCheck>& check);
    bool cancel_check(const RequestId& id);
    void wake_parked();
    void search_on(const std::shared_ptr<FolderSearch>& search);
    void finish_search(FolderSearch& search);
    bool cancel_search(const RequestId& id);

    // sound (speak.cpp)
    void speak_on(const std::shared_ptr<Speech>& speech);
    void tell_progress(Speech& speech);
    void finish_speech(Speech& speech);
    bool cancel_speech(const RequestId& id);

    // settings
    std::shared_ptr<const Options> load_options(const std::string& uri, OpenScript& script);
    void reload_settings(const std::string& uri, OpenScript& script);
    void reload_changed_settings();
    void pull_settings(const std::string& uri);
    void publish_settings_problems();
    void announce_watches();
    void ask_to_refresh();

    Worker& worker_;
    Surroundings surroundings_;
    State state_ = State::fresh;
    std::optional<int> exit_status_;
    bool tracing_ = false;
    std::shared_ptr<const ClientAbilities> client_ = std::make_shared<ClientAbilities>();
    std::unordered_map<std::string, OpenScript> scripts_;
    std::map<RequestId, Waiting> waiting_;
    std::uint64_t last_serial_ = 0;
    Batches batches_;
    std::map<std::int64_t, Answer> asked_;
    std::int64_t last_asked_ = 0;
    KeptJson common_settings_; // the editor's, where it has none for a script by itself

    // Problems of settings files by script, and the files that have some at the client.
    struct FileProblem {
        std::string file; // its URI
        Diagnostic diagnostic;
    };
    std::map<std::string, std::vector<FileProblem>> problems_;
    std::set<std::string> files_with_problems_;
    std::set<std::string> told_; // of the editor's settings

    std::vector<std::string> folders_; // URIs
    std::map<RequestId, std::shared_ptr<FolderCheck>> checks_;
    std::map<RequestId, std::shared_ptr<FolderSearch>> searches_;
    std::map<RequestId, std::shared_ptr<Speech>> speeches_;
    // Asked again with nothing new to tell: answered when there is.
    std::shared_ptr<FolderCheck> parked_;
    int quiet_checks_ = 0; // in a row
    std::map<std::filesystem::path, FileReport> file_reports_;
};

} // namespace say::lsp
