// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/sensitivity_list.hpp"

#include "analysis/errors.hpp"
#include "sim/preset_reader.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim {

namespace {

using Nominal = std::optional<double>;

// A constant that is a plain member needs no more than its place; the factor turns SI into the table's unit.

template <double ThermalContact::*member, int exponent>
Nominal thermal_value(const Subject& subject) {
    if (subject.preset.friction.law != FrictionLaw::thermal) return std::nullopt;
    return subject.preset.friction.thermal.*member * std::pow(10.0, exponent);
}
template <double ThermalContact::*member>
void scale_thermal(Subject& subject, double factor) {
    subject.preset.friction.thermal.*member *= factor;
}
template <double ThermalContact::*member, int exponent>
constexpr Constant thermal(std::string_view name, std::string_view what, std::string_view unit) {
    return {name,
            what,
            unit,
            ConstantGroup::rosin,
            "/friction",
            "from memory",
            thermal_value<member, exponent>,
            scale_thermal<member>};
}

template <double Damping::*member>
Nominal damping_value(const Subject& subject) {
    const double value = subject.open.damping.*member;
    return value > 0.0 ? Nominal(value) : std::nullopt;
}
template <double Damping::*member>
void scale_damping(Subject& subject, double factor) {
    subject.open.damping.*member *= factor;
}
template <double Damping::*member>
constexpr Constant damping(std::string_view name, std::string_view what, std::string_view unit) {
    return {name, what, unit, ConstantGroup::string, "", "from memory", damping_value<member>, scale_damping<member>};
}

template <double Player::*member, int exponent>
Nominal player_value(const Subject& subject) {
    const double value = subject.preset.player.*member * std::pow(10.0, exponent);
    return value > 0.0 ? Nominal(value) : std::nullopt;
}
template <double Player::*member>
void scale_player(Subject& subject, double factor) {
    subject.preset.player.*member *= factor;
}
template <double Player::*member, int exponent>
constexpr Constant player(std::string_view name, std::string_view what, std::string_view unit) {
    return {name,
            what,
            unit,
            ConstantGroup::player,
            "/player",
            "common practice",
            player_value<member, exponent>,
            scale_player<member>};
}

// Constants that reach several members.

void scale_losses(Subject& subject, double factor) {
    Damping& damping = subject.open.damping;
    damping.friction *= factor;
    damping.air *= factor;
    damping.bending *= factor;
}

/// c_t = sqrt(G/rho) and Zt = m c_t / 2: both go as sqrt(G), also where a winding's figures were given.
Nominal torsion_ratio(const Subject& subject) {
    if (!(subject.open.torsion_impedance > 0.0)) return std::nullopt;
    return subject.open.torsion_impedance / wave_impedance(subject.open);
}
void scale_shear(Subject& subject, double factor) {
    subject.open.torsion_speed *= std::sqrt(factor);
    subject.open.torsion_impedance *= std::sqrt(factor);
}

Nominal inharmonicity_of(const Subject& subject) {
    const double value = inharmonicity(subject.open);
    return value > 0.0 ? Nominal(value * 1e6) : std::nullopt;
}
void scale_bending(Subject& subject, double factor) { subject.open.bending_stiffness *= factor; }

Nominal finger_q(const Subject& subject) {
    return subject.preset.finger_q > 0.0 ? Nominal(subject.preset.finger_q) : std::nullopt;
}
void scale_finger(Subject& subject, double factor) { subject.preset.finger_q *= factor; }

template <double BridgeMode::*member>
Nominal mode_mean(const Subject& subject) {
    const Bridge& bridge = subject.preset.bridge;
    if (bridge.kind != BridgeKind::modes || bridge.modes.empty()) return std::nullopt;
    double logs = 0.0;
    for (const BridgeMode& mode : bridge.modes) logs += std::log(mode.*member);
    return std::exp(logs / static_cast<double>(bridge.modes.size()));
}
template <double BridgeMode::*member>
void scale_modes(Subject& subject, double factor) {
    for (BridgeMode& mode : subject.preset.bridge.modes) mode.*member *= factor;
}

Nominal middle_force(const Subject& subject) { return sim::middle_force(subject.preset.player); }
void scale_forces(Subject& subject, double factor) {
    subject.preset.player.force_low *= factor;
    subject.preset.player.force_high *= factor;
}
Nominal force_width(const Subject& subject) {
    return subject.preset.player.force_high / subject.preset.player.force_low;
}
/// The middle stays.  A range so narrow that it would turn round ends as a single force.
void scale_force_width(Subject& subject, double factor) {
    Player& player = subject.preset.player;
    const double narrow = std::sqrt(std::max(factor, player.force_low / player.force_high));
    player.force_low /= narrow;
    player.force_high *= narrow;
}
void scale_speaking(Subject& subject, double factor) {
    subject.preset.player.speak_time *= factor;
    subject.preset.player.speak_periods *= factor;
}

constexpr ConstantGroup of_string = ConstantGroup::string;
constexpr ConstantGroup of_body = ConstantGroup::body;
constexpr ConstantGroup of_player = ConstantGroup::player;
constexpr std::string_view memory = "from memory";
constexpr std::string_view habit = "common practice";

constexpr std::array table{
    thermal<&ThermalContact::layer, 6>("rosin_layer", "thickness of the rosin layer", "um"),
    thermal<&ThermalContact::spot_radius, 6>("rosin_spot_radius", "radius of a spot of contact", "um"),
    thermal<&ThermalContact::specific_heat, 0>("rosin_specific_heat", "specific heat of rosin", "J/(kg K)"),
    thermal<&ThermalContact::conductivity, 0>("rosin_conductivity", "heat conductivity of rosin", "W/(m K)"),
    thermal<&ThermalContact::contact_pressure, -6>("contact_pressure", "pressure in the spots of contact", "MPa"),

    damping<&Damping::friction>("loss_friction", "string's inner friction (eta_F)", ""),
    damping<&Damping::air>("loss_air", "string's loss to the air (eta_A)", "1/s"),
    damping<&Damping::bending>("loss_bending", "string's loss in bending (eta_E)", ""),
    Constant{"loss_all", "string's three losses together", "(eta_F)", of_string, "", memory,
             damping_value<&Damping::friction>, scale_losses},
    damping<&Damping::torsion_q>("torsion_q", "Q of torsional partials", ""),
    Constant{"shear_modulus", "shear modulus of the string", "(Zt/Z0)", of_string, "", memory, torsion_ratio,
             scale_shear},
    Constant{"bending_stiffness", "Young's modulus in bending", "(1e6 B, open)", of_string, "", memory,
             inharmonicity_of, scale_bending},

    Constant{"finger_q", "Q of a bare finger's end", "", ConstantGroup::stop, "/finger_q", memory, finger_q,
             scale_finger},

    Constant{"body_mass", "masses of the body's modes", "kg (mean)", of_body, "/bridge", memory,
             mode_mean<&BridgeMode::mass>, scale_modes<&BridgeMode::mass>},
    Constant{"body_q", "Q of the body's modes", "(mean)", of_body, "/bridge", memory, mode_mean<&BridgeMode::q>,
             scale_modes<&BridgeMode::q>},

    Constant{"force_range", "bow forces, the whole range", "N (middle)", of_player, "/player", habit, middle_force,
             scale_forces},
    Constant{"force_width", "width of the range of forces", "(greatest / least)", of_player, "/player", habit,
             force_width, scale_force_width},
    player<&Player::speed, 0>("speed", "bow speed", "m/s"),
    player<&Player::rise, 3>("rise", "time in which the speed rises", "ms"),
    player<&Player::wander, 3>("wander", "how far the bow strays", "mm"),
    player<&Player::pitch_tolerance, 0>("pitch_tolerance", "pitch still taken as the note", "cents"),
    player<&Player::tone_level, 0>("tone_level", "level loss still taken as tone", "dB"),
    Constant{"speak_time", "time allowed to speak", "ms", of_player, "/player", habit,
             player_value<&Player::speak_time, 3>, scale_speaking},
};

/// Every other member of ThermalContact and Damping has an entry above that changes it alone; a test holds that.
constexpr std::array<LeftOut, 2> left_out{
    {{ConstantGroup::rosin, "density", "only its product with the specific heat counts"},
     {ConstantGroup::rosin, "area_grows_with_force", "a choice, not a number"}}};

constexpr std::array<std::string_view, 5> group_names{"rosin", "string", "stop", "body", "player"};

}  // namespace

std::string_view constant_group_name(ConstantGroup group) { return group_names[static_cast<std::size_t>(group)]; }

std::span<const Constant> remembered_constants() { return table; }

std::span<const LeftOut> left_out_constants() { return left_out; }

std::vector<const Constant*> constants_named(const std::string& name, const std::string& where) {
    std::vector<const Constant*> found;
    std::vector<std::string> known{"all"};
    for (const std::string_view group : group_names) known.emplace_back(group);
    for (const Constant& constant : table) {
        known.emplace_back(constant.name);
        if (name == "all" || name == constant.name || name == constant_group_name(constant.group))
            found.push_back(&constant);
    }
    if (!found.empty()) return found;
    const std::string nearest = nearest_name(name, known);
    throw analysis::InputError(where, "unknown constant \"" + one_line(name) + "\"; " +
                                          (nearest.empty() ? "" : "did you mean " + nearest + "? ") +
                                          "Constants and groups: " + listed(known));
}

std::string constant_source(const Constant& constant, const Preset& preset) {
    std::string pointer(constant.pointer);
    while (!pointer.empty()) {
        if (const auto found = preset.sources.find(pointer); found != preset.sources.end()) return found->second;
        pointer.erase(pointer.rfind('/'));
    }
    return std::string(constant.source);
}

std::string nominal_text(const Constant& constant, const Subject& subject) {
    const std::optional<double> value = constant.nominal(subject);
    if (!value) return "-";
    return short_number(*value) + (constant.unit.empty() ? "" : " " + std::string(constant.unit));
}

}  // namespace sim
