// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/tone.hpp"
#include "sim/match/note_samples.hpp"
#include "sim/note.hpp"
#include "sim/stroke.hpp"

#include <optional>
#include <span>
#include <vector>

namespace sim::match {

/// One period of a recording and of a stroke, made of the same partials; each of RMS 1, `period_points` points.
struct PeriodPair {
    std::vector<double> heard;
    std::vector<double> simulated;  ///< through the body's estimated response, shifted and turned to fit best

    bool operator==(const PeriodPair&) const = default;
};
inline constexpr int period_points = 256;

/// A response known in level alone, at some partials.
struct BodyLevels {
    std::span<const int> numbers;    ///< of the partials, rising
    std::span<const double> levels;  ///< dB
};

/// Overlays a note's middle and the end of a stroke that is played again.  The body's phase is not known: that of the
/// least delay for its levels is taken (minimum phase, straight lines between the partials, level beyond).
/// Nothing where either has no pitch there.
std::optional<PeriodPair> period_pair(const NoteSamples& part, const analysis::Tone& tone, const BodyLevels& body,
                                      const Note& note, const Stroke& stroke);

/// Phases, rad, at `numbers` f0 of the minimum-phase response with those levels.
std::vector<double> minimum_phases(const BodyLevels& body);

}  // namespace sim::match
