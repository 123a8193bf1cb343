// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lane_curve.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <vector>

namespace sim::kernel {

namespace {

constexpr std::size_t cells = 200;       // in which the bending is looked at
constexpr double bending_share = 0.45;   // of all the bending, in the ramp between
constexpr double last_place = 31.99999;  // inside the last piece, in single precision too

constexpr double close_enough = 1e-4;  // of mu

double table_value(const Contact& contact, double temperature) {
    const double place = std::max(0.0, temperature / contact.table_step);
    const auto i = static_cast<std::size_t>(place);
    if (i + 1 >= contact.table.size()) return contact.table.back();
    return contact.table[i] + (place - static_cast<double>(i)) * (contact.table[i + 1] - contact.table[i]);
}

/// How many pieces each cell wants: the error goes about as a high difference, a high power of the length.
std::vector<double> bending_of(const Contact& contact, double cell) {
    std::vector<double> rough(cells);
    for (std::size_t i = 0; i < cells; ++i) {
        const double middle = static_cast<double>(std::clamp<std::size_t>(i, 2, cells - 2)) * cell;
        const auto at = [&](double steps) { return table_value(contact, middle + steps * cell); };
        rough[i] = std::pow(std::abs(at(-2.0) - 4.0 * at(-1.0) + 6.0 * at(0.0) - 4.0 * at(1.0) + at(2.0)), 0.25);
    }
    std::vector<double> bending(cells);
    for (std::size_t i = 0; i < cells; ++i) {
        const std::size_t first = i < 2 ? 0 : i - 2;
        const std::size_t count = std::min(cells, i + 3) - first;
        bending[i] = *std::max_element(rough.begin() + static_cast<std::ptrdiff_t>(first),
                                       rough.begin() + static_cast<std::ptrdiff_t>(first + count));
    }
    return bending;
}

struct Ramps {
    std::array<double, LaneCurve::ramps + 1> edge;     // K
    std::array<std::size_t, LaneCurve::ramps> pieces;  // of each
};

/// The shortest stretch that holds its share of the bending, and what lies before and after it.
Ramps ramps_of(const Contact& contact) {
    const double end = static_cast<double>(contact.table.size() - 1) * contact.table_step;
    const double cell = end / static_cast<double>(cells);
    std::vector<double> sum{0.0};
    for (const double here : bending_of(contact, cell)) sum.push_back(sum.back() + here);
    std::size_t first = 0;
    std::size_t last = cells;
    for (std::size_t i = 0, j = 0; i < cells; ++i) {
        while (j < cells && sum[j] - sum[i] < bending_share * sum.back()) ++j;
        if (sum[j] - sum[i] < bending_share * sum.back()) break;
        if (j - i < last - first) {
            first = i;
            last = j;
        }
    }
    const auto pieces = [&](double bending) {
        const double wanted = static_cast<double>(LaneCurve::pieces) * bending / sum.back();
        return std::max<std::size_t>(1, static_cast<std::size_t>(std::lround(wanted)));
    };
    first = std::clamp<std::size_t>(first, 1, cells - 2);  // no ramp is empty
    last = std::clamp<std::size_t>(last, first + 1, cells - 1);
    Ramps ramps{{0.0, static_cast<double>(first) * cell, static_cast<double>(last) * cell, end}, {}};
    ramps.pieces = {pieces(sum[first]), 0, pieces(sum.back() - sum[last])};
    ramps.pieces[1] = LaneCurve::pieces - ramps.pieces[0] - ramps.pieces[2];
    return ramps;
}

/// Powers of u = 0 ... 1 through values at those places.
std::array<double, LaneCurve::terms> powers_through(const std::array<double, LaneCurve::terms>& value,
                                                    const std::array<double, LaneCurve::terms>& place) {
    std::array<double, LaneCurve::terms> divided = value;  // Newton's divided differences
    for (std::size_t k = 1; k < divided.size(); ++k)
        for (std::size_t i = divided.size(); i-- > k;)
            divided[i] = (divided[i] - divided[i - 1]) / (place[i] - place[i - k]);
    std::array<double, LaneCurve::terms> power{divided.back()};
    for (std::size_t i = LaneCurve::terms - 1; i-- > 0;) {
        for (std::size_t k = power.size(); k-- > 1;) power[k] = power[k - 1] - place[i] * power[k];
        power[0] = divided[i] - place[i] * power[0];
    }
    return power;
}

}  // namespace

LaneCurve lane_curve(const Contact& contact) {
    assert(contact.table.size() > cells);
    const double inner = 0.5 - 0.5 * std::sqrt(3.0 / 7.0);  // Lobatto's rule of five places
    const std::array<double, LaneCurve::terms> places{0.0, inner, 0.5, 1.0 - inner, 1.0};
    const Ramps ramps = ramps_of(contact);
    LaneCurve curve;
    std::size_t piece = 0;
    for (std::size_t r = 0; r < LaneCurve::ramps; ++r) {
        const double wide = ramps.edge[r + 1] - ramps.edge[r];
        const double length = wide / static_cast<double>(ramps.pieces[r]);
        curve.from[r] = static_cast<float>(ramps.edge[r]);
        curve.wide[r] = static_cast<float>(wide);
        curve.per_kelvin[r] = static_cast<float>(1.0 / length);
        for (std::size_t i = 0; i < ramps.pieces[r]; ++i, ++piece) {
            std::array<double, LaneCurve::terms> values{};
            for (std::size_t k = 0; k < values.size(); ++k)
                values[k] = table_value(contact, ramps.edge[r] + (static_cast<double>(i) + places[k]) * length);
            const auto powers = powers_through(values, places);
            for (std::size_t k = 0; k < powers.size(); ++k) curve.term[k][piece] = static_cast<float>(powers[k]);
        }
    }
    return curve;
}

bool close_to_table(const LaneCurve& curve, const Contact& contact) {
    for (std::size_t i = 0; i < contact.table.size(); ++i) {
        const double here = coefficient_on(curve, static_cast<double>(i) * contact.table_step);
        if (std::abs(here - contact.table[i]) > close_enough) return false;
    }
    return true;
}

double coefficient_on(const LaneCurve& curve, double temperature) {
    double place = 0.0;
    for (std::size_t r = 0; r < LaneCurve::ramps; ++r)
        place += std::clamp(temperature - static_cast<double>(curve.from[r]), 0.0, static_cast<double>(curve.wide[r])) *
                 static_cast<double>(curve.per_kelvin[r]);
    place = std::min(place, last_place);
    const auto i = static_cast<std::size_t>(place);
    const double u = place - static_cast<double>(i);
    double mu = 0.0;
    for (std::size_t k = LaneCurve::terms; k-- > 0;) mu = mu * u + static_cast<double>(curve.term[k][i]);
    return mu;
}

}  // namespace sim::kernel
