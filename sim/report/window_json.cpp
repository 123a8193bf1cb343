// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/csv.hpp"
#include "sim/report/parts.hpp"
#include "sim/report/run_part.hpp"
#include "sim/report/window_report.hpp"

namespace sim::report {
namespace {

Json motion_part(const std::optional<Motion>& motion) {
    if (!motion) return nullptr;
    return motion_name(*motion);
}

Json intervals_part(const ForceWindow& window) {
    Json part = Json::array();
    for (const ForceInterval& interval : window.intervals) {
        part.push_back({{"low_newtons", rounded(interval.low)},
                        {"high_newtons", rounded(interval.high)},
                        {"below", motion_part(interval.below)},
                        {"above", motion_part(interval.above)}});
    }
    return part;
}

/// Adds the main interval's ends under these keys, null where nothing plays.
struct EndKeys {
    const char* low;
    const char* high;
};
void add_main(Json& part, const std::optional<ForceWindow>& window, const EndKeys& keys) {
    part[keys.low] = nullptr;
    part[keys.high] = nullptr;
    if (!window || !window->main) return;
    const ForceInterval& interval = window->intervals[*window->main];
    part[keys.low] = rounded(interval.low);
    part[keys.high] = rounded(interval.high);
}

Json point_part(const WindowPoint& point, const Note& note) {
    Json part;
    add_place(part, point.security.contact_point, note);
    add_security(part, point.security);
    add_main(part, point.speaking, {"force_min_newtons", "force_max_newtons"});
    part["one_interval"] = point.speaking.intervals.size() == 1;
    if (point.speaking.intervals.size() != 1) part["speaking_intervals"] = intervals_part(point.speaking);
    part["forgiveness_db"] = rounded(forgiveness(point.speaking));
    add_main(part, point.held, {"held_min_newtons", "held_max_newtons"});
    part["schelleng_min_newtons"] = rounded(point.limits.schelleng_min);
    part["schelleng_max_newtons"] = rounded(point.limits.schelleng_max);
    part["admittance_min_newtons"] = rounded(point.limits.admittance_min);
    part["friction_drop"] = rounded(point.limits.friction_drop);
    part["force_newtons"] = rounded(point.middle.stroke.force);
    add_heard(part, point.middle, note);
    return part;
}

Json points_part(const Asked& asked, const Window& window) {
    Json part = Json::array();
    for (const WindowPoint& point : window.points) part.push_back(point_part(point, asked.note));
    return part;
}

/// Every stroke played, contact point by contact point, with what it sounds like and what is wrong with it.
Json map_part(const Asked& asked, const Window& window) {
    Json part = Json::array();
    for (std::size_t i = 0; i < window.map.strokes.size(); ++i) {
        const StrokeResult& result = window.map.strokes[i];
        Json cell;
        cell["contact_mm"] = rounded_mm(result.stroke.contact_point);
        cell["force_newtons"] = rounded(result.stroke.force);
        add_heard(cell, result, asked.note);
        cell["fault"] = fault_part(window.faults[i]);
        part.push_back(std::move(cell));
    }
    return part;
}

Json note_of(const Asked& asked) {
    Json part = note_part(asked.note, asked.reference_pitch);
    add_finger_step(part, asked.note);
    return part;
}

std::string csv_of(const Json& points) {
    return csv_text(points, {"contact_mm",
                             "contact_ratio",
                             "security",
                             "speaks_share",
                             "tone_share",
                             "fails_by",
                             "force_min_newtons",
                             "force_max_newtons",
                             "one_interval",
                             "forgiveness_db",
                             "held_min_newtons",
                             "held_max_newtons",
                             "schelleng_min_newtons",
                             "schelleng_max_newtons",
                             "admittance_min_newtons",
                             "friction_drop",
                             "force_newtons",
                             "motion",
                             "level_db",
                             "brightness_f0",
                             "pitch_cents",
                             "clarity_db"});
}

}  // namespace

std::string window_json(const Asked& asked, const Window& window) {
    Json document;
    document["run"] = run_part(asked.run);
    document["note"] = note_of(asked);
    document["points"] = points_part(asked, window);
    document["map"] = map_part(asked, window);
    add_band(document, window.band, asked.note, asked.player);
    return json_text(document);
}

std::string window_csv(const Asked& asked, const Window& window) { return csv_of(points_part(asked, window)); }

std::string window_map_csv(const Asked& asked, const Window& window) {
    return csv_text(map_part(asked, window), {"contact_mm", "force_newtons", "motion", "fault", "level_db",
                                              "brightness_f0", "pitch_cents", "clarity_db"});
}

std::string here_json(const Asked& asked, const HereResult& here) {
    const Json point = point_part(here.point, asked.note);
    Json document;
    document["run"] = run_part(asked.run);
    document["note"] = note_of(asked);
    document["here"] = point;
    document["here"]["from_near_mm"] = rounded_mm(here.from_near);
    document["here"]["from_far_mm"] = rounded_mm(here.from_far);
    document["here"]["advice"] = here.advice;
    document["points"] = Json::array({point});
    add_band(document, here.band, asked.note, asked.player);
    return json_text(document);
}

std::string here_csv(const Asked& asked, const HereResult& here) {
    return csv_of(Json::array({point_part(here.point, asked.note)}));
}

}  // namespace sim::report
