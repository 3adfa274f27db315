#include "importers/package.h"

#include <fmt/core.h>

#include <cstdint>
#include <zip.h>

namespace say {
namespace {

std::string_view after_colon(std::string_view name) {
    const std::size_t colon = name.find(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

struct CloseFile {
    void operator()(zip_file_t* file) const { zip_fclose(file); }
};

constexpr std::string_view save_again = "open it where it was made and save it again";

// Refuses what is nested deeper than the readers go, without going there by recursion.
bool nests_too_deep(const pugi::xml_document& document) {
    int depth = 0;
    pugi::xml_node node = document.first_child();
    while (node) {
        if (node.first_child()) {
            if (++depth > deepest_nesting) return true;
            node = node.first_child();
            continue;
        }
        while (node && !node.next_sibling()) {
            node = node.parent();
            --depth;
        }
        if (node) node = node.next_sibling();
    }
    return false;
}

} // namespace

struct Package::State {
    zip_t* archive = nullptr;
    std::string name;

    State() = default;
    ~State() {
        if (archive != nullptr) zip_discard(archive);
    }
    State(const State&) = delete;
    State& operator=(const State&) = delete;
};

Package::Package(std::unique_ptr<State> state) : state_(std::move(state)) {}
Package::~Package() = default;
Package::Package(Package&&) noexcept = default;
Package& Package::operator=(Package&&) noexcept = default;

Result<Package> Package::open(std::string_view bytes, const std::string& name) {
    auto state = std::make_unique<State>();
    state->name = name;
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
    if (source != nullptr) state->archive = zip_open_from_source(source, ZIP_RDONLY, &error);
    if (state->archive == nullptr) {
        if (source != nullptr) zip_source_free(source);
        const std::string why = zip_error_strerror(&error);
        zip_error_fini(&error);
        return Error{fmt::format("{}: damaged or cut short ({}); {}", name, why, save_again)};
    }
    zip_error_fini(&error);
    return Package(std::move(state));
}

bool Package::has(const std::string& part) const {
    return zip_name_locate(state_->archive, part.c_str(), 0) >= 0;
}

Result<std::string> Package::read(const std::string& part) const {
    const zip_int64_t index = zip_name_locate(state_->archive, part.c_str(), 0);
    if (index < 0) return {boost::system::in_place_value};
    zip_stat_t stat;
    zip_stat_init(&stat);
    if (zip_stat_index(state_->archive, static_cast<zip_uint64_t>(index), 0, &stat) == 0 &&
        (stat.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && stat.encryption_method != ZIP_EM_NONE) {
        return Error{fmt::format("{}: locked by a password; save it without one", state_->name)};
    }
    const std::unique_ptr<zip_file_t, CloseFile> file(
        zip_fopen_index(state_->archive, static_cast<zip_uint64_t>(index), 0));
    std::string bytes;
    std::string chunk(std::size_t{64} * 1024, '\0');
    while (file) {
        const zip_int64_t got = zip_fread(file.get(), chunk.data(), chunk.size());
        if (got == 0) return {boost::system::in_place_value, std::move(bytes)};
        if (got < 0) break;
        // What an entry says of its own size may be a lie: only what comes out counts.
        if (bytes.size() + static_cast<std::size_t>(got) > largest_part) {
            return Error{fmt::format("{}: its part {} unpacks to more than {} MiB; split it into "
                                     "parts",
                                     state_->name, part, largest_part >> 20U)};
        }
        bytes.append(chunk, 0, static_cast<std::size_t>(got));
    }
    return Error{fmt::format("{}: its part {} is damaged; {}", state_->name, part, save_again)};
}

Result<std::unique_ptr<pugi::xml_document>> Package::read_xml(const std::string& part) const {
    auto bytes = read(part);
    if (!bytes) return bytes.error();
    auto document = std::make_unique<pugi::xml_document>();
    if (bytes->empty()) return document;
    constexpr unsigned options =
        (pugi::parse_default | pugi::parse_ws_pcdata | pugi::parse_doctype);
    const pugi::xml_parse_result parsed =
        document->load_buffer(bytes->data(), bytes->size(), options);
    if (!parsed) {
        return Error{fmt::format("{}: its part {} is no XML ({} at byte {}); {}", state_->name,
                                 part, parsed.description(), parsed.offset + 1, save_again)};
    }
    for (const pugi::xml_node node : document->children()) {
        if (node.type() != pugi::node_doctype) continue;
        return Error{fmt::format("{}: its part {} declares a document type, which no word "
                                 "processor writes; {}",
                                 state_->name, part, save_again)};
    }
    if (nests_too_deep(*document)) {
        return Error{fmt::format("{}: its part {} nests deeper than {} levels; {}", state_->name,
                                 part, deepest_nesting, save_again)};
    }
    return document;
}

Result<std::string_view> document_kind(std::string_view bytes, const std::string& name) {
    auto package = Package::open(bytes, name);
    if (!package) return package.error();
    const auto mime = package->read("mimetype");
    if (!mime) return mime.error();
    constexpr std::string_view odt = "odt";
    constexpr std::string_view docx = "docx";
    if (mime->starts_with("application/vnd.oasis.opendocument.text"))
        return {boost::system::in_place_value, odt};
    if (package->has("[Content_Types].xml") && package->has("_rels/.rels"))
        return {boost::system::in_place_value, docx};
    return Error{fmt::format("{}: an archive that is no DOCX or ODT; unpack it and give the draft "
                             "inside",
                             name)};
}

std::string_view local_name(pugi::xml_node node) {
    return after_colon(node.name());
}

std::string_view local_attribute(pugi::xml_node node, std::string_view name) {
    for (const pugi::xml_attribute attribute : node.attributes()) {
        if (after_colon(attribute.name()) == name) return attribute.value();
    }
    return {};
}

pugi::xml_node local_child(pugi::xml_node node, std::string_view name) {
    for (const pugi::xml_node child : node.children()) {
        if (local_name(child) == name) return child;
    }
    return {};
}

} // namespace say
