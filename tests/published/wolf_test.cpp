// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/wolf.hpp"

#include "sim/batch.hpp"
#include "sim/force_window.hpp"
#include "sim/limits.hpp"
#include "tests/published/wolf_cello.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>

namespace {

using namespace sim;
using namespace tests;

/// The bracket of the formula written out anew: every moment of a period as a sum of cosines and sines.
double least_force_by_hand(const LimitCase& c, const Bridge& bridge, double hz) {
    constexpr int terms = 2000;
    constexpr int moments = 2048;
    double steady = 0.0;
    std::vector<std::complex<double>> rows;
    for (int n = 1; n <= terms; ++n) {
        rows.push_back(admittance(bridge, n * hz) / static_cast<double>(n) / static_cast<double>(n));
        steady += rows.back().real();
    }
    double greatest = -1e300;
    for (int k = 0; k < moments; ++k) {
        double sum = 0.0;
        for (int n = 1; n <= terms; ++n) {
            const double angle = 2.0 * std::numbers::pi * std::fmod(static_cast<double>(n) * k / moments, 1.0);
            const std::complex<double>& row = rows[static_cast<std::size_t>(n - 1)];
            sum += (n % 2 == 1 ? 1.0 : -1.0) * (row.real() * std::cos(angle) - row.imag() * std::sin(angle));
        }
        greatest = std::max(greatest, sum);
    }
    const double pi2 = std::numbers::pi * std::numbers::pi;
    return 2.0 * c.speed * c.wave_impedance * c.wave_impedance /
           (pi2 * c.contact_ratio * c.contact_ratio * c.friction_drop) * (greatest + steady);
}

std::string semitones_text(double offset) {
    return offset == 0.0 ? "on the mode" : digits(offset) + " semitones from it";
}

}  // namespace

/// source   [Woodhouse1993], least bow force from the bridge's admittance: prefactor seen, bracket derived
/// expects  the sum that the limits give (200 partials, 512 moments) is the formula's, over notes about the mode
/// margin   1 %
TEST(WolfNote, LeastForceFormulaIsSummedFarEnough) {
    double worst = 0.0;
    for (double offset : {-3.0, -1.0, -0.25, 0.0, 0.25, 1.0, 3.0}) {
        const Note note = wolf_note({.string = "2", .mass = 0.3, .semitones_off = offset});
        const double place = 0.1 * note.string.length;
        const Limits closed = limits(note, {place, 0.2});
        const double by_hand = least_force_by_hand({.wave_impedance = wave_impedance(note.string),
                                                    .speed = 0.2,
                                                    .contact_ratio = 0.1,
                                                    .friction_drop = closed.friction_drop},
                                                   note.bridge, fundamental(note.string));
        worst = std::max(worst, std::abs(*closed.admittance_min / by_hand - 1.0));
    }
    check({"least force about a body mode: the limits' sum against the formula", "[Woodhouse1993]", Flag::derived},
          AtMost{worst, 0.01});
}

/// source   as above
/// expects  held, thermal rosin, a mode of 0.3 kg, Q 30 at 180 Hz under a cello's D string: the least force of each
///          semitone about the mode is greatest on the mode, where it lies as the formula puts it
/// margin   a factor 2 on the mode.  One and two semitones under it 2.1 and 2.3 were measured, and are only told: the
///          formula's friction drop is that of a cold contact, which the warming one does not reach between two slips
TEST(WolfNote, SimulatedLeastForceRisesWhereTheAdmittancePutsIt) {
    const std::vector<double> offsets{-2.0, -1.0, 0.0, 1.0, 2.0};
    std::vector<double> formula(offsets.size());
    std::vector<double> simulated(offsets.size());
    for_each_job(static_cast<int>(offsets.size()), {.threads = 2, .progress = {}}, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        const Note note = wolf_note({.string = "2", .mass = 0.3, .semitones_off = offsets[i]});
        Player player = find_preset("cello").player;
        const double place = 0.1 * note.string.length;
        formula[i] = *limits(note, {place, player.speed}).admittance_min;
        const ForceScan scan{
            .lowest = 0.3 * formula[i], .highest = 5.0 * formula[i], .steps = 18, .middle = 2.2 * formula[i]};
        const ForceWindow held = held_window(note, player, place, scan);
        if (held.main) simulated[i] = held.intervals[*held.main].low;
    });
    for (std::size_t i = 0; i < offsets.size(); ++i)
        record({"simulated least force, held, " + semitones_text(offsets[i]), "[Woodhouse1993]", Flag::derived, "N"},
               {digits(formula[i], "N"), "told", digits(simulated[i], "N")});
    check({"simulated least force over the formula's, on the mode", "[Woodhouse1993]", Flag::derived},
          WithinFactor{simulated[2] / formula[2], 1.0, 2.0});
    EXPECT_EQ(std::ranges::max_element(simulated) - simulated.begin(), 2);
}

/// source   a wolf warbles on the body's mode and not elsewhere: common practice, no source; a mode of 0.15 kg and Q 30
///          at 180 Hz under a cello's G string, from memory
/// expects  40 cents from the mode some strokes warble by 3 dB or more and are called a wolf; of the same strokes, one
///          and two semitones away a smaller share does.  (Lighter strokes there, just under their own least force,
///          may beat as well: at forces in the same ratios to it 6 of 32 were seen to, by 1 dB or more.)
/// margin   two or more of 32 near the mode, a smaller share of 64 away from it (3 of 64 were measured)
TEST(WolfNote, WarblesNearTheModeAndNotASemitoneAway) {
    const Note close = wolf_note({.string = "3", .mass = 0.15, .semitones_off = 0.4});
    const double least = *limits(close, {0.09 * close.string.length, 0.1}).admittance_min;
    const std::vector<double> offsets{-0.4, 0.4, -2.0, -1.0, 1.0, 2.0};
    constexpr int forces = 16;
    std::vector<Beating> heard(offsets.size() * forces);
    for_each_job(static_cast<int>(heard.size()), {.threads = 2, .progress = {}}, [&](int job) {
        const double offset = offsets[static_cast<std::size_t>(job / forces)];
        const Note note = wolf_note({.string = "3", .mass = 0.15, .semitones_off = offset});
        const double place = 0.09 * note.string.length;
        const Played played = play_recorded(note, {.contact_point = place,
                                                   .force = least * 0.6 * std::pow(1.2, 0.5 * (job % forces)),
                                                   .speed = 0.1,
                                                   .rise = 0.06,
                                                   .duration = 3.0});
        heard[static_cast<std::size_t>(job)] = beating_of(played, note);
    });
    int near = 0;
    int away = 0;
    std::string shallow;
    double deepest = 0.0;
    for (std::size_t i = 0; i < heard.size(); ++i) {
        if (!heard[i].warble) continue;
        const double depth = heard[i].warble->depth_db;
        if (i / forces < 2) {
            if (is_wolf(heard[i]) && depth >= 3.0) ++near;
            deepest = std::max(deepest, depth);
            continue;
        }
        if (depth >= 3.0) ++away;
        shallow += digits(offsets[i / forces]) + " semitones, force " + std::to_string(i % forces) + ": " +
                   digits(depth, "dB") + "; ";
    }
    check({"strokes of 32 that are a wolf of 3 dB or more, 40 cents from the mode", "", Flag::common_practice},
          AtLeast{static_cast<double>(near), 2.0});
    record({"strokes of 64 that warble by 3 dB or more, one and two semitones away", "", Flag::common_practice},
           {"few", "told", std::to_string(away)});
    EXPECT_GT(2 * near, away);
    RecordProperty("deepest_warble_db", digits(deepest));
    RecordProperty("warbles_away", shallow);
}
