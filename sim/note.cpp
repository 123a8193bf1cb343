// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/note.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace sim {

namespace {

constexpr double farthest_ratio = 0.45;         // past the middle bow and stop change roles
constexpr double slip_samples = 16.0;           // within contact ratio * period
constexpr double runaway_limit = 0.8;           // growth of the release within one sample, 1 + x + x^2/2 for exp(x)
constexpr double least_sample_rate = 150000.0;  // a short thick string's sections keep their delay
constexpr std::array<std::string_view, 3> end_names{"nut", "fret", "finger"};

/// Greatest mu |mu'| of the thermal table, 1/K.
double steepest_runaway(const kernel::Contact& contact) {
    double steepest = 0.0;
    for (std::size_t i = 1; i < contact.table.size(); ++i) {
        const double slope = (contact.table[i - 1] - contact.table[i]) / contact.table_step;
        steepest = std::max(steepest, contact.table[i - 1] * slope);
    }
    return steepest;
}

double runaway_rate(const Note& note) {
    if (note.friction.law != FrictionLaw::thermal) return 0.0;
    double yield = 0.5 / wave_impedance(note.string);
    if (note.string.torsion_impedance > 0.0) yield += 0.5 / note.string.torsion_impedance;
    return steepest_runaway(note.contact) * note.force_high * yield / note.contact.heat.capacity / runaway_limit;
}

/// m across the outermost contact points; 0 for a single one.
double hair_across(const Note& note) {
    const int points = note.bow.hair_points;
    return note.hair_width * note.bow.hair_in_use * (points - 1.0) / points;
}

}  // namespace

std::string_view stop_end_name(StopEnd end) { return end_names[static_cast<std::size_t>(end)]; }

std::optional<StopEnd> stop_end_from_name(std::string_view name) {
    for (std::size_t i = 0; i < end_names.size(); ++i)
        if (end_names[i] == name) return static_cast<StopEnd>(i);
    return std::nullopt;
}

StopEnd usual_end(const Preset& preset, double stop) {
    if (stop <= 0.0) return StopEnd::nut;
    return stop <= preset.frets + 0.5 ? StopEnd::fret : StopEnd::finger;
}

Note make_note(const Preset& preset, const PresetString& string, double stop, std::optional<StopEnd> end) {
    return make_note(preset, open_string(preset, string), stop, end);
}

Note make_note(const Preset& preset, const String& open, double stop, std::optional<StopEnd> end) {
    const double last = last_stop(preset);
    if (!(stop >= 0.0) || stop > last)
        throw analysis::InputError("stop", short_number(stop) + " semitones lies off the board; " + preset.name +
                                               " takes 0 (open) to " + short_number(last));
    Note note{.string = stopped(open, stop), .open_length = open.length, .stop = stop};
    note.end = end.value_or(usual_end(preset, stop));
    note.hair_width = preset.hair_width;
    note.floor = contact_floor(preset);
    note.force_high = preset.player.force_high;
    note.bridge = preset.bridge;
    note.friction = preset.friction;
    note.bow = preset.bow;
    note.contact = kernel_contact(note.friction);
    const double end_q = note.end == StopEnd::finger && open.damping != Damping{} ? preset.finger_q : 0.0;
    note.transverse = design_transverse_loop(note.string, end_q);
    if (note.string.torsion_impedance > 0.0) note.torsional = design_torsional_loop(note.string);
    return note;
}

double farthest_contact(const Note& note) { return farthest_ratio * note.string.length; }

bool can_stand(const Note& note, double contact_point) {
    return contact_point >= note.floor && contact_point <= farthest_contact(note);
}

void check_contact(const Note& note, double contact_point) {
    if (can_stand(note, contact_point)) return;
    const auto mm = [](double metres) { return short_number(analysis::mm_from_metres(metres)); };
    const std::string fault = contact_point < note.floor ? " mm lies under the floor (half the hair's width + 2 mm)"
                                                         : " mm lies past 0.45 of the sounding length";
    throw analysis::InputError("contact point", mm(contact_point) + fault + "; this note takes " + mm(note.floor) +
                                                    " to " + mm(farthest_contact(note)) + " mm from the bridge");
}

double sample_rate(const Note& note, double contact_point, int times) {
    const double transit = contact_point / wave_speed(note.string);  // bow to bridge
    const double nearest = contact_point - 0.5 * hair_across(note);
    double rate = std::max({least_sample_rate, 0.5 * slip_samples / transit, runaway_rate(note),
                            1.05 * wave_speed(note.string) / nearest});
    if (note.string.torsion_impedance > 0.0) rate = std::max(rate, 1.05 * note.string.torsion_speed / nearest);
    return std::ceil(rate * transit) * times / transit;
}

kernel::Note kernel_note(const Note& note, double sample_rate) {
    kernel::Note out{.sample_rate = sample_rate};
    out.transverse = {wave_impedance(note.string), wave_speed(note.string), note.transverse};
    if (note.string.torsion_impedance > 0.0)
        out.torsional = {note.string.torsion_impedance, note.string.torsion_speed, note.torsional};
    out.bridge = note.bridge;
    out.contact = note.contact;
    out.hair = {.points = note.bow.hair_points,
                .width = note.hair_width * note.bow.hair_in_use,
                .stiffness = note.bow.stiffness * note.bow.hair_in_use,
                .resistance = note.bow.resistance * note.bow.hair_in_use,
                .mass = note.bow.mass * note.bow.hair_in_use,
                .upright_resistance = note.bow.upright_resistance,
                .bridge_lean = note.bow.bridge_lean};
    out.length = note.string.length;
    return out;
}

}  // namespace sim
