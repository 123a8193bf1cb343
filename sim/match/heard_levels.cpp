// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/heard_levels.hpp"

#include "analysis/partials.hpp"
#include "analysis/statistics.hpp"
#include "analysis/units.hpp"
#include "sim/match/stroke_spectra.hpp"

#include <algorithm>
#include <cmath>

namespace sim::match {
namespace {

constexpr double least_periods = 8.0;
constexpr double least_frame = 0.1;  // s
constexpr std::size_t most_frames = 24;
constexpr double highest_share = 0.42;    // of the sample rate
constexpr double least_over_noise = 4.0;  // in power
constexpr double least_spread = 0.3;      // dB, of the measure itself
constexpr std::size_t smoothed = 2;       // places either way

/// Mean powers at n f0 / 2: the odd ones lie between partials.
struct HalfPowers {
    std::vector<double> sum;
    std::vector<double> squares;
    int frames = 0;
};

double pitch_at(const analysis::Tone& tone, double time) {
    double nearest = 1e300;
    double hz = tone.hz;
    for (const analysis::ToneFrame& frame : tone.frames) {
        const double away = std::abs(frame.time - time);
        if (away >= nearest) continue;
        nearest = away;
        hz = frame.hz;
    }
    return hz;
}

HalfPowers half_powers(const NoteSamples& part, const analysis::Tone& tone, double limit) {
    const std::span<const double> samples = part.signal.samples;
    const double rate = part.signal.sample_rate;
    const double periods = 2.0 * std::ceil(0.5 * std::max(least_periods, least_frame * tone.hz));
    const auto length = std::min(samples.size(), static_cast<std::size_t>(std::ceil((periods + 0.1) * rate / tone.hz)));
    const std::size_t room = samples.size() - length;
    const std::size_t frames = std::clamp<std::size_t>(2 * room / std::max<std::size_t>(1, length) + 1, 1, most_frames);
    HalfPowers powers;
    for (std::size_t i = 0; i < frames; ++i) {
        const std::size_t start = frames > 1 ? room * i / (frames - 1) : room / 2;
        const double middle = (static_cast<double>(start) + 0.5 * static_cast<double>(length)) / rate;
        const double hz = pitch_at(tone, part.skipped + middle);
        // Half the pitch: a whole number of its periods is an even number of the tone's.
        const auto partials =
            analysis::measure_partials(samples.subspan(start, length), rate, {0.5 * hz, limit * hz / tone.hz});
        powers.sum.resize(std::max(powers.sum.size(), partials.size()));
        powers.squares.resize(powers.sum.size());
        for (std::size_t n = 0; n < partials.size(); ++n) {
            const double power = partials[n].amplitude * partials[n].amplitude;
            powers.sum[n] += power;
            powers.squares[n] += power * power;
        }
        ++powers.frames;
    }
    return powers;
}

}  // namespace

std::vector<HeardLevel> heard_levels(const NoteSamples& part, const analysis::Tone& tone) {
    const double limit = std::min(compared_limit, highest_share * part.signal.sample_rate);
    const HalfPowers powers = half_powers(part, tone, limit + 0.5 * tone.hz);
    std::vector<double> between;  // [n]: between partials n and n + 1, n = 0 under the first
    for (std::size_t k = 0; k < powers.sum.size(); k += 2) between.push_back(powers.sum[k] / powers.frames);
    std::vector<HeardLevel> levels;
    for (std::size_t n = 1; 2 * n <= powers.sum.size() && n < between.size(); ++n) {
        const double hz = static_cast<double>(n) * tone.hz;
        if (hz > limit) break;
        const double mean = powers.sum[2 * n - 1] / powers.frames;
        const std::size_t from = n > smoothed ? n - smoothed : 0;
        const std::size_t to = std::min(between.size(), n + smoothed + 1);
        const double noise = analysis::quantile(
            {between.begin() + static_cast<long>(from), between.begin() + static_cast<long>(to)}, 0.5);
        const double net = std::max(mean - noise, 0.01 * mean);
        const double ratio = net / std::max(noise, 1e-300);
        const double relative = std::sqrt((2.0 * ratio + 1.0) / (ratio * ratio) / std::max(1.0, 0.5 * powers.frames));
        levels.push_back({.number = static_cast<int>(n),
                          .hz = hz,
                          .level = 0.5 * analysis::db_from_ratio(std::max(net, 1e-30)),
                          .noise = 0.5 * analysis::db_from_ratio(std::max(noise, 1e-30)),
                          .spread = std::hypot(least_spread, 4.343 * relative),
                          .usable = mean > least_over_noise * noise});
    }
    return levels;
}

}  // namespace sim::match
