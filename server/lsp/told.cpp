// Short answers: nothing new, or the part that is new.
#include "lsp/told.h"

#include "base/hash.h"

#include <fmt/format.h>

#include <algorithm>

namespace say::lsp {
namespace {

Diagnostic too_large(const Text& text) {
    return {.range = {},
            .severity = 2,
            .code = {},
            .message = fmt::format("this text is {} MB, too large for a script; nothing is timed "
                                   "or checked above {} MB",
                                   text.bytes().size() / 1024 / 1024, analysis_cap / 1024 / 1024)};
}

std::string name_of(const std::vector<std::uint32_t>& data) {
    Hash hash;
    for (const std::uint32_t number : data)
        hash.add(std::uint64_t{number});
    return fmt::format("{:016x}", hash.value());
}

} // namespace

const Findings& Told::findings(const std::shared_ptr<const Analysis>& analysis, const Text& text,
                               Encoding encoding, std::optional<Offset> typing) {
    const bool large = text.bytes().size() > analysis_cap;
    return list_.of(analysis, encoding, typing,
                    large ? std::optional(too_large(text)) : std::nullopt);
}

SemanticTokens Told::tokens(SemanticTokens fresh) {
    fresh.resultId = name_of(fresh.data);
    tokens_ = fresh;
    return fresh;
}

SemanticTokensDelta Told::tokens_since(std::string_view id, SemanticTokens fresh) {
    const SemanticTokens old = std::move(tokens_);
    SemanticTokensDelta delta{.whole = tokens(std::move(fresh))};
    if (old.resultId.empty() || old.resultId != id) return delta;
    const std::vector<std::uint32_t>& before = old.data;
    const std::vector<std::uint32_t>& now = delta.whole.data;
    const auto head = std::mismatch(before.begin(), before.end(), now.begin(), now.end());
    const auto same = static_cast<std::size_t>(head.first - before.begin());
    const std::size_t most = std::min(before.size(), now.size()) - same;
    std::size_t tail = 0;
    while (tail < most && before[before.size() - 1 - tail] == now[now.size() - 1 - tail])
        ++tail;
    delta.edit = SemanticTokensDelta::Edit{
        .start = static_cast<std::uint32_t>(same),
        .deleteCount = static_cast<std::uint32_t>(before.size() - same - tail),
        .data = {now.begin() + static_cast<std::ptrdiff_t>(same),
                 now.end() - static_cast<std::ptrdiff_t>(tail)}};
    return delta;
}

} // namespace say::lsp
