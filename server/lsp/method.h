// What a method of the protocol is: its name, where it may run, its handler and the capability that
// goes with it. The table is methods.cpp; nothing is advertised that has no row.
#pragma once

#include "lsp/protocol.h"
#include "text/text.h"

#include <functional>
#include <span>
#include <string>
#include <string_view>

namespace say {
struct Analysis;
}

namespace say::lsp {

class Session;
class Told;

enum class Lane {
    in_order, // at once, by the thread that reads: whatever changes the session
    now,      // at once, from the text as it is and the last analysis there is: completion
    worker,   // from the analysis of exactly the version that was current when it arrived
    late,     // step by step while nobody waits for anything else: about all scripts of the open
              // folders, or a sound. The session answers when it is through
};

// What a request about a script sees.
struct Snapshot {
    const std::string& uri;
    int version = 0;
    const Text& text;
    const Analysis& analysis; // in lane `now` it may be of an earlier text
    const ClientAbilities& client;
    Told* told = nullptr; // lane worker only
    // The analysis again, to be kept; null in lane `now`.
    std::shared_ptr<const Analysis> kept{};
    std::optional<Offset> typing{}; // where a word is being typed
};

struct Reply {
    std::string result; // JSON, already written: on the thread that made it
    KeptJson edit;      // the params of a workspace/applyEdit to send first; null for none
    std::string error;  // why the request failed; empty if it did not
    KeptJson show{};    // the params of a window/showDocument to send first; null for none
};

// A request about a script, decoded and ready to run on either thread.
struct Prepared {
    std::string uri;
    std::function<Reply(const Snapshot&)> run;
    std::function<Reply(const ClientAbilities&)> at_once{}; // instead, for what needs no script
};

struct Method {
    std::string_view name;
    Lane lane = Lane::in_order;
    bool is_request = false;
    Prepared (*prepare)(const In& params) = nullptr;              // lanes now and worker
    Json (*handle)(Session& session, const In& params) = nullptr; // lane in_order
    void (*begin)(Session& session, const RequestId& id, const In& params) = nullptr; // late
    void (*advertise)(Json& capabilities) = nullptr; // null where there is nothing to say
};

std::span<const Method> methods();
const Method* find_method(std::string_view name);

// The union of what the rows advertise.
Json server_capabilities(Encoding encoding);

} // namespace say::lsp
