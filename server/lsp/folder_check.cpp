// workspace/diagnostic: the findings of every script below the open folders. One script is looked
// at at a time, behind all that somebody waits for at the cursor, and what is known is not read
// again.
#include "base/log.h"
#include "host/files.h"
#include "host/settings.h"
#include "lsp/session.h"
#include "lsp/told.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace say::lsp {
namespace {

// Folders read in one go: some milliseconds, so that a question at the cursor need not wait.
constexpr int folders_at_once = 16;

// A file that cannot be read as a script is one finding.
Findings look_at(const std::filesystem::path& file, const nlohmann::json* editor_settings,
                 Encoding encoding, Parser& parser) {
    const auto text = read_text(file);
    if (!text) {
        return findings_of(
            {{.range = {}, .severity = 1, .code = {}, .message = text.error().message}});
    }
    const Setup setup = load_setup(file, editor_settings);
    Memo memo;
    const auto analysis = analyse({uri_of(file), 0, *text}, setup.options, parser, memo, Cancel{});
    return findings_of(to_diagnostics(*analysis, encoding));
}

} // namespace

void Session::did_change_workspace_folders(FoldersChange params) {
    for (const std::string& gone : params.removed)
        std::erase(folders_, gone);
    for (std::string& folder : params.added) {
        if (std::find(folders_.begin(), folders_.end(), folder) == folders_.end())
            folders_.push_back(std::move(folder));
    }
    wake_parked();
}

void Session::workspace_diagnostic(const RequestId& id, WorkspaceDiagnosticParams params) {
    auto check = std::make_shared<FolderCheck>();
    check->id = id;
    check->params = std::move(params);
    checks_.emplace(id, check);
    begin_progress(check->params.workDoneToken, "Checking the scripts of the folder");
    walk_folders(check, std::make_shared<ScriptWalk>(paths_of(folders_)));
}

void Session::walk_folders(const std::shared_ptr<FolderCheck>& check,
                           std::shared_ptr<ScriptWalk> walk) {
    worker_.add_late([this, check, walk = std::move(walk)](Parser& /*parser*/) -> Worker::Task {
        auto found = std::make_shared<Walk>();
        for (int i = 0; i < folders_at_once && !walk->done(); ++i)
            walk->step(*found);
        return [this, check, walk, found] {
            if (check->over) return;
            for (const Error& error : found->errors)
                log::warning(error.message);
            auto& scripts = check->scripts;
            scripts.insert(scripts.end(), found->scripts.begin(), found->scripts.end());
            if (!walk->done()) return walk_folders(check, walk);
            std::sort(scripts.begin(), scripts.end());
            scripts.erase(std::unique(scripts.begin(), scripts.end()), scripts.end());
            check_next(check);
        };
    });
}

void Session::check_next(const std::shared_ptr<FolderCheck>& check) {
    if (check->over) return;
    tell_progress(*check);
    if (check->next == check->scripts.size()) return finish_check(check);
    const std::filesystem::path& file = check->scripts[check->next++];
    const std::string uri = uri_of(file);
    if (const OpenScript* script = find(uri)) {
        check_open(check, uri, *script);
    } else {
        check_file(check, file);
    }
}

void Session::check_open(const std::shared_ptr<FolderCheck>& check, const std::string& uri,
                         const OpenScript& script) {
    const std::shared_ptr<Version> version = script.current;
    worker_.after_analysis(
        version,
        [this, check, uri, version, typing = version->typing,
         client = client_](const Analysis* analysis) -> Worker::Task {
            if (analysis == nullptr) return [this, check] { check_next(check); };
            const Findings& findings = version->told->findings(
                version->analysis, *version->document.text, client->encoding, typing);
            return [this, check, uri, version, findings] {
                add_report(*check, uri, version->document.version, findings);
                check_next(check);
            };
        },
        Worker::Turn::late);
}

void Session::check_file(const std::shared_ptr<FolderCheck>& check,
                         const std::filesystem::path& file) {
    const FileReport now{stamp_of(file), settings_stamp(file), {}};
    const std::string uri = uri_of(file);
    const auto known = file_reports_.find(file);
    const auto asked = check->params.previousResultIds.find(uri);
    if (known != file_reports_.end() && known->second.stamp == now.stamp &&
        known->second.settings_stamp == now.settings_stamp &&
        asked != check->params.previousResultIds.end() && asked->second == known->second.resultId) {
        add_report(*check, uri, std::nullopt, {.id = known->second.resultId});
        // Not by calling itself: a folder may hold thousands.
        return worker_.add_late(
            [this, check](Parser& /*parser*/) { return [this, check] { check_next(check); }; });
    }
    worker_.add_late([this, check, file, uri, now, client = client_,
                      editor = common_settings_](Parser& parser) -> Worker::Task {
        Findings findings = look_at(file, editor.get(), client->encoding, parser);
        return [this, check, file, uri, now, findings = std::move(findings)] {
            FileReport report = now;
            report.resultId = findings.id;
            file_reports_[file] = std::move(report);
            add_report(*check, uri, std::nullopt, findings);
            check_next(check);
        };
    });
}

void Session::add_report(FolderCheck& check, const std::string& uri, std::optional<int> version,
                         const Findings& findings) {
    if (check.over) return;
    const auto asked = check.params.previousResultIds.find(uri);
    const bool same = asked != check.params.previousResultIds.end() && asked->second == findings.id;
    check.any_news |= !same;
    DiagnosticReport report{.resultId = findings.id, .items = {}};
    if (!same) report.items = findings.json;
    const std::string item =
        write(report, fmt::format(R"("uri":{},"version":{},)", write(Json(uri)),
                                  version ? std::to_string(*version) : "null"));
    if (check.params.partialResultToken) {
        surroundings_.send(fmt::format(R"({{"jsonrpc":"2.0","method":"$/progress","params":)"
                                       R"({{"token":{},"value":{{"items":[{}]}}}}}})",
                                       write(*check.params.partialResultToken), item));
        return;
    }
    if (!check.items.empty()) check.items += ',';
    check.items += item;
}

// In steps of ten per cent: a bar that moves more often says no more.
void Session::tell_progress(FolderCheck& check) {
    if (check.scripts.empty()) return;
    const int percent = static_cast<int>(100 * check.next / check.scripts.size());
    if (percent < check.percent + 10) return;
    check.percent = percent;
    report_progress(check.params.workDoneToken, percent,
                    fmt::format("{} of {}", check.next, check.scripts.size()));
}

void Session::finish_check(const std::shared_ptr<FolderCheck>& check) {
    // Clients ask again at once. The second time in a row that nothing is new the question waits
    // until something is, and the server sleeps.
    quiet_checks_ = check->any_news ? 0 : quiet_checks_ + 1;
    if (quiet_checks_ > 1 && !check->params.partialResultToken && client_->watch_files) {
        parked_ = check;
        return;
    }
    check->over = true;
    checks_.erase(check->id);
    end_progress(check->params.workDoneToken);
    answer(check->id, response(check->id, fmt::format(R"({{"items":[{}]}})", check->items)));
}

bool Session::cancel_check(const RequestId& id) {
    const auto found = checks_.find(id);
    if (found == checks_.end()) return false;
    const std::shared_ptr<FolderCheck> check = found->second;
    check->over = true;
    if (parked_ == check) parked_.reset();
    checks_.erase(found);
    end_progress(check->params.workDoneToken);
    send_error(id, ErrorCode::request_cancelled, "cancelled");
    return true;
}

void Session::wake_parked() {
    quiet_checks_ = 0;
    if (!parked_) return;
    const std::shared_ptr<FolderCheck> check = std::move(parked_);
    parked_.reset();
    check->scripts.clear();
    check->next = 0;
    check->items.clear();
    walk_folders(check, std::make_shared<ScriptWalk>(paths_of(folders_)));
}

} // namespace say::lsp
