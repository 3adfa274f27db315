#include "base/markup.h"

namespace say {
namespace {

std::string escaped(std::string_view text, bool quoted) {
    std::string result;
    result.reserve(text.size());
    for (const char c : text) {
        switch (c) {
        case '&': result += "&amp;"; break;
        case '<': result += "&lt;"; break;
        case '>': result += "&gt;"; break;
        case '"': result += quoted ? "&quot;" : "\""; break;
        default: result += c;
        }
    }
    return result;
}

} // namespace

std::string markup_text(std::string_view text) {
    return escaped(text, false);
}

std::string markup_value(std::string_view text) {
    return escaped(text, true);
}

} // namespace say
