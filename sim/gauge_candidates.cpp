// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/gauge_candidates.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/material.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace sim {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double least_diameter = 0.05e-3;  // m, as for presets
constexpr double greatest_diameter = 6e-3;  // m
constexpr double same_within = 1e-4;        // of the mass: the present gauge asked for once more

std::string where_of(const PresetString& string) { return "string \"" + string.name + "\""; }

const PresetString* nearest_overspun(const Preset& preset, const PresetString& string, const std::string& name,
                                     double mass) {
    if (string.gauge.material == name) return &string;
    const PresetString* nearest = nullptr;
    double least = 0.0;
    for (const PresetString& other : preset.strings) {
        if (other.gauge.material != name) continue;
        const double distance = std::abs(std::log(mass / *other.gauge.mass_per_length));
        if (nearest == nullptr || distance < least) {
            nearest = &other;
            least = distance;
        }
    }
    if (nearest == nullptr)
        throw analysis::InputError(where_of(string), "can't be tried in " + name + ": no string of " + preset.name +
                                                         " is of " + name +
                                                         ", from which bending and twist could be scaled");
    return nearest;
}

Gauge scaled_overspun(const Preset& preset, const PresetString& string, const PresetString& model, double mass) {
    const double times = mass / *model.gauge.mass_per_length;
    Gauge gauge = model.gauge;
    gauge.diameter.reset();
    gauge.mass_per_length = mass;
    if (gauge.bending_diameter) *gauge.bending_diameter *= std::sqrt(times);
    if (gauge.bending_stiffness) *gauge.bending_stiffness *= times * times;
    if (gauge.torsion_impedance) {
        PresetString scaled = string;
        scaled.gauge = gauge;
        *gauge.torsion_impedance *=
            wave_impedance(open_string(preset, scaled)) / wave_impedance(open_string(preset, model));
    }
    return gauge;
}

void require_usual(const PresetString& string, const std::string& name, double mass) {
    const double diameter = plain_diameter_of(name, mass);
    if (diameter >= least_diameter && diameter <= greatest_diameter) return;
    throw analysis::InputError(where_of(string),
                               "in " + name + " would be " + fixed_number(analysis::mm_from_metres(diameter), 3) +
                                   " mm thick (for overspun ones: plain of that weight); give what makes 0.05 to 6 mm");
}

bool weighs_as(const PresetString& string, const std::string& name, double mass, double other_mass) {
    return string.gauge.material == name && std::abs(mass / other_mass - 1.0) < same_within;
}

/// Every mass that is asked of a material.
std::vector<double> masses_of(const Preset& preset, const PresetString& present, const GaugeAsk& ask,
                              const std::string& name) {
    const String open = open_string(preset, present);
    const double pitch = fundamental(open);
    std::vector<double> masses = ask.masses;
    for (const double diameter : ask.diameters) masses.push_back(plain_mass_of(name, diameter));
    for (const double tension : ask.tensions) masses.push_back(mass_for_pull({tension, pitch, open.length}));
    if (!masses.empty()) return masses;
    if (name != present.gauge.material) return {open.mass_per_length};
    for (const int percent : {85, 90, 95, 105, 110, 115})
        masses.push_back(open.mass_per_length * std::pow(percent / 100.0, 2));
    return masses;
}

}  // namespace

double mass_for_pull(const Pull& pull) { return pull.tension / std::pow(2.0 * pull.length * pull.pitch, 2); }

double plain_diameter_of(const std::string& material_name, double mass_per_length) {
    return std::sqrt(4.0 * mass_per_length / (pi * material(material_name, "materials").density));
}

double plain_mass_of(const std::string& material_name, double diameter) {
    return material(material_name, "materials").density * pi / 4.0 * diameter * diameter;
}

PresetString with_gauge(const Preset& preset, const PresetString& string, const std::string& material_name,
                        double mass_per_length) {
    const Material& stuff = material(material_name, where_of(string));
    require_usual(string, material_name, mass_per_length);
    PresetString changed = string;
    if (stuff.overspun) {
        const PresetString& model = *nearest_overspun(preset, string, material_name, mass_per_length);
        changed.gauge = scaled_overspun(preset, string, model, mass_per_length);
    } else {
        changed.gauge = Gauge{};
        changed.gauge.material = material_name;
        changed.gauge.diameter = plain_diameter_of(material_name, mass_per_length);
    }
    return changed;
}

std::vector<PresetString> gauge_candidates(const Preset& preset, const PresetString& present, const GaugeAsk& ask) {
    const double present_mass = open_string(preset, present).mass_per_length;
    std::vector<PresetString> candidates{present};
    std::vector<std::string> names = ask.materials;
    if (names.empty()) names.push_back(present.gauge.material);
    for (const std::string& name : names) {
        for (const double mass : masses_of(preset, present, ask, name)) {
            if (weighs_as(present, name, mass, present_mass)) continue;
            candidates.push_back(with_gauge(preset, present, name, mass));
        }
    }
    return candidates;
}

std::string gauge_words(const Gauge& gauge) {
    const bool overspun = material(gauge.material, "materials").overspun;
    const double diameter =
        gauge.diameter ? *gauge.diameter : plain_diameter_of(gauge.material, *gauge.mass_per_length);
    return gauge.material + (overspun ? " as plain " : " ") + fixed_number(analysis::mm_from_metres(diameter), 2) +
           " mm";
}

Preset with_string(Preset preset, const PresetString& string) {
    for (PresetString& place : preset.strings)
        if (place.name == string.name) place = string;
    return preset;
}

}  // namespace sim
