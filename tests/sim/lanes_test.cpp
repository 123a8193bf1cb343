// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/lanes.hpp"

#include "sim/kernel/lane_curve.hpp"
#include "sim/stroke_batch.hpp"
#include "sim/stroke_map.hpp"
#include "tests/sim/lane_runs.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>
#include <cmath>

namespace {

using namespace sim;
using namespace tests;

const kernel::Drive at_the_place{
    .speed = {}, .force = {}, .contact_point = constant_profile(bowed_place), .lengthwise = 0.0};

kernel::Note ready(const Note& note) { return kernel_note(note, sample_rate(note, bowed_place)); }

/// Greatest difference of two rows over their first samples, of the greatest value.
double difference(const std::vector<double>& a, const std::vector<double>& b, std::size_t samples) {
    double greatest = 0.0;
    double size = 1e-30;
    for (std::size_t i = 0; i < std::min({samples, a.size(), b.size()}); ++i) {
        greatest = std::max(greatest, std::abs(a[i] - b[i]));
        size = std::max(size, std::abs(a[i]));
    }
    return greatest / size;
}

/// The same strokes by the reference and by lanes: how far they part over the first samples.
double parting(const Note& note, const kernel::Drive& shared, const std::vector<kernel::LaneStroke>& strokes,
               std::size_t samples) {
    const kernel::Note wanted = kernel_note(note, sample_rate(note, smallest_value(shared.contact_point)));
    const std::vector<kernel::Record> lanes = kernel::run_lanes(wanted, shared, strokes);
    double greatest = 0.0;
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        kernel::Drive drive = shared;
        drive.speed = strokes[i].speed;
        drive.force = strokes[i].force;
        const kernel::Record record = kernel::run_reference(wanted, drive, strokes[i].start, strokes[i].wanted);
        EXPECT_EQ(lanes[i].velocity.size(), record.velocity.size());
        greatest = std::max({greatest, difference(record.velocity, lanes[i].velocity, samples),
                             difference(record.friction, lanes[i].friction, samples),
                             difference(record.bridge_force, lanes[i].bridge_force, samples)});
    }
    return greatest;
}

constexpr std::size_t early = 3000;  // samples, some periods; later rounding has grown to other runs of the same kind

}  // namespace

/// source   the double reference of this project
/// expects  the same waveforms over the first periods, rounding apart, under every law
/// margin   1e-3 of the greatest value; single precision rounds at 6e-8, a release multiplies it by up to 1000
TEST(LanesTest, EveryLawFollowsTheReference) {
    for (const FrictionLaw law :
         {FrictionLaw::thermal, FrictionLaw::double_exponential, FrictionLaw::hyperbola, FrictionLaw::coulomb}) {
        const Note note = octave_of("division_bass_viol", {.law = law});
        EXPECT_LE(parting(note, at_the_place, lane_strokes(3, 4000), early), 1e-3) << friction_law_name(law);
    }
}

/// expects  as above where the string also moves towards the hair, over a bridge that leans
TEST(LanesTest, UprightMotionFollowsTheReference) {
    const Note note = octave_of("division_bass_viol", {}, {.upright_resistance = 1.3, .bridge_lean = 0.4});
    EXPECT_LE(parting(note, at_the_place, lane_strokes(3, 4000), early), 1e-3);
}

/// expects  as above under a ribbon, whose points feel each other within a sample, and under hair that gives.  (Rigid
///          points under a law with two coefficients have more than one answer, each point jumping by itself: the two
///          kernels then find different ones, and are not held to each other.)
TEST(LanesTest, RibbonFollowsTheReference) {
    const Bow rigid{.hair_points = 5};
    const Bow giving{.hair_points = 3, .stiffness = 2.5e5, .resistance = 10.0, .mass = 1.7e-3};
    const Bow one{.stiffness = 2.5e5, .resistance = 10.0, .mass = 1.7e-3};
    const auto apart = [](const Bow& bow, FrictionLaw law) {
        return parting(octave_of("division_bass_viol", {.law = law}, bow), at_the_place, lane_strokes(3, 4000), early);
    };
    for (const Bow& bow : {rigid, giving, one}) EXPECT_LE(apart(bow, FrictionLaw::thermal), 1e-3) << bow.hair_points;
    for (const Bow& bow : {giving, one}) EXPECT_LE(apart(bow, FrictionLaw::coulomb), 1e-3) << bow.hair_points;
}

/// source   the law's table, and that table's own straight lines
/// expects  the lanes' curve as close to the table as the table is to the law, with the usual constants; another set of
///          them, with which the law jumps, is told apart
/// margin   2e-5 of mu: the table's lines part from the law by some 1e-5
TEST(LanesTest, CurveIsCloseToTheLawsTable) {
    const kernel::Contact usual = kernel_contact({});
    const kernel::LaneCurve curve = kernel::lane_curve(usual);
    double greatest = 0.0;
    for (std::size_t i = 0; i < usual.table.size(); ++i)
        greatest = std::max(
            greatest,
            std::abs(kernel::coefficient_on(curve, static_cast<double>(i) * usual.table_step) - usual.table[i]));
    EXPECT_LE(greatest, 2e-5);
    EXPECT_TRUE(kernel::close_to_table(curve, usual));
    Friction thick;
    thick.thermal.layer *= 2.5;
    const kernel::Contact jumps = kernel_contact(thick);
    EXPECT_FALSE(kernel::close_to_table(kernel::lane_curve(jumps), jumps));
}

/// expects  such a law followed all the same
TEST(LanesTest, LawThatJumpsFollowsTheReference) {
    Friction thick;
    thick.thermal.layer *= 2.5;
    EXPECT_LE(parting(octave_of("division_bass_viol", thick), at_the_place, lane_strokes(3, 4000), early), 1e-3);
}

/// expects  as above for hair that slides along the string as well
TEST(LanesTest, SkewFollowsTheReference) {
    for (const FrictionLaw law : {FrictionLaw::thermal, FrictionLaw::coulomb}) {
        kernel::Drive askew = at_the_place;
        askew.lengthwise = 0.03;
        const Note note = octave_of("division_bass_viol", {.law = law});
        EXPECT_LE(parting(note, askew, lane_strokes(3, 4000), early), 1e-3) << friction_law_name(law);
    }
}

/// expects  as above while the contact point moves
TEST(LanesTest, MovingBowFollowsTheReference) {
    kernel::Drive moving = at_the_place;
    moving.contact_point = {{{0.0, 0.030}, {0.01, 0.040}, {0.02, 0.031}}};
    EXPECT_LE(parting(octave_of("division_bass_viol"), moving, lane_strokes(3, 4000), early), 1e-3);
}

/// expects  as above from the ideal motion, and on a contact warmed before
TEST(LanesTest, HeldAndWarmStartsFollowTheReference) {
    const Note note = octave_of("treble_viol");
    std::vector<kernel::LaneStroke> strokes = lane_strokes(3, 4000);
    for (kernel::LaneStroke& stroke : strokes) stroke.speed = constant_profile(0.2);
    strokes[0].start = {.helmholtz = true, .speed = 0.2, .warmth = {}};
    strokes[1].start = {.helmholtz = true, .speed = 0.2, .warmth = {}};
    strokes[1].start.warmth = {.layer = 5.0, .string_side = {5.0, 4.0, 3.0, 2.0, 1.0}};
    EXPECT_LE(parting(note, at_the_place, strokes, early), 2e-3);
}

/// source   Coulomb friction and a linear string: speed and force scale together (derived)
/// expects  twice the bridge force at twice the speed and force
/// margin   none: a power of two
TEST(LanesTest, SpeedAndForceScaleTogetherUnderCoulombFriction) {
    const Note note = octave_of("division_bass_viol", {.law = FrictionLaw::coulomb});
    std::vector<kernel::LaneStroke> strokes = lane_strokes(2, 20000);
    strokes[1].speed = rising_profile({0.4, 0.004});
    strokes[1].force = constant_profile(0.1);
    const auto records = kernel::run_lanes(ready(note), at_the_place, strokes);
    for (std::size_t i = 0; i < records[0].bridge_force.size(); ++i)
        ASSERT_EQ(2.0 * records[0].bridge_force[i], records[1].bridge_force[i]) << i;
}

/// source   a string stuck to hair that stands still after pulling it aside (derived)
/// expects  the friction it is held with stays: 0 Hz comes back whole from both ends, in single precision too
/// margin   0.02 % over 0.5 s; the reference keeps it to 1e-9
TEST(LanesTest, StuckStringDoesNotCreep) {
    const Note note = octave_of("division_bass_viol", {.law = FrictionLaw::coulomb});
    const double rate = sample_rate(note, bowed_place);
    std::vector<kernel::LaneStroke> strokes = lane_strokes(1, static_cast<int>(0.7 * rate));
    strokes[0].speed = {{{0.0, 0.0}, {0.05, 0.01}, {0.1, 0.0}}};
    strokes[0].force = constant_profile(100.0);
    const auto records = kernel::run_lanes(ready(note), at_the_place, strokes);
    const std::vector<double>& friction = records[0].friction;
    const double settled = friction[static_cast<std::size_t>(0.2 * rate)];
    EXPECT_GT(std::abs(settled), 0.1);
    EXPECT_NEAR(friction.back() / settled, 1.0, 2e-4);
}

/// expects  the same bits for a stroke alone, among others, and advanced in pieces
/// margin   none
TEST(LanesTest, RecordDependsNeitherOnNeighboursNorOnPieces) {
    const Note note = octave_of("division_bass_viol");
    std::vector<kernel::LaneStroke> strokes = lane_strokes(7, 5000);
    strokes[2].force = {{{0.0, 0.1}, {0.005, 0.3}, {0.011, 0.2}}};
    strokes[4].wanted.steps = 3210;
    const auto together = kernel::run_lanes(ready(note), at_the_place, strokes);
    for (std::size_t i = 0; i < strokes.size(); ++i) {
        kernel::LaneBatch batch(ready(note), at_the_place.contact_point, 0.0, {&strokes[i], 1});
        while (batch.steps_left() > 0) batch.advance(std::min(batch.steps_left(), 331));
        EXPECT_EQ(hash_of(batch.take_records()), hash_of({together[i]})) << i;
    }
}

/// expects  of a stroke that is told to run shorter, the first part of the longer one
TEST(LanesTest, ForceFromAStepOnIsTheEndOfTheWholeForce) {
    const Note note = octave_of("division_bass_viol");
    std::vector<kernel::LaneStroke> strokes = lane_strokes(2, 4000, 0.1);
    strokes[1] = strokes[0];
    strokes[1].wanted.bridge_from = 2500;
    const auto records = kernel::run_lanes(ready(note), at_the_place, strokes);
    ASSERT_EQ(records[0].bridge_force.size(), 4000U);
    EXPECT_EQ(std::vector<double>(records[0].bridge_force.begin() + 2500, records[0].bridge_force.end()),
              records[1].bridge_force);
}

/// expects  equal results over 1, 2 and 3 threads, whatever the order of the strokes
TEST(LanesTest, ResultsDoNotDependOnThreads) {
    const Preset preset = find_preset("treble_viol");
    const Note note = make_note(preset, preset.strings.front(), 7.0);
    const MapGrid grid{.contact_points = 3, .player_forces = 5};
    const StrokeMap one = started_map(note, preset.player, grid, {.threads = 1});
    for (const int threads : {2, 3})
        EXPECT_EQ(started_map(note, preset.player, grid, {.threads = threads}).strokes, one.strokes) << threads;
    std::vector<Stroke> backwards;
    for (const StrokeResult& result : one.strokes) backwards.insert(backwards.begin(), result.stroke);
    std::vector<StrokeResult> results = play_all(note, backwards, {.threads = 1});
    std::ranges::reverse(results);
    EXPECT_EQ(results, one.strokes);
}

/// expects  the same verdicts as the reference's on a small map
/// margin   one stroke of 20 may lie on an edge
TEST(LanesTest, VerdictsOfASmallMapAreTheReferences) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings.front(), 12.0);
    const MapGrid grid{.contact_points = 4, .player_forces = 5};
    const StrokeMap lanes = started_map(note, preset.player, grid, {.threads = 2});
    const StrokeMap reference = started_map(note, preset.player, grid, {.threads = 2, .kernel = Kernel::reference});
    int differ = 0;
    for (std::size_t i = 0; i < lanes.strokes.size(); ++i)
        differ += lanes.strokes[i].verdict.motion == reference.strokes[i].verdict.motion ? 0 : 1;
    EXPECT_LE(differ, 1);
}

/// expects  a map that is told to stop ends with Stopped long before its time
TEST(LanesTest, WorkStopsWhenAsked) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings.front(), 12.0);
    std::stop_source source;
    std::atomic<int> told = 0;
    const Workers workers{.threads = 2,
                          .progress =
                              [&](double) {
                                  ++told;
                                  source.request_stop();
                              },
                          .stop = source.get_token()};
    EXPECT_THROW(started_map(note, preset.player, {.contact_points = 20, .player_forces = 16}, workers), Stopped);
    EXPECT_LE(told, 4);
}
