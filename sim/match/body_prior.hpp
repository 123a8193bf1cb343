// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"

#include <span>
#include <vector>

namespace sim::match {

/// What is known of a body, room and microphone that have not been measured: a Gaussian process over octaves (log2 of
/// the frequency in Hz), dB.
///
/// `short_…` are the resonances: bodies of Q 10 to 40 with some three modes an octave, their frequencies, signs and
/// weights thrown at random, have a response whose standard deviation is 7 to 8 dB and whose neighbours 0.08, 0.16 and
/// 0.32 octaves apart differ as those of a Matérn process (of order 3/2) of this length do (own reckoning over the
/// presets' kinds of body; no measured set was at hand).  `long_…` is the make of instrument, room and microphone.
struct BodyPrior {
    double gain = 60.0;           ///< dB, of the whole recording: nothing is known of it
    double long_deviation = 6.0;  ///< dB
    double long_octaves = 1.5;
    double short_deviation = 6.5;  ///< dB
    double short_octaves = 0.12;
    double note_gain = 4.0;  ///< dB, of each note apart: bow speeds are not all the one that is stated
    /// dB, of each partial of each note apart: strings, bows and bridges are not the preset's.  At 2.5 the regions held
    /// the truth in 66 to 70 % of notes whose strings' losses, twist and stiffness were off by a third (48 to design
    /// with), at 4 in 70 to 73 %.
    double model_error = 4.0;

    bool operator==(const BodyPrior&) const = default;
};

/// What bodies of that kind do on the average: the power of the bridge's radiation over an octave, dB.  0 for a bridge
/// that has no modes.
std::vector<double> body_mean(const Bridge& bridge, std::span<const double> octaves);

}  // namespace sim::match
