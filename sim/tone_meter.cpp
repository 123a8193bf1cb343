// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/tone_meter.hpp"

#include "analysis/level.hpp"
#include "analysis/partials.hpp"
#include "analysis/pitch.hpp"

#include <complex>

namespace sim {

namespace {

constexpr int pitch_search_semitones = 4;

}  // namespace

ToneMeter::ToneMeter(const Bridge& bridge) : modes_(sound::radiating_modes(bridge)) {}

double ToneMeter::gain(double hz) const { return std::abs(sound::response(modes_, hz)); }

double ToneMeter::level(const analysis::Signal& force) {
    if (force.samples.size() != samples_ || force.sample_rate != sample_rate_) gains_.clear();
    samples_ = force.samples.size();
    sample_rate_ = force.sample_rate;
    std::size_t asked = 0;
    return analysis::weighted_rms(force.samples, force.sample_rate, [&](double hz) {
        if (asked == gains_.size()) gains_.push_back(gain(hz));
        return gains_[asked++];
    });
}

Tone ToneMeter::tone(const Heard& heard) {
    const std::vector<double>& samples = heard.force.samples;
    const double rate = heard.force.sample_rate;
    Tone tone{.pitch = {}, .bridge_peak_to_peak = heard.peak_to_peak};
    tone.level = level(heard.force);
    const analysis::PitchRange range = analysis::pitch_range_around(heard.expected_hz, pitch_search_semitones);
    const auto pitch = analysis::measure_pitch(samples, rate, range);
    const double f0 = pitch ? pitch->hz : heard.expected_hz;
    std::vector<analysis::Partial> partials =
        analysis::measure_partials(samples, rate, {f0, analysis::brightness_limit_hz});
    if (!partials.empty()) tone.bridge_fundamental = partials.front().amplitude;
    tone.clarity = pitch ? pitch->clarity_db : analysis::measure_clarity(samples, rate, range);
    if (!pitch) return tone;
    tone.pitch = pitch->hz;
    for (analysis::Partial& partial : partials) partial.amplitude *= gain(partial.hz);
    if (const auto bright = analysis::brightness(partials, pitch->hz)) tone.centroid = bright->centroid_hz;
    return tone;
}

}  // namespace sim
