// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace {

using testing::HasSubstr;

/// A question that can't be answered, and what the one line on stderr must say: where, what, what would do.
struct BadQuestion {
    const char* title;
    const char* line;
    int exit_code;
    std::vector<const char*> said;
};

void PrintTo(const BadQuestion& question, std::ostream* out) { *out << question.line; }

class BadInputTest : public testing::TestWithParam<BadQuestion> {};

/// expects  the exit code, one line, nothing on stdout, no file made, and no computing first (the tests would time out)
TEST_P(BadInputTest, GivesOneLineAndWritesNothing) {
    const tests::Bowband bowband;
    const tests::Outcome outcome = bowband.run_line(GetParam().line);
    EXPECT_EQ(outcome.exit_code, GetParam().exit_code);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    EXPECT_THAT(outcome.err, testing::StartsWith("bowband: "));
    for (const char* said : GetParam().said) EXPECT_THAT(outcome.err, HasSubstr(said));
    EXPECT_EQ(bowband.file_count(), 0U);
}

std::string title_of(const testing::TestParamInfo<BadQuestion>& info) { return info.param.title; }

INSTANTIATE_TEST_SUITE_P(
    Settings, BadInputTest,
    testing::Values(
        BadQuestion{"Nan", "window violin --json x.json --wander-mm nan", 2, {"--wander-mm", "nan", "number"}},
        BadQuestion{
            "Huge", "climb violin --json x.json --speed-m-s 1e99", 2, {"--speed-m-s", "1e+99", "from 0.005 to 5 m/s"}},
        BadQuestion{"Negative", "window violin --json x.json --rise-ms -3", 2, {"--rise-ms", "-3", "from 0 to"}},
        BadQuestion{"Text", "note violin --json x.json --speak-ms soon", 2, {"--speak-ms", "soon", "number"}},
        BadQuestion{"NumberWithUnit", "note violin --json x.json --wander-mm 3mm", 2, {"--wander-mm", "3mm", "number"}},
        BadQuestion{"DecimalComma", "note violin --json x.json --speed-m-s 0,2", 2, {"--speed-m-s", "0,2", "number"}},
        BadQuestion{
            "HugeForce", "note violin --json x.json --force-newtons 1e99", 2, {"--force-newtons", "1e+99", "50 N"}},
        BadQuestion{"NoForce", "note violin --json x.json --force-newtons 0", 2, {"--force-newtons", "0.001 to 50 N"}},
        BadQuestion{
            "SingleForceForAWindow", "window violin --json x.json --force-newtons 0.5", 2, {"--force-newtons", "A:B"}},
        BadQuestion{"ForcesUpsideDown",
                    "climb violin --json x.json --force-newtons 2:1",
                    2,
                    {"--force-newtons", "smaller first"}},
        BadQuestion{"ZeroThreads", "climb violin --json x.json --threads 0", 2, {"--threads", "1 to 256", "0"}},
        BadQuestion{"HalfAThread", "climb violin --json x.json --threads 1.5", 2, {"--threads", "whole", "1.5"}},
        BadQuestion{
            "OneContactPoint", "window violin --json x.json --contact-points 1", 2, {"--contact-points", "2 to 400"}},
        BadQuestion{"NoTime", "note violin --json x.json --seconds 0", 2, {"--seconds", "from 0.1 to 10 s"}},
        BadQuestion{"UnknownLaw", "note violin --json x.json --law sticky", 2, {"--law", "sticky", "coulomb"}},
        BadQuestion{
            "UnknownTemperament", "note violin --json x.json --temperament odd", 2, {"--temperament", "odd", "equal"}},
        BadQuestion{"OneSpeed", "speeds violin --json x.json --speeds-m-s 0.2", 2, {"--speeds-m-s", "2 to 50"}},
        BadQuestion{"FallingSpeeds", "speeds violin --json x.json --speeds-m-s 0.4,0.1", 2, {"--speeds-m-s", "rising"}},
        BadQuestion{"EqualSpeeds", "speeds violin --json x.json --speeds-m-s 0.1,0.1", 2, {"--speeds-m-s", "rising"}},
        BadQuestion{
            "SpeedIsAWord", "speeds violin --json x.json --speeds-m-s 0.1,fast", 2, {"--speeds-m-s", "0.1,fast"}},
        BadQuestion{"SpeedMissing", "speeds violin --json x.json --speeds-m-s 0.1,,0.3", 2, {"--speeds-m-s", "commas"}},
        BadQuestion{"HugeSpeed", "speeds violin --json x.json --speeds-m-s 0.1,9", 2, {"0.005 to 5 m/s", "9"}},
        BadQuestion{"UnknownStopEnd", "note violin --json x.json --stop-end glue", 2, {"--stop-end", "glue", "finger"}},
        BadQuestion{"AbsurdReference",
                    "note violin --json x.json --reference-pitch-hz 4",
                    2,
                    {"--reference-pitch-hz", "300 to 550 Hz"}}),
    title_of);

INSTANTIATE_TEST_SUITE_P(
    Beginnings, BadInputTest,
    testing::Values(
        BadQuestion{"UnknownKind",
                    "start violin --json x.json --beginning bounced",
                    2,
                    {"--beginning", "from-rest", "bounced"}},
        BadQuestion{"OneAcceleration",
                    "start violin --json x.json --acceleration-m-s2 3",
                    2,
                    {"--acceleration-m-s2", "A:B", "0.01 to 1000 m/s^2"}},
        BadQuestion{"NoAccelerationInACrossing",
                    "start violin --json x.json --beginning crossing --acceleration-m-s2 1:3",
                    2,
                    {"--acceleration-m-s2", "from-rest"}},
        BadQuestion{"NoForceRiseFromRest",
                    "start violin --json x.json --force-rise-ms 10:30",
                    2,
                    {"--force-rise-ms", "crossing"}},
        BadQuestion{"ForceRiseTooShort",
                    "start violin --json x.json --beginning crossing --force-rise-ms 0:30",
                    2,
                    {"--force-rise-ms", "1 to 5000 ms"}},
        BadQuestion{"MapForceTooGreat",
                    "start violin --json x.json --map-force-newtons 1:99",
                    2,
                    {"--map-force-newtons", "0.001 to 50 N"}},
        BadQuestion{"OnePace", "start violin --json x.json --paces 1", 2, {"--paces", "2 to 200"}},
        BadQuestion{
            "StrictLongerThanLenient", "start violin --json x.json --strict-ms 120", 2, {"--strict-ms", "--speak-ms"}},
        BadQuestion{
            "RangeOfPlaces", "start violin --json x.json --contact-mm 20:30", 2, {"--contact-mm", "one place"}}),
    title_of);

INSTANTIATE_TEST_SUITE_P(
    Places, BadInputTest,
    testing::Values(
        BadQuestion{"UnknownString", "window violin --json x.json --string 9", 2, {"string \"9\"", "(E5)", "(G3)"}},
        BadQuestion{"StopPastTheBoard",
                    "window division_bass_viol --json x.json --stop 40",
                    2,
                    {"stop", "40", "0 (open) to 22"}},
        BadQuestion{
            "NegativeStop", "note division_bass_viol --json x.json --stop -1", 2, {"stop", "-1", "0 (open) to 22"}},
        BadQuestion{"ClimbPastTheBoard",
                    "climb division_bass_viol --json x.json --stop 5:40",
                    2,
                    {"stop", "40", "0 (open) to 22"}},
        BadQuestion{"StopIsNoPitch", "note violin --json x.json --stop H5", 2, {"--stop", "H5", "semitones"}},
        BadQuestion{"PitchUnderTheString",
                    "note violin --json x.json --stop C3",
                    2,
                    {"--stop C3", "below the open string", "E5"}},
        BadQuestion{"RangeOfStopsForOneNote", "window violin --json x.json --stop 5:9", 2, {"--stop", "one stop"}},
        BadQuestion{"ListOfStopsForOneNote", "window violin --json x.json --stop 5,9", 2, {"--stop", "one stop"}},
        BadQuestion{"ListOfStopsForAClimb", "climb violin --json x.json --stop 5,9", 2, {"--stop", "range"}},
        BadQuestion{"RangeOfStopsForSpeeds", "speeds violin --json x.json --stop 5:9", 2, {"--stop", "0,12"}},
        BadQuestion{"ListedStopPastTheBoard",
                    "speeds division_bass_viol --json x.json --stop 0,40",
                    2,
                    {"stop", "40", "0 (open) to 22"}},
        BadQuestion{"ListedStopIsNoPitch", "speeds violin --json x.json --stop 0,H5", 2, {"--stop", "H5"}},
        BadQuestion{"UnderTheFloor",
                    "window division_bass_viol --json x.json --contact-mm 2",
                    2,
                    {"contact point", "2 mm", "floor", "7 to 310.5 mm"}},
        BadQuestion{"PastTheFinger",
                    "note division_bass_viol --json x.json --contact-mm 400",
                    2,
                    {"contact point", "400 mm", "7 to 310.5 mm"}},
        BadQuestion{"RangePastTheFinger",
                    "window division_bass_viol --json x.json --contact-mm 20:400",
                    2,
                    {"contact point", "400 mm"}},
        BadQuestion{
            "RangeForOneStroke", "note violin --json x.json --contact-mm 20:30", 2, {"--contact-mm", "one place"}},
        BadQuestion{"NoGridPointInRange",
                    "window division_bass_viol --json x.json --contact-mm 40:40.1",
                    2,
                    {"--contact-mm", "wider"}}),
    title_of);

INSTANTIATE_TEST_SUITE_P(
    Outputs, BadInputTest,
    testing::Values(
        BadQuestion{"FolderMissing", "window violin --json nowhere/x.json", 1, {"nowhere/x.json", "can't be written"}},
        BadQuestion{"IsAFolder", "window violin --csv /", 1, {"/", "folder"}},
        BadQuestion{"SoundFolderMissing", "climb violin --wav nowhere/deep", 1, {"nowhere/deep", "can't be made"}},
        BadQuestion{"UnknownSoundEnding", "note violin --wav x.mp3", 2, {"x.mp3", ".wav or .flac"}},
        BadQuestion{"UnknownWaveformEnding", "note violin --waveform x.txt", 2, {"x.txt", ".csv"}},
        BadQuestion{"UnknownChartEnding", "window violin --chart x.gif", 2, {"chart"}},
        BadQuestion{"NoChartOfOnePlace", "window violin --contact-mm 30 --chart x.png", 2, {"--chart", "--contact-mm"}},
        BadQuestion{"NoToneChartOfOnePlace",
                    "window violin --contact-mm 30 --tone-chart x.png",
                    2,
                    {"--tone-chart", "--contact-mm"}},
        BadQuestion{
            "NoToneTableOfOnePlace", "window violin --contact-mm 30 --tone-csv x.csv", 2, {"--tone-csv", "whole"}},
        BadQuestion{"UnknownToneChartEnding", "climb violin --tone-chart x.gif", 2, {"chart"}},
        BadQuestion{"ToneTableOverTheChart", "window violin --tone-csv x.png --tone-chart x.png", 2, {"twice"}},
        BadQuestion{"SameFileTwice", "window violin --json x --csv ./x", 2, {"twice"}},
        BadQuestion{"StdoutTwice", "window violin --json - --csv -", 2, {"twice"}},
        BadQuestion{"SecondFileUnwritable", "note violin --json x.json --wav nowhere/x.wav", 1, {"nowhere/x.wav"}}),
    title_of);

INSTANTIATE_TEST_SUITE_P(
    Commands, BadInputTest,
    testing::Values(
        BadQuestion{"None", "", 2, {"presets", "climb", "--help"}},
        BadQuestion{"Unknown", "windw violin", 2, {"windw", "window"}},
        BadQuestion{"UnknownOption", "window violin --wandermm 3", 2, {"--wandermm", "--wander-mm"}},
        BadQuestion{"UnknownConstant",
                    "sensitivity violin --json x.json --only finger",
                    2,
                    {"--only", "finger", "did you mean finger_q", "body_mass"}},
        BadQuestion{"SmallFactor", "sensitivity violin --json x.json --factor 1", 2, {"--factor", "from 1.01 to 4"}},
        BadQuestion{"SensitivityPastTheBoard",
                    "sensitivity division_bass_viol --json x.json --stop 5:40",
                    2,
                    {"stop", "40", "0 (open) to 22"}},
        BadQuestion{"OneArgumentTooMany", "window violin cello", 2, {"cello", "--help"}},
        BadQuestion{"ValueMissing", "window violin --stop", 2, {"--stop", "one value"}},
        BadQuestion{"OptionTwice", "window violin --stop 1 --stop 2", 2, {"--stop", "once"}},
        BadQuestion{"PresetMissing", "window", 2, {"PRESET", "division_bass_viol"}},
        BadQuestion{
            "UnknownPreset", "climb divison_bass_viol", 2, {"divison_bass_viol", "did you mean division_bass_viol"}},
        BadQuestion{"CheckOfNothing", "presets --check nosuch.json", 2, {"nosuch.json", "division_bass_viol"}},
        BadQuestion{"NewFromNothing", "presets --new x.json", 2, {"--new", "--from"}},
        BadQuestion{"NewIsNoJson", "presets --new x.txt --from violin", 2, {"x.txt", ".json"}},
        BadQuestion{"TwoWishes", "presets --show violin --check violin", 2, {"one of"}},
        BadQuestion{"RepeatOfNothing", "window --repeat nosuch.json", 2, {"nosuch.json", "JSON"}},
        BadQuestion{"RepeatBesideSettings", "window --repeat x.json --stop 3", 2, {"--repeat", "leave out --stop"}}),
    title_of);

/// A preset file with one fault, as a user would make it.
struct BadFile {
    const char* title;
    const char* before;
    const char* after;
    std::vector<const char*> said;
};

void PrintTo(const BadFile& file, std::ostream* out) { *out << file.after; }

class BadPresetTest : public testing::TestWithParam<BadFile> {};

TEST_P(BadPresetTest, NamesFileAndPlaceAndWhatWouldDo) {
    const tests::Bowband bowband;
    std::string text = bowband.run_line("presets --show violin").out;
    const std::size_t place = text.find(GetParam().before);
    ASSERT_NE(place, std::string::npos) << text;
    text.replace(place, std::string(GetParam().before).size(), GetParam().after);
    tests::put(bowband.file("mine.json"), text);
    for (const char* command : {"window mine.json --json out.json", "presets --check mine.json"}) {
        const tests::Outcome outcome = bowband.run_line(command);
        EXPECT_EQ(outcome.exit_code, 2);
        EXPECT_EQ(outcome.out, "");
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
        EXPECT_THAT(outcome.err, HasSubstr("mine.json"));
        for (const char* said : GetParam().said) EXPECT_THAT(outcome.err, HasSubstr(said));
    }
    EXPECT_EQ(bowband.file_count(), 1U);
}

INSTANTIATE_TEST_SUITE_P(
    Files, BadPresetTest,
    testing::Values(
        BadFile{"UnknownKey", "\"hair_width_mm\"", "\"hair_width\"", {"/hair_width", "unknown key", "hair_width_mm"}},
        BadFile{"WrongUnit", "\"wander_mm\"", "\"wander_m\"", {"/player/wander_m", "wander_mm"}},
        BadFile{"WrongType", "\"hair_width_mm\": ", "\"hair_width_mm\": \"wide\", \"remark2\": ", {"mine.json"}},
        BadFile{"Negative", "\"hair_width_mm\": ", "\"hair_width_mm\": -", {"/hair_width_mm", "-", "from 1 to 30 mm"}},
        BadFile{"NoJson", "{", "[", {"mine.json"}}),
    [](const testing::TestParamInfo<BadFile>& file) { return std::string(file.param.title); });

/// expects  a program that tells when its output has nowhere to go
TEST(OutputTest, FullStandardOutputIsToldAndExitsOne) {
    const std::string command = std::string(BOWBAND_PROGRAM) + " presets >/dev/full 2>/dev/null";
    const int status = std::system(command.c_str());
    EXPECT_EQ(WEXITSTATUS(status), 1);
}

}  // namespace
