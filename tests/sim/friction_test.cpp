// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/friction.hpp"

#include "sim/kernel/rosin.hpp"
#include "sim/note.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace sim;

constexpr double rate = 1e5;  // Hz
constexpr double give = 1.0;  // m/s per N

Friction with(FrictionLaw law) {
    return {.law = law, .static_coefficient = 0.8, .sliding_coefficient = 0.3, .corner_speed = 0.2};
}

const FrictionLaw laws[] = {FrictionLaw::thermal, FrictionLaw::double_exponential, FrictionLaw::hyperbola,
                            FrictionLaw::coulomb};

}  // namespace

TEST(FrictionTest, NamesOfLawsLeadThereAndBack) {
    for (FrictionLaw law : laws) EXPECT_EQ(friction_law_from_name(friction_law_name(law)), law);
    EXPECT_EQ(friction_law_name(FrictionLaw::double_exponential), "double_exponential");
    EXPECT_FALSE(friction_law_from_name("sticky").has_value());
}

TEST(FrictionTest, CoefficientsOfTheClosedLawsAreTheirFormulas) {
    EXPECT_DOUBLE_EQ(steady_coefficient(with(FrictionLaw::hyperbola), 0.0), 0.8);
    EXPECT_DOUBLE_EQ(steady_coefficient(with(FrictionLaw::hyperbola), 0.2), 0.55);  // halfway at the corner speed
    EXPECT_DOUBLE_EQ(steady_coefficient(with(FrictionLaw::coulomb), 5.0), 0.3);
    EXPECT_DOUBLE_EQ(sticking_coefficient(with(FrictionLaw::hyperbola)), 0.8);
    EXPECT_DOUBLE_EQ(sticking_coefficient(with(FrictionLaw::coulomb)), 0.8);
    EXPECT_DOUBLE_EQ(sticking_coefficient(with(FrictionLaw::thermal)), 1.2);
}

/// expects  sticking: the string follows the bow, whatever force that takes up to the greatest
TEST(RosinTest, StickingContactBearsAllUpToItsGreatestForce) {
    for (FrictionLaw law : laws) {
        const kernel::Contact contact = kernel_contact(with(law));
        kernel::Rosin rosin(contact, rate);
        const double greatest = sticking_coefficient(with(law)) * 0.5;
        EXPECT_NEAR(rosin.rub(-0.99 * greatest, give, 0.5), 0.99 * greatest, 1e-12) << friction_law_name(law);
        EXPECT_FALSE(rosin.slips()) << friction_law_name(law);
        rosin.rub(-1.01 * greatest, give, 0.5);
        EXPECT_TRUE(rosin.slips()) << friction_law_name(law);
    }
}

/// expects  a string that moves the other way is rubbed the other way, bit for bit
TEST(RosinTest, LawsKnowNoDirection) {
    for (FrictionLaw law : laws) {
        const kernel::Contact contact = kernel_contact(with(law));
        kernel::Rosin one(contact, rate, {.layer = 5.0, .string_side = {}});
        kernel::Rosin other(contact, rate, {.layer = 5.0, .string_side = {}});
        for (double w : {0.1, 0.5, 0.9, 0.4, 0.2, 1.5, 0.01}) {
            EXPECT_EQ(one.rub(w, give, 0.5), -other.rub(-w, give, 0.5)) << friction_law_name(law) << " at " << w;
            EXPECT_EQ(one.slip(), -other.slip());
        }
    }
}

/// expects  friction never drives: its work on the sliding string's motion against the bow is a loss
TEST(RosinTest, FrictionOpposesTheSlip) {
    for (FrictionLaw law : laws) {
        const kernel::Contact contact = kernel_contact(with(law));
        kernel::Rosin rosin(contact, rate);
        for (int i = 0; i < 2000; ++i) {
            const double force = rosin.rub(2.0 * std::sin(0.037 * i) * std::sin(0.011 * i), give, 0.5);
            EXPECT_LE(force * rosin.slip(), 0.0) << friction_law_name(law) << " step " << i;
            EXPECT_LE(std::abs(force), 0.5 * 1.2 + 1e-12);
        }
    }
}

/// source   Coulomb's two coefficients with the hysteresis rule
/// expects  let go over 0.8 F, caught under 0.3 F and not before
TEST(RosinTest, CoulombSlipHoldsDownToTheSlidingForce) {
    const kernel::Contact contact = kernel_contact(with(FrictionLaw::coulomb));
    kernel::Rosin rosin(contact, rate);
    EXPECT_DOUBLE_EQ(rosin.rub(-0.9, give, 1.0), 0.3);
    EXPECT_DOUBLE_EQ(rosin.rub(-0.31, give, 1.0), 0.3);
    EXPECT_TRUE(rosin.slips());
    EXPECT_DOUBLE_EQ(rosin.rub(-0.29, give, 1.0), 0.29);
    EXPECT_FALSE(rosin.slips());
    EXPECT_DOUBLE_EQ(rosin.rub(-0.79, give, 1.0), 0.79);
}
