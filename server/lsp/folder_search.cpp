// workspace/symbol: titles, speakers and sections of every script that is open or lies below the
// open folders. Some files at a time, so that a question at the cursor need not wait.
#include "features/features.h"
#include "host/files.h"
#include "lsp/convert.h"
#include "lsp/session.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <tuple>
#include <utility>

namespace say::lsp {
namespace {

constexpr std::size_t files_at_once = 32;
constexpr std::size_t most_symbols = 500; // more than anyone looks through: a longer query helps

int symbol_kind(Landmark::Kind kind) {
    switch (kind) {
    case Landmark::Kind::title: return 1;    // File
    case Landmark::Kind::speaker: return 19; // Object
    case Landmark::Kind::section: return 3;  // Namespace
    }
    return 3;
}

std::string file_name(const std::string& uri) {
    const auto path = path_of(uri);
    return path ? path->filename().string() : std::string{};
}

void look_through(const std::string& uri, const Text& text, const std::string& query,
                  Encoding encoding, std::vector<SymbolInformation>& found) {
    Columns columns(text, encoding);
    for (Landmark& landmark : landmarks(text.bytes())) {
        if (!answers(landmark.name, query)) continue;
        found.push_back({std::move(landmark.name),
                         symbol_kind(landmark.kind),
                         {uri, columns.range(landmark.span)},
                         file_name(uri)});
    }
}

} // namespace

struct Session::FolderSearch {
    RequestId id;
    std::string query;
    // Open scripts by the URI that their file has here: editors may write theirs otherwise.
    struct Open {
        std::string uri;
        std::shared_ptr<const Text> text;
    };
    std::map<std::string, Open> open; // those not looked at yet
    ScriptWalk walk;
    Walk scripts;
    std::size_t next = 0; // of them
    std::vector<SymbolInformation> found;
    bool over = false; // answered or cancelled; of the reading thread
};

void Session::workspace_symbol(const RequestId& id, WorkspaceSymbolParams params) {
    auto search =
        std::make_shared<FolderSearch>(FolderSearch{.id = id,
                                                    .query = std::move(params.query),
                                                    .open = {},
                                                    .walk = ScriptWalk(paths_of(folders_)),
                                                    .scripts = {},
                                                    .found = {}});
    for (auto& [uri, script] : scripts_) {
        settle(script);
        const auto path = path_of(uri);
        search->open[path ? uri_of(*path) : uri] = {uri, script.current->document.text};
    }
    searches_.emplace(id, search);
    search_on(search);
}

void Session::search_on(const std::shared_ptr<FolderSearch>& search) {
    // Between two turns nobody but the turn touches it.
    worker_.add_late([this, search, encoding = client_->encoding](Parser&) -> Worker::Task {
        FolderSearch& on = *search;
        if (!on.walk.done()) {
            for (std::size_t i = 0; i < files_at_once && !on.walk.done(); ++i)
                on.walk.step(on.scripts);
        } else {
            const std::size_t end = std::min(on.next + files_at_once, on.scripts.scripts.size());
            for (; on.next < end; ++on.next) {
                const std::string uri = uri_of(on.scripts.scripts[on.next]);
                if (on.open.contains(uri)) continue;
                const auto text = read_text(on.scripts.scripts[on.next]);
                if (text) look_through(uri, **text, on.query, encoding, on.found);
            }
            if (on.next == on.scripts.scripts.size()) {
                for (const auto& [key, open] : std::exchange(on.open, {}))
                    look_through(open.uri, *open.text, on.query, encoding, on.found);
            }
        }
        const bool done = on.walk.done() && on.next == on.scripts.scripts.size() && on.open.empty();
        return [this, search, done] {
            if (search->over) return;
            if (!done) return search_on(search);
            finish_search(*search);
        };
    });
}

void Session::finish_search(FolderSearch& search) {
    const auto by_place = [](const SymbolInformation& a, const SymbolInformation& b) {
        return std::tie(a.location.uri, a.location.range) <
               std::tie(b.location.uri, b.location.range);
    };
    const auto same_place = [](const SymbolInformation& a, const SymbolInformation& b) {
        return a.location.uri == b.location.uri && a.location.range == b.location.range;
    };
    std::sort(search.found.begin(), search.found.end(), by_place);
    // A folder may lie in another that is open too.
    search.found.erase(std::unique(search.found.begin(), search.found.end(), same_place),
                       search.found.end());
    if (search.found.size() > most_symbols) search.found.resize(most_symbols);
    Json result = Json::array();
    for (const SymbolInformation& symbol : search.found)
        result.push_back(encode(symbol));
    search.over = true;
    const RequestId id = search.id;
    searches_.erase(id);
    answer(id, response(id, write(result)));
}

bool Session::cancel_search(const RequestId& id) {
    const auto found = searches_.find(id);
    if (found == searches_.end()) return false;
    found->second->over = true;
    searches_.erase(found);
    send_error(id, ErrorCode::request_cancelled, "cancelled");
    return true;
}

} // namespace say::lsp
