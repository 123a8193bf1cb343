// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/string.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace {

using namespace sim;

/// c = 200 m/s, Z = 0.2 kg/s, f0 = 200 Hz, B = pi^2 * 4e-4 / (40 * 0.25)
const String simple{.name = "1",
                    .length = 0.5,
                    .tension = 40.0,
                    .mass_per_length = 1e-3,
                    .bending_stiffness = 4e-4,
                    .damping = {.friction = 1e-3, .air = 2.0, .bending = 0.03}};

}  // namespace

TEST(StringTest, SpeedImpedanceAndPitchFollowFromTensionMassAndLength) {
    EXPECT_DOUBLE_EQ(wave_speed(simple), 200.0);
    EXPECT_DOUBLE_EQ(wave_impedance(simple), 0.2);
    EXPECT_DOUBLE_EQ(fundamental(simple), 200.0);
}

TEST(StringTest, StiffnessRaisesThePartialsByTheSquareOfTheirNumber) {
    const double b = std::numbers::pi * std::numbers::pi * 4e-5;
    EXPECT_NEAR(inharmonicity(simple), b, 1e-15);
    EXPECT_NEAR(partial_frequency(simple, 10.0), 2000.0 * std::sqrt(1.0 + 100.0 * b), 1e-9);
}

/// source   Mersenne's law: a fifth higher on two thirds of the length (derived)
TEST(StringTest, StoppedStringIsShorterAndKeepsTheRest) {
    const String octave = stopped(simple, 12.0);
    EXPECT_DOUBLE_EQ(octave.length, 0.25);
    EXPECT_DOUBLE_EQ(fundamental(octave), 400.0);
    EXPECT_NEAR(inharmonicity(octave), 4.0 * inharmonicity(simple), 1e-15);
    EXPECT_NEAR(stopped(simple, 12.0 * std::log2(1.5)).length, 0.5 / 1.5, 1e-15);
    EXPECT_EQ(stopped(simple, 0.0), simple);
}

/// source   [Woodhouse2004]: 1/Q = [T (eta_F + eta_A/w) + EI eta_E k^2] / [T + EI k^2], k = n pi / L; form from memory
/// expects  the formula written out for n = 7; each loss alone where the others are none
/// margin   rounding
TEST(StringTest, LossOfAPartialFollowsTheFormula) {
    const double k = 7.0 * std::numbers::pi / 0.5;
    const double omega = 2.0 * std::numbers::pi * partial_frequency(simple, 7.0);
    const double expected = (40.0 * (1e-3 + 2.0 / omega) + 4e-4 * 0.03 * k * k) / (40.0 + 4e-4 * k * k);
    EXPECT_NEAR(loss_factor(simple, 7.0), expected, 1e-15);
    String flexible = simple;
    flexible.bending_stiffness = 0.0;
    flexible.damping = {.friction = 2e-3, .bending = 0.5};
    EXPECT_DOUBLE_EQ(loss_factor(flexible, 1.0), 2e-3);
    EXPECT_DOUBLE_EQ(loss_factor(flexible, 20.0), 2e-3);
    flexible.damping = {.air = 1.0};
    EXPECT_NEAR(loss_factor(flexible, 1.0) / loss_factor(flexible, 4.0), 4.0, 1e-12);
}
