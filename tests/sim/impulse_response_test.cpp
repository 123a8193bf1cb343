// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "sim/bridge_fit.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/sim/admittances.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>

namespace {

using testing::AllOf;
using testing::HasSubstr;
using tests::TemporaryFolder;

constexpr double pi = std::numbers::pi;

/// Velocity after a unit impulse: sum of a e^(-s t) (cos w t - s/w sin w t), s = w_k/(2 Q), w^2 = w_k^2 - s^2.
std::vector<double> response(const sim::Bridge& bridge, double rate, double seconds) {
    std::vector<double> samples(static_cast<std::size_t>(rate * seconds), 0.0);
    for (const sim::BridgeMode& any : bridge.modes) {
        const double own = 2.0 * pi * any.frequency;
        const double decay = own / (2.0 * any.q);
        const double turn = std::sqrt(own * own - decay * decay);
        for (std::size_t n = 0; n < samples.size(); ++n) {
            const double t = static_cast<double>(n) / rate;
            samples[n] += std::exp(-decay * t) * (std::cos(turn * t) - decay / turn * std::sin(turn * t)) / any.mass;
        }
    }
    return samples;
}

sim::Bridge five_modes() {
    return tests::body({tests::mode(105.0, 25.0, 0.3), tests::mode(190.0, 30.0, 0.15), tests::mode(420.0, 28.0, 0.2),
                        tests::mode(900.0, 20.0, 0.1), tests::mode(2100.0, 12.0, 0.05)});
}

class ImpulseResponseTest : public testing::TestWithParam<double> {};

/// expects  the modes back from sound files of several sample rates, scaled to fit into full scale, with silence before
/// margin   0.1 % of frequency, 2 % of Q and mass: 24 bits leave -140 dB of noise, images of the spectrum 0.1 % at the
///          highest mode and lowest rate
TEST_P(ImpulseResponseTest, GivesItsModesBack) {
    const TemporaryFolder folder;
    const sim::Bridge truth = five_modes();
    std::vector<double> samples = response(truth, GetParam(), 1.5);
    const double scale = 50.0;
    for (double& sample : samples) sample /= scale;
    for (const std::size_t silent : {std::size_t{0}, std::size_t{100}}) {
        std::vector<double> late(silent, 0.0);
        late.insert(late.end(), samples.begin(), samples.end());
        analysis::write_audio(folder / "h.wav", analysis::Signal{late, GetParam()});
        const sim::BridgeFit fit = sim::fit_bridge(sim::read_measured_bridge(folder / "h.wav", scale), {}, "h.wav");
        for (const sim::BridgeMode& wanted : truth.modes) {
            const auto found = std::ranges::min_element(
                fit.modes, {}, [&](const auto& any) { return std::abs(any.frequency - wanted.frequency); });
            EXPECT_NEAR(found->frequency / wanted.frequency, 1.0, 1e-3) << wanted.frequency;
            EXPECT_NEAR(found->q / wanted.q, 1.0, 0.02) << wanted.frequency;
            EXPECT_NEAR(found->mass / wanted.mass, 1.0, 0.02) << wanted.frequency;
        }
        EXPECT_LT(fit.error.rms_db, 0.1);
    }
}

INSTANTIATE_TEST_SUITE_P(Rates, ImpulseResponseTest, testing::Values(11025.0, 22050.0, 44100.0, 48000.0, 96000.0),
                         [](const auto& rate) { return std::to_string(static_cast<int>(rate.param)); });

std::string sound_complaint(const analysis::Audio& audio, std::optional<double> scale = {}) {
    const TemporaryFolder folder;
    analysis::write_audio(folder / "h.wav", audio);
    try {
        sim::read_measured_bridge(folder / "h.wav", scale);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

TEST(ImpulseResponseRefusalTest, StereoSilenceAndSnippetsAreRefused) {
    const std::vector<double> some(4800, 0.1);
    EXPECT_THAT(sound_complaint({{some, some}, 48000.0}), AllOf(HasSubstr("h.wav"), HasSubstr("2 channels")));
    EXPECT_THAT(sound_complaint({{std::vector<double>(4800, 0.0)}, 48000.0}), HasSubstr("silent"));
    EXPECT_THAT(sound_complaint({{std::vector<double>(480, 0.1)}, 48000.0}), HasSubstr("20 ms"));
}

}  // namespace
