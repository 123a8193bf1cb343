// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/preset.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace {

class ShippedPreset : public testing::TestWithParam<const char*> {
protected:
    sim::Preset preset() const { return sim::find_preset(GetParam()); }
};

/// Complex sum of the modes' velocities by their radiation weights, m/s/N, as a level in dB.
double radiated_db(const sim::Bridge& bridge, double hz) {
    std::complex<double> sum = 0.0;
    for (const sim::BridgeMode& mode : bridge.modes) {
        const sim::Bridge alone{.kind = sim::BridgeKind::modes, .resistance = 0.0, .modes = {mode}};
        sum += mode.radiation * sim::admittance(alone, hz);
    }
    return analysis::db_from_ratio(std::abs(sum));
}

/// Depth of the deepest dip below the line between the peaks beside it, dB.
double deepest_dip(const std::vector<double>& level) {
    std::vector<std::size_t> peaks;
    for (std::size_t i = 1; i + 1 < level.size(); ++i) {
        if (level[i] >= level[i - 1] && level[i] > level[i + 1]) {
            peaks.push_back(i);
        }
    }
    double deepest = 0.0;
    for (std::size_t k = 0; k + 1 < peaks.size(); ++k) {
        for (std::size_t i = peaks[k]; i < peaks[k + 1]; ++i) {
            const double part = static_cast<double>(i - peaks[k]) / static_cast<double>(peaks[k + 1] - peaks[k]);
            deepest = std::max(deepest, std::lerp(level[peaks[k]], level[peaks[k + 1]], part) - level[i]);
        }
    }
    return deepest;
}

void expect_tensions(const char* name, const std::vector<double>& newtons) {
    const sim::Preset preset = sim::find_preset(name);
    ASSERT_EQ(preset.strings.size(), newtons.size());
    for (std::size_t i = 0; i < newtons.size(); ++i) {
        const sim::String open = sim::open_string(preset, preset.strings[i]);
        EXPECT_NEAR(open.tension / newtons[i], 1.0, 0.01) << preset.strings[i].pitch;
    }
}

}  // namespace

TEST(ShippedPresetsTest, AreTwelve) { EXPECT_EQ(sim::shipped_presets().size(), 12u); }

TEST_P(ShippedPreset, IsGivenBackByItsText) {
    const sim::Preset read = preset();
    sim::Preset back = sim::parse_preset(sim::preset_text(read), "text");
    back.short_name = read.short_name;
    back.file = read.file;
    EXPECT_EQ(back, read);
}

TEST_P(ShippedPreset, ClaimsNothingPublishedWithoutAKey) {
    for (const auto& [pointer, source] : preset().sources) {
        EXPECT_EQ(source.find("published"), std::string::npos) << pointer;
    }
    EXPECT_TRUE(preset().sources.at("/bridge").starts_with("invented, scaled from"));
}

TEST_P(ShippedPreset, HasStringsFromTheTopNamedByNumber) {
    const sim::Preset read = preset();
    for (std::size_t i = 0; i < read.strings.size(); ++i) {
        EXPECT_EQ(read.strings[i].name, std::to_string(i + 1));
        if (i > 0) {
            EXPECT_LT(sim::pitch_frequency(read.strings[i].pitch, 440.0),
                      sim::pitch_frequency(read.strings[i - 1].pitch, 440.0));
        }
    }
    const bool viol = read.kind != "violin" && read.kind != "cello";
    EXPECT_EQ(read.frets, viol ? 7 : 0);
    EXPECT_EQ(read.guide_fret, viol);
}

/// No string's open note or an octave of it sits on a body mode, where it would sound unlike its neighbours.
TEST_P(ShippedPreset, KeepsItsModesOffItsOpenStrings) {
    const sim::Preset read = preset();
    for (const sim::BridgeMode& mode : read.bridge.modes) {
        for (const sim::PresetString& string : read.strings) {
            const double open = sim::pitch_frequency(string.pitch, read.reference_pitch);
            const double cents = analysis::cents_between(mode.frequency, open);
            EXPECT_GT(std::abs(std::remainder(cents, 1200.0)), 20.0) << mode.frequency << " Hz, " << string.pitch;
        }
    }
}

/// The body yields enough to be felt and not so much that it holds the string no more: |Z0 Y| of the top string stays
/// under 0.3, and the bridge's steady yielding adds at most 6 % to that of a string stuck at 1/12 of its length.
TEST_P(ShippedPreset, HasABodyThatHoldsTheString) {
    const sim::Preset read = preset();
    const sim::String top = sim::open_string(read, read.strings[0]);
    for (double hz = 50.0; hz < 6000.0; hz += 1.0) {
        ASSERT_LT(std::abs(sim::admittance(read.bridge, hz)) * sim::wave_impedance(top), 0.3) << hz;
    }
    const double ratio = 1.0 / 12.0;
    const double of_string = top.length * ratio * (1.0 - ratio) / top.tension;
    const double of_bridge = (1.0 - ratio) * (1.0 - ratio) * sim::static_compliance(read.bridge);
    const bool violin = read.kind == "violin";  // heavier built for its strings
    EXPECT_GT(of_bridge / of_string, violin ? 0.005 : 0.02);
    EXPECT_LT(of_bridge / of_string, 0.06);
}

/// Modes must not silence each other between resonances.
/// margin   equal neighbours of Q 20 a third of an octave apart that work together leave Q/2 x 0.26 = 8 dB between
///          them; 15 dB allows for unequal ones, while neighbours that work against each other leave a far deeper null
TEST_P(ShippedPreset, SoundsBetweenItsModes) {
    const sim::Preset read = preset();
    std::vector<double> level;
    for (double hz = 0.9 * read.bridge.modes.front().frequency; hz < 6000.0; hz *= 1.004) {
        level.push_back(radiated_db(read.bridge, hz));
    }
    EXPECT_LT(deepest_dip(level), 15.0);
}

INSTANTIATE_TEST_SUITE_P(All, ShippedPreset,
                         testing::Values("descant_viol", "treble_viol", "alto_viol", "tenor_viol", "consort_bass_viol",
                                         "division_bass_viol", "lyra_bass_viol", "seven_string_bass_viol",
                                         "violone_in_g", "gut_violin", "violin", "cello"),
                         [](const auto& instance) { return std::string(instance.param); });

/// source   tensions usual on such instruments, from memory; masses were chosen for them
/// margin   1 %: the masses are given with four digits, the tensions in whole newtons
TEST(ShippedPresetsTest, ModernStringsPullAsTheyUsuallyDo) {
    expect_tensions("violin", {78.0, 55.0, 46.0, 45.0});
    expect_tensions("cello", {172.0, 138.0, 135.0, 132.0});
}

/// A string as heavy as plain gut of 2.36 mm: 1300 kg/m^3 x pi/4 x (2.36 mm)^2 = 5.687 g/m.
TEST(ShippedPresetsTest, LowestStringOfTheBassWeighsAsPlainGutOfItsGauge) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const sim::String open = sim::open_string(preset, sim::preset_string(preset, "D2"));
    EXPECT_NEAR(analysis::g_m_from_kg_m(open.mass_per_length), 5.687, 0.0005);
}
