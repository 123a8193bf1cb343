// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/partials.hpp"

#include <span>
#include <vector>

namespace analysis {

/// Share of the power of a stretch's peaks, between 40 Hz and the twelfth partial, that lies more than an eighth of
/// the fundamental from every partial: near 0 for one tone, a tenth or more for two that are not in simple ratio.
///
/// A peak stands 15 dB out of its surroundings and is within 40 dB of the strongest.
double foreign_share(std::span<const double> samples, double sample_rate, double fundamental_hz);

/// Whether the partials look like those of two tones in a simple ratio (2:3 to 8:9) that share this fundamental: hardly
/// anything lies on partials that are no multiple of either, and both have their own.
bool is_pure_interval(std::span<const Partial> partials);

}  // namespace analysis
