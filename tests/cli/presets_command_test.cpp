// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

TEST(PresetsCommandTest, ListsEveryInstrumentWithItsStrings) {
    const Bowband bowband;
    const json presets = bowband.json("presets --json -").at("presets");
    EXPECT_EQ(presets.size(), 12U);
    for (const json& preset : presets) {
        EXPECT_THAT(missing_keys(preset, {"name", "file", "short_name", "kind", "strings"}), testing::IsEmpty());
        for (const json& string : preset["strings"])
            EXPECT_THAT(missing_keys(string, {"name", "pitch", "length_mm", "mass_g_m", "tension_newtons",
                                              "wave_impedance_kg_s", "bending_stiffness_n_m2", "inharmonicity",
                                              "torsion_ratio", "torsion_impedance_kg_s", "q_1", "q_10", "torsion_q",
                                              "density_source", "moduli_source", "losses_source", "torsion_q_source",
                                              "breaking_product_hz_m", "source"}),
                        testing::IsEmpty());
    }
}

/// expects  the descant's gut at A392 (223.5 Hz m) and the alto's (222.1 Hz m) to be called near the limit, no other
TEST(PresetsCommandTest, NamesStringsNearTheirBreakingLimit) {
    const Bowband bowband;
    std::vector<std::string> near;
    const json presets = bowband.json("presets --json -").at("presets");
    for (const json& preset : presets)
        for (const json& string : preset["strings"])
            if (!string["breaking_risk"].is_null()) near.push_back(preset["short_name"]);
    EXPECT_THAT(near, testing::UnorderedElementsAre("alto_viol", "descant_viol"));
    EXPECT_THAT(bowband.run_line("presets").out,
                testing::AllOf(HasSubstr("near the limit"), HasSubstr("glasses"), HasSubstr("maker")));
}

/// expects  a copy that is in order, and no overwriting of what is there
TEST(PresetsCommandTest, StartsANewPresetFromAnother) {
    const Bowband bowband;
    EXPECT_EQ(bowband.run_line("presets --new mine.json --from violin").exit_code, 0);
    EXPECT_EQ(bowband.run_line("presets --check mine.json").exit_code, 0);
    const std::string before = tests::contents(bowband.file("mine.json"));
    EXPECT_EQ(bowband.run_line("presets --new mine.json --from cello").exit_code, 2);
    EXPECT_EQ(tests::contents(bowband.file("mine.json")), before);
}

TEST(PresetsCommandTest, ShowsAPresetThatReadsBack) {
    const Bowband bowband;
    tests::put(bowband.file("shown.json"), bowband.run_line("presets --show cello").out);
    EXPECT_EQ(bowband.run_line("presets --check shown.json").exit_code, 0);
}

}  // namespace
