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

/// expects  table, JSON and CSV of one run; fret 4 of 1/4 comma meantone at 138.0 mm on 690 mm, fret 1 chromatic nearer
///          the nut than diatonic; and the same bytes from its own record
TEST(FretsCommandTest, AnswersInEveryFormAndRepeatsItsOwnRecord) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(
        "frets division_bass_viol --temperament quarter_comma --chromatic-frets 1 --json first.json --csv rows.csv");
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    for (const char* said : {"1/4 comma meantone, fret 1 chromatic, the others diatonic", "138.0", "guide", "345.0",
                             "bare board", "Not corrected"})
        EXPECT_THAT(outcome.out, HasSubstr(said));
    const std::string text = tests::contents(bowband.file("first.json"));
    const json answer = json::parse(text);
    ASSERT_EQ(answer.at("frets").size(), 7U);
    EXPECT_NEAR(answer["frets"][3]["stop_from_nut_mm"].get<double>(), 138.0, 1e-3);
    EXPECT_EQ(answer["frets"][0]["kind"], "chromatic");
    EXPECT_EQ(answer["frets"][5]["kind"], "diatonic");
    EXPECT_TRUE(answer["frets"][1]["kind"].is_null());
    EXPECT_NEAR(answer["guide_fret"]["stop_from_nut_mm"].get<double>(), 345.0, 1e-3);
    EXPECT_TRUE(answer["contact_ruler"].is_null());
    EXPECT_THAT(missing_keys(answer["frets"][0]["strings"][0],
                             {"string", "pitch_name", "pitch_hz", "sharpened_cents", "pitch_cents", "own_place_mm"}),
                testing::IsEmpty());
    // heading, 7 frets on 6 strings, the guide, 15 semitones of bare board
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("rows.csv")), '\n'), 1 + 7 * 6 + 1 + 15);
    EXPECT_EQ(bowband.run_line("frets --repeat first.json --json -").out, text);
}

TEST(FretsCommandTest, CorrectsForPressedStringsAndSaysWhatIsLeft) {
    const Bowband bowband;
    const json plain = bowband.json("frets division_bass_viol --json -");
    const json pressed = bowband.json("frets division_bass_viol --height-at-octave-mm 6 --json -");
    for (std::size_t i = 0; i < 7; ++i) {
        EXPECT_LT(pressed["frets"][i]["stop_from_nut_mm"], plain["frets"][i]["stop_from_nut_mm"]);
        double sum = 0.0;
        for (const json& string : pressed["frets"][i]["strings"]) sum += std::abs(string["pitch_cents"].get<double>());
        EXPECT_GT(sum, 0.0);
    }
    EXPECT_THAT(bowband.run_line("frets division_bass_viol --height-at-octave-mm 6").out,
                testing::AllOf(HasSubstr("6 mm at the octave"), HasSubstr("the greatest error is")));
}

TEST(FretsCommandTest, RefusesWhatIsNoFretNoHeightAndNoStrip) {
    const Bowband bowband;
    for (const char* asked : {"--chromatic-frets 2 --temperament quarter_comma", "--chromatic-frets 9",
                              "--chromatic-frets x", "--height-at-octave-mm 50", "--height-at-nut-mm -1",
                              "--strip board.txt", "--strip a.svg --paper a3", "--strip a.svg --ruler a.svg"}) {
        const Outcome outcome = bowband.run_line(std::string("frets division_bass_viol ") + asked);
        EXPECT_EQ(outcome.exit_code, 2) << asked;
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << asked;
    }
    EXPECT_EQ(bowband.file_count(), 0U);
}

TEST(FretsCommandTest, PrintsStripAndRuler) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(
        "frets treble_viol --stop 0,12 --contact-points 8 --forces 3 --strip strip.svg --ruler ruler.pdf --quiet "
        "--json x.json");
    if (outcome.exit_code == 2) GTEST_SKIP() << outcome.err;
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(tests::contents(bowband.file("strip.svg")), HasSubstr("treble viol: frets"));
    EXPECT_THAT(tests::contents(bowband.file("ruler.pdf")), testing::StartsWith("%PDF"));
    const json ruler = json::parse(tests::contents(bowband.file("x.json"))).at("contact_ruler");
    ASSERT_EQ(ruler.size(), 2U);
    EXPECT_THAT(missing_keys(ruler[1], {"stop_semitones", "best_mm", "band", "stretch", "security"}),
                testing::IsEmpty());
}

}  // namespace
