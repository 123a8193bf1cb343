// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"
#include "sim/preset.hpp"

#include <string>
#include <vector>

/// Strings that are knocked and left to ring, and what their partials are seen to do.
namespace tests {

/// One partial of a ringing string.
struct RingingPartial {
    int n = 0;
    double hz = 0.0;
    double decay = 0.0;  ///< 1/s of its amplitude
};

/// Which of its partials a string answers for: n <= 20 with B n^2 <= 0.1 and n f0 <= 8 kHz.
int last_answered(const sim::String& string);

/// By the string's own formulas, n f0 sqrt(1 + B n^2) and pi f_n/Q_n.
std::vector<RingingPartial> partials_by_formula(const sim::String& string);
/// Where the designed round trip of a note turns by 2 pi n, the finger's end with it, and how fast it dies there.
std::vector<RingingPartial> partials_by_design(const sim::Note& note);

/// What arrives at a rigid bridge after one knock on it, by the kernel's lines at the sample rate that the note is
/// played at with the bow at a tenth of the length.
struct Ringing {
    std::vector<double> signal;
    double rate = 0.0;    ///< Hz
    double period = 0.0;  ///< s, of the flexible string
};
Ringing rung(const sim::Note& note, double duration, int times = 1);

/// Pitch and decay of each expected partial, from its turn and loss between two windows three periods apart.  The
/// signal holds 24 periods or more.
std::vector<RingingPartial> measured_by_windows(const Ringing& ringing, const std::vector<RingingPartial>& expected);

/// The same from `harminv`, a general-purpose tool of harmonic inversion ([Mandelshtam1997]), run as a process of its
/// own.  Of the modes it finds near an expected one the one it is surest of; n = 0 where it finds none.  Throws
/// std::runtime_error where the tool is missing or fails.
std::vector<RingingPartial> measured_by_harmonic_inversion(const Ringing& ringing,
                                                           const std::vector<RingingPartial>& expected);

inline constexpr double most_cents = 3.0;  ///< what is asked of the loop filter (loop_filter.hpp)
inline constexpr double most_decay = 0.1;  ///< of the decay, likewise

/// The greatest differences in pitch and decay among the partials; a partial that was not found counts as 1000.
struct Difference {
    double cents = 0.0;
    double decay = 0.0;  ///< relative
};
Difference greatest_difference(const std::vector<RingingPartial>& measured,
                               const std::vector<RingingPartial>& expected);
void expect_alike(const std::vector<RingingPartial>& measured, const std::vector<RingingPartial>& expected,
                  const std::string& name);

/// How long a note must ring to be measured by windows (24 periods), and by harmonic inversion: 60 periods or half a
/// second, since a decay shows only once the string has lost something.
double window_duration(const sim::Note& note);
double inversion_duration(const sim::Note& note);

}  // namespace tests
