// workspace/symbol: what a script can be found by.
#include "features/features.h"
#include "text/unicode.h"

namespace say {

std::vector<Landmark> landmarks(std::string_view text) {
    std::vector<Landmark> result;
    const Header header = parse_header(text);
    for (const HeaderEntry& entry : header.entries) {
        const bool titles = unicode::to_lower(slice(text, entry.key)) == "title";
        if (titles && !header.title.empty() && slice(text, entry.value) == header.title)
            result.push_back({entry.value, header.title, Landmark::Kind::title});
    }
    for (const Speaker& speaker : header.speakers)
        result.push_back({speaker.name_span, speaker.name, Landmark::Kind::speaker});
    for (const Block& block : cut_blocks(text, header)) {
        if (block.kind != BlockKind::heading) continue;
        const std::string_view name = split_heading(slice(text, block.content)).name;
        if (!name.empty())
            result.push_back({block.span, std::string(name), Landmark::Kind::section});
    }
    return result;
}

bool answers(std::string_view name, std::string_view query) {
    const std::string among = unicode::fold(name);
    std::size_t at = 0;
    for (const char c : unicode::fold(query)) {
        if (c == ' ' || c == '\t') continue;
        at = among.find(c, at);
        if (at == std::string::npos) return false;
        ++at;
    }
    return true;
}

} // namespace say
