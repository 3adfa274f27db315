// The memo of thoughts: two generations, so that what a script no longer holds is forgotten.
#include "engine/analysis.h"

namespace say {

std::shared_ptr<const Thought> Memo::find(std::uint64_t key, std::string_view source) {
    const auto in = [&](Table& table) -> std::shared_ptr<const Thought> {
        const auto found = table.find(key);
        // A hash may collide: the bytes decide.
        if (found == table.end() || found->second->source != source) return nullptr;
        return found->second;
    };
    if (auto thought = in(young_)) {
        ++hits_;
        return thought;
    }
    if (auto thought = in(old_)) {
        ++hits_;
        young_.insert_or_assign(key, thought);
        return thought;
    }
    ++misses_;
    return nullptr;
}

void Memo::keep(std::shared_ptr<const Thought> thought) {
    const std::uint64_t key = thought->key;
    young_.insert_or_assign(key, std::move(thought));
}

void Memo::next_generation() {
    old_.swap(young_);
    young_.clear();
}

} // namespace say
