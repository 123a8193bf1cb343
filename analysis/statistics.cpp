// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/statistics.hpp"

#include "analysis/units.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace analysis {

double quantile(std::vector<double> values, double share) {
    if (values.empty()) return 0.0;
    std::ranges::sort(values);
    const double place = share * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(place);
    const std::size_t above = std::min(below + 1, values.size() - 1);
    return values[below] + (place - static_cast<double>(below)) * (values[above] - values[below]);
}

double stray_cents(const std::vector<double>& pitches_hz) {
    return 0.5 * cents_between(quantile(pitches_hz, 0.9), quantile(pitches_hz, 0.1));
}

}  // namespace analysis
