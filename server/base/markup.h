#pragma once

#include <string>
#include <string_view>

namespace say {

// Text between tags of XML, HTML or WebVTT: what would begin a tag or a reference is written as
// one.
std::string markup_text(std::string_view text);
// The same within the double quotes of an attribute.
std::string markup_value(std::string_view text);

} // namespace say
