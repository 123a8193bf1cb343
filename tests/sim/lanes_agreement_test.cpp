// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/force_window.hpp"
#include "sim/stroke_map.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

namespace {

using namespace sim;

struct NoteCase {
    const char* preset;
    std::size_t string;
    double stop;
    double place;  // of the way from floor to 0.45 of the length, in ratio
};

/// Twenty notes over the presets: low and high strings, open and stopped; one at the end of the treble's board.
const std::vector<NoteCase> spread_notes{{"treble_viol", 0, 20.0, 0.3},
                                         {"treble_viol", 0, 0.0, 0.5},
                                         {"treble_viol", 5, 7.0, 0.3},
                                         {"division_bass_viol", 0, 0.0, 0.3},
                                         {"division_bass_viol", 0, 12.0, 0.3},
                                         {"division_bass_viol", 3, 5.0, 0.4},
                                         {"division_bass_viol", 5, 0.0, 0.2},
                                         {"consort_bass_viol", 2, 0.0, 0.3},
                                         {"lyra_bass_viol", 1, 4.0, 0.4},
                                         {"seven_string_bass_viol", 6, 0.0, 0.3},
                                         {"tenor_viol", 0, 2.0, 0.3},
                                         {"tenor_viol", 4, 0.0, 0.4},
                                         {"alto_viol", 1, 3.0, 0.3},
                                         {"descant_viol", 0, 5.0, 0.4},
                                         {"violin", 0, 0.0, 0.3},
                                         {"violin", 3, 5.0, 0.4},
                                         {"gut_violin", 1, 0.0, 0.3},
                                         {"cello", 0, 7.0, 0.3},
                                         {"cello", 2, 0.0, 0.3},
                                         {"violone_in_g", 4, 0.0, 0.3}};

Note note_of(const Preset& preset, const NoteCase& c) { return make_note(preset, preset.strings[c.string], c.stop); }

double place_of(const Note& note, const NoteCase& c) {
    return note.floor * std::pow(farthest_contact(note) / note.floor, c.place);
}

/// Both edges of the main interval where each was found inside the scan.
std::vector<double> edges_of(const ForceWindow& window) {
    std::vector<double> edges;
    if (!window.main) return edges;
    const ForceInterval& interval = window.intervals[*window.main];
    if (interval.below) edges.push_back(interval.low);
    if (interval.above) edges.push_back(interval.high);
    return edges;
}

}  // namespace

/// source   the double reference of this project
/// expects  the motion of 98 % of the cells of a whole started map, 24 by 24
/// margin   2 %: cells on an edge between two motions
TEST(LanesAgreementTest, WholeMapAgrees) {
    const Preset preset = find_preset("division_bass_viol");
    const Note note = make_note(preset, preset.strings.front(), 12.0);
    const MapGrid grid{.contact_points = 24, .player_forces = 8, .more_forces = 8};
    const StrokeMap lanes = started_map(note, preset.player, grid, {.threads = 2});
    const StrokeMap reference = started_map(note, preset.player, grid, {.threads = 2, .kernel = Kernel::reference});
    int same = 0;
    for (std::size_t i = 0; i < lanes.strokes.size(); ++i)
        same += lanes.strokes[i].verdict.motion == reference.strokes[i].verdict.motion ? 1 : 0;
    const double share = same / static_cast<double>(lanes.strokes.size());
    std::printf("cells of 576 that agree: %d\n", same);
    EXPECT_EQ(lanes.strokes.size(), 576U);
    EXPECT_GE(share, 0.98);
}

/// source   the double reference of this project
/// expects  the same least and greatest force of the held window of twenty notes
/// margin   2 %, and the 2 % to which each of them is found
TEST(LanesAgreementTest, HeldEdgesAgreeOnTwentyNotes) {
    int found = 0;
    double worst = 0.0;
    for (const NoteCase& c : spread_notes) {
        const Preset preset = find_preset(c.preset);
        const Note note = note_of(preset, c);
        ForceScan scan = usual_scan(note, preset.player, place_of(note, c));
        scan.precision = 0.005;
        const std::vector<double> lanes = edges_of(held_window(note, preset.player, place_of(note, c), scan));
        scan.kernel = Kernel::reference;
        const std::vector<double> reference = edges_of(held_window(note, preset.player, place_of(note, c), scan));
        const std::string name =
            std::string(c.preset) + " " + std::to_string(c.string) + " + " + std::to_string(c.stop);
        ASSERT_EQ(lanes.size(), reference.size()) << name;
        for (std::size_t i = 0; i < lanes.size(); ++i) {
            const double off = std::abs(lanes[i] / reference[i] - 1.0);
            std::printf("%s edge %zu: %.5f N, reference %.5f N, %.2f %%\n", name.c_str(), i, lanes[i], reference[i],
                        100.0 * off);
            EXPECT_LE(off, 0.02) << name << " edge " << i;
            worst = std::max(worst, off);
            ++found;
        }
    }
    std::printf("%d edges, worst %.2f %%\n", found, 100.0 * worst);
    EXPECT_GE(found, 20);
}
