// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_parts.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/material.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace sim {
namespace {

using analysis::kg_m_from_g_m;
using analysis::metres_from_mm;
using analysis::seconds_from_ms;

constexpr NumberLimits any_diameter{0.05, 6.0, "mm"};
constexpr int most_modes = 64;

std::optional<double> converted(std::optional<double> value, double (*convert)(double)) {
    return value ? std::optional<double>(convert(*value)) : std::nullopt;
}

/// What would be needed to work out the string, had the file given it.
void check_gauge(const PresetNode& node, const Gauge& gauge) {
    const Material& stuff = material(gauge.material, "");
    if (gauge.bending_diameter && gauge.bending_stiffness) {
        node.fail_at("bending_stiffness_n_m2", "stands beside \"bending_diameter_mm\"; give one of the two");
    }
    if (stuff.overspun && !gauge.mass_per_length) {
        node.fail_at("mass_g_m", "missing key \"mass_g_m\"; the mass of a string of " + gauge.material +
                                     " does not follow from its diameter: give a number from 0.01 to 200 g/m");
    }
    if (!gauge.mass_per_length && !gauge.diameter) {
        node.fail_at("diameter_mm",
                     "missing key; give \"diameter_mm\" (0.05 to 6 mm), \"mass_g_m\" (0.01 to 200 g/m), "
                     "or both");
    }
    if (gauge.mass_per_length && gauge.diameter) {
        const double density = *gauge.mass_per_length / (std::numbers::pi / 4.0 * *gauge.diameter * *gauge.diameter);
        if (density < 300.0 || density > 22000.0) {
            node.fail_at("mass_g_m", "with this diameter makes " + number_text(std::round(density)) +
                                         " kg/m^3; give a mass and a diameter that make 300 to 22000 kg/m^3");
        }
    }
}

void check_overspun_switches(const PresetNode& node, const PresetString& string) {
    const Gauge& gauge = string.gauge;
    if (!material(gauge.material, "").overspun) {
        return;
    }
    const PresetNode place = node.child("gauge");
    if (string.stiffness && !gauge.bending_diameter && !gauge.bending_stiffness) {
        place.fail_at("bending_diameter_mm", "missing key; a string of " + gauge.material +
                                                 " needs \"bending_diameter_mm\" or \"bending_stiffness_n_m2\", or "
                                                 "\"stiffness\": \"none\" beside its gauge");
    }
    if (string.torsion && !(gauge.torsion_ratio && gauge.torsion_impedance)) {
        const char* key = gauge.torsion_ratio ? "torsion_impedance_kg_s" : "torsion_ratio";
        place.fail_at(key, "missing key; a string of " + gauge.material +
                               " needs \"torsion_ratio\" and \"torsion_impedance_kg_s\", or \"torsion\": \"none\" "
                               "beside its gauge");
    }
}

Gauge gauge_from(const PresetNode& node) {
    node.only_keys({"material", "diameter_mm", "mass_g_m", "bending_diameter_mm", "bending_stiffness_n_m2",
                    "torsion_ratio", "torsion_impedance_kg_s"});
    Gauge gauge;
    gauge.material = node.text("material");
    try {
        material(gauge.material, "");
    } catch (const analysis::InputError&) {
        std::vector<std::string> names;
        for (const Material& known : materials()) {
            names.emplace_back(known.name);
        }
        node.fail_at("material", "must be one of " + listed(names) + ", is \"" + gauge.material + "\"");
    }
    gauge.diameter = converted(node.optional_number("diameter_mm", any_diameter), metres_from_mm);
    gauge.mass_per_length = converted(node.optional_number("mass_g_m", {0.01, 200.0, "g/m"}), kg_m_from_g_m);
    gauge.bending_diameter = converted(node.optional_number("bending_diameter_mm", any_diameter), metres_from_mm);
    gauge.bending_stiffness = node.optional_number("bending_stiffness_n_m2", {1e-9, 1.0, "N m^2"});
    gauge.torsion_ratio = node.optional_number("torsion_ratio", {1.0, 50.0, ""});
    gauge.torsion_impedance = node.optional_number("torsion_impedance_kg_s", {1e-3, 100.0, "kg/s"});
    check_gauge(node, gauge);
    return gauge;
}

/// A part of the string's physics: in force unless the file says "none".
bool in_force(const PresetNode& node, std::string_view key) {
    if (!node.has(key)) {
        return true;
    }
    const PresetNode value = node.child(key);
    if (!value.json().is_string() || value.json() != "none") {
        value.fail("must be \"none\", or left out where it is in force");
    }
    return false;
}

std::vector<BridgeMode> modes_from(const PresetNode& node) {
    const std::vector<PresetNode> items = node.items();
    if (items.empty() || items.size() > most_modes) {
        node.fail("must list 1 to " + std::to_string(most_modes) + " modes, lists " + std::to_string(items.size()));
    }
    std::vector<BridgeMode> modes;
    for (const PresetNode& item : items) {
        item.only_keys({"hz", "q", "mass_kg", "radiation"});
        modes.push_back({.frequency = item.number("hz", {5.0, 20000.0, "Hz"}),
                         .q = item.number("q", {0.5, 5000.0, ""}),
                         .mass = item.number("mass_kg", {1e-4, 1000.0, "kg"}),
                         .radiation = item.number("radiation", {-10.0, 10.0, ""})});
    }
    return modes;
}

/// Keys of a thermal contact that a preset may give; the rest keep their usual values.
ThermalContact thermal_from(const PresetNode& node) {
    ThermalContact contact;
    const auto same = [](double value) { return value; };
    const auto take = [&node](const char* key, const NumberLimits& limits, double& value, double (*to_si)(double)) {
        if (const auto given = node.optional_number(key, limits)) value = to_si(*given);
    };
    take("layer_um", {0.1, 1000.0, "um"}, contact.layer, metres_from_um);
    take("spot_radius_um", {0.5, 1000.0, "um"}, contact.spot_radius, metres_from_um);
    take("rosin_density_kg_m3", {100.0, 5000.0, "kg/m3"}, contact.density, same);
    take("rosin_specific_heat_j_kg_k", {100.0, 10000.0, "J/(kg K)"}, contact.specific_heat, same);
    take("rosin_conductivity_w_m_k", {0.01, 500.0, "W/(m K)"}, contact.conductivity, same);
    take("contact_pressure_mpa", {0.01, 10000.0, "MPa"}, contact.contact_pressure, pascals_from_mpa);
    if (node.has("contact_area")) {
        const std::string area = node.text("contact_area");
        if (area != "grows_with_force" && area != "fixed")
            node.fail_at("contact_area", "must be \"grows_with_force\" or \"fixed\", is \"" + area + "\"");
        contact.area_grows_with_force = area == "grows_with_force";
    }
    return contact;
}

std::optional<FrictionLaw> law_from(const PresetNode& node) {
    return node.json().is_string() ? friction_law_from_name(node.json().get_ref<const std::string&>()) : std::nullopt;
}

}  // namespace

PresetString string_from(const PresetNode& node) {
    node.only_keys({"name", "pitch", "length_mm", "gauge", "damping", "torsion", "stiffness"});
    PresetString string;
    string.name = node.text("name");
    string.pitch = node.text("pitch");
    try {
        pitch_frequency(string.pitch, 440.0);
    } catch (const analysis::InputError&) {
        node.fail_at("pitch", "must be a pitch such as D4, Bb3 or F#4, is \"" + string.pitch + "\"");
    }
    string.length = metres_from_mm(node.number("length_mm", {50.0, 2000.0, "mm"}));
    string.gauge = gauge_from(node.child("gauge"));
    string.damping = in_force(node, "damping");
    string.torsion = in_force(node, "torsion");
    string.stiffness = in_force(node, "stiffness");
    check_overspun_switches(node, string);
    return string;
}

Player player_from(const PresetNode& node) {
    node.only_keys({"force_newtons", "speed_m_s", "rise_ms", "wander_mm", "pitch_tolerance_cents", "speak_ms",
                    "speak_periods", "tone_level_db", "tone_brightness_ratio", "band_share", "finger_width_mm",
                    "hand_span_mm"});
    const PresetNode force = node.child("force_newtons");
    const std::vector<PresetNode> ends = force.items();
    if (ends.size() != 2) {
        force.fail("must be a list of two numbers [lightest, firmest], has " + std::to_string(ends.size()));
    }
    constexpr NumberLimits force_limits{0.001, 50.0, "N"};
    Player player;
    player.force_low = ends[0].number(force_limits);
    player.force_high = ends[1].number(force_limits);
    if (player.force_low >= player.force_high) {
        force.fail("must be [lightest, firmest] with the first smaller, is [" + number_text(player.force_low) + ", " +
                   number_text(player.force_high) + "]");
    }
    player.speed = node.number("speed_m_s", {0.005, 5.0, "m/s"});
    player.rise = seconds_from_ms(node.number("rise_ms", {0.0, 2000.0, "ms"}));
    player.wander = metres_from_mm(node.number("wander_mm", {0.0, 50.0, "mm"}));
    player.pitch_tolerance = node.number("pitch_tolerance_cents", {0.1, 1200.0, "cents"});
    player.speak_time = seconds_from_ms(node.number("speak_ms", {1.0, 5000.0, "ms"}));
    player.speak_periods = node.number("speak_periods", {1.0, 1000.0, "periods"});
    player.tone_level = node.number("tone_level_db", {0.1, 60.0, "dB"});
    player.tone_brightness_ratio = node.number("tone_brightness_ratio", {0.0, 1.0, ""});
    player.band_share = node.number("band_share", {0.01, 1.0, ""});
    player.finger_width = metres_from_mm(node.number("finger_width_mm", {2.0, 40.0, "mm"}));
    player.hand_span = metres_from_mm(node.number("hand_span_mm", {20.0, 300.0, "mm"}));
    return player;
}

Friction friction_from(const PresetNode& node) {
    node.only_keys({"law", "static", "sliding", "corner_speed_m_s", "layer_um", "spot_radius_um", "rosin_density_kg_m3",
                    "rosin_specific_heat_j_kg_k", "rosin_conductivity_w_m_k", "contact_pressure_mpa", "contact_area"});
    const PresetNode law_node = node.child("law");
    const std::optional<FrictionLaw> law = law_from(law_node);
    if (!law) {
        law_node.fail("must be one of thermal, double_exponential, hyperbola, coulomb, in quotes");
    }
    Friction friction;
    friction.law = *law;
    const bool curve = *law == FrictionLaw::hyperbola || *law == FrictionLaw::coulomb;
    const auto given_or = [&node](std::string_view key, const NumberLimits& limits, bool needed, double usual) {
        return needed || node.has(key) ? node.number(key, limits) : usual;
    };
    friction.static_coefficient = given_or("static", {0.01, 5.0, ""}, curve, friction.static_coefficient);
    friction.sliding_coefficient = given_or("sliding", {0.0, 5.0, ""}, curve, friction.sliding_coefficient);
    friction.corner_speed =
        given_or("corner_speed_m_s", {1e-4, 10.0, "m/s"}, *law == FrictionLaw::hyperbola, friction.corner_speed);
    if (friction.sliding_coefficient > friction.static_coefficient) {
        node.fail_at(node.has("sliding") ? "sliding" : "static",
                     "\"sliding\" must not be greater than \"static\", is " +
                         number_text(friction.sliding_coefficient) + " against " +
                         number_text(friction.static_coefficient));
    }
    friction.thermal = thermal_from(node);
    return friction;
}

double slope_from_degrees(double degrees) { return std::tan(analysis::radians_from_degrees(degrees)); }
double degrees_from_slope(double slope) { return analysis::degrees_from_radians(std::atan(slope)); }

Bow bow_from(const PresetNode& node) {
    node.only_keys({"hair_points", "hair_in_use", "hair_stiffness_n_m", "hair_resistance_kg_s", "hair_mass_g",
                    "upright_resistance_kg_s", "bridge_lean_degrees"});
    Bow bow;
    if (node.has("hair_points")) bow.hair_points = node.child("hair_points").integer(1, 15);
    bow.hair_in_use = node.optional_number("hair_in_use", {0.05, 1.0, ""}).value_or(bow.hair_in_use);
    bow.stiffness = node.optional_number("hair_stiffness_n_m", {10.0, 1e8, "N/m"}).value_or(0.0);
    bow.resistance = node.optional_number("hair_resistance_kg_s", {0.0, 1e4, "kg/s"}).value_or(0.0);
    bow.mass = kg_from_g(node.optional_number("hair_mass_g", {0.0, 1000.0, "g"}).value_or(0.0));
    if (bow.stiffness == 0.0 && (bow.resistance > 0.0 || bow.mass > 0.0))
        node.fail_at(bow.mass > 0.0 ? "hair_mass_g" : "hair_resistance_kg_s",
                     "goes with hair_stiffness_n_m; give that too, or leave this out");
    bow.upright_resistance = node.optional_number("upright_resistance_kg_s", {1e-6, 1e4, "kg/s"}).value_or(0.0);
    bow.bridge_lean =
        slope_from_degrees(node.optional_number("bridge_lean_degrees", {-85.0, 85.0, "degrees"}).value_or(0.0));
    if (bow.bridge_lean != 0.0 && bow.upright_resistance == 0.0)
        node.fail_at("bridge_lean_degrees", "goes with upright_resistance_kg_s; give that too, or leave this out");
    return bow;
}

void read_bridge(const PresetNode& node, Preset& preset) {
    node.only_keys({"modes", "resistance_kg_s", "rigid", "measured"});
    const std::vector<std::string> given = node.keys();
    if (given.size() != 1) {
        node.fail("must hold one of \"modes\", \"resistance_kg_s\", \"rigid\", \"measured\", holds " +
                  (given.empty() ? "nothing" : listed(given)));
    }
    if (node.has("modes")) {
        preset.bridge = {.kind = BridgeKind::modes, .resistance = 0.0, .modes = modes_from(node.child("modes"))};
    } else if (node.has("resistance_kg_s")) {
        preset.bridge = {.kind = BridgeKind::resistance,
                         .resistance = node.number("resistance_kg_s", {0.01, 1e6, "kg/s"}),
                         .modes = {}};
    } else if (node.has("measured")) {
        preset.measured_bridge = node.text("measured");
    } else if (!node.child("rigid").boolean()) {
        node.fail_at("rigid", "must be true, or left out for another kind of bridge, is false");
    }
}

}  // namespace sim
