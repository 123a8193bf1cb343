// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/cautions.hpp"

#include "analysis/units.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace {

using namespace sim;
using testing::ElementsAre;
using testing::HasSubstr;

std::vector<std::string> keys(const std::vector<Caution>& cautions) {
    std::vector<std::string> all;
    for (const Caution& caution : cautions) all.push_back(caution.key);
    return all;
}

Preset raised(Preset preset, double semitones) {
    preset.reference_pitch *= analysis::ratio_from_semitones(semitones);
    return preset;
}

}  // namespace

TEST(CautionsTest, InstrumentAsItWasSetUpFarFromBreakingDrawsNone) {
    const Preset bass = find_preset("division_bass_viol");
    EXPECT_TRUE(stringing_cautions(bass, bass).empty());
}

TEST(CautionsTest, StringNearItsLimitIsToldAsItIsSetUp) {
    const Preset descant = find_preset("descant_viol");
    const auto cautions = stringing_cautions(descant, descant);
    ASSERT_THAT(keys(cautions), ElementsAre("string_near_breaking", "breaking_strings"));
    EXPECT_EQ(cautions[0].about, descant.strings[0].name);
    EXPECT_NEAR(cautions[0].value.value(), 223.5, 0.05);
    EXPECT_EQ(cautions[0].limit, 220.0);
    EXPECT_EQ(cautions[0].unit, "Hz m");
    // 12 log2(240/223.5) semitones are left
    EXPECT_THAT(cautions[0].text, testing::AllOf(HasSubstr("near the limit"), HasSubstr("1.2 semitones higher")));
    EXPECT_THAT(cautions[1].text, testing::AllOf(HasSubstr("eyes"), HasSubstr("glasses"), HasSubstr("slowly")));
}

/// expects  raised a tone, each string pulls (9/8 in equal temperament 2^(1/6)) squared as much: 26 % above; at A 466
/// the
///          alto's top string makes 249 Hz m and is likely to break
TEST(CautionsTest, SetRaisedATonePullsMoreThanItsSetUp) {
    const Preset bass = find_preset("division_bass_viol");
    const auto of_bass = stringing_cautions(bass, raised(bass, 2.0));
    ASSERT_THAT(keys(of_bass), ElementsAre("pull_above_set_up", "breaking_strings"));
    EXPECT_NEAR(of_bass[0].value.value() / of_bass[0].limit.value(), std::exp2(1.0 / 3.0), 1e-9);
    EXPECT_NEAR(of_bass[0].limit.value(), total_pull(bass), 1e-9);
    EXPECT_EQ(of_bass[0].unit, "N");
    EXPECT_THAT(of_bass[0].text,
                testing::AllOf(HasSubstr("26 % above"), HasSubstr("old instrument"), HasSubstr("maker")));

    const Preset alto = find_preset("alto_viol");
    EXPECT_THAT(keys(stringing_cautions(alto, raised(alto, 2.0))),
                ElementsAre("string_likely_to_break", "pull_above_set_up", "breaking_strings"));
}

TEST(CautionsTest, ThicknessDoesNotChangeTheBreakingPointButThePull) {
    const Preset alto = find_preset("alto_viol");
    Preset thick = alto;
    thick.strings[0].gauge.diameter = 1.2 * *alto.strings[0].gauge.diameter;
    const auto cautions = stringing_cautions(alto, thick);
    ASSERT_THAT(keys(cautions), ElementsAre("string_near_breaking", "pull_above_set_up", "breaking_strings"));
    EXPECT_EQ(cautions[0].value, stringing_cautions(alto, alto)[0].value);
}

TEST(CautionsTest, LighterSetAsksForAMakerAllTheSame) {
    const Preset bass = find_preset("division_bass_viol");
    EXPECT_THAT(keys(stringing_cautions(bass, raised(bass, -1.0))), ElementsAre("breaking_strings", "ask_a_maker"));
}

TEST(CautionsTest, EyesEarsAndHandsHaveTheirOwn) {
    EXPECT_THAT(listening_caution().text, HasSubstr("85 dB(A)"));
    EXPECT_THAT(strain_caution().text, testing::AllOf(HasSubstr("pain"), HasSubstr("no medical advice")));
}
