// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "sim/kernel/bow_contact.hpp"
#include "sim/kernel/bridge_end.hpp"
#include "sim/kernel/wave_lines.hpp"

namespace sim::kernel {

/// The string's motion towards the hair, met there by the hair's own resistance.
class Upright {
public:
    Upright(const Note& note, double sample_rate)
        : lines_(note.hair.upright_resistance > 0.0 ? note.transverse : Lines{}, sample_rate),
          resistance_(note.hair.upright_resistance) {}

    bool present() const { return lines_.present(); }
    WaveLines& lines() { return lines_; }
    const WaveLines& lines() const { return lines_; }

    /// What this motion adds to the bow's force, N.
    double press();

private:
    WaveLines lines_;
    double resistance_;
};

/// A bowed note that goes on for as long as it is asked to: the reference kernel's time loop, one sample at a time.
///
/// promise  after the constructor and the first place_bow: no heap, no locks, no throw
/// memory   the note must outlive the run
class ReferenceRun {
public:
    /// At rest, or in the ideal motion at this contact point, m.  place_bow is still due.
    ReferenceRun(const Note& note, const Start& start, double contact_point);

    /// The bow stands here from the next sample on, m from the bridge: over a sample's way from it.
    void place_bow(double contact_point);

    /// Takes up the motion of a run on the same string, stopped elsewhere (see same_string): what ran between bridge
    /// and stop goes on running there; past the old stop the string was at rest; body, hair and warmth go on as they
    /// were.  place_bow is due again.
    void take_up(const ReferenceRun& before);

    /// Bridge and stop turn the waves round, then the bow rubs.  Returns the force on the bridge, N.
    double advance(const BowContact::Hand& hand);
    /// Ends the sample: the waves move on.
    void step();

    const BowContact& bow() const { return bow_; }

    /// Numbers left all sense; nothing of the run counts any more.
    bool diverged() const;

private:
    const Note& note_;
    WaveLines string_;
    WaveLines twist_;
    Upright upright_;
    BridgeEnd bridge_;
    BowContact bow_;
};

/// Are both notes of one string at one sample rate, on one body under one bow, whatever their stops?
bool same_string(const Note& a, const Note& b);

}  // namespace sim::kernel
