// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sound/render.hpp"

#include "analysis/resample.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <numeric>

namespace sim::sound {
namespace {

using analysis::Signal;

void remove_mean(std::vector<double>& samples) {
    if (samples.empty()) return;
    const double mean = std::accumulate(samples.begin(), samples.end(), 0.0) / static_cast<double>(samples.size());
    for (double& sample : samples) sample -= mean;
}

/// Half a cosine from 0 to 1, at step `j` of `count`; the ends themselves are left out.
double ramp(std::size_t j, std::size_t count) {
    return 0.5 - 0.5 * std::cos(std::numbers::pi * (static_cast<double>(j) + 0.5) / static_cast<double>(count));
}

}  // namespace

std::vector<RadiatingMode> radiating_modes(const Bridge& bridge) {
    std::vector<RadiatingMode> result;
    if (bridge.kind != BridgeKind::modes) return result;
    for (const BridgeMode& mode : bridge.modes) {
        if (mode.radiation != 0.0) result.push_back({mode.frequency, mode.q, mode.radiation});
    }
    return result;
}

std::complex<double> response(std::span<const RadiatingMode> modes, double hz) {
    if (modes.empty()) return 1.0;
    std::complex<double> sum = 0.0;
    for (const RadiatingMode& mode : modes) {
        // Divided through by w², with x = hz/f: i d/(a + i d), a = 1 - x², d = x/Q.  Written out, since a complex
        // division is slow and this is called once a mode and bin.
        const double x = hz / mode.hz;
        const double a = 1.0 - x * x;
        const double d = x / mode.q;
        const double scale = mode.radiation * d / (a * a + d * d);
        sum += std::complex<double>(scale * d, scale * a);
    }
    return sum;
}

/// With g = tan(pi f/rate) and k = 1/Q the trapezoidal state-variable filter keeps two states, and its band-pass times
/// k is (w/Q) s / (s² + (w/Q) s + w²) under the bilinear transform prewarped at the mode.
BodySound::BodySound(std::span<const RadiatingMode> modes, double sample_rate) {
    for (const RadiatingMode& mode : modes) {
        if (mode.hz > 0.45 * sample_rate) continue;
        const double g = std::tan(std::numbers::pi * mode.hz / sample_rate);
        const double k = 1.0 / mode.q;
        filters_.push_back({.g = g, .k = k, .a1 = 1.0 / (1.0 + g * (g + k)), .radiation = mode.radiation});
    }
}

double BodySound::sound(double force) {
    double sum = 0.0;
    for (Filter& filter : filters_) {
        const double band = filter.a1 * (filter.band_state + filter.g * (force - filter.low_state));
        const double low = filter.low_state + filter.g * band;
        filter.band_state = 2.0 * band - filter.band_state;
        filter.low_state = 2.0 * low - filter.low_state;
        sum += filter.radiation * filter.k * band;
    }
    return sum;
}

Signal render(const Signal& bridge_force, std::span<const RadiatingMode> modes) {
    Signal force = analysis::resample(bridge_force, sound_rate);
    if (modes.empty()) {
        remove_mean(force.samples);
        return force;
    }
    BodySound body(modes, sound_rate);
    for (double& sample : force.samples) sample = body.sound(sample);
    return force;
}

void fade_ends(Signal& sound, const Fades& fades) {
    const std::size_t count = sound.samples.size();
    const double duration = static_cast<double>(count) / sound.sample_rate;
    const double scale = std::min(1.0, duration / std::max(fades.in + fades.out, 1e-9));
    const auto in = static_cast<std::size_t>(fades.in * scale * sound.sample_rate);
    const auto out = static_cast<std::size_t>(fades.out * scale * sound.sample_rate);
    for (std::size_t j = 0; j < in; ++j) sound.samples[j] *= ramp(j, in);
    for (std::size_t j = 0; j < out; ++j) sound.samples[count - 1 - j] *= ramp(j, out);
}

double share_gain(std::span<Signal> takes) {
    double peak = 0.0;
    for (const Signal& take : takes) {
        for (const double sample : take.samples) peak = std::max(peak, std::abs(sample));
    }
    if (!(peak > 0.0)) return 1.0;
    const double gain = analysis::ratio_from_db(peak_level_db) / peak;
    for (Signal& take : takes) {
        for (double& sample : take.samples) sample *= gain;
    }
    return gain;
}

Signal concatenate(std::span<const Signal> takes, double gap) {
    assert(!takes.empty() && gap >= 0.0);
    const double rate = takes.front().sample_rate;
    const auto silence = static_cast<std::size_t>(std::llround(gap * rate));
    Signal result{{}, rate};
    for (const Signal& take : takes) {
        assert(take.sample_rate == rate);
        if (&take != &takes.front()) result.samples.insert(result.samples.end(), silence, 0.0);
        result.samples.insert(result.samples.end(), take.samples.begin(), take.samples.end());
    }
    return result;
}

}  // namespace sim::sound
