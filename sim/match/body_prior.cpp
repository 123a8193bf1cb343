// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/match/body_prior.hpp"

#include "analysis/units.hpp"
#include "sim/sound/render.hpp"

#include <cmath>

namespace sim::match {
std::vector<double> body_mean(const Bridge& bridge, std::span<const double> octaves) {
    constexpr int places = 25;  // over the octave
    const std::vector<sound::RadiatingMode> modes = sound::radiating_modes(bridge);
    std::vector<double> means;
    for (const double octave : octaves) {
        double power = 0.0;
        for (int k = 0; k < places; ++k) {
            const double hz = std::exp2(octave - 0.5 + k / (places - 1.0));
            power += std::norm(sound::response(modes, hz)) / places;
        }
        means.push_back(0.5 * analysis::db_from_ratio(power));
    }
    return means;
}

}  // namespace sim::match
