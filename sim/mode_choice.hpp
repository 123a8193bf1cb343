// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge_fit.hpp"

#include <optional>
#include <vector>

namespace sim {

/// The modes, in any order, whose sum comes nearest to the points.
///
/// Candidates are the poles of a vector fit, the peaks of Re Y, and a few modes beyond the range for all that lies
/// there. Of those that take part in a non-negative fit the least needed is left out again and again, the rest polished
/// each time.  With `wanted` the best set with that many modes in the range is given (the most there are, if fewer);
/// without it the set from which a further mode would gain less than chance gives (Bayesian information criterion,
/// with a floor at 0.25 % of |Y|), of at most `most_chosen_modes` in the range.
std::vector<BridgeMode> chosen_modes(const AdmittancePoints& points, const HzRange& range, std::optional<int> wanted);

/// Whether a mode lies in the range.
bool is_inside(const BridgeMode& mode, const HzRange& range);

}  // namespace sim
