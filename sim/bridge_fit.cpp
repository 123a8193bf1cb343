// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/bridge_fit.hpp"

#include "analysis/errors.hpp"
#include "analysis/units.hpp"
#include "sim/fit_points.hpp"
#include "sim/mode_choice.hpp"
#include "sim/preset_reader.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>

namespace sim {
namespace {

constexpr double two_pi = 2.0 * std::numbers::pi;
constexpr double most_rms_db = 6.0;
constexpr double doubtful_rms_db = 3.0;
constexpr double least_mass = 1e-4;  // kg, as in presets
constexpr double most_mass = 1000.0;

/// The measured points in the range.
struct Part {
    std::vector<double> hz;
    std::vector<std::complex<double>> y;

    AdmittancePoints points() const { return {hz, y}; }
};

Part part_of(const MeasuredBridge& measured, const HzRange& range) {
    Part part;
    for (std::size_t i = 0; i < measured.hz.size(); ++i) {
        if (measured.hz[i] < range.low || measured.hz[i] > range.high) continue;
        part.hz.push_back(measured.hz[i]);
        part.y.push_back(measured.admittance[i]);
    }
    return part;
}

void check_part(const MeasuredBridge& measured, const HzRange& range, const Part& part, const std::string& where) {
    const std::string reaches = short_number(measured.hz.front()) + " to " + short_number(measured.hz.back()) + " Hz";
    const std::string asked = short_number(range.low) + " to " + short_number(range.high) + " Hz";
    if (range.low >= range.high || part.hz.empty()) {
        throw analysis::InputError(where, "reaches from " + reaches + ", nothing of which lies in the range in use (" +
                                              short_number(lowest_hz) +
                                              " Hz to 10 kHz unless --range-hz says otherwise)");
    }
    if (part.hz.size() < least_points) {
        throw analysis::InputError(where, "has " + std::to_string(part.hz.size()) + " points from " + asked + "; " +
                                              std::to_string(least_points) + " or more are needed");
    }
    const auto is_nothing = [](const std::complex<double>& y) { return std::abs(y) == 0.0; };
    if (std::ranges::all_of(part.y, is_nothing))
        throw analysis::InputError(where, "is 0 at every point from " + asked + "; a measured admittance is needed");
}

/// The points as they would be, had they been meant as something else.
Part taken_as(const Part& part, std::complex<double> (*turn)(std::complex<double> y, double omega)) {
    Part other{part.hz, {}};
    for (std::size_t i = 0; i < part.hz.size(); ++i) other.y.push_back(turn(part.y[i], two_pi * part.hz[i]));
    return other;
}

/// What the data may be instead, if that would be passive.
std::string suggestion(const Part& part) {
    using Complex = std::complex<double>;
    struct Guess {
        const char* words;
        Complex (*turn)(Complex y, double omega);
    };
    constexpr std::array<Guess, 5> guesses{{
        {"it looks like an accelerance (m/s^2/N): divide by i 2 pi hz",
         [](Complex y, double omega) { return y / Complex(0.0, omega); }},
        {"it looks like a receptance (m/N): multiply by i 2 pi hz",
         [](Complex y, double omega) { return y * Complex(0.0, omega); }},
        {"it looks like a mobility with its sign turned: multiply by -1", [](Complex y, double) { return -y; }},
        {"it looks like an accelerance (m/s^2/N) with its sign turned: divide by -i 2 pi hz",
         [](Complex y, double omega) { return -y / Complex(0.0, omega); }},
        {"it looks like a receptance (m/N) with its sign turned: multiply by -i 2 pi hz",
         [](Complex y, double omega) { return -y * Complex(0.0, omega); }},
    }};
    for (const Guess& guess : guesses)
        if (is_passive(passivity(taken_as(part, guess.turn).points()))) return guess.words;
    return "give velocity over force at one and the same point, without delay between them";
}

Passivity checked_passivity(const Part& part, const std::string& where) {
    const Passivity found = passivity(part.points());
    if (found.breach) {
        throw analysis::InputError(where, "Re Y is below 0 about " + short_number(found.breach->hz) + " Hz (" +
                                              fixed_number(found.breach->real_share, 2) +
                                              " of |Y|): no passive body is like that; " + suggestion(part));
    }
    if (!is_passive(found)) {
        throw analysis::InputError(where, "Re Y is below 0 at " + fixed_number(100.0 * found.noise_share, 0) +
                                              " % of the points; noise on up to " +
                                              fixed_number(100.0 * tolerated_noise_share, 0) +
                                              " % would be accepted; " + suggestion(part));
    }
    return found;
}

double six_digits(double value) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::general, 6);
    double read = 0.0;
    std::from_chars(text.data(), end.ptr, read);
    return read;
}

FitError error_of(const Part& part, const std::vector<BridgeMode>& modes) {
    const std::vector<double> widths = log_widths(part.hz);
    FitError error;
    double whole = 0.0;
    for (std::size_t i = 0; i < part.hz.size(); ++i) {
        if (std::abs(part.y[i]) == 0.0) continue;
        const std::complex<double> ratio = sum_of(modes, two_pi * part.hz[i]) / part.y[i];
        const double db = analysis::db_from_ratio(std::abs(ratio));
        whole += widths[i];
        error.rms_db += widths[i] * db * db;
        error.rms_phase += widths[i] * std::arg(ratio) * std::arg(ratio);
        if (std::abs(db) < std::abs(error.worst_db)) continue;
        error.worst_db = db;
        error.worst_hz = part.hz[i];
    }
    error.rms_db = std::sqrt(error.rms_db / whole);
    error.rms_phase = std::sqrt(error.rms_phase / whole);
    return error;
}

std::vector<BridgeMode> rounded_modes(std::vector<BridgeMode> modes) {
    for (BridgeMode& mode : modes) {
        mode.frequency = six_digits(mode.frequency);
        mode.q = six_digits(mode.q);
        mode.mass = six_digits(mode.mass);
        mode.radiation = 1.0;
    }
    std::ranges::sort(modes, {}, &BridgeMode::frequency);
    return modes;
}

/// Masses that no instrument has come from a slip of units.
void check_masses(std::vector<BridgeMode>& modes, const std::string& where) {
    double lightest = most_mass * 1e9;
    for (const BridgeMode& mode : modes) lightest = std::min(lightest, mode.mass);
    if (!modes.empty() && lightest >= least_mass && lightest <= most_mass) {
        std::erase_if(modes, [](const BridgeMode& mode) { return mode.mass > most_mass; });  // take no part
        return;
    }
    if (modes.empty()) throw analysis::InputError(where, "no mode fits; a measured admittance in m/s/N is needed");
    throw analysis::InputError(where, "the lightest mode comes out at " + short_number(lightest) +
                                          " kg; an admittance in m/s/N gives 0.0001 to 1000 kg (look at its units)");
}

/// A fit that fails may be due to the other sign of i.
void check_error(const Part& part, const BridgeFit& fit, const BridgeFitPlan& plan, const std::string& where) {
    if (fit.error.rms_db <= doubtful_rms_db || plan.modes) return;
    const Part turned = taken_as(part, [](std::complex<double> y, double) { return std::conj(y); });
    const FitError other = error_of(turned, chosen_modes(turned.points(), fit.range, plan.modes));
    if (other.rms_db < 0.5 * fit.error.rms_db) {
        throw analysis::InputError(where,
                                   "its phase runs backwards: it looks like e^(-i w t); give e^(+i w t), that is "
                                   "the imaginary part or the phase with the other sign");
    }
    if (fit.error.rms_db <= most_rms_db) return;
    throw analysis::InputError(where, "no sum of modes comes near it: " + short_number(fit.error.rms_db) +
                                          " dB RMS, where 6 dB would be accepted; give a narrower --range-hz");
}

void add_remarks(BridgeFit& fit, const BridgeFitPlan& plan) {
    const auto inside = fit.modes.size() - fit.outside.size();
    if (plan.modes && inside < static_cast<std::size_t>(*plan.modes))
        fit.remarks.push_back("Only " + std::to_string(inside) + " modes can be told apart in this range.");
    if (!plan.modes && inside == most_chosen_modes && fit.error.rms_db > 1.0)
        fit.remarks.emplace_back("More modes would fit better: give --modes, or a narrower --range-hz.");
    if (fit.error.rms_db > doubtful_rms_db)
        fit.remarks.emplace_back("The fit is poor; look at the chart before using it.");
    if (fit.passivity.noise_share > 0.0) {
        fit.remarks.push_back("Re Y is below 0 by noise at " + fixed_number(100.0 * fit.passivity.noise_share, 1) +
                              " % of the points; the fitted modes are passive everywhere.");
    }
}

}  // namespace

Bridge bridge_of(const BridgeFit& fit) { return {.kind = BridgeKind::modes, .resistance = 0.0, .modes = fit.modes}; }

BridgeFit fit_bridge(const MeasuredBridge& measured, const BridgeFitPlan& plan, const std::string& where) {
    BridgeFit fit;
    fit.range = plan.range.value_or(HzRange{measured.usual_low, measured.usual_high});
    const Part part = part_of(measured, fit.range);
    check_part(measured, fit.range, part, where);
    fit.range = {part.hz.front(), part.hz.back()};
    fit.points = part.hz.size();
    fit.passivity = checked_passivity(part, where);
    fit.modes = rounded_modes(chosen_modes(part.points(), fit.range, plan.modes));
    check_masses(fit.modes, where);
    for (const BridgeMode& mode : fit.modes)
        if (!is_inside(mode, fit.range)) fit.outside.push_back(mode);
    fit.error = error_of(part, fit.modes);
    check_error(part, fit, plan, where);
    fit.remarks = measured.remarks;
    add_remarks(fit, plan);
    return fit;
}

}  // namespace sim
