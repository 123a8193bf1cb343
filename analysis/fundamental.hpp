// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/pitch.hpp"

#include <optional>
#include <span>

namespace analysis {

/// The pitch of a tone over a wide range, its octave made sure of; nothing where measure_pitch finds nothing.
///
/// Up to three windows of twelve of the longest periods are looked at: the sixteen strongest lines of each
/// (spectral_peaks), and the fundamental that explains them most shortly (fit_fundamental); what most windows agree on
/// is the pitch.  So neither a weak fundamental nor one left out misleads, as it does the shortest of nearly equal
/// periods.  A window whose pitch wavers is steadied first.  measure_pitch in up to nine frames of 0.08 s, near that
/// pitch, gives the medians that are told; where no line stands out of the noise, its own pitch in most frames counts.
///
/// limits   one line alone is its own fundamental; two lines tell one only if both are known to less than their
///          distance over their number, and 24 times the pitch is the highest that the strongest lines may lie
/// accuracy octave right in all of 20,000 random tones of 2 or more adjacent partials, up to the 12th, without a
///          fundamental, partials within 20 dB of one another, noise 20 to 40 dB under them (tested with 1000 more)
/// threads  any
std::optional<Pitch> measure_fundamental(std::span<const double> samples, double sample_rate, const PitchRange& range);

}  // namespace analysis
