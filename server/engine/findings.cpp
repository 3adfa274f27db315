// What the rules say of a script, in the order of its places, and the fixes when they are asked
// for.
#include "engine/findings.h"

#include "rules/header_lines.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>

namespace say {
namespace {

// "Leave this one": a note above the thought, or one more id in the note that is there already.
Fix leave_here(std::string_view text, const Rule& rule, const Placed& placed) {
    // Several stand in one menu: which is left is said.
    Fix fix{.title = fmt::format("Leave this one ({})", rule.id), .edits = {}};
    const std::string_view notes = slice(text, placed.block.notes);
    const std::size_t at = notes.rfind("% allow:");
    if (at != std::string_view::npos) {
        std::size_t end = notes.find_first_of("\r\n", at);
        if (end == std::string_view::npos) end = notes.size();
        const std::uint32_t place =
            placed.block.notes.begin.value + static_cast<std::uint32_t>(end);
        fix.edits.push_back({make_span(place, place), fmt::format(", {}", rule.id)});
        return fix;
    }
    const Offset begin = placed.block.span.begin;
    fix.edits.push_back({{begin, begin}, fmt::format("% allow: {}\n", rule.id)});
    if (uses_crlf(text)) write_crlf(fix.edits);
    return fix;
}

Fix leave_everywhere(const ScriptView& script, const Rule& rule) {
    Fix fix{.title = fmt::format("Leave this rule out of the script ({})", rule.id), .edits = {}};
    for (const HeaderEntry& entry : script.header.entries) {
        if (unicode::to_lower(slice(script.text, entry.key)) != "allow") continue;
        fix.edits.push_back({{entry.value.end, entry.value.end}, fmt::format(", {}", rule.id)});
        return fix;
    }
    fix.edits.push_back(rules::add_header_line(script, fmt::format("allow: {}", rule.id)));
    return fix;
}

void move_into_place(std::vector<Fix>& fixes, std::uint32_t by, bool crlf) {
    for (Fix& fix : fixes) {
        for (TextEdit& edit : fix.edits)
            edit.span = edit.span + by;
        if (crlf) write_crlf(fix.edits);
    }
}

// --- the script's rules -------------------------------------------------------------------------

std::vector<Stretch> stretches(const Script& script) {
    std::vector<Stretch> result;
    result.reserve(script.sections.size());
    for (const Section& section : script.sections) {
        result.push_back({.name = section.name,
                          .span = section.heading,
                          .parent = section.parent,
                          .level = section.level,
                          .target = section.target,
                          .target_span = section.target_span,
                          .timing = section.timing,
                          .has_thoughts = section.thoughts > 0,
                          .words = section.words,
                          .held = section.held});
    }
    return result;
}

ScriptView view_of(const Analysis& analysis, std::span<const Stretch> sections) {
    const Script& script = analysis.script;
    const Header& header = script.header;
    return {.text = analysis.document.text->bytes(),
            .header = header,
            .whole = {.name = {},
                      .span = header.target_span,
                      .target = header.target,
                      .target_span = header.target_span,
                      .timing = script.timing,
                      .has_thoughts = !script.thoughts.empty(),
                      .words = script.words,
                      .held = script.held},
            .sections = sections,
            .thoughts = script.summaries,
            .concerned = {},
            .stage = analysis.options.stage,
            .options = analysis.options.rules,
            .language = analysis.options.voice.language};
}

bool is_allowed(const Analysis& analysis, const Rule& rule, Offset at) {
    const Placed* placed = analysis.script.thought_at(at);
    if (placed == nullptr) return false;
    const std::vector<std::string>& allow = placed->thought->written.allow;
    return std::find(allow.begin(), allow.end(), rule.id) != allow.end();
}

bool is_silent(const Analysis& analysis, const Rule& rule) {
    return silenced(rule, analysis.options, analysis.script.header.allow);
}

std::vector<Finding> ask_script_rules(Analysis& analysis, const Cancel& cancel) {
    const std::vector<Stretch> sections = stretches(analysis.script);
    ScriptView view = view_of(analysis, sections);
    std::vector<Finding> findings;
    for (std::size_t i = 0; i < script_rules().size(); ++i) {
        const Rule& rule = *script_rules()[i];
        if (cancel.tripped() || is_silent(analysis, rule)) continue;
        view.concerned = analysis.script.concerned[i];
        for (FindingDraft& draft : rule.check_script(view)) {
            if (is_allowed(analysis, rule, draft.span.begin)) continue;
            const Severity severity = severity_of(rule, draft, analysis.options);
            if (severity < analysis.options.findings_from_severity) continue;
            const FindingDraft& kept = analysis.script_drafts.emplace_back(std::move(draft));
            findings.push_back({&rule, severity, kept.span, &kept, -1});
        }
    }
    return findings;
}

std::vector<Fix> made_later(const Analysis& analysis, const Finding& finding) {
    if (finding.rule->fixes_later == nullptr) return {};
    const std::vector<Stretch> sections = stretches(analysis.script);
    ScriptView view = view_of(analysis, sections);
    for (std::size_t i = 0; i < script_rules().size(); ++i) {
        if (script_rules()[i] == finding.rule) view.concerned = analysis.script.concerned[i];
    }
    return finding.rule->fixes_later(view, *finding.draft);
}

// --- fixes ---------------------------------------------------------------------------------------

// A rule sees its thought as it stands, not what becomes of it: a fix that would tear a mark or
// mends none is no fix, and one that changes a word must be chosen by the writer.
void try_out(const Analysis& analysis, const Finding& finding, std::vector<Fix>& fixes) {
    const std::ptrdiff_t most_torn = finding.rule->id == "mark-unclosed" ? -1 : 0;
    std::vector<Fix> tried;
    for (Fix& fix : fixes) {
        if (fix.keeps_every_word) {
            const Outcome outcome = outcome_of(analysis, fix.edits);
            if (outcome.torn > most_torn) continue;
            fix.keeps_every_word = outcome.keeps_words;
        }
        tried.push_back(std::move(fix));
    }
    fixes = std::move(tried);
}

// --- the rules of one thought -------------------------------------------------------------------

void add_drafts(const Script& script, std::size_t index, std::vector<Finding>& findings) {
    const Placed& placed = script.thoughts[index];
    for (const Thought::Draft& made : placed.thought->drafts) {
        findings.push_back({made.rule, made.severity,
                            made.draft.span + placed.block.span.begin.value, &made.draft,
                            static_cast<int>(index)});
    }
}

bool stands_before(const Finding& a, const Finding& b) {
    return a.span.begin < b.span.begin;
}

// Those of the thoughts, by place; from the last analysis where its thoughts stand still.
std::vector<Finding> thought_findings(const Script& script, const Standing& standing) {
    std::vector<Finding> findings;
    const std::size_t tail = script.thoughts.size() - standing.after;
    const std::vector<Finding> none;
    const std::vector<Finding>& old = standing.analysis ? standing.analysis->findings : none;
    auto next = old.begin();
    for (; next != old.end(); ++next) {
        if (next->thought < 0) continue;
        if (static_cast<std::size_t>(next->thought) >= standing.before) break;
        findings.push_back(*next);
    }
    const auto made = static_cast<std::ptrdiff_t>(findings.size());
    for (std::size_t i = standing.before; i < tail; ++i)
        add_drafts(script, i, findings);
    std::stable_sort(findings.begin() + made, findings.end(), stands_before);
    if (standing.after == 0) return findings;

    const std::vector<Placed>& thoughts = standing.analysis->script.thoughts;
    const std::size_t old_tail = thoughts.size() - standing.after;
    const std::uint32_t by =
        script.thoughts[tail].block.span.begin.value - thoughts[old_tail].block.span.begin.value;
    for (; next != old.end(); ++next) {
        if (next->thought < 0 || static_cast<std::size_t>(next->thought) < old_tail) continue;
        Finding moved = *next;
        moved.span = moved.span + by;
        moved.thought += static_cast<int>(tail) - static_cast<int>(old_tail);
        findings.push_back(moved);
    }
    return findings;
}

} // namespace

bool silenced(const Rule& rule, const Options& options, const std::vector<std::string>& allow) {
    if (!options.findings || options.stage < options.findings_from_stage) return true;
    if (rule.stage > options.stage) return true;
    if (std::find(allow.begin(), allow.end(), rule.id) != allow.end()) return true;
    const auto level = options.rule_levels.find(rule.id);
    return level != options.rule_levels.end() && level->second == RuleLevel::off;
}

Severity severity_of(const Rule& rule, const FindingDraft& draft, const Options& options) {
    const auto level = options.rule_levels.find(rule.id);
    if (level != options.rule_levels.end() && level->second == RuleLevel::hint)
        return Severity::hint;
    if (level != options.rule_levels.end() && level->second == RuleLevel::warning)
        return Severity::warning;
    return draft.severity.value_or(rule.severity);
}

void collect_findings(Analysis& analysis, const Standing& standing, const Cancel& cancel) {
    std::vector<Finding> thoughts = thought_findings(analysis.script, standing);
    std::vector<Finding> script = ask_script_rules(analysis, cancel);
    std::stable_sort(script.begin(), script.end(), stands_before);
    analysis.findings.reserve(thoughts.size() + script.size());
    std::merge(thoughts.begin(), thoughts.end(), script.begin(), script.end(),
               std::back_inserter(analysis.findings), stands_before);
}

std::vector<Fix> fixes_of(const Analysis& analysis, const Finding& finding) {
    const std::string_view text = analysis.document.text->bytes();
    const Script& script = analysis.script;
    std::vector<Fix> fixes = finding.draft->fixes;
    const Placed* placed = nullptr;
    if (finding.thought >= 0) {
        placed = &script.thoughts[static_cast<std::size_t>(finding.thought)];
        move_into_place(fixes, placed->block.span.begin.value, uses_crlf(text));
    } else {
        for (Fix& fix : made_later(analysis, finding))
            fixes.push_back(std::move(fix));
        placed = script.thought_at(finding.span.begin);
    }
    try_out(analysis, finding, fixes);
    fixes.push_back(placed != nullptr ? leave_here(text, *finding.rule, *placed)
                                      : leave_everywhere(view_of(analysis, {}), *finding.rule));
    return fixes;
}

bool leaves_as_is(const Fix& fix) {
    return fix.title.starts_with("Leave this");
}

bool has_sure_fix(const Finding& finding) {
    const std::vector<Fix>& fixes = finding.draft->fixes;
    return std::any_of(fixes.begin(), fixes.end(), [](const Fix& fix) {
        return fix.keeps_every_word && fix.preferred && !leaves_as_is(fix);
    });
}

} // namespace say
