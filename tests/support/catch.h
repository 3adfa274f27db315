// One name for the test library's header, which Catch2 2 and 3 put in different places.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx; // NOLINT(misc-unused-using-decls): used by the tests that compare numbers.
#else
#include <catch2/catch.hpp>
#endif
