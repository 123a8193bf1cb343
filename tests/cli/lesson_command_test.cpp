// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/cli/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;
using tests::Bowband;
using tests::Outcome;

const std::string small_lesson =
    "lesson division_bass_viol --stop 11:13 --contact-points 8 --forces 2 --seconds 0.3 --hear-stops 11,12";

TEST(LessonCommandTest, WritesAPageAndAnswersLikeTheOthers) {
    const Bowband bowband;
    const json answer = bowband.json(small_lesson + " --page lesson.html --csv lesson.csv --json -");
    EXPECT_THAT(tests::missing_keys(answer, {"run", "rule", "stops", "heard", "cautions"}), testing::IsEmpty());
    ASSERT_EQ(answer["stops"].size(), 3U);
    ASSERT_EQ(answer["heard"].size(), 2U);
    EXPECT_EQ(answer["heard"][1]["stop_semitones"], 12);
    EXPECT_EQ(answer["run"]["settings"]["hear_stops_semitones"], "11,12");
    const std::string page = tests::contents(bowband.file("lesson.html"));
    EXPECT_THAT(page, AllOf(testing::StartsWith("<!DOCTYPE html>"), testing::EndsWith("</html>\n"),
                            HasSubstr("division bass viol"), HasSubstr("data:audio/flac;base64,")));
    EXPECT_EQ(bowband.file_count(), 2U);
}

/// expects  the very same page from the run that a page carries
TEST(LessonCommandTest, APageIsMadeAgainFromItself) {
    const Bowband bowband;
    ASSERT_EQ(bowband.run_line(small_lesson + " --wander-mm 2.7 --page lesson.html --quiet --threads 2").exit_code, 0);
    const Outcome again = bowband.run_line("lesson --repeat lesson.html --page again.html --quiet --threads 1");
    EXPECT_EQ(again.exit_code, 0) << again.err;
    EXPECT_EQ(again.err, "");
    EXPECT_EQ(tests::contents(bowband.file("again.html")), tests::contents(bowband.file("lesson.html")));
}

/// expects  the maker asked where the whole set is raised a tone, the string named that is past what gut bears: in the
///          table's words, in the JSON and on the page
TEST(LessonCommandTest, RaisedStringsAreCautionedEverywhere) {
    const Bowband bowband;
    const Outcome outcome =
        bowband.run_line(small_lesson + " --reference-pitch-hz 530 --page lesson.html --json lesson.json");
    ASSERT_EQ(outcome.exit_code, 0) << outcome.err;
    const json answer = json::parse(tests::contents(bowband.file("lesson.json")));
    std::set<std::string> cautions;
    for (const json& caution : answer["cautions"]) cautions.insert(caution["caution"]);
    EXPECT_TRUE(cautions.contains("string_likely_to_break"));
    EXPECT_TRUE(cautions.contains("pull_above_set_up"));
    for (const std::string& text : {outcome.out, tests::contents(bowband.file("lesson.html"))})
        EXPECT_THAT(text, AllOf(HasSubstr("likely to break"), HasSubstr("ask a maker")));
}

struct BadLesson {
    const char* name;
    const char* arguments;
    const char* said;
};

class BadLessonTest : public testing::TestWithParam<BadLesson> {};

/// expects  one line that names what was wrong and what would do; exit 2; no file
TEST_P(BadLessonTest, IsRefusedInOneLine) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line(std::string("lesson ") + GetParam().arguments);
    EXPECT_EQ(outcome.exit_code, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_THAT(outcome.err, HasSubstr(GetParam().said));
    EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    EXPECT_EQ(bowband.file_count(), 0U);
}

INSTANTIATE_TEST_SUITE_P(
    Cases, BadLessonTest,
    testing::Values(BadLesson{"NoPage", "division_bass_viol", "--page: missing"},
                    BadLesson{"NoHtml", "division_bass_viol --page lesson.htm", "must end in .html"},
                    BadLesson{"NoPreset", "--page lesson.html", "PRESET"},
                    BadLesson{"StopNotClimbed", "division_bass_viol --stop 0:5 --hear-stops 0,2.5 --page l.html",
                              "stop 2.5 is none of this lesson's"},
                    BadLesson{"StopBeyond", "division_bass_viol --stop 0:5 --hear-stops 0,9 --page l.html",
                              "from 0 to 5 semitones"},
                    BadLesson{"TooManyHeard",
                              "division_bass_viol --hear-stops 0,1,2,3,4,5,6,7,8,9,10,11,12 --page l.html",
                              "more than 12"},
                    BadLesson{"OffTheBoard", "division_bass_viol --stop 0:40 --page l.html", "stop"},
                    BadLesson{"TooLong", "division_bass_viol --seconds 9 --page l.html", "from 0.3 to 2 s"},
                    BadLesson{"OneForce", "division_bass_viol --force-newtons 0.2 --page l.html", "range"}),
    [](const auto& of) { return std::string(of.param.name); });

TEST(LessonCommandTest, AFolderThatIsNotThereIsToldBeforeTheWork) {
    const Bowband bowband;
    const Outcome outcome = bowband.run_line("lesson division_bass_viol --page missing/lesson.html");
    EXPECT_EQ(outcome.exit_code, 1);
    EXPECT_THAT(outcome.err, HasSubstr("missing/lesson.html"));
}

/// expects  a page of something else, and one whose run was cut off, to be refused like any wrong file
TEST(LessonCommandTest, OnlyALessonsPageCanBeRepeated) {
    const Bowband bowband;
    for (const char* text :
         {"<!DOCTYPE html><p>other</p>", "<!DOCTYPE html><script type=\"application/json\" id=\"run\">{\"run\": "}) {
        tests::put(bowband.file("other.html"), text);
        const Outcome outcome = bowband.run_line("lesson --repeat other.html --page lesson.html");
        EXPECT_EQ(outcome.exit_code, 2);
        EXPECT_THAT(outcome.err, HasSubstr("other.html"));
        EXPECT_EQ(std::ranges::count(outcome.err, '\n'), 1) << outcome.err;
    }
}

}  // namespace
