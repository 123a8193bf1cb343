// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/speeds.hpp"
#include "analysis/units.hpp"
#include "sim/text.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

namespace {

using namespace sim;

const SpeedPlan plan{.stops = {12.0, 19.0}, .speeds = {0.05, 0.1, 0.2, 0.4}, .end = {}};

std::string mm(double metres) { return fixed_number(analysis::mm_from_metres(metres), 0); }

/// "34 (0.42), 29–50"
std::string cell_of(const SpeedRow& row) {
    if (!row.band.best) return "-";
    std::string text = mm(*row.band.best) + " (" + fixed_number(row.band.at_best.security, 2) + ")";
    if (row.place()) text += ", " + mm(row.place()->near) + "–" + mm(row.place()->far);
    return text;
}

/// A line for each stop: the cells of one rule, slow to quick.
std::string lines_of(const SpeedStudy& study, FrictionLaw law, ForceRule rule) {
    std::string lines;
    for (const double stop : plan.stops) {
        lines += "| " + std::string(friction_law_name(law)) + " | " + short_number(stop) + " | " +
                 (rule == ForceRule::same_forces ? "same forces" : "force with speed") + " |";
        for (const SpeedRow& row : study.rows)
            if (row.rule == rule && row.note.stop == stop) lines += " " + cell_of(row) + " |";
        lines += "\n";
    }
    return lines;
}

}  // namespace

/// source   derived: with Coulomb friction strokes of one force / speed differ by a factor only; no outside value
/// expects  the same place and security at a quarter, half and double speed with force in proportion, under Coulomb
///          friction; how far the other laws are from that is reported, not asked
TEST(SpeedsReport, HowFarEachLawOfFrictionIsFromScaling) {
    std::string report =
        "Best contact point in mm, its security in brackets, its most secure stretch, against bow speed.\n"
        "Division bass viol, top string, octave and an octave and a fifth; 24 contact points x 8 forces.\n\n"
        "| law | stop | forces | 0.05 m/s | 0.1 m/s | 0.2 m/s | 0.4 m/s |\n|---|---|---|---|---|---|---|\n";
    Preset preset = find_preset("division_bass_viol");
    for (const FrictionLaw law :
         {FrictionLaw::thermal, FrictionLaw::double_exponential, FrictionLaw::hyperbola, FrictionLaw::coulomb}) {
        preset.friction.law = law;
        const SpeedStudy study =
            find_speeds(preset, preset.strings.front(), preset.player, plan, {.threads = 2, .progress = {}});
        for (const ForceRule rule : {ForceRule::same_forces, ForceRule::forces_with_speed})
            report += lines_of(study, law, rule);
        if (law != FrictionLaw::coulomb) continue;
        const SpeedRow* first = nullptr;
        for (const SpeedRow& row : study.rows) {
            if (row.rule != ForceRule::forces_with_speed) continue;
            if (first == nullptr || !(first->note.stop == row.note.stop)) first = &row;
            EXPECT_EQ(row.band.best, first->band.best) << row.player.speed;
            EXPECT_EQ(row.band.at_best, first->band.at_best) << row.player.speed;
        }
    }
    write_report("speeds.md", report);
}
