#include "exporters/xml.h"

#include "text/unicode.h"

namespace say::xml {
namespace {

struct StringWriter : pugi::xml_writer {
    std::string text;
    void write(const void* data, std::size_t size) override {
        text.append(static_cast<const char*>(data), size);
    }
};

} // namespace

std::string clean(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const unicode::CodePoint c = unicode::decode(text, at);
        const bool control =
            c.value < 0x20 && c.value != '\t' && c.value != '\n' && c.value != '\r';
        if (control || c.value == 0xFFFE || c.value == 0xFFFF) {
            result += "\xEF\xBF\xBD";
        } else {
            result += text.substr(at, c.size);
        }
        at += c.size;
    }
    return result;
}

void add_text(pugi::xml_node node, std::string_view text) {
    if (!text.empty()) node.append_child(pugi::node_pcdata).set_value(clean(text).c_str());
}

void set(pugi::xml_node node, const char* name, std::string_view value) {
    node.append_attribute(name).set_value(clean(value).c_str());
}

std::string write(const pugi::xml_document& document) {
    StringWriter writer;
    document.save(writer, "", pugi::format_raw, pugi::encoding_utf8);
    return writer.text + '\n';
}

} // namespace say::xml
