// links: say_grammar say_corpus
// The grammar's corpus against the parser as it is built in, so that no generator is needed.
// What the marks mean: docs/format.md. IPA and Jefferson shapes: the IPA chart; Jefferson's
// transcription glossary.
#include "support/corpus.h"

#include "support/catch.h"

#include <tree_sitter/api.h>

#include <algorithm>
#include <cstdlib>
#include <memory>

extern "C" const TSLanguage* tree_sitter_sayline();

namespace {

std::string tree_of(const std::string& input) {
    const std::unique_ptr<TSParser, void (*)(TSParser*)> parser(ts_parser_new(), ts_parser_delete);
    REQUIRE(ts_parser_set_language(parser.get(), tree_sitter_sayline()));
    TSTree* tree = ts_parser_parse_string(parser.get(), nullptr, input.data(),
                                          static_cast<std::uint32_t>(input.size()));
    char* text = ts_node_string(ts_tree_root_node(tree));
    std::string result(text);
    std::free(text); // NOLINT(cppcoreguidelines-no-malloc): the library allocates it
    ts_tree_delete(tree);
    return result;
}

// "key: (header_key)" to "(header_key)": a corpus tree may leave the fields out.
std::string without_fields(const std::string& tree) {
    std::string result;
    for (std::size_t at = 0; at < tree.size();) {
        std::size_t end = at;
        while (end < tree.size() && ((tree[end] >= 'a' && tree[end] <= 'z') || tree[end] == '_'))
            ++end;
        const bool field = end > at && tree.compare(end, 2, ": ") == 0;
        if (!field) result += tree.substr(at, std::max<std::size_t>(end - at, 1));
        at = field ? end + 2 : std::max(end, at + 1);
    }
    return result;
}

} // namespace

TEST_CASE("corpus/every case gives its tree") {
    const auto cases = say::test::load_corpus(SAYLINE_SOURCE_DIR "/grammar/test/corpus");
    REQUIRE(cases.size() >= 150);
    for (const auto& each : cases) {
        INFO(each.file << ": " << each.name << "\n" << each.input);
        CHECK(without_fields(say::test::collapse_blanks(tree_of(each.input))) ==
              without_fields(each.tree));
    }
}
