// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/law_windows.hpp"

#include <algorithm>

namespace sim {

namespace {

constexpr double usual_ratio = 0.1;  // contact point / sounding length
constexpr double reach_down = 4.0;   // under a usual scan: the held window reaches lower than strokes from rest

}  // namespace

std::vector<LawCase> laws_compared(const Preset& preset) {
    Friction thermal = preset.friction;
    thermal.law = FrictionLaw::thermal;
    thermal.thermal.area_grows_with_force = true;
    Friction fixed = thermal;
    fixed.thermal.area_grows_with_force = false;
    return {{"thermal", thermal},
            {"thermal, fixed area", fixed},
            {"double_exponential", {.law = FrictionLaw::double_exponential}},
            {"hyperbola", {.law = FrictionLaw::hyperbola}}};
}

double compared_contact(const Note& note) { return std::max(usual_ratio * note.string.length, note.floor); }

std::vector<LawWindow> find_law_windows(const Preset& preset, const PresetString& string, const LawPlan& plan,
                                        const Workers& workers) {
    const std::vector<LawCase> laws = laws_compared(preset);
    std::vector<LawWindow> windows;
    for (const double stop : plan.stops)
        for (const LawCase& law : laws) {
            Preset changed = preset;
            changed.friction = law.friction;
            LawWindow window{.law = law.name, .note = make_note(changed, string, stop, plan.end)};
            window.contact_point = plan.contact_point > 0.0 ? plan.contact_point : compared_contact(window.note);
            check_contact(window.note, window.contact_point);
            window.limits = limits(window.note, {window.contact_point, preset.player.speed});
            windows.push_back(window);
        }
    for_each_job(static_cast<int>(2 * windows.size()), workers, [&](int job) {
        LawWindow& window = windows[static_cast<std::size_t>(job / 2)];
        ForceScan scan = usual_scan(window.note, preset.player, window.contact_point, workers);
        if (job % 2 == 0) {
            scan.lowest /= reach_down;
            window.held = held_window(window.note, preset.player, window.contact_point, scan);
        } else {
            window.started = started_window(window.note, preset.player, window.contact_point, scan);
        }
    });
    return windows;
}

}  // namespace sim
