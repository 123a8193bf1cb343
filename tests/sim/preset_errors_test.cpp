// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/errors.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <functional>
#include <string>
#include <vector>

namespace {

using nlohmann::json;

std::string complaint_about(const std::string& text) {
    try {
        sim::parse_preset(text, "my.json");
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

/// The complaint about a good preset after one change; empty if it is still accepted.
std::string complaint_after(const std::function<void(json&)>& change) {
    json document = json::parse(sim::preset_text(sim::find_preset("division_bass_viol")));
    change(document);
    return complaint_about(document.dump());
}

/// One line that begins with file and pointer and tells all of `told`.
void expect_told(const std::string& what, const std::string& pointer, const std::vector<std::string>& told) {
    EXPECT_TRUE(what.starts_with("my.json" + (pointer.empty() ? "" : " " + pointer) + ": ")) << what;
    EXPECT_EQ(what.find('\n'), std::string::npos) << what;
    for (const std::string& part : told) {
        EXPECT_NE(what.find(part), std::string::npos) << "no \"" << part << "\" in: " << what;
    }
}

/// The same for a value put at `pointer`.
void expect_refused(const std::string& pointer, const json& value, const std::vector<std::string>& told) {
    expect_told(complaint_after([&](json& document) { document[json::json_pointer(pointer)] = value; }), pointer, told);
}

std::string complaint_of_reading(const std::filesystem::path& file) {
    try {
        sim::read_preset(file);
    } catch (const analysis::InputError& error) {
        return error.what();
    }
    return "";
}

}  // namespace

TEST(PresetErrorsTest, GoodPresetIsAccepted) {
    EXPECT_EQ(complaint_after([](json&) {}), "");
}

TEST(PresetErrorsTest, UnknownKeyIsNamedWithTheNearestKnownOne) {
    expect_refused("/strings/0/lenght_mm", 690, {"unknown key \"lenght_mm\"", "did you mean \"length_mm\"", "gauge"});
    expect_refused("/player/rise_s", 0.06, {"unknown key", "\"rise_ms\""});
    expect_refused("/strings/0/gauge/colour", 1, {"unknown key \"colour\"", "diameter_mm"});
    expect_refused("/bridge/modes/0/Q", 20, {"unknown key \"Q\"", "radiation"});
    expect_refused("/friction/mu", 0.8, {"unknown key", "static"});
    expect_refused("/fingerQ", 80, {"\"finger_q\""});
}

TEST(PresetErrorsTest, MissingKeyIsNamed) {
    for (const char* pointer : {"/format",
                                "/name",
                                "/kind",
                                "/reference_pitch_hz",
                                "/frets",
                                "/board_end_ratio",
                                "/hair_width_mm",
                                "/player",
                                "/strings",
                                "/bridge",
                                "/friction",
                                "/sources",
                                "/player/force_newtons",
                                "/player/hand_span_mm",
                                "/strings/2/pitch",
                                "/strings/2/length_mm",
                                "/strings/2/gauge",
                                "/strings/2/gauge/material",
                                "/strings/2/gauge/diameter_mm",
                                "/strings/5/gauge/mass_g_m",
                                "/strings/5/gauge/bending_diameter_mm",
                                "/strings/5/gauge/torsion_ratio",
                                "/strings/5/gauge/torsion_impedance_kg_s",
                                "/bridge/modes/3/q",
                                "/friction/law"}) {
        const json::json_pointer place(pointer);
        const std::string what =
            complaint_after([&](json& document) { document[place.parent_pointer()].erase(place.back()); });
        expect_told(what, pointer, {"missing key"});
    }
}

TEST(PresetErrorsTest, WrongTypeIsNamedWithWhatIsWanted) {
    expect_refused("/strings/0/length_mm", "690", {"50 to 2000 mm", "without quotes", "the text \"690\""});
    expect_refused("/strings/0/length_mm", nullptr, {"50 to 2000 mm", "null"});
    expect_refused("/strings", json::object(), {"must be a list", "an object"});
    expect_refused("/player", 3, {"must be an object", "is 3"});
    expect_refused("/name", 7, {"text in quotes"});
    expect_refused("/guide_fret", "yes", {"true or false"});
    expect_refused("/frets", "7", {"whole number from 0 to 24", "without quotes"});
    expect_refused("/frets", 6.5, {"whole number", "6.5"});
    expect_refused("/strings/0/damping", false, {"\"none\""});
    expect_refused("/player/force_newtons", 0.2, {"must be a list"});
    expect_refused("/bridge", json::array(), {"must be an object"});
    expect_refused("/format", 2, {"must be 1"});
    expect_told(complaint_about("[]"), "", {"JSON object"});
}

TEST(PresetErrorsTest, AbsurdNumberIsRefusedWithItsRange) {
    expect_refused("/reference_pitch_hz", 4400, {"300 to 550 Hz", "4400"});
    expect_refused("/board_end_ratio", 72, {"0.3 to 0.95"});
    expect_refused("/hair_width_mm", 0, {"1 to 30 mm"});
    expect_refused("/finger_q", 0, {"5 to 5000"});
    expect_refused("/strings/0/length_mm", -690, {"50 to 2000 mm", "-690"});
    expect_refused("/strings/0/gauge/diameter_mm", 64, {"0.05 to 6 mm"});
    expect_refused("/strings/5/gauge/torsion_ratio", 0, {"1 to 50"});
    expect_refused("/bridge/modes/0/q", 0, {"0.5 to 5000"});
    expect_refused("/bridge/modes/0/mass_kg", 0, {"0.0001 to 1000 kg"});
    expect_refused("/player/wander_mm", -1, {"0 to 50 mm"});
    expect_refused("/player/band_share", 1.2, {"0.01 to 1"});
    expect_refused("/strings/0/gauge/mass_g_m", 20, {"kg/m^3"});
}

TEST(PresetErrorsTest, TensionNoStringBearsIsRefused) {
    json thick = {{"material", "gut"}, {"diameter_mm", 6}};
    expect_refused("/strings/0/gauge", thick, {"tension of 5370", "0.5 to 2000 N"});
}

TEST(PresetErrorsTest, WordNotInTheListIsRefusedWithTheList) {
    expect_refused("/temperament", "third_comma", {"quarter_comma", "rule_of_18"});
    expect_refused("/friction/law", "coulombe", {"thermal", "coulomb"});
    expect_refused("/strings/0/gauge/material", "brass", {"overspun gut", "brass"});
    expect_refused("/strings/0/pitch", "H4", {"D4, Bb3", "H4"});
    expect_refused("/strings/0/name", "", {"empty"});
    expect_refused("/name", "a\nb", {"one line"});
}

TEST(PresetErrorsTest, StringsMustBeThereAndDifferInName) {
    expect_refused("/strings", json::array(), {"1 to 32 strings"});
    expect_refused("/strings/3/name", "1", {"also the name of /strings/0"});
}

TEST(PresetErrorsTest, BridgeIsOfOneKind) {
    const json resistance = {{"resistance_kg_s", 20}};
    EXPECT_EQ(complaint_after([&](json& document) { document["bridge"] = resistance; }), "");
    expect_refused("/bridge", {{"resistance_kg_s", 20}, {"rigid", true}}, {"one of", "resistance_kg_s, rigid"});
    expect_refused("/bridge", json::object(), {"one of", "nothing"});
    expect_refused("/bridge/modes", json::array(), {"1 to 64 modes"});
    const std::string what = complaint_after([](json& document) { document["bridge"] = {{"rigid", false}}; });
    expect_told(what, "/bridge/rigid", {"must be true"});
}

TEST(PresetErrorsTest, FrictionMustFallWithSpeed) {
    expect_told(
        complaint_after([](json& document) {
            document["friction"] = {{"law", "hyperbola"}, {"static", 0.3}, {"sliding", 0.8}, {"corner_speed_m_s", 0.2}};
            document["sources"]["/friction"] = "invented";
        }),
        "/friction/sliding", {"must not be greater than \"static\"", "0.8 against 0.3"});
    expect_told(complaint_after([](json& document) {
                    document["friction"] = {{"law", "coulomb"}, {"static", 0.8}};
                }),
                "/friction/sliding", {"missing key"});
    expect_refused("/friction/contact_area", "round", {"grows_with_force", "fixed", "round"});
    expect_refused("/friction/layer_um", 0, {"um"});
    expect_refused("/bow/hair_points", 0, {"1 to 15"});
    expect_refused("/bow/hair_mass_g", 2, {"hair_stiffness_n_m"});
    expect_refused("/bow/bridge_lean_degrees", 20, {"upright_resistance_kg_s"});
    expect_refused("/bow/wood", "pernambuco", {"unknown key", "hair_points"});
}

TEST(PresetErrorsTest, ForcesRunFromLightToFirm) {
    expect_refused("/player/force_newtons", {0.4, 0.1}, {"first smaller", "[0.4, 0.1]"});
    expect_refused("/player/force_newtons", {0.4, 0.4}, {"first smaller"});
    expect_refused("/player/force_newtons", {0.4}, {"two numbers"});
}

TEST(PresetErrorsTest, ChromaticFretsAreFretsOfTheInstrument) {
    const auto with_frets = [](const json& frets) {
        return complaint_after([&](json& document) { document["chromatic_frets"] = frets; });
    };
    EXPECT_EQ(with_frets({1, 6}), "");
    expect_told(with_frets({1, 1}), "/chromatic_frets/1", {"twice"});
    expect_told(with_frets({8}), "/chromatic_frets/0", {"whole number from 1 to 7"});
}

TEST(PresetErrorsTest, GaugeSaysOneThingOnce) {
    expect_refused("/strings/5/gauge/bending_stiffness_n_m2", 1e-4, {"bending_diameter_mm", "one of the two"});
}

TEST(PresetErrorsTest, NumberWithoutASourceIsNamed) {
    const std::vector<std::pair<const char*, const char*>> cases = {{"/bridge", "/bridge/modes/0/hz"},
                                                                    {"/player", "/player/band_share"},
                                                                    {"/strings", "/strings/0/gauge/diameter_mm"},
                                                                    {"/board_end_ratio", "/board_end_ratio"},
                                                                    {"/hair_width_mm", "/hair_width_mm"},
                                                                    {"/reference_pitch_hz", "/reference_pitch_hz"}};
    for (const auto& [pointer, first] : cases) {
        const std::string what = complaint_after([&](json& document) { document["sources"].erase(pointer); });
        expect_told(what, first, {"has no source", "from memory", "[Woodhouse2004]"});
    }
    expect_refused("/finger_q", 80, {"has no source"});
}

TEST(PresetErrorsTest, SourceMustLeadSomewhereAndSaySomething) {
    const auto with_source = [](const std::string& pointer, const std::string& text) {
        return complaint_after([&](json& document) { document["sources"][pointer] = text; });
    };
    expect_told(with_source("/strings/9", "invented"), "/sources/~1strings~19", {"\"/strings/9\" leads to nothing"});
    expect_told(with_source("/strings/x", "invented"), "/sources/~1strings~1x", {"leads to nothing"});
    expect_told(with_source("strings", "invented"), "/sources/strings", {"leads to nothing"});
    expect_told(with_source("/bridge", ""), "/sources/~1bridge", {"empty"});
    for (const char* weak : {"published", "inventedly", "[Woodhouse]", "[2004]", "see [Woodhouse2004]"}) {
        expect_told(with_source("/bridge", weak), "/sources/~1bridge", {"common practice", weak});
    }
    for (const char* good : {"[Woodhouse2004]", "[Smith2000], table 2", "from memory", "common practice; ours",
                             "invented, scaled", "invented: by us"}) {
        EXPECT_EQ(with_source("/bridge", good), "") << good;
    }
    EXPECT_EQ(with_source("", "invented"), "");
}

TEST(PresetErrorsTest, MalformedJsonIsNamedWithLineAndColumn) {
    expect_told(complaint_about("{ \"format\": 1,\n  \"name\": }"), "", {"must be JSON", "line 2, column 11"});
    expect_told(complaint_about("{ \"name\": \"two\nlines\" }"), "", {"line 2", "control character"});
    expect_told(complaint_about(""), "", {"must be JSON", "line 1"});
    expect_told(complaint_about("{ \"format\": 1e999 }"), "", {"must be JSON", "1e999"});
}

TEST(PresetErrorsTest, KeyThatStandsTwiceIsNamed) {
    expect_told(complaint_about("{ \"strings\": [ 1, { \"name\": \"1\", \"name\": \"2\" } ] }"), "/strings/1/name",
                {"stands twice"});
}

TEST(PresetErrorsTest, FileThatCannotBeReadIsNamed) {
    EXPECT_NE(complaint_of_reading("/no/such/preset.json").find("no such file"), std::string::npos);
    EXPECT_NE(complaint_of_reading("/tmp").find("is a folder"), std::string::npos);
    if (!std::filesystem::exists("/proc/self/mem")) {
        GTEST_SKIP() << "no file here that exists and can't be read, whoever asks";
    }
    EXPECT_NE(complaint_of_reading("/proc/self/mem").find("can't be read"), std::string::npos);
}

TEST(PresetErrorsTest, MeasuredBridgeIsKeptInTheTextAndLookedForBesideThePreset) {
    sim::Preset preset = sim::find_preset("division_bass_viol");
    preset.measured_bridge = "mine.csv";
    const std::filesystem::path file = std::filesystem::path(testing::TempDir()) / "bowband_measured.json";
    std::ofstream(file) << sim::preset_text(preset);
    EXPECT_NE(complaint_of_reading(file).find("/bridge/measured: no such file as \"mine.csv\""), std::string::npos);
    std::filesystem::remove(file);
}
