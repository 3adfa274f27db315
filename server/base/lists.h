// Short lists of words.
#pragma once

#include <algorithm>
#include <string_view>

namespace say {

template <class List> constexpr bool is_one_of(std::string_view word, const List& list) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

} // namespace say
