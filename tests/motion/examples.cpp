// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/examples.hpp"

#include "tests/motion/vibrato.hpp"

#include <algorithm>
#include <fstream>
#include <stdexcept>

namespace tests {
namespace {

constexpr std::uint32_t hearing_seed = 9000;  // beside the plan's
constexpr double fade = 0.04;                 // s, at a stroke's end that no one measures

constexpr std::array<bool, 6> s_motion_alone{false, false, false, false, true, false};

/// The end of the recording, as long as a steady part may be.
std::span<const double> heard_part(const RecordedStroke& recording, Dice& dice) {
    const double rate = recording.sound.sample_rate;
    const std::span<const double> all = recording.sound.samples;
    const auto late = static_cast<std::size_t>(dice.between(fade, 2.0 * fade) * rate);
    const auto length = static_cast<std::size_t>(dice.between(0.25, analysis::motion_time) * rate);
    return all.subspan(all.size() - std::min(all.size(), late + length), std::min(all.size() - late, length));
}

Example heard(BowedStroke stroke, Dice& dice) {
    if (dice.chance(0.4))
        stroke.force =
            swayed(stroke.force,
                   {.cents = dice.by_ratio(3.0, 40.0), .hz = dice.between(4.0, 7.5), .turn = dice.between(0.0, 1.0)});
    Microphone microphone{.body = redrawn(stroke.body, dice), .noise_db = dice.between(33.0, 55.0)};
    if (dice.chance(0.5)) microphone.room = drawn_room(dice);
    const RecordedStroke recording = recorded(stroke, microphone, dice);
    Example example{.motion = static_cast<int>(stroke.motion),
                    .scene = stroke.scene,
                    .clear = stroke.clear,
                    .known = dice.chance(0.6),
                    .fundamental_share = stroke.fundamental_share};
    example.features = analysis::motion_features(
        heard_part(recording, dice), recording.sound.sample_rate,
        {.noise = dice.chance(0.8) ? recording.noise : 0.0, .intended_hz = example.known ? stroke.string_hz : 0.0});
    return example;
}

}  // namespace

std::vector<std::string> design_presets() {
    return {"division_bass_viol", "treble_viol", "cello", "gut_violin", "tenor_viol", "violone_in_g", "alto_viol"};
}
std::vector<std::string> test_presets() {
    return {"violin", "lyra_bass_viol", "consort_bass_viol", "descant_viol", "seven_string_bass_viol"};
}
std::vector<sim::Preset> presets_named(const std::vector<std::string>& names) {
    std::vector<sim::Preset> presets;
    for (const std::string& name : names) presets.push_back(sim::find_preset(name));
    return presets;
}

std::vector<Example> make_examples(const ExamplePlan& plan, const sim::Workers& workers) {
    const std::vector<sim::Preset> presets = presets_named(design_presets());
    const int scenes = plan.player_scenes + plan.far_scenes + plan.light_scenes;
    std::vector<std::vector<Example>> made(static_cast<std::size_t>(scenes));
    for_each_job(scenes, workers, [&](int job) {
        ScenePlan scene{.presets = presets, .seed = plan.seed, .most = plan.most, .ask_clear = false};
        if (job >= plan.player_scenes) scene.region = Region::far;
        if (job >= plan.player_scenes + plan.far_scenes) {
            scene.region = Region::light;
            scene.wanted = s_motion_alone;
        }
        Dice dice(plan.seed + hearing_seed, static_cast<std::uint32_t>(job));
        for (const BowedStroke& stroke : scene_strokes(scene, job))
            for (int body = 0; body < (stroke.motion == sim::Motion::s_motion ? 2 : 1) * plan.bodies; ++body)
                made[static_cast<std::size_t>(job)].push_back(heard(stroke, dice));
    });
    std::vector<Example> examples;
    for (const auto& some : made) examples.insert(examples.end(), some.begin(), some.end());
    return examples;
}

void write_examples(const std::filesystem::path& place, const std::vector<Example>& examples) {
    std::ofstream out(place, std::ios::binary);
    out.write(reinterpret_cast<const char*>(examples.data()),
              static_cast<std::streamsize>(examples.size() * sizeof(Example)));
    if (!out.flush()) throw std::runtime_error(place.string() + ": can't be written");
}

std::vector<Example> read_examples(const std::filesystem::path& place) {
    const auto bytes = std::filesystem::file_size(place);
    if (bytes % sizeof(Example) != 0) throw std::runtime_error(place.string() + ": not of this program's examples");
    std::vector<Example> examples(bytes / sizeof(Example));
    std::ifstream in(place, std::ios::binary);
    in.read(reinterpret_cast<char*>(examples.data()), static_cast<std::streamsize>(bytes));
    if (!in) throw std::runtime_error(place.string() + ": can't be read");
    return examples;
}

}  // namespace tests
