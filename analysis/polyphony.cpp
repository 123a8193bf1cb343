// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/polyphony.hpp"

#include "analysis/harmonic_fit.hpp"
#include "analysis/spectral_peaks.hpp"
#include "analysis/steadied.hpp"

#include <algorithm>
#include <numeric>

namespace analysis {
namespace {

constexpr double looked_at = 0.5;  // s
constexpr PitchRange range{35.0, 3000.0};
constexpr double highest_hz = 8000.0;
constexpr std::size_t most_lines = 24;
constexpr double line_error = 0.06;  // Hz s, over the duration
constexpr double still = 5e-4;       // share of the pitch: wavering less, lines aren't smeared
constexpr double least_gain = 6.0;   // nats
constexpr int least_lines = 3;       // of its own, that tell a tone
constexpr double least_share = 0.01;

/// Do the partials lie on the multiples of two numbers and hardly anywhere else?
bool are_two_tones(std::span<const Partial> partials, std::size_t low, std::size_t high) {
    constexpr double hardly = 0.002;
    constexpr double plainly = 0.03;
    constexpr std::size_t looked_through = 30;
    double of_low = 0.0, of_high = 0.0, of_none = 0.0, all = 0.0;
    for (std::size_t n = 1; n <= std::min(partials.size(), looked_through); ++n) {
        const double power = partials[n - 1].amplitude * partials[n - 1].amplitude;
        all += power;
        if (n % low != 0 && n % high != 0) of_none += power;
        if (n % low == 0 && n % high != 0) of_low += power;
        if (n % high == 0 && n % low != 0) of_high += power;
    }
    return partials.size() >= 2 * high && of_none < hardly * all && of_low > plainly * all && of_high > plainly * all;
}

/// One tone and two, as well as either explains the lines.
struct Fits {
    std::optional<HarmonicFit> one;
    std::optional<PairFit> two;

    double best() const { return std::max(one ? one->gain : 0.0, two ? two->gain : 0.0); }
};

Fits fits_of(std::span<const double> samples, double sample_rate) {
    const auto lines =
        spectral_peaks(samples, sample_rate, {.lowest_hz = range.lowest, .highest_hz = highest_hz, .most = most_lines});
    if (lines.empty()) return {};
    const double error = line_error * sample_rate / static_cast<double>(samples.size());
    const auto one = fit_fundamental(lines, error, range);
    if (!one) return {};
    return {one, fit_pair(lines, error, one->waver, range)};
}

}  // namespace

double second_tone_share(std::span<const double> samples, double sample_rate, double hz) {
    const auto wanted = std::min(samples.size(), static_cast<std::size_t>(looked_at * sample_rate));
    samples = samples.subspan((samples.size() - wanted) / 2, wanted);
    Fits fits = fits_of(samples, sample_rate);
    if (hz > 0.0 && fits.one && fits.one->waver > still) {
        // A pitch that wavers smears its lines; but following one that two tones pretend would smear theirs.
        const Fits steady = fits_of(steadied(samples, sample_rate, hz), sample_rate);
        if (steady.best() > fits.best()) fits = steady;
    }
    if (!fits.one || !fits.two || fits.two->gain < fits.one->gain + least_gain) return 0.0;
    return fits.two->lines >= least_lines && fits.two->share >= least_share ? fits.two->share : 0.0;
}

bool is_pure_interval(std::span<const Partial> partials) {
    constexpr std::size_t highest = 9;
    for (std::size_t low = 2; low < highest; ++low)
        for (std::size_t high = low + 1; high <= highest; ++high)
            if (std::gcd(low, high) == 1 && are_two_tones(partials, low, high)) return true;
    return false;
}

}  // namespace analysis
