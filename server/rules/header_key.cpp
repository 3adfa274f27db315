// A header line whose key means nothing to us: it is kept, but if it was meant to do something, it
// does not.
#include "base/lists.h"
#include "rules/nearest.h"
#include "rules/rule.h"
#include "rules/wording.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <vector>

namespace say::rules {
namespace {

std::vector<FindingDraft> check(const ScriptView& script) {
    std::vector<std::string_view> names;
    for (const HeaderKey& key : header_keys())
        names.push_back(key.name);

    std::vector<FindingDraft> found;
    for (const HeaderEntry& entry : script.header.entries) {
        std::string_view written = slice(script.text, entry.key);
        while (written.ends_with(' '))
            written.remove_suffix(1);
        const std::string key = unicode::to_lower(written);
        if (is_one_of(key, names)) continue;

        const std::string_view near = nearest(key, names);
        FindingDraft draft{
            .span = {entry.key.begin, entry.key.begin + static_cast<std::uint32_t>(written.size())},
            .message =
                fmt::format("{} is no key of the header and changes nothing", quoted(written)),
            .fixes = {}};
        if (!near.empty()) {
            draft.fixes.push_back({.title = fmt::format("Write {}", quoted(near)),
                                   .edits = {{draft.span, std::string(near)}},
                                   // A key that counts may change times and voices.
                                   .keeps_every_word = false,
                                   .preferred = true});
        }
        found.push_back(std::move(draft));
    }
    return found;
}

} // namespace

extern const Rule header_key = {
    .id = "header-key",
    .severity = Severity::hint,
    .summary = "A header line that means nothing here",
    .manual =
        "The keys that count are title, reader, pace, target, speakers, stage, language, allow and "
        "date. "
        "Anything else is kept as it stands and changes nothing, which is fine for a note of your "
        "own and a surprise for a slip of the finger. "
        "Where a known key is near, the fix writes it.",
    .check_script = check,
};

} // namespace say::rules
