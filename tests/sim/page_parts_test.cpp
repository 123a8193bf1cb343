// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/audio_file.hpp"
#include "sim/report/html.hpp"
#include "sim/report/string_drawing.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <pugixml.hpp>

#include <cmath>

namespace {

using namespace sim::report;
using testing::Not;

constexpr const char* hostile = "bass <b>\"viol\"</b> & 'co' </script>";

TEST(HtmlTest, TextIsEscapedForTagsAndAttributes) {
    EXPECT_EQ(escaped("a<b>&\"c'"), "a&lt;b&gt;&amp;&quot;c&#39;");
    EXPECT_EQ(text_element("p", "1 < 2", {{"title", "\"&"}}), "<p title=\"&quot;&amp;\">1 &lt; 2</p>");
}

/// expects  what neither XML nor UTF-8 allows to become U+FFFD, so that a page always parses
TEST(HtmlTest, WhatNoPageMayHoldIsReplaced) {
    EXPECT_EQ(escaped("a\x01z"), "a\xEF\xBF\xBDz");
    EXPECT_EQ(escaped("a\xFFz"), "a\xEF\xBF\xBDz");
    EXPECT_EQ(escaped("\xC3\xA9"), "\xC3\xA9");
}

/// source   RFC 4648, section 10: test vectors
TEST(HtmlTest, DataUrisAreBase64) {
    for (const auto& [bytes, text] : std::vector<std::pair<std::string, std::string>>{
             {"", ""}, {"f", "Zg=="}, {"fo", "Zm8="}, {"foo", "Zm9v"}, {"foob", "Zm9vYg=="}, {"foobar", "Zm9vYmFy"}})
        EXPECT_EQ(data_uri("a/b", bytes), "data:a/b;base64," + text);
    EXPECT_EQ(data_uri("a/b", "\xFF\xFE"), "data:a/b;base64,//4=");
}

TEST(HtmlTest, JsonInAScriptNeverEndsIt) {
    const Json json{{"name", hostile}};
    const std::string text = script_json(json);
    EXPECT_THAT(text, Not(testing::ContainsRegex("[<>&]")));
    EXPECT_EQ(Json::parse(text), json);
}

/// expects  marks where the millimetres are, on the drawing's own scale, and nothing outside the frame
TEST(StringDrawingTest, IsToScale) {
    StringDrawing drawing;
    drawing.id = "d";
    drawing.length = 0.7;
    drawing.reach = 0.7;
    drawing.board_end = 0.2;
    drawing.hair_width = 0.01;
    drawing.floor = 0.007;
    drawing.frets = {0.66, 0.62};
    drawing.guide_fret = 0.35;
    drawing.rows = {{.label = "12 <D5>",
                     .sounding = 0.35,
                     .near = 0.02,
                     .far = 0.05,
                     .is_band = true,
                     .best = 0.03,
                     .left_behind = 0.06}};
    pugi::xml_document document;
    ASSERT_TRUE(document.load_string(string_svg(drawing).c_str()));
    const pugi::xml_node svg = document.child("svg");
    const auto by_class = [&](const char* name) { return svg.find_child_by_attribute("class", name); };
    const double bridge = svg.find_child_by_attribute("line", "class", "bridge").attribute("x1").as_double();
    const double guide = by_class("guide").attribute("x1").as_double();
    const double px_a_metre = (bridge - guide) / 0.35;
    EXPECT_NEAR(by_class("band").attribute("x").as_double(), bridge - 0.05 * px_a_metre, 0.11);
    EXPECT_NEAR(by_class("band").attribute("width").as_double(), 0.03 * px_a_metre, 0.11);
    EXPECT_NEAR(by_class("best").attribute("x1").as_double(), bridge - 0.03 * px_a_metre, 0.11);
    EXPECT_NEAR(by_class("hair").attribute("width").as_double(), 0.01 * px_a_metre, 0.21);
    EXPECT_NEAR(by_class("finger").attribute("cx").as_double(), guide, 0.11);
    for (const pugi::xml_node mark : svg.children())
        for (const char* key : {"x", "x1", "x2", "cx"}) {
            const double x = mark.attribute(key).as_double(1.0);
            EXPECT_GE(x, 0.0);
            EXPECT_LE(x, drawing.width);
        }
}

/// margin   two steps of 16 bits: half a step of rounding and one of dither either way
TEST(FlacBytesTest, HoldTheSoundToTwoSteps) {
    analysis::Signal sound{{}, 48000.0};
    for (int i = 0; i < 4800; ++i) sound.samples.push_back(0.5 * std::sin(0.05 * i));
    const std::string bytes = analysis::flac_bytes(sound);
    EXPECT_EQ(analysis::flac_bytes(sound), bytes);
    const tests::TemporaryFolder folder;
    tests::put(folder / "sound.flac", bytes);
    const analysis::Audio read = analysis::read_audio(folder / "sound.flac");
    ASSERT_EQ(read.channels.front().size(), sound.samples.size());
    EXPECT_EQ(read.sample_rate, 48000.0);
    for (std::size_t i = 0; i < sound.samples.size(); ++i)
        ASSERT_NEAR(read.channels.front()[i], sound.samples[i], 2.0 / 32768.0);
}

}  // namespace
