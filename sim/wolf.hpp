// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/warble.hpp"
#include "sim/stroke.hpp"

#include <optional>

namespace sim {

inline constexpr double wolf_within_cents = 50.0;  ///< of a body mode
inline constexpr double wolf_least_time = 2.0;     ///< s of stroke, shorter ones are not listened to

/// How a stroke's level beats, once the note has begun.
struct Beating {
    bool listened = false;                   ///< the stroke was long enough
    std::optional<analysis::Warble> warble;  ///< of the sound, as radiated
    std::optional<double> body_mode;         ///< Hz, the one within 50 cents of the note, where there is a warble

    bool operator==(const Beating&) const = default;
};

/// Listens to a recorded stroke from half a second on.
Beating beating_of(const Played& played, const Note& note);

/// A warble on a note that lies on a body mode: string and body pass their energy to and fro.
bool is_wolf(const Beating& beating);

}  // namespace sim
