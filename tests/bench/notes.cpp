// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/notes.hpp"

#include "sim/kernel/lane_plan.hpp"
#include "sim/preset.hpp"

namespace tests {

namespace {

constexpr std::size_t wanted_modes = 16;

double of_line(const sim::kernel::LaneLine& line) {
    if (!line.present) return 0.0;
    const double poles = 5.0 * static_cast<double>(line.poles.size()) + 2.0;
    const double sections = 9.0 * static_cast<double>(line.section_states.size() / 2);
    const double fraction = 3.0;
    const double read_and_push = 1.0 + 4.0;
    return poles + sections + fraction + read_and_push;
}

}  // namespace

sim::Note bench_note() {
    sim::Preset preset = sim::find_preset("division_bass_viol");
    sim::Note note = sim::make_note(preset, preset.strings.front(), 12.0);
    for (std::size_t i = 0; note.bridge.modes.size() < wanted_modes; ++i) {
        sim::BridgeMode more = note.bridge.modes[i];
        more.frequency *= 1.37;
        note.bridge.modes.push_back(more);
    }
    note.bridge.modes.resize(wanted_modes);
    return note;
}

double operations_per_step(const sim::Note& note) {
    const sim::kernel::Note ready = sim::kernel_note(note, sim::sample_rate(note, bench_place));
    const sim::kernel::LaneGeometry geometry(ready);
    const sim::kernel::LaneWork work = sim::kernel::lane_work(ready, geometry);
    const double bridge = 9.0 + 9.0 * static_cast<double>(work.modes.size());
    constexpr double branches = sim::kernel::LaneHeat::branches;
    const double heat = (6.0 * branches + 3.0 * (branches - 1.0) + 8.0) + (2.0 + 6.0 * branches);
    const double curve = 3.0 * sim::kernel::LaneCurve::ramps - 1.0 + 4.0 + 9.0;
    const double friction = 2.0 * (curve + 2.0 + 5.0) + 2.0 + 3.0 + 3.0;
    const double bow = 3.0 + 8.0;
    const double watch = 7.0;
    return bridge + of_line(work.string) + of_line(work.twist) + heat + friction + bow + watch;
}

}  // namespace tests
