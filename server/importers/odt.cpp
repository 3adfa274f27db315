// OpenDocument text (OASIS OpenDocument 1.3, part 3): content.xml and the styles it names.
#include "importers/importer.h"
#include "importers/package.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>

namespace say {
namespace {

using Node = pugi::xml_node;

int number_of(std::string_view text, int otherwise) {
    int value = otherwise;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

// What a named style says of weight and slant; what it does not say its parent does.
struct TextStyle {
    std::optional<bool> bold;
    std::optional<bool> italic;
    std::optional<bool> underlined;
    std::optional<bool> struck;
    std::string parent;
};

using Styles = std::map<std::string, TextStyle, std::less<>>;
using Lists = std::map<std::string, bool, std::less<>>; // true: it counts

void collect_styles(Node root, Styles& styles, Lists& lists) {
    for (const Node group : root.children()) {
        for (const Node node : group.children()) {
            const std::string name(local_attribute(node, "name"));
            if (local_name(node) == "list-style") {
                lists[name] = !!local_child(node, "list-level-style-number");
            }
            if (local_name(node) != "style" || name.empty()) continue;
            TextStyle style;
            style.parent = local_attribute(node, "parent-style-name");
            if (const Node text = local_child(node, "text-properties")) {
                const std::string_view weight = local_attribute(text, "font-weight");
                if (!weight.empty()) style.bold = weight == "bold" || weight >= "600";
                const std::string_view slant = local_attribute(text, "font-style");
                if (!slant.empty()) style.italic = slant == "italic" || slant == "oblique";
                const std::string_view line = local_attribute(text, "text-underline-style");
                if (!line.empty()) style.underlined = line != "none";
                const std::string_view through = local_attribute(text, "text-line-through-style");
                if (!through.empty()) style.struck = through != "none";
            }
            styles[name] = std::move(style);
        }
    }
}

class Reader {
public:
    Reader(Styles styles, Lists lists) : styles_(std::move(styles)), lists_(std::move(lists)) {}

    Draft read(Node text) {
        read_blocks(text);
        tables_.tell(draft_);
        return std::move(draft_);
    }

private:
    PieceText::Style styled(std::string_view name, PieceText::Style style) const {
        TextStyle sum;
        std::string next(name);
        constexpr int longest_chain = 32; // of parents; a ring of them ends too
        for (int i = 0; i < longest_chain && !next.empty(); ++i) {
            const auto found = styles_.find(next);
            if (found == styles_.end()) break;
            const TextStyle& each = found->second;
            if (!sum.bold) sum.bold = each.bold;
            if (!sum.italic) sum.italic = each.italic;
            if (!sum.underlined) sum.underlined = each.underlined;
            if (!sum.struck) sum.struck = each.struck;
            next = each.parent;
        }
        style.bold = sum.bold.value_or(style.bold);
        const bool leans = sum.italic.value_or(false) || sum.underlined.value_or(false);
        const bool said = sum.italic || sum.underlined;
        style.italic = said ? leans : style.italic;
        style.struck = sum.struck.value_or(style.struck);
        return style;
    }

    void read_blocks(Node parent) {
        for (const Node node : parent.children()) {
            const std::string_view name = local_name(node);
            if (name == "p") {
                read_paragraph(node, in_item_ ? Piece::Kind::item : Piece::Kind::paragraph);
            } else if (name == "h") {
                read_heading(node);
            } else if (name == "list") {
                read_list(node);
            } else if (name != "tracked-changes" && name != "sequence-decls" &&
                       name != "index-title" && name != "table-of-content") {
                tables_.count += name == "table" ? 1 : 0;
                tables_.cells += name == "table-cell" ? 1 : 0;
                read_blocks(node); // sections, tables, frames: what stands in them
            }
        }
    }

    void read_list(Node list) {
        const std::string_view style = local_attribute(list, "style-name");
        const bool outer_numbered = numbered_;
        const int outer_number = number_;
        if (!style.empty()) {
            const auto found = lists_.find(style);
            numbered_ = found != lists_.end() && found->second;
        }
        number_ = 0;
        for (const Node item : list.children()) {
            if (local_name(item) != "list-item" && local_name(item) != "list-header") continue;
            in_item_ = true;
            ++number_;
            read_blocks(item);
            in_item_ = false;
        }
        numbered_ = outer_numbered;
        number_ = outer_number;
    }

    void read_heading(Node node) {
        read_inline(node, {}); // a heading's weight is its style's
        text_.put_notes(draft_);
        if (text_.is_blank()) return;
        Piece piece = text_.take(Piece::Kind::heading);
        piece.level = number_of(local_attribute(node, "outline-level"), 1);
        draft_.pieces.push_back(std::move(piece));
    }

    void read_paragraph(Node node, Piece::Kind kind) {
        const std::string_view style = local_attribute(node, "style-name");
        read_inline(node, styled(style, {}));
        text_.put_notes(draft_);
        if (text_.is_blank()) {
            text_.take(kind);
            return;
        }
        Piece piece = text_.take(is_title(style) ? Piece::Kind::heading : kind);
        if (kind == Piece::Kind::item) {
            piece.number = numbered_ ? number_ : 0;
            in_item_ = false; // a second paragraph of the item
        }
        draft_.pieces.push_back(std::move(piece));
    }

    bool is_title(std::string_view style) const {
        const auto found = styles_.find(style);
        return style == "Title" || (found != styles_.end() && found->second.parent == "Title");
    }

    void read_inline(Node parent, PieceText::Style style) {
        for (const Node node : parent.children()) {
            if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata) {
                text_.add(collapsed_blanks(node.value()), style);
                continue;
            }
            const std::string_view name = local_name(node);
            if (name == "s" || name == "tab") {
                text_.add(" ", style);
            } else if (name == "line-break") {
                text_.add("\n", style);
            } else if (name == "annotation") {
                text_.add_note(note_of(node));
            } else if (name == "note") {
                text_.add_note(note_of(local_child(node, "note-body")));
            } else if (name == "span") {
                read_inline(node, styled(local_attribute(node, "style-name"), style));
            } else if (name == "a") {
                const std::size_t start = text_.text().size();
                read_inline(node, style);
                text_.add_link(start, local_attribute(node, "href"));
            } else if (name == "ruby") {
                if (const Node base = local_child(node, "ruby-base")) read_inline(base, style);
            } else if (name != "frame" || local_child(node, "text-box")) {
                read_inline(node, style);
            }
        }
    }

    // White space as the standard reads it (6.1.2): a run is one blank.
    static std::string collapsed_blanks(std::string_view text) {
        std::string result;
        for (const char c : text) {
            const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
            if (blank && !result.empty() && result.back() == ' ') continue;
            result += blank ? ' ' : c;
        }
        return result;
    }

    // "Ana: what she says".
    static std::string note_of(Node node) {
        std::string who;
        std::string words;
        for (const Node child : node.children()) {
            const std::string_view name = local_name(child);
            if (name == "creator") {
                who = collapsed(child.text().get());
            } else if (name == "p" || name == "list") {
                words += ' ';
                add_text(child, words);
            }
        }
        words = collapsed(words);
        return who.empty() || words.empty() ? words : fmt::format("{}: {}", who, words);
    }

    static void add_text(Node node, std::string& words) {
        if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata)
            words += node.value();
        if (local_name(node) == "s" || local_name(node) == "tab") words += ' ';
        for (const Node child : node.children())
            add_text(child, words);
    }

    Styles styles_;
    Lists lists_;
    Draft draft_;
    Tables tables_;
    PieceText text_;
    bool in_item_ = false;
    bool numbered_ = false;
    int number_ = 0;
};

} // namespace

Result<Draft> read_odt(std::string_view bytes, const std::string& name) {
    const auto package = Package::open(bytes, name);
    if (!package) return package.error();
    const auto manifest = package->read("META-INF/manifest.xml");
    if (manifest && manifest->find("encryption-data") != std::string::npos) {
        return Error{fmt::format("{}: locked by a password; save it without one", name)};
    }
    // One part after the other, so that no two trees are held at a time.
    Styles styles;
    Lists lists;
    {
        const auto common = package->read_xml("styles.xml");
        if (!common) return common.error();
        collect_styles(local_child((*common)->root(), "document-styles"), styles, lists);
    }
    std::string title;
    {
        const auto meta = package->read_xml("meta.xml");
        if (!meta) return meta.error();
        const Node about = local_child(local_child((*meta)->root(), "document-meta"), "meta");
        title = collapsed(local_child(about, "title").text().get());
    }
    const auto content = package->read_xml("content.xml");
    if (!content) return content.error();
    const Node root = local_child((*content)->root(), "document-content");
    const Node text = local_child(local_child(root, "body"), "text");
    if (!text) {
        return Error{fmt::format("{}: no text document inside; save the draft as ODT", name)};
    }
    collect_styles(root, styles, lists);
    Draft draft = Reader(std::move(styles), std::move(lists)).read(text);
    draft.title = std::move(title);
    if (draft.pieces.empty() && draft.title.empty()) {
        return Error{fmt::format("{}: no words in it; give a draft that has some", name)};
    }
    return draft;
}

} // namespace say
