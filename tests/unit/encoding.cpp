// links: say_text
// Encodings that drafts come in. The bytes are from the Unicode Standard (UTF-16, 3.10) and from
// the WHATWG's index of windows-1252.
#include "text/encoding.h"

#include "support/catch.h"

using say::Encoding;
using namespace std::string_literals;

TEST_CASE("encoding/told by its bytes") {
    CHECK(say::guess_encoding("plain") == Encoding::utf8);
    CHECK(say::guess_encoding("caf\xC3\xA9") == Encoding::utf8);
    CHECK(say::guess_encoding("\xEF\xBB\xBFhello") == Encoding::utf8);
    CHECK(say::guess_encoding("\xFF\xFEh\0"s) == Encoding::utf16_le);
    CHECK(say::guess_encoding("\xFE\xFF\0h"s) == Encoding::utf16_be);
    CHECK(say::guess_encoding("t\0i\0d\0e\0"s) == Encoding::utf16_le);
    CHECK(say::guess_encoding("\0t\0i\0d\0e"s) == Encoding::utf16_be);
    CHECK(say::guess_encoding("caf\xE9") == Encoding::windows_1252);
    CHECK(say::guess_encoding("") == Encoding::utf8);
}

TEST_CASE("encoding/read as UTF-8") {
    CHECK(say::to_utf8("\xEF\xBB\xBFhello", Encoding::utf8) == "hello");
    CHECK(say::to_utf8("\xFF\xFEt\0\xE9\0\x3D\xD8\x42\xDE"s, Encoding::utf16_le) == "té🙂");
    CHECK(say::to_utf8("\xFE\xFF\0t\0\xE9"s, Encoding::utf16_be) == "té");
    CHECK(say::to_utf8("\x93tide\x94 \x80 5 \x96 caf\xE9", Encoding::windows_1252) ==
          "“tide” € 5 – café");
    // Half a pair and half a unit are no characters.
    CHECK(say::to_utf8("\x3D\xD8t\0"s, Encoding::utf16_le) == "\uFFFDt");
    CHECK(say::to_utf8("t\0x"s, Encoding::utf16_le) == "t\uFFFD");
}
