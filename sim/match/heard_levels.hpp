// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/tone.hpp"
#include "sim/match/note_samples.hpp"

#include <vector>

namespace sim::match {

/// The level of one partial in a recording.
struct HeardLevel {
    int number = 0;       ///< 1, 2, …
    double hz = 0.0;      ///< number times the tone's pitch
    double level = 0.0;   ///< dB re the samples' unit, peak of the sine; noise taken off
    double noise = 0.0;   ///< dB, what the same measure gives between the partials there
    double spread = 0.0;  ///< dB, standard error of the level
    bool usable = false;  ///< stands out of the noise by 6 dB or more

    bool operator==(const HeardLevel&) const = default;
};

/// Levels of a steady tone's partials, of `samples` that begin `skipped` s into its stretch, up to compared_limit and
/// 0.42 of the sample rate.
///
/// Mean powers of Hann windows of an even number of periods, eight or more and 0.1 s, each at its own pitch, so that
/// vibrato smears little; the noise is measured midway between neighbouring partials, where such windows have their
/// zeros, and smoothed over five places.
///
/// threads  any
std::vector<HeardLevel> heard_levels(const NoteSamples& part, const analysis::Tone& tone);

}  // namespace sim::match
