// The only file that knows tree-sitter: one block's concrete tree becomes plain values at once.
#include "syntax/build.h"
#include "syntax/script.h"
#include "text/unicode.h"

#include <tree_sitter/api.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>

extern "C" const TSLanguage* tree_sitter_sayline();

namespace say {
namespace {

std::vector<NodeKind> look_up_nodes(const TSLanguage* language) {
    const std::uint32_t count = ts_language_symbol_count(language);
    std::vector<NodeKind> kinds(count);
    std::vector<std::string_view> missing;
    for (const NodeName& row : node_names()) {
        bool found = false;
        for (std::uint32_t symbol = 0; symbol < count; ++symbol) {
            const auto id = static_cast<TSSymbol>(symbol);
            if (ts_language_symbol_type(language, id) != TSSymbolTypeRegular) continue;
            if (ts_language_symbol_name(language, id) != row.name) continue;
            kinds[symbol] = row.kind;
            found = true;
        }
        if (!found) missing.push_back(row.name);
    }
    for (std::string_view name : missing) {
        std::fprintf(stderr, "sayline: the grammar has no node “%.*s”\n",
                     static_cast<int>(name.size()), name.data());
    }
    if (!missing.empty())
        std::abort(); // a build that mixes two versions: nothing else would be right
    return kinds;
}

// What each symbol of the grammar is to us, looked up once: a parser is made for a single thought,
// too.
const std::vector<NodeKind>& node_kinds() {
    static const std::vector<NodeKind> kinds = look_up_nodes(tree_sitter_sayline());
    return kinds;
}

// The first byte that is no blank.
Offset text_begin(std::string_view source) {
    std::size_t at = 0;
    while (at < source.size()) {
        const unicode::CodePoint c = unicode::decode(source, at);
        if (!unicode::is_blank(c.value)) break;
        at += c.size;
    }
    return make_span(at, at).begin;
}

Span span_of(TSNode node) {
    return make_span(ts_node_start_byte(node), ts_node_end_byte(node));
}

} // namespace

struct Parser::State {
    TSParser* parser = nullptr;
    const std::vector<NodeKind>& kinds = node_kinds();
    std::string input; // reused between blocks

    State() : parser(ts_parser_new()) {
        if (!ts_parser_set_language(parser, tree_sitter_sayline())) {
            std::fprintf(stderr, "sayline: this tree-sitter library cannot load the grammar\n");
            std::abort(); // the grammar must be generated with --abi 14
        }
    }
    ~State() { ts_parser_delete(parser); }
    State(const State&) = delete;
    State& operator=(const State&) = delete;

    NodeKind kind_of(TSNode node) const {
        const TSSymbol symbol = ts_node_symbol(node);
        return symbol < kinds.size() ? kinds[symbol] : NodeKind{};
    }

    // The nodes that mean something, outer before inner, in order of place.
    std::vector<MarkNode> collect(TSNode root) const {
        std::vector<MarkNode> nodes;
        TSTreeCursor cursor = ts_tree_cursor_new(root);
        bool descend = true;
        while (true) {
            if (descend) {
                const TSNode node = ts_tree_cursor_current_node(&cursor);
                const NodeKind kind = kind_of(node);
                if (kind.use != NodeUse::none) nodes.push_back(mark_node(node, kind));
                if (ts_tree_cursor_goto_first_child(&cursor)) continue;
            }
            if (ts_tree_cursor_goto_next_sibling(&cursor)) {
                descend = true;
                continue;
            }
            if (!ts_tree_cursor_goto_parent(&cursor)) break;
            descend = false;
        }
        ts_tree_cursor_delete(&cursor);
        return nodes;
    }

    static MarkNode mark_node(TSNode node, NodeKind kind) {
        MarkNode result{.kind = kind, .span = span_of(node), .open = {}, .close = {}};
        if (kind.use != NodeUse::pair) return result;
        const std::uint32_t children = ts_node_child_count(node);
        if (children == 0) return result;
        result.open = span_of(ts_node_child(node, 0));
        const Span last = span_of(ts_node_child(node, children - 1));
        const bool closed = children > 1 && last.end == result.span.end;
        result.close = closed ? last : Span{result.span.end, result.span.end};
        return result;
    }
};

Parser::Parser() : state_(std::make_unique<State>()) {}
Parser::~Parser() = default;
Parser::Parser(Parser&&) noexcept = default;
Parser& Parser::operator=(Parser&&) noexcept = default;

Written Parser::parse(std::string_view text, const Block& block) {
    const std::string_view source = slice(text, block.span);
    const Span content = {Offset{block.content.begin.value - block.span.begin.value},
                          Offset{block.content.end.value - block.span.begin.value}};
    if (content.size() > thought_cap) return build_too_long(source, content);

    // An item goes in as "- " and its text, a paragraph from its own beginning behind an empty line
    // (so that
    // "---" cannot look like a header): both are then what they are in the whole file.
    const bool item = block.kind == BlockKind::item;
    const Offset from = item ? content.begin : text_begin(source);
    const std::string_view lead = item ? "- " : "\n";
    state_->input.assign(lead);
    state_->input += slice(source, {from, content.end});
    TSTree* tree = ts_parser_parse_string(state_->parser, nullptr, state_->input.data(),
                                          static_cast<std::uint32_t>(state_->input.size()));
    std::vector<MarkNode> nodes = state_->collect(ts_tree_root_node(tree));
    ts_tree_delete(tree);

    const auto back = static_cast<std::uint32_t>(lead.size());
    const auto move = [&](Offset at) {
        return Offset{std::max(at.value, back) - back + from.value};
    };
    for (MarkNode& node : nodes) {
        node.span = {move(node.span.begin), move(node.span.end)};
        node.open = {move(node.open.begin), move(node.open.end)};
        node.close = {move(node.close.begin), move(node.close.end)};
        if (node.kind.use == NodeUse::opener) {
            node.open = node.span;
            node.span.end = content.end;
            node.close = {content.end, content.end};
        }
    }
    // What a speaker's name holds is no mark.
    std::erase_if(nodes, [&](const MarkNode& node) { return node.span.begin < content.begin; });
    return build(source, content, nodes);
}

Written marked_thought(Parser& parser, std::string_view line) {
    Block block;
    block.kind = BlockKind::item; // then nothing at its beginning can look like a block
    block.span = make_span(0, line.size());
    block.content = block.span;
    return parser.parse(line, block);
}

} // namespace say
