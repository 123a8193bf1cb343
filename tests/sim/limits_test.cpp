// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/limits.hpp"

#include "tests/published/cello_d.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

const String d = tests::cello_d({});
constexpr BowPlace place{.contact_point = 0.06, .speed = 0.05};
const double ratio = 0.06 / d.length;

LimitCase case_of(const Limits& result) { return {wave_impedance(d), place.speed, ratio, result.friction_drop}; }

}  // namespace

/// source   a falling curve's drop is that from rest to the flyback's slip speed v/beta (derived)
TEST(LimitsTest, DropIsTakenAtTheSlipSpeedOfTheStroke) {
    const Limits fitted = limits(tests::note_of(d, tests::rigid_bridge(), tests::fitted_law()), place);
    EXPECT_DOUBLE_EQ(fitted.friction_drop, 1.2 - steady_sliding_fit(place.speed / ratio));
    EXPECT_DOUBLE_EQ(fitted.schelleng_max, schelleng_max(case_of(fitted)));
    const Friction coulomb{.law = FrictionLaw::coulomb, .static_coefficient = 0.8, .sliding_coefficient = 0.3};
    EXPECT_DOUBLE_EQ(limits(tests::note_of(d, tests::rigid_bridge(), coulomb), place).friction_drop, 0.5);
}

TEST(LimitsTest, RigidBridgeHasNoLeastForce) {
    const Limits rigid = limits(tests::note_of(d, tests::rigid_bridge(), {}), place);
    EXPECT_FALSE(rigid.schelleng_min.has_value());
    EXPECT_FALSE(rigid.admittance_min.has_value());
}

/// expects  over modes Schelleng's R is 1/Re Y at the note; over a resistance both least forces agree
/// margin   1 % for the sum that ends after 200 partials
TEST(LimitsTest, LeastForcesComeFromTheBridge) {
    const Limits over_r = limits(tests::note_of(d, tests::resistive_bridge(50.0), {}), place);
    EXPECT_DOUBLE_EQ(*over_r.schelleng_min, schelleng_min(case_of(over_r), 50.0));
    EXPECT_NEAR(*over_r.admittance_min / *over_r.schelleng_min, 1.0, 0.01);
    const Bridge body{.kind = BridgeKind::modes, .resistance = 0.0, .modes = {{180.0, 30.0, 0.15, 1.0}}};
    const Limits over_body = limits(tests::note_of(d, body, {}), place);
    const double resistance = 1.0 / admittance(body, fundamental(d)).real();
    EXPECT_DOUBLE_EQ(*over_body.schelleng_min, schelleng_min(case_of(over_body), resistance));
}
