// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/motion_features.hpp"

#include "analysis/decimate.hpp"
#include "analysis/fundamental.hpp"
#include "analysis/level.hpp"
#include "analysis/motion_spectrum.hpp"
#include "analysis/steadied.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>
#include <vector>

namespace analysis {
namespace {

constexpr PitchRange wide{20.0, 4500.0};
constexpr double highest = 11000.0;  // Hz
constexpr std::size_t listed_partials = 16;
constexpr std::size_t rippled_partials = 28;
constexpr std::size_t ripple_spacings = 24;
constexpr double least_known_cents = 70.0;  // a known note is looked for within this
constexpr double measured_cents = 15.0;
constexpr double still_cents = 3.0;  // what strays more is played so that its pitch stays where it is

double db_of_power(double ratio, double least) { return std::max(least, 10.0 * std::log10(std::max(ratio, 1e-12))); }

/// Fills features one after the other.
class Features {
public:
    void put(double value) {
        assert(next_ < values_.size());
        values_[next_++] = std::isfinite(value) ? value : 0.0;
    }
    template <class Range>
    void put_all(const Range& range) {
        for (const double value : range) put(value);
    }
    const MotionFeatures& done() const {
        assert(next_ == values_.size());
        return values_;
    }

private:
    MotionFeatures values_{};
    std::size_t next_ = 0;
};

/// Central moments of samples over powers of their standard deviation, no sign: a body may turn a wave over.
struct Shape {
    double skew = 0.0;        // third
    double peakedness = 0.0;  // fourth, dB over a sine's 1.5
};

Shape shape_of(std::span<const double> samples) {
    double sums[5] = {0.0, 0.0, 0.0, 0.0, 0.0};
    const double mean = std::accumulate(samples.begin(), samples.end(), 0.0) / static_cast<double>(samples.size());
    for (const double sample : samples) {
        const double x = sample - mean;
        sums[2] += x * x;
        sums[3] += x * x * x;
        sums[4] += x * x * x * x;
    }
    if (!(sums[2] > 0.0)) return {};
    const double count = static_cast<double>(samples.size());
    return {.skew = std::abs(sums[3]) * std::sqrt(count) / std::pow(sums[2], 1.5),
            .peakedness = 10.0 * std::log10(sums[4] * count / (sums[2] * sums[2]) / 1.5)};
}

/// Spread of the level over twelve parts of the stretch, dB.
double level_spread(std::span<const double> samples) {
    constexpr std::size_t parts = 12;
    double sum = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < parts; ++i) {
        const std::size_t size = samples.size() / parts;
        const double db = db_from_ratio(std::max(1e-9, rms(samples.subspan(i * size, size))));
        sum += db / parts;
        squares += db * db / parts;
    }
    return std::sqrt(std::max(0.0, squares - sum * sum));
}

void put_waveform(std::span<const double> samples, Features& features) {
    std::vector<double> slopes(samples.size());
    std::adjacent_difference(samples.begin(), samples.end(), slopes.begin());
    slopes.front() = 0.0;
    const Shape wave = shape_of(samples);
    const Shape slope = shape_of(slopes);
    features.put(level_spread(samples) / 5.0);
    features.put(wave.skew);
    features.put(wave.peakedness / 10.0);
    features.put(std::min(slope.skew, 5.0));
    features.put(slope.peakedness / 10.0);
}

void put_pitch(const std::optional<Pitch>& pitch, double hz, const MotionContext& context, Features& features) {
    const bool known = context.intended_hz > 0.0;
    features.put(known ? 1.0 : 0.0);
    features.put(known && pitch ? std::clamp(std::log2(pitch->hz / context.intended_hz), -4.0, 4.0) : 0.0);
    features.put(pitch ? 1.0 : 0.0);
    features.put(pitch ? pitch->clarity_db / 20.0 : -2.0);
    features.put(pitch ? std::min(4.0, -std::log10(1.0 - std::min(pitch->periodicity, 0.9999))) : 0.0);
    features.put(std::log2(hz / 200.0));
}

/// Where the power lies: on the partials, at parts of them, in wide bands.
void put_shares(const MotionSpectrum& spectrum, double hz, Features& features) {
    const double all = spectrum.power({20.0, highest});
    for (const HzBand& band : {HzBand{0.15 * hz, 6.5 * hz}, HzBand{6.5 * hz, 20.5 * hz}})
        for (const int parts : {1, 2, 3, 4, 5}) features.put(spectrum.comb_share(hz, parts, band));
    features.put(db_of_power(spectrum.power({20.0, 0.7 * hz}) / all, -60.0) / 20.0);
    for (const HzBand& band :
         {HzBand{20.0, 250.0}, HzBand{250.0, 1000.0}, HzBand{1000.0, 3000.0}, HzBand{3000.0, highest}})
        features.put(db_of_power(spectrum.power(band) / all, -60.0) / 20.0);
}

/// Levels of partials and how far each can be relied on.
struct Levels {
    std::vector<double> db;        // those of a sawtooth are alike, apart from the body
    std::vector<double> reliance;  // 0…1
};

Levels levels_of(const std::vector<MotionSpectrum::PartialPower>& partials) {
    double all = 1e-30;
    for (const auto& partial : partials) all += partial.power;
    Levels levels;
    for (std::size_t i = 0; i < partials.size(); ++i) {
        const double n = static_cast<double>(i + 1);
        levels.db.push_back(db_of_power(partials[i].power * n * n / all, -60.0));
        levels.reliance.push_back(partials[i].share + 1e-3);
    }
    return levels;
}

/// Straight line over the logarithm of n taken off, so that what a body does to all partials alike weighs less.
void take_off_slope(Levels& levels) {
    double w = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0;
    for (std::size_t i = 0; i < levels.db.size(); ++i) {
        const double at = std::log(static_cast<double>(i + 1));
        const double weight = levels.reliance[i];
        w += weight;
        x += weight * at;
        y += weight * levels.db[i];
        xx += weight * at * at;
        xy += weight * at * levels.db[i];
    }
    const double slope = (w * xy - x * y) / std::max(w * xx - x * x, 1e-9);
    for (std::size_t i = 0; i < levels.db.size(); ++i)
        levels.db[i] -= (y + slope * (w * std::log(static_cast<double>(i + 1)) - x)) / w;
}

/// How much the levels of the partials rise and fall every 25 … 2 partials: with their sign, since two slips t apart
/// lift the partials near multiples of 1/t, and a slip that lasts t lowers these.
void put_ripples(Levels levels, Features& features) {
    constexpr std::size_t least_partials = 6;
    const std::size_t count = levels.db.size();
    if (count < least_partials) {
        for (std::size_t i = 0; i < 1 + ripple_spacings + ripple_spacings / 2; ++i) features.put(0.0);
        return;
    }
    take_off_slope(levels);
    double squares = 0.0;
    double weights = 0.0;
    for (std::size_t n = 0; n < count; ++n) {
        squares += levels.reliance[n] * levels.db[n] * levels.db[n];
        levels.reliance[n] *= std::sin(std::numbers::pi * static_cast<double>(n + 1) / static_cast<double>(count + 1));
        weights += levels.reliance[n];
    }
    features.put(std::sqrt(squares / static_cast<double>(count)) / 10.0);
    for (std::size_t i = 0; i < ripple_spacings; ++i) {
        const double turns = 0.04 + 0.02 * static_cast<double>(i);  // a partial
        std::complex<double> sum = 0.0;
        for (std::size_t n = 0; n < count; ++n)
            sum += levels.reliance[n] * levels.db[n] *
                   std::polar(1.0, 2.0 * std::numbers::pi * turns * static_cast<double>(n + 1));
        features.put(sum.real() / weights / 5.0);
        if (i % 2 == 1) features.put(std::abs(sum) / weights / 5.0);
    }
}

void put_partials(const MotionSpectrum& spectrum, double hz, Features& features) {
    const Levels levels = levels_of(spectrum.partial_powers(hz, rippled_partials, highest));
    for (std::size_t n = 0; n < listed_partials; ++n) features.put(n < levels.db.size() ? levels.db[n] / 20.0 : -2.0);
    put_ripples(levels, features);
}

void put_band(const BandMotion& motion, Features& features) {
    features.put_all(motion.envelope);
    features.put_all(motion.likeness);
    features.put(motion.best_likeness);
    features.put(std::log2(std::max(1.0, motion.best_periods)) / 2.0);
    const auto& profile = motion.profile;
    features.put(std::log(std::max(profile.front(), 0.5)));
    for (std::size_t p = 2; p < profile.size(); p += 2)
        features.put(std::clamp(profile[p] / std::max(profile.front(), 0.5), -0.2, 1.0));
    // The greatest of the other peaks, and how much of the period lies under half the mean.
    double second = 0.0;
    for (std::size_t p = 1; p + 1 < profile.size(); ++p)
        if (profile[p] > profile[p - 1] && profile[p] >= profile[p + 1]) second = std::max(second, profile[p]);
    features.put(second / std::max(profile.front(), 0.5));
    const auto low = std::ranges::count_if(profile, [](double value) { return value < 0.5; });
    features.put(static_cast<double>(low) / BandMotion::phases);
}

}  // namespace

MotionFeatures motion_features(std::span<const double> samples, double sample_rate, const MotionContext& context) {
    const auto most = static_cast<std::size_t>(motion_time * sample_rate);
    Signal signal = decimated_for_analysis(samples.last(std::min(samples.size(), most)), sample_rate);
    Features features;
    if (signal.samples.size() < 64) return {};
    auto pitch = measure_fundamental(signal.samples, signal.sample_rate, wide);
    const bool may_stray = pitch && !context.still;
    if (auto still =
            may_stray ? steadied(signal.samples, signal.sample_rate, pitch->hz, still_cents) : std::vector<double>();
        !still.empty()) {
        signal.samples = std::move(still);
        pitch = measure_fundamental(signal.samples, signal.sample_rate, wide);
    }
    const MotionSpectrum spectrum(signal.samples, signal.sample_rate);
    const double measured = pitch ? pitch->hz : 100.0;
    const double hz = context.intended_hz > 0.0 ? spectrum.refined(context.intended_hz, least_known_cents)
                                                : spectrum.refined(measured, measured_cents);
    const double level = std::max(rms(signal.samples), 1e-12);
    features.put(context.noise > 0.0 ? std::min(3.0, db_from_ratio(level / context.noise) / 20.0) : 2.0);
    put_pitch(pitch, hz, context, features);
    put_waveform(signal.samples, features);
    put_shares(spectrum, hz, features);
    put_partials(spectrum, hz, features);
    for (const HzBand& band :
         {HzBand{0.5 * hz, 8.0 * hz}, HzBand{600.0, 2000.0}, HzBand{2000.0, 5000.0}, HzBand{5000.0, highest}})
        put_band(band_motion(spectrum, band, hz), features);
    return features.done();
}

}  // namespace analysis
