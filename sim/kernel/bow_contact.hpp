// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/joint_forces.hpp"
#include "sim/kernel/note.hpp"
#include "sim/kernel/rosin.hpp"
#include "sim/kernel/wave_lines.hpp"

#include <vector>

namespace sim::kernel {

/// The hair on the string: one point, or several across the ribbon's width, each with its own rosin and its own give.
///
/// Points nearer than a sample's way of the waves (twist's mostly) share samples of the lines and feel each other at
/// once: their forces are found together, by going round until none moves, and all at once where that takes long.
/// (Under a law that falls with slip speed each point still jumps by its own hysteresis: several at one place are then
/// not quite one.)
class BowContact {
public:
    BowContact(const Note& note, double sample_rate, const Warmth& warmth);

    void place(double contact_point, WaveLines& string, WaveLines& twist);

    /// Goes on from the state of the same hair.
    void take_up(const BowContact& before);

    struct Hand {
        double speed;       ///< m/s, of the stick
        double force;       ///< N, >= 0
        double lengthwise;  ///< m/s, at which the hair slides along the string
    };
    void rub(WaveLines& string, WaveLines& twist, const Hand& hand);

    double friction() const { return friction_; }  ///< N on the string, all points
    double slip() const { return slip_; }          ///< m/s, string over hair, mean of the points
    bool slips() const { return 2 * slipping_ > static_cast<int>(points_.size()); }  ///< more than half of them
    double surface() const { return surface_; }                                      ///< m/s, string's, mean
    bool settled() const { return settled_; }  ///< the last sample's forces were found, none moved any more
    double temperature() const;                ///< K, mean
    Warmth warmth() const { return points_[points_.size() / 2].rosin.heat().warmth(); }

private:
    struct Point {
        double offset;  // m from the middle of the hair in use
        Rosin rosin;
        double stretch = 0.0;    // m, hair behind the stick
        double speed = 0.0;      // m/s, its growth
        double force = 0.0;      // N
        double free_slip = 0.0;  // m/s, this sample's, but for any point's force
    };
    double felt_from_others(std::size_t point) const;
    bool rub_together(double bow_force, double lengthwise);
    bool go_round(int rounds, double bow_force, double lengthwise);
    double rub_round(double bow_force, double lengthwise);
    bool solve_together(double bow_force);
    void keep(const WaveLines& string, const WaveLines& twist);

    std::vector<Point> points_;
    JointForces::Rubbing together_;  // its yields since the bow was placed: a point's own of string, twist and hair
    double time_step_;
    bool gives_ = false;
    double stiffness_, resistance_, inertia_;  // a point's share: N/m, kg/s, kg/s (mass / time step)
    double hair_yield_ = 0.0;                  // m/s per N
    double friction_ = 0.0;
    double slip_ = 0.0;
    double surface_ = 0.0;
    int slipping_ = 0;
    bool settled_ = true;
};

}  // namespace sim::kernel
