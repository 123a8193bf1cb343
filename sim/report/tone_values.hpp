// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/stroke.hpp"

#include <optional>

namespace sim::report {

// What a stroke's tone says, in the units of the keys; nothing where the physics has no value.
std::optional<double> level_db(const StrokeResult& stroke);  ///< re 1 N
std::optional<double> pitch_cents(const StrokeResult& stroke, const Note& note);
std::optional<double> brightness_f0(const StrokeResult& stroke);

}  // namespace sim::report
