// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/level.hpp"

#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

namespace {

using tests::Tone;

TEST(RmsTest, IsTheRootOfTheMeanSquare) {
    EXPECT_DOUBLE_EQ(analysis::rms(std::vector<double>{3.0, -4.0, 0.0, 5.0}), std::sqrt(12.5));
    EXPECT_EQ(analysis::rms({}), 0.0);
}

class WeightedRmsTest : public testing::TestWithParam<double> {};

INSTANTIATE_TEST_SUITE_P(ManyFrequencies, WeightedRmsTest, testing::Values(55.3, 146.8, 440.0, 2500.0, 9000.0));

/// expects  A/sqrt(2) |H(f)|, H changing smoothly
/// margin   0.05 dB: |H| is averaged over the window's main lobe
TEST_P(WeightedRmsTest, OfASineIsItsOwnTimesTheResponse) {
    const Tone tone{.hz = GetParam(), .sample_rate = 60000.0, .duration = 0.1, .offset = 2.0};
    const auto response = [](double hz) { return 3.0 / std::sqrt(1.0 + hz / 1000.0 * hz / 1000.0); };
    const double level = analysis::weighted_rms(tests::sine(tone), tone.sample_rate, response);
    EXPECT_NEAR(analysis::db_from_ratio(level / (response(tone.hz) / std::sqrt(2.0))), 0.0, 0.05);
}

/// expects  sum of powers 1/(2 n²) at the harmonics, each times its own |H|²
TEST(WeightedRmsTest, AddsPowers) {
    const Tone tone{.hz = 200.0, .sample_rate = 48000.0, .duration = 0.1, .max_hz = 1000.0};
    const auto response = [](double hz) { return hz > 500.0 ? 0.0 : 1.0; };
    const double level = analysis::weighted_rms(tests::sawtooth(tone), tone.sample_rate, response);
    EXPECT_NEAR(level, std::sqrt(0.5 * (1.0 + 0.25)), 1e-3);
}

TEST(WeightedRmsTest, OfAConstantIsNothing) {
    const auto flat = [](double) { return 1.0; };
    EXPECT_NEAR(analysis::weighted_rms(std::vector<double>(1000, 7.0), 48000.0, flat), 0.0, 1e-12);
    EXPECT_EQ(analysis::weighted_rms({}, 48000.0, flat), 0.0);
}

}  // namespace
