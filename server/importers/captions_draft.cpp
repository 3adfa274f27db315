// Captions as a draft: what stands in pieces on the screen becomes sentences again.
#include "importers/captions.h"
#include "importers/importer.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <limits>

namespace say {
namespace {

// Behind the end of a sentence a silence of this length parts two thoughts: the gap between
// thoughts of docs/timing.md.
constexpr Seconds thought_gap{0.7};
// Who speaks behind a change where nobody is named, once somebody was.
constexpr std::string_view somebody = "SPEAKER";

bool has_stop(std::string_view text) {
    while (!text.empty() && (text.back() == '"' || text.back() == '\''))
        text.remove_suffix(1);
    for (const std::string_view closing : {"”", "’", "»"}) {
        if (text.ends_with(closing)) text.remove_suffix(closing.size());
    }
    return text.ends_with('.') || text.ends_with('!') || text.ends_with('?') || text.ends_with("…");
}

// Behind the stop a bracket may stand: "It matters. (laughs)".
bool ends_sentence(std::string_view text) {
    while (text.ends_with(')') || text.ends_with(']')) {
        const std::size_t open = text.rfind(text.back() == ')' ? '(' : '[');
        if (open == std::string_view::npos) return has_stop(text.substr(0, text.size() - 1));
        if (text.back() == ')' && has_stop(text.substr(open, text.size() - 1 - open))) return true;
        text = ascii::trim(text.substr(0, open));
        if (text.empty()) return true;
    }
    return has_stop(text);
}

// How many bytes of dots: "..." or the one character.
constexpr std::string_view dots = "...";
constexpr std::string_view dots_sign = "…";

std::size_t dots_at_end(std::string_view text) {
    return text.ends_with(dots) ? dots.size() : text.ends_with(dots_sign) ? dots_sign.size() : 0;
}

std::size_t dots_at_begin(std::string_view text) {
    return text.starts_with(dots)        ? dots.size()
           : text.starts_with(dots_sign) ? dots_sign.size()
                                         : 0;
}

// As a script's header can hold it and a line can begin with it.
std::string speaker_name(std::string_view voice) {
    std::string name;
    for (const char c : collapsed(voice)) {
        if (c != ',' && c != '=' && c != ':' && c != '+') name += c;
    }
    name = collapsed(name);
    while (!name.empty() && !ascii::is_letter(name.front()) && !ascii::is_high(name.front()))
        name.erase(0, 1);
    constexpr std::size_t longest = 40;
    if (name.size() > longest) return {};
    // Names stand in capitals in scripts; those with other letters than ours are left alone.
    const bool ours = std::none_of(name.begin(), name.end(), ascii::is_high);
    return ours ? ascii::upper(name) : name;
}

class Joiner {
public:
    Draft join(const Captions& captions) {
        auto untimed = captions.untimed.begin();
        const auto add_untimed_to = [&](std::uint32_t line) {
            for (; untimed != captions.untimed.end() && untimed->line < line; ++untimed)
                add_all(untimed->turns);
        };
        for (const Cue& cue : captions.cues) {
            add_untimed_to(cue.line);
            silence_ = cue.begin - until_;
            if (silence_ >= thought_gap && ends_sentence(text_) && !carries_on(cue.turns)) close();
            add_all(cue.turns);
            until_ = std::max(until_, cue.end);
        }
        add_untimed_to(std::numeric_limits<std::uint32_t>::max());
        close();
        return std::move(draft_);
    }

private:
    void add_all(const std::vector<Turn>& turns) {
        for (const Turn& turn : turns) {
            add(turn);
            silence_ = Seconds{0};
        }
    }

    // "underneath them..." and "...the barnacles": dots at both edges carry a sentence over.
    bool carries_on(const std::vector<Turn>& turns) const {
        return !turns.empty() && dots_at_end(text_) > 0 && dots_at_begin(turns.front().written) > 0;
    }

    // The words of a turn behind those before; dots that carry them over are one pause where there
    // was one, and else none.
    void join_words(std::string_view words) {
        const std::size_t before = dots_at_end(text_);
        const std::size_t behind = dots_at_begin(words);
        if (before > 0 && behind > 0) {
            words = ascii::trim(words.substr(behind));
            if (silence_ < shortest_silence) text_.resize(text_.size() - before);
        }
        if (!text_.empty() && !words.empty()) text_ += ' ';
        text_ += words;
    }

    void add(const Turn& turn) {
        if (!turn.sound.empty()) {
            // A sound between two sentences stands between them; one within waits for its end.
            if (text_.empty() || ends_sentence(text_)) {
                close();
                draft_.pieces.push_back({.kind = Piece::Kind::note, .text = turn.sound});
            } else {
                sounds_.push_back(turn.sound);
            }
        }
        if (turn.text.empty()) return;
        const std::string name = speaker_name(turn.voice);
        if (!name.empty() && name != speaker_) {
            close();
            next_ = speaker_ = name;
        } else if (turn.changes) {
            close();
            if (name.empty() && !speaker_.empty()) next_ = speaker_ = somebody;
        }
        join_words(turn.written);
    }

    void close() {
        if (!text_.empty()) {
            draft_.pieces.push_back(
                {.text = std::move(text_), .speaker = std::move(next_), .unsaid_brackets = true});
        }
        text_.clear();
        next_.clear();
        for (std::string& sound : sounds_)
            draft_.pieces.push_back({.kind = Piece::Kind::note, .text = std::move(sound)});
        sounds_.clear();
    }

    Draft draft_;
    std::string text_;
    std::string speaker_; // in force
    std::string next_;    // whom the open thought names
    std::vector<std::string> sounds_;
    Seconds until_{0};
    Seconds silence_{0}; // before the turn at hand
};

std::string untimed_told(const std::vector<Cue>& untimed) {
    constexpr std::size_t most_shown = 10;
    std::string lines;
    for (std::size_t i = 0; i < std::min(untimed.size(), most_shown); ++i)
        lines += fmt::format("{}{}", i == 0 ? "" : ", ", untimed[i].line);
    if (untimed.size() > most_shown)
        lines += fmt::format(" and {} more", untimed.size() - most_shown);
    if (untimed.size() == 1)
        return fmt::format("line {}: no times that can be read for this text; its words stay",
                           lines);
    return fmt::format("{} texts without times that can be read (lines {}); their words stay",
                       untimed.size(), lines);
}

Result<Draft> joined(const Result<Captions>& captions) {
    if (!captions) return captions.error();
    Draft draft = Joiner().join(*captions);
    if (!captions->untimed.empty()) draft.told.push_back(untimed_told(captions->untimed));
    return draft;
}

} // namespace

Result<Draft> read_webvtt_draft(std::string_view text, const std::string& name) {
    return joined(read_webvtt(text, name));
}

Result<Draft> read_srt_draft(std::string_view text, const std::string& name) {
    return joined(read_srt(text, name));
}

} // namespace say
