// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/heat.hpp"

#include "sim/kernel/rosin.hpp"
#include "sim/note.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace {

using namespace sim;

constexpr double rate = 1e5;  // Hz
constexpr double give = 1.0;  // m/s per N

/// Layer and both sides heated from cold by a steady power while stuck, K per watt after `time`.
double warmed(const kernel::HeatPath& path, double time, double step) {
    kernel::Heat heat(path, step, {});
    for (int i = 0; i < static_cast<int>(std::lround(time / step)); ++i) {
        heat.begin(0.0);
        heat.finish(1.0);
    }
    return heat.temperature();
}

}  // namespace

/// source   heat conducted into two half-spaces from a plane, theta = (2/sqrt(pi)) sqrt(t) / (2 e A) for a thin layer;
///          4 k a a round spot on either side in the end (derived; both classical)
/// expects  the root of time while the spots still look flat, K per watt; the steady spreading after seconds
/// margin   4 %: the quickest branch against the layer left out, and what little of the spreading has begun; 1 %
TEST(HeatTest, SpotsWarmWithTheRootOfTimeAndThenSpread) {
    ThermalContact thin;
    thin.layer = 1e-9;
    thin.spot_radius = 1e-3;  // flat for long
    const kernel::HeatPath flat = kernel_contact({.thermal = thin}).heat;
    const double area = 1.0 / thin.contact_pressure;
    const double effusivity = std::sqrt(thin.conductivity * thin.density * thin.specific_heat);
    for (double time : {2e-3, 1e-2, 5e-2}) {
        const double root = std::sqrt(time / std::numbers::pi) / (effusivity * area);
        EXPECT_NEAR(warmed(flat, time, time / 2000.0), root, 0.04 * root) << time;
    }
    const ThermalContact usual;
    const kernel::HeatPath path = kernel_contact({}).heat;
    const double spots = area / (std::numbers::pi * usual.spot_radius * usual.spot_radius);
    const double spread = 2.0 * 4.0 * usual.conductivity * usual.spot_radius * spots;
    EXPECT_NEAR(warmed(path, 5.0, 1e-3) * spread, 1.0, 0.01);
}

/// source   conservation of energy
/// expects  heat made by friction = heat stored + heat spread out + heat carried off with the hair
/// margin   1e-9: the steps balance as they stand
TEST(HeatTest, EveryJouleIsStoredSpreadOrCarriedOff) {
    const kernel::Contact contact = kernel_contact({});
    kernel::Heat heat(contact.heat, 1.0 / rate, {});
    double made = 0.0;
    double lost = 0.0;
    for (int i = 0; i < 20000; ++i) {
        const bool slips = i % 300 < 40;
        const double power = slips ? 0.4 * 1.7 : 0.0;
        heat.begin(slips ? 1.7 : 0.0);
        heat.finish(power);
        made += power / rate;
        lost += heat.lost() / rate;
    }
    EXPECT_GT(lost, 0.5 * made);
    EXPECT_NEAR(heat.stored() + lost, made, 1e-9 * made);
}

/// source   as above, for friction itself: what the string is rubbed with must come out as heat
/// expects  friction force x slip speed, summed over stick and slip driven by a shaken string, = heat stored and lost
/// margin   0.1 %: the last sample's heat is still owed
TEST(HeatTest, RubbingMakesTheHeatOfItsForceAndSlip) {
    const kernel::Contact contact = kernel_contact({});
    kernel::Rosin rosin(contact, rate);
    const double force = 0.3;
    double made = 0.0;
    double lost = 0.0;
    for (int i = 0; i < 20000; ++i) {
        const double friction = rosin.rub(-0.4 + 2.0 * std::sin(0.02 * i), give, force);
        made += -friction * rosin.slip() / rate / force;
        lost += rosin.heat().lost() / rate;
    }
    EXPECT_NEAR(rosin.heat().stored() + lost, made, 1e-3 * made);
}

/// expects  an earlier stroke's warmth to fade: most of it within 10 ms of rest, all but 2 % of it within a second
TEST(HeatTest, WarmthOfAnEarlierStrokeFades) {
    const kernel::Contact contact = kernel_contact({});
    kernel::Rosin rosin(contact, rate);
    for (int i = 0; i < 20000; ++i) rosin.rub(-0.5, give, 0.3);
    const kernel::Warmth end = rosin.heat().warmth();
    EXPECT_GT(end.layer, 5.0);
    EXPECT_LT(kernel::rested(contact.heat, end, 0.01).layer, 0.5 * end.layer);
    EXPECT_LT(kernel::rested(contact.heat, end, 1.0).layer, 0.02 * end.layer);
    EXPECT_EQ(kernel::rested(contact.heat, end, 0.0), end);
}

/// source   with the area growing with the force, the coefficient does not know the force (derived)
/// expects  the same coefficient in steady sliding at 0.2 N and at 1 N; with a fixed area more grip at 0.2 N, less at 3
/// N
TEST(HeatTest, AreaThatGrowsWithForceKeepsTheCoefficient) {
    const auto coefficient = [](bool grows, double force) {
        const kernel::Contact contact = kernel_contact({.thermal = {.area_grows_with_force = grows}});
        kernel::Rosin rosin(contact, rate);
        double friction = 0.0;
        for (int i = 0; i < 20000; ++i) friction = rosin.rub(0.1, 1e-9, force);
        return -friction / force;
    };
    EXPECT_NEAR(coefficient(true, 0.2), coefficient(true, 1.0), 1e-6);
    EXPECT_NEAR(coefficient(false, 1.0), coefficient(true, 1.0), 1e-3);
    EXPECT_GT(coefficient(false, 0.2), 1.2 * coefficient(true, 0.2));
    EXPECT_LT(coefficient(false, 3.0), 0.9 * coefficient(true, 3.0));
}
