// Bytes of other encodings as UTF-8: what programs save when nobody asked them for UTF-8.
#pragma once

#include <string>
#include <string_view>

namespace say {

enum class Encoding { utf8, utf16_le, utf16_be, windows_1252 };

std::string_view name_of(Encoding encoding); // "UTF-16", as people call it

// By the byte-order mark; without one by whether the bytes are UTF-8, and by the zero bytes that
// UTF-16 has between Latin letters. What is left is taken for Windows-1252, which any bytes fit.
Encoding guess_encoding(std::string_view bytes);

// Without a byte-order mark; what is no character becomes U+FFFD.
std::string to_utf8(std::string_view bytes, Encoding encoding);

} // namespace say
