// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/motion/strokes.hpp"

#include "analysis/decimate.hpp"
#include "analysis/level.hpp"
#include "analysis/units.hpp"
#include "sim/kernel/lanes.hpp"
#include "sim/note.hpp"
#include "sim/stroke_batch.hpp"
#include "sim/stroke_run.hpp"
#include "sim/text.hpp"
#include "sim/tone_meter.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tests {
namespace {

constexpr std::size_t forces = 16;
constexpr double least_force = 0.02;    // of the player's middle force
constexpr double resolved_force = 2.0;  // of the firmest usual one: the sample rate follows it
constexpr double usual_ratio = 0.09;
constexpr double speed_change = 1e-3;
constexpr double slip_change = 1.4;

void change_body(sim::Bridge& bridge, Dice& dice) {
    const double all = dice.by_ratio(0.85, 1.18);
    for (sim::BridgeMode& mode : bridge.modes) {
        mode.frequency *= all * dice.by_ratio(0.88, 1.14);
        mode.q *= dice.by_ratio(0.6, 1.6);
        mode.mass *= dice.by_ratio(0.7, 1.4);
        mode.radiation = (dice.chance(0.5) ? -1.0 : 1.0) * dice.by_ratio(0.4, 1.6);
    }
}

/// A note of a preset, and strokes on it that differ in force alone.
struct Scene {
    sim::Note note;
    std::vector<sim::Stroke> strokes;
    std::string what;
};

struct RegionLimits {
    double nearest;  // contact ratio
    double farthest;
    double forces_range;  // greatest over least force
};
RegionLimits limits_of(Region region) {
    switch (region) {
        case Region::far:
            return {.nearest = 0.12, .farthest = 0.4, .forces_range = 600.0};
        case Region::light:
            return {.nearest = 0.14, .farthest = 0.33, .forces_range = 40.0};
        default:
            return {.nearest = 0.025, .farthest = 0.4, .forces_range = 600.0};
    }
}

Scene scene_of(const ScenePlan& plan, Dice& dice) {
    const RegionLimits limits = limits_of(plan.region);
    sim::Preset preset = plan.presets[dice.below(plan.presets.size())];
    change_body(preset.bridge, dice);
    const sim::PresetString& string = preset.strings[dice.below(preset.strings.size())];
    const double stop = std::floor(dice.between(0.0, std::min(24.0, last_stop(preset)) + 0.999));
    const double least = middle_force(preset.player) * least_force;
    preset.player.force_high *= resolved_force;
    Scene scene{.note = make_note(preset, string, stop), .strokes = {}, .what = {}};
    const double length = scene.note.string.length;
    const double nearest = std::max(limits.nearest, scene.note.floor / length);
    const double ratio = dice.by_ratio(nearest, std::max(limits.farthest, nearest));
    sim::Stroke stroke{.contact_point = ratio * length,
                       .speed = preset.player.speed * dice.by_ratio(0.5, 2.0),
                       .rise = preset.player.rise * dice.by_ratio(0.3, 2.0),
                       .duration = dice.between(0.9, 1.1)};
    if (dice.chance(0.3)) stroke.beginning = sim::Beginning::held;
    for (std::size_t i = 0; i < forces; ++i) {
        const double share = (static_cast<double>(i) + dice.between(0.0, 1.0)) / forces;
        stroke.force = least * std::pow(limits.forces_range, share);
        scene.strokes.push_back(stroke);
    }
    scene.what = preset.short_name + " " + string.name + " stop " + sim::short_number(stop) + " ratio " +
                 sim::short_number(ratio) + (stroke.beginning == sim::Beginning::held ? " held" : "");
    return scene;
}

/// A stroke played in lanes beside its like, its bridge force kept at 48 … 96 kHz.
struct Heard {
    sim::kernel::Record record;
    analysis::Signal force;
    sim::Tone tone;
};

std::vector<Heard> heard_strokes(const Scene& scene) {
    std::vector<sim::StrokeRun> runs;
    std::vector<sim::kernel::LaneStroke> lanes;
    for (const sim::Stroke& stroke : scene.strokes) {
        runs.push_back(run_of(scene.note, stroke, 1));
        const sim::StrokeRun& run = runs.back();
        lanes.push_back({.speed = run.drive.speed, .force = run.drive.force, .start = run.start, .wanted = run.wanted});
    }
    const double rate = runs.front().sample_rate;
    sim::kernel::LaneBatch batch(kernel_note(scene.note, rate), runs.front().drive.contact_point, 0.0, lanes);
    batch.listen_from(0);
    batch.advance(batch.steps_left());
    std::vector<sim::kernel::Record> records = batch.take_records();
    const int factor = analysis::decimation_factor(rate, analysis::analysis_rate);
    sim::ToneMeter meter(scene.note.bridge);
    std::vector<Heard> heard;
    std::size_t lane = 0;
    for (auto& sound : batch.heard(analysis::decimation_taps(factor), factor)) {
        Heard one{.record = std::move(records[lane++]), .force = {std::move(sound.samples), rate / factor}, .tone = {}};
        const auto late = std::min(one.force.samples.size(), static_cast<std::size_t>(sim::heard_for * rate / factor));
        one.tone = meter.tone(
            {.force = {{one.force.samples.end() - static_cast<std::ptrdiff_t>(late), one.force.samples.end()},
                       one.force.sample_rate},
             .peak_to_peak = sound.peak_to_peak,
             .expected_hz = fundamental(scene.note.string)});
        heard.push_back(std::move(one));
    }
    return heard;
}

sim::Hearing hearing_at_end(const Scene& scene, const sim::Stroke& stroke, const sim::Tone& tone) {
    const sim::StrokeRun run = run_of(scene.note, stroke, 1);
    return hearing_of(scene.note, tone,
                      {.speed = run.drive.speed,
                       .last_speed = stroke.speed,
                       .contact_point = stroke.contact_point,
                       .duration = stroke.duration});
}

/// What the judge says at the end, and whether he would if the first harmonic were somewhat stronger or weaker, or the
/// slips longer or shorter.
struct Verdicts {
    sim::Motion motion = sim::Motion::silent;
    bool sure = true;
    double fundamental_share = 0.0;
};
Verdicts verdicts_of(const Scene& scene, const sim::Stroke& stroke, const Heard& heard) {
    const sim::Profile speed = run_of(scene.note, stroke, 1).drive.speed;
    sim::Hearing hearing = hearing_at_end(scene, stroke, heard.tone);
    Verdicts verdicts{.motion = judge(heard.record, speed, hearing).motion,
                      .fundamental_share = hearing.fundamental_share};
    for (const double factor : {0.9, 1.0 / 0.9}) {
        hearing.fundamental_share = factor * verdicts.fundamental_share;
        verdicts.sure = verdicts.sure && judge(heard.record, speed, hearing).motion == verdicts.motion;
    }
    hearing.fundamental_share = verdicts.fundamental_share;
    for (const double factor : {slip_change, 1.0 / slip_change}) {
        sim::kernel::Record changed = heard.record;
        for (sim::kernel::Slip& slip : changed.slips) slip.distance *= factor;
        verdicts.sure = verdicts.sure && judge(changed, speed, hearing).motion == verdicts.motion;
    }
    return verdicts;
}

/// Do all these strokes, shorter or faster, move as that one?
std::vector<bool> agreeing(const Scene& scene, const std::vector<std::size_t>& chosen,
                           const std::vector<Verdicts>& verdicts) {
    std::vector<sim::Stroke> others;
    for (const std::size_t i : chosen)
        for (const double part : {0.6, 0.8, 1.0}) {
            others.push_back(scene.strokes[i]);
            others.back().duration *= part;
            if (part == 1.0) others.back().speed *= 1.0 + speed_change;
        }
    const auto results = play_all(scene.note, others, {});
    std::vector<bool> agree;
    for (std::size_t k = 0; k < chosen.size(); ++k)
        agree.push_back(std::all_of(
            results.begin() + static_cast<std::ptrdiff_t>(3 * k),
            results.begin() + static_cast<std::ptrdiff_t>(3 * k + 3),
            [&](const sim::StrokeResult& result) { return result.verdict.motion == verdicts[chosen[k]].motion; }));
    return agree;
}

/// Up to as many of each motion as are wanted, drawn by lot.
std::vector<std::size_t> drawn(const std::vector<Heard>& heard, const std::vector<Verdicts>& verdicts,
                               const ScenePlan& plan, Dice& dice) {
    std::vector<std::size_t> order(verdicts.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
        std::swap(order[i], order[dice.below(i + 1)]);
    }
    std::array<std::size_t, 6> had{};
    std::vector<std::size_t> chosen;
    for (const std::size_t i : order) {
        if (heard[i].record.diverged || !plan.wanted[static_cast<std::size_t>(verdicts[i].motion)]) continue;
        if (had[static_cast<std::size_t>(verdicts[i].motion)]++ < plan.most) chosen.push_back(i);
    }
    return chosen;
}

}  // namespace

std::vector<BowedStroke> scene_strokes(const ScenePlan& plan, int number) {
    Dice dice(plan.seed, static_cast<std::uint32_t>(number));
    const Scene scene = scene_of(plan, dice);
    std::vector<Heard> heard = heard_strokes(scene);
    std::vector<Verdicts> verdicts;
    for (std::size_t i = 0; i < heard.size(); ++i) verdicts.push_back(verdicts_of(scene, scene.strokes[i], heard[i]));
    const std::vector<std::size_t> chosen = drawn(heard, verdicts, plan, dice);
    if (chosen.empty()) return {};
    const std::vector<bool> agree =
        plan.ask_clear ? agreeing(scene, chosen, verdicts) : std::vector<bool>(chosen.size(), true);
    std::vector<BowedStroke> strokes;
    for (std::size_t k = 0; k < chosen.size(); ++k) {
        const std::size_t i = chosen[k];
        const sim::Stroke& stroke = scene.strokes[i];
        strokes.push_back(
            {.force = std::move(heard[i].force),
             .body = sim::sound::radiating_modes(scene.note.bridge),
             .motion = verdicts[i].motion,
             .clear = agree[k] && verdicts[i].sure,
             .fundamental_share = verdicts[i].fundamental_share,
             .string_hz = fundamental(scene.note.string),
             .usual_force = 2.0 * wave_impedance(scene.note.string) * stroke.speed / (std::numbers::pi * usual_ratio),
             .scene = number,
             .what = scene.what + " force " + sim::short_number(stroke.force)});
    }
    return strokes;
}

Body redrawn(const Body& body, Dice& dice) {
    Body other = body;
    const double all = dice.by_ratio(0.8, 1.25);
    for (sim::sound::RadiatingMode& mode : other) {
        mode.hz *= all * dice.by_ratio(0.88, 1.14);
        mode.q *= dice.by_ratio(0.6, 1.6);
        mode.radiation = (dice.chance(0.5) ? -1.0 : 1.0) * dice.by_ratio(0.4, 1.6);
    }
    return other;
}

RecordedStroke recorded(const BowedStroke& stroke, const Microphone& microphone, Dice& dice) {
    constexpr double heard_to = 10000.0;  // Hz
    RecordedStroke result{.sound = stroke.force, .noise = 0.0};
    double usual = 0.0;  // power of the ideal sawtooth through the body
    for (int n = 1; n * stroke.string_hz < heard_to; ++n)
        usual += 0.5 * std::norm(stroke.usual_force / n * sim::sound::response(microphone.body, n * stroke.string_hz));
    result.noise = std::sqrt(usual) * analysis::ratio_from_db(-microphone.noise_db);
    if (!microphone.body.empty()) {
        sim::sound::BodySound body(microphone.body, stroke.force.sample_rate);
        for (double& sample : result.sound.samples) sample = body.sound(sample);
    }
    if (microphone.room) result.sound = in_room(result.sound, *microphone.room);
    for (double& sample : result.sound.samples) sample += result.noise * dice.normal();
    return result;
}

}  // namespace tests
