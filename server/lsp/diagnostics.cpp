// Findings become diagnostics, each written once for as long as it stands.
#include "lsp/diagnostics.h"

#include "base/hash.h"
#include "features/features.h"

#include <fmt/core.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>

namespace say::lsp {
namespace {

int severity_number(Severity severity) {
    switch (severity) {
    case Severity::error: return 1;
    case Severity::warning: return 2;
    case Severity::hint: return 4;
    }
    return 4;
}

std::string_view code_of(const Finding& finding) {
    return finding.rule != nullptr ? finding.rule->id : std::string_view{};
}

// The worst first: an error before a warning before a hint, each in the script's order. They are
// given in the script's order.
std::vector<const Finding*> shown_findings(const std::vector<Finding>& findings) {
    std::array<std::size_t, 3> quota{}; // by severity, hints first
    for (const Finding& finding : findings)
        ++quota.at(static_cast<std::size_t>(finding.severity));
    std::size_t left = most_findings;
    for (auto row = quota.rbegin(); row != quota.rend(); ++row) {
        *row = std::min(*row, left);
        left -= *row;
    }
    std::vector<const Finding*> shown;
    shown.reserve(most_findings - left);
    for (const Finding& finding : findings) {
        std::size_t& places = quota.at(static_cast<std::size_t>(finding.severity));
        if (places == 0) continue;
        --places;
        shown.push_back(&finding);
    }
    return shown;
}

std::optional<Diagnostic> count_of_the_rest(const Analysis& analysis) {
    if (analysis.findings.size() <= most_findings) return std::nullopt;
    return Diagnostic{.range = {},
                      .severity = 3,
                      .code = {},
                      .message =
                          fmt::format("{} more findings are not shown; `sayline check` lists all",
                                      analysis.findings.size() - most_findings)};
}

WrittenDiagnostic written(const Diagnostic& diagnostic) {
    WrittenDiagnostic made{.json = write(encode(diagnostic))};
    made.print = Hash{}.add(made.json).value();
    return made;
}

// Puts a list together as it is sent.
class Gathering {
public:
    explicit Gathering(std::size_t size) { json_.reserve(size); }

    void add(const WrittenDiagnostic& diagnostic) {
        json_ += json_.empty() ? '[' : ',';
        json_ += diagnostic.json;
        id_.add(diagnostic.print);
    }

    Findings take() {
        const bool any = !json_.empty();
        json_ += any ? "]" : "[]";
        return {.id = fmt::format("{:016x}", id_.value()), .json = std::move(json_), .any = any};
    }

private:
    Hash id_;
    std::string json_;
};

} // namespace

Diagnostic to_diagnostic(const Finding& finding, Columns& columns) {
    return {.range = columns.range(finding.span),
            .severity = severity_number(finding.severity),
            .code = std::string(code_of(finding)),
            .message = std::string(finding.message())};
}

std::vector<Diagnostic> to_diagnostics(const Analysis& analysis, Encoding encoding) {
    Columns columns(*analysis.document.text, encoding);
    std::vector<Diagnostic> diagnostics;
    for (const Finding* finding : shown_findings(analysis.findings))
        diagnostics.push_back(to_diagnostic(*finding, columns));
    if (auto rest = count_of_the_rest(analysis)) diagnostics.push_back(std::move(*rest));
    return diagnostics;
}

Findings findings_of(const std::vector<Diagnostic>& diagnostics) {
    Gathering list(0);
    for (const Diagnostic& diagnostic : diagnostics)
        list.add(written(diagnostic));
    return list.take();
}

// The rows of the last version as they would stand in this one.
class DiagnosticList::Lookup {
public:
    Lookup(std::vector<Row>& rows, const Analysis& last, const Analysis& now)
        : rows_(rows), change_(now.document.change_from(last.document.text)) {
        const Text& text = *now.document.text;
        lines_ = text.line_count() - last.document.text->line_count();
        // On the lines of the change and right beside them columns may differ.
        above_ = text.line_start(text.line_of(Offset{change_.begin}));
        below_ = text.line_span(text.line_of(Offset{change_.new_end}) + 1).begin;
    }

    // The same finding, not taken yet; null where it must be made anew.
    Row* find(const Finding& finding) {
        return find(finding, [&](const Row& row) { return says(row, finding); });
    }

    // What was last told there by the same rule, whatever its words.
    Row* find_told(const Finding& finding) {
        return find(finding,
                    [&](const Row& row) { return row.diagnostic.code == code_of(finding); });
    }

    // How many lines it stands further down, modulo 2^32.
    std::uint32_t lines(const Finding& finding) const { return is_behind(finding) ? lines_ : 0; }

private:
    template <class Fits> Row* find(const Finding& finding, Fits fits) {
        const bool before = finding.span.end < above_;
        if (!before && !is_behind(finding)) return nullptr;
        const Span old = before ? finding.span : finding.span + (0 - change_.shift());
        auto row =
            std::lower_bound(rows_.begin(), rows_.end(), old.begin,
                             [](const Row& each, Offset at) { return each.span.begin < at; });
        for (; row != rows_.end() && row->span.begin == old.begin; ++row) {
            if (!row->taken && row->span == old && fits(*row)) return &*row;
        }
        return nullptr;
    }

    bool is_behind(const Finding& finding) const {
        return below_.value > change_.new_end && finding.span.begin >= below_;
    }

    // A draft of a thought is the same in both; the script's rules make theirs anew.
    static bool says(const Row& row, const Finding& finding) {
        if (row.draft == finding.draft) return true;
        return row.diagnostic.code == code_of(finding) &&
               row.diagnostic.message == finding.message();
    }

    std::vector<Row>& rows_;
    Change change_;
    std::uint32_t lines_ = 0;
    Offset above_;
    Offset below_;
};

DiagnosticList::Row DiagnosticList::row_of(Diagnostic diagnostic) {
    Row row;
    row.written = written(diagnostic);
    row.diagnostic = std::move(diagnostic);
    return row;
}

Findings DiagnosticList::gathered() const {
    constexpr std::size_t room = 1024; // for what has come
    Gathering list(findings_.json.size() + room);
    for (const std::vector<Row>* rows : {&rows_, &behind_}) {
        for (const Row& row : *rows)
            list.add(row.written);
    }
    return list.take();
}

const Findings& DiagnosticList::of(const std::shared_ptr<const Analysis>& analysis,
                                   Encoding encoding, std::optional<Offset> typing,
                                   const std::optional<Diagnostic>& about_text) {
    if (last_ == analysis && last_typing_ == typing) return findings_;
    Columns columns(*analysis->document.text, encoding);
    std::optional<Lookup> last;
    if (last_) last.emplace(rows_, *last_, *analysis);
    std::vector<Row> rows;
    rows.reserve(rows_.size() + 1);
    for (const Finding* finding : shown_findings(analysis->findings)) {
        const Telling telling = typing ? telling_of(*analysis, *finding, *typing) : Telling::now;
        Row* old = nullptr;
        if (last) {
            old = telling == Telling::now ? last->find(*finding) : last->find_told(*finding);
        }
        if (old == nullptr && telling != Telling::now) continue;
        if (old == nullptr) {
            rows.push_back(row_of(to_diagnostic(*finding, columns)));
        } else {
            const std::uint32_t lines = last->lines(*finding);
            const int severity = severity_number(finding->severity);
            if (lines == 0 && severity == old->diagnostic.severity) {
                rows.push_back(std::move(*old));
            } else {
                Diagnostic diagnostic = std::move(old->diagnostic);
                diagnostic.severity = severity;
                diagnostic.range.start.line += lines;
                diagnostic.range.end.line += lines;
                rows.push_back(row_of(std::move(diagnostic)));
            }
            old->taken = true;
        }
        rows.back().span = finding->span;
        // What stands as it was told is not what the draft says.
        rows.back().draft = telling == Telling::now ? finding->draft : nullptr;
    }
    std::vector<Row> behind;
    if (auto rest = count_of_the_rest(*analysis)) behind.push_back(row_of(std::move(*rest)));
    if (about_text) behind.push_back(row_of(*about_text));
    last_ = analysis;
    last_typing_ = typing;
    rows_ = std::move(rows);
    behind_ = std::move(behind);
    findings_ = gathered();
    return findings_;
}

} // namespace say::lsp
