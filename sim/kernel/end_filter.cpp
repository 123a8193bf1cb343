// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/end_filter.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sim::kernel {

namespace {

/// w/2 of a corner, not tan(w/2): a section must be right for the partials, which lie low, and its corner may lie past
/// the sampled range.  Bent to be right at its corner, it would lose a part of its delay below.
double half_step(double omega, double sample_rate) { return omega / (2.0 * sample_rate); }

}  // namespace

void EndFilter::add_row(std::vector<OnePole>& row, const std::vector<LossSection>& losses, double sample_rate) {
    for (const LossSection& section : losses) {
        const double g = half_step(section.corner, sample_rate);
        row.push_back({.gain = g / (1.0 + g), .share = section.share});
    }
}

EndFilter::EndFilter(const LoopFilter& design, double sample_rate) {
    add_row(losses_, design.losses, sample_rate);
    add_row(end_losses_, design.end_losses, sample_rate);
    allpass_.resize(static_cast<std::size_t>(design.dispersion.sections));
    if (!allpass_.empty()) {
        const double k = 2.0 * design.dispersion.damping;
        allpass_g_ = half_step(design.dispersion.omega, sample_rate);
        allpass_a1_ = 1.0 / (1.0 + allpass_g_ * (allpass_g_ + k));
        allpass_twice_k_ = 2.0 * k;
    }
    // A first-order all-pass holds 0.5 to 1.5 samples, where its delay is nearly the same at all frequencies.
    const double samples = design.plain_delay * sample_rate;
    line_samples_ = static_cast<int>(std::floor(samples - 0.5));
    const double rest = samples - line_samples_;
    fraction_ = (1.0 - rest) / (1.0 + rest);
}

double EndFilter::lose(std::vector<OnePole>& row, double in) {
    double lost = 0.0;
    for (OnePole& pole : row) {
        const double v = (in - pole.state) * pole.gain;
        const double low = v + pole.state;
        pole.state = low + v;
        lost += pole.share * (in - low);
    }
    return in - lost;
}

double EndFilter::disperse(double in) {
    for (Resonator& r : allpass_) {
        const double band = allpass_a1_ * (r.s1 + allpass_g_ * (in - r.s2));
        const double low = r.s2 + allpass_g_ * band;
        r.s1 = 2.0 * band - r.s1;
        r.s2 = 2.0 * low - r.s2;
        in -= allpass_twice_k_ * band;
    }
    return in;
}

void EndFilter::take_up(const EndFilter& before) {
    const auto states = [](std::vector<OnePole>& row, const std::vector<OnePole>& old) {
        for (std::size_t i = 0; i < std::min(row.size(), old.size()); ++i) row[i].state = old[i].state;
    };
    states(losses_, before.losses_);
    states(end_losses_, before.end_losses_);
    std::copy_n(before.allpass_.begin(), std::min(allpass_.size(), before.allpass_.size()), allpass_.begin());
    fraction_in_ = before.fraction_in_;
    fraction_out_ = before.fraction_out_;
}

double EndFilter::process(double in) {
    const double vibration = disperse(lose(end_losses_, lose(losses_, in)));
    const double out = fraction_ * (vibration - fraction_out_) + fraction_in_;
    fraction_in_ = vibration;
    fraction_out_ = out;
    return out;
}

}  // namespace sim::kernel
