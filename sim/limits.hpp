// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"

#include <optional>

namespace sim {

/// What the closed forms of bow force ask for.
struct LimitCase {
    double wave_impedance = 0.0;  ///< kg/s
    double speed = 0.0;           ///< m/s
    double contact_ratio = 0.0;   ///< contact point / sounding length
    double friction_drop = 0.0;   ///< sticking less sliding coefficient
};

/// Greatest bow force, N: 2 Z0 v / (beta dmu).
/// source   [Schelleng1973]
double schelleng_max(const LimitCase& c);
/// Least bow force over a resistance R (kg/s), N: Z0^2 v / (2 R beta^2 dmu).
/// source   [Schelleng1973]
double schelleng_min(const LimitCase& c, double resistance);
/// Least bow force over any bridge, N:
/// (2 v Z0^2 / (pi^2 beta^2 dmu)) { max_t Re sum (-1)^(n+1) Y(n w0) e^(i n w0 t)/n^2 + Re sum Y(n w0)/n^2 }.
/// The sums run to `terms` partials.
/// source   [Woodhouse1993]; the bracket worked out so that Y = 1/R gives schelleng_min exactly
double admittance_min(const LimitCase& c, const Bridge& bridge, double fundamental_hz, int terms = 2000);

/// The closed limits of a stroke on a note, with the drop that its friction law has at that slip speed:
/// mu(0) - mu(v/beta).  A rigid bridge has no least force; over modes Schelleng's R is 1/Re Y at the fundamental.
struct Limits {
    double friction_drop = 0.0;
    double schelleng_max = 0.0;            ///< N
    std::optional<double> schelleng_min;   ///< N
    std::optional<double> admittance_min;  ///< N

    bool operator==(const Limits&) const = default;
};
struct BowPlace {
    double contact_point;  ///< m
    double speed;          ///< m/s
};
Limits limits(const Note& note, BowPlace place);

}  // namespace sim
