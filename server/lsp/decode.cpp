// The checks behind In: types are never converted in silence.
#include "lsp/decode.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>

namespace say::lsp {

bool In::exists() const {
    return value_ != nullptr && !value_->is_null();
}

bool In::is_string() const {
    return value_ != nullptr && value_->is_string();
}

bool In::is_object() const {
    return value_ != nullptr && value_->is_object();
}

In In::operator[](std::string_view member) const {
    std::string place = place_.empty() ? std::string(member) : fmt::format("{}.{}", place_, member);
    if (value_ == nullptr || !value_->is_object()) {
        if (exists()) refuse("expected an object");
        return {nullptr, problem_, std::move(place)};
    }
    const auto found = value_->find(member);
    return {found == value_->end() ? nullptr : &*found, problem_, std::move(place)};
}

void In::refuse(std::string_view why) const {
    if (!problem_->empty()) return;
    *problem_ = fmt::format("{}: {}", place_.empty() ? "params" : place_, why);
}

std::string In::take_string() const {
    if (is_string()) return std::move(value_->get_ref<std::string&>());
    refuse(value_ == nullptr ? "missing" : "expected a string");
    return {};
}

std::string In::string() const {
    if (is_string()) return value_->get_ref<const std::string&>();
    refuse(value_ == nullptr ? "missing" : "expected a string");
    return {};
}

bool In::flag() const {
    if (!exists()) return false;
    if (value_->is_boolean()) return value_->get<bool>();
    refuse("expected true or false");
    return false;
}

int In::integer() const {
    if (value_ != nullptr && value_->is_number_integer()) {
        const auto number = value_->get<std::int64_t>();
        if (number >= std::numeric_limits<int>::min() &&
            number <= std::numeric_limits<int>::max()) {
            return static_cast<int>(number);
        }
    }
    refuse(value_ == nullptr ? "missing" : "expected a whole number of 32 bits");
    return 0;
}

std::uint32_t In::natural() const {
    constexpr auto most = std::numeric_limits<std::uint32_t>::max();
    if (value_ != nullptr && value_->is_number()) {
        // JSON knows one kind of number, so 2.0 is 2; 2.7 is nothing.
        const double number = value_->get<double>();
        if (number >= 0 && std::trunc(number) == number) {
            return number >= most ? most : static_cast<std::uint32_t>(number);
        }
    }
    refuse(value_ == nullptr ? "missing" : "expected a whole number from 0");
    return 0;
}

KeptJson In::json() const {
    return exists() ? std::make_shared<const Json>(std::move(*value_)) : nullptr;
}

std::size_t In::count() const {
    if (!exists()) return 0;
    if (value_->is_array()) return value_->size();
    refuse("expected an array");
    return 0;
}

In In::entry(std::size_t index) const {
    return {&(*value_)[index], problem_, fmt::format("{}[{}]", place_, index)};
}

} // namespace say::lsp
