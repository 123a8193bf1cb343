// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/strokes.hpp"

#include "analysis/level.hpp"
#include "analysis/units.hpp"
#include "sim/sound/render.hpp"
#include "sim/stroke_batch.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <random>

namespace tests {
namespace {

constexpr double lead = 0.15;  // s of noise before and after
constexpr double fade = 0.03;  // s
constexpr std::size_t forces = 16;
constexpr double least_force = 0.02;  // of the player's middle force
constexpr double forces_range = 600.0;
constexpr double resolved_force = 2.0;  // of the firmest usual one: the sample rate follows it

/// The same numbers wherever it runs.
class Dice {
public:
    Dice(std::uint32_t seed, std::uint32_t run) : engine_(seed * 1000003U + run) { engine_.discard(8); }
    double between(double low, double high) { return low + (high - low) * share(); }
    double by_ratio(double low, double high) { return low * std::pow(high / low, share()); }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(share() * static_cast<double>(count)); }
    double normal() { return std::sqrt(-2.0 * std::log(1.0 - share())) * std::cos(2.0 * std::numbers::pi * share()); }

private:
    double share() { return static_cast<double>(engine_()) / 4294967296.0; }
    std::mt19937 engine_;
};

void change_body(sim::Bridge& bridge, Dice& dice) {
    const double all = dice.by_ratio(0.85, 1.18);
    for (sim::BridgeMode& mode : bridge.modes) {
        mode.frequency *= all * dice.by_ratio(0.88, 1.14);
        mode.q *= dice.by_ratio(0.6, 1.6);
        mode.mass *= dice.by_ratio(0.7, 1.4);
        mode.radiation = (dice.between(0.0, 1.0) < 0.5 ? -1.0 : 1.0) * dice.by_ratio(0.4, 1.6);
    }
}

/// A note of a preset, and strokes on it that differ in force alone.
struct Scene {
    sim::Note note;
    sim::Player player;
    std::vector<sim::Stroke> strokes;
    std::string what;
};

/// Half the scenes lie far from the bridge: S-motion is found nowhere else, and seldom.
Scene scene_of(const std::vector<sim::Preset>& presets, Dice& dice) {
    sim::Preset preset = presets[dice.below(presets.size())];
    change_body(preset.bridge, dice);
    const sim::PresetString& string = preset.strings[dice.below(preset.strings.size())];
    const double stop = std::floor(dice.between(0.0, std::min(24.0, last_stop(preset)) + 0.999));
    const double least = middle_force(preset.player) * least_force;
    preset.player.force_high *= resolved_force;
    Scene scene{.note = make_note(preset, string, stop), .player = preset.player, .strokes = {}, .what = {}};
    const double length = scene.note.string.length;
    const double nearest = std::max(dice.between(0.0, 1.0) < 0.5 ? 0.025 : 0.12, scene.note.floor / length);
    const double ratio = dice.by_ratio(nearest, std::max(0.4, nearest));
    sim::Stroke stroke{.contact_point = ratio * length,
                       .speed = preset.player.speed * dice.by_ratio(0.5, 2.0),
                       .rise = preset.player.rise * dice.by_ratio(0.3, 2.0),
                       .duration = dice.between(0.5, 0.7)};
    if (dice.between(0.0, 1.0) < 0.3) stroke.beginning = sim::Beginning::held;
    for (std::size_t i = 0; i < forces; ++i) {
        stroke.force = least * std::pow(forces_range, (static_cast<double>(i) + dice.between(0.0, 1.0)) / forces);
        scene.strokes.push_back(stroke);
    }
    scene.what = preset.short_name + " " + string.name + " stop " + sim::short_number(stop) + " ratio " +
                 sim::short_number(ratio) + (stroke.beginning == sim::Beginning::held ? " held" : "");
    return scene;
}

analysis::Signal heard(const Scene& scene, const sim::Played& played) {
    return sim::sound::render({played.record.bridge_force, played.result.sample_rate},
                              sim::sound::radiating_modes(scene.note.bridge));
}

/// RMS of a good stroke of the note, through its body.
double usual_level(const Scene& scene) {
    const sim::Played played =
        play_recorded(scene.note, {.contact_point = std::max(0.09 * scene.note.string.length, scene.note.floor),
                                   .force = middle_force(scene.player),
                                   .speed = scene.strokes.front().speed,
                                   .duration = 0.2,
                                   .beginning = sim::Beginning::held});
    const analysis::Signal sound = heard(scene, played);
    return analysis::rms(std::span(sound.samples).last(sound.samples.size() / 2));
}

/// With noise, and silence at either end.
analysis::Signal recorded(analysis::Signal sound, double noise, Dice& dice) {
    sim::sound::fade_ends(sound, {.in = 0.002, .out = fade});
    const auto before = static_cast<std::size_t>(lead * sound.sample_rate);
    sound.samples.insert(sound.samples.begin(), before, 0.0);
    sound.samples.insert(sound.samples.end(), before, 0.0);
    for (double& sample : sound.samples) sample += noise * dice.normal();
    return sound;
}

/// The stroke's recording, unless its motion is another at the end than before.
std::optional<RecordedStroke> record(const Scene& scene, const sim::Stroke& stroke, sim::Motion before, double noise,
                                     Dice& dice) {
    const sim::Played played = play_recorded(scene.note, stroke);
    if (played.record.diverged || played.result.verdict.motion != before) return std::nullopt;
    return RecordedStroke{.sound = recorded(heard(scene, played), noise, dice),
                          .motion = before,
                          .string_hz = fundamental(scene.note.string),
                          .from = lead,
                          .to = lead + stroke.duration,
                          .what = scene.what + " force " + sim::short_number(stroke.force)};
}

/// One stroke of each motion that is wanted and that the scene has.
std::vector<RecordedStroke> strokes_of(const Scene& scene, const std::array<bool, 6>& wanted, double noise_db,
                                       Dice& dice) {
    std::vector<sim::Stroke> shorter = scene.strokes;
    for (sim::Stroke& stroke : shorter) stroke.duration *= 0.75;
    const std::vector<sim::StrokeResult> results = play_all(scene.note, shorter, {});
    std::vector<RecordedStroke> strokes;
    double noise = -1.0;
    for (std::size_t m = 0; m < wanted.size(); ++m) {
        std::vector<std::size_t> such;
        for (std::size_t i = 0; i < results.size(); ++i)
            if (static_cast<std::size_t>(results[i].verdict.motion) == m) such.push_back(i);
        if (such.empty() || !wanted[m]) continue;
        if (noise < 0.0) noise = usual_level(scene) * analysis::ratio_from_db(-noise_db);
        const auto stroke =
            record(scene, scene.strokes[such[dice.below(such.size())]], static_cast<sim::Motion>(m), noise, dice);
        if (stroke) strokes.push_back(*stroke);
    }
    return strokes;
}

}  // namespace

std::vector<RecordedStroke> recorded_strokes(const StrokePlan& plan, const sim::Workers& workers) {
    constexpr int batch = 16;
    std::vector<sim::Preset> presets;
    for (const std::string& name : plan.presets) presets.push_back(sim::find_preset(name));
    std::array<int, 6> had{};
    std::vector<RecordedStroke> strokes;
    const int scenes = plan.scenes.empty() ? plan.most_scenes : static_cast<int>(plan.scenes.size());
    for (int first = 0; first < scenes && std::ranges::min(had) < plan.of_each; first += batch) {
        std::array<bool, 6> wanted{};
        for (std::size_t m = 0; m < wanted.size(); ++m) wanted[m] = had[m] < plan.of_each;
        std::vector<std::vector<RecordedStroke>> fresh(static_cast<std::size_t>(std::min(batch, scenes - first)));
        sim::for_each_job(static_cast<int>(fresh.size()), workers, [&](int job) {
            const auto at = static_cast<std::size_t>(first + job);
            const int number = plan.scenes.empty() ? first + job : plan.scenes[at];
            Dice dice(plan.seed, static_cast<std::uint32_t>(number));
            auto& strokes_here = fresh[static_cast<std::size_t>(job)];
            strokes_here = strokes_of(scene_of(presets, dice), wanted, plan.noise_db, dice);
            for (RecordedStroke& stroke : strokes_here) stroke.scene = number;
        });
        for (auto& some : fresh)
            for (RecordedStroke& stroke : some) {
                if (had[static_cast<std::size_t>(stroke.motion)] >= plan.of_each) continue;
                ++had[static_cast<std::size_t>(stroke.motion)];
                strokes.push_back(std::move(stroke));
            }
    }
    return strokes;
}

}  // namespace tests
