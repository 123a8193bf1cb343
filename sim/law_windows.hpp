// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/force_window.hpp"
#include "sim/limits.hpp"

#include <string>
#include <vector>

namespace sim {

/// A way in which rosin may grip, to be set beside others.
struct LawCase {
    std::string name;
    Friction friction;
};

/// Thermal as the preset has it, and with an area that does not grow with the force; then the two laws of slip speed,
/// the hyperbola with its usual coefficients.
std::vector<LawCase> laws_compared(const Preset& preset);

/// Both windows of one note under one law at one contact point.
struct LawWindow {
    std::string law;
    Note note;
    double contact_point = 0.0;  ///< m
    ForceWindow held;
    ForceWindow started;
    Limits limits;
};

/// Where the bow stands for the comparison, unless a place is given: a tenth of the sounding length, or the floor.
double compared_contact(const Note& note);

/// Which notes, and where the bow stands.
struct LawPlan {
    std::vector<double> stops;   ///< semitones
    std::optional<StopEnd> end;  ///< else the usual one
    double contact_point = 0.0;  ///< m, or 0 for compared_contact
};

/// Law by law within each note.
std::vector<LawWindow> find_law_windows(const Preset& preset, const PresetString& string, const LawPlan& plan,
                                        const Workers& workers);

}  // namespace sim
