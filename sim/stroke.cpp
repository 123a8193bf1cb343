// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/stroke.hpp"

#include "analysis/decimate.hpp"
#include "sim/stroke_run.hpp"
#include "sim/tone_meter.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim {

namespace {

constexpr double settled_periods = 18.0;
constexpr double spare_time = 0.05;  // s
constexpr double held_decays = 5.0;  // of the first partial
constexpr double held_periods = 300.0;
constexpr double least_slip_share = 0.6;  // of the contact ratio, speed laws

kernel::Drive drive_of(const Stroke& stroke) {
    const bool held = stroke.beginning == Beginning::held;
    return {.speed = held ? constant_profile(stroke.speed) : rising_profile({stroke.speed, stroke.rise}),
            .force = constant_profile(stroke.force),
            .contact_point = constant_profile(stroke.contact_point),
            .lengthwise = stroke.lengthwise};
}

BowAtEnd bow_at_end(const Stroke& stroke, const StrokeRun& run) {
    return {.speed = run.drive.speed,
            .last_speed = stroke.speed,
            .contact_point = stroke.contact_point,
            .duration = stroke.duration};
}

StrokeResult result_from(const Stroke& stroke, const StrokeRun& run, const Judged& answer) {
    StrokeResult result{.stroke = stroke,
                        .sample_rate = run.sample_rate,
                        .verdict = answer.verdict,
                        .tone = answer.tone,
                        .speak_time = {}};
    if (result.verdict.helmholtz_from) result.speak_time = *result.verdict.helmholtz_from - *result.verdict.first_slip;
    return result;
}

}  // namespace

StrokeRun run_of(const Note& note, const Stroke& stroke, int times) {
    StrokeRun run{.sample_rate = sample_rate(note, stroke.contact_point, times), .drive = drive_of(stroke)};
    run.start = {.helmholtz = stroke.beginning == Beginning::held, .speed = stroke.speed, .warmth = {}};
    run.wanted.steps = static_cast<int>(std::lround(stroke.duration * run.sample_rate));
    const int heard = static_cast<int>(judged_for * run.sample_rate);
    run.wanted.bridge_from = std::max(0, run.wanted.steps - heard);
    return run;
}

StrokeResult result_of(const Note& note, const Stroke& stroke, const StrokeRun& run, const kernel::Record& record) {
    const BowAtEnd bow = bow_at_end(stroke, run);
    const Judged answer = judged(note, record, run.sample_rate, bow);
    return result_from(stroke, run, answer);
}

StrokeResult result_of(const Note& note, const Stroke& stroke, const StrokeRun& run, const HeardRun& heard) {
    Judged answer;
    if (!heard.record.diverged) answer.tone = heard.tone;
    answer.verdict = verdict_of(note, heard.record, answer.tone, bow_at_end(stroke, run));
    return result_from(stroke, run, answer);
}

Judged judged(const Note& note, const kernel::Record& record, double sample_rate, const BowAtEnd& bow) {
    const double f0 = fundamental(note.string);
    const auto heard = static_cast<std::size_t>(judged_for * sample_rate);
    std::span<const double> bridge_force(record.bridge_force);
    if (bridge_force.size() > heard) bridge_force = bridge_force.last(heard);
    Tone tone;
    if (!record.diverged) tone = tone_of(bridge_force, {sample_rate, f0}, note.bridge);
    return {.tone = tone, .verdict = verdict_of(note, record, tone, bow)};
}

Hearing hearing_of(const Note& note, const Tone& tone, const BowAtEnd& bow) {
    const double ratio = bow.contact_point / note.string.length;
    const double ideal = 2.0 * wave_impedance(note.string) * bow.last_speed / (std::numbers::pi * ratio);
    const bool speed_law = note.friction.law != FrictionLaw::thermal;
    return {.period = 1.0 / fundamental(note.string),
            .contact_ratio = ratio,
            .duration = bow.duration,
            .fundamental_share = ideal > 0.0 ? tone.bridge_fundamental / ideal : 0.0,
            .least_slip_fraction = speed_law ? least_slip_share * ratio : 0.0};
}

Verdict verdict_of(const Note& note, const kernel::Record& record, const Tone& tone, const BowAtEnd& bow) {
    return judge(record, bow.speed, hearing_of(note, tone, bow));
}

double listening_time(const Note& note) {
    return std::max(heard_for, settled_periods / fundamental(note.string)) + spare_time;
}

double started_duration(const Note& note, const Player& player) {
    const double period = 1.0 / fundamental(note.string);
    const double speaks_within = std::max(player.speak_time, player.speak_periods * period);
    return player.rise + speaks_within + listening_time(note);
}

Stroke started_stroke(const Note& note, const Player& player, const Touch& touch) {
    return {.contact_point = touch.contact_point,
            .force = touch.force,
            .speed = player.speed,
            .rise = player.rise,
            .duration = started_duration(note, player)};
}

double held_duration(const Note& note) {
    const double f0 = fundamental(note.string);
    const double loss = loss_factor(note.string, 1.0);
    const double decays = loss > 0.0 ? held_decays / (std::numbers::pi * f0 * loss) : 0.0;
    return std::max(decays, held_periods / f0);
}

Tone tone_of(std::span<const double> bridge_force, const ToneWindow& window, const Bridge& bridge) {
    if (bridge_force.empty()) return {};
    const auto [low, high] = std::ranges::minmax(bridge_force);
    return ToneMeter(bridge).tone({.force = analysis::decimated_for_analysis(bridge_force, window.sample_rate),
                                   .peak_to_peak = high - low,
                                   .expected_hz = window.expected_hz});
}

StrokeResult play(const Note& note, const Stroke& stroke, int times) {
    const StrokeRun run = run_of(note, stroke, times);
    return result_of(note, stroke, run,
                     kernel::run_reference(kernel_note(note, run.sample_rate), run.drive, run.start, run.wanted));
}

Played play_recorded(const Note& note, const Stroke& stroke, int times) {
    StrokeRun run = run_of(note, stroke, times);
    run.wanted.bridge_from = 0;
    run.wanted.waveforms = true;
    kernel::Record record = kernel::run_reference(kernel_note(note, run.sample_rate), run.drive, run.start, run.wanted);
    StrokeResult result = result_of(note, stroke, run, record);
    return {std::move(result), std::move(record)};
}

FreePlayed play_freely(const Note& note, const FreeStroke& stroke, int times) {
    const double nearest = smallest_value(stroke.drive.contact_point);
    FreePlayed played{.sample_rate = sample_rate(note, nearest, times), .record = {}};
    const kernel::Wanted wanted{.steps = static_cast<int>(std::lround(stroke.duration * played.sample_rate)),
                                .waveforms = true};
    played.record = kernel::run_reference(kernel_note(note, played.sample_rate), stroke.drive, stroke.start, wanted);
    return played;
}

}  // namespace sim
