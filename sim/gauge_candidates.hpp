// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/preset.hpp"

#include <string>
#include <vector>

namespace sim {

/// Which gauges to try.  Every material is tried with every diameter, mass and pull.
struct GaugeAsk {
    std::vector<std::string> materials;  ///< of the material table; empty: the string's own
    std::vector<double> diameters;       ///< m; of an overspun string, of plain core material that weighs as much
    std::vector<double> masses;          ///< kg/m
    std::vector<double> tensions;        ///< N

    bool operator==(const GaugeAsk&) const = default;
};

/// Mass that gives a string of that pitch (Hz) and length (m) that pull: T / (2 L f)^2, kg/m.
struct Pull {
    double tension;  ///< N
    double pitch;    ///< Hz
    double length;   ///< m
};
double mass_for_pull(const Pull& pull);

/// Diameter of the plain round string of that material and mass (kg/m), m; of an overspun material, of its core's.
double plain_diameter_of(const std::string& material_name, double mass_per_length);
/// Mass of that, kg/m.
double plain_mass_of(const std::string& material_name, double diameter);

/// The string with a gauge of that material and mass instead of its own.
///
/// Plain materials become round and solid.  An overspun one is scaled from the preset's overspun string of the same
/// material that is nearest in mass (the string itself, if it is one): bending diameter with the root of the mass,
/// bending stiffness with its square, twist with the transverse impedance at the same ratio of speeds.
/// InputError where the preset has none, for an unknown material, and for a mass of no usual string.
PresetString with_gauge(const Preset& preset, const PresetString& string, const std::string& material_name,
                        double mass_per_length);

/// The candidates for a string.  Its present gauge comes first and once.  With neither diameters nor masses nor pulls,
/// its own material is tried at 85 to 115 % of its diameter in steps of 5 %, any other material at its present pull.
std::vector<PresetString> gauge_candidates(const Preset& preset, const PresetString& present, const GaugeAsk& ask);

/// "gut 0.64 mm", "overspun gut as plain 1.38 mm".
std::string gauge_words(const Gauge& gauge);

/// The preset with that string in the place of the one of its name.
Preset with_string(Preset preset, const PresetString& string);

}  // namespace sim
