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

constexpr double frame_periods = 10.0;
constexpr double shortest_frame = 0.04;  // s
constexpr double longest_frame = 0.25;   // s
constexpr std::size_t most_partials = 64;
constexpr double semitone = 1.06;             // frames' pitches lie within this ratio of the tone's
constexpr double pitch_rate = 16000.0;        // Hz; pitch is followed at this rate or a little above
constexpr std::size_t partial_frames_of = 3;  // one frame of so many is taken for partials

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

/// Mean powers of the partials over some of the frames, which get their centroids on the way.
void measure_frames(const Signal& signal, Tone& tone) {
    const double limit = std::min(partials_limit_hz, most_partials * tone.hz);
    const Frames frames = frames_of(signal, tone.hz, 1);
    std::vector<double> power;
    std::size_t count = 0;
    for (std::size_t i = 0; i < tone.frames.size(); i += partial_frames_of) {
        ToneFrame& frame = tone.frames[i];
        const double start = frame.time * signal.sample_rate - 0.5 * static_cast<double>(frames.length);
        const auto first = static_cast<std::size_t>(
            std::clamp(start, 0.0, static_cast<double>(signal.samples.size() - frames.length)));
        const auto partials = measure_partials(std::span(signal.samples).subspan(first, frames.length),
                                               signal.sample_rate, {frame.hz, limit});
        if (partials.empty()) continue;
        if (const auto bright = brightness(partials, frame.hz)) frame.centroid_hz = bright->centroid_hz;
        if (count == 0) power.resize(partials.size());
        power.resize(std::min(power.size(), partials.size()));
        for (std::size_t n = 0; n < power.size(); ++n) power[n] += partials[n].amplitude * partials[n].amplitude;
        ++count;
    }
    for (std::size_t n = 0; n < power.size(); ++n)
        tone.partials.push_back(
            {static_cast<double>(n + 1) * tone.hz, std::sqrt(power[n] / static_cast<double>(count))});
    if (const auto bright = brightness(tone.partials, tone.hz)) tone.centroid_hz = bright->centroid_hz;
}

double level_of(std::span<const double> samples) {
    double mean = 0.0;
    for (const double sample : samples) mean += sample / static_cast<double>(samples.size());
    double sum = 0.0;
    for (const double sample : samples) sum += (sample - mean) * (sample - mean);
    return std::sqrt(sum / static_cast<double>(samples.size()));
}

}  // namespace

double power_centroid(std::span<const double> samples, double sample_rate, double limit_hz) {
    if (samples.size() < 2) return 0.0;
    const std::size_t length = fast_length(samples.size());
    const auto bins = spectrum(samples, length);
    double weight = 0.0;
    double moment = 0.0;
    for (std::size_t k = 1; k < bins.size(); ++k) {
        const double hz = static_cast<double>(k) * sample_rate / static_cast<double>(length);
        if (hz > limit_hz) break;
        weight += std::norm(bins[k]);
        moment += hz * std::norm(bins[k]);
    }
    return weight > 0.0 ? moment / weight : 0.0;
}

std::optional<Tone> measure_tone(std::span<const double> samples, double sample_rate, const ToneSearch& search) {
    const Signal signal = decimated_for_analysis(samples, sample_rate);
    const auto fundamental = measure_fundamental(signal.samples, signal.sample_rate, search.range);
    if (!fundamental) return std::nullopt;
    Tone tone;
    tone.hz = fundamental->hz;
    tone.frames = followed(signal, fundamental->hz, std::max<std::size_t>(1, search.most_frames));
    if (tone.frames.empty()) return std::nullopt;
    std::vector<double> pitches;
    double clarity = 0.0;
    for (const ToneFrame& frame : tone.frames) {
        pitches.push_back(frame.hz);
        clarity += frame.clarity_db / static_cast<double>(tone.frames.size());
    }
    tone.hz = quantile(pitches, 0.5);
    tone.stability = 0.5 * cents_between(quantile(pitches, 0.9), quantile(pitches, 0.1));
    tone.clarity_db = clarity;
    tone.level = level_of(samples);
    tone.power_centroid_hz = power_centroid(signal.samples, signal.sample_rate, partials_limit_hz);
    measure_frames(signal, tone);
    tone.inharmonicity = measure_inharmonicity(signal.samples, signal.sample_rate, tone.frames);
    return tone;
}

}  // namespace analysis
