// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::IsEmpty;
using tests::Bowband;
using tests::missing_keys;
using tests::Outcome;

/// Six notes up and down the top string of the treble, which is quick to simulate.
std::vector<std::string> small_tune(const std::string& options) {
    std::vector<std::string> arguments{"passage", "treble_viol",
                                       "tempo=90 dynamic=p D5:1 A5 dynamic=mf D6:1/2 r A5:1 D5:1/8"};
    for (const std::string& word : tests::words_of(options)) arguments.push_back(word);
    return arguments;
}

void check_note(const json& note) {
    EXPECT_THAT(missing_keys(note, {"pitch",           "start_s",           "duration_s",
                                    "string",          "stop_semitones",    "stop_from_nut_mm",
                                    "finger",          "hand_place",        "contact_mm",
                                    "contact_from_mm", "contact_to_mm",     "band",
                                    "stretch",         "best_mm",           "security",
                                    "reason",          "force_newtons",     "speed_m_s",
                                    "hair_mm",         "force_min_newtons", "force_max_newtons",
                                    "follows",         "left_behind"}),
                IsEmpty());
    for (const char* way : {"follows", "left_behind"}) {
        EXPECT_THAT(missing_keys(note[way], {"contact_mm", "security", "motion", "pitch_cents", "level_db", "why_not"}),
                    IsEmpty());
        EXPECT_EQ(note[way]["why_not"].is_null(), note[way]["motion"] == "helmholtz");
    }
    EXPECT_EQ(note["follows"]["contact_mm"], note["contact_mm"]);
}

}  // namespace

/// expects  table with its sentences, two sounds as long as the tune, a score with bow places, CSV and JSON with the
///          contract's keys; the same bytes from its own record on another number of threads
TEST(PassageBowTest, AnswersInEveryFormAndRepeatsItsOwnRecord) {
    const Bowband bowband;
    const Outcome outcome = bowband.run(small_tune(
        "--contact-points 8 --forces 3 --threads 1 --json a.json --csv a.csv --musicxml a.musicxml --wav sounds"));
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    for (const char* said : {"mm from the bridge", "Played with the bow left behind", "Played with the bow following",
                             "may be over before the string speaks", "Listening: start low"})
        EXPECT_THAT(outcome.out, HasSubstr(said));
    EXPECT_EQ(std::ranges::count(tests::contents(bowband.file("a.csv")), '\n'), 6);
    EXPECT_THAT(tests::contents(bowband.file("a.musicxml")), HasSubstr("mm from the bridge"));
    for (const char* sound : {"sounds/bow_left_behind.wav", "sounds/bow_follows.wav"})
        EXPECT_GT(std::filesystem::file_size(bowband.file(sound)), 48000U);

    const std::string text = tests::contents(bowband.file("a.json"));
    const json answer = json::parse(text);
    ASSERT_EQ(answer.at("notes").size(), 5U);
    for (const json& note : answer["notes"]) check_note(note);
    EXPECT_EQ(answer["run"]["settings"]["bow_travel_mm_s"], 30.0);
    EXPECT_NEAR(answer["notes"][2]["speed_m_s"].get<double>() / answer["notes"][0]["speed_m_s"].get<double>(), 2.0,
                1e-5);
    EXPECT_EQ(answer["path"].front()["time_s"], 0.0);
    EXPECT_EQ(bowband.run_line("passage --repeat a.json --threads 3 --json -").out, text);
}

/// expects  the path of the JSON keeps to the speed asked for; margin: six digits of mm
TEST(PassageBowTest, PathKeepsToTheTravelAskedFor) {
    const Bowband bowband;
    ASSERT_EQ(
        bowband.run(small_tune("--contact-points 8 --forces 3 --bow-travel-mm-s 4 --bow-lifted-mm-s 6 --json a.json"))
            .exit_code,
        0);
    const json path = json::parse(tests::contents(bowband.file("a.json")))["path"];
    ASSERT_GT(path.size(), 5U);
    for (std::size_t i = 1; i < path.size(); ++i) {
        const double time = path[i]["time_s"].get<double>() - path[i - 1]["time_s"].get<double>();
        const double way = path[i]["contact_mm"].get<double>() - path[i - 1]["contact_mm"].get<double>();
        EXPECT_LE(std::abs(way), 6.0 * time + 1e-3);
    }
}

TEST(PassageBowTest, DrawsAChart) {
    const Bowband bowband;
    const Outcome outcome =
        bowband.run(small_tune("--contact-points 4 --forces 2 --quiet --chart a.svg --json a.json"));
    if (outcome.exit_code == 2) GTEST_SKIP() << outcome.err;
    EXPECT_EQ(outcome.exit_code, 0) << outcome.err;
    EXPECT_THAT(tests::contents(bowband.file("a.svg")), HasSubstr("<svg"));
}

/// expects  the shipped studies are found by their short names, and read and fingered whole
TEST(PassageBowTest, StudiesAreFoundByName) {
    const Bowband bowband;
    const auto notes = [&](const std::string& line) {
        return bowband.json(line + " --bow no --json -")["notes"].size();
    };
    EXPECT_EQ(notes("passage division_bass_viol bass_study"), 24U);
    EXPECT_EQ(notes("passage treble_viol treble_study"), 19U);
}

/// expects  a clear line, exit 2 and no file for what can't be meant
TEST(PassageBowTest, RefusesWhatCannotBeMeant) {
    const Bowband bowband;
    for (const auto& [options, said] : std::vector<std::pair<std::string, std::string>>{
             {"--bow maybe", "must be yes or no"},
             {"--bow no --wav sounds", "must be yes for --chart and --wav"},
             {"--bow-travel-mm-s 0", "from 0.1 to 1000 mm/s"},
             {"--bow-travel-mm-s fast", "--bow-travel-mm-s"}}) {
        const Outcome outcome = bowband.run(small_tune(options));
        EXPECT_EQ(outcome.exit_code, 2) << options;
        EXPECT_THAT(outcome.err, HasSubstr(said));
    }
    EXPECT_EQ(bowband.file_count(), 0U);
}
