// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/ring.hpp"
#include "sim/stroke_map.hpp"

#include <optional>
#include <vector>

namespace sim {

/// A way to end the string at one and the same place.
///
/// Nut and fret are the same hard end here: no loss of either was found published, so all that tells them apart in the
/// simulation is where they stand.  The bare finger is the pad of loop_filter.hpp.
struct StringEnd {
    StopEnd end = StopEnd::nut;
    double finger_q = 0.0;  ///< Q that a finger's end alone would give the first partials; 0 for a hard end

    bool operator==(const StringEnd&) const = default;
};

/// What to compare.
struct EndsPlan {
    std::vector<double> finger_qs{50.0, 100.0, 200.0};  ///< from memory: no measured value was found
    MapGrid grid{.contact_points = 24, .player_forces = 8, .more_forces = 0};  ///< to find the best contact point
    std::optional<double> contact_point;                                       ///< m, instead of the best one
    std::optional<StopEnd> end;  ///< with which the best contact point is sought, instead of the usual one
    int held_points = 5;         ///< contact points from half to twice that, even in ratio; 1 = it alone
};

/// The forces that hold at one contact point.
struct HeldPlace {
    double contact_point = 0.0;  ///< m
    ForceWindow held;
};

/// What one end does to the note.
struct EndAnswer {
    StringEnd end;
    Note note;
    std::vector<HeldPlace> places;         ///< rising
    StrokeResult stroke;                   ///< started, the player's middle force, at the contact point
    std::vector<RingingPartial> partials;  ///< bow lifted, the first 20
    std::optional<double> ring_time;       ///< s, bow lifted, to fall 60 dB
};

/// One place of the string, ended in several ways.
struct Ends {
    double contact_point = 0.0;  ///< m, the best of the usual end, or the one asked for
    double usual_q = 0.0;        ///< the preset's finger
    StopEnd usual = StopEnd::nut;
    std::vector<EndAnswer> answers;  ///< nut (open string only), fret, then fingers of rising Q
};

/// Plays one stop with a fret and with bare fingers, the open string with the nut too; held windows, a stroke, and how
/// it rings.  Nothing where no stroke of the player's range speaks anywhere and no contact point was given.
std::optional<Ends> find_ends(const Preset& preset, const PresetString& string, double stop, const EndsPlan& plan,
                              const Workers& workers);

/// The ends that are compared: see find_ends.
std::vector<StringEnd> compared_ends(double stop, const std::vector<double>& finger_qs);

}  // namespace sim
