// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/loop_filter.hpp"

#include <Eigen/Core>
#include <unsupported/Eigen/LevenbergMarquardt>
#include <unsupported/Eigen/NumericalDiff>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <span>

namespace sim {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double highest_partial_hz = 8000.0;  // the range that the fit answers for
constexpr int highest_partial = 20;
constexpr double most_stretch = 0.1;              // B n^2
constexpr double loss_fit_top_hz = 40000.0;       // losses are followed with a small weight up to here
constexpr double least_corner_share = 0.05;       // of the first partial's frequency
constexpr double most_filter_delay_share = 0.42;  // of the period: the rest must reach past the bow
constexpr double good_loss_error = 0.03;          // of the loss: no further starts of the fit
constexpr double good_pitch_cents = 0.3;          // fewer sections are enough once the pitch is this good

using Residuals = std::function<void(const Eigen::VectorXd&, Eigen::VectorXd&)>;

struct Problem : Eigen::DenseFunctor<double> {
    Problem(int inputs, int values, Residuals f)
        : Eigen::DenseFunctor<double>(inputs, values), residuals(std::move(f)) {}
    int operator()(const Eigen::VectorXd& x, Eigen::VectorXd& r) const {
        residuals(x, r);
        return 0;
    }
    Residuals residuals;
};

void fit(Eigen::VectorXd& x, int values, const Residuals& residuals) {
    Problem problem(static_cast<int>(x.size()), values, residuals);
    Eigen::NumericalDiff<Problem> with_slopes(problem);
    Eigen::LevenbergMarquardt<Eigen::NumericalDiff<Problem>> solver(with_slopes);
    solver.setMaxfev(60 * static_cast<int>(x.size()));
    solver.minimize(x);
}

/// A frequency, the gain of a round trip wanted there, and how much the fit should care.
struct GainPoint {
    double omega;
    double gain;
    double weight;
};

std::complex<double> loss_at(std::span<const LossSection> losses, double omega) {
    return loss_response(losses, {0.0, omega});
}

/// Shares as exp(p)/(1 + sum exp(p)): positive, and their sum stays below 1, which keeps the filter passive.
///
/// Corners stay above `least_corner`: one that the fit pushed to 0 Hz would take its share from slow motion too, and
/// let the string creep.
std::vector<LossSection> losses_from(const Eigen::VectorXd& x, double least_corner) {
    const Eigen::Index count = x.size() / 2;
    double total = 1.0;
    for (Eigen::Index k = 0; k < count; ++k) total += std::exp(x[k]);
    std::vector<LossSection> losses;
    for (Eigen::Index k = 0; k < count; ++k)
        losses.push_back({.corner = least_corner + std::exp(x[count + k]), .share = std::exp(x[k]) / total});
    return losses;
}

using GainResiduals = std::function<void(const Eigen::VectorXd&, Eigen::VectorXd&)>;

/// Corners spread evenly in ratio up to `high`, shares growing with them as `rise` says.
Eigen::VectorXd first_guess(std::span<const GainPoint> points, int sections, double high, double rise) {
    const double low = points.front().omega * 0.5;
    Eigen::VectorXd x(2 * sections);
    for (int k = 0; k < sections; ++k) {
        x[k] = std::log((1.0 - points.front().gain) * std::pow(k + 1.0, rise));
        x[sections + k] = std::log(low) + std::log(high / low) * k / std::max(1, sections - 1);
    }
    return x;
}

/// The fit may end in a side valley, so it starts from several places; the smallest greatest error wins.
std::vector<LossSection> fit_losses(std::span<const GainPoint> points, int sections) {
    const double least_corner = points.front().omega * least_corner_share;
    const GainResiduals residuals = [&](const Eigen::VectorXd& now, Eigen::VectorXd& r) {
        const std::vector<LossSection> losses = losses_from(now, least_corner);
        for (std::size_t i = 0; i < points.size(); ++i) {
            const GainPoint& p = points[i];
            r[static_cast<Eigen::Index>(i)] = p.weight * (std::abs(loss_at(losses, p.omega)) - p.gain) / (1.0 - p.gain);
        }
    };
    Eigen::VectorXd best;
    Eigen::VectorXd error(static_cast<Eigen::Index>(points.size()));
    double least_error = 1e300;
    for (const double high : {2.0 * pi * loss_fit_top_hz, points.back().omega / 4.0, points.back().omega / 16.0})
        for (const double rise : {1.0, 3.0}) {
            Eigen::VectorXd x = first_guess(points, sections, high, rise);
            fit(x, static_cast<int>(points.size()), residuals);
            residuals(x, error);
            const double worst = error.cwiseAbs().maxCoeff();
            if (worst < least_error) {
                least_error = worst;
                best = x;
            }
            if (least_error < good_loss_error) return losses_from(best, least_corner);
        }
    return losses_from(best, least_corner);
}

/// Partials that the fit answers for.
int answered_partials(const String& string) {
    const double stretch = inharmonicity(string);
    int n = 1;
    while (n < highest_partial && stretch * (n + 1) * (n + 1) <= most_stretch &&
           partial_frequency(string, n + 1) <= highest_partial_hz)
        ++n;
    return n;
}

/// exp(-w tau_g / (2 Q)): tau_g is the round trip's group delay, because that is how long a decaying partial takes.
double wanted_gain(const String& string, double n) {
    const double stretch = inharmonicity(string) * n * n;
    const double slope = fundamental(string) * (1.0 + 2.0 * stretch) / std::sqrt(1.0 + stretch);  // df/dn
    return std::exp(-pi * partial_frequency(string, n) / slope * loss_factor(string, n));
}

std::vector<GainPoint> gain_points(const String& string) {
    std::vector<GainPoint> points;
    const int answered = answered_partials(string);
    for (int n = 1; n <= answered; ++n)
        points.push_back({2.0 * pi * partial_frequency(string, n), wanted_gain(string, n), 1.0});
    double n = answered;
    while (partial_frequency(string, n *= 1.25) < loss_fit_top_hz)
        points.push_back({2.0 * pi * partial_frequency(string, n), wanted_gain(string, n), 0.15});
    while (points.size() < 12) {  // very high notes: points between the partials keep the fit determined
        const double last = points.back().omega;
        points.push_back({last * 1.1, points.back().gain, 0.02});
    }
    return points;
}

double dispersion_phase(const Dispersion& d, double omega) {
    const double x = omega / d.omega;
    return d.sections == 0 ? 0.0 : 2.0 * d.sections * std::atan2(2.0 * d.damping * x, 1.0 - x * x);
}

struct PhaseFit {
    Dispersion dispersion;
    double plain_delay = 0.0;
    double worst_cents = 0.0;
};

/// Phase of the round trip at partial n must be 2 pi n.  Unknown: the plain delay and the sections' pole.
PhaseFit fit_phase(const String& string, std::span<const LossSection> losses, int sections) {
    const int partials = answered_partials(string);
    const double period = 1.0 / fundamental(string);
    const double share = 0.05 * sections;  // first guess of the delay that the sections hold
    Eigen::VectorXd x(sections > 0 ? 3 : 1);
    x[0] = 1.0 - share;
    if (sections > 0) {
        x[1] = std::log(4.0 * sections / (share * period));
        x[2] = std::log(0.96);
    }
    const auto read = [&](const Eigen::VectorXd& now) {
        PhaseFit fit{.plain_delay = now[0] * period};
        if (sections > 0) fit.dispersion = {sections, std::exp(now[1]), std::exp(now[2])};
        return fit;
    };
    const auto residuals = [&](const Eigen::VectorXd& now, Eigen::VectorXd& r) {
        const PhaseFit fit = read(now);
        r.setZero();
        for (int n = 1; n <= partials; ++n) {
            const double omega = 2.0 * pi * partial_frequency(string, n);
            const double phase =
                omega * fit.plain_delay + dispersion_phase(fit.dispersion, omega) - std::arg(loss_at(losses, omega));
            r[n - 1] = 1200.0 / std::numbers::ln2 * (phase / (2.0 * pi * n) - 1.0);
        }
    };
    Eigen::VectorXd last(std::max<int>(partials, static_cast<int>(x.size())));
    fit(x, static_cast<int>(last.size()), residuals);
    residuals(x, last);
    PhaseFit result = read(x);
    result.worst_cents = last.cwiseAbs().maxCoeff();
    return result;
}

PhaseFit best_phase(const String& string, std::span<const LossSection> losses) {
    const double period = 1.0 / fundamental(string);
    PhaseFit best = fit_phase(string, losses, 0);
    for (int sections = 1; sections <= 8 && best.worst_cents > good_pitch_cents; ++sections) {
        const PhaseFit now = fit_phase(string, losses, sections);
        const bool fits = now.plain_delay >= (1.0 - most_filter_delay_share) * period;
        if (fits && now.worst_cents < best.worst_cents) best = now;
    }
    return best;
}

/// Losses alone, for a twisting string: gain exp(-pi n / q) at n / period, three sections.
std::vector<LossSection> constant_q_losses(double period, double q) {
    std::vector<GainPoint> points;
    for (double n = 1.0; n < 30.0; n *= 1.25) points.push_back({2.0 * pi * n / period, std::exp(-pi * n / q), 1.0 / n});
    return fit_losses(points, 3);
}

/// A soft pad, spring k and damper r, on a string of impedance Z: it turns a wave round with
/// 1 - (2 Z/(r + Z)) s / (s + k/(r + Z)), which is one loss section exactly.
///
/// With the corner at twice the fundamental the first four partials lose alike (their Q within 14 % of the mean), and
/// the upper ones run into the pad's damper; the share is set so that the mean Q is the one asked for.
std::vector<LossSection> pad_losses(double first_partial_omega, double q) {
    const double corner = 2.0 * first_partial_omega;
    double per_share = 0.0;
    for (double n = 1.0; n <= 4.0; n += 1.0) {
        const double omega = n * first_partial_omega;
        per_share += 0.25 / n * omega * omega / (omega * omega + corner * corner);
    }
    return {{.corner = corner, .share = std::min(pi / q / per_share, 0.99)}};
}

/// How much earlier the losses bring a wave of angular frequency omega back, s.
double hurry(std::span<const LossSection> losses, double omega) { return std::arg(loss_at(losses, omega)) / omega; }

}  // namespace

std::complex<double> loss_response(std::span<const LossSection> losses, std::complex<double> s) {
    std::complex<double> sum = 1.0;
    for (const LossSection& section : losses) sum -= section.share * s / (s + section.corner);
    return sum;
}

std::complex<double> loop_response(const LoopFilter& filter, double omega) {
    const double phase = omega * filter.plain_delay + dispersion_phase(filter.dispersion, omega);
    return loss_at(filter.losses, omega) * loss_at(filter.end_losses, omega) * std::polar(1.0, -phase);
}

LoopFilter design_transverse_loop(const String& string, double end_q) {
    LoopFilter filter;
    const Damping& d = string.damping;
    if (d.friction > 0.0 || d.air > 0.0 || d.bending > 0.0) filter.losses = fit_losses(gain_points(string), 5);
    const PhaseFit phase = best_phase(string, filter.losses);
    filter.dispersion = phase.dispersion;
    filter.plain_delay = phase.plain_delay;
    if (end_q > 0.0) {
        const double omega = 2.0 * pi * partial_frequency(string, 1.0);
        filter.end_losses = pad_losses(omega, end_q);
        filter.plain_delay += hurry(filter.end_losses, omega);
    }
    return filter;
}

LoopFilter design_torsional_loop(const String& string) {
    LoopFilter filter;
    filter.plain_delay = 2.0 * string.length / string.torsion_speed;
    if (string.damping.torsion_q <= 0.0) return filter;
    filter.losses = constant_q_losses(filter.plain_delay, string.damping.torsion_q);
    filter.plain_delay += hurry(filter.losses, 2.0 * pi / filter.plain_delay);
    return filter;
}

}  // namespace sim
