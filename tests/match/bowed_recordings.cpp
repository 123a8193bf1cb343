// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/match/bowed_recordings.hpp"

#include "analysis/level.hpp"
#include "analysis/units.hpp"
#include "sim/force_window.hpp"
#include "sim/preset_reader.hpp"
#include "sim/sound/render.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace tests {
namespace {

constexpr double gap = 0.2;      // s of noise before, between and after the notes
constexpr double held_on = 0.5;  // s that a stroke lasts beyond the usual
constexpr double highest_stop = 19.0;
constexpr double highest_mode = 6000.0;  // Hz

/// The same numbers wherever it runs.
class Draw {
public:
    explicit Draw(std::uint32_t seed) : engine_(seed) { engine_.discard(16); }
    double between(double low, double high) { return low + (high - low) * share(); }
    double by_ratio(double low, double high) { return low * std::pow(high / low, share()); }
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(share() * static_cast<double>(count)); }
    double normal() { return std::sqrt(-2.0 * std::log(1.0 - share())) * std::cos(2.0 * std::numbers::pi * share()); }

private:
    double share() { return static_cast<double>(engine_()) / 4294967296.0; }
    std::mt19937 engine_;
};

double mass_near(const sim::Bridge& bridge, double hz) {
    const auto away = [&](const sim::BridgeMode& mode) { return std::abs(std::log(mode.frequency / hz)); };
    return std::ranges::min_element(bridge.modes, {}, away)->mass;
}

sim::Bridge other_body(const sim::Bridge& bridge, Draw& draw) {
    sim::Bridge other{.kind = sim::BridgeKind::modes, .resistance = 0.0, .modes = {}};
    const double an_octave = draw.between(3.0, 5.0);
    double hz = bridge.modes.front().frequency * draw.by_ratio(0.85, 1.18);
    while (hz < highest_mode) {
        other.modes.push_back({.frequency = hz,
                               .q = draw.by_ratio(12.0, 40.0),
                               .mass = mass_near(bridge, hz) * draw.by_ratio(0.6, 1.6),
                               .radiation = (draw.between(0.0, 1.0) < 0.5 ? -1.0 : 1.0) * draw.by_ratio(0.4, 1.6)});
        hz *= std::exp2(draw.between(0.4, 1.6) / an_octave);
    }
    return other;
}

/// A string, wound or gut, that is not quite the one of the preset.
sim::String changed(sim::String string, double most, Draw& draw) {
    const auto factor = [&] { return std::exp(draw.between(-most, most)); };
    string.damping.friction *= factor();
    string.damping.bending *= factor();
    string.damping.torsion_q *= factor();
    string.torsion_impedance *= factor();
    string.torsion_speed *= factor();
    string.bending_stiffness *= factor();
    return string;
}

struct Take {
    BowedNote note;
    analysis::Signal sound;
};

/// Near enough the note for a player who hears: within 40 cents.
bool in_tune(const sim::StrokeResult& result, const sim::Note& note) {
    constexpr double most = 40.0;
    return result.tone.pitch && std::abs(analysis::cents_between(*result.tone.pitch, fundamental(note.string))) <= most;
}

Take take_of(const sim::Preset& preset, const sim::PresetString& string, const BowedPlan& plan, Draw& draw) {
    while (true) {
        const double stop = std::floor(draw.between(0.0, std::min(highest_stop, sim::last_stop(preset)) + 0.999));
        const sim::String open = changed(sim::open_string(preset, string), plan.string_change, draw);
        const sim::Note note = make_note(preset, open, stop);
        const double length = note.string.length;
        const sim::Player& player = preset.player;
        sim::Stroke stroke = started_stroke(note, player,
                                            {.contact_point = draw.by_ratio(note.floor, sim::farthest_contact(note)),
                                             .force = draw.by_ratio(player.force_low, player.force_high)});
        stroke.duration += held_on;
        const sim::Played played = play_recorded(note, stroke);
        const bool good = plan.speaking ? sim::speaks(played.result, note, player)
                                        : played.result.verdict.motion != sim::Motion::helmholtz;
        if (!good || !in_tune(played.result, note)) continue;
        Take take{.note = {.string = string.name,
                           .stop = stop,
                           .hz = fundamental(note.string),
                           .contact_ratio = stroke.contact_point / length,
                           .force = stroke.force},
                  .sound = sim::sound::render({played.record.bridge_force, played.result.sample_rate},
                                              sim::sound::radiating_modes(note.bridge))};
        sim::sound::fade_ends(take.sound, {.in = 0.002, .out = 0.03});
        return take;
    }
}

BowedRecording recording_of(const sim::Preset& usual, const BowedPlan& plan, Draw& draw) {
    sim::Preset preset = usual;
    preset.bridge = other_body(usual.bridge, draw);
    const sim::PresetString& string = preset.strings[draw.below(preset.strings.size())];
    BowedRecording recording{.preset = usual.short_name, .sound = {}, .notes = {}};
    std::vector<double>& samples = recording.sound.samples;
    recording.sound.sample_rate = sim::sound::sound_rate;
    const auto silence = static_cast<std::size_t>(gap * sim::sound::sound_rate);
    double power = 0.0;
    double sounding = 0.0;
    for (int i = 0; i < plan.notes; ++i) {
        Take take = take_of(preset, string, plan, draw);
        samples.insert(samples.end(), silence, 0.0);
        take.note.from = static_cast<double>(samples.size()) / sim::sound::sound_rate;
        samples.insert(samples.end(), take.sound.samples.begin(), take.sound.samples.end());
        take.note.to = static_cast<double>(samples.size()) / sim::sound::sound_rate;
        const double level = analysis::rms(take.sound.samples);
        power += level * level * static_cast<double>(take.sound.samples.size());
        sounding += static_cast<double>(take.sound.samples.size());
        recording.notes.push_back(take.note);
    }
    samples.insert(samples.end(), silence, 0.0);
    const double noise = std::sqrt(power / sounding) * analysis::ratio_from_db(-plan.noise_db);
    for (double& sample : samples) sample += noise * draw.normal();
    std::vector<analysis::Signal> one{std::move(recording.sound)};
    sim::sound::share_gain(one);
    recording.sound = std::move(one.front());
    return recording;
}

}  // namespace

std::vector<BowedRecording> bowed_recordings(const BowedPlan& plan, const sim::Workers& workers) {
    std::vector<sim::Preset> presets;
    for (const std::string& name : plan.presets) presets.push_back(sim::find_preset(name));
    std::vector<BowedRecording> recordings(static_cast<std::size_t>(plan.recordings));
    sim::for_each_job(plan.recordings, workers, [&](int i) {
        Draw draw(plan.seed * 1000003U + static_cast<std::uint32_t>(i));
        const sim::Preset& preset = presets[static_cast<std::size_t>(i) % presets.size()];
        recordings[static_cast<std::size_t>(i)] = recording_of(preset, plan, draw);
    });
    return recordings;
}

}  // namespace tests
