// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace sim {

/// Which losses a partial suffers; none of them acts on slow motion (a held string stays where it is pulled).
///
/// units    per partial n at angular frequency w, k = n pi / L:
///          1/Q = [T (friction + air/w) + EI bending k^2] / [T + EI k^2]
/// source   [Woodhouse2004], form from memory
struct Damping {
    double friction = 0.0;   ///< eta_F, dimensionless, >= 0
    double air = 0.0;        ///< eta_A, 1/s, >= 0
    double bending = 0.0;    ///< eta_E, dimensionless, >= 0
    double torsion_q = 0.0;  ///< Q of torsional partials, > 0; 0 = no torsional loss

    bool operator==(const Damping&) const = default;
};

/// A string between two ends: the whole open string, or what sounds of a stopped one.
struct String {
    std::string name;
    double length = 0.0;             ///< m, between the ends
    double tension = 0.0;            ///< N
    double mass_per_length = 0.0;    ///< kg/m
    double bending_stiffness = 0.0;  ///< EI, N m^2; 0 = perfectly flexible
    double torsion_impedance = 0.0;  ///< Zt seen at the string's surface, kg/s; 0 = can't twist
    double torsion_speed = 0.0;      ///< of torsional waves, m/s; used where torsion_impedance > 0
    Damping damping;

    bool operator==(const String&) const = default;
};

/// Speed of transverse waves, m/s: sqrt(T/m).
double wave_speed(const String& string);
/// Characteristic impedance, kg/s: sqrt(T m).
double wave_impedance(const String& string);
/// c / (2 L), Hz: the note of the flexible string.  The nominal pitch of a stop.
double fundamental(const String& string);
/// B of f_n = n f0 sqrt(1 + B n^2): pi^2 EI / (T L^2).
double inharmonicity(const String& string);
/// Frequency of partial n (>= 1), Hz, with stiffness.
double partial_frequency(const String& string, double n);
/// 1/Q of the (not necessarily whole) partial number n > 0.
double loss_factor(const String& string, double n);

/// The same string stopped `semitones` (>= 0) above the open note: shorter, tension kept.
String stopped(const String& open, double semitones);

}  // namespace sim
