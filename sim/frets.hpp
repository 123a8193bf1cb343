// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <optional>
#include <vector>

namespace sim {

/// Cents of fret `number` (>= 1) above the open string, in the preset's temperament.
///
/// Regular meantone: the frets of a chain of fifths, each fret diatonic (1 a minor second, 3 a minor third, 6 a
/// diminished fifth, 8 a minor sixth, 10 a minor seventh) unless the preset's chromatic_frets name it (then an
/// augmented prime, second, fourth, fifth, sixth); from 12 on the same an octave higher.  InputError where
/// chromatic_frets name a fret that has no such choice.  equal: 100 a fret.  rule_of_18: each fret at 1/18 of what
/// sounds below it, 98.955 a fret.
double fret_cents(const Preset& preset, int number);

/// Where a fret stops a string whose pull the finger does not change.
struct FretPlace {
    double stop = 0.0;      ///< semitones above the open string, with their fraction
    double from_nut = 0.0;  ///< m

    bool operator==(const FretPlace&) const = default;
};
FretPlace fret_place(const Preset& preset, const PresetString& string, int number);

/// How high the strings lie over what stops them, m; between nut and octave in a straight line.  Zero: no correction.
struct StringHeight {
    double at_nut = 0.0;     ///< over the first fret's top, carried on to the nut, >= 0
    double at_octave = 0.0;  ///< >= 0

    bool operator==(const StringHeight&) const = default;
};

/// Cents by which pressing the string down raises it, `from_nut` m from the nut (inside the string).
///
/// 866 (E/sigma) (dL/L), dL = (h^2/2) (1/a + 1/b), a and b the parts on either side.  What bears the pull is taken as
/// the plain string that bends as easily: of an overspun string, its core.  The bending behind the fret and the give of
/// nut, bridge and neck are left out.
/// source   derived: f goes as the root of the pull, 600 / ln 2 = 866
double pressed_cents(const PresetString& string, const String& open, double from_nut, const StringHeight& height);

/// What a fret does on one string.
struct FretOnString {
    double pitch = 0.0;      ///< Hz, pressed
    double sharpened = 0.0;  ///< cents, by pressing
    double residual = 0.0;   ///< cents of that pitch from the temperament's
    double own_place = 0.0;  ///< m from the nut, where this string alone would want the fret

    bool operator==(const FretOnString&) const = default;
};

/// A fret or a landmark straight across all strings.
struct Fret {
    int number = 0;  ///< semitones it stands for
    bool chromatic = false;
    double stop = 0.0;                  ///< semitones asked for by the temperament, with their fraction
    double from_nut = 0.0;              ///< m, where it is tied
    std::vector<FretOnString> strings;  ///< as in the preset

    bool operator==(const Fret&) const = default;
};

/// Where everything on the board lies.
struct FretTable {
    double length = 0.0;  ///< m, of the first string
    StringHeight height;
    std::vector<Fret> frets;      ///< the preset's, one a semitone
    std::optional<double> guide;  ///< m from the nut: half the length, a landmark for the hand and no stopping fret
    std::vector<FretPlace> bare;  ///< semitones above the frets to the board's end, where a finger stops the string, in
                                  ///< the same temperament (rule_of_18: equal), uncorrected
    double board_end = 0.0;       ///< m from the nut

    bool operator==(const FretTable&) const = default;
};

/// The frets of an instrument.  With a height, each fret is moved so that its sharpest and its flattest string err by
/// the same number of cents; without, and with strings of one length, it lies on the closed form.
FretTable fret_table(const Preset& preset, const StringHeight& height = {});

}  // namespace sim
