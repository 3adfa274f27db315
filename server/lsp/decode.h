// Reading a message's JSON member by member. The first thing that is not as it should be sticks,
// with its place ("position.line: missing"); what is read after it are defaults that nobody uses.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace say::lsp {

using Json = nlohmann::json;
// JSON that is kept for later, never changed, and shared between threads. Null: there is none.
using KeptJson = std::shared_ptr<const Json>;

class In {
public:
    // `problem` is shared by all places below; empty while all is well.
    In(Json& value, std::string& problem) : value_(&value), problem_(&problem) {}

    bool exists() const; // neither missing nor null
    bool is_string() const;
    bool is_object() const;
    In operator[](std::string_view member) const;

    std::string string() const;
    std::string take_string() const; // moved out of the message: for a text of any size
    bool flag() const;               // false if it does not exist
    int integer() const;
    std::uint32_t natural() const; // a whole number from 0; beyond 32 bits is the largest
    KeptJson json() const;         // null if it does not exist

    // Calls `each` for every entry; a missing array has none.
    template <class Each> void entries(Each each) const {
        for (std::size_t index = 0; index < count(); ++index) {
            each(entry(index));
        }
    }

    const std::string& place() const { return place_; }
    void refuse(std::string_view why) const; // "place: why"
    bool failed() const { return !problem_->empty(); }

private:
    In(Json* value, std::string* problem, std::string place)
        : value_(value), problem_(problem), place_(std::move(place)) {}
    std::size_t count() const;
    In entry(std::size_t index) const;

    Json* value_; // null if missing
    std::string* problem_;
    std::string place_;
};

} // namespace say::lsp
