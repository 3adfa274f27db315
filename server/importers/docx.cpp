// Office Open XML (ECMA-376, part 1): the main document, its styles, lists, comments and notes.
#include "importers/importer.h"
#include "importers/package.h"
#include "text/ascii.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <charconv>
#include <map>
#include <optional>

namespace say {
namespace {

using Node = pugi::xml_node;
using Texts = std::map<std::string, std::string, std::less<>>; // by id

int number_of(std::string_view text, int otherwise) {
    int value = otherwise;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

// "on" unless it says otherwise (17.17.4, ST_OnOff); nothing if it is not there.
std::optional<bool> toggle(Node properties, std::string_view name) {
    const Node node = local_child(properties, name);
    if (!node) return std::nullopt;
    const std::string_view value = local_attribute(node, "val");
    return value != "0" && value != "false" && value != "off" && value != "none";
}

struct RunStyle {
    std::optional<bool> bold;
    std::optional<bool> italic;
    std::optional<bool> underlined;
    std::optional<bool> hidden;
    std::optional<bool> struck;

    void fill_from(const RunStyle& other) {
        if (!bold) bold = other.bold;
        if (!italic) italic = other.italic;
        if (!underlined) underlined = other.underlined;
        if (!hidden) hidden = other.hidden;
        if (!struck) struck = other.struck;
    }
    PieceText::Style style() const {
        return {.bold = bold.value_or(false),
                .italic = italic.value_or(false) || underlined.value_or(false),
                .struck = struck.value_or(false)};
    }
};

RunStyle run_style(Node properties) {
    const auto once = toggle(properties, "strike");
    return {.bold = toggle(properties, "b"),
            .italic = toggle(properties, "i"),
            .underlined = toggle(properties, "u"),
            .hidden = toggle(properties, "vanish"),
            .struck = once ? once : toggle(properties, "dstrike")};
}

struct NamedStyle {
    std::string name; // in lower case: "heading 1"
    std::string based_on;
    RunStyle run;
    int outline = -1; // 0 for the first level of headings
    std::string list; // the id of its numbering
    int list_level = -1;
};

class StyleSheet {
public:
    StyleSheet() = default;
    explicit StyleSheet(Node styles) {
        for (const Node node : styles.children()) {
            if (local_name(node) != "style") continue;
            NamedStyle style;
            style.name = ascii::lower(local_attribute(local_child(node, "name"), "val"));
            style.based_on = local_attribute(local_child(node, "basedOn"), "val");
            style.run = run_style(local_child(node, "rPr"));
            const Node paragraph = local_child(node, "pPr");
            style.outline =
                number_of(local_attribute(local_child(paragraph, "outlineLvl"), "val"), -1);
            const Node numbering = local_child(paragraph, "numPr");
            style.list = local_attribute(local_child(numbering, "numId"), "val");
            style.list_level =
                number_of(local_attribute(local_child(numbering, "ilvl"), "val"), -1);
            styles_[std::string(local_attribute(node, "styleId"))] = std::move(style);
        }
    }

    // With what it takes from the styles it is based on.
    NamedStyle find(std::string_view id) const {
        NamedStyle sum;
        constexpr int longest_chain = 32; // a ring of styles ends too
        std::string next(id);
        for (int i = 0; i < longest_chain && !next.empty(); ++i) {
            const auto found = styles_.find(next);
            if (found == styles_.end()) break;
            const NamedStyle& each = found->second;
            if (sum.name.empty()) sum.name = each.name;
            if (sum.outline < 0) sum.outline = each.outline;
            if (sum.list.empty()) sum.list = each.list;
            if (sum.list_level < 0) sum.list_level = each.list_level;
            sum.run.fill_from(each.run);
            next = each.based_on;
        }
        return sum;
    }

private:
    std::map<std::string, NamedStyle, std::less<>> styles_;
};

// Which lists count and which have bullets (17.9).
class Numbering {
public:
    Numbering() = default;
    explicit Numbering(Node root) {
        std::map<std::string, Node, std::less<>> abstracts;
        for (const Node node : root.children()) {
            if (local_name(node) == "abstractNum")
                abstracts[std::string(local_attribute(node, "abstractNumId"))] = node;
        }
        for (const Node node : root.children()) {
            if (local_name(node) != "num") continue;
            const std::string_view id = local_attribute(local_child(node, "abstractNumId"), "val");
            const auto found = abstracts.find(id);
            if (found == abstracts.end()) continue;
            for (const Node level : found->second.children()) {
                if (local_name(level) != "lvl") continue;
                const std::string_view format =
                    local_attribute(local_child(level, "numFmt"), "val");
                formats_[key(local_attribute(node, "numId"),
                             number_of(local_attribute(level, "ilvl"), 0))] = format;
            }
        }
    }

    bool counts(std::string_view list, int level) const {
        const auto found = formats_.find(key(list, level));
        return found != formats_.end() && found->second != "bullet" && found->second != "none";
    }

private:
    static std::string key(std::string_view list, int level) {
        return fmt::format("{}.{}", list, level);
    }
    std::map<std::string, std::string, std::less<>> formats_;
};

void add_text(Node node, std::string& words) {
    const std::string_view name = local_name(node);
    if (name == "t") words += node.text().get();
    if (name == "p" || name == "br" || name == "tab") words += ' ';
    for (const Node child : node.children())
        add_text(child, words);
}

// The texts of comments or footnotes by their ids.
Texts notes_of(Node root) {
    Texts notes;
    for (const Node node : root.children()) {
        std::string words;
        add_text(node, words);
        words = collapsed(words);
        if (words.empty()) continue;
        const std::string who = collapsed(local_attribute(node, "author"));
        notes[std::string(local_attribute(node, "id"))] =
            who.empty() ? words : fmt::format("{}: {}", who, words);
    }
    return notes;
}

struct Parts {
    StyleSheet styles;
    Numbering numbering;
    Texts comments;
    Texts footnotes;
    Texts endnotes;
    Texts links; // addresses outside the document
};

class Reader {
public:
    explicit Reader(Parts parts) : parts_(std::move(parts)) {}

    Draft read(Node body) {
        read_blocks(body);
        tables_.tell(draft_);
        return std::move(draft_);
    }

private:
    void read_blocks(Node parent) {
        for (const Node node : parent.children()) {
            const std::string_view name = local_name(node);
            if (name == "p") {
                read_paragraph(node);
            } else if (name == "AlternateContent") {
                read_blocks(chosen(node));
            } else if (name != "sectPr" && name != "del" && name != "moveFrom") {
                tables_.count += name == "tbl" ? 1 : 0;
                tables_.cells += name == "tc" ? 1 : 0;
                read_blocks(node); // tables, content controls: what stands in them
            }
        }
    }

    // One of several forms of the same thing.
    static Node chosen(Node node) {
        const Node choice = local_child(node, "Choice");
        return choice ? choice : local_child(node, "Fallback");
    }

    void read_paragraph(Node node) {
        const Node properties = local_child(node, "pPr");
        std::string_view id = local_attribute(local_child(properties, "pStyle"), "val");
        if (id.empty()) id = "Normal";
        const NamedStyle style = parts_.styles.find(id);
        const int level = heading_level(properties, style);
        // A heading's weight is its style's; elsewhere a style in bold is how all of it looks.
        read_inline(node, level > 0 ? RunStyle{} : style.run);
        text_.put_notes(draft_);
        if (text_.is_blank()) {
            text_.take(Piece::Kind::paragraph);
            add_boxes();
            return;
        }
        Piece piece = text_.take(Piece::Kind::paragraph);
        if (level > 0) {
            piece.kind = Piece::Kind::heading;
            piece.level = level;
        } else {
            read_list(properties, style, piece);
        }
        draft_.pieces.push_back(std::move(piece));
        add_boxes();
    }

    static int heading_level(Node properties, const NamedStyle& style) {
        if (style.name == "title") return 1;
        const int own =
            number_of(local_attribute(local_child(properties, "outlineLvl"), "val"), -1);
        const int outline = own >= 0 ? own : style.outline;
        constexpr int body_text = 9;
        constexpr std::string_view heading = "heading ";
        if (outline < 0 && style.name.starts_with(heading))
            return number_of(std::string_view(style.name).substr(heading.size()), 0);
        return outline >= 0 && outline < body_text ? outline + 1 : 0;
    }

    void read_list(Node properties, const NamedStyle& style, Piece& piece) {
        const Node own = local_child(properties, "numPr");
        std::string list(local_attribute(local_child(own, "numId"), "val"));
        int level = number_of(local_attribute(local_child(own, "ilvl"), "val"), -1);
        if (!own) {
            list = style.list;
            level = style.list_level;
        }
        if (list.empty() || list == "0") return; // "0" takes a paragraph out of its list
        piece.kind = Piece::Kind::item;
        if (parts_.numbering.counts(list, std::max(0, level))) piece.number = 1;
    }

    void read_inline(Node parent, const RunStyle& style) {
        for (const Node node : parent.children()) {
            const std::string_view name = local_name(node);
            if (name == "r") {
                read_run(node, style);
            } else if (name == "AlternateContent") {
                read_inline(chosen(node), style);
            } else if (name == "hyperlink") {
                read_link(node, style);
            } else if (name != "del" && name != "moveFrom" && name != "pPr") {
                read_inline(node, style); // links, insertions, content controls
            }
        }
    }

    void read_link(Node node, const RunStyle& style) {
        const std::size_t start = text_.text().size();
        read_inline(node, style);
        const auto found = parts_.links.find(local_attribute(node, "id"));
        if (found != parts_.links.end()) text_.add_link(start, found->second);
    }

    void read_run(Node node, const RunStyle& around) {
        const Node properties = local_child(node, "rPr");
        RunStyle style = run_style(properties);
        style.fill_from(
            parts_.styles.find(local_attribute(local_child(properties, "rStyle"), "val")).run);
        style.fill_from(around);
        if (style.hidden.value_or(false)) return;
        read_run_parts(node, style.style());
    }

    void read_run_parts(Node node, PieceText::Style style) {
        for (const Node part : node.children()) {
            const std::string_view name = local_name(part);
            if (name == "t") {
                text_.add(part.text().get(), style);
            } else if (name == "tab" || name == "ptab") {
                text_.add(" ", style);
            } else if (name == "br" || name == "cr") {
                text_.add("\n", style);
            } else if (name == "noBreakHyphen") {
                text_.add("-", style);
            } else if (name == "commentReference") {
                add_note(parts_.comments, part);
            } else if (name == "footnoteReference") {
                add_note(parts_.footnotes, part);
            } else if (name == "endnoteReference") {
                add_note(parts_.endnotes, part);
            } else if (name == "AlternateContent") {
                read_run_parts(chosen(part), style);
            } else if (name == "drawing" || name == "pict") {
                find_boxes(part);
            }
        }
    }

    // Text in a box stands behind the paragraph that holds the box.
    void find_boxes(Node node) {
        if (local_name(node) == "txbxContent") {
            boxes_.push_back(node);
            return;
        }
        for (const Node child : node.children())
            find_boxes(child);
    }

    void add_boxes() {
        std::vector<Node> boxes;
        boxes.swap(boxes_);
        for (const Node box : boxes)
            read_blocks(box);
    }

    void add_note(const Texts& notes, Node reference) {
        const auto found = notes.find(local_attribute(reference, "id"));
        if (found != notes.end()) text_.add_note(found->second);
    }

    Parts parts_;
    Draft draft_;
    Tables tables_;
    PieceText text_;
    std::vector<Node> boxes_;
};

// The part of a kind that another one refers to, as a path in the archive (part 2, 9.3).
std::string related(Node relations, std::string_view kind, std::string_view folder) {
    for (const Node node : local_child(relations, "Relationships").children()) {
        const std::string_view type = local_attribute(node, "Type");
        const std::string_view target = local_attribute(node, "Target");
        if (!type.ends_with(kind) || local_attribute(node, "TargetMode") == "External") continue;
        if (target.starts_with('/')) return std::string(target.substr(1));
        return std::string(folder) + std::string(target);
    }
    return {};
}

// Links to what is outside the document, by their ids (17.16.22).
Texts links_of(Node relations) {
    Texts links;
    for (const Node node : local_child(relations, "Relationships").children()) {
        if (!local_attribute(node, "Type").ends_with("/hyperlink")) continue;
        links[std::string(local_attribute(node, "Id"))] = local_attribute(node, "Target");
    }
    return links;
}

std::string relations_of(const std::string& part) {
    const std::size_t slash = part.rfind('/');
    const std::size_t name = slash == std::string::npos ? 0 : slash + 1;
    return part.substr(0, name) + "_rels/" + part.substr(name) + ".rels";
}

} // namespace

Result<Draft> read_docx(std::string_view bytes, const std::string& name) {
    const auto package = Package::open(bytes, name);
    if (!package) return package.error();
    const auto top = package->read_xml("_rels/.rels");
    if (!top) return top.error();
    std::string main = related((*top)->root(), "/officeDocument", "");
    if (main.empty()) main = "word/document.xml";
    const auto relations = package->read_xml(relations_of(main));
    if (!relations) return relations.error();
    const std::string folder = main.substr(0, main.rfind('/') + 1);

    // One part after the other, so that no two trees are held at a time.
    Parts parts;
    parts.links = links_of((*relations)->root());
    Draft draft;
    const auto take = [&](const std::string& path, auto use) -> Result<void> {
        if (path.empty()) return {};
        const auto document = package->read_xml(path);
        if (!document) return document.error();
        use((*document)->root());
        return {};
    };
    const auto take_related = [&](std::string_view kind, auto use) {
        return take(related((*relations)->root(), kind, folder), use);
    };
    std::string core = related((*top)->root(), "/core-properties", "");
    if (core.empty()) core = "docProps/core.xml";
    for (const Result<void>& taken : {
             take_related(
                 "/styles",
                 [&](Node root) { parts.styles = StyleSheet(local_child(root, "styles")); }),
             take_related(
                 "/numbering",
                 [&](Node root) { parts.numbering = Numbering(local_child(root, "numbering")); }),
             take_related(
                 "/comments",
                 [&](Node root) { parts.comments = notes_of(local_child(root, "comments")); }),
             take_related(
                 "/footnotes",
                 [&](Node root) { parts.footnotes = notes_of(local_child(root, "footnotes")); }),
             take_related(
                 "/endnotes",
                 [&](Node root) { parts.endnotes = notes_of(local_child(root, "endnotes")); }),
             take(core,
                  [&](Node root) {
                      draft.title = collapsed(
                          local_child(local_child(root, "coreProperties"), "title").text().get());
                  }),
         }) {
        if (!taken) return taken.error();
    }
    const auto document = package->read_xml(main);
    if (!document) return document.error();
    const Node body = local_child(local_child((*document)->root(), "document"), "body");
    if (!body) {
        return Error{fmt::format("{}: no text document inside; save the draft as DOCX", name)};
    }
    Draft read = Reader(std::move(parts)).read(body);
    read.title = std::move(draft.title);
    draft = std::move(read);
    if (draft.pieces.empty() && draft.title.empty()) {
        return Error{fmt::format("{}: no words in it; give a draft that has some", name)};
    }
    return draft;
}

} // namespace say
