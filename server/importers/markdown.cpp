// Markdown, read by a library that knows CommonMark and, of GitHub's own signs, tables, struck
// words, tasks and footnotes.
#include "importers/importer.h"
#include "rules/cues.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <cmark-gfm-core-extensions.h>
#include <cmark-gfm.h>
#include <memory>
#include <utility>

namespace say {
namespace {

// The parser takes time that grows with the square of some hostile inputs; a novel is below this.
constexpr std::size_t largest_markdown = std::size_t{2} * 1024 * 1024;

struct FreeNode {
    void operator()(cmark_node* node) const { cmark_node_free(node); }
};
struct FreeParser {
    void operator()(cmark_parser* parser) const { cmark_parser_free(parser); }
};
struct FreeIterator {
    void operator()(cmark_iter* iterator) const { cmark_iter_free(iterator); }
};

std::string_view view(const char* text) {
    return text == nullptr ? std::string_view{} : std::string_view(text);
}

// "title: ..." lines between two lines of dashes at the very top: not Markdown, but common. What
// stands there is told in notes.
struct Front {
    std::string title;
    std::vector<std::string> notes;
    std::string_view body;
};

Front split_front(std::string_view text) {
    Front front{.title = {}, .notes = {}, .body = text};
    const std::vector<std::string_view> lines = lines_of(text);
    if (trimmed(lines.front()) != "---") return front;
    std::size_t last = 1;
    while (last < lines.size() && trimmed(lines[last]) != "---" && trimmed(lines[last]) != "...") {
        const std::string_view line = lines[last];
        // Anything else than keys and what belongs to them is text between two rules.
        const bool belongs =
            line.starts_with(' ') || line.starts_with('-') || line.starts_with('#');
        if (trimmed(line).empty() || (!belongs && line.find(':') == std::string_view::npos)) {
            return front;
        }
        ++last;
    }
    if (last >= lines.size() || last == 1) return front;
    for (std::size_t i = 1; i < last; ++i) {
        constexpr std::string_view key = "title:";
        std::string_view line = trimmed(lines[i]);
        if (front.title.empty() && lines[i].starts_with(key)) {
            line = trimmed(line.substr(key.size()));
            const bool quoted = line.size() > 1 && line.front() == line.back() &&
                                (line.front() == '"' || line.front() == '\'');
            front.title = line.substr(quoted ? 1 : 0, line.size() - (quoted ? 2 : 0));
        } else {
            front.notes.emplace_back(line);
        }
    }
    const char* const end = lines[last].data() + lines[last].size();
    front.body = text.substr(static_cast<std::size_t>(end - text.data()));
    return front;
}

// The words of an HTML comment; nothing for any other markup.
std::string_view comment_in(std::string_view html) {
    html = trimmed(html);
    constexpr std::string_view open = "<!--";
    constexpr std::string_view close = "-->";
    if (!html.starts_with(open) || !html.ends_with(close)) return {};
    if (html.size() < open.size() + close.size()) return {};
    html = html.substr(open.size(), html.size() - open.size() - close.size());
    return html.find(open) == std::string_view::npos ? trimmed(html) : std::string_view{};
}

// --- parsing -------------------------------------------------------------------------------------

using Document = std::unique_ptr<cmark_node, FreeNode>;

Document parse(std::string_view text) {
    constexpr int options = CMARK_OPT_FOOTNOTES | CMARK_OPT_STRIKETHROUGH_DOUBLE_TILDE;
    cmark_gfm_core_extensions_ensure_registered();
    const std::unique_ptr<cmark_parser, FreeParser> parser(cmark_parser_new(options));
    for (const char* name : {"table", "strikethrough", "tasklist"})
        cmark_parser_attach_syntax_extension(parser.get(), cmark_find_syntax_extension(name));
    cmark_parser_feed(parser.get(), text.data(), text.size());
    return Document(cmark_parser_finish(parser.get()));
}

// "[^1] [^tides]": what refers to every footnote once.
std::string references(std::string_view text) {
    std::string all;
    for (std::string_view line : lines_of(text)) {
        line = trimmed(line);
        const std::size_t end = line.find("]:");
        if (line.starts_with("[^") && end != std::string_view::npos)
            all += fmt::format("{} ", line.substr(0, end + 1));
    }
    return all;
}

// The library throws away footnotes that nothing refers to. So a first paragraph refers to all, and
// goes when that is done.
Document parse_with_footnotes(std::string_view text) {
    const std::string all = references(text);
    if (all.empty()) return parse(text);
    Document document = parse(fmt::format("{}\n\n{}", all, text));
    cmark_node_free(cmark_node_first_child(document.get()));
    return document;
}

// Without recursion: a hostile footnote nests deeper than a stack holds.
std::string words_in(cmark_node* root) {
    std::string words;
    const std::unique_ptr<cmark_iter, FreeIterator> iterator(cmark_iter_new(root));
    while (cmark_iter_next(iterator.get()) != CMARK_EVENT_DONE) {
        cmark_node* node = cmark_iter_get_node(iterator.get());
        const cmark_node_type type = cmark_node_get_type(node);
        if (type == CMARK_NODE_SOFTBREAK || type == CMARK_NODE_LINEBREAK ||
            type == CMARK_NODE_PARAGRAPH) {
            words += ' ';
        } else if (type != CMARK_NODE_FOOTNOTE_REFERENCE) { // to another: a number
            words += view(cmark_node_get_literal(node));
        }
    }
    return collapsed(words);
}

// The texts of footnotes, in the order of the numbers that references give.
std::vector<std::string> footnotes_of(cmark_node* document) {
    std::vector<std::string> notes;
    for (cmark_node* node = cmark_node_first_child(document); node != nullptr;
         node = cmark_node_next(node)) {
        if (cmark_node_get_type(node) != CMARK_NODE_FOOTNOTE_DEFINITION) continue;
        notes.push_back(words_in(node));
    }
    return notes;
}

// --- reading -------------------------------------------------------------------------------------

class Reader {
public:
    Draft read(cmark_node* document) {
        footnotes_ = footnotes_of(document);
        const std::unique_ptr<cmark_iter, FreeIterator> iterator(cmark_iter_new(document));
        for (cmark_event_type event = cmark_iter_next(iterator.get()); event != CMARK_EVENT_DONE;
             event = cmark_iter_next(iterator.get())) {
            cmark_node* node = cmark_iter_get_node(iterator.get());
            if (cmark_node_get_type(node) == CMARK_NODE_FOOTNOTE_DEFINITION) {
                cmark_iter_reset(iterator.get(), node, CMARK_EVENT_EXIT);
            } else if (event == CMARK_EVENT_ENTER) {
                enter(node);
            } else {
                leave(node);
            }
        }
        for (std::string& left : footnotes_)
            text_.add_note(std::move(left));
        text_.put_notes(draft_);
        tables_.tell(draft_);
        return std::move(draft_);
    }

private:
    void enter(cmark_node* node) {
        switch (cmark_node_get_type(node)) {
        case CMARK_NODE_LIST:
            lists_.push_back(cmark_node_get_list_type(node) == CMARK_ORDERED_LIST
                                 ? cmark_node_get_list_start(node)
                                 : -1);
            return;
        case CMARK_NODE_ITEM: opens_item_ = true; return;
        case CMARK_NODE_CODE_BLOCK:
            text_.add(trimmed(view(cmark_node_get_literal(node))), {});
            return add_block();
        case CMARK_NODE_HTML_BLOCK: return add_html(view(cmark_node_get_literal(node)));
        case CMARK_NODE_THEMATIC_BREAK:
            draft_.pieces.push_back({.kind = Piece::Kind::divider, .text = {}});
            return;
        case CMARK_NODE_TEXT:
        case CMARK_NODE_CODE: return add_words(view(cmark_node_get_literal(node)));
        case CMARK_NODE_SOFTBREAK:
        case CMARK_NODE_LINEBREAK: return add_words("\n");
        case CMARK_NODE_HTML_INLINE: return add_tag(view(cmark_node_get_literal(node)));
        case CMARK_NODE_EMPH: ++italic_; return;
        case CMARK_NODE_STRONG: ++bold_; return;
        case CMARK_NODE_LINK: starts_.push_back(text_.text().size()); return;
        case CMARK_NODE_IMAGE: ++pictures_; return;
        case CMARK_NODE_FOOTNOTE_REFERENCE: return add_footnote(node);
        default: enter_other(view(cmark_node_get_type_string(node)));
        }
    }

    // The signs that are not CommonMark's have names alone.
    void enter_other(std::string_view type) {
        struck_ += type == "strikethrough" ? 1 : 0;
        tables_.count += type == "table" ? 1 : 0;
        tables_.cells += type == "table_cell" ? 1 : 0;
    }

    void leave_other(std::string_view type) {
        struck_ -= type == "strikethrough" ? 1 : 0;
        if (type == "table_cell") add_block();
    }

    void leave(cmark_node* node) {
        switch (cmark_node_get_type(node)) {
        case CMARK_NODE_LIST: lists_.pop_back(); return;
        case CMARK_NODE_ITEM:
            opens_item_ = false;
            if (!lists_.empty() && lists_.back() >= 0) ++lists_.back();
            return;
        case CMARK_NODE_PARAGRAPH: return add_block();
        case CMARK_NODE_HEADING: return add_heading(cmark_node_get_heading_level(node));
        case CMARK_NODE_EMPH: --italic_; return;
        case CMARK_NODE_STRONG: --bold_; return;
        case CMARK_NODE_LINK: return leave_link(node);
        case CMARK_NODE_IMAGE: return leave_picture(node);
        default: leave_other(view(cmark_node_get_type_string(node)));
        }
    }

    // Told once, where it is first referred to.
    void add_footnote(cmark_node* node) {
        const std::string_view literal = view(cmark_node_get_literal(node));
        std::size_t number = 0;
        std::from_chars(literal.data(), literal.data() + literal.size(), number);
        if (number == 0 || number > footnotes_.size()) return;
        text_.add_note(std::exchange(footnotes_[number - 1], {}));
    }

    void leave_link(cmark_node* node) {
        text_.add_link(starts_.back(), view(cmark_node_get_url(node)));
        starts_.pop_back();
    }

    // What a picture shows is seen and not spoken: a direction.
    void leave_picture(cmark_node* node) {
        if (--pictures_ > 0) return; // a picture in another's words
        std::string shown = collapsed(shown_);
        shown_.clear();
        std::replace(shown.begin(), shown.end(), '[', '(');
        std::replace(shown.begin(), shown.end(), ']', ')');
        const std::string_view cue = rules::begins_cue(shown) ? "" : "slide: ";
        if (!shown.empty()) text_.add(fmt::format("[{}{}]", cue, shown), {});
        const std::string_view url = view(cmark_node_get_url(node));
        if (!url.empty()) text_.add_note(fmt::format("Picture: {}", url));
    }

    void add_words(std::string_view words) {
        if (pictures_ > 0) {
            shown_ += words;
        } else {
            text_.add(words, style());
        }
    }

    PieceText::Style style() const {
        return {.bold = bold_ > 0, .italic = italic_ > 0, .struck = struck_ > 0};
    }

    void add_tag(std::string_view tag) {
        if (const std::string_view comment = comment_in(tag); !comment.empty()) {
            text_.add_note(std::string(comment));
            return;
        }
        const std::string name = ascii::lower(tag);
        if (name == "<b>" || name == "<strong>") {
            ++bold_;
        } else if (name == "</b>" || name == "</strong>") {
            bold_ -= bold_ > 0 ? 1 : 0;
        } else if (name == "<i>" || name == "<em>" || name == "<u>") {
            ++italic_;
        } else if (name == "</i>" || name == "</em>" || name == "</u>") {
            italic_ -= italic_ > 0 ? 1 : 0;
        } else if (name == "<br>" || name == "<br/>" || name == "<br />") {
            add_words("\n");
        } else {
            add_words(tag);
        }
    }

    void add_html(std::string_view html) {
        if (const std::string_view comment = comment_in(html); !comment.empty()) {
            draft_.pieces.push_back({.kind = Piece::Kind::note, .text = std::string(comment)});
            return;
        }
        text_.add(trimmed(html), {});
        add_block();
    }

    void add_heading(int level) {
        text_.put_notes(draft_);
        Piece piece = text_.take(Piece::Kind::heading);
        piece.level = level;
        draft_.pieces.push_back(std::move(piece));
    }

    void add_block() {
        bold_ = italic_ = 0; // a tag that nobody closed leans on no further paragraph
        text_.put_notes(draft_);
        if (text_.is_blank()) {
            text_.take(Piece::Kind::paragraph);
            return;
        }
        Piece piece = text_.take(opens_item_ ? Piece::Kind::item : Piece::Kind::paragraph);
        // Numbers that do not begin at one are words of the list, and a list counts from one.
        if (opens_item_ && !lists_.empty() && lists_.back() >= 0)
            piece.number = std::max(1, lists_.back());
        opens_item_ = false;
        draft_.pieces.push_back(std::move(piece));
    }

    Draft draft_;
    Tables tables_;
    PieceText text_;
    std::vector<std::string> footnotes_; // not told yet
    std::vector<std::size_t> starts_;    // of links, in the text
    std::string shown_;                  // the words of the picture at hand
    int pictures_ = 0;                   // open ones
    std::vector<int> lists_;             // the number that comes next; -1: bullets
    bool opens_item_ = false;
    int bold_ = 0;
    int italic_ = 0;
    int struck_ = 0;
};

} // namespace

Result<Draft> read_markdown(std::string_view text, const std::string& name) {
    if (text.size() > largest_markdown) {
        return Error{fmt::format("{}: larger than {} MiB of Markdown; split it into parts", name,
                                 largest_markdown >> 20U)};
    }
    const Front front = split_front(text);
    const Document document = parse_with_footnotes(front.body);
    Draft draft = Reader().read(document.get());
    if (draft.pieces.empty() && front.title.empty()) {
        return Error{fmt::format("{}: no words in it; give a draft that has some", name)};
    }
    draft.title = front.title;
    std::vector<Piece> notes;
    notes.reserve(front.notes.size());
    for (const std::string& note : front.notes)
        notes.push_back({.kind = Piece::Kind::note, .text = note});
    draft.pieces.insert(draft.pieces.begin(), notes.begin(), notes.end());
    return draft;
}

} // namespace say
