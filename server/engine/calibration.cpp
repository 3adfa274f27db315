// Least squares in two unknowns, drawn to what most readers do, with Huber's weights against cues
// that are simply wrong.
#include "engine/calibration.h"

#include "syntax/header.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace say {
namespace {

// Eighty speakers: the 10th, 50th and 90th percentile of the speech factor are 0.85, 0.99 and 1.32;
// pauses lie around 1 and differ more. One standard deviation each.
constexpr double usual = 1.0;
constexpr double speech_differs = 0.18;
constexpr double pauses_differ = 0.30;

// What no reader's file may hold, nor any reader does.
constexpr double least_speech = 0.4;
constexpr double most_speech = 2.5;
constexpr double most_pauses = 4.0;

Evidence of_one(const TimedStretch& stretch, double weight) {
    const double spread = std::max(stretch.spread.count(), 1e-3);
    const double q = weight / (spread * spread);
    const double speech = stretch.speech.count();
    const double pause = stretch.pause.count();
    const double measured = stretch.measured.count();
    return {q * speech * speech, q * speech * pause, q * pause * pause, q * speech * measured,
            q * pause * measured};
}

// Standard errors that the stretch is off by, in the light of these numbers.
double off_by(const TimedStretch& stretch, const ReaderNumbers& numbers) {
    const Seconds expected = stretch.speech * numbers.speech + stretch.pause * numbers.pauses;
    return std::abs((stretch.measured - expected) / stretch.spread);
}

} // namespace

Seconds spread_of(Seconds measured) {
    // The text's own error of docs/timing.md, 7.8 % at a minute, as a standard error.
    constexpr double at_one_minute = 0.061;
    constexpr double fall = 0.31;
    const double seconds = std::max(1.0, measured.count());
    return Seconds{at_one_minute * std::pow(60.0 / seconds, fall) * seconds};
}

Seconds spread_of_silences(int silences) {
    constexpr double of_one = 0.3; // seconds; pauses at one mark differ by about their own length
    return Seconds{of_one * std::sqrt(std::max(1, silences))};
}

Evidence& Evidence::operator+=(const Evidence& other) {
    speech_speech += other.speech_speech;
    speech_pause += other.speech_pause;
    pause_pause += other.pause_pause;
    speech_measured += other.speech_measured;
    pause_measured += other.pause_measured;
    return *this;
}

Evidence Evidence::operator*(double weight) const {
    return {weight * speech_speech, weight * speech_pause, weight * pause_pause,
            weight * speech_measured, weight * pause_measured};
}

ReaderNumbers numbers_from(const Evidence& evidence) {
    constexpr double speech_prior = 1 / (speech_differs * speech_differs);
    constexpr double pauses_prior = 1 / (pauses_differ * pauses_differ);
    const double a = evidence.speech_speech + speech_prior;
    const double b = evidence.speech_pause;
    const double c = evidence.pause_pause + pauses_prior;
    const double u = evidence.speech_measured + speech_prior * usual;
    const double v = evidence.pause_measured + pauses_prior * usual;
    const double determinant = a * c - b * b; // above 0: both priors are
    return {std::clamp((u * c - v * b) / determinant, least_speech, most_speech),
            std::clamp((v * a - u * b) / determinant, 0.0, most_pauses)};
}

Evidence evidence_of(std::span<const TimedStretch> stretches, const Evidence& earlier) {
    constexpr double trusted = 1.5; // standard errors; Huber (1964)
    constexpr int rounds = 12;
    std::vector<double> weights(stretches.size(), 1.0);
    Evidence take;
    for (int round = 0; round < rounds; ++round) {
        take = {};
        for (std::size_t i = 0; i < stretches.size(); ++i)
            take += of_one(stretches[i], weights[i]);
        Evidence all = earlier;
        all += take;
        const ReaderNumbers numbers = numbers_from(all);
        for (std::size_t i = 0; i < stretches.size(); ++i)
            weights[i] = std::min(1.0, trusted / std::max(1e-9, off_by(stretches[i], numbers)));
    }
    return take;
}

double even_pace(const TimedStretch& stretch) {
    if (stretch.measured <= Seconds{0}) return 0;
    return words_a_minute_at_speed_one * ((stretch.speech + stretch.pause) / stretch.measured);
}

bool plausible(const TimedStretch& stretch) {
    // A word or two may be drawn out or thrown away.
    constexpr int few_words = 5;
    const double leave = stretch.words < few_words ? 2.0 : 1.0;
    const double pace = even_pace(stretch);
    return pace * leave >= slowest_pace && pace <= fastest_pace * leave;
}

double weight_of_age(double days) {
    constexpr double half_life = 90; // days; no source: our choice
    return std::exp2(-std::max(0.0, days) / half_life);
}

} // namespace say
