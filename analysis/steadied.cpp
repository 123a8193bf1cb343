// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/steadied.hpp"

#include "analysis/decimate.hpp"
#include "analysis/pitch.hpp"
#include "analysis/statistics.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

constexpr double frame_time = 0.05;  // s
constexpr double frame_periods = 4.0;
constexpr double step_share = 0.25;  // of a frame
constexpr double least_found = 0.7;  // of the frames
constexpr double samples_a_period = 6.0;
constexpr double least_rate = 16000.0;  // Hz
constexpr int reach = 8;                // samples either side used to interpolate

struct Moment {
    double time = 0.0;  // s
    double hz = 0.0;
};

std::vector<Moment> followed(std::span<const double> samples, double sample_rate, double hz) {
    const double tone = ratio_from_semitones(2.0);
    const int factor = decimation_factor(sample_rate, std::max(least_rate, samples_a_period * hz));
    const Signal thin = decimate(samples, sample_rate, factor);
    const double offset = factor > 1 ? 16.0 * factor / sample_rate : 0.0;
    const auto length = static_cast<std::size_t>(std::max(frame_time, frame_periods / hz) * thin.sample_rate);
    const auto step = static_cast<std::size_t>(step_share * static_cast<double>(length));
    std::vector<Moment> moments;
    std::size_t frames = 0;
    for (std::size_t from = 0; from + length <= thin.samples.size(); from += step, ++frames) {
        const auto frame = std::span(thin.samples).subspan(from, length);
        const auto pitch = measure_pitch(frame, thin.sample_rate, {hz / tone, hz * tone});
        if (!pitch) continue;
        const double middle = static_cast<double>(from) + 0.5 * static_cast<double>(length);
        moments.push_back({offset + middle / thin.sample_rate, pitch->hz});
    }
    if (static_cast<double>(moments.size()) < least_found * static_cast<double>(frames)) moments.clear();
    return moments;
}

/// Cosine and sine of pi k/reach, k = 1 - reach … reach: with them a taper costs two of its own.
struct TaperParts {
    std::array<double, 2 * reach> cosine{};
    std::array<double, 2 * reach> sine{};
};
const TaperParts& taper_parts() {
    static const TaperParts parts = [] {
        TaperParts made;
        for (std::size_t i = 0; i < made.cosine.size(); ++i) {
            made.cosine[i] = std::cos(std::numbers::pi * (static_cast<int>(i) + 1 - reach) / reach);
            made.sine[i] = std::sin(std::numbers::pi * (static_cast<int>(i) + 1 - reach) / reach);
        }
        return made;
    }();
    return parts;
}

/// Windowed sinc.
double between(std::span<const double> samples, double at) {
    const double whole = std::floor(at);
    const double part = at - whole;
    const auto base = static_cast<std::ptrdiff_t>(whole);
    if (base < reach - 1 || base + reach >= static_cast<std::ptrdiff_t>(samples.size())) return 0.0;
    if (part < 1e-9) return samples[static_cast<std::size_t>(base)];
    const TaperParts& taper = taper_parts();
    const double along = std::cos(std::numbers::pi * part / reach);
    const double across = std::sin(std::numbers::pi * part / reach);
    double sum = 0.0;
    double weight = 0.0;
    for (int k = 1 - reach; k <= reach; ++k) {
        const auto i = static_cast<std::size_t>(k + reach - 1);
        // A raised cosine over a sine, whose sin(pi part) cancels.
        const double kernel =
            (k % 2 == 0 ? 1.0 : -1.0) * (1.0 + along * taper.cosine[i] + across * taper.sine[i]) / (part - k);
        sum += kernel * samples[static_cast<std::size_t>(base + k)];
        weight += kernel;
    }
    return sum / weight;
}

}  // namespace

std::vector<double> steadied(std::span<const double> samples, double sample_rate, double hz, double least_cents) {
    const std::vector<Moment> moments = followed(samples, sample_rate, hz);
    if (moments.size() < 2) return {};
    std::vector<double> pitches;
    for (const Moment& moment : moments) pitches.push_back(moment.hz);
    if (stray_cents(pitches) < least_cents) return {};
    const double median = quantile(pitches, 0.5);
    std::vector<double> result;
    result.reserve(samples.size());
    std::size_t next = 1;
    double at = 0.0;  // samples
    while (at < static_cast<double>(samples.size())) {
        result.push_back(between(samples, at));
        const double time = at / sample_rate;
        while (next + 1 < moments.size() && moments[next].time < time) ++next;
        const Moment& before = moments[next - 1];
        const Moment& after = moments[next];
        const double share = std::clamp((time - before.time) / (after.time - before.time), 0.0, 1.0);
        at += median / std::lerp(before.hz, after.hz, share);
    }
    return result;
}

}  // namespace analysis
