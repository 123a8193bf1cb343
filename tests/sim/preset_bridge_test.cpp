// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_bridge.hpp"

#include "analysis/errors.hpp"
#include "tests/analysis/temporary_folder.hpp"
#include "tests/sim/admittances.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using testing::AllOf;
using testing::HasSubstr;
using tests::TemporaryFolder;

/// A table of the bridge's own admittance, as a laboratory would write it.
std::string table_of(const sim::Bridge& bridge) {
    std::string text = "hz,real,imag\n";
    for (const double hz : tests::log_hz(50.0, 4000.0, 500)) {
        const std::complex<double> y = sim::admittance(bridge, hz);
        text += std::to_string(hz) + "," + std::to_string(y.real()) + "," + std::to_string(y.imag()) + "\n";
    }
    return text;
}

/// The division bass viol with a measured bridge, written as a file beside the measurement.
void put_preset(const TemporaryFolder& folder, const std::string& source_pointer = "/bridge") {
    sim::Preset preset = sim::find_preset("division_bass_viol");
    tests::put(folder / "mine.csv", table_of(preset.bridge));
    preset.bridge = {};
    preset.measured_bridge = "mine.csv";
    preset.sources.erase("/bridge");
    if (!source_pointer.empty()) preset.sources[source_pointer] = "measured, by us";
    tests::put(folder / "mine.json", sim::preset_text(preset));
}

std::string complaint_of(const std::filesystem::path& file) {
    try {
        sim::read_preset(file);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

/// margin   0.5 % and 4 %: the table has six decimals, which is 0.1 % of the valleys and more
TEST(PresetBridgeTest, MeasuredBridgeIsFittedAsThePresetIsRead) {
    const TemporaryFolder folder;
    put_preset(folder);
    const sim::Preset shipped = sim::find_preset("division_bass_viol");
    const sim::Preset preset = sim::read_preset(folder / "mine.json");
    EXPECT_EQ(preset.bridge.kind, sim::BridgeKind::modes);
    ASSERT_EQ(preset.bridge.modes.size(), shipped.bridge.modes.size());
    for (std::size_t i = 0; i < shipped.bridge.modes.size(); ++i) {
        EXPECT_NEAR(preset.bridge.modes[i].frequency / shipped.bridge.modes[i].frequency, 1.0, 5e-3);
        EXPECT_NEAR(preset.bridge.modes[i].mass / shipped.bridge.modes[i].mass, 1.0, 0.04);
        EXPECT_EQ(preset.bridge.modes[i].radiation, 1.0);
    }
}

/// expects  a text (which every run record holds) that needs the measurement no more
TEST(PresetBridgeTest, TextHoldsTheModesAndNotTheFile) {
    for (const char* source : {"/bridge", "/bridge/measured", ""}) {
        const TemporaryFolder folder;
        put_preset(folder, source);
        const sim::Preset preset = sim::read_preset(folder / "mine.json");
        std::filesystem::remove(folder / "mine.csv");
        const std::string text = sim::preset_text(preset);
        sim::Preset back = sim::parse_preset(text, "text");
        back.short_name = preset.short_name;
        back.file = preset.file;
        EXPECT_EQ(back, preset) << source;
        EXPECT_EQ(sim::preset_text(back), text);
        EXPECT_THAT(preset.sources.at("/bridge"), testing::StartsWith("measured"));
        EXPECT_TRUE(preset.measured_bridge.empty());
    }
}

TEST(PresetBridgeTest, MissingOrUselessMeasurementIsNamed) {
    const TemporaryFolder folder;
    put_preset(folder);
    tests::put(folder / "mine.csv", "hz,real\n1,2\n");
    EXPECT_THAT(complaint_of(folder / "mine.json"), AllOf(HasSubstr("mine.csv"), HasSubstr("imag")));
    std::filesystem::remove(folder / "mine.csv");
    EXPECT_THAT(complaint_of(folder / "mine.json"),
                AllOf(HasSubstr("mine.json /bridge/measured"), HasSubstr("mine.csv")));
}

TEST(PresetBridgeTest, PresetTakesFittedModesWithTheirSource) {
    const sim::MeasuredBridge measured = tests::measured(tests::wide_body(), tests::log_hz(60.0, 2500.0, 400));
    const sim::BridgeFit fit = sim::fit_bridge(measured, {.modes = 6, .range = {}}, "y.csv");
    const sim::Preset preset = sim::with_bridge(sim::find_preset("treble_viol"), "mine", fit, "y\xFF.csv");
    const sim::Preset back = sim::parse_preset(sim::preset_text(preset), "text");
    EXPECT_EQ(back.bridge, preset.bridge);
    EXPECT_EQ(back.bridge.modes, fit.modes);
    EXPECT_EQ(back.name, "mine");
    EXPECT_THAT(back.sources.at("/bridge"), HasSubstr("measured"));
}

TEST(PresetBridgeTest, MeasurementIsFoundByPathAndBesideTheShippedPresets) {
    EXPECT_TRUE(std::filesystem::exists(sim::find_measurement("example_bridge.csv")));
    EXPECT_THROW(sim::find_measurement("no such thing.csv"), analysis::InputError);
    EXPECT_THROW(sim::find_measurement(""), analysis::InputError);
}

}  // namespace
