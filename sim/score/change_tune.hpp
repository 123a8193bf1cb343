// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/score/tune.hpp"

#include <string>

namespace sim::score {

/// The tune with one tempo from beginning to end.
Tune at_tempo(Tune tune, double quarters_a_minute);

/// The tune with strings and fingers set, over its own: "2.1,string=1,finger=4 3.2,finger=1" for the first note of bar
/// 2 and the second of bar 3.  InputError names what isn't understood or isn't there, at `where`.
Tune with_fingers(Tune tune, const std::string& fixed, const std::string& where);

}  // namespace sim::score
