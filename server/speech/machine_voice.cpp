#include "speech/machine_voice.h"

#include "speech/flite_guard.h"
#include "text/ascii.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <unordered_set>

extern "C" {
#include <flite/cst_diphone.h>
#include <flite/flite.h>
cst_voice* register_cmu_us_kal16(const char* folder); // in flite_cmu_us_kal16, which has no header
}

namespace say {
namespace {

// A diphone begins in the middle of a sound, so silence stands at both ends, and is cut off again.
constexpr Seconds edge{0.05};
// What stands between two sounds that no recording joins; every sound is joined with it.
constexpr std::string_view schwa = "ax";
constexpr Seconds join{0.004};
constexpr double lowest = 50; // Hz: below and above the periods of the recordings come apart
constexpr double highest = 300;
constexpr std::string_view silence = "pau";

struct Segment {
    std::string name; // as flite calls a sound
    double end = 0;   // seconds
};

std::string flite_name(Phone phone) {
    // The dictionary's unstressed AH is a schwa of its own.
    if (phone.sound == Sound::AH && phone.stress == 0) return std::string(schwa);
    std::string name(name_of(phone.sound));
    std::transform(name.begin(), name.end(), name.begin(), [](char c) { return ascii::lower(c); });
    return name;
}

cst_voice* voice() {
    static cst_voice* const only = register_cmu_us_kal16(nullptr);
    return only;
}

std::unordered_set<std::string_view> diphones() {
    const cst_diphone_db* const recordings =
        val_diphone_db(feat_val(voice()->features, "diphone_db"));
    std::unordered_set<std::string_view> names;
    for (int i = 0; i < recordings->num_entries; ++i)
        names.insert(recordings->diphones[i].name);
    return names;
}

void add_segment(std::vector<Segment>& segments, std::string name, double end) {
    static const std::unordered_set<std::string_view> recorded = diphones();
    if (!segments.empty() && !recorded.contains(segments.back().name + '-' + name)) {
        const double begin = segments.back().end;
        segments.push_back({std::string(schwa), begin + std::min(join.count(), (end - begin) / 2)});
    }
    segments.push_back({std::move(name), end});
}

std::vector<Segment> segments_of(std::span<const TimedPhone> phones) {
    std::vector<Segment> segments;
    segments.reserve(phones.size() + 2);
    double at = edge.count();
    add_segment(segments, std::string(silence), at);
    for (const TimedPhone& phone : phones) {
        at += phone.seconds.count();
        add_segment(segments, flite_name(phone.phone), at);
    }
    add_segment(segments, std::string(silence), at + edge.count());
    return segments;
}

struct Saying {
    std::span<const Segment> segments;
    std::span<const PitchPoint> pitch;
    cst_utterance* utterance = nullptr;
};

void add_target(cst_relation* targets, double at, double hertz) {
    cst_item* const target = relation_append(targets, nullptr);
    item_set_float(target, "pos", static_cast<float>(at));
    item_set_float(target, "f0", static_cast<float>(std::clamp(hertz, lowest, highest)));
}

// Only what flite itself would own is made here, as an error of its leaves the function.
void synthesise(void* asked) {
    auto* const saying = static_cast<Saying*>(asked);
    cst_utterance* const utterance = new_utterance();
    utt_init(utterance, voice());
    cst_relation* const segments = utt_relation_create(utterance, "Segment");
    for (const Segment& segment : saying->segments) {
        cst_item* const item = relation_append(segments, nullptr);
        item_set_string(item, "name", segment.name.c_str());
        item_set_float(item, "end", static_cast<float>(segment.end));
    }
    cst_relation* const targets = utt_relation_create(utterance, "Target");
    const double end = saying->segments.back().end;
    add_target(targets, 0, saying->pitch.front().hertz);
    double last = 0;
    for (const PitchPoint& point : saying->pitch) {
        const double at = edge.count() + point.at.count();
        if (at <= last || at >= end) continue; // two points of one moment have no slope
        add_target(targets, at, point.hertz);
        last = at;
    }
    add_target(targets, end, saying->pitch.back().hertz);
    saying->utterance = diphone_synth(utterance);
}

void load_voice(void* /*nothing*/) {
    flite_init();
    voice();
}

std::size_t count_samples(Seconds seconds) {
    return static_cast<std::size_t>(
        std::max(0LL, std::llround(seconds.count() * samples_a_second)));
}

} // namespace

std::vector<std::int16_t> machine_voice(std::span<const TimedPhone> phones,
                                        std::span<const PitchPoint> pitch) {
    Seconds total{0};
    for (const TimedPhone& phone : phones)
        total += phone.seconds;
    std::vector<std::int16_t> samples(count_samples(total));
    if (phones.empty() || pitch.empty()) return samples;
    static const bool loaded = flite::guarded(load_voice, nullptr);
    if (!loaded) return samples;

    const std::vector<Segment> segments = segments_of(phones);
    Saying saying{.segments = segments, .pitch = pitch};
    if (!flite::guarded(synthesise, &saying)) return samples;
    const cst_wave* const wave = utt_wave(saying.utterance);
    const std::size_t skipped = count_samples(edge);
    const auto made = static_cast<std::size_t>(std::max(0, wave->num_samples));
    if (made > skipped) {
        const std::size_t n = std::min(samples.size(), made - skipped);
        std::copy_n(wave->samples + skipped, n, samples.begin());
    }
    delete_utterance(saying.utterance);
    return samples;
}

} // namespace say
