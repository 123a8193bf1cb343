// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/vibrato.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tests {
namespace {

/// Cubic through the four samples around (Catmull-Rom); the ends held.
double between(const std::vector<double>& samples, double at) {
    const auto last = static_cast<double>(samples.size() - 1);
    const double whole = std::floor(at);
    const double x = at - whole;
    const auto sample = [&](double index) { return samples[static_cast<std::size_t>(std::clamp(index, 0.0, last))]; };
    const double a = sample(whole - 1.0);
    const double b = sample(whole);
    const double c = sample(whole + 1.0);
    const double d = sample(whole + 2.0);
    return b + 0.5 * x * (c - a + x * (2.0 * a - 5.0 * b + 4.0 * c - d + x * (3.0 * (b - c) + d - a)));
}

}  // namespace

analysis::Signal swayed(const analysis::Signal& sound, const Vibrato& vibrato) {
    if (sound.samples.empty()) return sound;
    analysis::Signal result{.samples = {}, .sample_rate = sound.sample_rate};
    result.samples.reserve(sound.samples.size());
    const double speed = 2.0 * std::numbers::pi * vibrato.hz / sound.sample_rate;
    const double reach = (std::exp2(vibrato.cents / 1200.0) - 1.0) / speed;  // samples
    for (std::size_t i = 0; i < sound.samples.size(); ++i) {
        const double at = static_cast<double>(i);
        const double angle = speed * at + 2.0 * std::numbers::pi * vibrato.turn;
        result.samples.push_back(between(sound.samples, at + reach * std::sin(angle)));
    }
    return result;
}

}  // namespace tests
