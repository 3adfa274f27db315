// Batches of JSON-RPC 2.0 (section 6): what is asked together is answered together, as one array,
// once its last request is answered. Nothing is sent for a batch of notifications.
#pragma once

#include "lsp/protocol.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace say::lsp {

class Batches {
public:
    // What is taken between these two belongs together. The text is what is to be sent by then.
    void open();
    std::string close();
    void expect(const RequestId& id); // a request of the open batch; ignored without one

    // An answer, or an error to what has no id. Returns what is to be sent now: the answer itself
    // outside of batches, the whole array for the last of its batch, nothing before.
    std::string add(const std::optional<RequestId>& id, std::string answer);

private:
    struct Batch {
        std::string answers; // with commas between
        std::size_t waiting = 0;
        bool open = true;
    };
    static std::string whole(const Batch& batch);

    std::shared_ptr<Batch> taking_;
    std::map<RequestId, std::shared_ptr<Batch>> expected_;
};

} // namespace say::lsp
