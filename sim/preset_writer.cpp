// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset.hpp"

#include "analysis/units.hpp"
#include "sim/preset_parts.hpp"

#include <nlohmann/json.hpp>

#include <charconv>
#include <cmath>

namespace sim {
namespace {

using analysis::g_m_from_kg_m;
using analysis::kg_m_from_g_m;
using analysis::metres_from_mm;
using analysis::mm_from_metres;
using analysis::ms_from_seconds;
using analysis::seconds_from_ms;

/// Whole numbers without ".0".
nlohmann::json number(double value) {
    if (value == std::floor(value) && std::abs(value) < 1e15) {
        return static_cast<std::int64_t>(value);
    }
    return value;
}

/// How a key's unit and SI go into each other.
struct Unit {
    double (*to_si)(double);
    double (*from_si)(double);
};
constexpr Unit mm{metres_from_mm, mm_from_metres};
constexpr Unit ms{seconds_from_ms, ms_from_seconds};
constexpr Unit g_m{kg_m_from_g_m, g_m_from_kg_m};
constexpr Unit um{metres_from_um, um_from_metres};
constexpr Unit gram{kg_from_g, g_from_kg};
constexpr Unit degrees{slope_from_degrees, degrees_from_slope};
constexpr Unit mpa{pascals_from_mpa, mpa_from_pascals};

/// The shortest number in the key's unit that reads back as the same SI value: converting there and back can lose
/// the last bit, so the candidates are tried.
nlohmann::json number(double si, const Unit& unit) {
    const double near = unit.from_si(si);
    for (int digits = 1; digits <= 17; ++digits) {
        char text[64];
        const auto end = std::to_chars(text, text + sizeof text, near, std::chars_format::scientific, digits - 1).ptr;
        double candidate = 0.0;
        std::from_chars(text, end, candidate);
        if (unit.to_si(candidate) == si) {
            return number(candidate);
        }
    }
    for (const double beside : {std::nextafter(near, 0.0), std::nextafter(near, 2.0 * near)}) {
        if (unit.to_si(beside) == si) {
            return number(beside);
        }
    }
    return number(near);  // no number of this unit gives these very bits; this one comes nearest
}

nlohmann::json gauge_json(const Gauge& gauge) {
    nlohmann::json json = {{"material", gauge.material}};
    const auto add = [&json](const char* key, const std::optional<double>& value, const Unit* unit) {
        if (value) {
            json[key] = unit != nullptr ? number(*value, *unit) : number(*value);
        }
    };
    add("diameter_mm", gauge.diameter, &mm);
    add("mass_g_m", gauge.mass_per_length, &g_m);
    add("bending_diameter_mm", gauge.bending_diameter, &mm);
    add("bending_stiffness_n_m2", gauge.bending_stiffness, nullptr);
    add("torsion_ratio", gauge.torsion_ratio, nullptr);
    add("torsion_impedance_kg_s", gauge.torsion_impedance, nullptr);
    return json;
}

nlohmann::json string_json(const PresetString& string) {
    nlohmann::json json = {{"name", string.name},
                           {"pitch", string.pitch},
                           {"length_mm", number(string.length, mm)},
                           {"gauge", gauge_json(string.gauge)}};
    for (const auto& [key, in_force] :
         {std::pair{"damping", string.damping}, {"torsion", string.torsion}, {"stiffness", string.stiffness}}) {
        if (!in_force) {
            json[key] = "none";
        }
    }
    return json;
}

nlohmann::json player_json(const Player& player) {
    return {{"force_newtons", {number(player.force_low), number(player.force_high)}},
            {"speed_m_s", number(player.speed)},
            {"rise_ms", number(player.rise, ms)},
            {"wander_mm", number(player.wander, mm)},
            {"pitch_tolerance_cents", number(player.pitch_tolerance)},
            {"speak_ms", number(player.speak_time, ms)},
            {"speak_periods", number(player.speak_periods)},
            {"tone_level_db", number(player.tone_level)},
            {"tone_brightness_ratio", number(player.tone_brightness_ratio)},
            {"band_share", number(player.band_share)},
            {"finger_width_mm", number(player.finger_width, mm)},
            {"hand_span_mm", number(player.hand_span, mm)}};
}

nlohmann::json bridge_json(const Preset& preset) {
    if (!preset.measured_bridge.empty()) {
        return {{"measured", preset.measured_bridge}};
    }
    switch (preset.bridge.kind) {
        case BridgeKind::rigid:
            return {{"rigid", true}};
        case BridgeKind::resistance:
            return {{"resistance_kg_s", number(preset.bridge.resistance)}};
        case BridgeKind::modes:
            break;
    }
    nlohmann::json modes = nlohmann::json::array();
    for (const BridgeMode& mode : preset.bridge.modes) {
        modes.push_back({{"hz", number(mode.frequency)},
                         {"q", number(mode.q)},
                         {"mass_kg", number(mode.mass)},
                         {"radiation", number(mode.radiation)}});
    }
    return {{"modes", modes}};
}

/// Usual values that the law does not need are left out, unless a source speaks of them.
nlohmann::json friction_json(const Preset& preset) {
    const Friction& friction = preset.friction;
    const Friction usual;
    nlohmann::json json = {{"law", friction_law_name(friction.law)}};
    const auto add = [&](const char* key, bool needed, double value, double usual_value, const Unit* unit) {
        if (needed || value != usual_value || preset.sources.contains(std::string("/friction/") + key)) {
            json[key] = unit != nullptr ? number(value, *unit) : number(value);
        }
    };
    const bool hyperbola = friction.law == FrictionLaw::hyperbola;
    const bool curve = hyperbola || friction.law == FrictionLaw::coulomb;
    const ThermalContact& contact = friction.thermal;
    add("static", curve, friction.static_coefficient, usual.static_coefficient, nullptr);
    add("sliding", curve, friction.sliding_coefficient, usual.sliding_coefficient, nullptr);
    add("corner_speed_m_s", hyperbola, friction.corner_speed, usual.corner_speed, nullptr);
    add("layer_um", false, contact.layer, usual.thermal.layer, &um);
    add("spot_radius_um", false, contact.spot_radius, usual.thermal.spot_radius, &um);
    add("rosin_density_kg_m3", false, contact.density, usual.thermal.density, nullptr);
    add("rosin_specific_heat_j_kg_k", false, contact.specific_heat, usual.thermal.specific_heat, nullptr);
    add("rosin_conductivity_w_m_k", false, contact.conductivity, usual.thermal.conductivity, nullptr);
    add("contact_pressure_mpa", false, contact.contact_pressure, usual.thermal.contact_pressure, &mpa);
    if (!contact.area_grows_with_force) json["contact_area"] = "fixed";
    return json;
}

/// What the plain bow has is left out, unless a source speaks of it.
nlohmann::json bow_json(const Preset& preset) {
    const Bow& bow = preset.bow;
    const Bow plain;
    nlohmann::json json = nlohmann::json::object();
    const auto add = [&](const char* key, double value, double plain_value, const Unit* unit) {
        if (value != plain_value || preset.sources.contains(std::string("/bow/") + key))
            json[key] = unit != nullptr ? number(value, *unit) : number(value);
    };
    add("hair_points", bow.hair_points, plain.hair_points, nullptr);
    add("hair_in_use", bow.hair_in_use, plain.hair_in_use, nullptr);
    add("hair_stiffness_n_m", bow.stiffness, plain.stiffness, nullptr);
    add("hair_resistance_kg_s", bow.resistance, plain.resistance, nullptr);
    add("hair_mass_g", bow.mass, plain.mass, &gram);
    add("upright_resistance_kg_s", bow.upright_resistance, plain.upright_resistance, nullptr);
    add("bridge_lean_degrees", bow.bridge_lean, plain.bridge_lean, &degrees);
    return json;
}

}  // namespace

std::string preset_text(const Preset& preset) {
    nlohmann::json strings = nlohmann::json::array();
    for (const PresetString& string : preset.strings) {
        strings.push_back(string_json(string));
    }
    nlohmann::json json = {{"format", 1},
                           {"name", preset.name},
                           {"kind", preset.kind},
                           {"remark", preset.remark},
                           {"reference_pitch_hz", number(preset.reference_pitch)},
                           {"temperament", temperament_name(preset.temperament)},
                           {"chromatic_frets", preset.chromatic_frets},
                           {"frets", preset.frets},
                           {"guide_fret", preset.guide_fret},
                           {"board_end_ratio", number(preset.board_end_ratio)},
                           {"hair_width_mm", number(preset.hair_width, mm)},
                           {"player", player_json(preset.player)},
                           {"strings", strings},
                           {"bridge", bridge_json(preset)},
                           {"friction", friction_json(preset)},
                           {"sources", preset.sources}};
    if (preset.finger_q != usual_finger_q || preset.sources.contains("/finger_q")) {
        json["finger_q"] = number(preset.finger_q);
    }
    if (const nlohmann::json bow = bow_json(preset); !bow.empty() || preset.sources.contains("/bow")) json["bow"] = bow;
    return json.dump(2) + "\n";
}

}  // namespace sim
