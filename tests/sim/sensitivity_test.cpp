// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sensitivity.hpp"

#include "analysis/errors.hpp"
#include "sim/note.hpp"
#include "sim/report/sensitivity_report.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <set>
#include <type_traits>

namespace {

using namespace sim;

const Preset& bass() {
    static const Preset preset = find_preset("division_bass_viol");
    return preset;
}

Subject bass_subject() { return {bass(), open_string(bass(), bass().strings.front())}; }

Subject scaled(const std::string& name, double factor) {
    Subject subject = bass_subject();
    constants_named(name, "test").front()->scale(subject, factor);
    return subject;
}

SensitivityPlan tiny_plan(const std::string& name) {
    return {.stops = {15.0, 17.0, 19.0},
            .grid = {.contact_points = 4, .player_forces = 2, .more_forces = 0},
            .factor = 1.5,
            .end = {},
            .constants = constants_named(name, "test")};
}

Sensitivity played(const Preset& preset, const SensitivityPlan& plan, int threads = 2) {
    return find_sensitivity(preset, preset.strings.front(), plan, {.threads = threads, .progress = {}});
}

/// Fits any member of an aggregate, to count them.
struct Anything {
    template <class T>
    operator T() const;  // NOLINT: never run
};
template <class T, class... Members>
constexpr std::size_t member_count() {
    if constexpr (requires { T{Members{}..., Anything{}}; })
        return member_count<T, Members..., Anything>();
    else
        return sizeof...(Members);
}

/// Which bytes of a plain value differ, in steps of a double.
template <class T>
std::set<std::size_t> changed_places(const T& before, const T& after) {
    static_assert(std::is_trivially_copyable_v<T>);
    std::array<unsigned char, sizeof(T)> a{};
    std::array<unsigned char, sizeof(T)> b{};
    std::memcpy(a.data(), &before, sizeof(T));
    std::memcpy(b.data(), &after, sizeof(T));
    std::set<std::size_t> places;
    for (std::size_t i = 0; i < sizeof(T); ++i)
        if (a[i] != b[i]) places.insert(i / sizeof(double));
    return places;
}

/// Members of `part` that some constant changes alone.
template <class PartOf>
std::size_t members_changed_alone(const PartOf& part) {
    std::set<std::size_t> found;
    for (const Constant& constant : remembered_constants()) {
        Subject subject = bass_subject();
        const Subject before = subject;
        constant.scale(subject, 1.5);
        const auto places = changed_places(part(before), part(subject));
        if (places.size() == 1) found.insert(*places.begin());
    }
    return found.size();
}

std::size_t left_out_of(ConstantGroup group) {
    return static_cast<std::size_t>(
        std::ranges::count(left_out_constants(), group, [](const LeftOut& member) { return member.group; }));
}

}  // namespace

/// expects  as many entries that change one member alone as the struct has members, but for those left out with a
/// reason
TEST(SensitivityListTest, EveryMemberOfTheThermalContactHasAnEntry) {
    const auto thermal = [](const Subject& subject) { return subject.preset.friction.thermal; };
    EXPECT_EQ(members_changed_alone(thermal) + left_out_of(ConstantGroup::rosin), member_count<ThermalContact>());
}

TEST(SensitivityListTest, EveryMemberOfTheDampingHasAnEntry) {
    const auto damping = [](const Subject& subject) { return subject.open.damping; };
    EXPECT_EQ(members_changed_alone(damping) + left_out_of(ConstantGroup::string), member_count<Damping>());
}

TEST(SensitivityListTest, CountsTheMembersOfAStruct) {
    struct Three {
        double a;
        bool b;
        double c;
    };
    EXPECT_EQ(member_count<Three>(), 3U);
}

TEST(SensitivityListTest, NamesAreDistinctAndEveryEntryHasWordsAndASource) {
    std::set<std::string_view> names;
    for (const Constant& constant : remembered_constants()) {
        EXPECT_TRUE(names.insert(constant.name).second) << constant.name;
        EXPECT_NE(constant.what, "") << constant.name;
        EXPECT_NE(constant_source(constant, bass()), "") << constant.name;
    }
    EXPECT_NE(constant_source(*constants_named("body_mass", "").front(), bass()).find("invented"), std::string::npos);
    EXPECT_EQ(constant_source(*constants_named("torsion_q", "").front(), bass()), "from memory");
}

/// expects  each entry to change something, the nominal value it shows to follow (as the constant, or as its root for
///          the shear modulus, whose impedance is shown), and the factor's inverse to bring everything back
/// margin   rounding
TEST(SensitivityListTest, AFactorMovesTheNominalValueAndItsInverseBringsItBack) {
    for (const Constant& constant : remembered_constants()) {
        Subject subject = bass_subject();
        const Subject before = subject;
        const double nominal = constant.nominal(before).value();
        constant.scale(subject, 1.5);
        EXPECT_NE(subject, before) << constant.name;
        const double power = constant.name == "shear_modulus" ? 0.5 : 1.0;
        EXPECT_NEAR(constant.nominal(subject).value() / nominal, std::pow(1.5, power), 1e-12) << constant.name;
        constant.scale(subject, 1.0 / 1.5);
        EXPECT_NEAR(constant.nominal(subject).value() / nominal, 1.0, 1e-12) << constant.name;
    }
}

/// source   derived: c_t = sqrt(G/rho), Zt = m c_t / 2
TEST(SensitivityListTest, ShearModulusMovesTorsionByItsRootAndNothingElse) {
    const String before = bass_subject().open;
    String after = scaled("shear_modulus", 1.5).open;
    EXPECT_DOUBLE_EQ(after.torsion_impedance, before.torsion_impedance * std::sqrt(1.5));
    EXPECT_DOUBLE_EQ(after.torsion_speed, before.torsion_speed * std::sqrt(1.5));
    after.torsion_impedance = before.torsion_impedance;
    after.torsion_speed = before.torsion_speed;
    EXPECT_EQ(after, before);
}

TEST(SensitivityListTest, ForceWidthKeepsTheMiddleAndForceRangeKeepsTheWidth) {
    const Player before = bass().player;
    const Player wide = scaled("force_width", 1.5).preset.player;
    EXPECT_NEAR(wide.force_low * wide.force_high, before.force_low * before.force_high, 1e-12);
    EXPECT_NEAR(wide.force_high / wide.force_low, 1.5 * before.force_high / before.force_low, 1e-12);
    const Player firm = scaled("force_range", 1.5).preset.player;
    EXPECT_NEAR(firm.force_low, 1.5 * before.force_low, 1e-12);
    EXPECT_NEAR(firm.force_high, 1.5 * before.force_high, 1e-12);
}

TEST(SensitivityListTest, WhatIsSwitchedOffIsNotInForce) {
    Preset preset = bass();
    preset.friction.law = FrictionLaw::coulomb;
    preset.bridge = {};
    preset.strings.front().damping = preset.strings.front().torsion = preset.strings.front().stiffness = false;
    const Subject subject{preset, open_string(preset, preset.strings.front())};
    for (const char* group : {"rosin", "string", "body"})
        for (const Constant* constant : constants_named(group, ""))
            EXPECT_FALSE(constant->nominal(subject).has_value()) << constant->name;
}

TEST(SensitivityListTest, UnknownNamesAreRefusedWithTheNearest) {
    try {
        constants_named("shear_modulos", "--only");
        FAIL();
    } catch (const analysis::InputError& error) {
        const std::string what = error.what();
        EXPECT_NE(what.find("did you mean shear_modulus"), std::string::npos) << what;
        EXPECT_NE(what.find("body_mass"), std::string::npos) << what;
    }
}

/// expects  the same note whether made from the gauge or from the open string that follows from it
TEST(SensitivityTest, ANoteOfTheUnchangedOpenStringIsTheNote) {
    for (double stop : {0.0, 7.0, 12.0}) {
        EXPECT_EQ(make_note(bass(), bass_subject().open, stop), make_note(bass(), bass().strings.front(), stop));
    }
}

TEST(SensitivityTest, StopsAreTheUsualOnesWithinTheRangeAndItsEnds) {
    EXPECT_EQ(usual_sensitivity_stops(0.0, 19.0), (std::vector<double>{0, 5, 7, 10, 12, 15, 17, 19}));
    EXPECT_EQ(usual_sensitivity_stops(6.0, 13.5), (std::vector<double>{6, 7, 10, 12, 13.5}));
    EXPECT_EQ(usual_sensitivity_stops(3.0, 3.0), (std::vector<double>{3}));
    EXPECT_EQ(shown_stops({0, 5, 12}), (std::vector<bool>{true, false, true}));
    EXPECT_EQ(shown_stops({3, 4}), (std::vector<bool>{true, true}));
}

/// expects  rows of nominal, both grids and both directions; the verdict from the row's own places
TEST(SensitivityTest, OneConstantGivesTwoRowsBesideTheUnchangedAndTheGrids) {
    const Sensitivity all = played(bass(), tiny_plan("force_range"));
    ASSERT_EQ(all.rows.size(), 5U);
    EXPECT_EQ(all.rows[0].kind, RowKind::nominal);
    EXPECT_EQ(all.rows[1].kind, RowKind::grid);
    EXPECT_EQ(all.rows[2].kind, RowKind::grid);
    for (const SensitivityRow& row : all.rows) {
        ASSERT_EQ(row.notes.size(), 3U);
        std::vector<RulePlace> places;
        for (const SensitivityNote& note : row.notes)
            if (note.band.best) places.push_back({note.stop, note.sounding_length, *note.band.best});
        EXPECT_EQ(row.rule, judge_rule(places));
    }
    EXPECT_EQ(all.rows[3].direction, Direction::up);
    EXPECT_EQ(all.rows[4].direction, Direction::down);
    EXPECT_NE(all.rows[3].notes[0].band.at_best, all.rows[0].notes[0].band.at_best);
    ASSERT_EQ(all.strengths.size(), 2U);
    EXPECT_EQ(all.strengths.front().constant->name, "force_range");
    EXPECT_EQ(all.strengths.back().constant, nullptr);
}

/// expects  a bare finger's loss to change nothing on frets: the very same answer, forces too
TEST(SensitivityTest, WhatANoteDoesNotHaveMovesNothing) {
    SensitivityPlan plan = tiny_plan("finger_q");
    plan.stops = {5.0, 7.0};
    const Sensitivity all = played(bass(), plan);
    for (const std::size_t row : {3U, 4U}) {
        for (const std::size_t i : {0U, 1U}) {
            EXPECT_EQ(all.rows[row].notes[i].band.at_best, all.rows[0].notes[i].band.at_best);
            EXPECT_EQ(all.rows[row].notes[i].forces, all.rows[0].notes[i].forces);
        }
    }
    EXPECT_EQ(all.strengths.front().best, 0.0);
}

/// expects  a wander judged on the strokes already played to give what playing them again would
TEST(SensitivityTest, WhatIsOnlyJudgedIsAsIfPlayedAnew) {
    SensitivityPlan plan = tiny_plan("wander");
    plan.stops = {19.0};
    const Sensitivity all = played(bass(), plan);
    Preset straying = bass();
    straying.player.wander *= 1.5;
    plan.constants.clear();
    const Sensitivity anew = played(straying, plan);
    EXPECT_NE(all.rows[3].notes[0].band.at_best, all.rows[0].notes[0].band.at_best);
    EXPECT_EQ(all.rows[3].notes[0].band.best, anew.rows[0].notes[0].band.best);
    EXPECT_EQ(all.rows[3].notes[0].band.at_best, anew.rows[0].notes[0].band.at_best);
}

TEST(SensitivityTest, TextsAreTheSameOnOneThreadAndOnTwo) {
    const report::AskedSensitivity asked{
        .run = {.version = "0", .command = "sensitivity", .preset = bass(), .settings = {}},
        .reference_pitch = bass().reference_pitch};
    SensitivityPlan plan = tiny_plan("shear_modulus");
    plan.stops = {19.0};
    const Sensitivity one = played(bass(), plan, 1);
    const Sensitivity two = played(bass(), plan, 2);
    EXPECT_EQ(report::sensitivity_json(asked, one), report::sensitivity_json(asked, two));
    EXPECT_EQ(report::sensitivity_table(asked, one), report::sensitivity_table(asked, two));
    EXPECT_EQ(sensitivity_in_words(one), sensitivity_in_words(two));
}
