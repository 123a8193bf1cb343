// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/string.hpp"

#include <complex>
#include <span>
#include <vector>

namespace sim {

/// A share of the vibration above a corner that is lost at every round trip: share * s / (s + corner).
struct LossSection {
    double corner = 0.0;  ///< rad/s
    double share = 0.0;   ///< > 0

    bool operator==(const LossSection&) const = default;
};

/// A chain of equal all-pass sections (s^2 - 2 damping omega s + omega^2) / (s^2 + 2 damping omega s + omega^2).
struct Dispersion {
    int sections = 0;
    double omega = 0.0;    ///< rad/s
    double damping = 0.0;  ///< dimensionless, > 0

    bool operator==(const Dispersion&) const = default;
};

/// One round trip of a string that is lossy and stiff, as a plain delay, losses and all-pass sections.
///
/// The design is in continuous time, so that the same string is simulated at every sample rate.  Each row of losses is
/// H = 1 - sum share_k s/(s + corner_k): 1 at 0 Hz, so that slow motion comes back whole, and never above 1 because
/// the shares of a row sum to at most 1.  All is lumped at the nut's (or the stop's) end: between bow and bridge the
/// string is lossless and flexible, and the corner is rounded once a period.
struct LoopFilter {
    std::vector<LossSection> losses;      ///< of the string itself
    std::vector<LossSection> end_losses;  ///< of the finger that stops it
    Dispersion dispersion;
    double plain_delay = 0.0;  ///< s, what remains of the round trip

    bool operator==(const LoopFilter&) const = default;
};

/// What a row of losses does to exp(s t): a vibration, s = i omega, or a dying one.
std::complex<double> loss_response(std::span<const LossSection> losses, std::complex<double> s);

/// What the round trip does to a vibration of angular frequency omega: its gain and (negative) phase.
std::complex<double> loop_response(const LoopFilter& filter, double omega);

/// Fits the round trip of transverse waves: for the partials n <= 20 with B n^2 <= 0.1 and n f0 <= 8 kHz the decay is
/// meant to lie within 10 % of Q_n and the pitch within 3 cents of the stiff string's formula.  Above, the phase runs
/// on smoothly and the losses follow the same formula with a smaller weight in the fit.
///
/// `end_q` is the Q that the stopping end alone would give the first four partials: a bare finger, taken as a soft pad
/// (spring and damper) at one point; 0 for a hard end.  No loss of a stopping finger was found published: the value is
/// from memory.  Such losses hurry the upper partials, as in any causal string: at Q 100 the fourth is 12 cents sharp.
/// A pad yields, so its string seems to end beyond it, by 0.9 % of its length at Q 100; the stop is where the string
/// seems to end for its first partial (a player's finger goes where the pitch is right), and the pad stands that much
/// nearer the bridge.  The patch of some 9 mm that a finger covers is not modelled.  Flesh on such a patch, at the same
/// mean Q, would ask for 15 to 27 % more force to hold; what matters more, one finger's Q would fall with the sounding
/// length, where this pad keeps one Q at all stops (tests/reports/finger.md).
LoopFilter design_transverse_loop(const String& string, double end_q);

/// Fits the round trip of torsional waves: no dispersion, constant Q.
LoopFilter design_torsional_loop(const String& string);

}  // namespace sim
