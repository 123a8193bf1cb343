// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "analysis/decimate.hpp"
#include "analysis/partials.hpp"
#include "analysis/pitch.hpp"
#include "sim/stroke.hpp"

#include <optional>
#include <vector>

/// The open D string of a cello, on which published and derived values are checked, and small tools for them.
///
/// source   [Mansour2016], string inputs from memory: f0 146.8 Hz, T 111 N, L 0.6875 m, EI 3e-4 N m^2, Zt 1.8 kg/s.
///          Torsional waves five times as fast as transverse ones: from memory.  Losses of a steel core and torsional
///          Q 45 ([Woodhouse1999]): from memory.
namespace tests {

inline constexpr double cello_d_hz = 146.8;
inline constexpr double cello_d_ratio = 0.0899;  ///< contact point / length, unless said otherwise

/// Which parts of the string's physics are in force.
struct Parts {
    bool losses = true;
    bool torsion = true;
    bool stiffness = true;
};

inline sim::String cello_d(const Parts& parts) {
    sim::String string{.name = "D", .length = 0.6875, .tension = 111.0};
    const double speed = 2.0 * string.length * cello_d_hz;
    string.mass_per_length = string.tension / (speed * speed);
    if (parts.stiffness) string.bending_stiffness = 3e-4;
    if (parts.torsion) {
        string.torsion_impedance = 1.8;
        string.torsion_speed = 5.0 * speed;
    }
    if (parts.losses) string.damping = {.friction = 3e-4, .air = 1.0, .bending = 2e-3, .torsion_q = 45.0};
    return string;
}

/// Flexible, with every partial's Q at 500: light, and enough to round the corner so that ripples between bow and
/// bridge die.  With far less, a law of slip speed and no twist, the held window is riddled with islands.
inline sim::String lightly_damped_d(bool torsion) {
    sim::String string = cello_d({.losses = true, .torsion = torsion, .stiffness = false});
    string.damping = {.friction = 2e-3, .air = 0.0, .bending = 0.0, .torsion_q = 45.0};
    return string;
}

inline sim::Bridge rigid_bridge() { return {}; }
inline sim::Bridge resistive_bridge(double kg_s) {
    return {.kind = sim::BridgeKind::resistance, .resistance = kg_s, .modes = {}};
}

/// The published fit of steady sliding as a law of slip speed.
inline sim::Friction fitted_law() { return {.law = sim::FrictionLaw::double_exponential}; }

inline sim::Note note_of(const sim::String& string, const sim::Bridge& bridge, const sim::Friction& friction) {
    sim::Note note{.string = string, .open_length = string.length};
    note.hair_width = 0.010;
    note.floor = 0.007;
    note.force_high = 0.8;
    note.bridge = bridge;
    note.friction = friction;
    note.contact = sim::kernel_contact(friction);
    note.transverse = sim::design_transverse_loop(string, 0.0);
    if (string.torsion_impedance > 0.0) note.torsional = sim::design_torsional_loop(string);
    return note;
}

/// A stroke that begins in the ideal Helmholtz motion and runs long enough to be judged (sim::held_duration).
struct Bowing {
    double ratio;  ///< contact point / length
    double force;  ///< N
    double speed;  ///< m/s
};
inline sim::Stroke held_stroke(const sim::Note& note, const Bowing& bowing) {
    return {.contact_point = bowing.ratio * note.string.length,
            .force = bowing.force,
            .speed = bowing.speed,
            .duration = sim::held_duration(note),
            .beginning = sim::Beginning::held};
}

/// The end of a signal, and its harmonics at its own measured pitch.
struct Spectrum {
    double pitch = 0.0;  ///< Hz; 0 where there is none
    std::vector<analysis::Partial> partials;
};
inline Spectrum spectrum_of(std::span<const double> samples, double sample_rate, double expected_hz) {
    constexpr double heard_for = 0.5;  // s
    const auto wanted = static_cast<std::size_t>(heard_for * sample_rate);
    if (samples.size() > wanted) samples = samples.last(wanted);
    const analysis::Signal heard = analysis::decimated_for_analysis(samples, sample_rate);
    const auto pitch =
        analysis::measure_pitch(heard.samples, heard.sample_rate, analysis::pitch_range_around(expected_hz));
    if (!pitch) return {};
    return {pitch->hz, analysis::measure_partials(heard.samples, heard.sample_rate, {pitch->hz, 16000.0})};
}

}  // namespace tests
