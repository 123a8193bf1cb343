// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/force_window.hpp"
#include "tests/published/cello_d.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace {

using namespace sim;
using namespace tests;

constexpr double speed = 0.05;  // m/s

/// Light damping, resistive bridge, the fitted law of slip speed.
Note light_note(bool torsion) { return note_of(lightly_damped_d(torsion), resistive_bridge(100.0), fitted_law()); }

double ideal_harmonic(const Note& note, int n) {
    return 2.0 * wave_impedance(note.string) * speed / (n * std::numbers::pi * cello_d_ratio);
}

Played held(const Note& note, double force) {
    return play_recorded(note, held_stroke(note, {.ratio = cello_d_ratio, .force = force, .speed = speed}));
}

}  // namespace

/// source   ideal Helmholtz motion: slips for the contact ratio's share of the period (seen, [Schelleng1973])
/// expects  slip fraction 0.0899 at 0.3 and 0.4 N
/// margin   0.01 with light damping and a law of slip speed
TEST(IdealMotion, StringSlipsForTheContactRatiosShareOfThePeriod) {
    for (double force : {0.3, 0.4}) {
        const Played played = held(light_note(true), force);
        ASSERT_EQ(played.result.verdict.motion, Motion::helmholtz) << force;
        check({"slip fraction at " + digits(force, "N") + ", light damping", "[Schelleng1973]", Flag::seen},
              Near{played.result.verdict.slip_fraction, cello_d_ratio, 0.01});
    }
}

/// As above, all losses and the warming contact.
/// margin   0.03, since the corner is round and the contact takes time to cool
TEST(IdealMotion, StringSlipsNearlySoLongWithAllLossesAndAWarmContact) {
    const Note note = note_of(cello_d({}), resistive_bridge(100.0), {});
    const Played played = held(note, 0.3);
    ASSERT_EQ(played.result.verdict.motion, Motion::helmholtz);
    check({"slip fraction at 0.3 N, all losses, warm contact", "[Schelleng1973]", Flag::seen},
          Near{played.result.verdict.slip_fraction, cello_d_ratio, 0.03});
}

/// source   ideal Helmholtz motion: force on the bridge is a sawtooth of +- Z0 v/beta (derived), harmonics exactly 1/n
/// expects  first harmonic 0.1947 N (a sawtooth of 0.612 N peak to peak) at 0.05 m/s; 1/n up to the sixth
/// margin   3 % for the first, 0.5 dB for the first and 1.5 dB up to the sixth
TEST(IdealMotion, ForceOnTheBridgeIsASawtooth) {
    const Note note = light_note(true);
    EXPECT_NEAR(ideal_harmonic(note, 1), 0.1947, 0.0001);
    for (double force : {0.3, 0.4}) {
        const Played played = held(note, force);
        const Spectrum spectrum = spectrum_of(played.record.bridge_force, played.result.sample_rate, cello_d_hz);
        ASSERT_GE(spectrum.partials.size(), 6U);
        check({"bridge force, harmonic 1 at " + digits(force, "N"), "", Flag::derived, "N"},
              NearShare{spectrum.partials[0].amplitude, 0.1947, 0.03});
        double worst = 0.0;
        for (int n = 1; n <= 6; ++n) {
            const double db = analysis::db_from_ratio(spectrum.partials[static_cast<std::size_t>(n - 1)].amplitude /
                                                      ideal_harmonic(note, n));
            EXPECT_NEAR(db, 0.0, n == 1 ? 0.5 : 1.5) << "harmonic " << n << " at " << force << " N";
            worst = std::max(worst, std::abs(db));
        }
        check({"bridge force, harmonics 1 to 6 against 1/n at " + digits(force, "N") + ": greatest error", "",
               Flag::derived, "dB"},
              AtMost{worst, 1.5});
    }
}

/// source   ideal Helmholtz motion: bow-point velocity has harmonics (2v/(n pi beta)) |sin n pi beta| (derived)
/// expects  the eleventh, at n beta = 0.989, lies 25 dB or more under the first; no torsion
/// margin   none, a bound
TEST(IdealMotion, VelocityUnderTheBowLacksTheHarmonicWithANodeThere) {
    const Note note = light_note(false);
    const Played played = held(note, 0.3);
    ASSERT_EQ(played.result.verdict.motion, Motion::helmholtz);
    const Spectrum spectrum = spectrum_of(played.record.velocity, played.result.sample_rate, cello_d_hz);
    ASSERT_GE(spectrum.partials.size(), 11U);
    check({"velocity under the bow: harmonic 11 over harmonic 1", "", Flag::derived, "dB"},
          AtMost{analysis::db_from_ratio(spectrum.partials[10].amplitude / spectrum.partials[0].amplitude), -25.0});
}

/// source   brightness: bow force is the strongest control of the spectral centroid (seen, [Schoonderwaldt2009]); above
///          the greatest force anomalous low notes (seen, [Hanson1995]); the rest from memory
/// expects  the centroid rises with force; the pitch sinks towards the greatest force; under the least force several
///          slips a period or unbroken sliding, over the greatest raucous or anomalous low
/// margin   signs only
TEST(IdealMotion, ForceBrightensFlattensAndEndsAsItDoesOnStrings) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings[0], 12.0, StopEnd::fret);
    const double place = 0.033;
    const ForceWindow window = held_window(note, preset.player, place, usual_scan(note, preset.player, place));
    ASSERT_TRUE(window.main.has_value());
    const ForceInterval interval = window.intervals[*window.main];
    const auto stroke = [&](double force) {
        return play(note, {.contact_point = place,
                           .force = force,
                           .speed = preset.player.speed,
                           .duration = held_duration(note),
                           .beginning = Beginning::held});
    };
    const StrokeResult light = stroke(1.3 * interval.low);
    const StrokeResult middle = stroke(std::sqrt(interval.low * interval.high));
    const StrokeResult firm = stroke(0.95 * interval.high);
    EXPECT_GT(middle.tone.centroid, light.tone.centroid);
    EXPECT_GT(firm.tone.centroid, light.tone.centroid);
    EXPECT_LT(*firm.tone.pitch, *middle.tone.pitch);
    ASSERT_TRUE(interval.below.has_value());
    ASSERT_TRUE(interval.above.has_value());
    EXPECT_TRUE(*interval.below == Motion::multiple_slip || *interval.below == Motion::silent)
        << motion_name(*interval.below);
    EXPECT_TRUE(*interval.above == Motion::raucous || *interval.above == Motion::anomalous_low)
        << motion_name(*interval.above);
    const auto row = [](const char* what, const char* source, Flag flag, const Row& cells) {
        record({what, source, flag}, cells);
    };
    row("brightness from light to firm", "[Schoonderwaldt2009]", Flag::seen,
        {"rises", "sign", digits(light.tone.centroid) + " to " + digits(firm.tone.centroid, "Hz")});
    row("pitch from middle to nearly the greatest force", "", Flag::from_memory,
        {"sinks", "sign", digits(*middle.tone.pitch) + " to " + digits(*firm.tone.pitch, "Hz")});
    row("motion below the least force", "", Flag::from_memory,
        {"multiple slip or silent", "none", std::string(motion_name(*interval.below))});
    row("motion above the greatest force", "[Hanson1995]", Flag::seen,
        {"raucous or anomalous low", "none", std::string(motion_name(*interval.above))});
}
