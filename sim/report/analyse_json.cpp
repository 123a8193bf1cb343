// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/recording_warnings.hpp"
#include "analysis/units.hpp"
#include "sim/report/analyse_report.hpp"
#include "sim/report/csv.hpp"
#include "sim/report/json_values.hpp"
#include "sim/report/run_part.hpp"

#include <algorithm>

namespace sim::report {
namespace {

using analysis::db_from_ratio;

Json run_part(const AskedRecording& asked) {
    Json settings = Json::object();
    settings["reference_pitch_hz"] = asked.tuning.reference_pitch;
    settings["temperament"] = temperament_name(asked.tuning.temperament);
    settings["range_hz"] = Json::array({asked.plan.range.lowest, asked.plan.range.highest});
    settings["meant_hz"] = asked.plan.intended_hz > 0.0 ? Json(asked.plan.intended_hz) : Json(nullptr);
    return file_run_part(
        {.command = "analyse", .version = asked.version, .file = asked.file, .file_hash = asked.file_hash}, settings);
}

/// Full scale is 0 dB for the RMS of 1.
Json level_of(double rms) { return rms > 0.0 ? rounded(db_from_ratio(rms)) : Json(nullptr); }

Json recording_part(const analysis::Recording& recording) {
    Json part;
    part["duration_s"] = rounded(recording.duration);
    part["sample_rate_hz"] = rounded(recording.sample_rate);
    part["channels"] = recording.channels;
    part["peak_level_db"] = level_of(recording.loudness.peak);
    part["noise_level_db"] = level_of(recording.noise);
    part["clipped_samples"] = recording.clipped;
    return part;
}

Json partials_part(const analysis::Tone& tone) {
    double strongest = 0.0;
    for (const analysis::Partial& partial : tone.partials) strongest = std::max(strongest, partial.amplitude);
    Json list = Json::array();
    for (std::size_t n = 0; n < tone.partials.size(); ++n) {
        Json part;
        part["number"] = n + 1;
        part["hz"] = rounded(tone.partials[n].hz);
        part["level_db"] = level_of(tone.partials[n].amplitude / std::max(strongest, 1e-300));
        list.push_back(part);
    }
    return list;
}

void add_tone(Json& part, const analysis::Tone& tone, const Tuning& tuning) {
    const TemperedPitch pitch = nearest_pitch(tone.hz, tuning);
    part["pitch_hz"] = rounded(tone.hz);
    part["pitch_name"] = pitch.name;
    part["pitch_cents"] = rounded(pitch.cents);
    part["pitch_stability_cents"] = rounded(tone.stability);
    part["centroid_hz"] = rounded(tone.centroid_hz);
    part["brightness_f0"] = rounded(tone.centroid_hz / tone.hz);
    part["power_centroid_hz"] = rounded(tone.power_centroid_hz);
    part["clarity_db"] = rounded(tone.clarity_db);
}

constexpr std::initializer_list<const char*> tone_keys{
    "pitch_hz",    "pitch_name",    "pitch_cents",       "pitch_stability_cents",
    "centroid_hz", "brightness_f0", "power_centroid_hz", "clarity_db"};

Json note_part(const analysis::RecordedNote& note, const Tuning& tuning) {
    Json part;
    part["start_s"] = rounded(note.span.start);
    part["steady_from_s"] = rounded(note.span.steady_from);
    part["steady_to_s"] = rounded(note.span.steady_to);
    part["end_s"] = rounded(note.span.end);
    for (const char* key : tone_keys) part[key] = nullptr;
    if (note.tone) add_tone(part, *note.tone, tuning);
    part["level_db"] = level_of(note.level);
    part["time_to_clean_ms"] = rounded_ms(note.clean_after);
    part["inharmonicity"] = nullptr;
    part["inharmonicity_error"] = nullptr;
    if (note.tone && note.tone->inharmonicity) {
        part["inharmonicity"] = rounded(note.tone->inharmonicity->b);
        part["inharmonicity_error"] = rounded(note.tone->inharmonicity->error);
    }
    part["motion"] = analysis::heard_motion_name(note.motion.motion);
    part["confidence"] = rounded(note.motion.confidence);
    part["two_or_more_notes"] = note.tone.has_value() && is_polyphonic(note);
    part["clipped_samples"] = note.clipped;
    return part;
}

Json shares_part(const analysis::MotionGuess& guess) {
    Json part;
    for (std::size_t m = 0; m < guess.shares.size(); ++m)
        part[std::string(heard_motion_name(static_cast<analysis::HeardMotion>(m)))] = rounded(guess.shares[m]);
    return part;
}

}  // namespace

std::string analyse_json(const AskedRecording& asked, const analysis::Recording& recording) {
    Json document;
    document["run"] = run_part(asked);
    document["recording"] = recording_part(recording);
    document["notes"] = Json::array();
    for (const analysis::RecordedNote& note : recording.notes) {
        Json part = note_part(note, asked.tuning);
        part["motion_shares"] = shares_part(note.motion);
        part["partials"] = note.tone ? partials_part(*note.tone) : Json::array();
        document["notes"].push_back(part);
    }
    document["warnings"] = recording.warnings;
    return json_text(document);
}

std::string analyse_csv(const AskedRecording& asked, const analysis::Recording& recording) {
    Json rows = Json::array();
    for (const analysis::RecordedNote& note : recording.notes) rows.push_back(note_part(note, asked.tuning));
    return csv_text(rows, {"start_s",     "steady_from_s",    "steady_to_s",       "end_s",
                           "pitch_hz",    "pitch_name",       "pitch_cents",       "pitch_stability_cents",
                           "centroid_hz", "brightness_f0",    "power_centroid_hz", "clarity_db",
                           "level_db",    "time_to_clean_ms", "inharmonicity",     "inharmonicity_error",
                           "motion",      "confidence",       "two_or_more_notes", "clipped_samples"});
}

}  // namespace sim::report
