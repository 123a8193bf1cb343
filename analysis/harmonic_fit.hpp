// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/pitch.hpp"
#include "analysis/spectral_peaks.hpp"

#include <optional>
#include <span>

namespace analysis {

/// A fundamental and what its multiples say of the lines.
struct HarmonicFit {
    double hz = 0.0;
    double gain = 0.0;   ///< nats by which the lines' places are told more shortly than each alone
    double waver = 0.0;  ///< share of the pitch by which it seems to waver, out of a few
};

/// The fundamental that tells the places of all lines most shortly; nothing without lines.
///
/// A line that is a multiple costs the choice of one multiple in as many as there are up to the highest line, and its
/// distance from it (a normal error); any other the choice of a place anywhere.  So a fundamental of which every line
/// is a multiple wins over those that leave lines out, and the highest such one over its own fractions, whose multiples
/// are more; a stray line or two lowers nothing, since telling them apart is shorter than splitting all multiples.
/// How much the pitch wavers is fitted likewise, out of a few shares of it; `error_hz` is what each line is known to.
/// Up to `most_multiple` of the fundamental may lie below a strong line.
///
/// source   shortest description, as for any choice between models of different size; derived
/// threads  pure
std::optional<HarmonicFit> fit_fundamental(std::span<const SpectralPeak> lines, double error_hz,
                                           const PitchRange& range);

/// Two tones at once.
struct PairFit {
    double low_hz = 0.0;
    double high_hz = 0.0;
    double gain = 0.0;   ///< as above, less what the second fundamental costs itself
    double share = 0.0;  ///< of the lines' power, that the weaker of both alone explains
    int lines = 0;       ///< and how many of them that are
};

/// The two fundamentals that together tell the lines most shortly.  Its gain over that of one fundamental says whether
/// there are two; an octave or any whole multiple above another tone has no line of its own and can't be told.
/// `waver` is the share of the pitch by which both waver, as fit_fundamental found it.
std::optional<PairFit> fit_pair(std::span<const SpectralPeak> lines, double error_hz, double waver,
                                const PitchRange& range);

inline constexpr int most_multiple = 24;

}  // namespace analysis
