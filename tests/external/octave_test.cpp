// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/fundamental.hpp"
#include "analysis/units.hpp"
#include "tests/analysis/tones.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace {

constexpr double rate = 48000.0;

/// A tone without its fundamental: partials 2 to 12 by chance, two neighbours for certain, within 20 dB of one another.
struct Bare {
    double hz = 0.0;
    std::vector<double> samples;
    std::string what;
};
Bare bare_tone(std::mt19937& engine) {
    const auto between = [&](double low, double high) { return std::uniform_real_distribution<>(low, high)(engine); };
    Bare bare{.hz = 40.0 * std::pow(25.0, between(0.0, 1.0)), .samples = {}, .what = {}};
    const int sure = static_cast<int>(between(2.0, 6.0));
    std::vector<double> amplitudes(13, 0.0);
    for (int n = 2; n <= 12; ++n)
        if (n == sure || n == sure + 1 || between(0.0, 1.0) < 0.4) {
            amplitudes[static_cast<std::size_t>(n)] = analysis::ratio_from_db(between(-20.0, 0.0));
            bare.what += " " + std::to_string(n);
        }
    bare.samples = tests::harmonic_tone({.hz = bare.hz, .sample_rate = rate, .duration = 0.5},
                                        [&](int n) { return n <= 12 ? amplitudes[static_cast<std::size_t>(n)] : 0.0; });
    tests::add_noise(bare.samples, between(20.0, 40.0), engine);
    return bare;
}

/// How many of so many tones come out another than they are.
int octaves_wrong(unsigned seed, int count) {
    std::mt19937 engine(seed);
    int wrong = 0;
    for (int i = 0; i < count; ++i) {
        const Bare bare = bare_tone(engine);
        const auto pitch = analysis::measure_fundamental(bare.samples, rate, {30.0, 4500.0});
        const double hz = pitch ? pitch->hz : 0.0;
        if (hz > 0.0 && std::abs(analysis::cents_between(hz, bare.hz)) < 50.0) continue;
        ++wrong;
        std::printf("%.1f Hz heard as %.1f; partials%s\n", bare.hz, hz, bare.what.c_str());
    }
    return wrong;
}

// The way of finding octaves was made with seed 11 (20,000 tones, none wrong); this seed it has not met.
constexpr unsigned test_seed = 20261;

/// expects  the octave right in each of 1000 tones of 40 to 1000 Hz with noise 20 to 40 dB under them
/// margin   none; half a semitone: what lies nearer is no other octave
TEST(FundamentalTest, FindsTheOctaveOfTonesWithoutTheirFundamental) { EXPECT_EQ(octaves_wrong(test_seed, 1000), 0); }

}  // namespace
