// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/joint_forces.hpp"

#include "sim/kernel/bow_contact.hpp"
#include "sim/kernel/reference_run.hpp"
#include "sim/stroke.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>
#include <vector>

namespace {

using namespace sim;
using kernel::JointForces;

double chance(std::mt19937& random) { return static_cast<double>(random()) / 4294967296.0; }

/// Points strewn over a few samples of a line, or close together, each between two samples, under a bow at a speed:
/// singular where points are more than samples.
JointForces::Rubbing strewn(std::mt19937& random, std::size_t points, std::size_t samples) {
    std::vector<std::vector<double>> weights(points, std::vector<double>(samples, 0.0));
    const double spread = std::pow(10.0, -8.0 * std::max(0.0, chance(random) - 0.5));
    for (std::vector<double>& row : weights) {
        const double place = spread * chance(random) * static_cast<double>(samples - 1);
        const std::size_t below = std::min(static_cast<std::size_t>(place), samples - 2);
        row[below + 1] = place - static_cast<double>(below);
        row[below] = 1.0 - row[below + 1];
    }
    std::vector<double> waves(samples);
    for (double& wave : waves) wave = chance(random) - 0.5;
    const double speed = 0.4 * chance(random);
    JointForces::Rubbing rubbing{.points = points, .yield = {}, .free_slip = {}, .bears = {}};
    for (std::size_t i = 0; i < points; ++i) {
        const auto& row = weights[i];
        for (std::size_t j = 0; j < points; ++j)
            rubbing.yield[i][j] = 0.7 * std::inner_product(row.begin(), row.end(), weights[j].begin(), 0.0);
        rubbing.free_slip[i] = std::inner_product(row.begin(), row.end(), waves.begin(), -speed);
        rubbing.bears[i] = 0.02 + 0.5 * chance(random);
    }
    return rubbing;
}

kernel::Note ribbon_note(const char* name, std::size_t string, double stop, int points) {
    Preset preset = find_preset(name);
    preset.bow.hair_points = points;
    const Note note = make_note(preset, preset.strings[string], stop);
    return kernel_note(note, sample_rate(note, 0.1 * note.string.length));
}

double squares(const kernel::WaveLines& lines) {
    double sum = 0.0;
    for (const double wave : lines.toward_bridge()) sum += wave * wave;
    for (const double wave : lines.toward_stop()) sum += wave * wave;
    return sum;
}

struct Case {
    const char* preset;
    std::size_t string;
    double stop;
    double force;  // N
};
const Case cases[] = {{"division_bass_viol", 0, 12.0, 0.2}, {"violin", 2, 0.0, 0.45}, {"treble_viol", 0, 7.0, 0.2}};

}  // namespace

/// source   friction of sign alone (derived): a point sticks under no more than it bears or slides under all of that
/// expects  just this of every point, however few samples the points share and whatever the first guess
/// margin   1e-9 of the slips
TEST(JointForcesTest, EveryPointSticksOrSlidesAgainstItsFriction) {
    std::mt19937 random(1);
    int sticking = 0;
    int sliding = 0;
    for (std::size_t trial = 0; trial < 3000; ++trial) {
        const std::size_t points = 2 + trial % (JointForces::most_points - 1);
        const JointForces::Rubbing rubbing = strewn(random, points, 2 + trial % 7);
        JointForces::Values forces{};
        for (double& force : forces) force = 2.0 * chance(random) - 1.0;
        JointForces::settle(rubbing, forces);
        const JointForces::Values slip = JointForces::slips(rubbing, forces);
        for (std::size_t i = 0; i < points; ++i) {
            ASSERT_LE(std::abs(forces[i]), rubbing.bears[i] * (1.0 + 1e-12)) << trial;
            const bool slides = std::abs(slip[i]) > 1e-9;
            (slides ? sliding : sticking) += 1;
            if (slides) {
                ASSERT_NEAR(forces[i], -std::copysign(rubbing.bears[i], slip[i]), 1e-12) << trial;
            }
        }
    }
    EXPECT_GT(sticking, 5000);
    EXPECT_GT(sliding, 5000);
}

/// expects  forces of a ribbon to be found in every sample, up to the most points a bow may have
TEST(JointForcesTest, EverySampleOfARibbonSettles) {
    for (const Case& c : cases)
        for (const int points : {5, 6, 8, 12, 15}) {
            const kernel::Note note = ribbon_note(c.preset, c.string, c.stop, points);
            const double place = 0.1 * note.length;
            kernel::ReferenceRun run(note, {.helmholtz = true, .speed = 0.2, .warmth = {}}, place);
            run.place_bow(place);
            int unsettled = 0;
            for (int t = 0; t < 6000; ++t) {
                run.advance({.speed = 0.2, .force = c.force, .lengthwise = 0.0});
                unsettled += run.bow().settled() ? 0 : 1;
                run.step();
            }
            EXPECT_EQ(unsettled, 0) << c.preset << ", " << points << " points";
        }
}

/// source   equal work (derived): what a bow does goes into waves and heat, and heat is never given back
/// expects  waves to win no more than the bow's work in any sample, and just that much from hair that doesn't slip
/// margin   1e-8 of the greatest work in a sample, the rounds' own precision and rounding
TEST(JointForcesTest, WavesOfARibbonWinNoMoreThanTheBowsWork) {
    constexpr double speed = 0.2;
    constexpr double force = 0.2;
    for (const bool sticky : {false, true}) {
        kernel::Note note = ribbon_note("division_bass_viol", 0, 12.0, 12);
        if (sticky)
            note.contact =
                kernel_contact({.law = FrictionLaw::coulomb, .static_coefficient = 1e4, .sliding_coefficient = 1e4});
        const double place = 0.1 * note.length;
        kernel::WaveLines string(note.transverse, note.sample_rate);
        kernel::WaveLines twist(note.torsional, note.sample_rate);
        string.fill_with_helmholtz({.contact_point = place, .length = note.length}, speed);
        kernel::BowContact bow(note, note.sample_rate, {});
        bow.place(place, string, twist);
        const auto energy = [&] {
            return note.transverse.impedance * squares(string) + note.torsional.impedance * squares(twist);
        };
        double fastest = 0.0;
        for (int t = 0; t < 3000; ++t) {
            for (kernel::WaveLines* lines : {&string, &twist}) {
                lines->leave_bridge(-lines->wave_at_bridge());
                lines->turn_at_stop();
            }
            const double before = energy();
            bow.rub(string, twist, {.speed = speed, .force = force, .lengthwise = 0.0});
            const double won = energy() - before;
            const double work = speed * bow.friction();
            ASSERT_LE(won, work + 1e-8 * speed * force) << t;
            if (sticky) {
                ASSERT_NEAR(won, work, 1e-8 * speed * force) << t;
            }
            fastest = std::max(fastest, std::abs(bow.slip()));
            string.step();
            twist.step();
        }
        EXPECT_EQ(fastest > 0.1, !sticky);
    }
}

/// source   a ribbon is what ever more points come to (derived)
/// expects  pitch, level and first partial of the bridge force to stay from 8 points to 12
/// margin   1 cent, 0.1 dB, 1 %
TEST(JointForcesTest, RibbonStaysAsItsPointsGetMore) {
    const auto tone = [](int points) {
        Preset preset = find_preset("violin");
        preset.bow.hair_points = points;
        const Note note = make_note(preset, preset.strings[2], 0.0);
        return play(note, {.contact_point = 0.1 * note.string.length,
                           .force = 0.45,
                           .speed = 0.2,
                           .duration = 0.3,
                           .beginning = Beginning::held})
            .tone;
    };
    const Tone eight = tone(8);
    const Tone twelve = tone(12);
    ASSERT_TRUE(eight.pitch && twelve.pitch);
    EXPECT_NEAR(1200.0 * std::log2(*twelve.pitch / *eight.pitch), 0.0, 1.0);
    EXPECT_NEAR(20.0 * std::log10(twelve.level / eight.level), 0.0, 0.1);
    EXPECT_NEAR(twelve.bridge_fundamental / eight.bridge_fundamental, 1.0, 0.01);
}
