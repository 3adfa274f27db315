#include "exporters/guide_read.h"

#include "exporters/drawn.h"
#include "speech/duration.h"
#include "speech/lexicon.h"
#include "speech/machine_voice.h"
#include "text/unicode.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace say {
namespace {

// What the voice makes of marks is our choice throughout, tried by ear; docs/exports.md has the
// table. Pitch in Hz or as a factor on it, loudness as a factor on the samples.
constexpr double sentence_begins = 112;
constexpr double sentence_ends = 88;
constexpr double level = 1.5;  // of the recordings: leaves room for what is louder
constexpr Seconds ramp{0.012}; // from one word's loudness to the next one's
constexpr Seconds fade{0.004}; // at the edge of a silence, so that nothing clicks
constexpr Seconds most_silence{10};
constexpr int most_words = 40; // said in one go
constexpr int bytes_a_sample = 2;

// A speaker's pitch beside the first one's, so that two can be told apart.
constexpr std::array<double, 5> speakers{1, 1.25, 0.85, 1.12, 1.4};

std::uint64_t samples_in(Seconds seconds) {
    return static_cast<std::uint64_t>(
        std::max(0LL, std::llround(seconds.count() * samples_a_second)));
}

// --- how a word is said -------------------------------------------------------------------------

struct Manner {
    double pitch = 1;      // of the whole word
    double accent = 0;     // of its stressed syllable, on top
    double end = 1;        // of its last sound
    double loudness = 1;   // of the whole word
    double long_vowel = 1; // how much longer than the others its vowels are
};

bool is_plain_word(const Said& said) {
    return said.spoken.size() == 1 && is_function_word(said.spoken.front().text);
}

void apply(MarkKind kind, Manner& manner) {
    const auto stress = [&](double accent, double loudness) {
        manner.accent = std::max(manner.accent, accent);
        manner.loudness *= loudness;
    };
    switch (kind) {
    case MarkKind::stress: stress(0.28, 1.2); break;
    case MarkKind::heavy_stress:
    case MarkKind::punch: stress(0.40, 1.4); break;
    case MarkKind::soft:
        manner.accent = 0;
        manner.loudness *= 0.55;
        break;
    case MarkKind::aside:
        manner.pitch *= 0.92;
        manner.loudness *= 0.85;
        break;
    case MarkKind::quoted: manner.pitch *= 1.10; break;
    case MarkKind::step_up: manner.pitch *= 1.15; break;
    case MarkKind::step_down: manner.pitch *= 0.85; break;
    case MarkKind::end_up: manner.end = 1.35; break;
    case MarkKind::end_down: manner.end = 0.72; break;
    case MarkKind::stretch: manner.long_vowel = 3; break;
    default: break;
    }
}

Manner manner_of(const Thought& thought, int word) {
    const Said& said = thought.reading.said[static_cast<std::size_t>(word)];
    Manner manner;
    if (!is_plain_word(said))
        manner.accent = 0.07 + 0.05 * std::clamp<double>(said.phrasing.stress, 0, 2);
    for (const Mark* mark : marks_of(thought, word))
        apply(mark->kind, manner);
    return manner;
}

// --- a word's sounds ----------------------------------------------------------------------------

bool sounds(const Said& said) {
    return said.seconds > Seconds{0} &&
           std::any_of(said.phones.begin(), said.phones.end(),
                       [](const Phones& phones) { return !phones.empty(); });
}

std::vector<Phone> phones_of(const Said& said) {
    std::vector<Phone> all;
    for (const Phones& phones : said.phones)
        all.insert(all.end(), phones.begin(), phones.end());
    return all;
}

// The word's seconds among its sounds: as the time model weighs them, with the end drawn out where
// a silence follows.
std::vector<TimedPhone> timed(const Said& said, const Manner& manner, bool before_silence) {
    const std::vector<Phone> phones = phones_of(said);
    std::size_t last_vowel = phones.size();
    for (std::size_t i = 0; i < phones.size(); ++i) {
        if (is_vowel(phones[i].sound)) last_vowel = i;
    }
    std::vector<TimedPhone> result;
    Seconds sum{0};
    for (std::size_t i = 0; i < phones.size(); ++i) {
        double weight = is_vowel(phones[i].sound) ? manner.long_vowel : 1;
        if (before_silence && i >= last_vowel) weight *= 1.4;
        const Seconds seconds = duration_of(phones[i]) * weight;
        sum += seconds;
        result.push_back({phones[i], seconds});
    }
    for (TimedPhone& phone : result)
        phone.seconds *= said.seconds / sum;
    return result;
}

// --- the tune -----------------------------------------------------------------------------------

// A yes-or-no question rises; one with a question word falls like a statement. Common practice, no
// source.
bool rises(const Thought& thought, const Sentence& sentence) {
    constexpr std::array<std::string_view, 9> question_words{
        "who", "what", "when", "where", "why", "how", "which", "whose", "whom"};
    const std::string_view text = slice(thought.written.plain.text, sentence.plain);
    const std::size_t last = text.find_last_not_of(" \"')");
    if (last == std::string_view::npos || text[last] != '?') return false;
    const Said& opening = thought.reading.said[static_cast<std::size_t>(sentence.first)];
    return opening.spoken.empty() || std::find(question_words.begin(), question_words.end(),
                                               opening.spoken.front().text) == question_words.end();
}

// The pitch of a thought where nothing is marked: it sinks over each sentence.
class Line {
public:
    Line(const Thought& thought, double speaker) : thought_(thought), speaker_(speaker) {}

    double at(int word, Seconds when) const {
        const Sentence* const sentence = sentence_of(word);
        if (sentence == nullptr || sentence->first >= sentence->last)
            return speaker_ * sentence_begins;
        const auto& said = thought_.reading.said;
        const Said& first = said[static_cast<std::size_t>(sentence->first)];
        const Said& last = said[static_cast<std::size_t>(sentence->last) - 1];
        const double length = std::max(0.2, (last.at + last.seconds - first.at).count());
        const double share = std::clamp((when - first.at).count() / length, 0.0, 1.0);
        return speaker_ * (sentence_begins + share * (sentence_ends - sentence_begins));
    }

    // Of the end of the last word before a silence.
    double close(int word) const {
        const Said& said = thought_.reading.said[static_cast<std::size_t>(word)];
        const Sentence* const sentence = sentence_of(word);
        const bool at_end = sentence != nullptr && word + 1 == sentence->last;
        if (at_end && rises(thought_, *sentence)) return 1.3;
        if (at_end || said.after == Juncture::stop) return 0.9;
        return said.after == Juncture::none ? 1.0 : 1.06;
    }

private:
    const Sentence* sentence_of(int word) const {
        for (const Sentence& sentence : thought_.reading.sentences) {
            if (sentence.first <= word && word < sentence.last) return &sentence;
        }
        return nullptr;
    }

    const Thought& thought_;
    double speaker_;
};

// --- a stretch of talk --------------------------------------------------------------------------

struct Loudness {
    std::uint64_t from = 0; // sample
    double factor = 1;
};

struct Score {
    std::vector<TimedPhone> phones;
    std::vector<PitchPoint> pitch;
    std::vector<Loudness> loudness; // a word each
    Seconds seconds{0};
};

// A tune at the end begins with the last vowel and is there before the word is over: what is
// steeper is not heard as a tune.
void bend(Score& score, Seconds last_vowel, PitchPoint end) {
    if (!score.pitch.empty() && score.pitch.back().at > last_vowel)
        score.pitch.back().at = last_vowel;
    score.pitch.push_back({last_vowel + 0.7 * (end.at - last_vowel), end.hertz});
    score.pitch.push_back(end);
}

void add_word(const Thought& thought, int word, bool before_silence, const Line& line,
              Score& score) {
    const Said& said = thought.reading.said[static_cast<std::size_t>(word)];
    const Manner manner = manner_of(thought, word);
    score.loudness.push_back({samples_in(score.seconds), manner.loudness});
    const auto pitch_at = [&](Seconds in_stretch, double factor) {
        const Seconds in_thought = said.at + (in_stretch - score.seconds);
        return PitchPoint{in_stretch, factor * manner.pitch * line.at(word, in_thought)};
    };
    Seconds at = score.seconds;
    Seconds last_vowel = at; // where it begins
    for (const TimedPhone& phone : timed(said, manner, before_silence)) {
        if (is_vowel(phone.phone.sound)) {
            const double accent = phone.phone.stress == 1 ? 1 + manner.accent : 1;
            score.pitch.push_back(pitch_at(at + phone.seconds / 2, accent));
            last_vowel = at;
        }
        at += phone.seconds;
        score.phones.push_back(phone);
    }
    const double close = before_silence ? line.close(word) : 1;
    const double end = manner.end != 1 ? manner.end : close;
    if (end != 1) bend(score, last_vowel, pitch_at(at, end));
    score.seconds += said.seconds;
}

void set_loudness(const Score& score, std::vector<std::int16_t>& samples) {
    const double step = 1 / (ramp.count() * samples_a_second);
    const double n_fade = fade.count() * samples_a_second;
    double factor = score.loudness.front().factor;
    std::size_t word = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        while (word + 1 < score.loudness.size() && score.loudness[word + 1].from <= i)
            ++word;
        factor += std::clamp(score.loudness[word].factor - factor, -step, step);
        const double edge = static_cast<double>(std::min(i, samples.size() - 1 - i)) / n_fade;
        const double sample = level * factor * std::min(1.0, edge) * samples[i];
        samples[i] = static_cast<std::int16_t>(std::clamp(sample, -32767.0, 32767.0));
    }
}

// --- the file -----------------------------------------------------------------------------------

void add_number(std::string& bytes, std::uint64_t number, int size) {
    for (int i = 0; i < size; ++i)
        bytes += static_cast<char>((number >> (8U * static_cast<unsigned>(i))) & 0xFFU);
}

std::string bytes_of(const std::vector<std::int16_t>& samples) {
    std::string bytes;
    bytes.reserve(samples.size() * bytes_a_sample);
    for (const std::int16_t sample : samples)
        add_number(bytes, static_cast<std::uint16_t>(sample), bytes_a_sample);
    return bytes;
}

// A chunk of RIFF: its name, its size, its bytes and one more where they are odd.
std::string chunk(std::string_view name, std::string_view bytes) {
    std::string result(name);
    add_number(result, bytes.size(), 4);
    result += bytes;
    if (bytes.size() % 2 != 0) result += '\0';
    return result;
}

std::string info_of(const Header& header) {
    constexpr std::size_t longest_title = 200; // bytes
    std::string info = "INFO";
    std::string title = header.title.substr(0, longest_title);
    title.resize(std::min(title.size(), unicode::first_invalid_utf8(title)));
    if (!title.empty()) info += chunk("INAM", title + '\0');
    info += chunk("ICMT", std::string(guide_read_sign) +
                              ": for rhythm and length, no model for the read." + '\0');
    return chunk("LIST", info);
}

std::string format_chunk() {
    std::string format;
    add_number(format, 1, 2); // plain samples
    add_number(format, 1, 2); // channels
    add_number(format, samples_a_second, 4);
    add_number(format, static_cast<std::uint64_t>(samples_a_second) * bytes_a_sample, 4);
    add_number(format, bytes_a_sample, 2);
    add_number(format, std::uint64_t{8} * bytes_a_sample, 2);
    return chunk("fmt ", format);
}

} // namespace

GuideRead::GuideRead(const Analysis& analysis, std::size_t first, std::size_t last)
    : analysis_(analysis), thought_(first), last_(std::min(last, analysis.script.thoughts.size())) {
    if (thought_ >= last_) return;
    const std::vector<Placed>& thoughts = analysis_.script.thoughts;
    origin_ = thoughts[thought_].at;
    const Placed& end = thoughts[last_ - 1];
    total_ = samples_in(end.at + end.thought->reading.timing.expected - origin_);
    find_stretches();
}

Result<void> GuideRead::check() const {
    constexpr std::uint64_t most = std::numeric_limits<std::uint32_t>::max() - 4096U;
    if (total_ * bytes_a_sample <= most) return {};
    return Error{
        "a sound of more than 37 hours (4 GB) is no WAVE file; make it section by section"};
}

Seconds GuideRead::seconds() const {
    return Seconds{static_cast<double>(total_) / samples_a_second};
}

double GuideRead::share_done() const {
    return total_ == 0 ? 1 : static_cast<double>(written_) / static_cast<double>(total_);
}

std::string GuideRead::head() const {
    const std::string chunks = format_chunk() + info_of(analysis_.script.header);
    const std::uint64_t size = total_ * bytes_a_sample;
    std::string head = "RIFF";
    add_number(head, 4 + chunks.size() + 8 + size, 4);
    head += "WAVE" + chunks + "data";
    add_number(head, size, 4);
    return head;
}

Seconds GuideRead::begin_of(std::size_t thought) const {
    return analysis_.script.thoughts[thought].at - origin_;
}

// Cuts the thought at its silences; a word without a sound is one.
void GuideRead::find_stretches() {
    constexpr Seconds no_silence{0.0005};
    stretches_.clear();
    stretch_ = 0;
    const std::vector<Said>& said = analysis_.script.thoughts[thought_].thought->reading.said;
    bool joined = false;
    for (std::size_t i = 0; i < said.size(); ++i) {
        const bool heard = sounds(said[i]);
        const int word = static_cast<int>(i);
        if (joined && heard && said[i].at - said[i - 1].at - said[i - 1].seconds < no_silence &&
            word - stretches_.back().first < most_words) {
            stretches_.back().last = word + 1;
        } else if (heard) {
            stretches_.push_back({word, word + 1});
        }
        joined = heard;
    }
}

std::string GuideRead::silence_until(std::uint64_t sample) {
    const std::uint64_t n = std::min(sample - written_, samples_in(most_silence));
    written_ += n;
    return std::string(static_cast<std::size_t>(n) * bytes_a_sample, '\0');
}

std::string GuideRead::say(const Placed& placed, Stretch stretch) {
    const Thought& thought = *placed.thought;
    const std::size_t speaker = placed.voice > 0 ? static_cast<std::size_t>(placed.voice) - 1 : 0;
    const Line line(thought, speakers[speaker % speakers.size()]);
    Score score;
    for (int word = stretch.first; word < stretch.last; ++word)
        add_word(thought, word, word + 1 == stretch.last, line, score);
    std::vector<std::int16_t> samples = machine_voice(score.phones, score.pitch);
    samples.resize(std::min<std::uint64_t>(samples.size(), total_ - written_));
    set_loudness(score, samples);
    written_ += samples.size();
    return bytes_of(samples);
}

std::string GuideRead::next() {
    while (thought_ < last_) {
        const Placed& placed = analysis_.script.thoughts[thought_];
        if (stretch_ < stretches_.size()) {
            const Stretch stretch = stretches_[stretch_];
            const Said& first =
                placed.thought->reading.said[static_cast<std::size_t>(stretch.first)];
            const std::uint64_t begin = samples_in(begin_of(thought_) + first.at);
            if (begin > written_) return silence_until(begin);
            ++stretch_;
            return say(placed, stretch);
        }
        if (++thought_ < last_) find_stretches();
    }
    return silence_until(total_);
}

Result<void> stream_guide_read(const Analysis& analysis, const ExportOptions& /*options*/,
                               const Sink& sink) {
    GuideRead read(analysis, 0, analysis.script.thoughts.size());
    if (auto fits = read.check(); !fits) return fits;
    if (!sink(read.head(), 0)) return {};
    while (!read.done()) {
        if (!sink(read.next(), read.share_done())) return {};
    }
    return {};
}

std::string write_guide_read(const Analysis& analysis, const ExportOptions& options) {
    std::string whole;
    const auto made =
        stream_guide_read(analysis, options, [&](std::string_view bytes, double /*done*/) {
            whole += bytes;
            return true;
        });
    return made ? whole : std::string{};
}

} // namespace say
