// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/limits.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

namespace sim {

namespace {

constexpr double pi = std::numbers::pi;
constexpr int moments = 512;  // of a period at which the wave of the bracket is looked at

}  // namespace

double schelleng_max(const LimitCase& c) {
    return 2.0 * c.wave_impedance * c.speed / (c.contact_ratio * c.friction_drop);
}

double schelleng_min(const LimitCase& c, double resistance) {
    return c.wave_impedance * c.wave_impedance * c.speed /
           (2.0 * resistance * c.contact_ratio * c.contact_ratio * c.friction_drop);
}

double admittance_min(const LimitCase& c, const Bridge& bridge, double fundamental_hz, int terms) {
    std::vector<std::complex<double>> rows;  // (-1)^(n+1) Y(n w0) / n^2
    double steady = 0.0;
    for (int n = 1; n <= terms; ++n) {
        const std::complex<double> term = admittance(bridge, n * fundamental_hz) / static_cast<double>(n * n);
        steady += term.real();
        rows.push_back(n % 2 == 1 ? term : -term);
    }
    double greatest = -1e300;
    for (int k = 0; k < moments; ++k) {
        const std::complex<double> turn = std::polar(1.0, 2.0 * pi * k / moments);
        std::complex<double> phase = turn;
        double sum = 0.0;
        for (const std::complex<double>& row : rows) {
            sum += (row * phase).real();
            phase *= turn;
        }
        greatest = std::max(greatest, sum);
    }
    const double z2 = c.wave_impedance * c.wave_impedance;
    const double scale = 2.0 * c.speed * z2 / (pi * pi * c.contact_ratio * c.contact_ratio * c.friction_drop);
    return scale * (greatest + steady);
}

Limits limits(const Note& note, BowPlace place) {
    LimitCase c{.wave_impedance = wave_impedance(note.string),
                .speed = place.speed,
                .contact_ratio = place.contact_point / note.string.length};
    c.friction_drop =
        sticking_coefficient(note.friction) - steady_coefficient(note.friction, c.speed / c.contact_ratio);
    const double f0 = fundamental(note.string);
    Limits result{.friction_drop = c.friction_drop, .schelleng_max = schelleng_max(c)};
    if (note.bridge.kind == BridgeKind::resistance) result.schelleng_min = schelleng_min(c, note.bridge.resistance);
    if (note.bridge.kind == BridgeKind::modes)
        result.schelleng_min = schelleng_min(c, 1.0 / admittance(note.bridge, f0).real());
    if (note.bridge.kind != BridgeKind::rigid) result.admittance_min = admittance_min(c, note.bridge, f0, 200);
    return result;
}

}  // namespace sim
