// SPDX-License-Identifier: GPL-3.0-or-later
#include "gui/model/set_up.hpp"

#include "analysis/units.hpp"
#include "sim/note.hpp"
#include "sim/sound/render.hpp"
#include "sim/sound/takes.hpp"
#include "sim/stroke_map.hpp"

#include <algorithm>
#include <cmath>

namespace gui {
namespace {

constexpr const char* measured = "measured by the player";
constexpr int stroke_count = 6;
constexpr double force_room = 2.0;   // past either end of the preset's range
constexpr double usual_ratio = 0.1;  // contact point of the strokes to like, of the string
constexpr double seconds = 1.2;

double rounded(double value, double step) { return std::round(value / step) * step; }

}  // namespace

SetUp set_up_of(const sim::Preset& preset, int string_index) {
    const sim::PresetString& string = preset.strings.at(static_cast<std::size_t>(string_index));
    return {.name = QString::fromStdString("my " + preset.name),
            .string_index = string_index,
            .length_mm = rounded(analysis::mm_from_metres(string.length), 0.01),
            .reference_pitch_hz = preset.reference_pitch,
            .finger_width_mm = rounded(analysis::mm_from_metres(preset.player.finger_width), 0.01),
            .hair_width_mm = rounded(analysis::mm_from_metres(preset.hair_width), 0.01),
            .lightest = preset.player.force_low,
            .firmest = preset.player.force_high};
}

sim::Preset set_up(const sim::Preset& preset, const SetUp& wanted) {
    const SetUp before = set_up_of(preset, wanted.string_index);
    std::vector<FieldChange> changes{{"/name", FieldValue(wanted.name), {}}};
    const auto put = [&](const std::string& pointer, double was, double is) {
        if (is != was) changes.push_back({pointer, FieldValue(is), measured});
    };
    for (std::size_t i = 0; i < preset.strings.size(); ++i) {
        const double was = analysis::mm_from_metres(preset.strings[i].length);
        put("/strings/" + std::to_string(i) + "/length_mm", rounded(was, 0.01),
            rounded(was * wanted.length_mm / before.length_mm, 0.01));
    }
    put("/reference_pitch_hz", before.reference_pitch_hz, wanted.reference_pitch_hz);
    put("/player/finger_width_mm", before.finger_width_mm, wanted.finger_width_mm);
    put("/hair_width_mm", before.hair_width_mm, wanted.hair_width_mm);
    put("/player/force_newtons/0", before.lightest, wanted.lightest);
    put("/player/force_newtons/1", before.firmest, wanted.firmest);
    return with_changes(preset, changes);
}

std::vector<StrokeToLike> strokes_to_like(const sim::Preset& preset, int string_index, const sim::Workers& workers) {
    const sim::Note note = sim::make_note(preset, preset.strings.at(static_cast<std::size_t>(string_index)), 0.0);
    const std::vector<double> forces =
        sim::even_in_ratio({preset.player.force_low / force_room, preset.player.force_high * force_room}, stroke_count);
    const double place = std::max(usual_ratio * note.string.length, note.floor);
    std::vector<analysis::Signal> sounds(forces.size());
    sim::for_each_job(static_cast<int>(forces.size()), workers, [&](int job) {
        const auto i = static_cast<std::size_t>(job);
        sim::Stroke stroke = sim::started_stroke(note, preset.player, {place, forces[i]});
        stroke.duration = seconds;
        sounds[i] = sim::sound::take_of(sim::play_recorded(note, stroke), note.bridge);
    });
    sim::sound::share_gain(sounds);
    std::vector<StrokeToLike> strokes;
    for (std::size_t i = 0; i < forces.size(); ++i) strokes.push_back({forces[i], std::move(sounds[i])});
    return strokes;
}

std::optional<LikedForces> liked_forces(const std::vector<double>& liked) {
    if (liked.size() < 2) return std::nullopt;
    const auto [least, greatest] = std::ranges::minmax(liked);
    return LikedForces{rounded(least, 0.001), rounded(greatest, 0.001)};
}

}  // namespace gui
