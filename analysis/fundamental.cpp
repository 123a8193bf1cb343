// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/fundamental.hpp"

#include "analysis/decimate.hpp"
#include "analysis/harmonic_fit.hpp"
#include "analysis/statistics.hpp"
#include "analysis/steadied.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace analysis {
namespace {

constexpr std::size_t frame_count = 9;
constexpr double frame_time = 0.08;  // s
constexpr double agreeing = 60.0;    // cents
constexpr std::size_t window_count = 3;
constexpr double window_periods = 12.0;  // of the lowest pitch that is looked for
constexpr double highest_line = 0.4;     // of the sample rate
constexpr double still = 5e-4;           // share of the pitch: wavering less, lines aren't smeared
constexpr double least_reach = 0.01;     // share of the pitch, that frames may lie from their window's
constexpr double swing = 2.5;            // wavers
constexpr double line_error = 0.06;      // Hz s: over the window's duration, what a line's frequency is known to

/// A piece of the tone.
struct Frame {
    std::size_t first = 0;
    std::size_t length = 0;
    Pitch pitch;
};

/// Frames evenly spread, of this length or all there is.
std::vector<Frame> frames_of(const Signal& signal, double duration, std::size_t most) {
    const std::size_t count = signal.samples.size();
    const std::size_t length = std::min(count, static_cast<std::size_t>(duration * signal.sample_rate));
    const std::size_t frames =
        std::clamp<std::size_t>(2 * (count - length) / std::max<std::size_t>(1, length) + 1, 1, most);
    std::vector<Frame> result;
    for (std::size_t i = 0; i < frames; ++i)
        result.push_back({frames > 1 ? (count - length) * i / (frames - 1) : 0, length, {}});
    return result;
}

std::span<const double> samples_of(const Signal& signal, const Frame& frame) {
    return std::span(signal.samples).subspan(frame.first, frame.length);
}

/// Those of the frames that have a pitch in the range.
std::vector<Frame> pitched_frames(const Signal& signal, double duration, const PitchRange& range) {
    std::vector<Frame> frames;
    for (Frame frame : frames_of(signal, duration, frame_count))
        if (const auto pitch = measure_pitch(samples_of(signal, frame), signal.sample_rate, range)) {
            frame.pitch = *pitch;
            frames.push_back(frame);
        }
    return frames;
}

/// The pitch that most frames agree on, weighted by how clear they are.
double agreed_hz(const std::vector<Frame>& frames) {
    double best = 0.0;
    double most = -1.0;
    for (const Frame& candidate : frames) {
        double weight = 0.0;
        std::vector<double> near;
        for (const Frame& frame : frames) {
            if (std::abs(cents_between(frame.pitch.hz, candidate.pitch.hz)) > agreeing) continue;
            weight += frame.pitch.periodicity;
            near.push_back(frame.pitch.hz);
        }
        if (weight > most) {
            most = weight;
            best = quantile(near, 0.5);
        }
    }
    return best;
}

std::optional<HarmonicFit> fit(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    const double duration = static_cast<double>(samples.size()) / sample_rate;
    const auto lines =
        spectral_peaks(samples, sample_rate, {.lowest_hz = range.lowest, .highest_hz = highest_line * sample_rate});
    return fit_fundamental(lines, line_error / duration, range);
}

/// Fits of a few long windows.  Where the pitch wavers, its lines are smeared: such a window is steadied first, if that
/// makes its lines any sharper; the waver told is that of the sound all the same.
std::vector<HarmonicFit> window_fits(const Signal& signal, const PitchRange& range) {
    std::vector<HarmonicFit> fits;
    double near = 0.0;
    for (const Frame& frame : frames_of(signal, window_periods / range.lowest, window_count)) {
        const auto samples = samples_of(signal, frame);
        auto best = fit(samples, signal.sample_rate, range);
        if (best && best->waver > still) {
            if (near == 0.0) near = agreed_hz(pitched_frames(signal, frame_time, range));
            const auto steady = near > 0.0 ? steadied(samples, signal.sample_rate, near) : std::vector<double>();
            const auto other = steady.empty() ? std::nullopt : fit(steady, signal.sample_rate, range);
            if (other && other->waver < best->waver) best = HarmonicFit{other->hz, other->gain, best->waver};
        }
        if (best) fits.push_back(*best);
    }
    return fits;
}

bool agree(const HarmonicFit& one, const HarmonicFit& other) {
    return std::abs(cents_between(one.hz, other.hz)) <= agreeing;
}

/// Where the pitch of those windows lies that agree with most others, of equals with that of the greatest gain.
std::optional<PitchRange> agreed_range(const std::vector<HarmonicFit>& fits) {
    const auto weight = [&](const HarmonicFit& fit) {
        return std::pair(std::ranges::count_if(fits, [&](const auto& other) { return agree(fit, other); }), fit.gain);
    };
    if (fits.empty()) return std::nullopt;
    const HarmonicFit best = std::ranges::max(fits, {}, weight);
    PitchRange range{best.hz, best.hz};
    for (const HarmonicFit& fit : fits) {
        if (!agree(fit, best)) continue;
        const double reach = least_reach + swing * fit.waver;
        range.lowest = std::min(range.lowest, fit.hz / (1.0 + reach));
        range.highest = std::max(range.highest, fit.hz * (1.0 + reach));
    }
    return range;
}

PitchRange range_around(double hz) {
    const double near = ratio_from_semitones(agreeing / 100.0);
    return {hz / near, hz * near};
}

/// Medians of frames long enough for a pitch.
std::optional<Pitch> measured_within(const Signal& signal, const PitchRange& range) {
    std::vector<double> pitches, periodicities, clarities;
    for (const Frame& frame : pitched_frames(signal, std::max(frame_time, 4.0 / range.lowest), range)) {
        pitches.push_back(frame.pitch.hz);
        periodicities.push_back(frame.pitch.periodicity);
        clarities.push_back(frame.pitch.clarity_db);
    }
    if (pitches.empty()) return std::nullopt;
    return Pitch{quantile(pitches, 0.5), quantile(periodicities, 0.5), quantile(clarities, 0.5)};
}

}  // namespace

std::optional<Pitch> measure_fundamental(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    const Signal signal = decimated_for_analysis(samples, sample_rate);
    if (const auto agreed = agreed_range(window_fits(signal, range))) {
        if (const auto measured = measured_within(signal, *agreed)) return measured;
        // Where partials far up are strongest, repetition peaks too sharply for so few samples a period.
        const double hz = std::sqrt(agreed->lowest * agreed->highest);
        if (const auto near = measured_within(signal, range_around(hz)))
            return Pitch{hz, near->periodicity, near->clarity_db};
    }
    const std::vector<Frame> frames = pitched_frames(signal, frame_time, range);
    return frames.empty() ? std::nullopt : measured_within(signal, range_around(agreed_hz(frames)));
}

}  // namespace analysis
