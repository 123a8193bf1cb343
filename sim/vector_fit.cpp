// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/vector_fit.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace sim {
namespace {

using Complex = std::complex<double>;
using Poles = std::vector<Complex>;  // real ones, and the upper one of each pair; scaled so that the highest w is 1

constexpr double start_damping = 0.01;  // of the frequency
constexpr double least_constant = 1e-8;

Poles start_poles(std::span<const FitPoint> points, int pairs) {
    const double high = points.back().omega;
    const double low = points.front().omega / high;
    Poles poles;
    for (int k = 0; k < pairs; ++k) {
        const double share = pairs > 1 ? static_cast<double>(k) / (pairs - 1) : 0.5;
        const double omega = std::pow(low, 1.0 - share);
        poles.emplace_back(-start_damping * omega, omega);
    }
    return poles;
}

bool is_pair(const Complex& pole) { return pole.imag() > 0.0; }

Eigen::Index columns_of(const Poles& poles) {
    Eigen::Index count = 0;
    for (const Complex& pole : poles) count += is_pair(pole) ? 2 : 1;
    return count;
}

/// The partial fractions at i w: real coefficients before them give a response that is real in time.
Eigen::VectorXcd fractions(const Poles& poles, double omega) {
    const Complex s(0.0, omega);
    const Complex i(0.0, 1.0);
    Eigen::VectorXcd row(columns_of(poles));
    Eigen::Index c = 0;
    for (const Complex& pole : poles) {
        const Complex first = 1.0 / (s - pole);
        if (!is_pair(pole)) {
            row(c++) = first;
            continue;
        }
        const Complex second = 1.0 / (s - std::conj(pole));
        row(c++) = first + second;
        row(c++) = i * first - i * second;
    }
    return row;
}

/// Least squares with columns of any size, some of which may depend on others.
Eigen::VectorXd solved(Eigen::MatrixXd a, const Eigen::VectorXd& b) {
    Eigen::VectorXd size = a.colwise().norm();
    for (Eigen::Index c = 0; c < size.size(); ++c)
        if (!(size(c) > 0.0)) size(c) = 1.0;
    for (Eigen::Index c = 0; c < a.cols(); ++c) a.col(c) /= size(c);
    const Eigen::HouseholderQR<Eigen::MatrixXd> tall(a);
    const Eigen::Index n = std::min(a.rows(), a.cols());
    const Eigen::MatrixXd triangle = tall.matrixQR().topRows(n).template triangularView<Eigen::Upper>().toDenseMatrix();
    const Eigen::VectorXd turned = (tall.householderQ().adjoint() * b).head(n);
    Eigen::ColPivHouseholderQR<Eigen::MatrixXd> small(triangle);
    small.setThreshold(1e-13);
    return small.solve(turned).cwiseQuotient(size);
}

/// The weight function: constant, then the numbers before its partial fractions.
struct Weight {
    double constant;
    Eigen::VectorXd residues;
};

Weight fitted_weight(std::span<const FitPoint> points, const Poles& poles) {
    const double high = points.back().omega;
    const Eigen::Index n = columns_of(poles);
    const auto m = static_cast<Eigen::Index>(points.size());
    Eigen::MatrixXd a(2 * m + 1,
                      2 * n + 3);  // fractions, constant and slope of Y; fractions and constant of the weight
    Eigen::VectorXd b = Eigen::VectorXd::Zero(2 * m + 1);
    Eigen::RowVectorXd sum = Eigen::RowVectorXd::Zero(n + 1);
    for (Eigen::Index r = 0; r < m; ++r) {
        const FitPoint& point = points[static_cast<std::size_t>(r)];
        const Eigen::VectorXcd row = fractions(poles, point.omega / high);
        Eigen::VectorXcd all(2 * n + 3);
        all << row, Complex(1.0, 0.0), Complex(0.0, point.omega / high), -point.y * row, -point.y;
        all *= point.weight;
        a.row(r) = all.real().transpose();
        a.row(m + r) = all.imag().transpose();
        sum.head(n) += row.real().transpose();
        sum(n) += 1.0;
    }
    // keeps the weight from vanishing: its mean real part is 1
    const double size = std::sqrt(1.0 / static_cast<double>(m));
    a.row(2 * m).setZero();
    a.row(2 * m).tail(n + 1) = size * sum / static_cast<double>(m);
    b(2 * m) = size;
    const Eigen::VectorXd x = solved(std::move(a), b);
    return {x(2 * n + 2), x.segment(n + 2, n)};
}

/// Zeros of the weight function, which become the poles.
Poles moved(const Poles& poles, Weight weight) {
    if (!(std::abs(weight.constant) > least_constant)) weight.constant = std::copysign(least_constant, weight.constant);
    const Eigen::Index n = columns_of(poles);
    Eigen::MatrixXd h = Eigen::MatrixXd::Zero(n, n);
    Eigen::VectorXd input = Eigen::VectorXd::Zero(n);
    Eigen::Index c = 0;
    for (const Complex& pole : poles) {
        h(c, c) = pole.real();
        input(c) = is_pair(pole) ? 2.0 : 1.0;
        if (is_pair(pole)) {
            h(c, c + 1) = pole.imag();
            h(c + 1, c) = -pole.imag();
            h(c + 1, c + 1) = pole.real();
        }
        c += is_pair(pole) ? 2 : 1;
    }
    h -= input * weight.residues.transpose() / weight.constant;
    const Eigen::VectorXcd zeros = Eigen::EigenSolver<Eigen::MatrixXd>(h, false).eigenvalues();
    Poles found;
    for (const Complex& zero : zeros) {
        if (!std::isfinite(std::abs(zero)) || zero.imag() < 0.0) continue;
        found.emplace_back(-std::max(std::abs(zero.real()), 1e-9), zero.imag());
    }
    return found;
}

}  // namespace

std::vector<Complex> vector_fit_poles(std::span<const FitPoint> points, int pairs, int rounds) {
    Poles poles = start_poles(points, pairs);
    for (int round = 0; round < rounds; ++round) {
        const Weight weight = fitted_weight(points, poles);
        if (!weight.residues.allFinite() || !std::isfinite(weight.constant)) break;
        Poles next = moved(poles, weight);
        if (next.empty()) break;
        poles = std::move(next);
    }
    for (Complex& pole : poles) pole *= points.back().omega;
    return poles;
}

}  // namespace sim
