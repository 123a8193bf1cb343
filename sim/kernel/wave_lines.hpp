// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/end_filter.hpp"
#include "sim/kernel/note.hpp"

#include <cstddef>
#include <vector>

namespace sim::kernel {

/// Waves of one kind running both ways between bridge and stop, with a bow anywhere between.
///
/// The lines hold whole samples.  A bow between two samples reads both, weighted, and pushes on both with the same
/// weights: so no energy is invented, and a moving bow doesn't click.
/// Order within a sample: wave_at_bridge, leave_bridge, turn_at_stop, velocity_at_bow, push, step.
class WaveLines {
public:
    WaveLines(const Lines& lines, double sample_rate);

    bool present() const { return impedance_ > 0.0; }

    struct Place {
        double contact_point;  ///< m
        double length;         ///< m
    };
    /// The ideal motion at the middle of a stick: a sawtooth of waves, peak to peak speed / contact ratio.
    void fill_with_helmholtz(Place place, double speed);

    /// Each of the bow's points has its own place.  One past the middle of the loop is held there.
    void place_bow(double contact_point, std::size_t point = 0);
    double wave_at_bridge() const { return toward_bridge_[(now_ - samples_to_bridge_) & mask_]; }
    void leave_bridge(double wave) { toward_stop_[now_ & mask_] = wave; }
    void turn_at_stop();
    double velocity_at_bow(std::size_t point = 0) const;
    /// Velocity per newton that a push gives the bow's place within the same sample.
    double yield(std::size_t point = 0) const { return present() ? taps_[point].yield : 0.0; }
    void push(double force, std::size_t point = 0);
    /// Velocity per newton that a push at one point gives another within the same sample; 0 where they share no sample.
    double shared_yield(std::size_t point, std::size_t other) const;
    void step() { ++now_; }

    /// Goes on with the waves of other lines of the same speed and sample rate, perhaps of another length: each where
    /// it was, seen from the bridge; nothing runs past the others' end.
    void take_up(const WaveLines& before);

    // The numbers, for the vector kernel, which carries them in its own way.
    struct Tap {
        std::size_t samples = 0;  // whole ones from the bridge
        double near_weight = 1.0;
        double far_weight = 0.0;
        double yield = 0.0;
    };
    const Tap& tap(std::size_t point) const { return taps_[point]; }
    const EndFilter& end() const { return end_; }
    const std::vector<double>& toward_bridge() const { return toward_bridge_; }
    const std::vector<double>& toward_stop() const { return toward_stop_; }
    std::size_t samples_to_bridge() const { return samples_to_bridge_; }
    std::size_t samples_to_stop() const { return samples_to_stop_; }
    std::size_t now() const { return now_; }

private:
    double impedance_;
    double speed_;
    double sample_rate_;
    EndFilter end_;
    std::vector<double> toward_bridge_;
    std::vector<double> toward_stop_;
    std::size_t samples_to_bridge_ = 0;
    std::size_t samples_to_stop_ = 0;
    std::size_t mask_ = 0;
    std::size_t now_ = 0;
    std::vector<Tap> taps_;
};

}  // namespace sim::kernel
