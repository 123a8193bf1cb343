// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/frets.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "tests/validity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace {

using namespace sim;
using namespace tests;
using analysis::mm_from_metres;

Preset bass(Temperament temperament, std::vector<int> chromatic = {}) {
    Preset preset = find_preset("division_bass_viol");
    preset.temperament = temperament;
    preset.chromatic_frets = std::move(chromatic);
    return preset;
}

double fret_mm(const Preset& preset, int number) {
    return mm_from_metres(fret_place(preset, preset.strings.front(), number).from_nut);
}

double cents_in_meantone(int fifths, double comma_share) {
    const double fifth = 1200.0 * std::log2(1.5) - comma_share * 1200.0 * std::log2(81.0 / 80.0);
    return fifths * fifth - 1200.0 * std::floor(fifths * fifth / 1200.0);
}

/// source   equal temperament, L (1 - 2^(-n/12)); rule of 18, L (1 - (17/18)^n) (derived)
/// expects  those, on 690 mm
/// margin   0.1 mm asked; both are the same closed form
TEST(FretsTest, LieOnTheClosedFormsOfEqualTemperamentAndTheRuleOf18) {
    for (int n = 1; n <= 12; ++n) {
        EXPECT_NEAR(fret_mm(bass(Temperament::equal), n), 690.0 * (1.0 - std::exp2(-n / 12.0)), 1e-9);
        EXPECT_NEAR(fret_mm(bass(Temperament::rule_of_18), n), 690.0 * (1.0 - std::pow(17.0 / 18.0, n)), 1e-9);
    }
    check({"690 mm: fret 7 in equal temperament", "", Flag::derived, "mm"},
          Near{fret_mm(bass(Temperament::equal), 7), 690.0 * (1.0 - std::exp2(-7.0 / 12.0)), 0.1});
    check({"690 mm: fret 7 by the rule of 18", "", Flag::derived, "mm"},
          Near{fret_mm(bass(Temperament::rule_of_18), 7), 690.0 * (1.0 - std::pow(17.0 / 18.0, 7.0)), 0.1});
    check({"rule of 18: a fret", "", Flag::derived, "cents"},
          Near{fret_cents(bass(Temperament::rule_of_18), 1), 98.955, 0.0005});
}

/// source   four fifths narrow by 1/4 comma make a pure third of 5/4 (derived)
/// expects  fret 4 at 4/5 of the length from the bridge: 138.0 mm from the nut on 690 mm
/// margin   0.1 mm asked
TEST(FretsTest, FourthOfQuarterCommaIsAPureThird) {
    check({"690 mm: fret 4 in 1/4 comma meantone", "", Flag::derived, "mm"},
          Near{fret_mm(bass(Temperament::quarter_comma), 4), 138.0, 0.1});
    EXPECT_NEAR(fret_mm(bass(Temperament::quarter_comma), 4), 138.0, 1e-9);
}

/// source   tone = 2 fifths - 1 octave, diatonic semitone = 3 octaves - 5 fifths, chromatic = 7 fifths - 4 octaves
///          (derived)
/// expects  every fret as a sum of those, for each comma and each choice
/// margin   rounding
TEST(FretsTest, AreSumsOfTonesAndSemitonesInEveryMeantone) {
    for (const auto& [temperament, share] : {std::pair{Temperament::quarter_comma, 1.0 / 4.0},
                                             {Temperament::fifth_comma, 1.0 / 5.0},
                                             {Temperament::sixth_comma, 1.0 / 6.0}}) {
        const double tone = cents_in_meantone(2, share);
        const double diatonic = cents_in_meantone(-5, share);
        const double chromatic = cents_in_meantone(7, share);
        EXPECT_LT(chromatic, diatonic);
        const std::vector<double> usual{diatonic,
                                        tone,
                                        tone + diatonic,
                                        2.0 * tone,
                                        2.0 * tone + diatonic,
                                        2.0 * tone + 2.0 * diatonic,
                                        3.0 * tone + diatonic};
        for (int n = 1; n <= 7; ++n) {
            EXPECT_NEAR(fret_cents(bass(temperament), n), usual[static_cast<std::size_t>(n - 1)], 1e-9) << n;
            EXPECT_NEAR(fret_cents(bass(temperament), n + 12) - 1200.0, fret_cents(bass(temperament), n), 1e-9);
        }
        EXPECT_NEAR(fret_cents(bass(temperament, {1, 6}), 1), chromatic, 1e-9);
        EXPECT_NEAR(fret_cents(bass(temperament, {1, 6}), 6), 3.0 * tone, 1e-9);
        EXPECT_NEAR(fret_cents(bass(temperament), 12), 1200.0, 1e-9);
    }
}

TEST(FretsTest, RefuseAChromaticFretWhereThereIsNoChoice) {
    EXPECT_THROW(fret_cents(bass(Temperament::quarter_comma, {2}), 2), analysis::InputError);
    EXPECT_EQ(fret_cents(bass(Temperament::equal, {2}), 2), 200.0);
}

/// source   866 (E/sigma)(dL/L), dL = (h^2/2)(1/a + 1/b) (derived); E 5.5 GPa, 1300 kg/m^3 (from memory)
/// expects  a bass's D4, 5 mm high at the octave: 2.6 cents there
/// margin   the last digit
TEST(FretsTest, PressingAGutStringSharpensIt) {
    const Preset preset = bass(Temperament::equal);
    const String open = open_string(preset, preset.strings[0]);
    check({"division bass D4 pressed 5 mm at the octave", "", Flag::derived, "cents"},
          Near{pressed_cents(preset.strings[0], open, 0.345, {.at_nut = 0.005, .at_octave = 0.005}), 2.6, 0.05});
    // the pull of the lengthened string, without the series that the formula takes
    const double area = 3.14159265358979 * 0.32e-3 * 0.32e-3;
    const double longer = 2.0 * std::hypot(0.345, 0.005) - 0.69;
    const double cents = 600.0 * std::log2(1.0 + 5.5e9 * area * longer / 0.69 / open.tension);
    EXPECT_NEAR(pressed_cents(preset.strings[0], open, 0.345, {.at_nut = 0.005, .at_octave = 0.005}), cents, 0.02);
}

/// expects  with a height each fret lies nearer the nut than the closed form, the sharpest string errs as the flattest,
///          no string errs more than it would on the closed form's place, and each one's own place is in tune
TEST(FretsTest, StraightFretIsTheMiddleOfWhatStringsWant) {
    const StringHeight height{.at_nut = 0.0008, .at_octave = 0.006};
    for (const auto& file : shipped_presets()) {
        Preset preset = read_preset(file);
        preset.frets = 7;
        const FretTable table = fret_table(preset, height);
        const FretTable plain = fret_table(preset);
        ASSERT_EQ(table.frets.size(), 7U);
        for (std::size_t n = 0; n < table.frets.size(); ++n) {
            const Fret& fret = table.frets[n];
            EXPECT_LT(fret.from_nut, plain.frets[n].from_nut);
            const auto [low, high] = std::ranges::minmax(fret.strings, {}, &FretOnString::residual);
            EXPECT_NEAR(low.residual, -high.residual, 1e-6) << preset.name;
            for (std::size_t s = 0; s < preset.strings.size(); ++s) {
                const String open = open_string(preset, preset.strings[s]);
                const double own = fret.strings[s].own_place;
                const double sounds = analysis::cents_between(open.length, open.length - own) +
                                      pressed_cents(preset.strings[s], open, own, height);
                EXPECT_NEAR(sounds, 100.0 * fret.stop, 1e-6) << preset.name << " fret " << n + 1 << " string " << s;
            }
        }
    }
}

TEST(FretsTest, TableHoldsTheGuideAndTheBareBoard) {
    const FretTable table = fret_table(bass(Temperament::equal));
    EXPECT_NEAR(table.guide.value(), 0.345, 1e-12);
    ASSERT_EQ(table.bare.size(), 22U - 7U);  // the board ends at 0.72 of the string, a little past semitone 22
    EXPECT_NEAR(table.bare.front().stop, 8.0, 1e-12);
    EXPECT_LT(table.bare.back().from_nut, table.board_end);
    for (const Fret& fret : table.frets)
        for (const FretOnString& on : fret.strings) EXPECT_EQ(on.residual, 0.0);
}

}  // namespace
