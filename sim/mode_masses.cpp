// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/mode_polish.hpp"

#include <Eigen/Dense>

#include <algorithm>

namespace sim {
namespace {

using Index = Eigen::Index;

/// Normal equations of the masses' inverses, each column scaled to 1: gram x = right.
struct Normal {
    Eigen::MatrixXd gram;
    Eigen::VectorXd right;
    Eigen::VectorXd size;
};

Normal normal_equations(std::span<const FitPoint> points, std::span<const BridgeMode> modes) {
    const auto n = static_cast<Index>(modes.size());
    const auto m = static_cast<Index>(points.size());
    Eigen::MatrixXd a(2 * m, n);
    Eigen::VectorXd b(2 * m);
    for (Index r = 0; r < m; ++r) {
        const FitPoint& point = points[static_cast<std::size_t>(r)];
        for (Index c = 0; c < n; ++c) {
            BridgeMode unit = modes[static_cast<std::size_t>(c)];
            unit.mass = 1.0;
            const std::complex<double> y = point.weight * sum_of(std::span(&unit, 1), point.omega);
            a(r, c) = y.real();
            a(m + r, c) = y.imag();
        }
        b(r) = point.weight * point.y.real();
        b(m + r) = point.weight * point.y.imag();
    }
    Normal normal;
    normal.size = a.colwise().norm().cwiseMax(1e-300);
    for (Index c = 0; c < n; ++c) a.col(c) /= normal.size(c);
    normal.gram = a.transpose() * a;
    normal.right = a.transpose() * b;
    return normal;
}

std::vector<Index> held(const std::vector<bool>& in_use) {
    std::vector<Index> list;
    for (std::size_t i = 0; i < in_use.size(); ++i)
        if (in_use[i]) list.push_back(static_cast<Index>(i));
    return list;
}

/// The solution with only those in use, others 0.
Eigen::VectorXd solved(const Normal& normal, const std::vector<bool>& in_use) {
    const std::vector<Index> list = held(in_use);
    Eigen::VectorXd x = Eigen::VectorXd::Zero(normal.right.size());
    if (list.empty()) return x;
    Eigen::MatrixXd part = normal.gram(list, list);
    part.diagonal().array() += 1e-13;  // two modes alike share what they can't be told apart by
    const Eigen::VectorXd right = normal.right(list);
    const Eigen::VectorXd found = part.ldlt().solve(right);
    x(list) = found;
    return x;
}

/// Steps back from `wanted` to where the first of those in use reaches 0, and takes it out of use.
Eigen::VectorXd stepped(const Eigen::VectorXd& x, const Eigen::VectorXd& wanted, std::vector<bool>& in_use) {
    double share = 1.0;
    for (const Index i : held(in_use))
        if (wanted(i) <= 0.0) share = std::min(share, x(i) / std::max(x(i) - wanted(i), 1e-300));
    Eigen::VectorXd next = x + share * (wanted - x);
    for (const Index i : held(in_use)) {
        if (next(i) > 1e-12) continue;
        next(i) = 0.0;
        in_use[static_cast<std::size_t>(i)] = false;
    }
    return next;
}

Eigen::VectorXd non_negative(const Normal& normal) {
    const auto n = static_cast<std::size_t>(normal.right.size());
    std::vector<bool> in_use(n, false);
    Eigen::VectorXd x = Eigen::VectorXd::Zero(normal.right.size());
    const double tolerance = 1e-10 * normal.right.cwiseAbs().maxCoeff();
    for (std::size_t turn = 0; turn < 3 * n; ++turn) {
        const Eigen::VectorXd slope = normal.right - normal.gram * x;
        Index best = -1;
        for (std::size_t i = 0; i < n; ++i) {
            const auto at = static_cast<Index>(i);
            if (!in_use[i] && slope(at) > tolerance && (best < 0 || slope(at) > slope(best))) best = at;
        }
        if (best < 0) break;
        in_use[static_cast<std::size_t>(best)] = true;
        Eigen::VectorXd wanted = solved(normal, in_use);
        for (std::size_t k = 0; k < n && !held(in_use).empty(); ++k) {
            bool all_positive = true;
            for (const Index i : held(in_use)) all_positive = all_positive && wanted(i) > 0.0;
            if (all_positive) break;
            x = stepped(x, wanted, in_use);
            wanted = solved(normal, in_use);
        }
        x = wanted.cwiseMax(0.0);
    }
    return x;
}

}  // namespace

std::vector<BridgeMode> with_best_masses(std::span<const FitPoint> points, std::span<const BridgeMode> modes) {
    if (modes.empty()) return {};
    const Normal normal = normal_equations(points, modes);
    const Eigen::VectorXd x = non_negative(normal);
    std::vector<BridgeMode> found;
    for (std::size_t i = 0; i < modes.size(); ++i) {
        const auto at = static_cast<Index>(i);
        if (!(x(at) > 0.0)) continue;
        found.push_back(modes[i]);
        found.back().mass = normal.size(at) / x(at);
    }
    return found;
}

std::vector<double> costs_of_leaving_out(std::span<const FitPoint> points, std::span<const BridgeMode> modes) {
    Normal normal = normal_equations(points, modes);
    normal.gram.diagonal().array() += 1e-13;
    const Eigen::MatrixXd inverse =
        normal.gram.ldlt().solve(Eigen::MatrixXd::Identity(normal.gram.rows(), normal.gram.cols()));
    std::vector<double> costs;
    for (std::size_t i = 0; i < modes.size(); ++i) {
        const auto at = static_cast<Index>(i);
        const double x = normal.size(at) / modes[i].mass;
        costs.push_back(x * x / std::max(inverse(at, at), 1e-300));  // of a least-squares fit with x_i held at 0
    }
    return costs;
}

}  // namespace sim
