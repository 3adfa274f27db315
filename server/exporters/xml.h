// The few steps that every XML target takes.
#pragma once

#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace say::xml {

// What no XML document may hold becomes U+FFFD (XML 1.0, production 2).
std::string clean(std::string_view text);
void add_text(pugi::xml_node node, std::string_view text);
void set(pugi::xml_node node, const char* name, std::string_view value);
std::string write(const pugi::xml_document& document); // UTF-8, no added blanks

} // namespace say::xml
