// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/tone_values.hpp"

#include "analysis/units.hpp"

namespace sim::report {

std::optional<double> level_db(const StrokeResult& stroke) {
    if (!(stroke.tone.level > 0.0)) return std::nullopt;
    return analysis::db_from_ratio(stroke.tone.level);  // re 1 N
}

std::optional<double> pitch_cents(const StrokeResult& stroke, const Note& note) {
    if (!stroke.tone.pitch) return std::nullopt;
    return analysis::cents_between(*stroke.tone.pitch, fundamental(note.string));
}

std::optional<double> brightness_f0(const StrokeResult& stroke) {
    if (!stroke.tone.pitch || !(stroke.tone.centroid > 0.0)) return std::nullopt;
    return stroke.tone.centroid / *stroke.tone.pitch;
}

}  // namespace sim::report
