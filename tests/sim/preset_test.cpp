// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numbers>

namespace {

/// An environment variable for as long as the object lives.
class Environment {
public:
    Environment(const char* name, const std::string& value) : name_(name) { setenv(name, value.c_str(), 1); }
    ~Environment() { unsetenv(name_); }
    Environment(const Environment&) = delete;
    Environment& operator=(const Environment&) = delete;

private:
    const char* name_;
};

/// The preset as read back from its own text, its file's name restored.
sim::Preset there_and_back(const sim::Preset& preset) {
    sim::Preset back = sim::parse_preset(sim::preset_text(preset), "text");
    back.short_name = preset.short_name;
    back.file = preset.file;
    return back;
}

std::string complaint_of_finding(const std::string& name) {
    try {
        sim::find_preset(name);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

sim::Preset bass() { return sim::find_preset("division_bass_viol"); }

}  // namespace

TEST(PresetTest, IsFoundByPathShortNameAndFullNameInAnyCase) {
    const sim::Preset by_short_name = sim::find_preset("division_bass_viol");
    EXPECT_EQ(by_short_name.short_name, "division_bass_viol");
    EXPECT_EQ(by_short_name.name, "division bass viol");
    EXPECT_EQ(sim::find_preset("Division BASS viol"), by_short_name);
    EXPECT_EQ(sim::find_preset(by_short_name.file.string()), by_short_name);
}

TEST(PresetTest, ThatIsNotFoundListsTheShortNamesAndTheNearest) {
    const std::string what = complaint_of_finding("divison_bass_viol");
    EXPECT_NE(what.find("did you mean division_bass_viol?"), std::string::npos) << what;
    EXPECT_NE(what.find("violone_in_g"), std::string::npos) << what;
    EXPECT_EQ(what.find('\n'), std::string::npos) << what;
}

TEST(PresetTest, FolderOfPresetsCanBeNamedByTheEnvironment) {
    const std::filesystem::path folder = std::filesystem::path(testing::TempDir()) / "bowband_own_presets";
    std::filesystem::create_directories(folder);
    std::ofstream(folder / "mine.json") << sim::preset_text(bass());
    std::ofstream(folder / "broken.json") << "{";
    const Environment environment("BOWBAND_PRESETS_DIR", folder.string());
    EXPECT_EQ(sim::shipped_presets().size(), 2u);
    EXPECT_EQ(sim::find_preset("mine").short_name, "mine");
    EXPECT_EQ(sim::find_preset("division bass viol").short_name, "mine");  // past its broken neighbour
    EXPECT_NE(complaint_of_finding("violin").find("broken, mine"), std::string::npos);
    std::filesystem::remove_all(folder);
}

TEST(PresetTest, FolderNamedByTheEnvironmentMustExist) {
    const Environment environment("BOWBAND_PRESETS_DIR", "/no/such/folder");
    EXPECT_NE(complaint_of_finding("violin").find("must name a folder of presets"), std::string::npos);
}

TEST(PresetTest, StringIsNamedByItsNameOrItsPitch) {
    const sim::Preset preset = bass();
    EXPECT_EQ(sim::preset_string(preset, "1").pitch, "D4");
    EXPECT_EQ(sim::preset_string(preset, "D2").name, "6");
    try {
        sim::preset_string(preset, "7");
        ADD_FAILURE() << "a seventh string was found";
    } catch (const analysis::InputError& error) {
        EXPECT_NE(std::string(error.what()).find("1 (D4), 2 (A3)"), std::string::npos) << error.what();
    }
}

TEST(PresetTest, PitchesAreTunedFromTheReference) {
    EXPECT_DOUBLE_EQ(sim::pitch_frequency("A4", 415.0), 415.0);
    EXPECT_DOUBLE_EQ(sim::pitch_frequency("A2", 415.0), 103.75);
    EXPECT_DOUBLE_EQ(sim::pitch_frequency("A#3", 440.0), sim::pitch_frequency("Bb3", 440.0));
    EXPECT_DOUBLE_EQ(sim::pitch_frequency("Cb4", 440.0), sim::pitch_frequency("B3", 440.0));
    EXPECT_NEAR(sim::pitch_frequency("C4", 440.0), 261.6256, 1e-4);  // 440 / 2^(9/12)
    for (const char* bad : {"", "D", "4", "H4", "d4", "D#b4", "D44", "D-1", "Dbbb4", " D4", "D 4"}) {
        EXPECT_THROW(sim::pitch_frequency(bad, 440.0), analysis::InputError) << bad;
    }
}

TEST(PresetTest, NameOfAPitchIsThatOfTheNearestSemitone) {
    EXPECT_EQ(sim::pitch_name(440.0, 440.0), "A4");
    EXPECT_EQ(sim::pitch_name(440.0, 415.0), "Bb4");
    EXPECT_EQ(sim::pitch_name(261.6, 440.0), "C4");
    EXPECT_EQ(sim::pitch_name(254.2, 440.0), "C4");  // 50 cents below C4 lies 254.18
    EXPECT_EQ(sim::pitch_name(254.1, 440.0), "B3");
    EXPECT_EQ(sim::pitch_name(16.35, 440.0), "C0");
}

/// source   T = m (2 L f)^2, m = rho pi d^2 / 4, worked out by hand: D4 at A4 = 415 Hz, 690 mm, gut .64 mm, 1300 kg/m^3
/// expects  0.418 g/m, 61.1 N, 0.160 kg/s
/// margin   half of the last digit given
TEST(PresetTest, TopStringOfTheDivisionBassComesOutAsWorkedOutByHand) {
    const sim::Preset preset = bass();
    const sim::String open = sim::open_string(preset, preset.strings[0]);
    EXPECT_NEAR(analysis::g_m_from_kg_m(open.mass_per_length), 0.418, 0.0005);
    EXPECT_NEAR(open.tension, 61.1, 0.05);
    EXPECT_NEAR(sim::wave_impedance(open), 0.160, 0.0005);
    EXPECT_NEAR(sim::fundamental(open), sim::pitch_frequency("D4", 415.0), 1e-9);
}

/// As above for the treble's D5: 360 mm, gut .44 mm.
TEST(PresetTest, TopStringOfTheTrebleComesOutAsWorkedOutByHand) {
    const sim::Preset preset = sim::find_preset("treble_viol");
    const sim::String open = sim::open_string(preset, preset.strings[0]);
    EXPECT_NEAR(analysis::g_m_from_kg_m(open.mass_per_length), 0.198, 0.0005);
    EXPECT_NEAR(open.tension, 31.5, 0.06);
    EXPECT_NEAR(sim::wave_impedance(open), 0.079, 0.0005);
}

TEST(PresetTest, GaugeFillsWhatItDoesNotGiveFromTheMaterial) {
    sim::Preset preset = bass();
    sim::PresetString string = preset.strings[0];
    const sim::String by_diameter = sim::open_string(preset, string);
    EXPECT_NEAR(by_diameter.bending_stiffness, 5.5e9 * std::numbers::pi * std::pow(0.64e-3, 4) / 64.0, 1e-12);
    EXPECT_NEAR(by_diameter.torsion_speed, std::sqrt(1.5e9 / 1300.0), 1e-9);
    EXPECT_NEAR(by_diameter.torsion_impedance, by_diameter.mass_per_length * by_diameter.torsion_speed / 2.0, 1e-12);
    EXPECT_EQ(by_diameter.damping.torsion_q, 20.0);

    string.gauge.mass_per_length = by_diameter.mass_per_length;
    string.gauge.diameter.reset();
    const sim::String by_mass = sim::open_string(preset, string);
    EXPECT_NEAR(by_mass.bending_stiffness / by_diameter.bending_stiffness, 1.0, 1e-12);

    string.gauge.bending_diameter = 0.32e-3;  // half as thick: a sixteenth as stiff
    EXPECT_NEAR(sim::open_string(preset, string).bending_stiffness / by_diameter.bending_stiffness, 1.0 / 16.0, 1e-12);
    string.gauge.bending_stiffness = 3e-4;
    EXPECT_EQ(sim::open_string(preset, string).bending_stiffness, 3e-4);
}

TEST(PresetTest, OverspunStringTwistsAsItsGaugeSays) {
    const sim::Preset preset = bass();
    const sim::String open = sim::open_string(preset, preset.strings[5]);
    EXPECT_EQ(open.torsion_impedance, 2.1);
    EXPECT_NEAR(open.torsion_speed / sim::wave_speed(open), 5.0, 1e-12);
}

TEST(PresetTest, PartsSwitchedOffAreZero) {
    const sim::Preset preset = bass();
    sim::PresetString string = preset.strings[0];
    string.damping = string.torsion = string.stiffness = false;
    const sim::String open = sim::open_string(preset, string);
    EXPECT_EQ(open.damping, sim::Damping{});
    EXPECT_EQ(open.torsion_impedance, 0.0);
    EXPECT_EQ(open.torsion_speed, 0.0);
    EXPECT_EQ(open.bending_stiffness, 0.0);
}

/// A stop s lies at 2^(-s/12) of the string from the bridge; the board reaches to 1 - board_end_ratio of it.
TEST(PresetTest, LastStopLiesOnTheBoardAndTheNextDoesNot) {
    sim::Preset preset = bass();
    EXPECT_EQ(sim::last_stop(preset), 22.0);  // 2^(-22/12) = .2806 > .28 > 2^(-23/12)
    preset.board_end_ratio = 0.5;
    EXPECT_EQ(sim::last_stop(preset), 12.0);
    preset.board_end_ratio = 0.75;
    EXPECT_EQ(sim::last_stop(preset), 24.0);
}

TEST(PresetTest, ContactFloorIsHalfTheHairAndTwoMillimetres) { EXPECT_DOUBLE_EQ(sim::contact_floor(bass()), 0.007); }

TEST(PresetTest, TextGivesBackEverySetting) {
    sim::Preset preset = bass();
    preset.temperament = sim::Temperament::sixth_comma;
    preset.chromatic_frets = {1, 6};
    preset.finger_q = 80.0;
    preset.friction.thermal = {.layer = 7e-6,
                               .spot_radius = 2.1e-5,
                               .density = 1050.0,
                               .specific_heat = 1700.0,
                               .conductivity = 0.25,
                               .contact_pressure = 1.9e7,
                               .area_grows_with_force = false};
    preset.strings[0].damping = preset.strings[1].torsion = preset.strings[2].stiffness = false;
    preset.strings[0].gauge.bending_stiffness = 4.53e-5;
    preset.bow = {.hair_points = 5,
                  .hair_in_use = 0.6,
                  .stiffness = 2.5e5,
                  .resistance = 10.0,
                  .mass = 1.7e-3,
                  .upright_resistance = 1.3,
                  .bridge_lean = 0.5};
    preset.sources[""] = "invented";
    EXPECT_EQ(there_and_back(preset), preset);
    for (const sim::FrictionLaw law : {sim::FrictionLaw::hyperbola, sim::FrictionLaw::coulomb}) {
        preset.friction.law = law;  // as an option would set it over the file's own
        EXPECT_EQ(there_and_back(preset), preset);
    }
    preset.bridge = {.kind = sim::BridgeKind::resistance, .resistance = 20.0, .modes = {}};
    EXPECT_EQ(there_and_back(preset), preset);
    preset.bridge = {};
    EXPECT_EQ(there_and_back(preset), preset);
    preset.measured_bridge = "mine.csv";
    EXPECT_EQ(there_and_back(preset), preset);
}

TEST(PresetTest, TextKeepsUsualValuesThatASourceSpeaksOf) {
    sim::Preset preset = bass();
    preset.sources["/finger_q"] = "from memory";
    preset.sources["/friction/static"] = "invented";
    preset.sources["/friction/rosin_conductivity_w_m_k"] = "from memory";
    EXPECT_EQ(there_and_back(preset), preset);
}

/// Millimetres and grams in the file, metres and kilograms inside: no bit may be lost between.
TEST(PresetTest, TextGivesBackEveryBitOfConvertedNumbers) {
    sim::Preset preset = bass();
    for (int hundredths = 5; hundredths <= 600; ++hundredths) {
        preset.strings[0].gauge.diameter = analysis::metres_from_mm(hundredths / 100.0);
        preset.strings[5].gauge.mass_per_length = analysis::kg_m_from_g_m(5.0 + hundredths * 0.001);
        preset.strings[0].length = analysis::metres_from_mm(200.0 + hundredths / 7.0);
        preset.player.rise = analysis::seconds_from_ms(hundredths / 3.0);
        // keep the tension within bounds whatever the diameter
        preset.strings[0].pitch = hundredths < 30 ? "D7" : hundredths < 150 ? "D4" : "D2";
        ASSERT_EQ(there_and_back(preset), preset) << hundredths;
    }
}

TEST(PresetTest, TextShowsTheNumbersOfTheFile) {
    const std::string text = sim::preset_text(bass());
    for (const char* shown : {"\"diameter_mm\": 0.64,", "\"mass_g_m\": 5.687,", "\"length_mm\": 690,",
                              "\"rise_ms\": 60,", "\"speed_m_s\": 0.2,"}) {
        EXPECT_NE(text.find(shown), std::string::npos) << shown;
    }
}

TEST(PresetTest, TemperamentsAreNamedBothWays) {
    for (const char* name : {"equal", "quarter_comma", "fifth_comma", "sixth_comma", "rule_of_18"}) {
        ASSERT_TRUE(sim::temperament_from_name(name).has_value()) << name;
        EXPECT_EQ(sim::temperament_name(*sim::temperament_from_name(name)), name);
    }
    EXPECT_FALSE(sim::temperament_from_name("third_comma").has_value());
}
