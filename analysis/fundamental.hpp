// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/pitch.hpp"

#include <optional>
#include <span>

namespace analysis {

/// The pitch of a tone over a wide range, its octave made sure of; nothing where measure_pitch finds nothing.
///
/// measure_pitch is asked in nine frames of 0.08 s, and what most of them agree on is taken.  It takes the shortest of
/// nearly equal periods, which misses a fundamental that only weak partials tell of; so the spectrum is asked as well:
/// where multiples of a half, third … sixth of that pitch hold 1/1000 of the power or more, and ten times what lies
/// between them, the lower one is the fundamental.  Each frame is looked at with its own pitch, so that vibrato does
/// not smear.  Periodicity and clarity are the frames' medians.
///
/// accuracy octave right in 997 of 1000 random tones of 2 or more adjacent partials without a fundamental, partials
///          within 20 dB of one another, noise 20 to 40 dB under them (tested)
/// threads  any
std::optional<Pitch> measure_fundamental(std::span<const double> samples, double sample_rate, const PitchRange& range);

}  // namespace analysis
