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

constexpr const char* words = "beats=3/4 tempo=90 D4:1 E4 F4 G4 A4 B4 C5:3/2 D5:1/2 E5:1 D5:3";

/// A tune in a file of the folder, since the lines of tests are cut at blanks.
void put_tune(const Bowband& bowband) { tests::put(bowband.file("tune.txt"), words); }

TEST(PassageCommandTest, JsonHoldsWhatItPromises) {
    const Bowband bowband;
    put_tune(bowband);
    const json answer = bowband.json("passage division_bass_viol tune.txt --bow no --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "tune", "notes", "hand_places", "alternatives", "warnings", "remarks"}),
                testing::IsEmpty());
    ASSERT_EQ(answer["notes"].size(), 10U);
    EXPECT_THAT(missing_keys(answer["notes"][1], {"pitch", "pitch_hz", "pitch_cents", "bar", "start_s", "duration_s",
                                                  "string", "stop_semitones", "stop_from_nut_mm", "stop", "finger",
                                                  "hand_place", "to_previous_mm", "to_next_mm", "open_check"}),
                testing::IsEmpty());
    EXPECT_EQ(answer["notes"][3]["bar"], 2);
    EXPECT_NEAR(answer["notes"][3]["start_s"].get<double>(), 2.0, 1e-9);
    EXPECT_EQ(answer["notes"][0]["finger"], 0);
    EXPECT_TRUE(answer["notes"][0]["hand_place"].is_null());
    for (std::size_t k = 1; k < answer["hand_places"].size(); ++k)
        EXPECT_TRUE(answer["hand_places"][k]["why"].is_string());
}

TEST(PassageCommandTest, RunsAreRepeated) {
    const Bowband bowband;
    put_tune(bowband);
    const Outcome first = bowband.run_line(
        "passage treble_viol tune.txt --quarters-a-minute 50 --fingers 1.2,finger=2 --temperament sixth_comma "
        "--bow no --json "
        "a.json --quiet");
    EXPECT_EQ(first.exit_code, 0) << first.err;
    EXPECT_EQ(bowband.run_line("passage --repeat a.json --json -").out, tests::contents(bowband.file("a.json")));
}

TEST(PassageCommandTest, TableSpeaksOfStopsAndHandPlacesInWords) {
    const Bowband bowband;
    put_tune(bowband);
    const Outcome outcome = bowband.run_line("passage division_bass_viol tune.txt --bow no");
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out,
                testing::AllOf(HasSubstr("fret 2"), HasSubstr("above the guide fret"), HasSubstr("Hand places"),
                               HasSubstr("what the hand reaches from"), HasSubstr("Other ways")));
}

/// expects  the score written to hold the notes and fingers of the JSON, and to be played the same way again
TEST(PassageCommandTest, MusicXmlHoldsTheFingers) {
    const Bowband bowband;
    put_tune(bowband);
    const json first = bowband.json("passage division_bass_viol tune.txt --bow no --musicxml out.musicxml --json -");
    const json again = bowband.json("passage division_bass_viol out.musicxml --bow no --json -");
    EXPECT_EQ(again["notes"], first["notes"]);
    EXPECT_EQ(again["hand_places"].size(), first["hand_places"].size());
    EXPECT_THAT(tests::contents(bowband.file("out.musicxml")),
                testing::AllOf(HasSubstr("<fingering>"), HasSubstr("<string>"), HasSubstr("hand at fret 2")));
}

TEST(PassageCommandTest, OtherWaysCanBeChosen) {
    const Bowband bowband;
    put_tune(bowband);
    const json first = bowband.json("passage cello tune.txt --bow no --json -");
    const json second = bowband.json("passage cello tune.txt --choose 2 --bow no --json -");
    EXPECT_EQ(second["fingering"], 2);
    EXPECT_NE(second["notes"], first["notes"]);
    EXPECT_EQ(first["alternatives"][0]["cost"], second["cost"]);
}

struct BadQuestion {
    const char* title;
    const char* line;
    std::vector<const char*> said;
};
void PrintTo(const BadQuestion& question, std::ostream* out) { *out << question.line; }
class BadPassageTest : public testing::TestWithParam<BadQuestion> {};

/// expects  exit 2, one line that says where, what and what would do, and no file made
TEST_P(BadPassageTest, GivesOneLineAndWritesNothing) {
    const Bowband bowband;
    put_tune(bowband);
    const Outcome outcome = bowband.run_line(GetParam().line);
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    for (const char* said : GetParam().said) EXPECT_THAT(outcome.err, HasSubstr(said));
    EXPECT_EQ(bowband.file_count(), 1U);
}

INSTANTIATE_TEST_SUITE_P(
    Commands, BadPassageTest,
    testing::Values(
        BadQuestion{"NoTune", "passage violin", {"TUNE", "missing"}},
        BadQuestion{"NoFile", "passage violin no.mxl --json x.json", {"no.mxl", "no such file"}},
        BadQuestion{"NoNote", "passage violin H4:1 --json x.json", {"H4:1", "F#4:1/2"}},
        BadQuestion{"OffTheInstrument", "passage violin C3:1 --json x.json", {"bar 1, note 1 (C3)", "G3 to"}},
        BadQuestion{"NoSuchPart", "passage violin tune.txt --choose 9", {"--choose", "1 to 3"}},
        BadQuestion{"NoWays", "passage violin tune.txt --alternatives 0", {"--alternatives", "1 to 10"}},
        BadQuestion{"HalfAWay", "passage violin tune.txt --alternatives 1.5", {"whole"}},
        BadQuestion{"Tempo", "passage violin tune.txt --quarters-a-minute 1", {"5 to 1000"}},
        BadQuestion{
            "NoteThatIsNot", "passage violin tune.txt --fingers 1.9,finger=1", {"--fingers", "bar 1 has 3 notes"}},
        BadQuestion{"FingerThatCannot",
                    "passage violin tune.txt --fingers 1.2,finger=0",
                    {"bar 1, note 2 (E4)", "open string"}},
        BadQuestion{"MusicXmlEnding", "passage violin tune.txt --musicxml x.txt", {".musicxml"}},
        BadQuestion{"OneString", "passage violin tune.txt --string 1", {"unknown option"}},
        BadQuestion{"SameFileTwice", "passage violin tune.txt --json x.xml --musicxml x.xml", {"twice"}}),
    [](const auto& question) { return std::string(question.param.title); });

}  // namespace
