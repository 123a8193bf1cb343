// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/partials.hpp"

#include <span>
#include <vector>

namespace analysis {

/// Share of the power of a stretch's lines that a second tone alone explains; 0 where one tone tells them as shortly as
/// two do (fit_pair), or under three lines would be its own.
///
/// The 24 strongest lines of the middle half second count, the pitch near `hz` (0: none) steadied first where it
/// wavers.  Whole multiples of another tone (octaves, twelfths) have no line of their own and are not told.
double second_tone_share(std::span<const double> samples, double sample_rate, double hz);

/// Whether the partials look like those of two tones in a simple ratio (2:3 to 8:9) that share this fundamental: hardly
/// anything lies on partials that are no multiple of either, and both have their own.
bool is_pure_interval(std::span<const Partial> partials);

}  // namespace analysis
