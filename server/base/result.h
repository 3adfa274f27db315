// A value or a sentence for the user that says what is wrong, where, and what to do.
// Only edges (files, settings, arguments, decoding) return one; the engine cannot fail.
#pragma once

#include <boost/system/result.hpp>

#include <string>

namespace say {

struct Error {
    std::string message; // one sentence with place and remedy, no full stop needed
};

// The names used are those shared with std::expected, so that the alias can change later:
// has_value(), value(), error(), operator*, operator->, operator bool.
template <class T> using Result = boost::system::result<T, Error>;

// Lets value() on a failed result throw a plain exception: that is a bug in the caller.
[[noreturn]] void throw_exception_from_error(const Error& error,
                                             const boost::source_location& where);

} // namespace say
