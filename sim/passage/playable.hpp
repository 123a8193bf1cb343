// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/passage/hand.hpp"

namespace sim::passage {

/// Every note must lie on some string and under some finger that the tune leaves; InputError names bar and note, says
/// why not, and what would do.
void require_playable(const score::Tune& tune, const Preset& preset, const Hand& hand);

}  // namespace sim::passage
