// Work that nobody waits for any more stops at the next thought.
#pragma once

#include <stop_token>

namespace say {

// Asked between thoughts and between rules. A default one never trips.
class Cancel {
public:
    Cancel() = default;
    explicit Cancel(std::stop_token token) : token_(std::move(token)) {}

    bool tripped() const { return token_.stop_requested(); }

private:
    std::stop_token token_;
};

} // namespace say
