// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/string.hpp"

#include <cmath>
#include <numbers>

namespace sim {

double wave_speed(const String& string) { return std::sqrt(string.tension / string.mass_per_length); }

double wave_impedance(const String& string) { return std::sqrt(string.tension * string.mass_per_length); }

double fundamental(const String& string) { return wave_speed(string) / (2.0 * string.length); }

double inharmonicity(const String& string) {
    const double pi = std::numbers::pi;
    return pi * pi * string.bending_stiffness / (string.tension * string.length * string.length);
}

double partial_frequency(const String& string, double n) {
    return n * fundamental(string) * std::sqrt(1.0 + inharmonicity(string) * n * n);
}

double loss_factor(const String& string, double n) {
    const double omega = 2.0 * std::numbers::pi * partial_frequency(string, n);
    const double stiff_share = inharmonicity(string) * n * n;  // EI k^2 / T
    const Damping& d = string.damping;
    return (d.friction + d.air / omega + d.bending * stiff_share) / (1.0 + stiff_share);
}

String stopped(const String& open, double semitones) {
    String result = open;
    result.length = open.length * std::exp2(-semitones / 12.0);
    return result;
}

}  // namespace sim
