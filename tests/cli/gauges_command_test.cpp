// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

const std::string small = " --stop 12 --contact-points 4 --forces 2";

std::vector<std::string> caution_keys(const json& cautions) {
    std::vector<std::string> keys;
    for (const json& caution : cautions) keys.push_back(caution.at("caution"));
    return keys;
}

/// expects  table, JSON and CSV of one run; every candidate with its stops and what it is; the same bytes from its own
///          record on another number of threads
TEST(GaugesCommandTest, AnswersInEveryFormAndRepeatsItsOwnRecord) {
    const Bowband bowband;
    const Outcome outcome =
        bowband.run_line("gauges division_bass_viol --string 1 --diameters-mm 0.5,0.8 --materials gut,nylon" + small +
                         " --threads 1 --json first.json --csv rows.csv");
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    for (const char* said : {"string 1 (D4)", "12 D5", "* gut 0.64 mm", "nylon 0.50 mm", "set pulls",
                             "ranked by the widest contact band at stop 12", "Best by this measure", "glasses"})
        EXPECT_THAT(outcome.out, HasSubstr(said));
    const std::string text = tests::contents(bowband.file("first.json"));
    const json answer = json::parse(text);
    ASSERT_EQ(answer.at("candidates").size(), 5U);
    for (const json& row : answer["candidates"]) {
        EXPECT_THAT(missing_keys(row, {"rank", "string", "present", "gauge", "stops", "wave_impedance_kg_s",
                                       "inharmonicity", "q_1", "tension_newtons", "breaking_product_hz_m",
                                       "to_likely_break_semitones", "set_pull_newtons", "cautions"}),
                    testing::IsEmpty());
        EXPECT_THAT(missing_keys(row["stops"][0], {"band", "best_mm", "security", "forgiveness_db", "brightness_f0",
                                                   "force_min_newtons"}),
                    testing::IsEmpty());
        EXPECT_EQ(row["breaking_product_hz_m"].is_null(), row["gauge"]["material"] != "gut");
    }
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("rows.csv")), '\n'), 6);
    EXPECT_EQ(bowband.run_line("gauges --repeat first.json --threads 3 --json -").out, text);
}

/// expects  gut raised past the breaking product, and a set raised a tone, draw their cautions in table and JSON
TEST(GaugesCommandTest, RaisedSetDrawsItsCautionsInTableAndJson) {
    const Bowband bowband;
    const std::string line = "gauges alto_viol --raise-semitones 2" + small;
    const Outcome outcome = bowband.run_line(line + " --json set.json");
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    const json answer = json::parse(tests::contents(bowband.file("set.json")));
    EXPECT_EQ(answer["whole_set"], true);
    EXPECT_EQ(answer["strings"].size(), 6U);
    EXPECT_THAT(caution_keys(answer["cautions"]),
                testing::ElementsAre("string_likely_to_break", "pull_above_set_up", "breaking_strings"));
    EXPECT_EQ(answer["cautions"][0]["about"], "1");
    EXPECT_NEAR(answer["cautions"][0]["value"].get<double>(), 222.1 * std::exp2(2.0 / 12.0), 0.1);
    EXPECT_NEAR(answer["pull_newtons"].get<double>() / answer["set_up_pull_newtons"].get<double>(),
                std::exp2(4.0 / 12.0), 1e-4);
    for (const char* said : {"Caution: String 1", "likely to break", "26 % above", "ask a maker", "eyes",
                             "the instrument is set up for 220 N"})
        EXPECT_THAT(outcome.out, HasSubstr(said));
    const json by_pitch = bowband.json(
        "gauges division_bass_viol --string 1 --diameters-mm 0.64 --reference-pitch-hz 466" + small + " --json -");
    EXPECT_EQ(by_pitch["cautions"][0]["caution"], "pull_above_set_up");
}

TEST(GaugesCommandTest, ReplacesStringsOfASetAndEvensItOut) {
    const Bowband bowband;
    const Outcome replaced = bowband.run({"gauges", "division_bass_viol", "--replace", "1=nylon 0.7,3=gut 1.2",
                                          "--stop", "12", "--contact-points", "3", "--forces", "2", "--json", "-"});
    ASSERT_EQ(replaced.exit_code, 0) << replaced.err;
    const json set = json::parse(replaced.out);
    EXPECT_EQ(set["strings"][0]["gauge"]["words"], "nylon 0.70 mm");
    EXPECT_EQ(set["strings"][0]["present"], false);
    EXPECT_EQ(set["strings"][1]["present"], true);
    EXPECT_EQ(set["strings"][2]["gauge"]["words"], "gut 1.20 mm");
    const json even = bowband.json(
        "gauges division_bass_viol --whole-set --tension-newtons 55 --stop 12 --contact-points 3 --forces 2 --json -");
    for (const json& row : even["strings"]) EXPECT_NEAR(row["tension_newtons"].get<double>(), 55.0, 1e-3);
    EXPECT_NEAR(even["pull_newtons"].get<double>(), 6.0 * 55.0, 1e-2);
}

TEST(GaugesCommandTest, RefusesWhatCantBeStrung) {
    const Bowband bowband;
    for (const char* asked :
         {"--string 1 --materials brass", "--string 1 --materials overspun\u00a0steel", "--string 1 --diameters-mm 9",
          "--string 1 --diameters-mm x", "--string 1 --tension-newtons 0", "--string 1 --aim best",
          "--string 1 --aim-stop 7", "--diameters-mm 0.6", "--tension-newtons 40,50", "--raise-semitones 6",
          "--replace 1=gut", "--replace 9=gut/0.6", "--string 1 --mass-g-m 500"}) {
        const Outcome outcome = bowband.run_line(std::string("gauges division_bass_viol ") + asked);
        EXPECT_EQ(outcome.exit_code, 2) << asked;
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    }
    const Outcome overspun = bowband.run(
        {"gauges", "division_bass_viol", "--string", "1", "--materials", "overspun steel", "--diameters-mm", "0.6"});
    EXPECT_EQ(overspun.exit_code, 2);
    EXPECT_THAT(overspun.err, HasSubstr("no string of division bass viol is of overspun steel"));
}

TEST(GaugesCommandTest, DrawsAChartWithItsCautions) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(
        "gauges division_bass_viol --raise-semitones 2 --stop 0,12 --contact-points 4 --forces 2 --quiet --chart "
        "c.svg");
    if (outcome.exit_code == 2) GTEST_SKIP() << outcome.err;
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    const std::string svg = tests::contents(bowband.file("c.svg"));
    for (const char* said : {"stop 12", "pull of the string", "6 D2: overspun gut", "ask a", "the breaking point."})
        EXPECT_THAT(svg, HasSubstr(said));
}

}  // namespace
