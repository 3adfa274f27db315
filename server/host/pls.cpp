// Reads lexicon files with pugixml, which expands no entity of a document's own and keeps the place
// of every node; names with prefixes are resolved here, as it knows no namespaces.
#include "host/pls.h"

#include "base/markup.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>
#include <optional>
#include <pugixml.hpp>

namespace say {
namespace {

constexpr std::string_view pls_namespace = "http://www.w3.org/2005/01/pronunciation-lexicon";
constexpr std::size_t most_faults = 50;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool is_blank(std::string_view text) {
    return std::all_of(text.begin(), text.end(), is_space);
}

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size();) {
        if (is_space(text[at])) {
            ++at;
            continue;
        }
        std::size_t end = at;
        while (end < text.size() && !is_space(text[end]))
            ++end;
        words.emplace_back(text.substr(at, end - at));
        at = end;
    }
    return words;
}

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words) {
        if (!text.empty()) text += ' ';
        text += word;
    }
    return text;
}

std::string_view prefix_of(std::string_view name) {
    const auto colon = name.find(':');
    return colon == std::string_view::npos ? std::string_view{} : name.substr(0, colon);
}

std::string_view local_name(std::string_view name) {
    const auto colon = name.find(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

// What a prefix stands for at a node: the nearest declaration above it.
std::string_view namespace_of(pugi::xml_node node) {
    const std::string_view prefix = prefix_of(node.name());
    const std::string key = prefix.empty() ? "xmlns" : fmt::format("xmlns:{}", prefix);
    for (pugi::xml_node at = node; at; at = at.parent()) {
        if (const auto declared = at.attribute(key.c_str())) return declared.value();
    }
    return {};
}

bool is_pls(pugi::xml_node node, std::string_view name) {
    return local_name(node.name()) == name && namespace_of(node) == pls_namespace;
}

std::string text_of(pugi::xml_node node) {
    std::string text;
    for (const pugi::xml_node child : node.children()) {
        const auto type = child.type();
        if (type == pugi::node_pcdata || type == pugi::node_cdata) text += child.value();
    }
    return text;
}

class Reader {
public:
    explicit Reader(std::string_view bytes) : bytes_(bytes) {
        if (bytes_.starts_with(byte_order_mark)) skipped_ = byte_order_mark.size();
    }

    Pls read() {
        const std::string_view body = bytes_.substr(skipped_);
        if (is_blank(body)) return {};
        // The declaration of a document type is kept only to refuse it.
        constexpr unsigned kept = pugi::parse_default | pugi::parse_doctype | pugi::parse_fragment;
        const auto parsed =
            document_.load_buffer(body.data(), body.size(), kept, pugi::encoding_utf8);
        if (!parsed) {
            fault(skipped_ + static_cast<std::size_t>(parsed.offset),
                  fmt::format("not XML: {}; nothing in this file applies", parsed.description()));
            return std::move(pls_);
        }
        check_entities();
        read_document();
        return std::move(pls_);
    }

private:
    std::size_t place_of(pugi::xml_node node) const {
        const auto offset = node.offset_debug();
        if (offset < 0) return 0;
        const bool element = node.type() == pugi::node_element;
        // The library points at an element's name.
        return skipped_ + static_cast<std::size_t>(offset) - (element && offset > 0 ? 1 : 0);
    }

    void fault(std::size_t at, std::string message) {
        if (pls_.faults.size() > most_faults) return;
        if (pls_.faults.size() == most_faults)
            message = "more is wrong from here on; mend the rest first";
        pls_.faults.push_back({make_span(at, at).begin, std::move(message)});
    }

    void fault(pugi::xml_node node, std::string message) {
        fault(place_of(node), std::move(message));
    }

    // The library leaves an entity that it does not know as it is written.
    void check_entities() {
        constexpr std::string_view known[] = {"amp;", "lt;", "gt;", "quot;", "apos;", "#"};
        for (std::size_t at = 0; at < bytes_.size();) {
            at = bytes_.find_first_of("&<", at);
            if (at == std::string_view::npos) return;
            const std::string_view rest = bytes_.substr(at);
            ++at;
            if (rest.starts_with("<!--") || rest.starts_with("<![CDATA[")) {
                at = bytes_.find(rest.starts_with("<!--") ? "-->" : "]]>", at);
            } else if (rest.front() == '&' &&
                       std::none_of(std::begin(known), std::end(known), [&](std::string_view name) {
                           return rest.substr(1).starts_with(name);
                       })) {
                const std::string_view name = rest.substr(0, rest.find_first_of("; <\n") + 1);
                fault(at - 1, fmt::format("\"{}\" stands for nothing; write the character itself, "
                                          "or &amp; for &",
                                          name.empty() ? "&" : name));
            }
        }
    }

    void read_document() {
        pugi::xml_node root;
        for (const pugi::xml_node node : document_.children()) {
            if (node.type() == pugi::node_doctype) {
                fault(place_of(node), "a document type is not read, for it can make a file grow "
                                      "without end; take it out: nothing in this file applies");
                return;
            }
            if (node.type() == pugi::node_pcdata && !is_blank(node.value())) {
                fault(node, "text outside the lexicon; only <lexicon> may stand here");
            }
            if (node.type() != pugi::node_element) continue;
            if (root) {
                fault(node, fmt::format("<{}> is a second root; a file holds one <lexicon>",
                                        node.name()));
                return;
            }
            root = node;
        }
        if (!root) return fault(skipped_, "no lexicon in it; <lexicon> may stand here");
        if (check_root(root)) read_root(root);
    }

    bool check_root(pugi::xml_node root) {
        if (local_name(root.name()) != "lexicon") {
            fault(root, fmt::format("<{}> is no lexicon; the root may be <lexicon>: nothing in "
                                    "this file applies",
                                    root.name()));
            return false;
        }
        if (namespace_of(root) != pls_namespace) {
            fault(root, fmt::format("<lexicon> is of the namespace \"{}\"; it may be "
                                    "xmlns=\"{}\": nothing in this file applies",
                                    namespace_of(root), pls_namespace));
            return false;
        }
        pls_.language = root.attribute("xml:lang").value();
        const std::string primary =
            unicode::to_lower(pls_.language.substr(0, pls_.language.find('-')));
        if (primary != "en") {
            fault(root,
                  fmt::format("{}; it may be en, en-US or en-GB, the language of the "
                              "scripts: nothing in this file applies",
                              primary.empty() ? std::string("<lexicon> has no xml:lang")
                                              : fmt::format("xml:lang is \"{}\"", pls_.language)));
            return false;
        }
        return true;
    }

    void read_root(pugi::xml_node root) {
        pls_.has_root = true;
        pls_.prefix = std::string(prefix_of(root.name()));
        if (!pls_.prefix.empty()) pls_.prefix += ':';
        if (const std::string_view version = root.attribute("version").value(); version != "1.0") {
            fault(root, fmt::format("version is \"{}\"; it may be \"1.0\"", version));
        }
        const auto alphabet = root.attribute("alphabet");
        alphabet_ = alphabet.value();
        if (!alphabet) {
            fault(root, "<lexicon> has no alphabet; it may be alphabet=\"ipa\": its phonemes do "
                        "not apply");
        } else if (alphabet_ != "ipa") {
            fault(root, fmt::format("alphabet is \"{}\"; it may be \"ipa\": phonemes without an "
                                    "alphabet of their own do not apply",
                                    alphabet_));
        }
        for (const pugi::xml_node node : root.children()) {
            if (is_foreign(node) || is_pls(node, "meta") || is_pls(node, "metadata")) continue;
            if (is_pls(node, "lexeme")) {
                read_lexeme(node);
            } else {
                misplaced(node, "meta, metadata and lexeme");
            }
        }
    }

    // Comments, blanks and elements of other namespaces are nobody's fault.
    static bool is_foreign(pugi::xml_node node) {
        if (node.type() == pugi::node_pcdata) return is_blank(node.value());
        return node.type() != pugi::node_cdata &&
               (node.type() != pugi::node_element || namespace_of(node) != pls_namespace);
    }

    void misplaced(pugi::xml_node node, std::string_view allowed) {
        const bool element = node.type() == pugi::node_element;
        fault(node, fmt::format("{} cannot stand here; {} may",
                                element ? fmt::format("<{}>", node.name()) : std::string("text"),
                                allowed));
    }

    void read_lexeme(pugi::xml_node node) {
        PlsLexeme lexeme;
        lexeme.at = make_span(place_of(node), 0).begin;
        bool named = false;
        std::vector<pugi::xml_node> sounds;
        for (const pugi::xml_node child : node.children()) {
            if (is_foreign(child) || is_pls(child, "example")) continue;
            if (is_pls(child, "grapheme")) {
                named = true;
                read_grapheme(child, lexeme);
            } else if (is_pls(child, "phoneme") || is_pls(child, "alias")) {
                sounds.push_back(child);
            } else {
                misplaced(child, "grapheme, phoneme, alias and example");
            }
        }
        if (!named) fault(node, "<lexeme> has no grapheme; a word may stand in <grapheme>");
        if (sounds.empty()) {
            fault(node, "<lexeme> says no sound; <phoneme> or <alias> may stand behind the "
                        "grapheme");
        }
        if (lexeme.graphemes.empty()) return;
        bool preferred = false; // the first that is preferred is said, else the first
        for (const pugi::xml_node sound : sounds)
            read_sound(sound, lexeme, preferred);
        if (!lexeme.readings.empty()) pls_.lexemes.push_back(std::move(lexeme));
    }

    void read_grapheme(pugi::xml_node node, PlsLexeme& lexeme) {
        std::vector<std::string> words = words_of(text_of(node));
        if (words.empty()) return fault(node, "<grapheme> is empty; a word may stand in it");
        lexeme.graphemes.push_back(joined(words));
    }

    void read_sound(pugi::xml_node node, PlsLexeme& lexeme, bool& preferred) {
        auto reading = is_pls(node, "alias") ? read_alias(node) : read_phoneme(node, lexeme);
        if (!reading) return;
        const std::string_view prefer = node.attribute("prefer").value();
        if (!prefer.empty() && prefer != "true" && prefer != "false") {
            fault(node, fmt::format("prefer is \"{}\"; it may be true or false", prefer));
        }
        const bool said = lexeme.readings.empty() || (prefer == "true" && !preferred);
        preferred = preferred || prefer == "true";
        if (said) lexeme.phoneme = reading->alias.empty() ? only_text(node) : Span{};
        lexeme.readings.insert(said ? lexeme.readings.begin() : lexeme.readings.end(),
                               std::move(*reading));
    }

    std::optional<OwnReading> read_alias(pugi::xml_node node) {
        std::vector<std::string> words = words_of(text_of(node));
        if (words.empty()) {
            fault(node, "<alias> is empty; the words that are said may stand in it");
            return std::nullopt;
        }
        return OwnReading{.phones = {}, .alias = joined(words)};
    }

    std::optional<OwnReading> read_phoneme(pugi::xml_node node, const PlsLexeme& lexeme) {
        const auto own = node.attribute("alphabet");
        const std::string_view alphabet = own ? own.value() : alphabet_.c_str();
        if (alphabet != "ipa") {
            if (own) fault(node, fmt::format("alphabet is \"{}\"; it may be \"ipa\"", alphabet));
            return std::nullopt;
        }
        const std::string text = text_of(node);
        const std::vector<std::string> parts = words_of(text);
        if (parts.empty()) {
            fault(node, "<phoneme> is empty; the sound in IPA may stand in it");
            return std::nullopt;
        }
        OwnReading reading;
        for (const std::string& part : parts) {
            auto phones = from_ipa(part);
            if (!phones) {
                fault(node, unreadable(lexeme, part));
                return std::nullopt;
            }
            reading.phones.push_back(std::move(*phones));
        }
        return reading;
    }

    static std::string unreadable(const PlsLexeme& lexeme, std::string_view part) {
        const std::string_view symbol = unknown_ipa(part);
        const std::string& word = lexeme.graphemes.front();
        if (symbol.empty())
            return fmt::format("\"{}\" is no sound for \"{}\"; IPA may stand here", part, word);
        return fmt::format("\"{}\" in the phoneme of \"{}\" is no IPA symbol of an English sound; "
                           "docs/pronunciation.md lists them",
                           symbol, word);
    }

    // The span of a node's text, if it is of one piece and written without escapes.
    Span only_text(pugi::xml_node node) const {
        const pugi::xml_node text = node.first_child();
        if (text != node.last_child() || text.type() != pugi::node_pcdata) return {};
        const std::size_t begin = place_of(text);
        const std::size_t end = bytes_.find('<', begin);
        if (end == std::string_view::npos) return {};
        return make_span(begin, end);
    }

    std::string_view bytes_;
    std::size_t skipped_ = 0;
    pugi::xml_document document_;
    std::string alphabet_;
    Pls pls_;
};

Phones joined(const std::vector<Phones>& parts) {
    Phones whole;
    for (const Phones& part : parts)
        whole.insert(whole.end(), part.begin(), part.end());
    return whole;
}

// A list for each word of an entry, or one for them all.
std::vector<OwnReading> fitted(std::vector<OwnReading> readings, std::size_t n_words) {
    for (OwnReading& reading : readings) {
        if (reading.phones.size() > 1 && reading.phones.size() != n_words)
            reading.phones.assign(1, joined(reading.phones));
    }
    return readings;
}

// --- writing -----------------------------------------------------------------------------------

std::string ipa_of(const std::vector<Phones>& phones) {
    std::string ipa;
    for (const Phones& part : phones) {
        if (!ipa.empty()) ipa += ' ';
        ipa += to_ipa(part);
    }
    return ipa;
}

std::string lexeme_text(std::string_view prefix, std::string_view grapheme, std::string_view ipa) {
    return fmt::format("  <{0}lexeme>\n    <{0}grapheme>{1}</{0}grapheme>\n"
                       "    <{0}phoneme>{2}</{0}phoneme>\n  </{0}lexeme>\n",
                       prefix, markup_text(grapheme), ipa);
}

std::string new_file(std::string_view grapheme, std::string_view ipa) {
    return fmt::format("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                       "<!-- How this project says its own words, in the International Phonetic "
                       "Alphabet. -->\n"
                       "<lexicon version=\"1.0\" xmlns=\"{}\"\n"
                       "         alphabet=\"ipa\" xml:lang=\"en-US\">\n{}</lexicon>\n",
                       pls_namespace, lexeme_text({}, grapheme, ipa));
}

std::vector<std::string> folded_words(std::string_view grapheme) {
    std::vector<std::string> words = words_of(grapheme);
    for (std::string& word : words)
        word = unicode::fold(word);
    return words;
}

const PlsLexeme* find_lexeme(const Pls& pls, const std::vector<std::string>& words) {
    for (const PlsLexeme& lexeme : pls.lexemes) {
        for (const std::string& grapheme : lexeme.graphemes) {
            if (folded_words(grapheme) == words) return &lexeme;
        }
    }
    return nullptr;
}

// The start of the line on which a place stands, if nothing but blanks is before it.
std::size_t line_start(std::string_view bytes, std::size_t at) {
    std::size_t begin = at;
    while (begin > 0 && (bytes[begin - 1] == ' ' || bytes[begin - 1] == '\t'))
        --begin;
    return begin == 0 || bytes[begin - 1] == '\n' || bytes[begin - 1] == '\r' ? begin : at;
}

} // namespace

Pls read_pls(std::string_view bytes) {
    return Reader(bytes).read();
}

void add_to(WordList& list, const Pls& pls) {
    for (const PlsLexeme& lexeme : pls.lexemes) {
        for (const std::string& grapheme : lexeme.graphemes) {
            std::vector<std::string> words = folded_words(grapheme);
            std::vector<OwnReading> readings = fitted(lexeme.readings, words.size());
            list.add({.words = std::move(words), .readings = std::move(readings)});
        }
    }
}

std::vector<TextEdit> pls_edits(std::string_view bytes, std::string_view grapheme,
                                const std::vector<Phones>& phones) {
    const std::string ipa = ipa_of(phones);
    std::vector<TextEdit> edits;
    if (is_blank(bytes)) {
        edits.push_back({make_span(0, bytes.size()), new_file(grapheme, ipa)});
        return edits;
    }
    const Pls pls = read_pls(bytes);
    if (!pls.has_root) return {};
    const PlsLexeme* known = find_lexeme(pls, folded_words(grapheme));
    if (known != nullptr && joined(known->readings.front().phones) == joined(phones)) return {};
    if (known != nullptr && known->graphemes.size() == 1 && !known->phoneme.empty()) {
        edits.push_back({known->phoneme, ipa});
        return edits;
    }
    const std::string closing = fmt::format("</{}lexicon", pls.prefix);
    const std::size_t end = bytes.rfind(closing);
    const std::size_t self_closed = bytes.rfind("/>");
    if (known != nullptr) {
        // The first of two entries is said: the new one goes above.
        const std::size_t at = line_start(bytes, known->at.value);
        edits.push_back({make_span(at, at), lexeme_text(pls.prefix, grapheme, ipa)});
    } else if (end != std::string_view::npos) {
        const std::size_t at = line_start(bytes, end);
        const bool own_line = at == 0 || bytes[at - 1] == '\n' || bytes[at - 1] == '\r';
        edits.push_back(
            {make_span(at, at), (own_line ? "" : "\n") + lexeme_text(pls.prefix, grapheme, ipa)});
    } else if (self_closed != std::string_view::npos) {
        edits.push_back({make_span(self_closed, self_closed + 2),
                         fmt::format(">\n{}{}>", lexeme_text(pls.prefix, grapheme, ipa), closing)});
    }
    if (uses_crlf(bytes)) write_crlf(edits);
    return edits;
}

} // namespace say
