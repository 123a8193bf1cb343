// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/report/bands_report.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <map>

namespace {

using namespace sim;

/// Coarse: the whole table must be had in minutes.
const MapGrid grid{.contact_points = 24, .player_forces = 8, .more_forces = 0};

/// Where players say the open strings are bowed, mm.  Common practice, no source.
const std::map<std::string, report::UsualPlaces>& usual_places() {
    static const std::map<std::string, report::UsualPlaces> places{{"descant_viol", {0.020, 0.035}},
                                                                   {"treble_viol", {0.025, 0.040}},
                                                                   {"alto_viol", {0.030, 0.045}},
                                                                   {"tenor_viol", {0.035, 0.055}},
                                                                   {"consort_bass_viol", {0.050, 0.075}},
                                                                   {"division_bass_viol", {0.050, 0.075}},
                                                                   {"lyra_bass_viol", {0.045, 0.070}},
                                                                   {"seven_string_bass_viol", {0.050, 0.075}},
                                                                   {"violone_in_g", {0.060, 0.095}},
                                                                   {"gut_violin", {0.010, 0.041}},
                                                                   {"violin", {0.010, 0.041}},
                                                                   {"cello", {0.025, 0.080}}};
    return places;
}

/// The answer is whole: a band with its edges in order round the best place, or a reason why there is none.
void expect_whole(const PresetBands& bands, const PresetBand& entry) {
    const BandResult& band = entry.band;
    const std::string name = bands.preset.short_name + ", string " + entry.note.string.name;
    EXPECT_NE(band.band.has_value(), !band.reason.empty()) << name;
    if (band.band) {
        EXPECT_LE(band.band->near, *band.best) << name;
        EXPECT_GE(band.band->far, *band.best) << name;
    }
    if (band.best) {
        EXPECT_GE(*band.best, entry.note.floor) << name;
        EXPECT_LE(*band.best, farthest_contact(entry.note)) << name;
    }
}

}  // namespace

/// expects  for every shipped preset a line for each open string and the octave of the top string, each with a band or
///          the reason why there is none; on most instruments the octave is bowed nearer the bridge than the open
///          string
/// margin   at least ten of the twelve, since a coarse grid may misplace a note on which hardly any stroke is secure
TEST(BandsTest, EveryOpenStringAndTheOctaveHasABandOrAReason) {
    std::string text =
        "Where each string is bowed: every open string, and the octave of the top string, by the shipped presets.  A "
        "coarse grid of\n" +
        std::to_string(grid.contact_points) + " contact points x " + std::to_string(grid.player_forces) +
        " forces; `bowband window` gives finer answers.  The usual places are what players tell of open strings.\n\n" +
        report::bands_heading();
    int moves_in = 0;
    for (const auto& file : shipped_presets()) {
        const Preset preset = read_preset(file);
        const PresetBands bands = find_preset_bands(preset, grid, {.threads = 2, .progress = {}});
        ASSERT_EQ(bands.notes.size(), preset.strings.size() + 1) << preset.name;
        for (const PresetBand& entry : bands.notes) expect_whole(bands, entry);
        const BandResult& open = bands.notes.front().band;
        const BandResult& octave = bands.notes.back().band;
        if (open.best && octave.best && *octave.best < *open.best) ++moves_in;
        const auto usual = usual_places().find(preset.short_name);
        ASSERT_NE(usual, usual_places().end()) << preset.short_name;
        text += report::bands_lines(bands, usual->second);
        write_report("bands.md", text);  // so far, should the run be cut short
    }
    EXPECT_GE(moves_in, 10);
}
