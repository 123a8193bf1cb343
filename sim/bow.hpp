// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace sim {

/// The hair that touches the string, and what it gives.  The plain bow: one point, rigid lengthwise, deaf to the
/// string's other direction.
///
/// source   hair of 7 GPa and 0.2 mm, 0.3 m to either end of the bow, 200 hairs: 2.5e5 N/m; waves along 50 hairs that
///          bear the string: 10 kg/s; a third of 5 g of hair moves with the contact; hair pulled with 60 N at 7 g/m
///          takes waves across at 0.65 kg/s a side: all from memory, orders of magnitude.  Width of the ribbon against
///          string length and some 50 active hairs: [Pitteroff1998]
struct Bow {
    int hair_points = 1;  ///< contact points across the hair in use, 1 … 15; under laws of slip speed the forces of
                          ///< more than one are rough, see DEVELOPERS.md
    double hair_in_use = 1.0;  ///< share of the hair's width that touches, 0…1: a tilted bow
    double stiffness = 0.0;    ///< N/m, of all the hair lengthwise (along the bow), in use or not; 0 = rigid
    double resistance = 0.0;   ///< kg/s, in parallel with it, likewise
    double mass = 0.0;         ///< kg, of hair that moves with the contact, likewise
    /// kg/s that the hair, plucked across, takes from the string's motion towards it; 0 = the string moves in one
    /// direction only.
    double upright_resistance = 0.0;
    /// Slope of the body's motion at the bridge: upright over bowing direction.  Couples the string's two directions.
    double bridge_lean = 0.0;

    bool operator==(const Bow&) const = default;
};

}  // namespace sim
