// The test program's main, for Catch2 2 only: version 3 brings its own.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
