// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/loop_filter.hpp"

#include <vector>

namespace sim::kernel {

/// A loop filter at a sample rate: losses, dispersion and the fraction of a sample that the lines leave over.
///
/// Trapezoidal sections: what is passive in continuous time stays passive, and 0 Hz comes back whole.
class EndFilter {
public:
    EndFilter() = default;
    EndFilter(const LoopFilter& design, double sample_rate);

    /// Whole samples of the round trip that the lines must hold.
    int line_samples() const { return line_samples_; }
    double process(double in);
    /// Goes on from the states of another filter of this kind: sections that both have.
    void take_up(const EndFilter& before);

    // The numbers, for the vector kernel, which carries them in its own way.
    struct OnePole {
        double gain = 0.0;  // g / (1 + g)
        double share = 0.0;
        double state = 0.0;
    };
    struct Resonator {
        double s1 = 0.0;
        double s2 = 0.0;
    };
    struct Section {
        double g;
        double a1;
        double twice_k;
    };
    const std::vector<OnePole>& losses() const { return losses_; }
    const std::vector<OnePole>& end_losses() const { return end_losses_; }
    const std::vector<Resonator>& sections() const { return allpass_; }
    Section section() const { return {allpass_g_, allpass_a1_, allpass_twice_k_}; }
    double fraction() const { return fraction_; }
    double fraction_in() const { return fraction_in_; }
    double fraction_out() const { return fraction_out_; }

private:
    static void add_row(std::vector<OnePole>& row, const std::vector<LossSection>& losses, double sample_rate);
    static double lose(std::vector<OnePole>& row, double in);
    double disperse(double in);

    std::vector<OnePole> losses_;
    std::vector<OnePole> end_losses_;
    std::vector<Resonator> allpass_;
    double allpass_g_ = 0.0;
    double allpass_a1_ = 0.0;
    double allpass_twice_k_ = 0.0;
    double fraction_ = 0.0;
    double fraction_in_ = 0.0;
    double fraction_out_ = 0.0;
    int line_samples_ = 0;
};

}  // namespace sim::kernel
