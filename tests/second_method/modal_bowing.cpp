// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/second_method/modal_bowing.hpp"

#include "sim/kernel/rosin.hpp"
#include "sim/kernel/slip_watch.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace tests {

namespace {

constexpr double least_highest_hz = 40000.0;
constexpr double ripples = 3.0;             // modes past 1/beta, where the ripples between bow and bridge lie
constexpr double samples_per_period = 4.0;  // of the highest mode
constexpr double heard_for = 0.104;         // s, what sim::tone_of is given by sim::play
constexpr double least_slip_share = 0.6;    // of the contact ratio for speed laws, as sim::play asks

struct Run {
    sim::kernel::Record record;
    std::vector<double> bridge_force;
};

Run run(const sim::Note& note, const sim::Stroke& stroke, const ModalFineness& fineness) {
    const double rate = fineness.sample_rate;
    const std::vector<ModalPartial> partials = fineness.of_loop ? partials_of_loop(note.transverse, fineness.highest_hz)
                                                                : partials_by_formula(note.string, fineness.highest_hz);
    ModalString string(note.string, partials,
                       {.resistance = note.bridge.kind == sim::BridgeKind::resistance ? note.bridge.resistance : 0.0,
                        .contact_point = stroke.contact_point,
                        .sample_rate = rate});
    const int steps = static_cast<int>(std::lround(stroke.duration * rate));
    const int heard_from = std::max(0, steps - static_cast<int>(heard_for * rate));
    sim::kernel::Rosin rosin(note.contact, rate);
    sim::kernel::SlipWatch watch(rate);
    int slipped_late = 0;
    string.fill_with_helmholtz(stroke.speed);
    const double full_slip = stroke.speed * note.string.length / stroke.contact_point;
    Run run;
    for (int t = 0; t < steps; ++t) {
        const double force = rosin.rub(string.free_velocity() - stroke.speed, string.yield(), stroke.force);
        string.push(force);
        if (watch.see(t, -rosin.slip(), full_slip)) run.record.slips.push_back(watch.slip());
        if (t >= steps / 2 && rosin.slips()) ++slipped_late;
        if (t >= heard_from) run.bridge_force.push_back(string.bridge_force());
    }
    if (watch.slips()) run.record.slipping_since = watch.slip().start;
    run.record.slipped_time_late = slipped_late / rate;
    return run;
}

}  // namespace

ModalFineness usual_fineness(const sim::Note& note, double contact_point) {
    const double past_ripples = ripples * note.string.length / contact_point * sim::fundamental(note.string);
    const double highest = std::max(least_highest_hz, past_ripples);
    return {.sample_rate = std::max(samples_per_period * highest, sim::sample_rate(note, contact_point)),
            .highest_hz = highest};
}

ModalFineness finer_by(const ModalFineness& fineness, double times) {
    ModalFineness finer = fineness;
    finer.sample_rate *= times;
    finer.highest_hz *= times;
    return finer;
}

sim::StrokeResult play_modal(const sim::Note& note, const sim::Stroke& stroke, const ModalFineness& fineness) {
    assert(note.bridge.kind != sim::BridgeKind::modes && note.string.torsion_impedance == 0.0);
    assert(stroke.beginning == sim::Beginning::held && note.end != sim::StopEnd::finger);
    const Run made = run(note, stroke, fineness);
    sim::StrokeResult result{.stroke = stroke, .sample_rate = fineness.sample_rate};
    const double f0 = sim::fundamental(note.string);
    result.tone = sim::tone_of(made.bridge_force, {fineness.sample_rate, f0}, note.bridge);
    const double ratio = stroke.contact_point / note.string.length;
    const double ideal = 2.0 * sim::wave_impedance(note.string) * stroke.speed / (std::numbers::pi * ratio);
    const bool speed_law = note.friction.law != sim::FrictionLaw::thermal;
    result.verdict = sim::judge(made.record, sim::constant_profile(stroke.speed),
                                {.period = 1.0 / f0,
                                 .contact_ratio = ratio,
                                 .duration = stroke.duration,
                                 .fundamental_share = result.tone.bridge_fundamental / ideal,
                                 .least_slip_fraction = speed_law ? least_slip_share * ratio : 0.0});
    return result;
}

sim::ForceWindow modal_held_window(const sim::Note& note, const sim::Player& player, double contact_point,
                                   const sim::ForceScan& scan, const ModalFineness& fineness) {
    const double duration = sim::held_duration(note);
    return sim::find_force_window(scan, [&](double force) {
        const sim::StrokeResult result = play_modal(note,
                                                    {.contact_point = contact_point,
                                                     .force = force,
                                                     .speed = player.speed,
                                                     .duration = duration,
                                                     .beginning = sim::Beginning::held},
                                                    fineness);
        return sim::ForceAnswer{result.verdict.motion == sim::Motion::helmholtz, result.verdict.motion};
    });
}

}  // namespace tests
