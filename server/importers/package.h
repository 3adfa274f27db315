// The parts of a word processor's document, which is a zip archive of XML. Only parts asked for by
// name are read, into memory and up to a limit; none is ever written anywhere, so that names in the
// archive cannot lead out of it. An archive inside the archive stays shut.
#pragma once

#include "base/result.h"

#include <cstddef>
#include <memory>
#include <pugixml.hpp>
#include <string>
#include <string_view>

namespace say {

// A novel's text takes some 5 MiB of XML. The tree of a part takes up to some twenty times its
// bytes where nearly all of it is tags; this keeps a hostile one below half a GiB.
inline constexpr std::size_t largest_part = std::size_t{16} * 1024 * 1024;
// Deeper than any writer nests; what is deeper is refused.
inline constexpr int deepest_nesting = 256;

class Package {
public:
    // `bytes` must outlive it.
    static Result<Package> open(std::string_view bytes, const std::string& name);
    ~Package();
    Package(Package&&) noexcept;
    Package& operator=(Package&&) noexcept;

    bool has(const std::string& part) const;
    // The bytes of a part; empty if it is not there.
    Result<std::string> read(const std::string& part) const;
    // Parsed; an empty document if it is not there. Document types, and with them entities, are
    // refused.
    Result<std::unique_ptr<pugi::xml_document>> read_xml(const std::string& part) const;

private:
    struct State;
    explicit Package(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

// "docx" or "odt"; an error for any other archive.
Result<std::string_view> document_kind(std::string_view bytes, const std::string& name);

// "p" of "w:p": which prefix a namespace has is the writer's choice.
std::string_view local_name(pugi::xml_node node);
// The attribute of this local name.
std::string_view local_attribute(pugi::xml_node node, std::string_view name);
pugi::xml_node local_child(pugi::xml_node node, std::string_view name);

} // namespace say
