// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/fundamental.hpp"

#include "analysis/decimate.hpp"
#include "analysis/partials.hpp"
#include "analysis/statistics.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace analysis {
namespace {

constexpr std::size_t frame_count = 9;
constexpr std::size_t comb_frames = 3;
constexpr double frame_time = 0.08;  // s
constexpr double agreeing = 60.0;    // cents
constexpr int most_divisor = 6;
constexpr double lower_periods = 10.0;     // in a frame that is asked for a lower pitch
constexpr double least_periods = 6.0;      // in a short tone
constexpr double least_share = 0.001;      // of the power
constexpr double over_floor = 10.0;        // in power
constexpr double most_floor = 0.05;        // of the power: more, and the pitch at hand is none of this tone's multiples
constexpr double highest_multiple = 12.0;  // of the pitch at hand: partials farther up say little
constexpr double most_smear = 0.15;        // of the lower pitch, that vibrato may spread a partial

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
std::vector<Frame> pitched_frames(const Signal& signal, double duration, const PitchRange& range,
                                  std::size_t most = frame_count) {
    std::vector<Frame> frames;
    for (Frame frame : frames_of(signal, duration, most))
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

/// How much of the power lies where.
struct Comb {
    double own = 0.0;      // on the partials of the pitch at hand
    double between = 0.0;  // on those of the lower pitch that are none of these
    double floor = 0.0;    // half-way between the lower pitch's, brought to as many places as `between` has
};

Comb comb_of(const Signal& signal, const std::vector<Frame>& frames, int divisor, double highest) {
    Comb comb;
    const auto in_one = static_cast<std::size_t>(2 * divisor);
    for (const Frame& frame : frames) {
        const double g = frame.pitch.hz / static_cast<double>(in_one);
        const auto samples = samples_of(signal, frame);
        const auto partials = measure_partials(samples, signal.sample_rate, {g, highest * frame.pitch.hz});
        for (std::size_t n = 1; n <= partials.size(); ++n) {
            const double power = partials[n - 1].amplitude * partials[n - 1].amplitude;
            if (n % in_one == 0)
                comb.own += power;
            else if (n % 2 == 0)
                comb.between += power;
            else
                comb.floor += power * (divisor - 1) / divisor;
        }
    }
    return comb;
}

/// Does the spectrum hold multiples of hz/divisor between those of hz?
bool has_lower(const Signal& signal, double hz, int divisor) {
    const double duration = static_cast<double>(signal.samples.size()) / signal.sample_rate;
    const double window = std::min(lower_periods * divisor / hz, duration);
    if (window < least_periods * divisor / hz) return false;
    const double third = ratio_from_semitones(2.0);
    const std::vector<Frame> frames = pitched_frames(signal, window, {hz / third, hz * third}, comb_frames);
    if (frames.empty()) return false;
    std::vector<double> pitches;
    for (const Frame& frame : frames) pitches.push_back(frame.pitch.hz);
    const double spread = 0.5 * (quantile(pitches, 0.9) / quantile(pitches, 0.1) - 1.0);
    const double highest = std::clamp(most_smear / (divisor * std::max(spread, 1e-6)), 2.2, highest_multiple);
    const Comb comb = comb_of(signal, frames, divisor, highest);
    const double all = comb.own + comb.between;
    return comb.floor < most_floor * all && comb.between > least_share * all && comb.between > over_floor * comb.floor;
}

/// Does next to nothing lie on the multiples of hz/divisor but what lies on those of hz?
bool explains_all(const Signal& signal, double hz, int divisor) {
    const double near = ratio_from_semitones(agreeing / 100.0);
    const double duration = static_cast<double>(signal.samples.size()) / signal.sample_rate;
    const std::vector<Frame> frames =
        pitched_frames(signal, std::min(lower_periods * divisor / hz, duration), {hz / near, hz * near}, comb_frames);
    if (frames.empty()) return false;
    const Comb comb = comb_of(signal, frames, divisor, highest_multiple / divisor);
    return comb.floor < most_floor * comb.own &&
           comb.between < std::max(least_share * comb.own, over_floor * comb.floor);
}

/// No more of the signal's rate than the partials need that are looked at.
Signal thinned(const Signal& signal, double hz) {
    constexpr double least_rate = 8000.0;
    const double wanted = std::max(least_rate, highest_multiple * hz / 0.4);
    return decimate(signal.samples, signal.sample_rate, decimation_factor(signal.sample_rate, wanted));
}

/// Medians of frames long enough for a pitch, near that pitch.
std::optional<Pitch> around(const Signal& signal, double hz) {
    const double near = ratio_from_semitones(agreeing / 100.0);
    std::vector<double> pitches, periodicities, clarities;
    for (const Frame& frame : pitched_frames(signal, std::max(frame_time, 4.0 / hz), {hz / near, hz * near})) {
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
    const std::vector<Frame> frames = pitched_frames(signal, frame_time, range);
    if (frames.empty()) return std::nullopt;
    const double first = agreed_hz(frames);
    double hz = first;
    const Signal thin = thinned(signal, hz);
    bool lowered = false;
    for (bool again = true; again;) {
        again = false;
        for (int divisor = 2; divisor <= most_divisor && !again; ++divisor) {
            if (hz / divisor < range.lowest || !has_lower(thin, hz, divisor)) continue;
            hz /= divisor;
            again = lowered = true;
        }
    }
    // Lowered too far: partials at every second, third … multiple alone.
    for (int multiple = most_divisor; lowered && multiple >= 2; --multiple)
        if (explains_all(thin, hz * multiple, multiple)) {
            hz *= multiple;
            break;
        }
    const auto measured = around(signal, hz);
    return measured ? measured : around(signal, first);
}

}  // namespace analysis
