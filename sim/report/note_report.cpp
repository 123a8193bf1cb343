// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/note_report.hpp"

#include "analysis/units.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/table.hpp"
#include "sim/text.hpp"

#include <array>
#include <charconv>

namespace sim::report {
namespace {

/// Depth and rate of the level's beating, and the body mode that makes it a wolf; null for none.
Json warble_part(const Beating& beating) {
    if (!beating.warble) return nullptr;
    Json part;
    part["depth_db"] = rounded(beating.warble->depth_db);
    part["rate_hz"] = rounded(beating.warble->rate_hz);
    part["body_mode_hz"] = rounded(beating.body_mode);
    part["wolf"] = is_wolf(beating);
    return part;
}

/// What was heard and felt, and the stroke that made it.
Json stroke_part(const Asked& asked, const NoteAnswer& answer) {
    const StrokeResult& result = answer.stroke;
    const Tone& tone = result.tone;
    Json part;
    part["motion"] = motion_name(result.verdict.motion);
    part["speaks"] = answer.speaks;
    part["speak_ms"] = rounded_ms(result.speak_time);
    part["first_slip_ms"] = rounded_ms(result.verdict.first_slip);
    part["pitch_hz"] = rounded(tone.pitch);
    part["pitch_cents"] = rounded(pitch_cents(result, asked.note));
    part["level_db"] = rounded(level_db(result));
    part["brightness_f0"] = rounded(brightness_f0(result));
    part["centroid_hz"] = tone.pitch && tone.centroid > 0.0 ? rounded(tone.centroid) : Json(nullptr);
    part["clarity_db"] = rounded(tone.clarity);
    part["slip_fraction"] = rounded(result.verdict.slip_fraction);
    part["slips_per_period"] = rounded(result.verdict.slips_per_period);
    part["bridge_force_peak_to_peak_newtons"] = rounded(tone.bridge_peak_to_peak);
    part["force_newtons"] = rounded(result.stroke.force);
    part["speed_m_s"] = rounded(result.stroke.speed);
    add_place(part, result.stroke.contact_point, asked.note);
    part["schelleng_min_newtons"] = rounded(answer.limits.schelleng_min);
    part["schelleng_max_newtons"] = rounded(answer.limits.schelleng_max);
    part["admittance_min_newtons"] = rounded(answer.limits.admittance_min);
    part["friction_drop"] = rounded(answer.limits.friction_drop);
    part["warble_listened"] = answer.beating.listened;
    part["warble"] = warble_part(answer.beating);
    part["duration_s"] = rounded(result.stroke.duration);
    part["sample_rate_hz"] = rounded(result.sample_rate);
    return part;
}

std::string warble_cell(const Beating& beating) {
    if (!beating.listened) return "not listened for (give --seconds " + short_number(wolf_least_time) + " or more)";
    if (!beating.warble) return "none";
    const std::string words = fixed_number(beating.warble->depth_db, 1) + " dB, " +
                              fixed_number(beating.warble->rate_hz, 1) + " times a second";
    if (!is_wolf(beating)) return words;
    return words + ": a wolf, on the body's mode of " + fixed_number(*beating.body_mode, 0) + " Hz";
}

std::string with_unit(const std::string& cell, const char* unit) { return cell == "-" ? cell : cell + " " + unit; }

std::string ms_cell(const std::optional<double>& seconds) {
    return seconds ? fixed_number(analysis::ms_from_seconds(*seconds), 0) + " ms" : "-";
}

void append(std::string& text, double value) {
    constexpr int digits = 6;
    std::array<char, 64> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value == 0.0 ? 0.0 : value,
                                   std::chars_format::general, digits);  // never -0
    text.append(buffer.data(), end.ptr);
}

}  // namespace

std::string note_json(const Asked& asked, const NoteAnswer& answer) {
    Json document;
    document["run"] = run_part(asked.run);
    document["note"] = note_part(asked.note, asked.reference_pitch);
    add_finger_step(document["note"], asked.note);
    document.update(stroke_part(asked, answer));
    return json_text(document);
}

std::string note_csv(const Asked& asked, const NoteAnswer& answer) {
    Json row = note_part(asked.note, asked.reference_pitch);
    row.erase("pitch_hz");  // of the stroke, below; "nominal_hz" is the note's
    row["nominal_hz"] = rounded(fundamental(asked.note.string));
    row.update(stroke_part(asked, answer));
    return csv_text(Json::array({row}), {"string",
                                         "stop_semitones",
                                         "stop_end",
                                         "pitch_name",
                                         "nominal_hz",
                                         "stop_from_nut_mm",
                                         "sounding_length_mm",
                                         "contact_mm",
                                         "contact_ratio",
                                         "force_newtons",
                                         "speed_m_s",
                                         "motion",
                                         "speaks",
                                         "speak_ms",
                                         "first_slip_ms",
                                         "pitch_hz",
                                         "pitch_cents",
                                         "level_db",
                                         "brightness_f0",
                                         "centroid_hz",
                                         "clarity_db",
                                         "slip_fraction",
                                         "slips_per_period",
                                         "bridge_force_peak_to_peak_newtons",
                                         "schelleng_min_newtons",
                                         "schelleng_max_newtons",
                                         "admittance_min_newtons",
                                         "warble/depth_db",
                                         "warble/rate_hz",
                                         "warble/body_mode_hz",
                                         "duration_s",
                                         "sample_rate_hz"});
}

std::string note_table(const Asked& asked, const NoteAnswer& answer) {
    const StrokeResult& result = answer.stroke;
    const Tone& tone = result.tone;
    const double place = result.stroke.contact_point;
    std::string motion(motion_name(result.verdict.motion));
    for (char& c : motion)
        if (c == '_') c = ' ';
    const auto bright = brightness_f0(result);
    return note_heading(asked) + "\n\n" +
           value_lines(
               {{"bow at", mm_cell(place, 1) + " mm, " + fixed_number(place / asked.player.finger_width, 1) +
                               " finger-widths, " + fixed_number(place / asked.note.string.length, 3) +
                               " of the string"},
                {"bow force", newtons_cell(result.stroke.force) + " N"},
                {"bow speed", short_number(result.stroke.speed) + " m/s"},
                {"motion", motion + (answer.speaks ? ", speaks in time" : ", does not speak in time")},
                {"time to speak", result.speak_time ? ms_cell(result.speak_time) + " after the first slip" : "-"},
                {"pitch", tone.pitch ? fixed_number(*tone.pitch, 2) + " Hz, " +
                                           fixed_cell(pitch_cents(result, asked.note), 1) + " cents from the note"
                                     : "-"},
                {"level", with_unit(fixed_cell(level_db(result), 1), "dB (re 1 N at the bridge, as radiated)")},
                {"brightness",
                 bright ? fixed_number(tone.centroid, 0) + " Hz, " + fixed_number(*bright, 2) + " times the fundamental"
                        : "-"},
                {"clarity", fixed_number(tone.clarity, 1) + " dB"},
                {"slipping", percent_cell(result.verdict.slip_fraction) + " % of the time"},
                {"bridge force", newtons_cell(tone.bridge_peak_to_peak) + " N from peak to peak"},
                {"warble", warble_cell(answer.beating)},
                {"closed forms", "least " + with_unit(newtons_cell(answer.limits.schelleng_min), "N") +
                                     " (over this bridge " +
                                     with_unit(newtons_cell(answer.limits.admittance_min), "N") + "), greatest " +
                                     newtons_cell(answer.limits.schelleng_max) + " N"}});
}

std::string waveform_csv(const Played& played) {
    const kernel::Record& record = played.record;
    std::string text =
        "time_s,bridge_force_newtons,bow_point_velocity_m_s,friction_force_newtons,slipping,temperature_k\n";
    for (std::size_t i = 0; i < record.velocity.size() && i < record.bridge_force.size(); ++i) {
        append(text, static_cast<double>(i) / played.result.sample_rate);
        text += ',';
        append(text, record.bridge_force[i]);
        text += ',';
        append(text, record.velocity[i]);
        text += ',';
        append(text, record.friction[i]);
        text += record.slipping[i] != 0 ? ",1," : ",0,";
        append(text, record.temperature[i]);
        text += '\n';
    }
    return text;
}

}  // namespace sim::report
