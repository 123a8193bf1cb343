// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/preset_bands.hpp"

namespace sim {

namespace {

constexpr double octave = 12.0;

}  // namespace

PresetBands find_preset_bands(const Preset& preset, const MapGrid& grid, const Workers& workers) {
    PresetBands bands{.preset = preset, .notes = {}};
    for (const PresetString& string : preset.strings) bands.notes.push_back({make_note(preset, string, 0.0), {}});
    if (last_stop(preset) >= octave) bands.notes.push_back({make_note(preset, preset.strings.front(), octave), {}});
    // a note a job: the lowest strings, which take longest, stand last in the list and so begin first
    const int count = static_cast<int>(bands.notes.size());
    for_each_job(count, workers, [&](int job) {
        PresetBand& entry = bands.notes[static_cast<std::size_t>(count - 1 - job)];
        entry.band = find_band(entry.note, preset.player, grid, alone(workers));
    });
    return bands;
}

}  // namespace sim
