// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/preset_fields.hpp"

#include "analysis/errors.hpp"
#include "gui/model/set_up.hpp"
#include "tests/gui/model/model_tools.hpp"

#include <gtest/gtest.h>

namespace {

using gui::Field;
using gui::FieldValue;

/// What the reader says to a number at a field; empty where it takes it.
std::string answer_to(const sim::Preset& preset, const Field& field, double value) {
    try {
        gui::with_changes(preset, {{field.pointer, FieldValue(value), "invented"}});
    } catch (const analysis::InputError& wrong) {
        return wrong.what();
    }
    return {};
}

/// expects  the range beside every value is the reader's own: just outside, the reader names the very range
/// margin   a thousandth outside; a whole number one outside
TEST(PresetFieldsTest, RangesAreTheReadersOwn) {
    for (const char* name : {"division_bass_viol", "violin"}) {
        const sim::Preset preset = sim::find_preset(name);
        for (const Field& field : gui::preset_fields(preset)) {
            if (!field.range) continue;
            const double over = field.range->whole ? field.range->high + 1.0 : field.range->high * 1.001;
            const double low = field.range->low;
            const double under = field.range->whole ? low - 1.0 : low > 0.0 ? low * 0.999 : low * 1.001 - 1e-6;
            for (const double outside : {over, under}) {
                const std::string answer = answer_to(preset, field, outside);
                EXPECT_NE(answer.find("must be a"), std::string::npos)
                    << field.pointer << " = " << outside << ": " << answer;
            }
            // inside, other rules may speak (a tension that no string bears), but not the range
            const double middle = field.range->whole ? field.range->high : 0.5 * (field.range->low + field.range->high);
            for (const double inside : {middle, field.range->high, field.range->low}) {
                const std::string answer = answer_to(preset, field, inside);
                EXPECT_EQ(answer.find("must be a number"), std::string::npos)
                    << field.pointer << " = " << inside << ": " << answer;
            }
        }
    }
}

/// expects  every number of every field is there, has a source, a sentence that explains it, and a unit or none by
/// intent
TEST(PresetFieldsTest, EveryFieldHasAValueASourceAndAMeaning) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const gui::PresetValues values(preset);
    for (const Field& field : gui::preset_fields(preset)) {
        EXPECT_TRUE(values.value(field.pointer).has_value()) << field.pointer;
        EXPECT_TRUE(field.meaning.endsWith('.')) << field.pointer;
        if (field.range && !field.range->whole) {
            EXPECT_FALSE(values.source(field.pointer).isEmpty()) << field.pointer;
        }
    }
}

/// expects  measured values in their places, named as measured, everything else untouched
TEST(SetUpTest, PutsWhatWasMeasuredIntoThePreset) {
    const sim::Preset shipped = sim::find_preset("division_bass_viol");
    gui::SetUp wanted = gui::set_up_of(shipped, 1);
    EXPECT_EQ(gui::set_up(shipped, wanted).strings, shipped.strings);
    wanted.name = "mine";
    wanted.length_mm = 700.0;
    wanted.finger_width_mm = 18.5;
    wanted.lightest = 0.15;
    wanted.firmest = 0.5;
    const sim::Preset mine = gui::set_up(shipped, wanted);
    EXPECT_EQ(mine.name, "mine");
    for (const sim::PresetString& string : mine.strings) EXPECT_DOUBLE_EQ(string.length, 0.7);
    EXPECT_DOUBLE_EQ(mine.player.finger_width, 0.0185);
    EXPECT_DOUBLE_EQ(mine.player.force_low, 0.15);
    EXPECT_EQ(mine.sources.at("/player/finger_width_mm"), "measured by the player");
    EXPECT_EQ(mine.sources.at("/strings/0/length_mm"), "measured by the player");
    EXPECT_EQ(mine.bridge, shipped.bridge);
    EXPECT_DOUBLE_EQ(mine.hair_width, shipped.hair_width);
}

TEST(SetUpTest, LikedStrokesMakeARange) {
    EXPECT_EQ(gui::liked_forces({0.4, 0.1, 0.2}), (gui::LikedForces{0.1, 0.4}));
    EXPECT_EQ(gui::liked_forces({0.2}), std::nullopt);
}

/// expects  six strokes, rising in force over more than the preset's range, with sound in each of the middle ones
TEST(SetUpTest, StrokesToLikeCoverMoreThanTheRange) {
    const sim::Preset preset = sim::find_preset("division_bass_viol");
    const auto strokes = gui::strokes_to_like(preset, 0, {.threads = 2});
    ASSERT_EQ(strokes.size(), 6u);
    EXPECT_LT(strokes.front().force, preset.player.force_low);
    EXPECT_GT(strokes.back().force, preset.player.force_high);
    for (const gui::StrokeToLike& stroke : strokes) {
        const auto [least, greatest] = std::ranges::minmax(stroke.sound.samples);
        EXPECT_GT(greatest - least, 0.001);
    }
}

}  // namespace
