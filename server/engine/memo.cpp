// The memo of thoughts: two generations of what was made lately. What the last analysis holds is
// found there, without a table.
#include "engine/analysis.h"

namespace say {
namespace {

// A generation: a paragraph that is cut and put back elsewhere is met again within it.
constexpr std::size_t generation = 1024;

} // namespace

std::shared_ptr<const Thought> Memo::find(std::uint64_t key, std::string_view source) {
    for (Table* table : {&young_, &old_}) {
        const auto found = table->find(key);
        // A hash may collide: the bytes decide.
        if (found == table->end() || found->second->source != source) continue;
        ++hits_;
        return found->second;
    }
    ++misses_;
    return nullptr;
}

void Memo::keep(std::shared_ptr<const Thought> thought) {
    const std::uint64_t key = thought->key;
    young_.insert_or_assign(key, std::move(thought));
}

void Memo::finish(std::shared_ptr<const Analysis> analysis) {
    last_ = std::move(analysis);
    if (young_.size() < generation) return;
    old_.swap(young_);
    young_.clear();
}

} // namespace say
