// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/loop_filter.hpp"
#include "sim/string.hpp"

#include <Eigen/Core>

#include <vector>

namespace tests {

/// One partial of a string between rigid ends.
struct ModalPartial {
    double hz = 0.0;
    double decay = 0.0;  ///< 1/s of its amplitude
};
/// By the string's own formulas, n f0 sqrt(1 + B n^2) and pi f_n / Q_n, up to `highest_hz`.
std::vector<ModalPartial> partials_by_formula(const sim::String& string, double highest_hz);
/// As the loop filter of the travelling waves has them, its faults included: where its round trip turns by 2 pi n.
std::vector<ModalPartial> partials_of_loop(const sim::LoopFilter& loop, double highest_hz);

/// Where a modal string is bowed, what holds its end, and how finely it is cut.
struct ModalSetUp {
    double resistance = 0.0;     ///< kg/s of the bridge, over the string's wave impedance; 0 = rigid
    double contact_point = 0.0;  ///< m from the bridge
    double sample_rate = 0.0;    ///< Hz, over twice the highest partial's
};

/// A stiff, lossy, untwisted string as a sum of its modes: the second opinion on the travelling waves of sim/kernel,
/// with which it shares nothing but the formulas of sim/string.hpp for pitch and loss of a partial.
///
/// Mode n has its own frequency and decay, lost all along the string; the bridge adds a decay of its own.  A flexible
/// string over a resistance R has the exact complex modes
///     phi_n(x) = sin(n pi x/L - i e (1 - x/L)),  tanh e = Z0/R,  decay 2 f0 e,
/// and one more, n = 0, in which the bridge creeps.  They are kept for the stiff string, the bridge's decay raised by
/// (f_n/(n f0))^2 = 1 + B n^2 (the force of a stiff string on its pinned end); what the moving end does to the bending
/// close by is left out.
///     db_n/dt = s_n b_n + (1 + i a_n/w_n) phi_n(bow) F/(m L), a_n without the bridge;  velocity(x) = sum over all n of
///     b_n phi_n(x)
/// Between two samples the force runs straight and the modes move exactly (exponentials), so no frequency is warped and
/// no wave has to travel whole samples; a straight force keeps the sampled string passive.
class ModalString {
public:
    ModalString(const sim::String& string, const std::vector<ModalPartial>& partials, const ModalSetUp& set_up);

    int modes() const { return static_cast<int>(own_decay_.size()) - 1; }

    /// The ideal motion at the middle of a stick: V_n = (-1)^(n+1) 2 v/(n pi beta), all in step.
    void fill_with_helmholtz(double speed);
    /// m/s under the bow at this sample, were there no force.
    double free_velocity() const { return free_velocity_; }
    /// m/s per newton of this very sample.
    double yield() const { return yield_; }
    /// Sets this sample's force, N, and moves on to the next one.
    void push(double force);
    /// N on the bridge at the sample that was pushed last.
    double bridge_force() const { return bridge_force_; }

    /// Each mode alone, as if lightly damped: exact for a rigid bridge, within some Z0/R for a resistance.
    struct Balance {
        double energy;  ///< J in all modes
        double loss;    ///< W that the string's own losses take; what the bridge takes is its force squared over R
    };
    /// At this sample under the force that is about to be pushed.
    Balance balance(double force) const;

private:
    struct Ends {
        double impedance;  // kg/s
        double share;      // e
        double step;       // s
        double fundamental;
    };
    void add_mode(int n, const ModalPartial& partial, const Ends& ends);
    void keep_sums();

    double mass_;  // kg of the whole string
    double contact_ratio_;
    double yield_ = 0.0;
    double bridge_yield_ = 0.0;
    double free_velocity_ = 0.0;
    double free_bridge_force_ = 0.0;
    double bridge_force_ = 0.0;
    // Row n of each is mode n.  (re, im) are the modes at this sample but for this sample's own force.
    Eigen::ArrayXd re_, im_, scratch_;
    Eigen::ArrayXd turn_re_, turn_im_;        // e^(s dt)
    Eigen::ArrayXd gain_re_, gain_im_;        // what a force leaves a sample later
    Eigen::ArrayXd at_once_re_, at_once_im_;  // what it does at once
    Eigen::ArrayXd bow_re_, bow_im_;          // velocity under the bow = sum of bow_re re + bow_im im
    Eigen::ArrayXd bridge_re_, bridge_im_;    // force on the bridge likewise
    Eigen::ArrayXd own_decay_;
};

}  // namespace tests
