// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/period_pair.hpp"

#include "analysis/level.hpp"
#include "analysis/partials.hpp"
#include "analysis/spectrum.hpp"
#include "sim/match/stroke_spectra.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace sim::match {
namespace {

using Sums = std::vector<std::complex<double>>;

constexpr std::size_t bins_a_partial = 32;
constexpr std::size_t partials_held = 2 * compared_partials;  // the response runs on level to here
constexpr double dwelt_on = 0.1;                              // s of the recording's middle

/// dB at a partial number that need not be whole.
double level_at(const BodyLevels& body, double number) {
    const auto above = std::ranges::lower_bound(body.numbers, number, {}, [](int n) { return static_cast<double>(n); });
    const auto k = static_cast<std::size_t>(above - body.numbers.begin());
    if (k == 0) return body.levels.front();
    if (k == body.numbers.size()) return body.levels.back();
    const double share = (number - body.numbers[k - 1]) / (body.numbers[k] - body.numbers[k - 1]);
    return body.levels[k - 1] + share * (body.levels[k] - body.levels[k - 1]);
}

Sums heard_sums(const NoteSamples& part, const analysis::Tone& tone) {
    const std::vector<double>& samples = part.signal.samples;
    const auto length = std::min(samples.size(), static_cast<std::size_t>(dwelt_on * part.signal.sample_rate));
    const auto middle = std::span(samples).subspan((samples.size() - length) / 2, length);
    return analysis::harmonic_sums(middle, part.signal.sample_rate, {tone.hz, compared_limit}).values;
}

Sums simulated_sums(const Note& note, const Stroke& stroke) {
    const Played played = play_recorded(note, stroke);
    if (!played.result.tone.pitch || played.record.diverged) return {};
    const auto heard = static_cast<std::size_t>(heard_for * played.result.sample_rate);
    const std::span<const double> force(played.record.bridge_force);
    return analysis::harmonic_sums(force.last(std::min(heard, force.size())), played.result.sample_rate,
                                   {*played.result.tone.pitch, compared_limit})
        .values;
}

/// The partials' sum over one period, shifted by a share of it, of RMS 1.
std::vector<double> period_of(const Sums& sums, std::span<const int> numbers, double shift) {
    std::vector<double> period(period_points);
    for (int j = 0; j < period_points; ++j)
        for (const int n : numbers) {
            const double turn = 2.0 * std::numbers::pi * n * (static_cast<double>(j) / period_points + shift);
            period[static_cast<std::size_t>(j)] +=
                (sums[static_cast<std::size_t>(n - 1)] * std::polar(1.0, turn)).real();
        }
    const double level = analysis::rms(period);
    for (double& value : period) value /= std::max(level, 1e-300);
    return period;
}

/// The shift (in points) at which two periods agree best, and the sign that the second needs.
struct Fit {
    int shift = 0;
    double sign = 1.0;
};
Fit best_fit(const std::vector<double>& fixed, const std::vector<double>& moved) {
    Fit fit;
    double most = 0.0;
    for (int shift = 0; shift < period_points; ++shift) {
        double sum = 0.0;
        for (int j = 0; j < period_points; ++j)
            sum += fixed[static_cast<std::size_t>(j)] * moved[static_cast<std::size_t>((j + shift) % period_points)];
        if (std::abs(sum) <= most) continue;
        most = std::abs(sum);
        fit = {.shift = shift, .sign = sum < 0.0 ? -1.0 : 1.0};
    }
    return fit;
}

}  // namespace

/// The phase of a minimum-phase response is the Hilbert transform of its log magnitude: by way of the cepstrum, whose
/// negative times are folded onto the positive ones.
std::vector<double> minimum_phases(const BodyLevels& body) {
    const std::size_t half = bins_a_partial * partials_held;
    std::vector<std::complex<double>> logs(half + 1);
    for (std::size_t k = 0; k <= half; ++k)
        logs[k] = level_at(body, static_cast<double>(k) / bins_a_partial) * std::numbers::ln10 / 20.0;
    std::vector<double> cepstrum = analysis::inverse_spectrum(logs, 2 * half);
    for (std::size_t j = 1; j < half; ++j) {
        cepstrum[j] *= 2.0;
        cepstrum[2 * half - j] = 0.0;
    }
    const auto folded = analysis::spectrum(cepstrum, 2 * half);
    std::vector<double> phases;
    for (const int n : body.numbers) phases.push_back(folded[static_cast<std::size_t>(n) * bins_a_partial].imag());
    return phases;
}

std::optional<PeriodPair> period_pair(const NoteSamples& part, const analysis::Tone& tone, const BodyLevels& body,
                                      const Note& note, const Stroke& stroke) {
    const Sums heard = heard_sums(part, tone);
    Sums simulated = simulated_sums(note, stroke);
    const auto needed = static_cast<std::size_t>(body.numbers.back());
    if (heard.size() < needed || simulated.size() < needed) return std::nullopt;
    const std::vector<double> phases = minimum_phases(body);
    for (std::size_t k = 0; k < phases.size(); ++k)
        simulated[static_cast<std::size_t>(body.numbers[k] - 1)] *=
            std::polar(std::pow(10.0, body.levels[k] / 20.0), phases[k]);
    PeriodPair pair{.heard = period_of(heard, body.numbers, 0.0), .simulated = {}};
    const Fit fit = best_fit(pair.heard, period_of(simulated, body.numbers, 0.0));
    pair.simulated = period_of(simulated, body.numbers, static_cast<double>(fit.shift) / period_points);
    for (double& value : pair.simulated) value *= fit.sign;
    return pair;
}

}  // namespace sim::match
