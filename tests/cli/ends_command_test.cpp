// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"
#include "tests/published/wolf_cello.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

const std::string small_ends = "ends treble_viol --stop 12 --contact-mm 18 --held-points 1 --law hyperbola";

TEST(EndsCommandTest, JsonHoldsEveryEndAndRepeatsItself) {
    const Bowband bowband;
    const Outcome first = bowband.run_line(small_ends + " --json first.json --csv first.csv");
    ASSERT_EQ(first.exit_code, 0) << first.err;
    EXPECT_THAT(first.out,
                testing::AllOf(HasSubstr("finger Q 100"), HasSubstr("Against a fret"), HasSubstr("from memory")));
    const std::string text = tests::contents(bowband.file("first.json"));
    const json answer = json::parse(text);
    EXPECT_THAT(missing_keys(answer, {"run", "note", "contact_mm", "usual_end", "usual_finger_q", "ends"}),
                testing::IsEmpty());
    EXPECT_EQ(answer["usual_end"], "finger");
    ASSERT_EQ(answer["ends"].size(), 4U);  // fret, and fingers of Q 50, 100, 200
    for (const json& end : answer["ends"]) {
        EXPECT_THAT(missing_keys(end, {"stop_end", "finger_q", "points", "stroke", "ring_time_s", "partials"}),
                    testing::IsEmpty());
        ASSERT_EQ(end["points"].size(), 1U);
        EXPECT_EQ(end["points"][0]["contact_mm"], 18.0);
        EXPECT_THAT(missing_keys(end["points"][0], {"held_min_newtons", "held_max_newtons", "one_interval"}),
                    testing::IsEmpty());
        EXPECT_EQ(end["partials"].size(), 20U);
    }
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("first.csv")), '\n'), 5);
    EXPECT_EQ(bowband.run_line("ends --repeat first.json --threads 1 --json -").out, text);
}

TEST(EndsCommandTest, OpenStringHasTheNutToo) {
    const Bowband bowband;
    const json answer = bowband.json("ends treble_viol --contact-mm 31 --held-points 1 --law coulomb --json -");
    ASSERT_EQ(answer["ends"].size(), 5U);
    EXPECT_EQ(answer["ends"][0]["stop_end"], "nut");
    EXPECT_EQ(answer["ends"][0]["ring_time_s"], answer["ends"][1]["ring_time_s"]);
}

TEST(EndsCommandTest, RangeOfPlacesAndSingleForceAreRefused) {
    const Bowband bowband;
    EXPECT_EQ(bowband.run_line("ends treble_viol --stop 12 --contact-mm 10:20").exit_code, 2);
    EXPECT_EQ(bowband.run_line("ends treble_viol --stop 12 --force-newtons 0.1").exit_code, 2);
    EXPECT_EQ(bowband.run_line("ends treble_viol --stop 12 --held-points 0").exit_code, 2);
}

/// expects  a short stroke not to be listened to; a long one on a strong mode to be called a wolf, one two semitones
///          away not
TEST(NoteCommandTest, NamesAWolf) {
    const Bowband bowband;
    tests::put(bowband.file("wolf.json"), sim::preset_text(tests::wolf_cello(0.15)));
    const std::string note = "note wolf.json --string 3 --stop-end fret --contact-mm 34 --speed-m-s 0.1 ";
    const json brief = bowband.json(note + "--stop 10.9 --force-newtons 0.4 --json -");
    EXPECT_FALSE(brief["warble_listened"].get<bool>());
    EXPECT_TRUE(brief["warble"].is_null());
    const json wolf = bowband.json(note + "--stop 10.9 --force-newtons 0.4 --seconds 3 --json -");
    ASSERT_FALSE(wolf["warble"].is_null());
    EXPECT_TRUE(wolf["warble"]["wolf"].get<bool>());
    EXPECT_EQ(wolf["warble"]["body_mode_hz"], 180.0);
    EXPECT_GT(wolf["warble"]["depth_db"].get<double>(), 3.0);
    EXPECT_THAT(bowband.run_line(note + "--stop 10.9 --force-newtons 0.4 --seconds 3").out, HasSubstr("a wolf"));
    const json away = bowband.json(note + "--stop 12.5 --force-newtons 0.4 --seconds 3 --json -");
    EXPECT_TRUE(away["warble_listened"].get<bool>());
    EXPECT_TRUE(away["warble"].is_null());
}

}  // namespace
