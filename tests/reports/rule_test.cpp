// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/rule.hpp"
#include "analysis/units.hpp"
#include "sim/climb.hpp"
#include "sim/text.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace {

using namespace sim;

const Workers workers{.threads = 2, .progress = {}};

std::vector<double> stops_from_five(const Preset& preset, double step) {
    std::vector<double> stops{0.0};  // where the bow is left behind
    for (double stop = 5.0; stop <= last_stop(preset); stop += step) stops.push_back(stop);
    return stops;
}

/// Best contact point against the stop, from stop 5 up.
double rule_correlation(const Climb& climb) {
    std::vector<double> stops, best;
    for (const ClimbStop& stop : climb.stops) {
        if (stop.note.stop < 5.0 || !stop.band.best) continue;
        stops.push_back(stop.note.stop);
        best.push_back(*stop.band.best);
    }
    return rank_correlation(stops, best);
}

std::string mm(double metres) { return fixed_number(analysis::mm_from_metres(metres), 0); }

/// What bounds the best stretch at the octave, on the bridge's side and on the other.
std::string bounds(const Climb& climb) {
    for (const ClimbStop& stop : climb.stops)
        if (stop.note.stop >= 12.0 && stop.band.stretch)
            return std::string(fault_name(stop.band.stretch->near_bound)) + " / " +
                   std::string(fault_name(stop.band.stretch->far_bound));
    return "-";
}

std::string row(const std::string& name, const Climb& climb) {
    std::string text = "| " + name + " | ";
    for (double wanted : {0.0, 7.0, 13.0, 19.0}) {
        const auto at = std::ranges::find_if(climb.stops, [&](const ClimbStop& s) { return s.note.stop == wanted; });
        const bool there = at != climb.stops.end() && at->band.best;
        text += (there ? mm(*at->band.best) + " (" + fixed_number(at->band.at_best.security, 2) + ")" : "-") + " | ";
    }
    const auto fails = std::ranges::find_if(climb.stops, [](const ClimbStop& s) {
        return s.left_behind.security.security < 0.5 * s.band.at_best.security;
    });
    text += fixed_number(rule_correlation(climb), 2) + " | " + bounds(climb) + " | ";
    return text +
           (fails == climb.stops.end() ? "never"
                                       : short_number(fails->note.stop) + ": " +
                                             std::string(fault_name(fails->left_behind.security.fails_by))) +
           " |\n";
}

struct Variant {
    std::string name;
    std::function<void(Player&)> change;
};

std::vector<Variant> variants() {
    std::vector<Variant> list{{"as shipped", [](Player&) {}}};
    for (double db : {3.0, 9.0, 12.0})
        list.push_back({"tone level " + short_number(db) + " dB", [db](Player& p) { p.tone_level = db; }});
    list.push_back({"no tone limits (speaking only)", [](Player& p) {
                        p.tone_level = 200.0;
                        p.tone_brightness_ratio = 0.0;
                        p.pitch_tolerance = 1000.0;
                    }});
    for (double cents : {10.0, 40.0})
        list.push_back(
            {"pitch tolerance " + short_number(cents) + " cents", [cents](Player& p) { p.pitch_tolerance = cents; }});
    for (double wander : {0.0, 6.0})
        list.push_back({"wander " + short_number(wander) + " mm", [wander](Player& p) { p.wander = wander * 1e-3; }});
    return list;
}

const char* heading =
    "Best contact point, mm (its security), as the division bass viol's top string is stopped higher; the rank "
    "correlation of\n"
    "best contact point with the stop from stop 5 up; what bounds the best stretch at the first stop from the octave "
    "up (bridge's side /\n"
    "finger's side); and the first stop at which a bow left behind is less than half as secure as one that follows.\n\n"
    "| changed | open | 7 | 13 | 19 | rank correlation | bounds | left behind fails from "
    "|\n|---|---|---|---|---|---|---|---|\n";

/// Does the best contact point step back by a tenth between two stops, seen twice as finely?
bool steps_back_on_finer_grid(const Preset& preset, double before, double now) {
    const Climb fine = climb_places(climb_maps(preset, preset.strings[0], preset.player,
                                               {.stops = {before, now}, .grid = {80, 16, 0}, .end = {}}, workers),
                                    preset.player);
    return *fine.stops[1].band.best > 1.1 * *fine.stops[0].band.best;
}

}  // namespace

/// source   common practice, no source: the bow moves in with the sounding length
/// expects  over stops 5 to the end of the board the best contact point falls: rank correlation <= -0.9, a step back of
///          over 10 % only next to a body mode within 50 cents (places of the usual grid lie 10 % apart, so a step
///          is looked at again on a grid twice as fine); a bow left behind falls under half security, its fault named
/// margin   as said; nothing in the simulation knows of the rule
TEST(RuleTest, BestContactPointMovesInAsTheStopClimbs) {
    const Preset preset = find_preset("division_bass_viol");
    const PresetString& string = preset.strings[0];
    const std::vector<StrokeMap> maps =
        climb_maps(preset, string, preset.player, {.stops = stops_from_five(preset, 1.0), .end = {}}, workers);
    const Climb climb = climb_places(maps, preset.player);
    EXPECT_LE(rule_correlation(climb), -0.9);
    for (std::size_t i = 2; i < climb.stops.size(); ++i) {
        const ClimbStop& before = climb.stops[i - 1];
        const ClimbStop& now = climb.stops[i];
        ASSERT_TRUE(now.band.best.has_value()) << now.note.stop;
        if (*now.band.best <= 1.1 * *before.band.best) continue;
        const bool mode = body_mode_near(preset.bridge, fundamental(before.note.string), 50.0) ||
                          body_mode_near(preset.bridge, fundamental(now.note.string), 50.0);
        if (mode || !steps_back_on_finer_grid(preset, before.note.stop, now.note.stop)) continue;
        ADD_FAILURE() << "best steps back from " << mm(*before.band.best) << " to " << mm(*now.band.best)
                      << " mm at stop " << now.note.stop;
    }
    const bool fails = std::ranges::any_of(climb.stops, [](const ClimbStop& s) {
        return s.left_behind.security.security < 0.5 && s.left_behind.security.fails_by != Fault::none;
    });
    EXPECT_TRUE(fails);

    std::string report = heading;
    for (const Variant& variant : variants()) {
        Player player = preset.player;
        variant.change(player);
        report += row(variant.name, climb_places(maps, player));
    }
    for (double factor : {1.5, 1.0 / 1.5}) {
        Preset changed = preset;
        changed.friction.thermal.layer *= factor;
        const ClimbPlan plan{.stops = stops_from_five(preset, 2.0), .end = {}};
        report += row(factor > 1.0 ? "rosin layer x 1.5 (every second stop)" : "rosin layer / 1.5 (every second stop)",
                      climb_places(climb_maps(changed, string, preset.player, plan, workers), preset.player));
    }
    write_report("rule.md", report);
}
