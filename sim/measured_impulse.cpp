// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/measured_bridge.hpp"

#include "analysis/audio_file.hpp"
#include "analysis/errors.hpp"
#include "analysis/spectrum.hpp"
#include "sim/passivity.hpp"
#include "sim/preset_reader.hpp"
#include "sim/text.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double still = 1e-4;          // of the peak: before it nothing has happened yet
constexpr double still_ringing = 0.03;  // of the peak, in the last twentieth
constexpr double highest_share = 0.4;   // of the sample rate: filters of converters act above
constexpr double least_seconds = 0.02;

double peak_of(const std::vector<double>& samples) {
    double peak = 0.0;
    for (const double sample : samples) peak = std::max(peak, std::abs(sample));
    return peak;
}

/// Silence before the response is not part of it.
void cut_silence(std::vector<double>& samples, double peak, double sample_rate, MeasuredBridge& bridge) {
    const auto first = std::ranges::find_if(samples, [&](double x) { return std::abs(x) >= still * peak; });
    if (first == samples.begin()) return;
    const double ms = 1000.0 * static_cast<double>(first - samples.begin()) / sample_rate;
    bridge.remarks.push_back("Silence of " + short_number(ms) +
                             " ms before the response was cut off: the impulse is taken to be where it ends.");
    samples.erase(samples.begin(), first);
}

/// The velocity of a body jumps when it is struck.  Samples of the true response begin with the whole jump; those that
/// went through a filter against aliasing, or came from a spectrum, begin with about half of it.
bool may_begin_with_whole_jump(const std::vector<double>& samples) {
    const double after = 0.5 * (samples[1] + samples[2]);
    return after != 0.0 && samples[0] / after > 0.75;
}

/// How the response begins: h(0) and its slope, from the first four samples.
struct Beginning {
    double jump = 0.0;
    double slope = 0.0;  ///< per second
};

Beginning beginning_of(const std::vector<double>& h, double step) {
    const double near = (-3.0 * h[0] + 4.0 * h[1] - h[2]) / (2.0 * step);
    const double far = (-11.0 * h[0] + 18.0 * h[1] - 9.0 * h[2] + 2.0 * h[3]) / (6.0 * step);
    // where the two disagree the samples stand too far apart to tell a slope
    return {h[0], std::abs(far - near) < 0.3 * std::abs(far) ? far : 0.0};
}

/// What sampling folds into the spectrum, of the response's jump and of its kink:
/// T sum' h_n e^(-i w n T) = sum over m of Y(w + m 2 pi/T), h_0 by half (Poisson); far up Y goes as h(0)/(i w) +
/// h'(0)/(i w)^2, whose images add up to the closed forms below; those of the rest fall as 1/f^3.
/// source   derived
std::complex<double> images_of(const Beginning& begin, double omega, double step) {
    const double half = 0.5 * step;
    const double sine = half / std::sin(half * omega);
    return {-begin.slope * (sine * sine - 1.0 / (omega * omega)),
            begin.jump * (1.0 / omega - half / std::tan(half * omega))};
}

void check_channel(const analysis::Audio& audio, double peak, const std::string& where) {
    if (audio.channels.size() != 1) {
        throw analysis::InputError(where, "has " + std::to_string(audio.channels.size()) +
                                              " channels; give one, the velocity after a unit impulse of force");
    }
    if (!(peak > 0.0)) throw analysis::InputError(where, "is silent; an impulse response is needed");
}

/// The transform of the samples, the first of which is a whole jump or none.
void transform(std::vector<double> samples, double sample_rate, double scale, bool whole_jump, MeasuredBridge& bridge) {
    const double step = 1.0 / sample_rate;
    const Beginning begin = whole_jump ? beginning_of(samples, step) : Beginning{};
    if (whole_jump) samples[0] *= 0.5;
    const std::size_t length = analysis::fast_length(samples.size());
    const std::vector<std::complex<double>> bins = analysis::spectrum(samples, length);
    bridge.hz.clear();
    bridge.admittance.clear();
    for (std::size_t k = 1; k < bins.size() - 1; ++k) {
        const double hz = static_cast<double>(k) * sample_rate / static_cast<double>(length);
        bridge.hz.push_back(hz);
        bridge.admittance.push_back(scale * (step * bins[k] - images_of(begin, 2.0 * pi * hz, step)));
    }
}

/// A half taken away from a first sample that was half a jump already leaves the real part below 0.
bool is_passive_in_use(const MeasuredBridge& bridge) {
    std::vector<double> hz;
    std::vector<std::complex<double>> y;
    for (std::size_t i = 0; i < bridge.hz.size(); ++i) {
        if (bridge.hz[i] < bridge.usual_low || bridge.hz[i] > bridge.usual_high) continue;
        hz.push_back(bridge.hz[i]);
        y.push_back(bridge.admittance[i]);
    }
    return hz.size() < 3 || is_passive(passivity({hz, y}));
}

}  // namespace

MeasuredBridge bridge_from_impulse(const std::filesystem::path& file, double scale) {
    const std::string where = one_line(file.string());
    analysis::Audio audio = analysis::read_audio(file);
    std::vector<double>& samples = audio.channels.front();
    const double peak = peak_of(samples);
    check_channel(audio, peak, where);
    MeasuredBridge bridge;
    cut_silence(samples, peak, audio.sample_rate, bridge);
    const double seconds = static_cast<double>(samples.size()) / audio.sample_rate;
    if (seconds < least_seconds) {
        throw analysis::InputError(
            where, "lasts " + short_number(1000.0 * seconds) + " ms; an impulse response of 20 ms or more is needed");
    }
    const std::vector<double> last(samples.end() - static_cast<std::ptrdiff_t>(samples.size() / 20), samples.end());
    if (peak_of(last) > still_ringing * peak)
        bridge.remarks.emplace_back("The response still rings at its end: low and narrow modes come out too broad.");
    bridge.usual_low = std::max(lowest_hz, 2.0 / seconds);
    bridge.usual_high = std::min(highest_hz, highest_share * audio.sample_rate);
    const bool may_jump = may_begin_with_whole_jump(samples);
    transform(samples, audio.sample_rate, scale, may_jump, bridge);
    if (may_jump && !is_passive_in_use(bridge)) transform(samples, audio.sample_rate, scale, false, bridge);
    bridge.remarks.push_back("Impulse response of " + short_number(seconds) + " s at " +
                             short_number(audio.sample_rate) + " Hz; its numbers times " + number_text(scale) +
                             " are m/s per N s.");
    return bridge;
}

}  // namespace sim
