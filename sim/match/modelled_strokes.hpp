// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/stroke_spectra.hpp"

#include <cstddef>
#include <vector>

namespace sim::match {

/// A stroke that a recording may be of, with what is not known of its partials.
struct ModelledStroke {
    std::size_t contact = 0;        ///< index of its contact point in the spectra
    std::size_t force = 0;          ///< of its force
    std::vector<double> levels;     ///< dB re 1 N, bridge force
    std::vector<double> variances;  ///< dB², by which the same partial scatters among strokes nearly alike
};

/// The strokes that are in Helmholtz motion within 60 cents of the note's pitch.
///
/// The scatter is measured, not set: how far a partial lies from the mean of its two neighbours in contact point (whose
/// 2/3 is the variance of one), averaged over the neighbourhood and drawn towards the mean over all strokes where few
/// neighbours are in Helmholtz motion.  It holds what the grid can't follow and what a bowed string makes of a small
/// difference.
std::vector<ModelledStroke> modelled_strokes(const StrokeSpectra& spectra);

}  // namespace sim::match
