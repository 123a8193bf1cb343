// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/match/match.hpp"

namespace sim::match {

/// How a region of contact points lies to a band or to a stretch.
BandPlace place_in(const Region& region, const Band& band);

/// The same for a note that has no band, to its most secure stretch; nothing for any other, or where there is none.
std::optional<BandPlace> place_in_stretch(const NoteMatch& note);

}  // namespace sim::match
