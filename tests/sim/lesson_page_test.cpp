// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/lesson_page.hpp"
#include "sim/report/json_values.hpp"
#include "sim/report/lesson_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <cmath>
#include <set>

namespace {

using namespace sim::report;
using testing::HasSubstr;
using testing::Not;

constexpr const char* hostile = "bass <b>\"viol\"</b> & 'co' </script>";

struct Parsed {
    pugi::xml_document document;
    pugi::xml_parse_result result;
};

void parse(Parsed& parsed, const std::string& text) {
    parsed.result = parsed.document.load_string(text.c_str(), pugi::parse_default | pugi::parse_ws_pcdata);
}

/// A lesson over few strokes of a preset whose words need escaping.
struct SmallLesson {
    AskedLesson asked;
    sim::Lesson lesson;
};

SmallLesson made_lesson() {
    SmallLesson made;
    sim::Preset preset = sim::find_preset("division_bass_viol");
    preset.name = hostile;
    preset.remark = "a < b & c";
    made.asked = {.run = {.version = "1", .command = "lesson", .preset = preset, .settings = {{"string", "1"}}},
                  .preset = preset,
                  .string = preset.strings.front()};
    sim::LessonPlan plan;
    plan.climb.stops = {0.0, 12.0, 22.0};
    plan.climb.grid = {.contact_points = 8, .player_forces = 2, .more_forces = 0};
    plan.heard = sim::usual_heard(plan.climb.stops);
    plan.seconds = 0.3;
    sim::Workers workers;
    workers.threads = 2;
    made.lesson = sim::make_lesson(made.asked.preset, made.asked.string, plan, workers);
    return made;
}

const SmallLesson& small_lesson() {
    static const SmallLesson made = made_lesson();
    return made;
}

/// The same lesson with the instrument tuned otherwise: for its cautions, which look at the instrument only.
SmallLesson raised_to(double reference_pitch) {
    SmallLesson raised = small_lesson();
    raised.asked.preset.reference_pitch = reference_pitch;
    return raised;
}

const std::string& page() {
    static const std::string text = lesson_html(small_lesson().asked, small_lesson().lesson,
                                                {{.svg = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>",
                                                  .caption = "a < b",
                                                  .description = "\"chart\" & more"}});
    return text;
}

TEST(LessonTest, HeardStopsAreThoseThatTheClimbHas) {
    EXPECT_EQ(sim::usual_heard({0.0, 1.0, 2.0}), (std::vector<double>{0.0, 2.0}));
    EXPECT_EQ(sim::usual_heard({5.0}), (std::vector<double>{5.0}));
    std::vector<double> board(23);
    for (std::size_t i = 0; i < board.size(); ++i) board[i] = static_cast<double>(i);
    EXPECT_EQ(sim::usual_heard(board), (std::vector<double>{0.0, 7.0, 12.0, 19.0, 22.0}));
}

/// expects  the joint gain to be the whole climb's: a stop's own take is that part of the whole
TEST(LessonTest, AllSoundsShareOneGain) {
    const sim::Lesson& lesson = small_lesson().lesson;
    const std::vector<double>& first = lesson.heard.front().follows.samples;
    ASSERT_FALSE(first.empty());
    EXPECT_TRUE(std::equal(first.begin(), first.end(), lesson.whole_follows.samples.begin()));
}

TEST(LessonPageTest, IsWellFormedWhateverThePresetIsCalled) {
    Parsed parsed;
    parse(parsed, page());
    ASSERT_TRUE(parsed.result) << parsed.result.description() << " at " << parsed.result.offset << ": "
                               << page().substr(static_cast<std::size_t>(parsed.result.offset), 80);
    const pugi::xml_node html = parsed.document.child("html");
    EXPECT_STREQ(html.attribute("lang").value(), "en");
    EXPECT_THAT(html.child("head").child("title").text().get(), HasSubstr(hostile));
    EXPECT_THAT(page(), Not(HasSubstr("<b>")));
}

TEST(LessonPageTest, HoldsItsRunAndNoOtherScript) {
    Parsed parsed;
    parse(parsed, page());
    const auto scripts = parsed.document.select_nodes("//script");
    ASSERT_EQ(scripts.size(), 1U);
    EXPECT_STREQ(scripts.first().node().attribute("type").value(), "application/json");
    const Json run = Json::parse(scripts.first().node().text().get());
    EXPECT_EQ(run["run"]["preset_name"], hostile);
    EXPECT_EQ(run["run"]["command"], "lesson");
}

/// expects  every address of the page to be in the page
TEST(LessonPageTest, FetchesNothing) {
    Parsed parsed;
    parse(parsed, page());
    std::set<std::string> ids;
    for (const auto& node : parsed.document.select_nodes("//@id")) ids.insert(node.attribute().value());
    for (const auto& node : parsed.document.select_nodes("//@src | //@href")) {
        const std::string place = node.attribute().value();
        const bool inside = place.starts_with('#') && ids.contains(place.substr(1));
        EXPECT_TRUE(inside || place.starts_with("data:audio/flac;base64,")) << place.substr(0, 60);
    }
    EXPECT_TRUE(parsed.document.select_nodes("//link | //img | //iframe | //object").empty());
    EXPECT_THAT(page(), Not(HasSubstr("url(")));
    const pugi::xml_node policy = parsed.document.child("html").child("head").find_child_by_attribute(
        "meta", "http-equiv", "Content-Security-Policy");
    EXPECT_THAT(policy.attribute("content").value(), testing::StartsWith("default-src 'none';"));
}

TEST(LessonPageTest, NamesEverythingForWhoCanNotSeeIt) {
    Parsed parsed;
    parse(parsed, page());
    std::multiset<std::string> ids;
    for (const auto& node : parsed.document.select_nodes("//@id")) ids.insert(node.attribute().value());
    for (const std::string& id : ids) EXPECT_EQ(ids.count(id), 1U) << id;
    for (const auto& table : parsed.document.select_nodes("//table")) {
        EXPECT_STRNE(table.node().child("caption").text().get(), "");
        EXPECT_TRUE(table.node().select_nodes("thead/tr/th[not(@scope)]").empty());
    }
    const auto sounds = parsed.document.select_nodes("//audio");
    std::size_t expected = 2;  // the whole climb
    for (const sim::HeardStop& heard : small_lesson().lesson.heard)
        expected += (heard.left_behind.samples.empty() ? 0U : 1U) + (heard.follows.samples.empty() ? 0U : 1U);
    EXPECT_GT(expected, 4U);
    EXPECT_EQ(sounds.size(), expected);
    for (const auto& sound : sounds) EXPECT_STRNE(sound.node().attribute("aria-label").value(), "");
    for (const auto& drawing : parsed.document.select_nodes("//svg[@role='img']")) {
        EXPECT_STRNE(drawing.node().child("title").text().get(), "");
        EXPECT_STRNE(drawing.node().child("desc").text().get(), "");
    }
    EXPECT_EQ(parsed.document.select_nodes("//h1").size(), 1U);
}

TEST(LessonPageTest, IsTheSameEveryTime) {
    const SmallLesson again = made_lesson();
    EXPECT_EQ(lesson_html(again.asked, again.lesson, {}), lesson_html(small_lesson().asked, small_lesson().lesson, {}));
}

TEST(LessonPageTest, SaysSoWhereItHasNoCharts) {
    EXPECT_THAT(lesson_html(small_lesson().asked, small_lesson().lesson, {}), HasSubstr("made without charts"));
    EXPECT_THAT(page(), Not(HasSubstr("made without charts")));
}

/// expects  the cautions of an instrument raised by a tone, on the page, in the JSON and under the table: strings near
///          breaking (D4 at 466 Hz on 690 mm: 215 Hz m, so none at a tone; the pull then), and the maker asked
TEST(LessonPageTest, AnInstrumentRaisedByAToneIsCautioned) {
    const SmallLesson raised = raised_to(466.0);
    const Json json = Json::parse(lesson_json(raised.asked, raised.lesson));
    std::set<std::string> keys;
    for (const Json& caution : json["cautions"]) keys.insert(caution["caution"]);
    EXPECT_TRUE(keys.contains("pull_above_set_up"));
    EXPECT_TRUE(keys.contains("loud_playback"));
    EXPECT_TRUE(keys.contains("strain"));
    const std::string text = "ask a maker";
    EXPECT_THAT(lesson_html(raised.asked, raised.lesson, {}), HasSubstr(text));
    EXPECT_THAT(lesson_in_words(raised.asked, raised.lesson), HasSubstr(text));
    EXPECT_THAT(lesson_html(small_lesson().asked, small_lesson().lesson, {}), Not(HasSubstr("more than the")));
}

TEST(LessonPageTest, AGutStringPastItsBreakingProductIsCautioned) {
    const SmallLesson raised = raised_to(530.0);  // D4 on 690 mm: 244 Hz m
    for (const std::string& text :
         {lesson_html(raised.asked, raised.lesson, {}), lesson_in_words(raised.asked, raised.lesson),
          lesson_json(raised.asked, raised.lesson)})
        EXPECT_THAT(text, HasSubstr("likely to break"));
}

/// A stop whose bow left behind differs from the one that follows as `change` says.
std::string heard_where(const std::function<void(sim::StrokeResult&)>& change) {
    sim::ClimbStop stop = small_lesson().lesson.climb.stops[1];
    stop.left_behind.contact_point = stop.follows->contact_point + 0.02;
    stop.follows->stroke->verdict.motion = sim::Motion::helmholtz;
    stop.follows->stroke->tone = {.pitch = fundamental(stop.note.string), .level = 0.1, .centroid = 2000.0};
    stop.left_behind.stroke = stop.follows->stroke;
    change(*stop.left_behind.stroke);
    return listen_for(stop);
}

TEST(LessonWordsTest, SayWhatDiffersAndNothingElse) {
    EXPECT_THAT(heard_where([](auto&) {}), HasSubstr("Hardly a difference"));
    EXPECT_EQ(heard_where([](auto& left) { left.tone.level = 0.025; }),
              "With the bow left behind the note is 12 dB weaker.");
    EXPECT_EQ(heard_where([](auto& left) { *left.tone.pitch *= std::exp2(-30.0 / 1200.0); }),
              "With the bow left behind the note is 30 cents flat.");
    EXPECT_EQ(heard_where([](auto& left) {
                  left.tone.centroid = 1000.0;
                  left.verdict.motion = sim::Motion::raucous;
              }),
              "With the bow left behind the note growls (no regular motion) and is duller.");
    EXPECT_THAT(heard_where([](auto& left) { left.tone.pitch.reset(); }), HasSubstr("no clear pitch"));
}

TEST(LessonWordsTest, SayWhereNoBowCanStand) {
    sim::ClimbStop stop = small_lesson().lesson.climb.stops[1];
    stop.left_behind.stroke.reset();
    EXPECT_THAT(listen_for(stop), HasSubstr("No bow can stand at"));
    stop.follows.reset();
    EXPECT_THAT(listen_for(stop), HasSubstr("No stroke of this range speaks"));
}

}  // namespace
