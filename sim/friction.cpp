// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/friction.hpp"

#include <array>
#include <cmath>

namespace sim {

namespace {

struct Named {
    FrictionLaw law;
    std::string_view name;
};
constexpr std::array<Named, 4> law_names{{{FrictionLaw::thermal, "thermal"},
                                          {FrictionLaw::double_exponential, "double_exponential"},
                                          {FrictionLaw::hyperbola, "hyperbola"},
                                          {FrictionLaw::coulomb, "coulomb"}}};

}  // namespace

std::string_view friction_law_name(FrictionLaw law) {
    for (const Named& named : law_names)
        if (named.law == law) return named.name;
    return {};
}

std::optional<FrictionLaw> friction_law_from_name(std::string_view name) {
    for (const Named& named : law_names)
        if (named.name == name) return named.law;
    return std::nullopt;
}

double steady_sliding_fit(double slip_speed) {
    return 0.35 + 0.45 * std::exp(-slip_speed / 0.1) + 0.4 * std::exp(-slip_speed / 0.01);
}

double steady_coefficient(const Friction& friction, double slip_speed) {
    switch (friction.law) {
        case FrictionLaw::thermal:
        case FrictionLaw::double_exponential:
            return steady_sliding_fit(slip_speed);
        case FrictionLaw::hyperbola: {
            const double drop = friction.static_coefficient - friction.sliding_coefficient;
            return friction.sliding_coefficient + drop * friction.corner_speed / (friction.corner_speed + slip_speed);
        }
        case FrictionLaw::coulomb:
            break;
    }
    return friction.sliding_coefficient;
}

double sticking_coefficient(const Friction& friction) {
    const bool own = friction.law == FrictionLaw::hyperbola || friction.law == FrictionLaw::coulomb;
    return own ? friction.static_coefficient : steady_sliding_fit(0.0);
}

}  // namespace sim
