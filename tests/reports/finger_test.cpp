// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/units.hpp"
#include "sim/force_window.hpp"
#include "sim/ring.hpp"
#include "sim/text.hpp"
#include "tests/reports/report_file.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <complex>
#include <numbers>

/// What a finger's width would change: the pad of the simulation, a spring and damper at one point, against flesh that
/// carries the string over 9 mm.
namespace {

using namespace sim;
using Complex = std::complex<double>;

constexpr double pi = std::numbers::pi;
constexpr double patch_width = 0.009;  // m, contact patch of a light touch (from memory)
constexpr double loss_tangent = 1.0;   // of flesh, from memory: between a third and one
constexpr int partials = 20;

/// Flesh under the string: a bed of stiffness kappa (i w/w1)^a per length on a hard board.  Below `decay` metres a
/// steady pull has died away to 1/e at the fundamental.
struct Flesh {
    double decay;  ///< m
};

/// How the patch turns a wave of partial x (not necessarily whole) round, less its sign: (Zl - Z)/(Zl + Z), where a
/// string on that bed has Zl = Z (g c/s) coth(g width), g^2 = s^2/c^2 + kappa/T.
Complex patch_turn(const Flesh& flesh, double length, double x) {
    const double k = pi * x / length;
    const double a = 2.0 / pi * std::atan(loss_tangent);
    Complex g = std::sqrt(-k * k + std::pow(Complex(0.0, x), a) / (flesh.decay * flesh.decay));
    if (g.real() < 0.0) g = -g;
    const Complex load = g / Complex(0.0, k) / std::tanh(g * patch_width);
    return (load - 1.0) / (load + 1.0);
}

/// The same for a row of loss sections.
Complex sections_turn(const std::vector<LossSection>& sections, double omega) {
    Complex sum = 1.0;
    for (const LossSection& section : sections)
        sum -= section.share * Complex(0.0, omega) / (Complex(0.0, omega) + section.corner);
    return sum;
}

double end_q(Complex turn, double x) { return -pi * x / std::log(std::abs(turn)); }

double mean_q(const Flesh& flesh, double length) {
    double loss = 0.0;
    for (int n = 1; n <= 4; ++n) loss += 0.25 / end_q(patch_turn(flesh, length, n), n);
    return 1.0 / loss;
}

/// How far inside the pad's or patch's edge the string seems to end for a partial, m.
double seeming_end(Complex turn, double x, double length) { return -std::arg(turn) / (2.0 * pi * x) * length; }

double cents_sharp(double length, double first_end, double end) {
    return 1200.0 / std::numbers::ln2 * (first_end - end) / length;
}

/// Four sections that lose as the patch does at the first twenty partials: shares by multiplicative steps, which keep
/// them positive.
std::vector<LossSection> patch_losses(const Flesh& flesh, double length, double omega) {
    constexpr std::array<double, 4> corners{0.7, 2.5, 9.0, 32.0};
    std::array<double, 4> shares{0.01, 0.01, 0.01, 0.01};
    const auto part = [&](std::size_t k, double n) { return n * n / (n * n + corners[k] * corners[k]); };
    for (int round = 0; round < 4000; ++round) {
        std::array<double, 4> wanted{};
        std::array<double, 4> made{};
        for (int n = 1; n <= partials; ++n) {
            const double loss = 1.0 - std::abs(patch_turn(flesh, length, n));
            double now = 0.0;
            for (std::size_t k = 0; k < 4; ++k) now += shares[k] * part(k, n);
            for (std::size_t k = 0; k < 4; ++k) {
                wanted[k] += part(k, n) / loss;
                made[k] += part(k, n) * now / (loss * loss);
            }
        }
        for (std::size_t k = 0; k < 4; ++k) shares[k] *= wanted[k] / made[k];
    }
    std::vector<LossSection> sections;
    for (std::size_t k = 0; k < 4; ++k) sections.push_back({.corner = corners[k] * omega, .share = shares[k]});
    return sections;
}

/// The note with the patch in the pad's place; the first partial keeps its pitch, as with the pad.
Note with_patch(const Note& fret, const Flesh& flesh) {
    Note note = fret;
    const double omega = 2.0 * pi * partial_frequency(note.string, 1.0);
    note.transverse.end_losses = patch_losses(flesh, note.string.length, omega);
    note.transverse.plain_delay += std::arg(sections_turn(note.transverse.end_losses, omega)) / omega;
    return note;
}

double least_held(const Note& note, const Player& player, double place) {
    ForceScan scan = usual_scan(note, player, place);
    scan.lowest /= 6.0;
    scan.steps += 9;
    const ForceWindow held = held_window(note, player, place, scan);
    return held.main ? held.intervals[*held.main].low : 0.0;
}

std::string mm(double metres, int decimals) { return fixed_number(analysis::mm_from_metres(metres), decimals); }

struct Case {
    const char* preset;
    double stop;
    double decay;  ///< m
};

std::string row_of(const Case& c) {
    Preset preset = find_preset(c.preset);
    const Flesh flesh{c.decay};
    const Note fret = make_note(preset, preset.strings[0], c.stop, StopEnd::fret);
    const double length = fret.string.length;
    const double q = mean_q(flesh, length);
    preset.finger_q = q;
    const Note pad = make_note(preset, preset.strings[0], c.stop, StopEnd::finger);
    const double omega = 2.0 * pi * partial_frequency(fret.string, 1.0);
    const auto patch_at = [&](double n) { return patch_turn(flesh, length, n); };
    const auto pad_at = [&](double n) { return sections_turn(pad.transverse.end_losses, n * omega); };
    const auto qs = [&](const auto& turn) {
        return fixed_number(end_q(turn(1.0), 1.0), 0) + ", " + fixed_number(end_q(turn(4.0), 4.0), 0) + ", " +
               fixed_number(end_q(turn(16.0), 16.0), 0);
    };
    const auto ends = [&](const auto& turn) {
        const double first = seeming_end(turn(1.0), 1.0, length);
        const double fourth = seeming_end(turn(4.0), 4.0, length);
        return mm(first, 1) + " | " + fixed_number(cents_sharp(length, first, fourth), 0);
    };
    const double place = 0.09 * length;
    const double hard = least_held(fret, preset.player, place);
    const double soft = least_held(pad, preset.player, place);
    const double wide = least_held(with_patch(fret, flesh), preset.player, place);
    EXPECT_GT(soft, hard) << c.preset << " " << c.stop;
    EXPECT_GT(wide, hard) << c.preset << " " << c.stop;
    return std::string("| ") + c.preset + ", " + short_number(c.stop) + " | " + mm(length, 0) + " | " + mm(c.decay, 1) +
           " | " + fixed_number(q, 0) + " | " + qs(patch_at) + " | " + qs(pad_at) + " | " + ends(patch_at) + " | " +
           ends(pad_at) + " | " + fixed_number(hard, 3) + " | " + fixed_number(wide, 3) + " | " +
           fixed_number(soft, 3) + " |\n";
}

}  // namespace

/// source   a string on a bed of springs (derived); stiffness and loss of flesh from memory, hence a row of them
/// expects  by patch and by pad a finger takes more force than a fret; the table says how the two differ
TEST(FingerReport, PadAgainstAPatchOfFlesh) {
    std::string report =
        "A bare finger as flesh under 9 mm of the string (loss tangent 1, on a hard board) against the simulation's "
        "pad at one point,\n"
        "its Q set to the patch's mean over four partials.  *Decay*: length over which a pull dies away in the flesh, "
        "the one number\n"
        "that stands for its stiffness.  *Ends inside*: how far past the edge on the bridge's side the first partial "
        "seems to end; the\n"
        "simulation moves the edge so that this end is the stop.  *4th*: cents by which the fourth partial is sharp. "
        " Least held force at\n"
        "0.09 of the string.\n\n"
        "| string, stop | sounding mm | decay mm | mean Q | Q of 1, 4, 16: patch | pad | patch ends inside mm | 4th | "
        "pad ends inside mm | 4th | fret N | patch N | pad N |\n"
        "|---|---|---|---|---|---|---|---|---|---|---|---|---|\n";
    for (const Case& c : {Case{"division_bass_viol", 12.0, 0.002}, Case{"division_bass_viol", 12.0, 0.004},
                          Case{"division_bass_viol", 19.0, 0.002}, Case{"division_bass_viol", 19.0, 0.004},
                          Case{"treble_viol", 12.0, 0.002}, Case{"treble_viol", 19.0, 0.002}})
        report += row_of(c);
    report +=
        "\nOne and the same finger (one decay) takes Q down in proportion to the sounding length; the simulation "
        "keeps one Q for all stops.\n";
    write_report("finger.md", report);
}
