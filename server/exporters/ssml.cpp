#include "exporters/ssml.h"

#include "exporters/xml.h"
#include "speech/phones.h"
#include "text/unicode.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <pugixml.hpp>

namespace say {
namespace {

using Node = pugi::xml_node;
using xml::add_text;
using xml::set;

// --- text and times -----------------------------------------------------------------------------

std::string milliseconds(Seconds seconds) {
    return fmt::format("{}ms", std::llround(seconds.count() * 1000));
}

void add_break(Node node, Seconds seconds) {
    set(node.append_child("break"), "time", milliseconds(seconds));
}

std::string percent(double factor) {
    return fmt::format("{}%", std::llround(100 * factor));
}

// --- pairs --------------------------------------------------------------------------------------

// The element of a mark over words; null for one that is nothing but its pauses (an aside).
Node open_pair(Node parent, const Mark& mark, const PauseTable& table) {
    const auto element = [&](const char* name, const char* attribute, const std::string& value) {
        Node node = parent.append_child(name);
        set(node, attribute, value);
        return node;
    };
    switch (mark.kind) {
    case MarkKind::stress: return element("emphasis", "level", "moderate");
    case MarkKind::heavy_stress: return element("emphasis", "level", "strong");
    case MarkKind::soft: return element("emphasis", "level", "reduced");
    case MarkKind::quick: return element("prosody", "rate", percent(table.quick));
    case MarkKind::slow: return element("prosody", "rate", percent(table.slow));
    case MarkKind::quoted: return element("prosody", "pitch", "+10%");
    default: return {};
    }
}

bool is_pair(const Mark& mark) {
    return row_of(mark.kind).shape == MarkShape::pair && mark.first >= 0 &&
           mark.kind != MarkKind::aside;
}

// Pairs over a word, outer first.
std::vector<const Mark*> pairs_over(const Thought& thought, int word) {
    std::vector<const Mark*> pairs;
    for (const Mark& mark : thought.written.marks) {
        if (is_pair(mark) && mark.first <= word && word <= mark.last) pairs.push_back(&mark);
    }
    return pairs;
}

// --- one word -----------------------------------------------------------------------------------

// Marks that belong to one word wrap it: a step in pitch, a tune at its end, a drawn-out sound.
Node wrap_word(Node parent, const Thought& thought, int word) {
    const auto prosody = [&](const char* attribute, const std::string& value) {
        parent = parent.append_child("prosody");
        set(parent, attribute, value);
    };
    for (const Mark& mark : thought.written.marks) {
        const bool before = row_of(mark.kind).shape == MarkShape::prefix;
        const int own = before ? mark.first : std::max(mark.first, mark.last);
        if (own != word) continue;
        switch (mark.kind) {
        case MarkKind::step_up: prosody("pitch", "+15%"); break;
        case MarkKind::step_down: prosody("pitch", "-15%"); break;
        case MarkKind::end_up: prosody("contour", "(0%,+0%) (100%,+20%)"); break;
        case MarkKind::end_down: prosody("contour", "(0%,+0%) (100%,-20%)"); break;
        case MarkKind::stretch: {
            const Said& said = thought.reading.said[static_cast<std::size_t>(word)];
            prosody("duration", milliseconds(said.seconds));
            break;
        }
        case MarkKind::punch:
            parent = parent.append_child("emphasis");
            set(parent, "level", "strong");
            break;
        default: break;
        }
    }
    return parent;
}

bool is_spelled(const Said& said) {
    return !said.spoken.empty() && std::all_of(said.spoken.begin(), said.spoken.end(),
                                               [](const SpokenWord& word) { return word.letters; });
}

// The word as written, with how it is said where a synthesiser could not know.
void add_word(Node parent, const Thought& thought, int word) {
    const auto index = static_cast<std::size_t>(word);
    const Said& said = thought.reading.said[index];
    const std::string_view written =
        slice(thought.written.plain.text, thought.written.words[index].plain);
    Node node = wrap_word(parent, thought, word);
    const std::string spoken = join(said.spoken);
    if (is_given(said.known) && said.phones.size() == 1) {
        node = node.append_child("phoneme");
        set(node, "alphabet", "ipa");
        set(node, "ph", to_ipa(said.phones.front()));
    } else if (is_spelled(said)) {
        node = node.append_child("say-as");
        set(node, "interpret-as", "characters");
    } else if (!spoken.empty() && spoken != unicode::fold(written)) {
        node = node.append_child("sub");
        set(node, "alias", spoken);
    }
    add_text(node, written);
}

// --- one sentence -------------------------------------------------------------------------------

class SentenceWriter {
public:
    SentenceWriter(Node sentence, const Thought& thought, const PauseTable& table)
        : thought_(thought), table_(table), nodes_{sentence} {}

    void write(int first, int last) {
        if (first == 0) {
            add_text(nodes_.back(), between(-1));
            add_pauses(-1);
        }
        for (int word = first; word < last; ++word) {
            enter(pairs_over(thought_, word));
            add_word(nodes_.back(), thought_, word);
            leave(word + 1 < last ? pairs_over(thought_, word + 1) : std::vector<const Mark*>{});
            add_text(nodes_.back(), between(word));
            add_pauses(word);
        }
    }

private:
    // Signs and blanks behind a word, before the first for -1.
    std::string_view between(int word) const {
        const std::vector<Word>& words = thought_.written.words;
        const std::string_view text = thought_.written.plain.text;
        const std::size_t next = word < 0 ? 0 : static_cast<std::size_t>(word) + 1;
        const std::uint32_t begin =
            word < 0 ? 0 : words[static_cast<std::size_t>(word)].plain.end.value;
        const std::size_t end = next < words.size() ? words[next].plain.begin.value : text.size();
        return text.substr(begin, end - begin);
    }

    // Marks hold as long as they say; punctuation's pauses are the synthesiser's own.
    void add_pauses(int word) {
        for (const PauseAt& pause : pauses_behind(thought_.reading, word)) {
            if (is_marked(pause)) add_break(nodes_.back(), pause.seconds);
        }
        for (const Mark& mark : thought_.written.marks) {
            if (mark.kind != MarkKind::tie || mark.first != word) continue;
            set(nodes_.back().append_child("break"), "strength", "none");
        }
    }

    void leave(const std::vector<const Mark*>& wanted) {
        std::size_t same = 0;
        while (same < open_.size() && same < wanted.size() && open_[same] == wanted[same])
            ++same;
        open_.resize(same);
        nodes_.resize(same + 1);
    }

    void enter(const std::vector<const Mark*>& wanted) {
        leave(wanted);
        while (open_.size() < wanted.size()) {
            const Mark& mark = *wanted[open_.size()];
            open_.push_back(&mark);
            nodes_.push_back(open_pair(nodes_.back(), mark, table_));
        }
    }

    const Thought& thought_;
    const PauseTable& table_;
    std::vector<Node> nodes_; // the sentence, then one for each open pair
    std::vector<const Mark*> open_;
};

// --- the script ---------------------------------------------------------------------------------

// Where several speak, each has a voice of the synthesiser's by number.
Node voice_for(Node parent, const Script& script, std::string_view speaker) {
    const std::vector<Speaker>& speakers = script.header.speakers;
    if (speakers.size() < 2) return parent;
    const auto found = std::find_if(speakers.begin(), speakers.end(), [&](const Speaker& each) {
        return speaker.starts_with(each.name);
    });
    if (found == speakers.end()) return parent;
    Node voice = parent.append_child("voice");
    set(voice, "variant", std::to_string(found - speakers.begin() + 1));
    return voice;
}

void add_thought(Node body, const Script& script, const Placed& placed, const PauseTable& table) {
    const Thought& thought = *placed.thought;
    if (!thought.has_words()) {
        if (thought.takes_time()) add_break(body, thought.reading.timing.expected);
        return;
    }
    Node paragraph = voice_for(body, script, placed.speaker).append_child("p");
    for (const Sentence& sentence : thought.reading.sentences) {
        if (sentence.first >= sentence.last) continue;
        SentenceWriter(paragraph.append_child("s"), thought, table)
            .write(sentence.first, sentence.last);
    }
    if (placed.gap > Seconds{0}) add_break(body, placed.gap);
}

void add_section_marks(Node body, const Script& script, std::size_t& section, Offset above) {
    for (; section < script.sections.size() && script.sections[section].heading.begin < above;
         ++section) {
        set(body.append_child("mark"), "name", fmt::format("section-{}", section + 1));
    }
}

} // namespace

std::string write_ssml(const Analysis& analysis, const ExportOptions& /*options*/) {
    pugi::xml_document document;
    Node declaration = document.append_child(pugi::node_declaration);
    set(declaration, "version", "1.0");
    set(declaration, "encoding", "UTF-8");
    Node speak = document.append_child("speak");
    set(speak, "version", "1.1");
    set(speak, "xmlns", "http://www.w3.org/2001/10/synthesis");
    set(speak, "xml:lang", analysis.options.language);
    Node body = speak;
    const double speed = analysis.options.voice.speed;
    if (std::llround(100 * speed) != 100) {
        body = speak.append_child("prosody");
        set(body, "rate", percent(speed));
    }
    const Script& script = analysis.script;
    std::size_t section = 0;
    for (const Placed& placed : script.thoughts) {
        add_section_marks(body, script, section, placed.block.span.begin);
        add_thought(body, script, placed, analysis.options.voice.table);
    }
    return xml::write(document);
}

} // namespace say
