// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/ring.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace sim {
namespace {

using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;
constexpr int growth_steps = 40;                  // of the bridge's admittance, from a rigid end
constexpr double least_decay = 1e-9;              // of the angular frequency: less is rounding
constexpr double fall_60_db = 6.907755278982137;  // ln 1000

Complex dispersion_at(const Dispersion& d, Complex s) {
    if (d.sections == 0) return 1.0;
    const Complex even = s * s + d.omega * d.omega;
    const Complex odd = 2.0 * d.damping * d.omega * s;
    return std::pow((even - odd) / (even + odd), d.sections);
}

/// What a wave has become after one round trip; 1 at a pole.  `share` of the bridge's admittance is in force.
Complex round_trip(const Note& note, Complex s, double share) {
    const LoopFilter& loop = note.transverse;
    const Complex z0y = share * wave_impedance(note.string) * admittance_at(note.bridge, s);
    return loss_response(loop.losses, s) * loss_response(loop.end_losses, s) * dispersion_at(loop.dispersion, s) *
           std::exp(-s * loop.plain_delay) * (1.0 - z0y) / (1.0 + z0y);
}

/// Newton's steps towards round_trip = 1.
Complex pole_near(const Note& note, Complex start, double share) {
    constexpr int most_steps = 50;
    Complex s = start;
    for (int step = 0; step < most_steps; ++step) {
        const Complex nudge = 1e-6 * std::abs(s);
        const Complex value = std::log(round_trip(note, s, share));
        const Complex slope = (std::log(round_trip(note, s + nudge, share)) - value) / nudge;
        const Complex change = value / slope;
        s -= change;
        if (std::abs(change) < 1e-12 * std::abs(s)) break;
    }
    return s;
}

}  // namespace

std::vector<RingingPartial> ringing_partials(const Note& note, int count) {
    std::vector<RingingPartial> partials;
    for (int n = 1; n <= count; ++n) {
        Complex s(0.0, 2.0 * pi * partial_frequency(note.string, n));
        for (int step = 0; step <= growth_steps; ++step)
            s = pole_near(note, s, static_cast<double>(step) / growth_steps);
        RingingPartial partial{.number = n, .frequency = s.imag() / (2.0 * pi), .decay = std::max(0.0, -s.real())};
        if (partial.decay > least_decay * s.imag()) {
            partial.q = s.imag() / (2.0 * partial.decay);
            partial.ring_time = fall_60_db / partial.decay;
        }
        partials.push_back(partial);
    }
    return partials;
}

std::optional<double> ring_time(std::span<const RingingPartial> partials) {
    double whole = 0.0;
    double slowest = 1e300;
    for (const RingingPartial& partial : partials) {
        if (!partial.ring_time) return std::nullopt;
        whole += 1.0 / (partial.number * partial.number);
        slowest = std::min(slowest, partial.decay);
    }
    if (partials.empty()) return std::nullopt;
    double low = 0.0;
    double high = fall_60_db / slowest;
    while (high - low > 1e-9 * high) {
        const double middle = 0.5 * (low + high);
        double left = 0.0;
        for (const RingingPartial& partial : partials)
            left += std::exp(-2.0 * partial.decay * middle) / (partial.number * partial.number);
        (left > 1e-6 * whole ? low : high) = middle;
    }
    return high;
}

}  // namespace sim
