// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/note.hpp"

#include <optional>
#include <span>
#include <vector>

namespace sim {

/// One partial of a string that rings by itself, the bow lifted.
struct RingingPartial {
    int number = 0;
    double frequency = 0.0;           ///< Hz
    double decay = 0.0;               ///< 1/s, of the amplitude, >= 0
    std::optional<double> q;          ///< w / (2 decay); none without loss
    std::optional<double> ring_time;  ///< s to fall 60 dB; none without loss

    bool operator==(const RingingPartial&) const = default;
};

/// The first `count` partials of the note left to ring: the poles of its round trip (losses, stop's end, stiffness and
/// the bridge as it reflects), so what the simulated string does with no bow on it.
///
/// Found by letting the bridge's admittance grow from nothing to what it is.  Where a body mode lies on a partial, both
/// share in two poles; the one that grows out of the string's is given.
std::vector<RingingPartial> ringing_partials(const Note& note, int count);

/// How long a bowed string rings once the bow is lifted, s: until the force on the bridge, partials 1/n at first, has
/// fallen by 60 dB in the sum of their powers.  Nothing where a partial has no loss.
std::optional<double> ring_time(std::span<const RingingPartial> partials);

}  // namespace sim
