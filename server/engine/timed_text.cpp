// Cues, lines and whole scripts become stretches: what the model says at speed 1 beside the clock.
#include "engine/timed_text.h"

#include "syntax/words.h"
#include "text/ascii.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace say {
namespace {

// What is longer is a slide, a clip or applause.
constexpr Seconds longest_silence{3.0};
// A stretch ends with the first sentence after this, or with the first cue after that.
constexpr Seconds long_enough{20};
constexpr Seconds too_long{60};

std::string odd_pace(int words, Seconds took, double pace) {
    return fmt::format(
        "{} {} in {:.1f} s would be {:.0f} {} a minute; readers speak {:.0f} to {:.0f}", words,
        words == 1 ? "word" : "words", took.count(), pace, std::round(pace) == 1 ? "word" : "words",
        slowest_pace, fastest_pace);
}

struct Modelled {
    Seconds speech{0};
    Seconds pause{0}; // what a reader scales
    int words = 0;
};

Modelled model_of(const Reading& reading) {
    Modelled modelled{.speech = reading.timing.speech, .words = reading.spoken_words};
    for (const PauseAt& pause : reading.pauses) {
        if (!is_marked(pause)) modelled.pause += pause.seconds;
    }
    return modelled;
}

// The punctuation a run of text ends with.
Juncture juncture_at_end(std::string_view text) {
    std::size_t begin = text.size();
    while (begin > 0 && !ascii::is_letter(text[begin - 1]) && !ascii::is_digit(text[begin - 1]) &&
           !ascii::is_blank(text[begin - 1])) {
        --begin;
    }
    const std::string_view tail = text.substr(begin);
    return juncture_of(tail, tail.find_first_of(".!?") != std::string_view::npos);
}

// --- captions ----------------------------------------------------------------------------------

// Cues without a pause between them.
struct Run {
    std::string text;
    Seconds begin{0};
    Seconds end{0};
    Seconds silence{0}; // behind it; 0 where nothing more was heard
};

// A caption stands as long as it is pleasant to read, so one cue says little of a pace; only a time
// that cannot be is sorted out here. The whole stretch is judged later.
std::optional<std::string> fault_of(const Cue& cue, const Cue* before) {
    if (cue.end <= cue.begin) return "it ends before it begins";
    if (before == nullptr) return std::nullopt;
    if (cue.begin < before->begin) return "it begins before the cue above it";
    const Seconds shared = std::min(cue.end, before->end) - cue.begin;
    if (shared > 0.5 * std::min(cue.end - cue.begin, before->end - before->begin)) {
        return "it overlaps the cue above it: two people may be speaking";
    }
    return std::nullopt;
}

class Listener {
public:
    Listener(const Options& options, Parser& parser) : options_(options), parser_(parser) {}

    void hear(const Cue& cue) {
        const auto fault = fault_of(cue, has_before_ ? &before_ : nullptr);
        if (fault) {
            heard_.left_out.push_back({cue.line, *fault});
            finish();
            return;
        }
        before_ = cue;
        has_before_ = true;
        if (cue.text.empty()) return finish();
        if (!runs_.empty()) join(cue);
        if (runs_.empty()) line_ = cue.line;
        if (runs_.empty() || runs_.back().silence > Seconds{0}) {
            runs_.push_back({cue.text, cue.begin, cue.end, Seconds{0}});
            return;
        }
        runs_.back().text += ' ' + cue.text;
        runs_.back().end = std::max(runs_.back().end, cue.end);
    }

    void finish() {
        if (!runs_.empty()) weigh();
        runs_.clear();
    }

    Heard take() {
        finish();
        return std::move(heard_);
    }

private:
    // What lies between the last run and a cue, and whether the stretch ends there.
    void join(const Cue& cue) {
        Run& last = runs_.back();
        const Seconds gap = cue.begin - last.end;
        if (gap > longest_silence) return finish();
        if (gap >= shortest_silence) {
            last.silence = gap;
        } else {
            last.end = std::max(last.end, cue.begin);
        }
        const Seconds length = last.end - runs_.front().begin;
        const bool sentence = juncture_at_end(last.text) == Juncture::stop;
        if (length < too_long && !(length > long_enough && sentence)) return;
        goes_on_ = true;
        finish();
        goes_on_ = false;
    }

    // The stretch so far: one line of the regression for speech and one for the silences in it.
    void weigh() {
        std::string text;
        std::vector<std::uint32_t> ends;
        for (const Run& run : runs_) {
            if (!text.empty()) text += ' ';
            text += run.text;
            ends.push_back(static_cast<std::uint32_t>(text.size()));
        }
        const auto thought = analyse_line(text, true, options_, parser_);
        const Modelled all = model_of(thought->reading);
        TimedStretch speech{.speech = all.speech, .pause = all.pause, .words = all.words};
        TimedStretch silence;
        int silences = 0;
        for (std::size_t i = 0; i < runs_.size(); ++i) {
            speech.measured += runs_[i].end - runs_[i].begin;
            if (runs_[i].silence <= Seconds{0}) continue;
            ++silences;
            silence.measured += runs_[i].silence;
            if (i + 1 == runs_.size()) continue;
            const Seconds pause = pause_behind(*thought, ends[i]);
            silence.pause += pause;
            speech.pause -= pause;
        }
        if (goes_on_) {
            const Seconds pause = pause_of(juncture_at_end(text), options_.voice.table);
            (runs_.back().silence > Seconds{0} ? silence : speech).pause += pause;
        }
        keep(speech, silence, silences);
    }

    // The pause between the run that ends at `end` and the next one.
    static Seconds pause_behind(const Thought& thought, std::uint32_t end) {
        const std::vector<Word>& words = thought.written.words;
        Seconds pause{0};
        for (const PauseAt& each : thought.reading.pauses) {
            const auto next = static_cast<std::size_t>(each.after) + 1;
            if (each.after < 0 || next >= words.size() || is_marked(each)) continue;
            const bool parts =
                words[next - 1].source.begin.value < end && words[next].source.begin.value >= end;
            if (parts) pause += each.seconds;
        }
        return pause;
    }

    void keep(TimedStretch speech, TimedStretch silence, int silences) {
        if (speech.words == 0) return;
        // A silence where nothing is written is part of how the words are said.
        if (silence.pause <= Seconds{0}) {
            speech.measured += silence.measured;
            silences = 0;
        }
        TimedStretch both = speech;
        if (silences > 0) {
            both.pause += silence.pause;
            both.measured += silence.measured;
        }
        if (!plausible(both)) {
            heard_.left_out.push_back(
                {line_, odd_pace(both.words, both.measured, even_pace(both))});
            return;
        }
        speech.spread = spread_of(speech.measured);
        heard_.stretches.push_back(speech);
        if (silences > 0) {
            silence.spread = spread_of_silences(silences);
            heard_.stretches.push_back(silence);
        }
        heard_.seconds += both.measured;
        heard_.words += both.words;
    }

    const Options& options_;
    Parser& parser_;
    Heard heard_;
    std::vector<Run> runs_;
    std::uint32_t line_ = 0; // of the stretch's first cue
    bool goes_on_ = false;   // more is heard right behind the stretch
    Cue before_;
    bool has_before_ = false;
};

Heard one_stretch(const Modelled& modelled, Seconds measured) {
    Heard heard;
    TimedStretch stretch{.speech = modelled.speech,
                         .pause = modelled.pause,
                         .measured = measured,
                         .spread = spread_of(measured),
                         .words = modelled.words};
    if (!plausible(stretch)) {
        heard.left_out.push_back({0, odd_pace(stretch.words, measured, even_pace(stretch))});
        return heard;
    }
    heard.seconds = measured;
    heard.words = stretch.words;
    heard.stretches.push_back(stretch);
    return heard;
}

} // namespace

Heard hear_captions(std::span<const Cue> cues, const Options& options, Parser& parser) {
    const Options nobody = options_of_nobody(options);
    Listener listener(nobody, parser);
    for (const Cue& cue : cues)
        listener.hear(cue);
    return listener.take();
}

Heard hear_lines(std::span<const TimedLine> lines, const Options& options, Parser& parser) {
    const Options nobody = options_of_nobody(options);
    Heard heard;
    for (const TimedLine& line : lines) {
        const Modelled modelled = model_of(analyse_line(line.text, true, nobody, parser)->reading);
        if (modelled.words == 0) {
            heard.left_out.push_back({line.line, "nothing in it is spoken"});
            continue;
        }
        Heard one = one_stretch(modelled, line.took);
        for (LeftOut& left : one.left_out)
            heard.left_out.push_back({line.line, std::move(left.why)});
        heard.stretches.insert(heard.stretches.end(), one.stretches.begin(), one.stretches.end());
        heard.seconds += one.seconds;
        heard.words += one.words;
    }
    return heard;
}

Heard hear_script(const Analysis& analysis, Seconds took, std::string_view speaker) {
    Modelled all;
    Seconds held{0}; // marks and directions: no reader changes them
    // Where one voice was timed, what runs while it is silent is no part of its time.
    const auto counts = [&](const PauseAt& pause) {
        return is_marked(pause) && (speaker.empty() || pause.from != PauseFrom::direction);
    };
    const std::vector<Placed>& thoughts = analysis.script.thoughts;
    for (auto placed = thoughts.begin(); placed != thoughts.end(); ++placed) {
        if (!speaker.empty() && placed->speaker != speaker) continue;
        const bool hands_over =
            !speaker.empty() && placed + 1 != thoughts.end() && placed[1].speaker != speaker;
        const Reading& reading = placed->thought->reading;
        const Modelled modelled = model_of(reading);
        all.speech += modelled.speech;
        all.pause += modelled.pause + (hands_over ? Seconds{0} : placed->gap);
        all.words += modelled.words;
        for (const PauseAt& pause : reading.pauses)
            held += counts(pause) ? pause.seconds : Seconds{0};
    }
    if (took <= held) {
        Heard heard;
        heard.left_out.push_back({0, fmt::format("its marks and directions alone hold {:.1f} s "
                                                 "of the {:.1f} s",
                                                 held.count(), took.count())});
        return heard;
    }
    // Words a minute stand in place of a reader's pace, so they say nothing of it.
    if (analysis.options.pace_is_absolute) all.speech *= analysis.options.voice.speed;
    return one_stretch(all, took - held);
}

Heard hear_text(std::string_view text, Seconds took, const Options& options, Parser& parser) {
    const Options nobody = options_of_nobody(options);
    Modelled all;
    std::string paragraph;
    const auto close = [&] {
        if (paragraph.empty()) return;
        const Modelled modelled = model_of(analyse_line(paragraph, true, nobody, parser)->reading);
        if (all.words > 0 && modelled.words > 0) all.pause += nobody.voice.table.gap;
        all.speech += modelled.speech;
        all.pause += modelled.pause;
        all.words += modelled.words;
        paragraph.clear();
    };
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
        const std::string_view line = text.substr(0, end);
        if (line.find_first_not_of(" \t") == std::string_view::npos) {
            close();
        } else {
            if (!paragraph.empty()) paragraph += ' ';
            paragraph += line;
        }
        const bool crlf = text.substr(end).starts_with("\r\n");
        text.remove_prefix(std::min(text.size(), end + (crlf ? 2 : 1)));
    }
    close();
    return one_stretch(all, took);
}

Options options_of_nobody(Options options) {
    options.reader.clear();
    options.readers.clear();
    options.voice.pauses = 1.0;
    return options;
}

} // namespace say
