// SPDX-License-Identifier: GPL-3.0-or-later
#include "sim/kernel/wave_lines.hpp"

#include <algorithm>
#include <bit>
#include <cassert>
#include <cmath>

namespace sim::kernel {

WaveLines::WaveLines(const Lines& lines, double sample_rate)
    : impedance_(lines.impedance), speed_(lines.speed), sample_rate_(sample_rate) {
    if (!present()) return;
    end_ = EndFilter(lines.loop, sample_rate);
    samples_to_bridge_ = static_cast<std::size_t>(end_.line_samples() / 2);
    samples_to_stop_ = static_cast<std::size_t>(end_.line_samples()) - samples_to_bridge_;
    const std::size_t size = std::bit_ceil(samples_to_stop_ + 4);
    toward_bridge_.assign(size, 0.0);
    toward_stop_.assign(size, 0.0);
    mask_ = size - 1;
    now_ = size;
}

void WaveLines::fill_with_helmholtz(Place place, double speed) {
    const double period = 2.0 * place.length / speed_;
    const double slope = speed / (place.contact_point / place.length) / period;
    const auto saw = [&](double time) { return -slope * (time - period * std::round(time / period)); };
    const double step = 1.0 / sample_rate_;
    // Lines hold what left an end before sample 0: the bridge at times -i, and the stop, past its filter, likewise.
    for (std::size_t i = 1; i <= samples_to_stop_; ++i)
        toward_stop_[(now_ - i) & mask_] = saw(-static_cast<double>(i) * step);
    const int warm_up = static_cast<int>(3.0 * period * sample_rate_);
    for (int t = -warm_up; t < 0; ++t) {
        const double back = end_.process(saw((t - static_cast<double>(samples_to_stop_)) * step));
        if (-t <= static_cast<int>(samples_to_bridge_))
            toward_bridge_[(now_ - static_cast<std::size_t>(-t)) & mask_] = -back;
    }
}

void WaveLines::take_up(const WaveLines& before) {
    if (!present() || !before.present()) return;
    for (std::size_t age = 1; age <= samples_to_stop_; ++age)
        toward_stop_[(now_ - age) & mask_] =
            age <= before.samples_to_stop_ ? before.toward_stop_[(before.now_ - age) & before.mask_] : 0.0;
    for (std::size_t place = 0; place < samples_to_bridge_; ++place)
        toward_bridge_[(now_ - samples_to_bridge_ + place) & mask_] =
            place < before.samples_to_bridge_
                ? before.toward_bridge_[(before.now_ - before.samples_to_bridge_ + place) & before.mask_]
                : 0.0;
    end_.take_up(before.end_);
}

void WaveLines::place_bow(double contact_point, std::size_t point) {
    if (!present()) return;
    const double samples = contact_point / speed_ * sample_rate_;
    // A fixed bow's sample rate puts it on a whole sample; what rounding leaves of that must not become a weight.
    const double nearest = std::round(samples);
    const double exact = std::abs(samples - nearest) < 1e-9 * nearest ? nearest : samples;
    const double held = std::min(exact, static_cast<double>(samples_to_bridge_) - 2.0);
    if (point >= taps_.size()) taps_.resize(point + 1);
    Tap& tap = taps_[point];
    tap.samples = static_cast<std::size_t>(held);
    assert(tap.samples >= 1 && tap.samples + 1 < samples_to_bridge_);
    tap.far_weight = held - static_cast<double>(tap.samples);
    tap.near_weight = 1.0 - tap.far_weight;
    tap.yield = (tap.near_weight * tap.near_weight + tap.far_weight * tap.far_weight) / (2.0 * impedance_);
}

void WaveLines::turn_at_stop() {
    if (present()) toward_bridge_[now_ & mask_] = -end_.process(toward_stop_[(now_ - samples_to_stop_) & mask_]);
}

double WaveLines::velocity_at_bow(std::size_t point) const {
    if (!present()) return 0.0;
    const Tap& tap = taps_[point];
    const std::size_t coming = now_ - samples_to_bridge_ + tap.samples;
    const std::size_t going = now_ - tap.samples;
    return tap.near_weight * (toward_bridge_[coming & mask_] + toward_stop_[going & mask_]) +
           tap.far_weight * (toward_bridge_[(coming + 1) & mask_] + toward_stop_[(going - 1) & mask_]);
}

void WaveLines::push(double force, std::size_t point) {
    if (!present()) return;
    const Tap& tap = taps_[point];
    const double wave = force / (2.0 * impedance_);
    const std::size_t coming = now_ - samples_to_bridge_ + tap.samples;
    const std::size_t going = now_ - tap.samples;
    toward_bridge_[coming & mask_] += tap.near_weight * wave;
    toward_stop_[going & mask_] += tap.near_weight * wave;
    if (tap.far_weight == 0.0) return;
    toward_bridge_[(coming + 1) & mask_] += tap.far_weight * wave;
    toward_stop_[(going - 1) & mask_] += tap.far_weight * wave;
}

double WaveLines::shared_yield(std::size_t point, std::size_t other) const {
    if (!present()) return 0.0;
    const Tap& a = taps_[point];
    const Tap& b = taps_[other];
    const auto weight = [](const Tap& tap, std::size_t sample) {
        if (sample == tap.samples) return tap.near_weight;
        return sample == tap.samples + 1 ? tap.far_weight : 0.0;
    };
    return (a.near_weight * weight(b, a.samples) + a.far_weight * weight(b, a.samples + 1)) / (2.0 * impedance_);
}

}  // namespace sim::kernel
