// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/pitch.hpp"

#include "analysis/decimate.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <functional>
#include <numbers>
#include <utility>
#include <vector>

namespace analysis {
namespace {

constexpr int reach = 16;                // samples either side used to interpolate
constexpr double nearly_as_high = 0.95;  // of the highest peak: then the shorter period wins
constexpr double still_periodic = 0.5;   // of the first peak: under it a longer lag says nothing

constexpr double taper_step = 0.5 * std::numbers::pi / reach;  // radians a sample

/// Cosine and sine of taper_step k, k = 1 - reach … reach.
struct TaperParts {
    std::array<double, 2 * reach> cosine{};
    std::array<double, 2 * reach> sine{};
};
const TaperParts& taper_parts() {
    static const TaperParts parts = [] {
        TaperParts made;
        for (std::size_t i = 0; i < made.cosine.size(); ++i) {
            made.cosine[i] = std::cos(taper_step * (static_cast<int>(i) + 1 - reach));
            made.sine[i] = std::sin(taper_step * (static_cast<int>(i) + 1 - reach));
        }
        return made;
    }();
    return parts;
}

struct Peak {
    double lag = 0.0;     // samples
    double height = 0.0;  // r there
};

/// d(t) = sum_j (x_j - x_(j+t))² and m(t) = sum_j (x_j² + x_(j+t)²), and r = 1 - d/m, at and between whole lags.
class Periodicity {
public:
    /// `x` holds more than max_lag + reach samples.
    Periodicity(std::span<const double> x, std::size_t max_lag) {
        difference_ = autocorrelation(x, max_lag + reach);
        power_.resize(difference_.size());
        double energy = 2.0 * difference_[0];
        for (std::size_t t = 0; t < power_.size(); ++t) {
            power_[t] = energy;
            difference_[t] = energy - 2.0 * difference_[t];
            energy -= x[t] * x[t] + x[x.size() - 1 - t] * x[x.size() - 1 - t];
        }
    }

    double at(std::size_t lag) const { return power_[lag] > 0.0 ? 1.0 - difference_[lag] / power_[lag] : 0.0; }

    /// The peak around whole lag `lag`, to a thousandth of a sample.
    Peak refined(std::size_t lag) const {
        constexpr double golden = 1.0 / std::numbers::phi;
        double low = static_cast<double>(lag) - 1.0;
        double high = static_cast<double>(lag) + 1.0;
        double a = high - golden * (high - low);
        double b = low + golden * (high - low);
        double at_a = interpolated(a);
        double at_b = interpolated(b);
        while (high - low > 0.02) {
            if (at_a > at_b) {
                high = std::exchange(b, a);
                a = high - golden * (high - low);
                at_b = std::exchange(at_a, interpolated(a));
            } else {
                low = std::exchange(a, b);
                b = low + golden * (high - low);
                at_a = std::exchange(at_b, interpolated(b));
            }
        }
        // Vertex of the parabola through three points around what the search found.
        const double middle = 0.5 * (low + high);
        const double width = 0.05;
        const double before = interpolated(middle - width);
        const double here = interpolated(middle);
        const double after = interpolated(middle + width);
        const double bend = before - 2.0 * here + after;
        const double shift = bend < 0.0 ? std::clamp(0.5 * (before - after) / bend, -1.0, 1.0) : 0.0;
        const double peak = middle + shift * width;
        return {peak, std::max(here, interpolated(peak))};
    }

private:
    /// r between samples.  Windowed sinc on the difference, which is band-limited as the signal is; the power changes
    /// slowly and weighs little where the difference is small.
    double interpolated(double lag) const {
        const double floor = std::floor(lag);
        const double part = lag - floor;
        const auto base = static_cast<std::ptrdiff_t>(floor);
        const double power = power_at(base) + part * (power_at(base + 1) - power_at(base));
        if (part == 0.0) return 1.0 - difference_at(base) / power;
        // The taper's cosine at part - k, from those of its parts: this is called often.
        const double angle = taper_step * part;  // under 0.1: three terms are exact to 1e-10
        const double square = angle * angle;
        const double along = 1.0 - square / 2.0 + square * square / 24.0;
        const double across = angle * (1.0 - square / 6.0 + square * square / 120.0);
        double sum = 0.0;
        double weight = 0.0;
        for (int k = 1 - reach; k <= reach; ++k) {
            const auto i = static_cast<std::size_t>(k + reach - 1);
            const double taper = along * taper_parts().cosine[i] + across * taper_parts().sine[i];
            const double kernel = (k % 2 == 0 ? 1.0 : -1.0) * taper * taper / (part - k);  // sin(pi part) cancels
            sum += kernel * difference_at(base + k);
            weight += kernel;
        }
        return 1.0 - sum / weight / power;
    }

    double difference_at(std::ptrdiff_t lag) const { return difference_[index(lag)]; }
    double power_at(std::ptrdiff_t lag) const { return power_[index(lag)]; }
    std::size_t index(std::ptrdiff_t lag) const {
        return std::min(static_cast<std::size_t>(lag < 0 ? -lag : lag), difference_.size() - 1);
    }

    std::vector<double> difference_;
    std::vector<double> power_;
};

struct LagRange {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// Share of what repeats exactly, in dB against the rest.
double decibels_of_share(double share) {
    const double db = 10.0 * std::log10(std::max(share, 1e-7) / std::max(1.0 - share, 1e-7));
    return std::clamp(db, -most_clarity_db, most_clarity_db);
}

/// A whole lag where r is highest among its neighbours, and the vertex of the parabola through them.
struct Top {
    std::size_t lag = 0;
    double vertex = 0.0;
};

std::vector<Top> tops_of(const Periodicity& r, const LagRange& lags) {
    double highest = 0.0;
    for (std::size_t t = lags.first; t <= lags.last; ++t) highest = std::max(highest, r.at(t));
    std::vector<Top> tops;
    for (std::size_t t = lags.first; t <= lags.last; ++t) {
        const double before = r.at(t - 1);
        const double here = r.at(t);
        const double after = r.at(t + 1);
        // A peak between two samples may stand well above both.
        if (here < before || here < after || here <= 0.5 * highest) continue;
        const double bend = before - 2.0 * here + after;
        tops.push_back({t, bend < 0.0 ? here - 0.125 * (after - before) * (after - before) / bend : here});
    }
    return tops;
}

/// The shortest period whose peak is about as high as any in the range.  Peaks are worked out exactly, which is dear,
/// only where their parabola says that they may matter.
std::optional<Peak> first_peak(const Periodicity& r, const LagRange& lags) {
    constexpr std::size_t likely = 3;   // of the highest parabolas one is the highest peak, or as good as it
    constexpr double may_matter = 0.8;  // of the highest parabola
    std::vector<Top> tops = tops_of(r, lags);
    std::vector<Top> by_height = tops;
    std::ranges::stable_sort(by_height, std::ranges::greater{}, &Top::vertex);
    double best = 0.0;
    for (std::size_t i = 0; i < std::min(likely, by_height.size()); ++i)
        best = std::max(best, r.refined(by_height[i].lag).height);
    for (const Top& top : tops) {
        if (top.vertex < may_matter * by_height.front().vertex) continue;
        const Peak peak = r.refined(top.lag);
        if (peak.height > 0.0 && peak.height >= nearly_as_high * best) return peak;
    }
    return std::nullopt;
}

/// p of the header at a peak.
double repeating_share(const Periodicity& r, const Peak& peak) {
    const auto period = static_cast<std::size_t>(std::lround(peak.lag));
    double sum = 0.0;
    for (std::size_t t = 1; t <= period; ++t) sum += r.at(t);
    const double drift = std::clamp(sum / static_cast<double>(period), 0.0, 1.0 - 1e-12);
    return std::clamp((peak.height - drift) / (1.0 - drift), 0.0, 1.0);
}

/// The greatest p at any whole lag.
double greatest_share(const Periodicity& r, const LagRange& lags) {
    double greatest = 0.0;
    for (std::size_t t = lags.first; t <= lags.last; ++t)
        greatest = std::max(greatest, repeating_share(r, {.lag = static_cast<double>(t), .height = r.at(t)}));
    return greatest;
}

/// Follows the first peak to its multiples, up to `max_lag`: many periods at once give one period more exactly.
double followed_period(const Periodicity& r, const Peak& first, std::size_t max_lag) {
    double period = first.lag;
    double periods = 1.0;
    while (true) {
        const double next = std::min(2.0 * periods, std::floor(static_cast<double>(max_lag) / period));
        if (next <= periods) return period;
        const double radius = std::max(2.0, 0.12 * period);
        const auto low = static_cast<std::size_t>(std::max(1.0, std::floor(next * period - radius)));
        const auto high = std::min(max_lag, static_cast<std::size_t>(std::ceil(next * period + radius)));
        std::size_t top = low;
        for (std::size_t t = low; t <= high; ++t) {
            if (r.at(t) > r.at(top)) top = t;
        }
        if (top == low || (top == high && high < max_lag)) return period;
        const Peak peak = r.refined(top);
        if (peak.height < still_periodic * first.height) return period;
        period = peak.lag / next;
        periods = next;
    }
}

/// Takes the mean away; false if nothing but rounding is left, or what is there is not finite.
bool remove_mean(std::vector<double>& samples) {
    double sum = 0.0;
    double before = 0.0;
    double after = 0.0;
    for (const double sample : samples) sum += sample;
    const double mean = sum / static_cast<double>(samples.size());
    for (double& sample : samples) {
        before += sample * sample;
        sample -= mean;
        after += sample * sample;
    }
    return std::isfinite(after) && after > 1e-20 * before;
}

/// A signal made ready, and the lags where its period may lie.
struct Search {
    double sample_rate;  // Hz, worked at
    Periodicity periodicity;
    LagRange lags;
    std::size_t max_lag;
};

/// Nothing for silence, for what is not finite, and for under two periods.
std::optional<Search> searched(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    assert(sample_rate > 0.0 && range.lowest > 0.0 && range.lowest < range.highest);
    Signal signal = decimated_for_analysis(samples, sample_rate);
    const std::size_t count = signal.samples.size();
    if (count < 2 * reach + 4 || !remove_mean(signal.samples)) return std::nullopt;
    const std::size_t max_lag = std::min(count / 2, count - reach - 2);
    const double shortest = std::max(2.0, std::floor(signal.sample_rate / range.highest));
    const double longest = std::min(static_cast<double>(max_lag - 1), std::ceil(signal.sample_rate / range.lowest));
    if (shortest > longest) return std::nullopt;
    return Search{signal.sample_rate,
                  Periodicity(signal.samples, max_lag),
                  {static_cast<std::size_t>(shortest), static_cast<std::size_t>(longest)},
                  max_lag};
}

}  // namespace

PitchRange pitch_range_around(double expected_hz, int semitones) {
    const double ratio = ratio_from_semitones(semitones);
    return {expected_hz / ratio, expected_hz * ratio};
}

std::optional<Pitch> measure_pitch(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    const std::optional<Search> search = searched(samples, sample_rate, range);
    if (!search) return std::nullopt;
    const std::optional<Peak> peak = first_peak(search->periodicity, search->lags);
    if (!peak) return std::nullopt;
    const double period = followed_period(search->periodicity, *peak, search->max_lag);
    return Pitch{search->sample_rate / period, std::clamp(peak->height, 0.0, 1.0),
                 decibels_of_share(repeating_share(search->periodicity, *peak))};
}

double measure_clarity(std::span<const double> samples, double sample_rate, const PitchRange& range) {
    const std::optional<Search> search = searched(samples, sample_rate, range);
    if (!search) return -most_clarity_db;
    const std::optional<Peak> peak = first_peak(search->periodicity, search->lags);
    return decibels_of_share(peak ? repeating_share(search->periodicity, *peak)
                                  : greatest_share(search->periodicity, search->lags));
}

}  // namespace analysis
