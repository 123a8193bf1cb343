// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/fit_points.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

namespace sim {
namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double relative_floor = 0.005;       // of |Y|: nobody measures better
constexpr std::ptrdiff_t magnitude_reach = 2;  // points
constexpr std::ptrdiff_t noise_reach = 15;     // points
constexpr double straight = 0.06;              // of the distance to the nearest pole

/// Mean over the points within `reach` of each.
std::vector<double> smoothed(const std::vector<double>& values, std::ptrdiff_t reach) {
    const auto count = static_cast<std::ptrdiff_t>(values.size());
    std::vector<double> sums(values.size() + 1, 0.0);
    for (std::size_t i = 0; i < values.size(); ++i) sums[i + 1] = sums[i] + values[i];
    std::vector<double> means;
    for (std::ptrdiff_t i = 0; i < count; ++i) {
        const std::ptrdiff_t from = std::max<std::ptrdiff_t>(i - reach, 0);
        const std::ptrdiff_t to = std::min(i + reach + 1, count);
        // the difference of two sums may come out below 0 by rounding
        means.push_back(std::max(0.0, (sums[to] - sums[from]) / static_cast<double>(to - from)));
    }
    return means;
}

std::vector<double> squares(const std::vector<FitPoint>& points) {
    std::vector<double> values;
    for (const FitPoint& point : points) values.push_back(std::norm(point.y));
    return values;
}

void weigh_by_magnitude(std::vector<FitPoint>& points) {
    const std::vector<double> size = smoothed(squares(points), magnitude_reach);
    for (std::size_t i = 0; i < points.size(); ++i)
        points[i].weight = size[i] > 0.0 ? std::sqrt(points[i].share / size[i]) : 0.0;
}

/// Neighbours put together as long as they stand within `room(omega)` (rad/s) of the first.
std::vector<FitPoint> grouped(const AdmittancePoints& given, const std::function<double(double)>& room) {
    const std::vector<double> widths = log_widths(given.hz);
    std::vector<FitPoint> points;
    double whole = 0.0;
    for (std::size_t i = 0; i < given.hz.size();) {
        const double first = two_pi * given.hz[i];
        const double limit = first + room(first);
        FitPoint point{};
        for (; i < given.hz.size() && (point.count == 0.0 || two_pi * given.hz[i] < limit); ++i) {
            point.omega += two_pi * given.hz[i];
            point.y += given.admittance[i];
            point.share += widths[i];
            point.count += 1.0;
        }
        point.omega /= point.count;
        point.y /= point.count;
        whole += point.share;
        points.push_back(point);
    }
    for (FitPoint& point : points) point.share /= whole;
    weigh_by_magnitude(points);
    return points;
}

}  // namespace

std::complex<double> sum_of(std::span<const BridgeMode> modes, double omega) {
    const std::complex<double> iw(0.0, omega);
    std::complex<double> sum = 0.0;
    for (const BridgeMode& mode : modes) {
        const double own = two_pi * mode.frequency;
        sum += iw / mode.mass / (own * own + iw * own / mode.q - omega * omega);
    }
    return sum;
}

std::vector<FitPoint> fit_points(const AdmittancePoints& points, double apart) {
    return grouped(points, [apart](double omega) { return apart * omega; });
}

std::vector<FitPoint> fit_points(const AdmittancePoints& points, std::span<const BridgeMode> modes) {
    return grouped(points, [modes](double omega) {
        double nearest = omega;
        for (const BridgeMode& mode : modes) {
            const double own = two_pi * mode.frequency;
            nearest = std::min(nearest, std::hypot(omega - own, own / (2.0 * mode.q)));
        }
        return straight * nearest;
    });
}

void weigh_by_noise(std::vector<FitPoint>& points, std::span<const BridgeMode> modes) {
    if (points.size() < 3) return;
    std::vector<std::complex<double>> off;
    for (const FitPoint& point : points) off.push_back(point.y - sum_of(modes, point.omega));
    std::vector<double> rough(points.size(), 0.0);
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
        const double t = (points[i].omega - points[i - 1].omega) / (points[i + 1].omega - points[i - 1].omega);
        const std::complex<double> line = (1.0 - t) * off[i - 1] + t * off[i + 1];
        // of one measured point: that of a mean of n is n times less
        const double parts =
            1.0 / points[i].count + t * t / points[i + 1].count + (1.0 - t) * (1.0 - t) / points[i - 1].count;
        rough[i] = std::norm(off[i] - line) / parts;
    }
    rough.front() = rough[1];
    rough.back() = rough[rough.size() - 2];
    const std::vector<double> noise = smoothed(rough, noise_reach);
    const std::vector<double> size = smoothed(squares(points), magnitude_reach);
    for (std::size_t i = 0; i < points.size(); ++i) {
        const double scale = relative_floor * relative_floor * size[i] + noise[i];
        points[i].weight = scale > 0.0 ? std::sqrt(points[i].share / scale) : 0.0;
    }
}

double misfit(std::span<const FitPoint> points, std::span<const BridgeMode> modes) {
    double sum = 0.0;
    for (const FitPoint& point : points)
        sum += point.weight * point.weight * std::norm(point.y - sum_of(modes, point.omega));
    return sum;
}

}  // namespace sim
