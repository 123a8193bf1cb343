// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <random>

namespace tests {

/// The same numbers wherever it runs.
class Dice {
public:
    Dice(std::uint32_t seed, std::uint32_t run) : engine_(seed * 1000003U + run) { engine_.discard(8); }

    double between(double low, double high) { return low + (high - low) * share(); }
    double by_ratio(double low, double high) { return low * std::pow(high / low, share()); }
    bool chance(double probability) { return share() < probability; }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(share() * static_cast<double>(count)); }
    double normal() {
        const double radius = std::sqrt(-2.0 * std::log(1.0 - share()));
        return radius * std::cos(2.0 * std::numbers::pi * share());
    }

private:
    double share() { return static_cast<double>(engine_()) / 4294967296.0; }
    std::mt19937 engine_;
};

}  // namespace tests
