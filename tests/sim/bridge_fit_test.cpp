// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/bridge_fit.hpp"

#include "analysis/errors.hpp"
#include "sim/preset.hpp"
#include "tests/sim/admittances.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace {

using sim::Bridge;
using sim::BridgeFit;
using sim::BridgeMode;
using sim::MeasuredBridge;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using tests::body;
using tests::measured;
using tests::mode;

BridgeFit fitted(const MeasuredBridge& bridge, const sim::BridgeFitPlan& plan = {}) {
    return sim::fit_bridge(bridge, plan, "y.csv");
}

/// What fitting complains of; empty if it does not.
std::string complaint(const MeasuredBridge& bridge, const sim::BridgeFitPlan& plan = {}) {
    try {
        fitted(bridge, plan);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

/// Shares by which a mode may be missed.
struct Margins {
    double hz = 1e-3;
    double q = 0.02;
    double mass = 0.02;
};

void expect_modes(const BridgeFit& fit, const Bridge& truth, const Margins& margins) {
    for (const BridgeMode& wanted : truth.modes) {
        const auto found = std::ranges::min_element(
            fit.modes, {}, [&](const BridgeMode& any) { return std::abs(any.frequency - wanted.frequency); });
        ASSERT_NE(found, fit.modes.end());
        EXPECT_NEAR(found->frequency / wanted.frequency, 1.0, margins.hz) << wanted.frequency;
        EXPECT_NEAR(found->q / wanted.q, 1.0, margins.q) << wanted.frequency;
        EXPECT_NEAR(found->mass / wanted.mass, 1.0, margins.mass) << wanted.frequency;
    }
}

/// From far below to far above the range; a sum of modes with positive masses has no negative real part anywhere.
void expect_passive(const BridgeFit& fit) {
    for (const double hz : tests::log_hz(1.0, 40e3, 20000))
        ASSERT_GE(sim::admittance(bridge_of(fit), hz).real(), 0.0) << hz;
    for (const BridgeMode& any : fit.modes) {
        EXPECT_GT(any.q, 0.0);
        EXPECT_GT(any.mass, 0.0);
    }
}

/// expects  the very modes, and no others, from evenly and from logarithmically spaced points
/// margin   0.1 % of frequency, 2 % of Q and mass
TEST(BridgeFitTest, FindsTheModesOfACleanAdmittance) {
    const Bridge truth = tests::wide_body();
    for (const auto& hz : {tests::even_hz(50.0, 3000.0, 3000), tests::log_hz(60.0, 2500.0, 400)}) {
        const BridgeFit fit = fitted(measured(truth, hz));
        EXPECT_EQ(fit.modes.size(), truth.modes.size());
        EXPECT_TRUE(fit.outside.empty());
        EXPECT_LT(fit.error.rms_db, 0.01);
        EXPECT_EQ(fit.passivity.noise_share, 0.0);
        expect_modes(fit, truth, {});
        expect_passive(fit);
    }
}

TEST(BridgeFitTest, FindsTheModesOfEveryShippedPreset) {
    for (const auto& file : sim::shipped_presets()) {
        const Bridge truth = sim::read_preset(file).bridge;
        const double low = 0.6 * truth.modes.front().frequency;
        const BridgeFit fit = fitted(measured(truth, tests::log_hz(low, 6000.0, 900)));
        SCOPED_TRACE(file.string());
        EXPECT_EQ(fit.modes.size(), truth.modes.size());
        expect_modes(fit, truth, {});
    }
}

/// expects  modes under 1 % of noise
/// margin   0.2 % of frequency, 5 % of Q and mass: over a mode's width lie 10 points and more, whose noise of 1 %
/// leaves
///          some 0.3 % to the mode, and ten times that where the neighbour's flank covers half of it
TEST(BridgeFitTest, FindsModesUnderOnePercentOfNoise) {
    const Bridge truth = tests::wide_body();
    for (const unsigned seed : {1U, 2U, 3U}) {
        const BridgeFit fit =
            fitted(measured(truth, tests::even_hz(50.0, 3000.0, 5900), {.noise = 0.01, .seed = seed}));
        EXPECT_EQ(fit.modes.size(), truth.modes.size());
        expect_modes(fit, truth, {.hz = 2e-3, .q = 0.05, .mass = 0.05});
        expect_passive(fit);
        // 1 % of noise alone is 0.061 dB and 0.41 degrees
        EXPECT_NEAR(fit.error.rms_db, 0.061, 0.008);
    }
}

/// expects  two modes closer than their width, clean and under 1 % of noise
/// margin   clean as above; noise: 0.3 % of frequency, 8 % of Q and mass
TEST(BridgeFitTest, TellsTwoCloseModesApart) {
    const Bridge truth = body({mode(200.0, 40.0, 0.2), mode(204.0, 40.0, 0.25), mode(400.0, 25.0, 0.1)});
    const auto hz = tests::even_hz(50.0, 1000.0, 1900);
    expect_modes(fitted(measured(truth, hz)), truth, {});
    const BridgeFit noisy = fitted(measured(truth, hz, {.noise = 0.01}));
    EXPECT_EQ(noisy.modes.size(), 3U);
    expect_modes(noisy, truth, {.hz = 3e-3, .q = 0.08, .mass = 0.08});
}

/// expects  one mode for one mode, also where the range holds hardly more than its width
TEST(BridgeFitTest, FindsASingleModeInWideAndNarrowRanges) {
    const Bridge truth = body({mode(440.0, 30.0, 0.2)});
    for (const auto& hz : {tests::even_hz(100.0, 1000.0, 300), tests::even_hz(425.0, 455.0, 31)}) {
        const BridgeFit fit = fitted(measured(truth, hz));
        EXPECT_EQ(fit.modes.size(), 1U);
        expect_modes(fit, truth, {});
    }
}

/// A stiff line from modes above and a mass line from below, noise in the valleys: what a laboratory gets.
///
/// expects  the modes that stand out, the rest being modes beyond the range
/// margin   0.3 % of frequency, 10 % of Q and mass: noise of 0.3 % of the highest peak is 2 to 5 % of the lower ones
TEST(BridgeFitTest, KeepsApartWhatLiesBeyondTheRange) {
    Bridge truth = tests::wide_body();
    Bridge with_lines = truth;
    with_lines.modes.push_back(mode(3.0, 20.0, 3.0));
    with_lines.modes.push_back(mode(18000.0, 30.0, 4e-4));
    const BridgeFit fit =
        fitted(measured(with_lines, tests::even_hz(40.0, 4000.0, 7900), {.noise = 0.02, .floor = 0.003}));
    EXPECT_GE(fit.outside.size(), 1U);
    EXPECT_LE(fit.modes.size(), 20U);
    expect_modes(fit, truth, {.hz = 3e-3, .q = 0.1, .mass = 0.1});
    expect_passive(fit);
}

/// expects  100 000 points in seconds, with the same modes
TEST(BridgeFitTest, TakesAHundredThousandPoints) {
    const Bridge truth = tests::wide_body();
    const BridgeFit fit = fitted(measured(truth, tests::even_hz(0.05, 5000.0, 100000), {.noise = 0.01}),
                                 {.modes = {}, .range = sim::HzRange{40.0, 4000.0}});
    EXPECT_EQ(fit.modes.size(), truth.modes.size());
    expect_modes(fit, truth, {.hz = 5e-4, .q = 0.02, .mass = 0.02});
}

TEST(BridgeFitTest, GivesAsManyModesAsAreAskedFor) {
    const MeasuredBridge bridge = measured(tests::wide_body(), tests::log_hz(60.0, 2500.0, 800), {.noise = 0.01});
    double before = 1e9;
    for (const int count : {1, 4, 12, 16}) {
        const BridgeFit fit = fitted(bridge, {.modes = count, .range = {}});
        EXPECT_EQ(fit.modes.size() - fit.outside.size(), static_cast<std::size_t>(count));
        EXPECT_LT(fit.error.rms_db, before);
        before = fit.error.rms_db;
        expect_passive(fit);
    }
}

TEST(BridgeFitTest, FitsTheRangeItIsGiven) {
    const BridgeFit fit = fitted(measured(tests::wide_body(), tests::log_hz(60.0, 2500.0, 800)),
                                 {.modes = {}, .range = sim::HzRange{150.0, 600.0}});
    EXPECT_GE(fit.range.low, 150.0);
    EXPECT_LE(fit.range.high, 600.0);
    EXPECT_LT(fit.error.rms_db, 0.5);
}

/// expects  the same numbers each time: nothing in the fit is drawn by lot
TEST(BridgeFitTest, IsTheSameEachTime) {
    const MeasuredBridge bridge = measured(tests::wide_body(), tests::log_hz(60.0, 2500.0, 500), {.noise = 0.02});
    EXPECT_EQ(fitted(bridge).modes, fitted(bridge).modes);
}

MeasuredBridge turned(MeasuredBridge bridge,
                      const std::function<std::complex<double>(std::complex<double>, double)>& turn) {
    for (std::size_t i = 0; i < bridge.hz.size(); ++i)
        bridge.admittance[i] = turn(bridge.admittance[i], 2.0 * std::acos(-1.0) * bridge.hz[i]);
    return bridge;
}

using Complex = std::complex<double>;

MeasuredBridge clean() { return measured(tests::wide_body(), tests::even_hz(50.0, 3000.0, 1500)); }

TEST(BridgeRefusalTest, AccelerationInsteadOfVelocityIsRecognised) {
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double w) { return y * Complex(0.0, w); })),
                AllOf(HasSubstr("Re Y is below 0"), HasSubstr("Hz"), HasSubstr("accelerance"), Not(HasSubstr("\n"))));
}

TEST(BridgeRefusalTest, DisplacementInsteadOfVelocityIsRecognised) {
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double w) { return y / Complex(0.0, w); })),
                HasSubstr("receptance"));
}

TEST(BridgeRefusalTest, TurnedSignsAreRecognised) {
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double) { return -y; })), HasSubstr("sign turned"));
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double) { return std::conj(y); })), HasSubstr("e^(-i w t)"));
}

/// A mode that takes power in at one place and gives it out at another: no driving point.
TEST(BridgeRefusalTest, OneModeOfTheWrongSignIsNamedByItsFrequency) {
    Bridge bridge = tests::wide_body();
    bridge.modes[6].mass *= -1.0;
    const std::string what = complaint(measured(bridge, tests::even_hz(50.0, 3000.0, 1500), {.noise = 0.01}));
    EXPECT_THAT(what, HasSubstr("Re Y is below 0 about "));
    const double named = std::stod(what.substr(what.find("about ") + 6));
    EXPECT_NEAR(named / bridge.modes[6].frequency, 1.0, 0.05) << what;
}

TEST(BridgeRefusalTest, DelayBetweenForceAndVelocityIsRefused) {
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double w) { return y * std::polar(1.0, -w * 2e-4); })),
                HasSubstr("delay"));
}

/// expects  noise in the valleys to be borne and told, noise everywhere to be refused
TEST(BridgeRefusalTest, NoiseIsToleratedUpToAShare) {
    const auto hz = tests::even_hz(50.0, 3000.0, 3000);
    const BridgeFit fit = fitted(measured(tests::wide_body(), hz, {.floor = 0.01}));
    EXPECT_GT(fit.passivity.noise_share, 0.0);
    EXPECT_LT(fit.passivity.noise_share, sim::tolerated_noise_share);
    EXPECT_THAT(fit.remarks, testing::Contains(HasSubstr("by noise")));
    expect_passive(fit);
    EXPECT_THAT(complaint(measured(tests::wide_body(), hz, {.floor = 1.0})), HasSubstr("25 % would be accepted"));
}

TEST(BridgeRefusalTest, RangeWithoutUsableFrequenciesIsRefused) {
    const sim::Bridge bridge = body({mode(8.0, 20.0, 1.0)});
    MeasuredBridge low = measured(bridge, tests::even_hz(1.0, 15.0, 100));
    low.usual_low = 20.0;
    EXPECT_THAT(complaint(low), AllOf(HasSubstr("1 to 15 Hz"), HasSubstr("20 Hz to 10 kHz")));
    EXPECT_THAT(complaint(clean(), {.modes = {}, .range = sim::HzRange{100.0, 110.0}}), HasSubstr("10 or more"));
}

TEST(BridgeRefusalTest, SlipOfUnitsShowsInTheMasses) {
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double) { return 1e6 * y; })), HasSubstr("units"));
    EXPECT_THAT(complaint(turned(clean(), [](Complex y, double) { return 1e-6 * y; })), HasSubstr("units"));
    EXPECT_THAT(complaint(turned(clean(), [](Complex, double) { return Complex(); })),
                HasSubstr("is 0 at every point"));
}

}  // namespace
