// How a test shows the error of a result that should have held a value.
#pragma once

#include "base/result.h"

#include <ostream>

namespace say {

inline std::ostream& operator<<(std::ostream& out, const Error& error) {
    return out << error.message;
}

} // namespace say
