// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using testing::HasSubstr;
using tests::Bowband;
using tests::Outcome;

const std::string tune_lesson =
    "lesson division_bass_viol --stop 11:12 --contact-points 6 --forces 2 --seconds 0.3 --hear-stops 11,12 --page "
    "l.html";

/// expects  a tune's section, drawing, table and two more sounds on the page, and its words in the JSON
TEST(LessonTuneTest, ATuneGoesOntoThePage) {
    const Bowband bowband;
    const Outcome outcome = bowband.run({"lesson", "division_bass_viol", "--stop", "11:12", "--contact-points", "6",
                                         "--forces", "2", "--seconds", "0.3", "--hear-stops", "11,12", "--page",
                                         "l.html", "--json", "l.json", "--tune", "D4:1 E4:1/2 D5:1"});
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    const std::string page = tests::contents(bowband.file("l.html"));
    for (const char* text : {"id=\"tune\"", "href=\"#tune\"", "id=\"path-wide-title\"", "The tune, bow left behind",
                             "The tune, bow follows", "Hand places", "Note by note"})
        EXPECT_THAT(page, HasSubstr(text));
    const auto answer = nlohmann::json::parse(tests::contents(bowband.file("l.json")));
    EXPECT_EQ(answer["tune"]["notes"], 3);
    EXPECT_EQ(answer["run"]["settings"]["tune"], "D4:1 E4:1/2 D5:1");
}

/// expects  a tune that is none, or lies off the instrument, to be told before the work, and nothing written
TEST(LessonTuneTest, ATuneThatCanNotBePlayedIsRefused) {
    const Bowband bowband;
    for (const char* tune : {"H9:1", "C1:1", ""}) {
        std::vector<std::string> words = tests::words_of(tune_lesson);
        words.insert(words.end(), {"--tune", tune});
        const Outcome outcome = bowband.run(words);
        EXPECT_EQ(outcome.exit_code, 2) << tune;
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
        EXPECT_EQ(bowband.file_count(), 0U);
    }
}

}  // namespace
