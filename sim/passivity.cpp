// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/passivity.hpp"

#include <algorithm>
#include <cmath>

namespace sim {
namespace {

constexpr double quarter_tone = 0.03;
constexpr std::ptrdiff_t scatter_reach = 20;  // points to either side
constexpr double sure = 4.0;                  // standard deviations
constexpr double mad_to_deviation = 1.4826;   // median of |x| of a normal variable to its standard deviation

/// Distance of each point's Re Y from the line between its neighbours, scaled to have the scatter of Re Y itself.
std::vector<double> roughness(const AdmittancePoints& points) {
    const std::size_t count = points.hz.size();
    std::vector<double> rough(count, 0.0);
    for (std::size_t i = 1; i + 1 < count; ++i) {
        const double t = (points.hz[i] - points.hz[i - 1]) / (points.hz[i + 1] - points.hz[i - 1]);
        const double line = (1.0 - t) * points.admittance[i - 1].real() + t * points.admittance[i + 1].real();
        rough[i] = std::abs(points.admittance[i].real() - line) / std::sqrt(1.0 + t * t + (1.0 - t) * (1.0 - t));
    }
    return rough;
}

/// Scatter of Re Y about `i`; the median, so that a narrow mode is not taken for noise.
double scatter(const std::vector<double>& rough, std::ptrdiff_t i) {
    const auto count = static_cast<std::ptrdiff_t>(rough.size());
    const std::ptrdiff_t from = std::clamp<std::ptrdiff_t>(i - scatter_reach, 0, count - 1);
    const std::ptrdiff_t to = std::min(i + scatter_reach + 1, count);
    std::vector<double> near(rough.begin() + from, rough.begin() + to);
    const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
    std::nth_element(near.begin(), middle, near.end());
    return mad_to_deviation * *middle;
}

struct Run {
    std::size_t from;
    std::size_t to;  ///< one past
};

std::optional<Passivity::Breach> breach_of(const AdmittancePoints& points, const std::vector<double>& rough,
                                           const Run& run) {
    double real = 0.0;
    double magnitude = 0.0;
    for (std::size_t i = run.from; i < run.to; ++i) {
        real += points.admittance[i].real();
        magnitude += std::abs(points.admittance[i]);
    }
    if (!(real < -tolerated_real_share * magnitude)) return std::nullopt;
    const std::size_t middle = (run.from + run.to) / 2;
    const double chance =
        sure * scatter(rough, static_cast<std::ptrdiff_t>(middle)) * std::sqrt(static_cast<double>(run.to - run.from));
    if (!(real < -chance)) return std::nullopt;
    return Passivity::Breach{points.hz[middle], real / magnitude};
}

}  // namespace

std::vector<double> log_widths(std::span<const double> hz) {
    std::vector<double> widths(hz.size(), quarter_tone);
    for (std::size_t i = 0; i < hz.size(); ++i) {
        const double low = hz[i > 0 ? i - 1 : i];
        const double high = hz[i + 1 < hz.size() ? i + 1 : i];
        const bool end = i == 0 || i + 1 == hz.size();
        widths[i] = std::min(std::log(high / low) / (end ? 1.0 : 2.0), quarter_tone);
    }
    return widths;
}

Passivity passivity(const AdmittancePoints& points) {
    const std::size_t count = points.hz.size();
    const std::vector<double> widths = log_widths(points.hz);
    const std::vector<double> rough = roughness(points);
    Passivity found;
    double whole = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        whole += widths[i];
        const double magnitude = std::abs(points.admittance[i]);
        const double share = magnitude > 0.0 ? points.admittance[i].real() / magnitude : 0.0;
        found.worst_share = std::min(found.worst_share, share);
        if (share < -tolerated_real_share) found.noise_share += widths[i];
    }
    if (whole > 0.0) found.noise_share /= whole;
    // runs of twice the length cover each other by half
    for (const std::size_t least : {std::size_t{3}, std::size_t{8}}) {
        std::size_t to = 0;
        for (std::size_t from = 0; from + least <= count; from += std::max<std::size_t>(1, (to - from) / 2)) {
            to = std::max(from + least, to);
            while (to < count && points.hz[to] < points.hz[from] * (1.0 + quarter_tone)) ++to;
            const auto breach = breach_of(points, rough, {from, to});
            if (breach && (!found.breach || breach->real_share < found.breach->real_share)) found.breach = breach;
        }
    }
    return found;
}

bool is_passive(const Passivity& passivity) {
    return !passivity.breach && passivity.noise_share <= tolerated_noise_share;
}

}  // namespace sim
