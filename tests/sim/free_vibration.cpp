// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sim/free_vibration.hpp"

#include "analysis/decimate.hpp"
#include "analysis/spectrum.hpp"
#include "analysis/units.hpp"
#include "sim/kernel/wave_lines.hpp"
#include "tests/analysis/temporary_folder.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <complex>
#include <numbers>
#include <sstream>
#include <stdexcept>

namespace tests {

namespace {

using Complex = std::complex<double>;
constexpr double pi = std::numbers::pi;
constexpr double bowed_at = 0.1;          // of the length: the sample rate follows
constexpr double first_heard = 2.0;       // periods after the knock
constexpr double window_length = 16.0;    // periods
constexpr double windows_apart = 3.0;     // periods
constexpr double looked_around = 0.3;     // of the fundamental, either side of an expected partial
constexpr double least_mode_rate = 40e3;  // Hz of what the tool is given: its work grows with the samples

struct Look {
    double hz, from, length;  // Hz, s, s
};
Complex partial_at(const Ringing& ringing, const Look& look) {
    const std::vector<double> window = analysis::hann_window(look.length * ringing.rate);
    const auto first = static_cast<std::size_t>(std::lround(look.from * ringing.rate));
    const Complex step = std::polar(1.0, -2.0 * pi * look.hz / ringing.rate);
    Complex turn = 1.0;
    Complex sum = 0.0;
    for (std::size_t j = 0; j < window.size(); ++j, turn *= step) sum += window[j] * ringing.signal[first + j] * turn;
    return sum;
}

/// The tool's rows: frequency, decay constant, Q, amplitude, phase, error, with commas between.
struct Mode {
    double hz = 0.0, decay = 0.0, error = 0.0;
};
std::vector<Mode> modes_from(const std::string& text) {
    std::vector<Mode> modes;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        std::vector<double> values;
        const char* at = line.data();
        const char* const end = at + line.size();
        while (at < end) {
            double value = 0.0;
            const auto [next, error] = std::from_chars(at, end, value);
            if (error != std::errc()) break;
            values.push_back(value);
            at = next;
            while (at < end && (*at == ',' || *at == ' ')) ++at;
        }
        if (values.size() == 6) modes.push_back({.hz = values[0], .decay = values[1], .error = values[5]});
    }
    return modes;
}

std::string written(double value) {
    char text[32];
    return {text, std::to_chars(text, text + sizeof text, value).ptr};
}

}  // namespace

int last_answered(const sim::String& string) {
    int n = 1;
    while (n < 20 && sim::inharmonicity(string) * (n + 1) * (n + 1) <= 0.1 &&
           (n + 1) * sim::fundamental(string) <= 8000.0)
        ++n;
    return n;
}

std::vector<RingingPartial> partials_by_formula(const sim::String& string) {
    std::vector<RingingPartial> partials;
    for (int n = 1; n <= last_answered(string); ++n) {
        const double hz = sim::partial_frequency(string, n);
        partials.push_back({.n = n, .hz = hz, .decay = pi * hz * sim::loss_factor(string, n)});
    }
    return partials;
}

std::vector<RingingPartial> partials_by_design(const sim::Note& note) {
    std::vector<RingingPartial> partials = partials_by_formula(note.string);
    for (RingingPartial& partial : partials) {
        double delay = 0.0;
        for (int round = 0; round < 4; ++round) {
            const double omega = 2.0 * pi * partial.hz;
            const Complex here = sim::loop_response(note.transverse, omega);
            delay = -std::arg(sim::loop_response(note.transverse, omega + 0.1) / here) / 0.1;
            partial.hz += std::arg(here) / delay / (2.0 * pi);  // a round trip that turns too little needs more
        }
        partial.decay = -std::log(std::abs(sim::loop_response(note.transverse, 2.0 * pi * partial.hz))) / delay;
    }
    return partials;
}

Ringing rung(const sim::Note& note, double duration, int times) {
    Ringing ringing{.signal = {},
                    .rate = sim::sample_rate(note, bowed_at * note.string.length, times),
                    .period = 1.0 / sim::fundamental(note.string)};
    sim::kernel::WaveLines lines(sim::kernel_note(note, ringing.rate).transverse, ringing.rate);
    const int steps = static_cast<int>(duration * ringing.rate);
    for (int t = 0; t < steps; ++t) {
        ringing.signal.push_back(lines.wave_at_bridge());
        lines.leave_bridge((t == 0 ? 1.0 : 0.0) - ringing.signal.back());
        lines.turn_at_stop();
        lines.step();
    }
    return ringing;
}

std::vector<RingingPartial> measured_by_windows(const Ringing& ringing, const std::vector<RingingPartial>& expected) {
    const double apart = std::round(windows_apart * ringing.period * ringing.rate) / ringing.rate;
    std::vector<RingingPartial> measured;
    for (const RingingPartial& partial : expected) {
        const Complex early =
            partial_at(ringing, {partial.hz, first_heard * ringing.period, window_length * ringing.period});
        const Complex late =
            partial_at(ringing, {partial.hz, first_heard * ringing.period + apart, window_length * ringing.period});
        // both sums count their phase from their own first sample: the partial turned by 2 pi f apart in between
        const double turn = std::remainder(std::arg(late / early) - 2.0 * pi * partial.hz * apart, 2.0 * pi);
        measured.push_back({.n = partial.n,
                            .hz = partial.hz + turn / (2.0 * pi * apart),
                            .decay = std::log(std::abs(early / late)) / apart});
    }
    return measured;
}

std::vector<RingingPartial> measured_by_harmonic_inversion(const Ringing& ringing,
                                                           const std::vector<RingingPartial>& expected) {
    const auto heard_from = static_cast<std::size_t>(first_heard * ringing.period * ringing.rate);
    const analysis::Signal heard = analysis::decimate(std::span(ringing.signal).subspan(heard_from), ringing.rate,
                                                      analysis::decimation_factor(ringing.rate, least_mode_rate));
    const TemporaryFolder folder;
    std::string samples;
    for (double sample : heard.samples) samples += written(sample) + "\n";
    put(folder / "samples", samples);
    std::string command = "harminv -f 50 -t " + written(1.0 / heard.sample_rate);
    for (const RingingPartial& partial : expected)
        command += " " + written(partial.hz - looked_around / ringing.period) + "-" +
                   written(partial.hz + looked_around / ringing.period);
    command += " <" + (folder / "samples").string() + " >" + (folder / "modes").string();
    if (std::system(command.c_str()) != 0) throw std::runtime_error("harminv is missing or failed");
    const std::vector<Mode> modes = modes_from(contents(folder / "modes"));
    std::vector<RingingPartial> measured;
    for (const RingingPartial& partial : expected) {
        Mode best{.error = 1.0};
        for (const Mode& mode : modes)
            if (std::abs(mode.hz - partial.hz) < looked_around / ringing.period && mode.error < best.error) best = mode;
        measured.push_back({.n = best.hz > 0.0 ? partial.n : 0, .hz = best.hz, .decay = best.decay});
    }
    return measured;
}

double window_duration(const sim::Note& note) { return 24.0 / sim::fundamental(note.string); }

double inversion_duration(const sim::Note& note) { return std::max(0.5, 60.0 / sim::fundamental(note.string)); }

Difference greatest_difference(const std::vector<RingingPartial>& measured,
                               const std::vector<RingingPartial>& expected) {
    Difference greatest;
    for (std::size_t i = 0; i < expected.size(); ++i) {
        if (measured[i].n != expected[i].n) return {.cents = 1e3, .decay = 1e3};
        const double cents = std::abs(analysis::cents_between(measured[i].hz, expected[i].hz));
        greatest.cents = std::max(greatest.cents, cents);
        greatest.decay = std::max(greatest.decay, std::abs(measured[i].decay / expected[i].decay - 1.0));
    }
    return greatest;
}

void expect_alike(const std::vector<RingingPartial>& measured, const std::vector<RingingPartial>& expected,
                  const std::string& name) {
    ASSERT_EQ(measured.size(), expected.size()) << name;
    const Difference difference = greatest_difference(measured, expected);
    EXPECT_LT(difference.cents, most_cents) << name;
    EXPECT_LT(difference.decay, most_decay) << name;
}

}  // namespace tests
