// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/skew.hpp"

#include "analysis/errors.hpp"
#include "sim/stroke_batch.hpp"

#include <algorithm>
#include <cmath>

namespace sim {

namespace {

constexpr int way_points = 41;  // at which the security is taken along a drift

/// Mean over the way from `near` to `far`.
Security along(const Assessment& assessment, double near, double far) {
    std::array<double, fault_count> faults{};
    for (int i = 0; i < way_points; ++i) {
        const Security here = assessment.at(near + (far - near) * i / (way_points - 1.0));
        for (std::size_t f = 0; f < fault_count; ++f) faults[f] += here.faults[f] / way_points;
    }
    return security_of(0.5 * (near + far), faults);
}

/// The columns of the map that count for a bow at `place`: those within the wander and one more either side.
struct Columns {
    std::size_t first;
    std::size_t last;
};
Columns columns_round(const StrokeMap& map, double place, double wander) {
    const std::vector<double>& points = map.contact_points;
    const auto low = std::ranges::lower_bound(points, place - wander) - points.begin();
    const auto high = std::ranges::upper_bound(points, place + wander) - points.begin();
    const auto count = static_cast<std::ptrdiff_t>(points.size());
    return {static_cast<std::size_t>(std::max<std::ptrdiff_t>(low - 1, 0)),
            static_cast<std::size_t>(std::min<std::ptrdiff_t>(high, count - 1))};
}

/// The map with the columns that count played again askew.
StrokeMap askew(const StrokeMap& map, const Columns& columns, double angle, const Workers& workers) {
    StrokeMap turned = map;
    const std::size_t from = columns.first * map.forces.size();
    const std::size_t count = (columns.last + 1) * map.forces.size() - from;
    std::vector<Stroke> strokes;
    for (std::size_t i = from; i < from + count; ++i) {
        Stroke stroke = map.strokes[i].stroke;
        stroke.lengthwise = stroke.speed * std::sin(angle);
        stroke.speed *= std::cos(angle);
        strokes.push_back(stroke);
    }
    std::ranges::copy(play_all(map.note, strokes, workers), turned.strokes.begin() + static_cast<std::ptrdiff_t>(from));
    return turned;
}

void check_law(const Note& note) {
    if (note.friction.law == FrictionLaw::thermal || note.friction.law == FrictionLaw::coulomb) return;
    throw analysis::InputError("friction law", std::string(friction_law_name(note.friction.law)) +
                                                   " knows no lengthwise sliding; give --law thermal or coulomb");
}

}  // namespace

SkewResult find_skew(const Note& note, const Player& player, const SkewPlan& plan, const Workers& workers) {
    check_law(note);
    const StrokeMap map = started_map(note, player, plan.grid, part_of(workers, {0.0, 0.6}));
    const Assessment straight(map, player);
    const BandResult band = find_band(straight, map, player);
    SkewResult result{.note = note, .rows = {}};
    if (!band.best) return result;
    result.contact_point = *band.best;
    const Columns columns = columns_round(map, *band.best, player.wander);
    for (std::size_t i = 0; i < plan.angles.size(); ++i) {
        const double angle = plan.angles[i];
        const double share = 0.4 / static_cast<double>(plan.angles.size());
        const Part part{0.6 + share * static_cast<double>(i), 0.6 + share * static_cast<double>(i + 1)};
        SkewRow row{.angle = angle, .drift = plan.stroke_length * std::sin(angle), .drifting = {}, .sliding = {}};
        row.drifting = along(straight, *band.best - 0.5 * row.drift, *band.best + 0.5 * row.drift);
        if (angle == 0.0) {
            row.sliding = band.at_best;
        } else {
            const StrokeMap turned = askew(map, columns, angle, part_of(workers, part));
            row.sliding = Assessment(turned, player, straight.references()).at(*band.best);
        }
        result.rows.push_back(row);
    }
    return result;
}

}  // namespace sim
