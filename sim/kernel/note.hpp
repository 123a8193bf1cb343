// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/bridge.hpp"
#include "sim/kernel/contact.hpp"
#include "sim/loop_filter.hpp"
#include "sim/profile.hpp"

#include <vector>

namespace sim::kernel {

/// Two wave lines between bridge and stop, and the filter at the stop that closes the loop.
struct Lines {
    double impedance = 0.0;  ///< kg/s at the string's surface; 0 = this kind of wave is left out
    double speed = 0.0;      ///< m/s
    LoopFilter loop;
};

/// The hair in use, see sim/bow.hpp.
struct Hair {
    int points = 1;
    double width = 0.0;               ///< m
    double stiffness = 0.0;           ///< N/m
    double resistance = 0.0;          ///< kg/s
    double mass = 0.0;                ///< kg
    double upright_resistance = 0.0;  ///< kg/s; 0 = one direction of motion
    double bridge_lean = 0.0;

    bool operator==(const Hair&) const = default;
};

/// All that stays the same during one run.
struct Note {
    double sample_rate = 0.0;  ///< Hz
    Lines transverse;
    Lines torsional;
    Bridge bridge;
    Contact contact;
    Hair hair;
    double length = 0.0;  ///< m, bridge to stop
};

/// How the bow moves.
struct Drive {
    Profile speed;            ///< m/s
    Profile force;            ///< N
    Profile contact_point;    ///< m from the bridge: the middle of the hair in use
    double lengthwise = 0.0;  ///< m/s, at which the hair slides along the string (laws thermal and coulomb only)
};

/// The state at time 0: at rest, or in the ideal Helmholtz motion of a bow speed at the drive's first contact point.
struct Start {
    bool helmholtz = false;
    double speed = 0.0;  ///< m/s
    Warmth warmth;
};

/// What to keep.
struct Wanted {
    int steps = 0;           ///< samples to advance
    int bridge_from = 0;     ///< first step of the bridge force to keep
    bool waveforms = false;  ///< bow-point velocity, friction force, temperature of every step
};

/// One stretch of slipping: from where the slip speed rises over a quarter of the full one, bow speed / contact ratio,
/// to where it falls under a tenth of it.
struct Slip {
    double start = 0.0;     ///< s
    double end = 0.0;       ///< s
    double distance = 0.0;  ///< m, bow over string, while it lasted

    bool operator==(const Slip&) const = default;
};

/// What came of it.
struct Record {
    std::vector<double> bridge_force;  ///< N, from Wanted::bridge_from
    std::vector<Slip> slips;           ///< finished ones, in order
    double slipping_since = -1.0;      ///< s, start of a slip that was still on at the end; < 0 = none
    double slipped_time_late = 0.0;    ///< s of the second half of the run in which the contact slipped at all
    std::vector<double> velocity;      ///< m/s, string's surface at the bow
    std::vector<double> friction;      ///< N, on the string
    std::vector<double> temperature;   ///< K above ambient
    std::vector<char> slipping;        ///< 1 where the contact slips
    Warmth warmth;                     ///< at the end
    bool diverged = false;             ///< numbers left all sense; nothing else of the record counts
};

/// Advances one note in double precision, plainly: the judge of every other kernel.
///
/// source   travelling waves: [Woodhouse2003]; end filters: loop_filter.hpp; modes in trapezoidal form, passive as they
/// stand
Record run_reference(const Note& note, const Drive& drive, const Start& start, const Wanted& wanted);

}  // namespace sim::kernel
