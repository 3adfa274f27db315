// textDocument/selectionRange: what a selection at the cursor grows through, by what is said and
// not by what is typed.
#include "features/features.h"

#include <algorithm>

namespace say {
namespace {

// Spans that touch the cursor become a chain: each holds the last and is larger.
class Chain {
public:
    explicit Chain(Offset at) : at_(at) {}

    void add(Span span) {
        if (span.empty() || !span.touches(at_)) return;
        if (!spans_.empty() && (!span.covers(spans_.back()) || span == spans_.back())) return;
        spans_.push_back(span);
    }

    // The whole text, empty or not, so that there is always an answer.
    std::vector<Span> finish(Span text) {
        add(text);
        if (spans_.empty()) spans_.push_back(text);
        return std::move(spans_);
    }

private:
    Offset at_;
    std::vector<Span> spans_;
};

// The word under the cursor or behind it, else the one before it; -1 before the first.
int word_at(const std::vector<Word>& words, Offset at) {
    const auto after = std::partition_point(
        words.begin(), words.end(), [&](const Word& word) { return word.source.begin <= at; });
    return static_cast<int>(after - words.begin()) - 1;
}

const Word& nth(const Written& written, int index) {
    return written.words[static_cast<std::size_t>(index)];
}

// Words with the marks that stand on them alone: "*limpet*" and not "limpet*".
Span span_of_words(const Written& written, int first, int last) {
    Span span{nth(written, first).source.begin, nth(written, last).source.end};
    for (const Mark& mark : written.marks) {
        if (mark.open.empty() || mark.first < first || mark.last > last) continue;
        span.begin = std::min(span.begin, mark.span.begin);
        span.end = std::max(span.end, mark.span.end);
    }
    return span;
}

// Words between two pauses, whether marks or punctuation make them.
Span phrase_at(const Thought& thought, int word) {
    const std::vector<Said>& said = thought.reading.said;
    std::vector<bool> breaks_after(said.size(), false);
    for (std::size_t index = 0; index < said.size(); ++index)
        breaks_after[index] = said[index].after != Juncture::none;
    for (const Mark& mark : thought.written.marks) {
        const bool breaks = is_pause(mark.kind) || mark.kind == MarkKind::direction;
        if (breaks && mark.last >= 0) breaks_after[static_cast<std::size_t>(mark.last)] = true;
    }
    std::size_t first = static_cast<std::size_t>(word);
    while (first > 0 && !breaks_after[first - 1])
        --first;
    std::size_t last = static_cast<std::size_t>(word);
    while (last + 1 < said.size() && !breaks_after[last])
        ++last;
    return span_of_words(thought.written, static_cast<int>(first), static_cast<int>(last));
}

void add_words(Chain& chain, const Thought& thought, std::uint32_t by, Offset at) {
    const Written& written = thought.written;
    const int word = word_at(written.words, at);
    if (word >= 0 && nth(written, word).source.touches(at))
        chain.add(nth(written, word).source + by);
    // Inner marks come later.
    for (auto mark = written.marks.rbegin(); mark != written.marks.rend(); ++mark) {
        if (mark->kind == MarkKind::punch || !mark->span.touches(at)) continue;
        if (!mark->open.empty() && !mark->close.empty())
            chain.add(Span{mark->open.end, mark->close.begin} + by);
        chain.add(mark->span + by);
    }
    const Reading& reading = thought.reading;
    if (word < 0 || word >= static_cast<int>(reading.said.size())) return;
    chain.add(phrase_at(thought, word) + by);
    for (const BreathGroup& breath : reading.breaths) {
        if (breath.first <= word && word <= breath.last)
            chain.add(span_of_words(written, breath.first, breath.last) + by);
    }
    for (const Sentence& sentence : reading.sentences) {
        if (word < sentence.first || word >= sentence.last) continue;
        Span span = span_of_words(written, sentence.first, sentence.last - 1);
        span.begin = std::min(span.begin, sentence.source.begin);
        span.end = std::max(span.end, sentence.source.end);
        chain.add(span + by);
    }
}

void add_thought(Chain& chain, const Placed& placed, Offset at) {
    const std::uint32_t by = placed.block.span.begin.value;
    chain.add(placed.block.speaker);
    if (placed.block.content.touches(at)) {
        add_words(chain, *placed.thought, by, Offset{at.value - by});
        chain.add(placed.block.content);
    }
    chain.add(placed.block.span);
}

void add_sections(Chain& chain, const Script& script, Offset at) {
    const Section* section = script.section_at(at);
    // The text's end belongs to the last section too.
    if (section == nullptr && at.value > 0) section = script.section_at(Offset{at.value - 1});
    while (section != nullptr) {
        chain.add(section->heading);
        chain.add(section->span);
        if (section->parent < 0) break;
        section = &script.sections[static_cast<std::size_t>(section->parent)];
    }
}

// The name or value between two commas, then the value, the line, the header.
void add_header(Chain& chain, const Header& header, std::string_view text, Offset at) {
    for (const HeaderEntry& entry : header.entries) {
        chain.add(entry.key);
        if (entry.value.touches(at)) {
            const std::string_view value = slice(text, entry.value);
            const std::size_t inside = at.value - entry.value.begin.value;
            const std::size_t comma = value.substr(0, inside).rfind(',');
            std::size_t begin = comma == std::string_view::npos ? 0 : comma + 1;
            const std::size_t end = std::min(value.find(',', inside), value.size());
            while (begin < end && (value[begin] == ' ' || value[begin] == '\t'))
                ++begin;
            chain.add(make_span(begin, end) + entry.value.begin.value);
            chain.add(entry.value);
        }
        chain.add({entry.key.begin, std::max(entry.key.end, entry.value.end)});
    }
    chain.add(header.span);
}

} // namespace

std::vector<Span> selections(const Analysis& analysis, Offset at) {
    const Script& script = analysis.script;
    const Text& text = *analysis.document.text;
    Chain chain(at);
    if (script.header.span.touches(at)) add_header(chain, script.header, text.bytes(), at);
    if (const Placed* placed = script.thought_at(at)) add_thought(chain, *placed, at);
    add_sections(chain, script, at);
    return chain.finish({Offset{}, text.end()});
}

} // namespace say
