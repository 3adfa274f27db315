// Short answers: nothing new, or the part that is new.
#include "lsp/told.h"

#include "base/hash.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

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

// Each diagnostic as JSON. A key changes one or two of hundreds: the others are written already.
std::vector<std::string> write_parts(const std::vector<Diagnostic>& diagnostics,
                                     const std::vector<Diagnostic>& old,
                                     std::vector<std::string> old_parts) {
    std::vector<std::string> parts(diagnostics.size());
    const std::size_t most = std::min(diagnostics.size(), old.size());
    std::size_t head = 0;
    while (head < most && diagnostics[head] == old[head]) {
        parts[head] = std::move(old_parts[head]);
        ++head;
    }
    std::size_t tail = 0;
    const auto at_end = [&](auto& list) -> auto& { return list[list.size() - 1 - tail]; };
    while (head + tail < most && at_end(diagnostics) == at_end(old)) {
        at_end(parts) = std::move(at_end(old_parts));
        ++tail;
    }
    for (std::size_t i = head; i + tail < parts.size(); ++i)
        parts[i] = write(encode(diagnostics[i]));
    return parts;
}

std::string name_of(const std::vector<std::uint32_t>& data) {
    Hash hash;
    for (const std::uint32_t number : data)
        hash.add(std::uint64_t{number});
    return fmt::format("{:016x}", hash.value());
}

std::string name_of(const std::vector<Diagnostic>& diagnostics) {
    Hash hash;
    for (const Diagnostic& diagnostic : diagnostics) {
        const Range& range = diagnostic.range;
        for (const std::uint32_t number :
             {range.start.line, range.start.character, range.end.line, range.end.character,
              static_cast<std::uint32_t>(diagnostic.severity)}) {
            hash.add(std::uint64_t{number});
        }
        hash.add(diagnostic.code).add(diagnostic.message);
    }
    return fmt::format("{:016x}", hash.value());
}

} // namespace

Findings findings_of(const std::vector<Diagnostic>& diagnostics) {
    return {.id = name_of(diagnostics),
            .json = fmt::format("[{}]", fmt::join(write_parts(diagnostics, {}, {}), ",")),
            .any = !diagnostics.empty()};
}

const Findings& Told::findings(const std::shared_ptr<const Analysis>& analysis, const Text& text,
                               Encoding encoding) {
    if (analysis_ == analysis) return findings_;
    const bool first = analysis_ == nullptr;
    analysis_ = analysis;
    std::vector<Diagnostic> fresh = list_.of(*analysis, encoding);
    if (text.bytes().size() > analysis_cap) fresh.push_back(too_large(text));
    if (fresh == diagnostics_ && !first) return findings_;
    parts_ = write_parts(fresh, diagnostics_, std::move(parts_));
    diagnostics_ = std::move(fresh);
    findings_ = {.id = name_of(diagnostics_),
                 .json = fmt::format("[{}]", fmt::join(parts_, ",")),
                 .any = !diagnostics_.empty()};
    return findings_;
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
