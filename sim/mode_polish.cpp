// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/mode_polish.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim {
namespace {

using Index = Eigen::Index;

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double longest_step = 0.5;  // in the logarithm of any number
constexpr double greatest_damping = 1e10;

/// Gauss-Newton equations: `curve` step = `pull`.
struct Equations {
    Eigen::MatrixXd curve;
    Eigen::VectorXd pull;
};

/// Derivatives of a mode's admittance by the logarithms of its frequency, its Q and its mass.
struct Slopes {
    std::complex<double> frequency;
    std::complex<double> q;
    std::complex<double> mass;
};

Slopes slopes_of(const BridgeMode& mode, double omega) {
    const double own = two_pi * mode.frequency;
    const std::complex<double> iw(0.0, omega);
    const std::complex<double> loss = iw * own / mode.q;
    const std::complex<double> below = own * own + loss - omega * omega;
    const std::complex<double> y = iw / mode.mass / below;
    return {-y * (2.0 * own * own + loss) / below, y * loss / below, -y};
}

Equations equations_of(std::span<const FitPoint> points, std::span<const BridgeMode> modes) {
    const auto m = static_cast<Index>(points.size());
    Eigen::MatrixXd jacobian(2 * m, 3 * static_cast<Index>(modes.size()));
    Eigen::VectorXd off(2 * m);
    for (Index r = 0; r < m; ++r) {
        const FitPoint& point = points[static_cast<std::size_t>(r)];
        const std::complex<double> miss = point.weight * (point.y - sum_of(modes, point.omega));
        off(r) = miss.real();
        off(m + r) = miss.imag();
        Index c = 0;
        for (const BridgeMode& mode : modes) {
            const Slopes slopes = slopes_of(mode, point.omega);
            for (const std::complex<double>& slope : {slopes.frequency, slopes.q, slopes.mass}) {
                jacobian(r, c) = point.weight * slope.real();
                jacobian(m + r, c) = point.weight * slope.imag();
                ++c;
            }
        }
    }
    Equations equations;
    equations.curve = Eigen::MatrixXd::Zero(jacobian.cols(), jacobian.cols());
    equations.curve.selfadjointView<Eigen::Lower>().rankUpdate(jacobian.transpose());
    equations.curve.triangularView<Eigen::StrictlyUpper>() = equations.curve.transpose();
    equations.pull = jacobian.transpose() * off;
    return equations;
}

std::vector<BridgeMode> stepped(std::vector<BridgeMode> modes, const Eigen::VectorXd& step, const ModeLimits& limits) {
    const auto factor = [&](Index i) { return std::exp(std::clamp(step(i), -longest_step, longest_step)); };
    for (std::size_t k = 0; k < modes.size(); ++k) {
        const auto i = 3 * static_cast<Index>(k);
        BridgeMode& mode = modes[k];
        mode.frequency = std::clamp(mode.frequency * factor(i), limits.hz_low, limits.hz_high);
        const bool inside = mode.frequency >= limits.range_low && mode.frequency <= limits.range_high;
        mode.q = std::clamp(mode.q * factor(i + 1), limits.q_low, inside ? limits.q_high : limits.q_beyond);
        mode.mass = mode.mass * factor(i + 2);
    }
    return modes;
}

}  // namespace

std::vector<BridgeMode> polished(std::span<const FitPoint> points, std::vector<BridgeMode> modes,
                                 const ModeLimits& limits, const PolishEnd& end) {
    if (modes.empty()) return modes;
    double damping = 1e-3;
    double now = misfit(points, modes);
    for (int step = 0; step < end.most_steps; ++step) {
        const Equations equations = equations_of(points, modes);
        const double before = now;
        while (damping < greatest_damping) {
            Eigen::MatrixXd curve = equations.curve;
            curve.diagonal() += damping * equations.curve.diagonal().cwiseMax(1e-12 * curve.diagonal().maxCoeff());
            std::vector<BridgeMode> next = stepped(modes, curve.ldlt().solve(equations.pull), limits);
            const double there = misfit(points, next);
            if (there < now) {
                modes = std::move(next);
                now = there;
                damping = std::max(damping / 5.0, 1e-9);
                break;
            }
            damping *= 4.0;
        }
        if (!(before - now > end.settled * before)) break;
    }
    return modes;
}

}  // namespace sim
