// The exception of a result that was read without asking whether it holds a value.
#include "base/result.h"

#include <stdexcept>

namespace say {

void throw_exception_from_error(const Error& error, const boost::source_location& /*where*/) {
    throw std::logic_error(error.message);
}

} // namespace say
