#include "lsp/batch.h"

#include <utility>

namespace say::lsp {

void Batches::open() {
    taking_ = std::make_shared<Batch>();
}

std::string Batches::close() {
    const std::shared_ptr<Batch> batch = std::exchange(taking_, nullptr);
    batch->open = false;
    return whole(*batch);
}

// Of two requests with one id the first keeps it, as it is the one that may wait.
void Batches::expect(const RequestId& id) {
    if (taking_ && expected_.emplace(id, taking_).second) ++taking_->waiting;
}

std::string Batches::add(const std::optional<RequestId>& id, std::string answer) {
    std::shared_ptr<Batch> batch = taking_;
    const auto found = id ? expected_.find(*id) : expected_.end();
    if (found != expected_.end()) {
        batch = found->second;
        --batch->waiting;
        expected_.erase(found);
    }
    if (!batch) return answer;
    if (!batch->answers.empty()) batch->answers += ',';
    batch->answers += answer;
    return whole(*batch);
}

std::string Batches::whole(const Batch& batch) {
    if (batch.open || batch.waiting > 0 || batch.answers.empty()) return {};
    return '[' + batch.answers + ']';
}

} // namespace say::lsp
