// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/tone.hpp"

#include "analysis/decimate.hpp"
#include "analysis/fundamental.hpp"
#include "analysis/inharmonicity.hpp"
#include "analysis/level.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/statistics.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>

namespace analysis {
namespace {

constexpr double frame_periods = 6.0;
constexpr double shortest_frame = 0.02;  // s
constexpr double longest_frame = 0.2;    // s
constexpr std::size_t most_partials = 64;
constexpr double semitone = 1.06;       // frames' pitches lie within this ratio of the tone's
constexpr double pitch_rate = 16000.0;  // Hz; pitch is followed at this rate or a little above
constexpr std::size_t centroid_frames = 8;
constexpr std::size_t clarity_frames = 40;
constexpr double inharmonicity_rate = 52.0;  // of the pitch: twenty partials below 0.4 of it

/// Where the frames of a stretch lie.
struct Frames {
    std::size_t length = 0;  ///< samples
    std::vector<std::size_t> starts;
};

Frames frames_of(const Signal& signal, double hz, std::size_t most) {
    const double duration = std::clamp(frame_periods / hz, shortest_frame, longest_frame);
    const std::size_t count = signal.samples.size();
    Frames frames;
    frames.length = std::min(count, static_cast<std::size_t>(duration * signal.sample_rate));
    const std::size_t room = count - frames.length;
    const auto wanted = std::clamp<std::size_t>(4 * room / std::max<std::size_t>(1, frames.length) + 1, 1, most);
    for (std::size_t i = 0; i < wanted; ++i) frames.starts.push_back(wanted > 1 ? room * i / (wanted - 1) : room / 2);
    return frames;
}

/// A pitch for each frame that has one near the tone's.
std::vector<ToneFrame> followed(const Signal& signal, double hz, std::size_t most) {
    // High tones need the whole band for their harmonics.
    const double rate = std::max(pitch_rate, 12.0 * hz);
    const Signal thin = decimate(signal.samples, signal.sample_rate, decimation_factor(signal.sample_rate, rate));
    const double offset = 0.5 * static_cast<double>(signal.samples.size()) / signal.sample_rate -
                          0.5 * static_cast<double>(thin.samples.size()) / thin.sample_rate;
    const Frames frames = frames_of(thin, hz, most);
    std::vector<ToneFrame> result;
    for (const std::size_t start : frames.starts) {
        const auto frame = std::span(thin.samples).subspan(start, frames.length);
        const auto pitch = measure_pitch(frame, thin.sample_rate, {hz / semitone, hz * semitone});
        if (!pitch) continue;
        const double middle = static_cast<double>(start) + 0.5 * static_cast<double>(frames.length);
        result.push_back({offset + middle / thin.sample_rate, pitch->hz, pitch->clarity_db, 0.0});
    }
    return result;
}

/// At the full rate, since noise counts up to the highest frequency; in some of the frames.
double mean_clarity(const Signal& signal, const Tone& tone) {
    const Frames frames = frames_of(signal, tone.hz, clarity_frames);
    double sum = 0.0;
    for (const std::size_t start : frames.starts)
        sum += measure_clarity(std::span(signal.samples).subspan(start, frames.length), signal.sample_rate,
                               {tone.hz / semitone, tone.hz * semitone});
    return sum / static_cast<double>(frames.starts.size());
}

/// Centroids of some of the frames, and of their mean powers.
void add_centroids(const Signal& signal, Tone& tone) {
    const Frames frames = frames_of(signal, tone.hz, 1);
    std::vector<Partial> sums;
    const std::size_t step = (tone.frames.size() + centroid_frames - 1) / centroid_frames;
    for (std::size_t i = step / 2; i < tone.frames.size(); i += step) {
        ToneFrame& frame = tone.frames[i];
        const double start = frame.time * signal.sample_rate - 0.5 * static_cast<double>(frames.length);
        const auto first = static_cast<std::size_t>(
            std::clamp(start, 0.0, static_cast<double>(signal.samples.size() - frames.length)));
        const auto partials = measure_partials(std::span(signal.samples).subspan(first, frames.length),
                                               signal.sample_rate, {frame.hz, brightness_limit_hz});
        if (const auto bright = brightness(partials, frame.hz)) frame.centroid_hz = bright->centroid_hz;
        for (std::size_t n = 0; n < partials.size(); ++n) {
            if (n == sums.size()) sums.push_back({static_cast<double>(n + 1) * tone.hz, 0.0});
            sums[n].amplitude = std::hypot(sums[n].amplitude, partials[n].amplitude);
        }
    }
    if (const auto bright = brightness(sums, tone.hz)) tone.centroid_hz = bright->centroid_hz;
}

/// Power centroid and the powers of the partials' bands, from one transform of the whole stretch.
void add_bands(const Signal& signal, Tone& tone) {
    if (signal.samples.size() < 4) return;
    const std::size_t length = signal.samples.size() - signal.samples.size() % 2;  // no zeros, which would add skirts
    const auto bins = spectrum(std::span(signal.samples).last(length), length);
    const double limit = std::min(partials_limit_hz, (most_partials + 0.5) * tone.hz);
    const auto partials = static_cast<std::size_t>(limit / tone.hz);
    std::vector<double> power(partials, 0.0);
    double weight = 0.0;
    double moment = 0.0;
    for (std::size_t k = 1; k < bins.size(); ++k) {
        const double hz = static_cast<double>(k) * signal.sample_rate / static_cast<double>(length);
        const auto n = static_cast<std::size_t>(std::lround(hz / tone.hz));
        if (n >= 1 && n <= partials) power[n - 1] += std::norm(bins[k]);
        if (hz > partials_limit_hz) continue;
        weight += std::norm(bins[k]);
        moment += hz * std::norm(bins[k]);
    }
    tone.power_centroid_hz = weight > 0.0 ? moment / weight : 0.0;
    for (std::size_t n = 0; n < partials; ++n)
        tone.partials.push_back(
            {static_cast<double>(n + 1) * tone.hz, 2.0 * std::sqrt(power[n]) / static_cast<double>(length)});
}

/// At a rate that the lower partials need: its frames are long.
std::optional<Inharmonicity> inharmonicity_of(const Signal& signal, const Tone& tone) {
    const int factor = decimation_factor(signal.sample_rate, std::max(8000.0, inharmonicity_rate * tone.hz));
    const Signal thin = decimate(signal.samples, signal.sample_rate, factor);
    const double lost = 0.5 * static_cast<double>(signal.samples.size()) / signal.sample_rate -
                        0.5 * static_cast<double>(thin.samples.size()) / thin.sample_rate;
    std::vector<ToneFrame> frames = tone.frames;
    for (ToneFrame& frame : frames) frame.time -= lost;
    return measure_inharmonicity(thin.samples, thin.sample_rate, frames);
}

double level_of(std::span<const double> samples) {
    double mean = 0.0;
    for (const double sample : samples) mean += sample / static_cast<double>(samples.size());
    double sum = 0.0;
    for (const double sample : samples) sum += (sample - mean) * (sample - mean);
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

}  // namespace

std::optional<Tone> measure_tone(std::span<const double> samples, double sample_rate, const ToneSearch& search) {
    const Signal signal = decimated_for_analysis(samples, sample_rate);
    const auto fundamental = measure_fundamental(signal.samples, signal.sample_rate, search.range);
    if (!fundamental) return std::nullopt;
    Tone tone;
    tone.hz = fundamental->hz;
    tone.frames = followed(signal, fundamental->hz, std::max<std::size_t>(1, search.most_frames));
    if (tone.frames.empty()) return std::nullopt;
    std::vector<double> pitches;
    for (const ToneFrame& frame : tone.frames) pitches.push_back(frame.hz);
    tone.hz = quantile(pitches, 0.5);
    tone.stability = stray_cents(pitches);
    tone.clarity_db = mean_clarity(signal, tone);
    tone.level = level_of(samples);
    add_centroids(signal, tone);
    add_bands(signal, tone);
    tone.inharmonicity = inharmonicity_of(signal, tone);
    return tone;
}

}  // namespace analysis
