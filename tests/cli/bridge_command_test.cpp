// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <complex>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

TEST(BridgeCommandTest, JsonHoldsModesThatCanBePasted) {
    const Bowband bowband;
    const json answer = bowband.json("bridge example_bridge.csv --range-hz 60:3000 --modes 12 --json -");
    EXPECT_THAT(missing_keys(answer, {"run", "range_hz", "points", "error", "noise_share", "modes_in_range", "bridge",
                                      "beyond_range_hz", "remarks"}),
                testing::IsEmpty());
    EXPECT_THAT(missing_keys(answer["run"], {"program", "version", "command", "file", "file_hash", "settings"}),
                testing::IsEmpty());
    EXPECT_THAT(missing_keys(answer["error"], {"rms_db", "worst_db", "worst_hz", "rms_phase_degrees"}),
                testing::IsEmpty());
    EXPECT_EQ(answer["modes_in_range"], 12);
    json preset = json::parse(bowband.run_line("presets --show violin").out);
    preset["bridge"] = answer["bridge"];
    tests::put(bowband.file("pasted.json"), preset.dump());
    EXPECT_EQ(bowband.run_line("presets --check pasted.json").exit_code, 0);
}

/// expects  the same bytes each time
TEST(BridgeCommandTest, GivesTheSameBytesEachTime) {
    const Bowband bowband;
    const std::string line = "bridge example_bridge.csv --json -";
    EXPECT_EQ(bowband.run_line(line).out, bowband.run_line(line).out);
}

TEST(BridgeCommandTest, SavesAPresetThatEveryCommandTakes) {
    const Bowband bowband;
    const Outcome saved = bowband.run_line("bridge example_bridge.csv --preset treble_viol --save mine.json --quiet");
    EXPECT_EQ(saved.exit_code, 0) << saved.err;
    EXPECT_EQ(saved.out, "");
    EXPECT_EQ(bowband.run_line("presets --check mine.json").exit_code, 0);
    EXPECT_EQ(bowband.run_line("note mine.json --contact-mm 20").exit_code, 0);
    const Outcome again = bowband.run_line("bridge example_bridge.csv --preset violin --save mine.json");
    EXPECT_EQ(again.exit_code, 2);
    EXPECT_THAT(again.err, HasSubstr("already there"));
}

/// expects  a preset that names a measurement to run, and its run to be repeated though both files have gone
TEST(BridgeCommandTest, PresetWithAMeasuredBridgeRunsAndRepeats) {
    const Bowband bowband;
    std::string table = "hz,real,imag\n";
    for (int n = 0; n < 200; ++n) {  // one mode of 0.1 kg at 300 Hz, Q 20
        const double w = 2.0 * 3.14159265358979 * (50.0 + 5.0 * n);
        const double own = 2.0 * 3.14159265358979 * 300.0;
        const std::complex<double> i(0.0, 1.0);
        const std::complex<double> y = i * w / 0.1 / (own * own + i * w * own / 20.0 - w * w);
        table += std::to_string(50 + 5 * n) + "," + std::to_string(y.real()) + "," + std::to_string(y.imag()) + "\n";
    }
    tests::put(bowband.file("y.csv"), table);
    json preset = json::parse(bowband.run_line("presets --show division_bass_viol").out);
    preset["bridge"] = {{"measured", "y.csv"}};
    tests::put(bowband.file("mine.json"), preset.dump());
    const Outcome first = bowband.run_line("note mine.json --contact-mm 40 --json first.json --quiet");
    EXPECT_EQ(first.exit_code, 0) << first.err;
    std::filesystem::remove(bowband.file("mine.json"));
    std::filesystem::remove(bowband.file("y.csv"));
    EXPECT_EQ(bowband.run_line("note --repeat first.json --json -").out, tests::contents(bowband.file("first.json")));
}

TEST(BridgeCommandTest, TableTellsErrorAndWhatToDoNext) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line("bridge example_bridge.csv --csv y.csv");
    EXPECT_EQ(outcome.err, "");
    EXPECT_THAT(outcome.out, testing::AllOf(HasSubstr("dB RMS"), HasSubstr("degrees RMS"), HasSubstr("radiates")));
    EXPECT_THAT(tests::contents(bowband.file("y.csv")),
                testing::StartsWith("hz,q,mass_kg,radiation,peak_db,in_range\n"));
}

struct BadQuestion {
    const char* title;
    const char* line;
    std::vector<const char*> said;
};

void PrintTo(const BadQuestion& question, std::ostream* out) { *out << question.line; }

class BadBridgeTest : public testing::TestWithParam<BadQuestion> {};

/// expects  exit 2, one line that says where, what and what would do, and no file made
TEST_P(BadBridgeTest, GivesOneLineAndWritesNothing) {
    const Bowband bowband;
    tests::put(bowband.file("few.csv"), "hz,real,imag\n100,1,0\n");
    const Outcome outcome = bowband.run_line(GetParam().line);
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    EXPECT_THAT(outcome.err, testing::StartsWith("bowband: "));
    for (const char* said : GetParam().said) EXPECT_THAT(outcome.err, HasSubstr(said));
    EXPECT_EQ(bowband.file_count(), 1U);
}

INSTANTIATE_TEST_SUITE_P(
    Commands, BadBridgeTest,
    testing::Values(
        BadQuestion{"NoFile", "bridge", {"FILE", "missing", ".csv or .wav"}},
        BadQuestion{"FileIsNotThere", "bridge nosuch.csv --json x.json", {"nosuch.csv", "no such file"}},
        BadQuestion{"TooFewPoints", "bridge few.csv --json x.json", {"few.csv", "1 points", "10 or more"}},
        BadQuestion{"NoModes", "bridge few.csv --modes 0", {"--modes", "1 to 40", "0"}},
        BadQuestion{"HalfAMode", "bridge few.csv --modes 1.5", {"--modes", "whole"}},
        BadQuestion{"OneEndOfARange", "bridge few.csv --range-hz 50", {"--range-hz", "A:B"}},
        BadQuestion{"RangeBelow", "bridge few.csv --range-hz 1:100", {"--range-hz", "5 to 20000 Hz"}},
        BadQuestion{"RangeWithoutPoints", "bridge example_bridge.csv --range-hz 9000:9500", {"40 to 4000 Hz"}},
        BadQuestion{"ScaleOfATable", "bridge few.csv --scale 2", {"few.csv", "impulse"}},
        BadQuestion{"NoScale", "bridge few.csv --scale 0", {"--scale", "m/s per N s"}},
        BadQuestion{"PresetWithoutSave", "bridge few.csv --preset violin", {"--preset", "--save"}},
        BadQuestion{"SaveWithoutPreset", "bridge few.csv --save x.json", {"--save", "--preset"}},
        BadQuestion{"SaveIsNoJson", "bridge few.csv --preset violin --save x.txt", {"x.txt", ".json"}},
        BadQuestion{"SaveOfAFitThatFails", "bridge few.csv --preset violin --save x.json", {"10 or more"}},
        BadQuestion{"SameFileTwice", "bridge few.csv --preset violin --save x.json --json x.json", {"twice"}},
        BadQuestion{"ChartEnding", "bridge few.csv --chart x.gif", {"chart"}}),
    [](const auto& question) { return std::string(question.param.title); });

}  // namespace
