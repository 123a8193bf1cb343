// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/contact.hpp"
#include "sim/kernel/heat.hpp"

namespace sim::kernel {

/// The rubbing contact between hair and string at one sample after another.
class Rosin {
public:
    Rosin(const Contact& contact, double sample_rate, const Warmth& warmth = {});

    /// Force of the bow on the string, N.
    ///
    /// free_slip     m/s, string's surface over bow as it would be without friction
    /// yield         m/s per N, what the string gives to a force within the same sample
    /// bow_force     N, >= 0
    double rub(double free_slip, double yield, double bow_force) { return rub({free_slip, yield, 0.0}, bow_force); }

    /// As above, while the hair also slides along the string: friction then points against both together, nothing
    /// sticks quite, and what is left across the string is coefficient * force * slip / sqrt(slip^2 + lengthwise^2).
    struct Rubbing {
        double free_slip;   ///< m/s
        double yield;       ///< m/s per N
        double lengthwise;  ///< m/s, >= 0; 0 for the laws of slip speed
    };
    double rub(const Rubbing& rubbing, double bow_force);

    /// The same in its parts, for contacts that feel each other within a sample: begin; look; try_out as often as the
    /// others change; if not settled, look and try_out once more; finish.
    void begin(double lengthwise);
    /// Sets the warmth of what follows: first from the last sample's heat, then from this one's too.
    void look();
    double try_out(const Rubbing& rubbing, double bow_force);
    /// Does it slide, however fast, with the force up to which it sticks?  And that force, N, as of the last look.
    bool of_sign_alone() const;
    double bears(double bow_force) const;
    /// No second look is wanted: nothing warms.
    bool settled() const { return contact_.kind != Contact::Kind::thermal || (power_ == 0.0 && owed_ == 0.0); }
    void finish();

    /// Goes on from the state of a contact of the same law.
    void take_up(const Rosin& before);

    double temperature() const { return heat_.temperature(); }  ///< K above ambient
    const Heat& heat() const { return heat_; }
    /// Did the contact slip in the last sample?  And how fast, m/s, string over bow.
    bool slips() const { return slips_; }
    double slip() const { return slip_; }

private:
    double speed_along(double lengthwise) const;
    double rub_with_steady_coefficients(const Rubbing& rubbing, double greatest, double sliding);
    double rub_askew(const Rubbing& rubbing, double friction);
    double rub_on_curve(double free_slip, double yield, double bow_force);
    double coefficient_at(double slip_speed) const;
    double slope_at(double slip_speed) const;
    double coefficient_when(double temperature) const;
    double stick(double free_slip, double yield);
    double slide(double free_slip, double yield, double force);

    const Contact& contact_;
    Heat heat_;
    double power_ = 0.0;  // W per newton, heat of the last sample
    double owed_ = 0.0;   // of it, what has not gone into the contact yet
    double guess_ = 0.0;  // W per newton, of the first look
    double coefficient_ = 0.0;
    int looks_ = 0;
    double slip_ = 0.0;
    bool slips_ = false;
    bool slipped_ = false;  // in the sample before
};

}  // namespace sim::kernel
