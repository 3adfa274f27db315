// Captions as a draft: what stands in pieces on the screen becomes sentences again.
#include "importers/captions.h"
#include "importers/importer.h"
#include "text/ascii.h"

#include <algorithm>

namespace say {
namespace {

// Behind the end of a sentence a silence of this length parts two thoughts: the gap between
// thoughts of docs/timing.md.
constexpr Seconds thought_gap{0.7};
// Who speaks behind a change where nobody is named, once somebody was.
constexpr std::string_view somebody = "SPEAKER";

bool ends_sentence(std::string_view text) {
    while (!text.empty() && (text.back() == '"' || text.back() == '\'' || text.back() == ')'))
        text.remove_suffix(1);
    for (const std::string_view closing : {"”", "’", "»"}) {
        if (text.ends_with(closing)) text.remove_suffix(closing.size());
    }
    return text.ends_with('.') || text.ends_with('!') || text.ends_with('?') || text.ends_with("…");
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
    Draft join(const std::vector<Cue>& cues) {
        for (const Cue& cue : cues) {
            if (cue.begin - until_ >= thought_gap && ends_sentence(text_)) close();
            for (const Turn& turn : cue.turns)
                add(turn);
            until_ = std::max(until_, cue.end);
        }
        close();
        return std::move(draft_);
    }

private:
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
        if (!text_.empty()) text_ += ' ';
        text_ += turn.text;
    }

    void close() {
        if (!text_.empty()) {
            draft_.pieces.push_back({.text = std::move(text_), .speaker = std::move(next_)});
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
};

Result<Draft> joined(const Result<Captions>& captions) {
    if (!captions) return captions.error();
    return Joiner().join(captions->cues);
}

} // namespace

Result<Draft> read_webvtt_draft(std::string_view text, const std::string& name) {
    return joined(read_webvtt(text, name));
}

Result<Draft> read_srt_draft(std::string_view text, const std::string& name) {
    return joined(read_srt(text, name));
}

} // namespace say
