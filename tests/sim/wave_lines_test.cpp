// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/wave_lines.hpp"

#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"
#include "sim/kernel/bridge_end.hpp"
#include "tests/published/cello_d.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <random>

namespace {

using namespace sim;

constexpr double pi = std::numbers::pi;
constexpr double rate = 200000.0;
constexpr double knock_ratio = 0.031;  // of the length: no partial up to the twentieth has a node there

Note quiet_note(const String& string) { return tests::note_of(string, tests::rigid_bridge(), {}); }

/// Waves at the rigid bridge after one knock on the string.
std::vector<double> rung(const Note& note, double duration) {
    kernel::WaveLines lines(kernel_note(note, rate).transverse, rate);
    lines.place_bow(knock_ratio * note.string.length);
    std::vector<double> at_bridge;
    for (int t = 0; t < static_cast<int>(duration * rate); ++t) {
        at_bridge.push_back(lines.wave_at_bridge());
        lines.leave_bridge(-at_bridge.back());
        lines.turn_at_stop();
        if (t == 0) lines.push(1.0);
        lines.step();
    }
    return at_bridge;
}

/// The partial near `hz` at `from` (s), under a window of `length` s.
struct Look {
    double hz, from, length;
};
std::complex<double> partial_at(const std::vector<double>& signal, const Look& look) {
    const double samples = look.length * rate;
    const std::vector<double> window = analysis::hann_window(samples);
    const auto first = static_cast<std::size_t>(std::lround(look.from * rate));
    std::complex<double> sum = 0.0;
    for (std::size_t j = 0; j < window.size(); ++j)
        sum += window[j] * signal[first + j] * std::polar(1.0, -2.0 * pi * look.hz / rate * static_cast<double>(j));
    return sum;
}

bool answered(const String& string, int n) {
    return n <= 20 && inharmonicity(string) * n * n <= 0.1 && n * fundamental(string) <= 8000.0;
}

/// Pitch and decay of every partial of a knocked string against the string's own formulas.
void expect_partials(const String& string) {
    const double period = 1.0 / fundamental(string);
    const std::vector<double> signal = rung(quiet_note(string), 24.0 * period);
    for (int n = 1; answered(string, n); ++n) {
        const double hz = partial_frequency(string, n);
        const double apart = std::round(3.0 * period * rate) / rate;
        const auto early = partial_at(signal, {hz, 2.0 * period, 16.0 * period});
        const auto late = partial_at(signal, {hz, 2.0 * period + apart, 16.0 * period});
        // both sums count their phase from their own first sample: the partial has turned by 2 pi f apart in between
        const double turn = std::remainder(std::arg(late / early) - 2.0 * pi * hz * apart, 2.0 * pi);
        const double measured = hz + turn / (2.0 * pi * apart);
        EXPECT_LT(std::abs(analysis::cents_between(measured, hz)), 3.0) << string.name << " partial " << n;
        const double decay = std::log(std::abs(early / late)) / apart;
        EXPECT_NEAR(decay / (pi * hz * loss_factor(string, n)), 1.0, 0.1) << string.name << " partial " << n;
    }
}

String of_preset(const char* name, std::size_t which, double stop) {
    const Preset preset = find_preset(name);
    return stopped(open_string(preset, preset.strings[which]), stop);
}

/// Sum of squares of what reaches the bridge.
double energy(std::span<const double> waves) {
    double sum = 0.0;
    for (double wave : waves) sum += wave * wave;
    return sum;
}

}  // namespace

/// source   f_n = n f0 sqrt(1 + B n^2) and Q_n of [Woodhouse2004] (form from memory)
/// expects  a knocked string rings so, as sampled: partials to 20 with B n^2 <= 0.1 and n f0 <= 8 kHz
/// margin   3 cents, 10 % of the decay
TEST(WaveLinesTest, KnockedTrebleStringRingsWithItsPartialsAndDecays) {
    expect_partials(of_preset("division_bass_viol", 0, 7.0));
}

TEST(WaveLinesTest, KnockedOverspunStringRingsWithItsPartialsAndDecays) {
    expect_partials(of_preset("division_bass_viol", 5, 0.0));
}

/// source   what is pushed in at the bow's place is force times the speed it gives there (derived)
/// expects  wherever the bow stands between two samples, all of it and no more arrives at a bridge that takes all
/// margin   1e-9
TEST(WaveLinesTest, PushBetweenTwoSamplesGivesTheEnergyOfItsOwnWork) {
    const Note note = quiet_note(tests::cello_d({.losses = false, .torsion = false, .stiffness = false}));
    const kernel::Lines design = kernel_note(note, rate).transverse;
    for (double samples : {40.0, 40.25, 40.5, 40.9}) {
        kernel::WaveLines lines(design, rate);
        lines.place_bow(samples / rate * design.speed);
        const double work = 2.0 * lines.yield() * 2.0;  // N m/s: force times the place's speed
        double arrived = 0.0;
        for (int t = 0; t < static_cast<int>(0.05 * rate); ++t) {
            const double in = lines.wave_at_bridge();
            arrived += design.impedance * in * in;
            lines.leave_bridge(0.0);
            lines.turn_at_stop();
            if (t == 0) lines.push(2.0);
            lines.step();
        }
        EXPECT_NEAR(arrived / work, 1.0, 1e-9) << samples;
    }
}

/// expects  noise put into a string falls from period to period where anything takes energy, and stays elsewhere
/// margin   2 % without losses: partials beat within 100 periods; with losses none, a bound
TEST(WaveLinesTest, NoiseOnAStringNeverGrows) {
    const Preset bass = find_preset("division_bass_viol");
    for (bool lossy : {false, true}) {
        String string = open_string(bass, bass.strings[2]);
        if (!lossy) string.damping = {};
        const Note note = quiet_note(string);
        kernel::WaveLines lines(kernel_note(note, rate).transverse, rate);
        kernel::BridgeEnd bridge(lossy ? bass.bridge : Bridge{}, wave_impedance(string), rate);
        lines.place_bow(0.1 * string.length);
        std::mt19937 random(3);
        std::normal_distribution<double> noise;
        const auto stretch = static_cast<std::size_t>(std::lround(100.0 * rate / fundamental(string)));
        std::vector<double> waves;
        for (std::size_t t = 0; t < 6 * stretch; ++t) {
            waves.push_back(lines.wave_at_bridge());
            lines.leave_bridge(bridge.reflect(waves.back()));
            lines.turn_at_stop();
            if (t < stretch) lines.push(noise(random));
            lines.step();
        }
        const std::span<const double> all(waves);
        double last = energy(all.subspan(stretch, stretch));
        for (std::size_t k = 2; k < 6; ++k) {
            const double now = energy(all.subspan(k * stretch, stretch));
            EXPECT_LT(now / last, lossy ? 1.0 : 1.02) << "stretch " << k;
            EXPECT_GT(now / last, lossy ? 0.0 : 0.98) << "stretch " << k;
            last = now;
        }
    }
}

/// source   ideal Helmholtz motion (derived): under the bow v while it sticks and v - v/beta while it slips, on the
///          bridge a sawtooth of 2 Z0 v/beta = 0.612 N peak to peak
/// expects  the start is that motion, and an ideal string left alone goes on so
/// margin   1 %, off the corners: they are as sharp as a sample
TEST(WaveLinesTest, StartIsTheIdealMotion) {
    const Note note = quiet_note(tests::cello_d({.losses = false, .torsion = false, .stiffness = false}));
    const double speed = 0.05;
    const double place = tests::cello_d_ratio * note.string.length;
    const double own_rate = sample_rate(note, place);
    const auto period = static_cast<int>(std::lround(own_rate / tests::cello_d_hz));
    const kernel::Record record = kernel::run_reference(
        kernel_note(note, own_rate),
        {.speed = constant_profile(speed), .force = constant_profile(0.0), .contact_point = constant_profile(place)},
        {.helmholtz = true, .speed = speed}, {.steps = 5 * period, .waveforms = true});
    int sticking = 0, slipping = 0;
    for (double v : record.velocity) {
        if (std::abs(v - speed) < 0.01 * speed) ++sticking;
        if (std::abs(v - speed + speed / tests::cello_d_ratio) < 0.01 * speed / tests::cello_d_ratio) ++slipping;
    }
    const double count = static_cast<double>(record.velocity.size());
    EXPECT_NEAR(slipping / count, tests::cello_d_ratio, 0.01);
    EXPECT_NEAR(sticking / count, 1.0 - tests::cello_d_ratio, 0.02);
    std::vector<double> sorted = record.bridge_force;
    std::ranges::sort(sorted);
    const double span = sorted[sorted.size() * 99 / 100] - sorted[sorted.size() / 100];  // 98 % of a sawtooth
    EXPECT_NEAR(span, 0.98 * 0.612, 0.01 * 0.612);
}

/// expects  the part of a bridge force that was asked for is the end of the whole one, waveforms come on demand
TEST(ReferenceTest, KeepsWhatWasAskedForAndNothingElse) {
    const Note note = tests::note_of(tests::cello_d({}), tests::resistive_bridge(100.0), {});
    const kernel::Drive drive{
        .speed = constant_profile(0.05), .force = constant_profile(0.3), .contact_point = constant_profile(0.06)};
    const kernel::Note ready = kernel_note(note, sample_rate(note, 0.06));
    const kernel::Record whole = kernel::run_reference(ready, drive, {}, {.steps = 3000, .waveforms = true});
    const kernel::Record end = kernel::run_reference(ready, drive, {}, {.steps = 3000, .bridge_from = 2000});
    ASSERT_EQ(whole.bridge_force.size(), 3000U);
    EXPECT_EQ(whole.velocity.size(), 3000U);
    EXPECT_EQ(end.bridge_force, std::vector<double>(whole.bridge_force.begin() + 2000, whole.bridge_force.end()));
    EXPECT_TRUE(end.velocity.empty());
    EXPECT_EQ(end.slips, whole.slips);
    EXPECT_FALSE(whole.diverged);
}
